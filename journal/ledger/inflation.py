"""Costs in the money of another time, piece by piece by the date of each."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from operator import is_

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
        spans: what it was revalued from, period by period.
    """

    index: PriceIndex
    level: Level
    account: Account
    apart: tuple[NotRevalued, ...]
    spans: Mapping[str, "_Span"]


@dataclass(frozen=True, slots=True)
class _Span:
    """The receipts of one period, as paid and revalued so that they add up to ``whole``."""

    paid: tuple[Paid, ...]
    factor: Fraction
    whole: int
    worth: tuple[Paid, ...]


def revalued(
    account: Account, index: PriceIndex, period: str, before: Revalued | None = None
) -> Revalued:
    """Every piece of money in the money of ``period``: times the new level, by that of its date.

    The whole is rounded once, half a unit away from zero, and shared by the largest remainder: over
    the periods that the money was spent in, and over the pieces of each. So no piece is more than a
    unit away from its own worth, and all tables add up as before. Periods that are the same as in
    ``before`` are not worked out again.

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
    apart, factors = [], {}
    for old in sorted(by_period):
        factor = ratio(index, old, period) if old else None
        if factor is None:
            ids = tuple(paid.receipt.id for paid in by_period[old])
            apart.append(NotRevalued(old, _sum(by_period[old]), ids))
        else:
            factors[old] = factor
    wholes = rounded([factor * _sum(by_period[old]) for old, factor in factors.items()])
    spans = {}
    for (old, factor), whole in zip(factors.items(), wholes, strict=True):
        known = None if before is None else before.spans.get(old)
        spans[old] = _span(tuple(by_period[old]), factor, whole, known)
    worth = {id(paid): new for span in spans.values() for paid, new in _pairs(span)}
    found = tuple(worth[id(paid)] for paid in account.paid if id(paid) in worth)
    new_account = Account(account.books, found, account.done)
    return Revalued(index, wanted, new_account, tuple(apart), spans)


def _sum(paid: Iterable[Paid]) -> int:
    return sum(one.money + (one.difference or 0) for one in paid)


def _pairs(span: _Span) -> Iterator[tuple[Paid, Paid]]:
    return zip(span.paid, span.worth, strict=True)


def _span(paid: tuple[Paid, ...], factor: Fraction, whole: int, known: _Span | None) -> _Span:
    """Receipts of one period in the new money."""
    if known is not None and (known.factor, known.whole) == (factor, whole) and _same(known, paid):
        return known
    pieces = [money for one in paid for line in one.lines for _, money in line.parts]
    worth = iter(scaled(pieces, factor, whole))
    new = []
    for one in paid:
        lines = tuple(_line(line, worth, factor) for line in one.lines)
        money = sum(line.money for line in lines)
        rest = None if one.difference is None else lines[-1].money
        new.append(Paid(one.receipt, one.counts, one.column, money - (rest or 0), rest, lines))
    return _Span(paid, factor, whole, tuple(new))


def _same(known: _Span, paid: tuple[Paid, ...]) -> bool:
    """Whether a span has the very same receipts: equal ones would not be found by identity."""
    return len(known.paid) == len(paid) and all(map(is_, known.paid, paid))


def _line(line: PaidLine, worth: Iterator[int], factor: Fraction) -> PaidLine:
    parts = tuple((area_id, next(worth)) for area_id, _ in line.parts)
    price = None if line.new_price is None else nearest(line.new_price * factor)
    return PaidLine(line.line, sum(part for _, part in parts), parts, price)
