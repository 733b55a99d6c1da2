"""Single cells that are neither dates nor money: kinds, shares, times worked."""

import re
from collections import Counter
from datetime import datetime, time, timedelta
from decimal import ROUND_HALF_UP, Decimal

from journal.domain.errors import JournalError
from journal.domain.hours import parse_hours
from journal.domain.quantities import LEAST_RATE, MOST_RATE
from journal.domain.receipts import Category, Condition, Paper, Spread
from journal.domain.sheet_rows import Cell, shown
from journal.intake.sheets import words

_DAY = 24 * 60
_WEIGHED = re.compile(r"(?P<name>.+?) × (?P<weight>[0-9]{1,9})")
#: What no part is: work and fees have no condition.
_NO_PARTS = frozenset((Category.SERVICES, Category.FEES))

Unknown = Counter[tuple[str, str]]


def category(said: str, unknown: Unknown) -> Category:
    """The category that a cell names; an unknown word counts as other, and is told."""
    if not said:
        return Category.OTHER
    found = words.category(said)
    if found is None:
        unknown[f"The category “{said[:40]}”", "come in as other"] += 1
    return found or Category.OTHER


def condition(said: str, of: Category, unknown: Unknown) -> Condition:
    """The condition that a cell names; new where it names none."""
    found = words.condition(said) if said else None
    if said and found is None:
        unknown[f"The condition “{said[:40]}”", "come in as new"] += 1
    return found or (Condition.NONE if of in _NO_PARTS else Condition.NEW)


def paper(cell: Cell, unknown: Unknown) -> Paper:
    """Where the paper is: lost, unless the cell says otherwise."""
    if cell is None:
        return Paper.LOST
    found = words.paper(shown(cell))
    if found is None:
        unknown[f"The paper “{shown(cell)[:40]}”", "come in as lost"] += 1
    return found or Paper.LOST


def spread(said: str) -> Spread:
    """How a line goes over the others of its receipt; an unknown word for not at all."""
    return next((one for one in Spread if one.value and one.value == said.casefold()), Spread.NONE)


def areas(said: str) -> tuple[tuple[str, int], ...]:
    """Names of repair areas with their weights: "Sill, left; Arch, left × 3"."""
    found = []
    for part in said.split(";"):
        weighed = _WEIGHED.fullmatch(part.strip())
        if weighed:
            found.append((weighed["name"], int(weighed["weight"])))
        elif part.strip():
            found.append((part.strip(), 1))
    return tuple(dict(found).items())


def rate(cell: Cell) -> Decimal:
    """The rate paid, 1 where there is none.

    Raises:
        JournalError: the cell is no rate; without a full stop.
    """
    if cell is None:
        return Decimal(1)
    text = shown(cell).replace(",", ".")
    found = Decimal(text) if re.fullmatch(r"[0-9]{1,9}(?:\.[0-9]{1,15})?", text) else Decimal(0)
    if not LEAST_RATE <= found <= MOST_RATE:
        raise JournalError(f"“{shown(cell)[:40]}” is no rate of a currency")
    return found


def minutes(hours: Cell, whole: Cell) -> int:
    """The time worked, from a cell of hours and one of minutes; 0 for none.

    Raises:
        JournalError: a cell is no time, or it is more than a day has; without a full stop.
    """
    found = _of_hours(hours) + _of_minutes(whole)
    if not 0 <= found <= _DAY:
        raise JournalError(f"{found / 60:.6g} hours is no time worked on one day")
    return found


def _of_hours(cell: Cell) -> int:
    if cell is None or isinstance(cell, bool):
        return 0
    if isinstance(cell, Decimal):
        return _whole(cell * 60)
    if isinstance(cell, timedelta):
        return round(cell.total_seconds() / 60)
    if isinstance(cell, time) or (isinstance(cell, datetime) and cell.year < 1901):
        return cell.hour * 60 + cell.minute
    try:
        return parse_hours(shown(cell)) if shown(cell) not in ("0", "-", "0:00", "0,0") else 0
    except JournalError as error:
        raise JournalError(f"“{shown(cell)[:40]}” is no time worked") from error


def _of_minutes(cell: Cell) -> int:
    if cell is None:
        return 0
    text = shown(cell).removesuffix("min").strip().replace(",", ".")
    if not re.fullmatch(r"[0-9]{1,5}(?:\.[0-9]{1,4})?", text):
        raise JournalError(f"“{shown(cell)[:40]}” is no number of minutes")
    return _whole(Decimal(text))


def _whole(exact: Decimal) -> int:
    if abs(exact) > 10 * _DAY:
        raise JournalError(f"{exact / 60:.6g} hours is no time worked on one day")
    return int(exact.to_integral_value(rounding=ROUND_HALF_UP))
