"""Dates among the words of a paper: one repeated mark, months as words, glued times."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from journal.domain.papers import DateOrder
from journal.intake.reading.amounts import digits_mended

#: Receipts older than this are no receipts of a car that is being restored.
_OLDEST = 1950

_MONTHS = {
    1: "january jan januar janvier januari jän jänner janv",
    2: "february feb februar février fevrier februari févr fevr",
    3: "march mar märz maerz mrz mars maart mrt",
    4: "april apr avril avr",
    5: "may mai mei maj",
    6: "june jun juni juin",
    7: "july jul juli juillet juil",
    8: "august aug août aout augustus augusti",
    9: "september sep sept septembre",
    10: "october oct oktober okt octobre",
    11: "november nov novembre",
    12: "december dec dezember dez décembre decembre déc",
}
_MONTH_NUMBERS = {name: number for number, names in _MONTHS.items() for name in names.split()}
_MONTH = "|".join(sorted(_MONTH_NUMBERS, key=len, reverse=True))
# A time may be glued to the year: "12/05/201914:32".
_END = r"(?=[0-9]{1,2}:[0-9]{2}|T[0-9]{2}|[^0-9:]|$)"
_THREE_NUMBERS = re.compile(
    rf"(?<![0-9.,/-])(?P<one>[0-9]{{1,2}})\s?(?P<mark>[./-])\s?(?P<two>[0-9]{{1,2}})"
    rf"\s?(?P=mark)\s?(?P<year>[12][0-9]{{3}}|[0-9]{{2}}){_END}"
)
_YEAR_FIRST = re.compile(
    rf"(?<![0-9.,/-])(?P<year>[12][0-9]{{3}})(?P<mark>[./-])(?P<month>[0-9]{{1,2}})"
    rf"(?P=mark)(?P<day>[0-9]{{2}}|[0-9]){_END}"
)
_DAY_WORD = re.compile(
    rf"(?<![0-9.,/-])(?P<day>[0-9]{{1,2}})(?:st|nd|rd|th|er|\.)?[\s./-]*(?P<month>{_MONTH})"
    rf"[\s./,-]*(?P<year>[12][0-9]{{3}}|[0-9]{{2}}){_END}",
    re.IGNORECASE,
)
_WORD_DAY = re.compile(
    rf"\b(?P<month>{_MONTH})\.?\s*(?P<day>[0-9]{{1,2}})(?:st|nd|rd|th)?[\s,]+"
    rf"(?P<year>[12][0-9]{{3}}){_END}",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class FoundDate:
    """A day in a row's text; ``other`` is what it is in the other order, where that's open."""

    day: date
    start: int
    end: int
    other: date | None = None


def dates(text: str, order: DateOrder, today: date) -> tuple[FoundDate, ...]:
    """The days in a row's text; those after ``today`` and out of all reason are none."""
    mended = digits_mended(text)
    found: list[FoundDate] = []
    for day in (*_with_month(mended, today), *_of_numbers(mended, order, today)):
        if all(day.end <= other.start or other.end <= day.start for other in found):
            found.append(day)
    return tuple(sorted(found, key=lambda day: day.start))


def _with_month(text: str, today: date) -> Iterator[FoundDate]:
    for pattern in (_YEAR_FIRST, _DAY_WORD, _WORD_DAY):
        for match in pattern.finditer(text):
            month = _MONTH_NUMBERS.get(match["month"].lower()) or _number(match["month"])
            day = _day(match["year"], month, int(match["day"]), today)
            if day is not None:
                yield FoundDate(day, match.start(), match.end())


def _of_numbers(text: str, order: DateOrder, today: date) -> Iterator[FoundDate]:
    for match in _THREE_NUMBERS.finditer(text):
        one, two = int(match["one"]), int(match["two"])
        day_first = _day(match["year"], two, one, today)
        month_first = _day(match["year"], one, two, today)
        # Only an oblique stroke is used in both orders; points and dashes go with the day first.
        wanted, other = day_first, month_first
        if order is DateOrder.MONTH_FIRST and match["mark"] != ".":
            wanted, other = month_first, day_first
        day = wanted or other
        if day is not None:
            is_open = wanted is not None and other is not None and wanted != other
            open_to = other if is_open and match["mark"] != "." else None
            yield FoundDate(day, match.start(), match.end(), open_to)


def _number(text: str) -> int:
    return int(text) if text.isdigit() else 0


def _day(year_text: str, month: int, day: int, today: date) -> date | None:
    year = int(year_text)
    if len(year_text) == 2:
        year += 2000 if 2000 + year <= today.year else 1900
    try:
        found = date(year, month, day)
    except ValueError:
        return None
    return found if found.year >= _OLDEST and found <= today else None
