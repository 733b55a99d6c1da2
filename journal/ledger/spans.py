"""Money and hours over time."""

from collections.abc import Callable, Iterable
from datetime import datetime

from journal.domain.costs import DIFFERENCE, NO_PERSON
from journal.domain.receipts import Category
from journal.domain.series import Series, Stack, Step
from journal.domain.when import When
from journal.ledger.keys import Names, label_of, labels
from journal.ledger.pieces import Account

#: Longer series than a lifetime's months show only the periods that hold something.
_MOST_PERIODS = 1200

#: Amounts by kind, then by period; "" is the period of what can't be told of any.
_Sums = dict[str, dict[str, int]]


def cost_series(step: Step, account: Account) -> Series:
    """Money spent, in minor units, by month or year and stacked by category."""
    period_of = _period(step)
    sums: _Sums = {}
    for paid in account.paid:
        period = period_of(paid.receipt.when)
        for line in paid.lines:
            key = DIFFERENCE if line.line is None else line.line.category
            _add(sums, key, period, line.money)
    ordered = [category.value for category in Category] + [DIFFERENCE]
    names = labels("category", account)
    found = [(key, label_of("category", key, names)) for key in ordered if key in sums]
    return _series(step, account.books.currency, found, sums)


def hours_series(step: Step, account: Account) -> Series:
    """Minutes worked, by month or year and stacked by person, the one with the most first."""
    period_of = _period(step)
    people = Names(NO_PERSON)
    sums: _Sums = {}
    for done in account.done:
        period = period_of(done.work.when)
        _add(sums, people.key(done.work.person), period, done.work.minutes)
    ordered = sorted(sums, key=lambda key: (-sum(sums[key].values()), key.casefold()))
    names = labels("person", account)
    return _series(step, "", [(key, label_of("person", key, names)) for key in ordered], sums)


def _period(step: Step) -> Callable[[When], str]:
    """The period that a date counts in, "" where it can't be told."""

    def month(when: When) -> str:
        known = (when.earliest.year, when.earliest.month) == (when.latest.year, when.latest.month)
        return f"{when.earliest.year:04d}-{when.earliest.month:02d}" if known else ""

    def year(when: When) -> str:
        return "" if when.earliest == datetime.min else f"{when.earliest.year:04d}"

    return month if step == "month" else year


def _add(sums: _Sums, key: str, period: str, amount: int) -> None:
    by_period = sums.setdefault(key, {})
    by_period[period] = by_period.get(period, 0) + amount


def _series(step: Step, currency: str, found: Iterable[tuple[str, str]], sums: _Sums) -> Series:
    periods = _without_holes(step, {p for by_period in sums.values() for p in by_period if p})
    stacks = tuple(
        Stack(key, label, tuple(sums[key].get(period, 0) for period in periods))
        for key, label in found
    )
    apart = sum(by_period.get("", 0) for by_period in sums.values())
    return Series(step, currency, periods, stacks, apart)


def _without_holes(step: Step, held: set[str]) -> tuple[str, ...]:
    if not held:
        return ()
    first, last = _number(min(held)), _number(max(held))
    if last - first >= _MOST_PERIODS:
        return tuple(sorted(held))
    return tuple(_text(step, number) for number in range(first, last + 1))


def _number(period: str) -> int:
    year, _, month = period.partition("-")
    return int(year) * 12 + int(month) - 1 if month else int(year)


def _text(step: Step, number: int) -> str:
    return f"{number // 12:04d}-{number % 12 + 1:02d}" if step == "month" else f"{number:04d}"
