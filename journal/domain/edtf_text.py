"""What a date in EDTF stands for: the first and the last moment it may mean.

EDTF is the Extended Date/Time Format of ISO 8601-2 as the Library of Congress specifies it
(4 February 2019). Levels 0 and 1 are read in full; of level 2, unspecified digits anywhere,
significant digits, the seasons 25 to 41, sets and qualified parts.

Bounds are strict: "about" and "perhaps" widen nothing, and an unknown end is as far away as an open
one. The standard gives seasons no months. By our convention they are the northern ones: spring is
March to May, summer June to August, autumn September to November, winter December to February, and
a winter bears the year in which it begins.
"""

import calendar
import re
from collections.abc import Iterator
from datetime import datetime, timedelta
from itertools import product
from typing import NamedTuple


class Day(NamedTuple):
    """A day of the proleptic Gregorian calendar, in any year; year 0 is 1 BC."""

    year: int
    month: int
    day: int


Span = tuple[Day, Day]

_FIRST = Day(-(10**18), 1, 1)
_LAST = Day(10**18, 12, 31)

_DATE = re.compile(r"(-?[0-9X]{4})(?:-([0-9X]{2})(?:-([0-9X]{2}))?)?([?~%]?)")
_LONG_YEAR = re.compile(r"Y(-?[1-9][0-9]{4,})([?~%]?)")
_MOMENT = re.compile(
    r"([0-9]{4})-([0-9]{2})-([0-9]{2})T([0-9]{2}):([0-9]{2}):([0-9]{2})"
    r"(?:Z|[+-]([0-9]{2})(?::([0-9]{2}))?)?"
)
_SIGNIFICANT = re.compile(r"(-?[0-9]{4})S([1-4])")

#: The first month of each season and the number of months; 25 to 41 are of level 2.
_SEASONS = {
    21: (3, 3), 22: (6, 3), 23: (9, 3), 24: (12, 3),
    25: (3, 3), 26: (6, 3), 27: (9, 3), 28: (12, 3),
    29: (9, 3), 30: (12, 3), 31: (3, 3), 32: (6, 3),
    33: (1, 3), 34: (4, 3), 35: (7, 3), 36: (10, 3),
    37: (1, 4), 38: (5, 4), 39: (9, 4),
    40: (1, 6), 41: (7, 6),
}  # fmt: skip


def bounds(text: str) -> tuple[datetime, datetime]:
    """The first and the last moment of an EDTF text, to the second, local and without a zone.

    Open ends, unknown ends and years that a ``datetime`` can't hold come out as ``datetime.min``
    and ``datetime.max``. ValueError where the text is no EDTF.
    """
    if moment := _MOMENT.fullmatch(text):
        at = _moment(moment)
        return at, at
    first, last = _interval(text) if "/" in text else _date(text)
    return _start_of(first), _end_of(last)


def _moment(found: re.Match[str]) -> datetime:
    year, month, day, hour, minute, second, zone_hour, zone_minute = (
        int(part or 0) for part in found.groups()
    )
    if zone_hour > 23 or zone_minute > 59:
        raise ValueError("the offset is out of range")
    return datetime(year, month, day, hour, minute, second)


def _interval(text: str) -> Span:
    left, right, *more = text.split("/")
    if more or {left, right} <= {"", ".."}:
        raise ValueError("an interval has a start and an end")
    start = (_FIRST, _FIRST) if left in ("", "..") else _date(left)
    end = (_LAST, _LAST) if right in ("", "..") else _date(right)
    if start[0] > end[1]:
        raise ValueError("the interval ends before it starts")
    return start[0], end[1]


def _date(text: str) -> Span:
    if found := _DATE.fullmatch(text):
        year, month, day, _ = found.groups()
        return _calendar(year, month, day)
    if found := _LONG_YEAR.fullmatch(text):
        year_number = int(found.group(1))
        return Day(year_number, 1, 1), Day(year_number, 12, 31)
    if found := _SIGNIFICANT.fullmatch(text):
        return _significant(found.group(1), int(found.group(2)))
    return _level_two(text)


def _calendar(year: str, month: str | None, day: str | None) -> Span:
    if year == "-0000":
        raise ValueError("there is no year minus zero")
    if month is not None and month.isdigit() and int(month) in _SEASONS and day is None:
        return _season(year, int(month))
    if "X" in year + (month or "") + (day or ""):
        return _unspecified(year, month, day)
    number = int(year)
    if month is None:
        return Day(number, 1, 1), Day(number, 12, 31)
    last = _days_in(number, int(month))
    if day is None:
        return Day(number, int(month), 1), Day(number, int(month), last)
    if not 1 <= int(day) <= last:
        raise ValueError("that month has no such day")
    return (Day(number, int(month), int(day)),) * 2


def _season(year: str, season: int) -> Span:
    if "X" in year:
        raise ValueError("a season needs a year")
    month, length = _SEASONS[season]
    first = Day(int(year), month, 1)
    last_month = month + length - 1
    last_year, last_month = first.year + (last_month - 1) // 12, (last_month - 1) % 12 + 1
    return first, Day(last_year, last_month, _days_in(last_year, last_month))


def _unspecified(year: str, month: str | None, day: str | None) -> Span:
    """The first and last day that fit a date some of whose digits are X."""
    first = next(_fitting(year, month or "XX", day or "XX", 1), None)
    last = next(_fitting(year, month or "XX", day or "XX", -1), None)
    if first is None or last is None:
        raise ValueError("no day fits")
    return first, last


def _fitting(year: str, month: str, day: str, step: int) -> Iterator[Day]:
    years = _numbers(year.removeprefix("-"), 0, 9999)
    if year.startswith("-"):
        years = [-number for number in reversed(years)]
    months, days = _numbers(month, 1, 12), _numbers(day, 1, 31)
    for found in product(years[::step], months[::step], days[::step]):
        if found[2] <= _days_in(found[0], found[1]):
            yield Day(*found)


def _numbers(mask: str, lowest: int, highest: int) -> list[int]:
    """Every number from ``lowest`` to ``highest`` whose digits fit ``mask``."""
    digits = ("0123456789" if sign == "X" else sign for sign in mask)
    return [n for found in product(*digits) if lowest <= (n := int("".join(found))) <= highest]


def _significant(year: str, digits: int) -> Span:
    number, block = int(year), 10 ** (4 - digits)
    first = abs(number) // block * block
    span = (first, first + block - 1)
    if number < 0:
        span = (-span[1], -span[0])
    return Day(span[0], 1, 1), Day(span[1], 12, 31)


def _level_two(text: str) -> Span:
    """Sets, qualified parts and exponents, as the ``edtf`` library reads them."""
    if len(text) > 200 or text != text.strip() or not re.search(r"[?~%\[{E]", text):
        raise ValueError("this is no date of EDTF")
    from edtf import parse_edtf

    try:
        value = parse_edtf(text)
        first, last = (_day_of(value.lower_strict()), _day_of(value.upper_strict()))
    except Exception as error:
        raise ValueError("this is no date of EDTF") from error
    if first > last:
        raise ValueError("it ends before it starts")
    return first, last


def _day_of(value: float | tuple[int, ...]) -> Day:
    if isinstance(value, float):
        return _LAST if value > 0 else _FIRST
    return Day(*value[:3])


def _days_in(year: int, month: int) -> int:
    if not 1 <= month <= 12:
        raise ValueError("there is no such month")
    # The calendar repeats every 400 years, and the library knows years from 1 on only.
    return calendar.monthrange(2000 + year % 400, month)[1]


def _start_of(day: Day) -> datetime:
    if day.year < 1:
        return datetime.min
    return datetime.max if day.year > 9999 else datetime(*day)


def _end_of(day: Day) -> datetime:
    if day.year < 1:
        return datetime.min
    if day.year > 9999:
        return datetime.max
    return datetime(*day) + timedelta(hours=23, minutes=59, seconds=59)
