"""Receipts and work taken apart, once: what every table, figure and chart is added up from.

A receipt's lines and the parts of each line are the pieces. Parts add up to their line, lines to
what the receipt came to; so whatever they are laid out by, they add up to the same total.
"""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from journal.domain.ids import AreaId, ReceiptId
from journal.domain.milestones import lies_after, on_the_road
from journal.domain.phases import Phases, phases
from journal.domain.receipts import Line, Paper, Receipt, Spread
from journal.domain.sharing import share
from journal.domain.when import When
from journal.domain.work import Work
from journal.ledger.books import (
    Books,
    Parts,
    difference,
    differs,
    has_rate,
    line_amounts,
    new_price,
    shared,
)

#: The columns that money is summed in: which side of the road, and whether a paper proves it.
COLUMNS = range(4)


def column(*, upkeep: bool, unproven: bool) -> int:
    """The place of a column among the four."""
    return 2 * upkeep + unproven


@dataclass(frozen=True, slots=True)
class PaidLine:
    """What a line came to, in minor units of the journal's currency, and where it went.

    ``line`` is None for the piece by which a printed total differs from its lines. ``new_price`` is
    what it would have cost new, in the same units, None where that isn't known.
    """

    line: Line | None
    money: int
    parts: Parts
    new_price: int | None = None


@dataclass(frozen=True, slots=True)
class Paid:
    """A receipt taken apart.

    ``counts`` is the date by which it is restoration or upkeep, and in a phase: its own, or for a
    refund that of the purchase, so that money taken back is taken from where it went.
    ``money`` is what its lines came to. ``lines`` ends with the difference to its printed total
    where there is one: a piece without a line, of ``difference`` minor units, None for none.
    """

    receipt: Receipt
    counts: When
    column: int
    money: int
    difference: int | None
    lines: tuple[PaidLine, ...]

    @property
    def upkeep(self) -> bool:
        """Whether it counts after the "on the road" milestone."""
        return self.column >= 2

    @property
    def unproven(self) -> bool:
        """Whether its paper is lost or never existed."""
        return self.column % 2 == 1


@dataclass(frozen=True, slots=True)
class Done:
    """A day's work taken apart, in minutes."""

    work: Work
    upkeep: bool
    parts: Parts


class Account:
    """All receipts and work of a journal, taken apart.

    Attributes:
        books: what was taken apart.
        paid: every receipt that can be counted, in order of date.
        done: all work, in order of date.
    """

    def __init__(self, books: Books, paid: tuple[Paid, ...], done: tuple[Done, ...]) -> None:
        self.books = books
        self.paid = paid
        self.done = done

    @cached_property
    def phases(self) -> Phases:
        """The phases of the restoration."""
        return phases(self.books.milestones)

    @cached_property
    def area_money(self) -> dict[AreaId | None, list[int]]:
        """The four columns of every repair area; None for what belongs to none.

        Differences of printed totals are left out, since they belong nowhere at all.
        """
        by_column: list[dict[AreaId | None, int]] = [defaultdict(int) for _ in COLUMNS]
        for paid in self.paid:
            sums = by_column[paid.column]
            for line in paid.lines:
                for area_id, money in line.parts:
                    sums[area_id] += money
            if paid.difference is not None:
                sums[None] -= paid.difference
        areas = dict.fromkeys(area_id for sums in by_column for area_id in sums)
        return {area_id: [sums.get(area_id, 0) for sums in by_column] for area_id in areas}

    @cached_property
    def area_minutes(self) -> dict[AreaId | None, list[int]]:
        """Minutes restoring and of upkeep of every repair area; None for what belongs to none."""
        sums: dict[AreaId | None, list[int]] = {}
        for done in self.done:
            for area_id, minutes in done.parts:
                sums.setdefault(area_id, [0, 0])[done.upkeep] += minutes
        return sums


def taken_apart(books: Books, before: Account | None = None) -> Account:
    """Every receipt and all work, piece by piece; receipts without a rate are left out.

    What is the same as in ``before`` is not taken apart again.
    """
    known = {area.id for area in books.areas}
    road = on_the_road(books.milestones)
    good = before if before is not None and _same_rules(before.books, books) else None
    at_hand = {} if good is None else {id(paid.receipt): paid for paid in good.paid}
    bought = _purchases(books)
    paid = []
    for receipt in books.receipts:
        counts = bought.get(receipt.refund_of) if receipt.refund_of else None
        counts = counts or receipt.when
        found = at_hand.get(id(receipt))
        if found is None or found.counts != counts:
            found = _paid(receipt, counts, books.currency, known, road)
        if found is not None:
            paid.append(found)
    if good is not None and good.books.work is books.work:
        return Account(books, tuple(paid), good.done)
    done = (
        Done(work, lies_after(work.when, road), shared(work.minutes, work.shares, known))
        for work in books.work
    )
    return Account(books, tuple(paid), tuple(done))


def _purchases(books: Books) -> dict[ReceiptId, When]:
    """The dates of the receipts that others take back in part or whole."""
    taken_back = {one.refund_of for one in books.receipts if one.refund_of is not None}
    return {one.id: one.when for one in books.receipts if one.id in taken_back}


def _same_rules(old: Books, books: Books) -> bool:
    """Whether receipts and work are taken apart the same way."""
    if (old.currency, old.milestones) != (books.currency, books.milestones):
        return False
    return [area.id for area in old.areas] == [area.id for area in books.areas]


def _paid(
    receipt: Receipt, counts: When, currency: str, known: set[AreaId], road: date | None
) -> Paid | None:
    """A receipt taken apart; None for one without a rate."""
    if not has_rate(receipt, currency):
        return None
    unproven = receipt.paper is not Paper.HELD
    place = column(upkeep=lies_after(counts, road), unproven=unproven)
    amounts = line_amounts(receipt, currency)
    prices = tuple(new_price(line, receipt, currency) for line in receipt.lines)
    lines = list(_lines(receipt, amounts, prices, known))
    rest = None
    if differs(receipt):
        rest = difference(receipt, currency)
        lines.append(PaidLine(None, rest, ((None, rest),)))
    return Paid(receipt, counts, place, sum(amounts), rest, tuple(lines))


def _lines(
    receipt: Receipt,
    amounts: tuple[int, ...],
    prices: tuple[int | None, ...],
    known: set[AreaId],
) -> Iterator[PaidLine]:
    borne = [
        (line, money)
        for line, money in zip(receipt.lines, amounts, strict=True)
        if line.spread is Spread.NONE
    ]
    for line, money, price in zip(receipt.lines, amounts, prices, strict=True):
        if line.spread is Spread.NONE or not borne:
            parts = shared(money, line.shares, known)
        else:
            parts = _spread(line, money, borne, known)
        yield PaidLine(line, money, parts, price)


def _spread(line: Line, money: int, borne: list[tuple[Line, int]], known: set[AreaId]) -> Parts:
    """Where a line for the whole receipt goes: where the others went."""
    by_value = line.spread is Spread.VALUE
    parts = share(money, [abs(own) if by_value else 1 for _, own in borne])
    return tuple(
        piece
        for (other, _), part in zip(borne, parts, strict=True)
        for piece in shared(part, other.shares, known)
    )
