"""Costs in the money of another time, piece by piece by the date of each."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from journal.domain.errors import JournalError
from journal.domain.price_index import (
    Level,
    NotRevalued,
    PriceIndex,
    level,
    period_of,
    ratio,
    refuse_other_currency,
)
from journal.domain.sharing import nearest, rounded, scaled
from journal.ledger.pieces import Account, Paid, PaidLine


@dataclass(frozen=True, slots=True)
class Revalued:
    """An account in the money of another time.

    Attributes:
        index: what it was revalued by.
        level: the price level of the time chosen.
        account: the money that could be revalued; all hours.
        apart: the money that could not, as it was paid.
    """

    index: PriceIndex
    level: Level
    account: Account
    apart: tuple[NotRevalued, ...]


def revalued(account: Account, index: PriceIndex, period: str) -> Revalued:
    """Every piece of money in the money of ``period``: times the new level, by that of its date.

    The whole is rounded once, half a unit away from zero, and shared by the largest remainder: over
    the periods that the money was spent in, and over the pieces of each. So no piece is more than a
    unit away from its own worth, and all tables add up as before.

    Raises:
        JournalError: the index is in another currency, or has no level for ``period``.
    """
    refuse_other_currency(index, account.books.currency)
    wanted = level(index, period)
    if wanted is None:
        raise JournalError(f"The price index “{index.name}” says nothing of {period}.")
    by_period: dict[str, list[Paid]] = {}
    for paid in account.paid:
        by_period.setdefault(period_of(paid.receipt.when), []).append(paid)
    ratios = {old: ratio(index, old, period) if old else None for old in by_period}
    known = [old for old in by_period if ratios[old] is not None]
    apart = tuple(_apart(old, by_period[old]) for old in sorted(by_period) if ratios[old] is None)
    factors = [ratios[old] or Fraction() for old in known]
    exact = [f * _sum(by_period[old]) for old, f in zip(known, factors, strict=True)]
    wholes = rounded(exact)
    new: dict[int, Paid] = {}
    for old, factor, whole in zip(known, factors, wholes, strict=True):
        new.update(_revalue(by_period[old], factor, whole))
    all_paid = tuple(new[id(one)] for one in account.paid if id(one) in new)
    return Revalued(index, wanted, Account(account.books, all_paid, account.done), apart)


def _sum(paid: list[Paid]) -> int:
    return sum(one.money + (one.difference or 0) for one in paid)


def _apart(period: str, paid: list[Paid]) -> NotRevalued:
    return NotRevalued(period, _sum(paid), tuple(one.receipt.id for one in paid))


def _revalue(paid: list[Paid], factor: Fraction, whole: int) -> Iterator[tuple[int, Paid]]:
    """Receipts of one period, by their identity, with all their pieces in the new money."""
    pieces = [money for one in paid for line in one.lines for _, money in line.parts]
    worth = iter(scaled(pieces, factor, whole))
    for one in paid:
        lines = tuple(_line(line, worth, factor) for line in one.lines)
        money = sum(line.money for line in lines)
        rest = None if one.difference is None else lines[-1].money
        yield id(one), Paid(one.receipt, one.column, money - (rest or 0), rest, lines)


def _line(line: PaidLine, worth: Iterator[int], factor: Fraction) -> PaidLine:
    parts = tuple((area_id, next(worth)) for area_id, _ in line.parts)
    price = None if line.new_price is None else nearest(line.new_price * factor)
    return PaidLine(line.line, sum(part for _, part in parts), parts, price)
