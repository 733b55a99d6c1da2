"""Days in cells, with the order of day and month decided for the whole sheet."""

import re
from collections.abc import Iterable
from datetime import date, datetime
from decimal import Decimal
from functools import lru_cache

from journal.domain.errors import JournalError
from journal.domain.papers import DateOrder
from journal.domain.sheet_rows import BadCell, Cell, DayOrder, shown
from journal.domain.when import When, parse

#: No receipt of a car is older.
_OLDEST = 1900
_TIME = r"(?:[ T,]+[0-9]{1,2}[:.][0-9]{2}(?:[:.][0-9]{2}(?:\.[0-9]+)?)?(?: ?[AaPp][Mm])?)?"
_THREE = re.compile(
    rf"([0-9]{{1,2}})\s?([./-])\s?([0-9]{{1,2}})\s?\2\s?([0-9]{{4}}|[0-9]{{2}}){_TIME}"
)
_YEAR_FIRST = re.compile(rf"([0-9]{{4}})([./-])([0-9]{{1,2}})\2([0-9]{{1,2}}){_TIME}Z?")
_GLUED = re.compile(r"((?:19|20)[0-9]{2})([01][0-9])([0-3][0-9])")
_MONTH_YEAR = re.compile(r"(0?[1-9]|1[0-2])[./-]((?:19|20)[0-9]{2})")


def orders_of(cells: Iterable[Cell]) -> tuple[frozenset[DayOrder], tuple[str, ...]]:
    """In which orders all the dates of three numbers in a column can be read, and open examples.

    Points go with the day first everywhere; only strokes and dashes are used in both orders. Where
    the rows contradict each other both orders remain: the person says which.
    """
    fits = {DayOrder.DMY: 0, DayOrder.MDY: 0}
    total = 0
    examples: list[str] = []
    for cell in cells:
        found = _THREE.fullmatch(cell.strip()) if isinstance(cell, str) else None
        if found is None:
            continue
        one, two = int(found[1]), int(found[3])
        if found[2] == ".":
            continue
        total += 1
        fits[DayOrder.DMY] += two <= 12
        fits[DayOrder.MDY] += one <= 12
        if one <= 12 and two <= 12 and one != two and len(examples) < 3:
            examples.append(found[0])
    if not total:
        return frozenset({DayOrder.DMY}), ()
    whole = frozenset(order for order, count in fits.items() if count == total)
    return whole or frozenset(fits), tuple(examples)


def looks_like_day(cell: Cell) -> bool:
    """Whether a cell is probably a date."""
    if isinstance(cell, date):
        return True
    if not isinstance(cell, str):
        return False
    said = cell.strip()
    if _THREE.fullmatch(said) or _YEAR_FIRST.fullmatch(said) or _GLUED.fullmatch(said):
        return True
    return (
        len(said) < 40 and bool(re.search(r"[0-9]", said)) and _in_words(said, date.max) is not None
    )


def read_day(cell: Cell, order: DayOrder | None, today: date) -> When:
    """The day in a cell.

    Raises:
        JournalError: there is none, or one that no receipt can be of; without a full stop.
    """
    if isinstance(cell, BadCell):
        raise JournalError(f"the date is “{cell.text}”")
    if isinstance(cell, datetime):
        when = When.on(cell.date())
    elif isinstance(cell, date):
        when = When.on(cell)
    elif isinstance(cell, str):
        when = _read(cell.strip(), order or DayOrder.DMY, today)
    elif isinstance(cell, Decimal):
        when = _of_number(cell, today)
    else:
        raise JournalError("there is no date" if cell is None else f"“{shown(cell)}” is no date")
    if when.earliest.date() > today:
        raise JournalError(f"{shown(cell)} lies in the future")
    if when.latest.year < _OLDEST:
        raise JournalError(f"{shown(cell)} is too long ago for a receipt")
    return when


@lru_cache(maxsize=8192)
def _read(said: str, order: DayOrder, today: date) -> When:
    year_first = _YEAR_FIRST.fullmatch(said) or _GLUED.fullmatch(said)
    if year_first:
        year, *_, month, day = year_first.groups()
        return _on(int(year), int(month), int(day), said)
    three = _THREE.fullmatch(said)
    if three:
        one, two, last = three[1], three[3], three[4]
        if order is DayOrder.YMD and len(last) == 2:
            return _on(_whole_year(one, today), int(two), int(last), said)
        year = _whole_year(last, today)
        if order is DayOrder.MDY and three[2] != ".":
            return _on(year, int(one), int(two), said)
        return _on(year, int(two), int(one), said)
    if month_year := _MONTH_YEAR.fullmatch(said):
        return parse(f"{month_year[2]}-{int(month_year[1]):02}")
    found = _in_words(said, today)
    if found is None:
        raise JournalError(f"“{said[:40]}” is no date")
    return found


@lru_cache(maxsize=8192)
def _in_words(said: str, today: date) -> When | None:
    """A date with its month as a word, in the languages that papers are read in, or as EDTF."""
    from journal.intake.reading.dates import dates

    if len(said) > 60:
        return None
    found = dates(said, DateOrder.DAY_FIRST, today)
    if len(found) == 1 and found[0].start == 0 and re.search(r"[^\W\d_]{3}", said):
        return When.on(found[0].day)
    try:
        return parse(said)
    except JournalError:
        return None


def _of_number(number: Decimal, today: date) -> When:
    text = f"{number:f}"
    if _GLUED.fullmatch(text) or re.fullmatch("(?:19|20)[0-9]{2}", text):
        return _read(text, DayOrder.DMY, today)
    raise JournalError(f"“{text[:40]}” is no date")


def _whole_year(text: str, today: date) -> int:
    year = int(text)
    if len(text) > 2:
        return year
    return year + (2000 if 2000 + year <= today.year else 1900)


def _on(year: int, month: int, day: int, said: str) -> When:
    try:
        return When.on(date(year, month, day))
    except ValueError as error:
        raise JournalError(f"“{said[:40]}” is no date in this order of day and month") from error
