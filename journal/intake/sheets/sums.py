"""Numbers and sums of money in cells, with the decimal mark decided for the whole sheet."""

import re
import unicodedata
from dataclasses import dataclass
from decimal import Decimal
from enum import Enum
from functools import lru_cache

from journal.domain.errors import JournalError
from journal.domain.sheet_rows import Decimals

_NUMBER = re.compile(r"[.,]?[0-9](?:[0-9.,' ]*[0-9])?")
_DASH_FOR_CENTS = re.compile(r"(?<=[0-9])[.,]-{1,2}(?![0-9])")
_BEHIND_ZERO = re.compile(r"0[.,][0-9]+")
#: Groups of three; with commas also of two before the last three, as in India.
_GROUPS = {
    ".": re.compile(r"[0-9]{1,3}(?:\.[0-9]{3})+"),
    ",": re.compile(r"[0-9]{1,3}(?:,[0-9]{2,3})*,[0-9]{3}"),
}
_SPACED = re.compile(r"[0-9]{1,3}(?:([' ])[0-9]{3})(?:\1[0-9]{3})*(?:[.,][0-9]+)?")
_LONGEST = 60


class Mark(Enum):
    """Which decimal mark a number shows: surely one, either (one mark, three digits), or none."""

    POINT = "point"
    COMMA = "comma"
    OPEN = "open"
    NONE = "none"


@dataclass(frozen=True, slots=True)
class Written:
    """A number as written: its digits and marks, the sign, the words round it, what it shows."""

    number: str
    negative: bool
    words: str
    mark: Mark


@lru_cache(maxsize=8192)
def written(text: str) -> Written | None:
    """The one number in a text, None where there is none or more."""
    said = _plain(text)
    found = _NUMBER.search(said) if len(said) <= _LONGEST else None
    if found is None:
        return None
    number, around = found[0], f"{said[: found.start()]} {said[found.end() :]}"
    mark: Mark | None
    if " " in number or "'" in number:
        if not _SPACED.fullmatch(number):
            return None
        number = number.replace(" ", "").replace("'", "")
        mark = _last_mark(number)
    else:
        mark = _mark(number)
    if mark is None or re.search(r"[0-9]", around):
        return None
    debit = re.search(r"\bdr\b", around, re.IGNORECASE)
    in_brackets = around.strip().startswith("(") and ")" in around
    minus = around.count("-")
    if minus > 1:
        return None
    words = re.sub(r"\b[cd]r\b|[-+()]", " ", around, flags=re.IGNORECASE)
    return Written(number, bool(minus or debit or in_brackets), words.strip(), mark)


def value(one: Written, decimals: Decimals | None) -> Decimal:
    """The number that was written, without its sign, by the decimal mark of the sheet.

    Raises:
        JournalError: it is not written with that mark, or can be read in two ways.
    """
    mark = {Decimals.POINT: Mark.POINT, Decimals.COMMA: Mark.COMMA}.get(decimals or Decimals.BOTH)
    if mark is None:
        if one.mark is Mark.OPEN:
            raise JournalError(f"“{one.number}” can be read in two ways")
        mark = one.mark
    elif one.mark not in (mark, Mark.OPEN, Mark.NONE):
        name = "point" if mark is Mark.POINT else "comma"
        raise JournalError(f"“{one.number}” is not written with a decimal {name}, as this sheet is")
    grouping, decimal = (",", ".") if mark is Mark.POINT else (".", ",")
    return Decimal(one.number.replace(grouping, "").replace(decimal, "."))


def _plain(text: str) -> str:
    """One kind of space, apostrophe and dash, plain digits, and no dash instead of cents."""
    said = text
    if not said.isascii():
        said = "".join(
            str(unicodedata.decimal(one)) if one.isdecimal() else one
            for one in said.replace("\u066b", ",").replace("\u066c", "'")
        )
        said = re.sub(r"[\u2010-\u2015\u2212\ufe63\uff0d]", "-", said)
        said = re.sub(r"[\u2018\u2019\u02bc]", "'", said)
        said = re.sub(r"[\u200e\u200f\u061c]", "", said)
    said = re.sub(r"\s+", " ", said).strip()
    return _DASH_FOR_CENTS.sub("", said)


def _mark(number: str) -> Mark | None:
    """What a number of digits, points and commas shows; None where it is no number."""
    points, commas = number.count("."), number.count(",")
    if not points and not commas:
        return Mark.NONE
    if points and commas:
        last = max(number.rfind("."), number.rfind(","))
        grouping = "," if number[last] == "." else "."
        if number.count(number[last]) > 1 or not _GROUPS[grouping].fullmatch(number[:last]):
            return None
        return Mark.POINT if number[last] == "." else Mark.COMMA
    mark = "." if points else ","
    if points + commas > 1:
        grouped = _GROUPS[mark].fullmatch(number)
        return None if not grouped else (Mark.COMMA if mark == "." else Mark.POINT)
    if _GROUPS[mark].fullmatch(number) and not _BEHIND_ZERO.fullmatch(number):
        return Mark.OPEN
    return Mark.POINT if mark == "." else Mark.COMMA


def _last_mark(number: str) -> Mark:
    """What a number shows whose thousands are parted by spaces or apostrophes."""
    if "." in number:
        return Mark.POINT
    return Mark.COMMA if "," in number else Mark.NONE
