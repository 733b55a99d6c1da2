"""Text made fit to print as it stands: what no font can show is written out by its number.

An archival PDF may hold no character without a glyph, so one control character in a caption would
stop the whole document.
"""

import re
import unicodedata
from collections.abc import Callable
from typing import Any

#: Categories of Unicode that have no shape of their own to print: controls, surrogates, private
#: use, unassigned.
_SHAPELESS = frozenset({"Cc", "Cs", "Co", "Cn"})

#: Marks that turn the direction of what follows: a reader would see another order than was typed.
_TURNING = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")

_FORBIDDEN = frozenset("\ufeff\ufffe\uffff")

#: Ends of lines and paragraphs in all their forms, printed as a new line.
_LINE_ENDS = re.compile("\r\n|[\n\r\x0b\x0c\x85\u2028\u2029]")

#: A run too long for a narrow column, in writing that is broken at blanks only.
_LONG_RUN = re.compile("[!-~\u00a1-\u1fff]{25,}")

#: Where a line may end without a sign of it.
_MAY_BREAK = "\u200b"

#: Characters that the fonts for reading have for certain: Latin with its accents, Greek, Cyrillic,
#: and the signs of ordinary typing. All other writing calls for the last-resort font.
_READABLE = re.compile(
    "[\n -~\u00a0-\u017f\u0386-\u03ce\u0400-\u045f\u200b\u2010-\u2015"
    "\u2018-\u201e\u2020-\u2022\u2026\u2030\u2039\u203a\u20ac\u2116\u2122\u2192\u2212]*"
)


def literal(text: str) -> str:
    """``text`` with tabs as spaces, line ends in one form, and "[U+0007]" for the shapeless."""
    if text.isprintable():
        # What Python calls printable has a shape, and is no mark of direction.
        return text
    return _written(one_line_end(text), _is_shapeless)


def one_line_end(text: str) -> str:
    """``text`` with tabs as spaces and all line ends in one form, nothing written out."""
    return _LINE_ENDS.sub("\n", text).replace("\t", "    ")


def plainer(text: str) -> str:
    """As ``literal``, with every character beyond Unicode's first plane written out."""
    return _written(literal(text), lambda sign: ord(sign) > 0xFFFF)


def plainest(text: str) -> str:
    """As ``literal``, with every character that isn't sure to have a glyph written out."""
    return _written(literal(text), lambda sign: not _READABLE.fullmatch(sign))


def is_readable(text: str) -> bool:
    """Tell whether the fonts for reading are sure to have every character of ``text``."""
    return _READABLE.fullmatch(text) is not None


def breakable(text: str) -> str:
    """``text`` with invisible places to break a line in runs that no line could hold."""
    return _LONG_RUN.sub(_broken, text)


def _broken(run: re.Match[str]) -> str:
    letters = run.group()
    return _MAY_BREAK.join(letters[start : start + 8] for start in range(0, len(letters), 8))


def everywhere(value: Any, change: Callable[[str], str]) -> Any:
    """The JSON value with ``change`` applied to every text in it; keys stay as they are.

    Tuples become lists, as they do in JSON.
    """
    if isinstance(value, str):
        return change(value)
    if isinstance(value, (list, tuple)):
        return [everywhere(item, change) for item in value]
    if isinstance(value, dict):
        return {key: everywhere(item, change) for key, item in value.items()}
    return value


def _written(text: str, wanted: Callable[[str], bool]) -> str:
    if not any(map(wanted, text)):
        return text
    return "".join(f"[U+{ord(sign):04X}]" if wanted(sign) else sign for sign in text)


def _is_turning(sign: str) -> bool:
    return sign in _TURNING or sign in _FORBIDDEN


def _is_shapeless(sign: str) -> bool:
    if sign == "\n":
        return False
    return _is_turning(sign) or unicodedata.category(sign) in _SHAPELESS
