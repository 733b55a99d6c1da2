"""Price indices: what a sum of one time is in the money of another.

None comes with the program: an index holds for one currency and country, and the owner picks it.
A sum is revalued by the ratio of two values, ``value x new / old``, as the statistical offices do.
"""

import csv
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise

from journal.domain.costs import CostTable
from journal.domain.errors import JournalError
from journal.domain.ids import PriceIndexId, ReceiptId
from journal.domain.when import When

_YEAR = re.compile(r"[0-9]{4}")
_MONTH = re.compile(r"([0-9]{4})-(0[1-9]|1[0-2])")
_QUARTER = re.compile(r"([0-9]{4})-?[Qq]([1-4])")
_NUMBER = re.compile(r"[0-9]{1,12}(?:[.,][0-9]{1,12})?")
_MOST_ROWS = 20_000
#: So many digits stand behind a mark for thousands; read as decimals, they are so much less.
_GROUP = 3
_LIKE_A_THOUSAND = 300, 3000


@dataclass(frozen=True, slots=True)
class PriceIndex:
    """A series of price levels in one currency.

    ``values`` go by period: "2016", "2016-07" or "2016-Q3". ``source`` is where the owner has it
    from. ``chosen`` marks the one that the ledger uses unless told otherwise.
    """

    id: PriceIndexId
    name: str
    currency: str
    source: str
    values: Mapping[str, Decimal]
    chosen: bool = False


@dataclass(frozen=True, slots=True)
class Level:
    """The price level of a period, exact, and how it was come by ("mean of 12 months", or "")."""

    period: str
    value: Fraction
    by: str = ""


@dataclass(frozen=True, slots=True)
class InMoneyOf:
    """A wish to see sums in the money of ``period``, by one index; None for the chosen one."""

    period: str
    index_id: PriceIndexId | None = None


@dataclass(frozen=True, slots=True)
class NotRevalued:
    """Money that can't be revalued and stands apart, as it was paid; minor units.

    ``period`` is what the index lacks, "" for undated money.
    """

    period: str
    money: int
    receipt_ids: tuple[ReceiptId, ...]


@dataclass(frozen=True, slots=True)
class RevaluedTable:
    """Costs in the money of another time.

    ``table`` adds up as every cost table does, in the money of ``level.period``; what is in
    ``apart`` stands in none of its rows.
    """

    index: PriceIndex
    level: Level
    table: CostTable
    apart: tuple[NotRevalued, ...]


def as_period(text: str) -> str:
    """A period as it is kept, from what a person typed.

    Raises:
        JournalError: it is no year, month or quarter.
    """
    typed = text.strip()
    if _YEAR.fullmatch(typed) or _MONTH.fullmatch(typed):
        return typed
    if quarter := _QUARTER.fullmatch(typed):
        return f"{quarter[1]}-Q{quarter[2]}"
    raise JournalError(
        f"“{typed[:40]}” is no period of a price index; write a year, a month or a quarter: "
        "2016, 2016-07 or 2016-Q3."
    )


def period_of(when: When) -> str:
    """The month that a date lies in, or else its year; "" for a date with an open start.

    A date that spans years counts in its first, as it does in every other table.
    """
    first, last = when.earliest, when.latest
    if first == datetime.min:
        return ""
    year = f"{first.year:04d}"
    return (
        f"{year}-{first.month:02d}"
        if (first.year, first.month) == (last.year, last.month)
        else year
    )


def level(index: PriceIndex, period: str) -> Level | None:
    """The price level of a period, None where the index doesn't say.

    A month is taken from itself, its quarter or its year, whichever the index has first; a quarter
    from itself, as the mean of the months that the index has of it, or from its year; a year from
    itself, or else as the mean of the months or quarters that the index has of it.
    """
    if period in index.values:
        return Level(period, Fraction(index.values[period]))
    if month := _MONTH.fullmatch(period):
        quarter = f"{month[1]}-Q{(int(month[2]) + 2) // 3}"
        return _wider(index, period, (quarter, month[1]))
    if quarters := _QUARTER.fullmatch(period):
        year, last = quarters[1], 3 * int(quarters[2])
        months = [f"{year}-{number:02d}" for number in range(last - 2, last + 1)]
        return _mean(index, period, months, "month") or _wider(index, period, (year,))
    months = [f"{period}-{number:02d}" for number in range(1, 13)]
    parts = [f"{period}-Q{number}" for number in range(1, 5)]
    return _mean(index, period, months, "month") or _mean(index, period, parts, "quarter")


def _wider(index: PriceIndex, period: str, wider: Iterable[str]) -> Level | None:
    """The level of the first longer period that the index has."""
    for one in wider:
        if one in index.values:
            return Level(period, Fraction(index.values[one]), f"that of {one}")
    return None


def _mean(index: PriceIndex, period: str, parts: Iterable[str], noun: str) -> Level | None:
    """The mean of those parts of a period that the index has."""
    found = [Fraction(index.values[part]) for part in parts if part in index.values]
    if not found:
        return None
    by = f"mean of {len(found)} {noun}" + ("" if len(found) == 1 else "s")
    return Level(period, sum(found, Fraction()) / len(found), by)


def ratio(index: PriceIndex, old: str, new: str) -> Fraction | None:
    """What a sum of ``old`` is multiplied by to be in the money of ``new``; None where unknown."""
    before, after = level(index, old), level(index, new)
    if before is None or after is None:
        return None
    return after.value / before.value


def spoken_apart(apart: NotRevalued, amount: str) -> str:
    """Why a sum stands apart: "€1,240.00 can't be revalued: no index for 2009"."""
    reason = f"no index for {apart.period}" if apart.period else "it has no date"
    return f"{amount} can't be revalued: {reason}."


def refuse_other_currency(index: PriceIndex, currency: str) -> None:
    """Refuse an index that says nothing of the journal's money.

    Raises:
        JournalError: the index is in another currency.
    """
    if index.currency != currency:
        raise JournalError(
            f"The price index “{index.name}” is for {index.currency}, and the journal's sums are "
            f"in {currency}: it says nothing of them."
        )


def read_index(text: str) -> dict[str, Decimal]:
    """Read an index's values: two columns, period and value, parted by comma, semicolon or tab.

    A first row of headings, empty rows and rows that begin with # are passed over. A value may
    have a decimal comma where the columns are parted by something else.

    Raises:
        JournalError: naming the first row that can't be read, and why.
    """
    found: dict[str, Decimal] = {}
    for number, cells in _rows(text):
        if number == 1 and not re.search("[0-9]", "".join(cells)):
            continue
        period, value = _row(number, cells)
        if period in found:
            raise JournalError(f"Row {number}: {period} stands there twice.")
        found[period] = value
    if not found:
        raise JournalError("There is no row with a period and a value in it.")
    _refuse_thousands(found)
    return found


def _refuse_thousands(values: Mapping[str, Decimal]) -> None:
    """Refuse "998" followed by "1,004": read as one and a part, prices would fall to nothing."""
    for before, after in pairwise(in_order(values)):
        low, high = sorted((values[before], values[after]))
        is_marked = low.as_tuple().exponent == -_GROUP and low < 10**_GROUP
        if is_marked and _LIKE_A_THOUSAND[0] < high / low < _LIKE_A_THOUSAND[1]:
            raise JournalError(
                f"{before} and {after} are a thousandfold apart: write {low} without a mark for "
                "thousands."
            )


def _rows(text: str) -> Iterator[tuple[int, list[str]]]:
    lines = text.removeprefix("\ufeff").splitlines()
    if len(lines) > _MOST_ROWS:
        raise JournalError(f"{len(lines):,} rows are more than a price index has.")
    for number, line in enumerate(lines, 1):
        if not line.strip() or line.lstrip().startswith("#"):
            continue
        cells = [cell.strip() for cell in next(csv.reader([line.strip()], delimiter=_mark(line)))]
        while cells and not cells[-1]:
            cells.pop()
        yield number, cells


def _mark(line: str) -> str:
    """What parts the columns of a row."""
    return next((mark for mark in "\t;" if mark in line), "," if "," in line else " ")


def _row(number: int, cells: list[str]) -> tuple[str, Decimal]:
    if len(cells) != 2:
        raise JournalError(
            f"Row {number} has {len(cells)} filled columns; a period and a value are wanted."
        )
    try:
        period = as_period(cells[0])
    except JournalError as error:
        raise JournalError(f"Row {number}: {error}") from error
    if not _NUMBER.fullmatch(cells[1]):
        raise JournalError(f"Row {number}: “{cells[1][:40]}” is no value of a price index.")
    value = Decimal(cells[1].replace(",", "."))
    if value <= 0:
        raise JournalError(f"Row {number}: a price index is above zero.")
    return period, value


def span(index: PriceIndex) -> str:
    """From when to when an index goes, in words: "2009 to 2024-08"; "" for one without values."""
    periods = sorted(index.values, key=_place)
    if not periods:
        return ""
    return periods[0] if len(periods) == 1 else f"{periods[0]} to {periods[-1]}"


def in_order(periods: Iterable[str]) -> list[str]:
    """Periods in order of time."""
    return sorted(periods, key=_place)


def _place(period: str) -> tuple[str, int]:
    year, _, rest = period.partition("-")
    if rest.startswith("Q"):
        return year, int(rest[1]) * 3
    return year, int(rest or 0)
