"""Sums of money among the words of a paper."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from journal.domain.money import MOST

_TOKEN = re.compile(r"\S+")
_LETTERS_FOR_DIGITS = str.maketrans({"O": "0", "o": "0", "l": "1", "I": "1", "|": "1"})
_DIGIT_LIKE = frozenset("OolI|")
_MINUS = "-\u2212\u2013"


@dataclass(frozen=True, slots=True)
class Amount:
    """A sum in minor units, and from where to where its letters stand in the row's text."""

    minor: int
    start: int
    end: int


def digits_mended(text: str) -> str:
    """The text with O read as 0 and l as 1 in tokens that are mostly digits; as long as before."""
    return _TOKEN.sub(lambda found: _mended(found[0]), text)


def amounts(text: str, places: int) -> tuple[Amount, ...]:
    """The sums in a row's text, from left to right.

    A sum has exactly as many decimals as its currency; the last mark before them is the decimal
    mark. Percentages, dates, times and measures with a unit are none.
    """
    mended = digits_mended(text)
    cuts = [found.end(1) for found in _GLUED.finditer(mended)] if places == 2 else []
    for cut in reversed(cuts):
        mended = mended[:cut] + " " * 2 + mended[cut:]
    return tuple(_uncut(found, cuts) for found in _amounts(mended, places))


def _uncut(found: Amount, cuts: Sequence[int]) -> Amount:
    """A sum where it stands in the text before gaps were put between sums read as one word."""
    start, end = found.start, found.end
    for cut in reversed(range(len(cuts))):
        opened = cuts[cut] + 2 * cut
        start -= 2 * (start > opened)
        end -= 2 * (end > opened)
    return Amount(found.minor, start, end)


def _amounts(text: str, places: int) -> Iterator[Amount]:
    for found in _pattern(places).finditer(text):
        if _is_something_else(text, found.start(), found.end()):
            continue
        digits = re.sub(r"[^0-9]", "", found["number"])
        minor = int(digits)
        if minor > MOST:
            continue
        negative = bool(found["before"] or found["after"])
        yield Amount(-minor if negative else minor, found.start(), found.end())


def _pattern(places: int) -> re.Pattern[str]:
    return _WITHOUT_DECIMALS if places == 0 else _with_decimals(places)


def _with_decimals(places: int) -> re.Pattern[str]:
    made = _PATTERNS.get(places)
    if made is None:
        grouped = r"[0-9]{1,3}(?:(?P<mark>[.,'\u2019 \u00a0\u202f])[0-9]{3})(?:(?P=mark)[0-9]{3})*"
        number = rf"(?P<number>(?:{grouped}|[0-9]+)[.,][0-9]{{{places}}})"
        made = re.compile(_BEFORE + number + _AFTER)
        _PATTERNS[places] = made
    return made


_BEFORE = rf"(?<![0-9.,:/'])(?:(?P<before>[{_MINUS}])\s?)?(?:[€£$¥]\s?)?"
_AFTER = rf"(?![0-9]|[.,:/'][0-9])(?P<after>[{_MINUS}](?![0-9A-Za-z]))?"
#: Letters that may touch a sum: codes and signs of currencies, a sign of multiplication, and
#: behind it the letter of a rate of tax.
_MAY_TOUCH = re.compile(r"(?:eur|gbp|usd|chf|sek|nok|dkk|pln|czk|jpy|kr|zł|fr|x)?", re.IGNORECASE)
#: A word as long as this that touches a sum was glued to it in reading.
_A_WHOLE_WORD = 3
_LETTERS_BEFORE = re.compile(r"[^\W\d_]+$")
_LETTERS_AFTER = re.compile(r"[^\W\d_]+")
# Two columns read as one word, "6,6619,98"; three digits between the marks may be thousands.
_GLUED = re.compile(r"(?<![0-9.,])([0-9]+([.,])[0-9]{2})(?=[0-9]{2,}\2[0-9]{2}(?![0-9.,]))")
_PATTERNS: dict[int, re.Pattern[str]] = {}
_WITHOUT_DECIMALS = re.compile(
    _BEFORE
    + r"(?P<number>[0-9]{1,3}(?:(?P<mark>[.,' ])[0-9]{3})(?:(?P=mark)[0-9]{3})*|[0-9]+)"
    + _AFTER
)


def _is_something_else(text: str, start: int, end: int) -> bool:
    """Whether a number is a percentage, a time of day, a measure or part of a word."""
    after = text[end:].lstrip()
    if after.startswith(("%", "°")) or re.match(r"(?:kg|g|l|ltr|m|cm|mm|km|uhr|h)\b", after, re.I):
        return True
    before = _LETTERS_BEFORE.search(text[:start])
    behind = _LETTERS_AFTER.match(text[end:])
    if before and not (_MAY_TOUCH.fullmatch(before[0]) or len(before[0]) > _A_WHOLE_WORD):
        return True
    if behind and not (len(behind[0]) == 1 or _MAY_TOUCH.fullmatch(behind[0])):
        return True
    return bool(re.search(r"\b(?:kl|klockan|time|uhrzeit)\.?:?\s*$", text[:start], re.IGNORECASE))


def _mended(token: str) -> str:
    digits = sum(letter.isdigit() for letter in token)
    others = sum(letter.isalpha() or letter == "|" for letter in token)
    wrong = sum(letter in _DIGIT_LIKE for letter in token)
    if not wrong or digits <= others or others != wrong:
        return token
    return token.translate(_LETTERS_FOR_DIGITS)
