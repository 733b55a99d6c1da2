"""What the sums are made of: every receipt and every day's work, taken apart piece by piece.

A piece belongs to one category, one repair area, one year and one supplier, so that whatever the
pieces are laid out by, they add up to the same total.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

from journal.domain.areas import Area
from journal.domain.car import Milestone
from journal.domain.costs import NO_DATE
from journal.domain.ids import AreaId
from journal.domain.milestones import is_upkeep
from journal.domain.money import to_currency
from journal.domain.receipts import Category, Line, Paper, Receipt, Share, Spread
from journal.domain.sharing import share
from journal.domain.when import When
from journal.domain.work import Work


@dataclass(frozen=True, slots=True)
class Books:
    """What was paid and worked on one car; ``currency`` is the one all sums are in."""

    currency: str
    receipts: tuple[Receipt, ...]
    work: tuple[Work, ...]
    areas: tuple[Area, ...]
    milestones: tuple[Milestone, ...]


@dataclass(frozen=True, slots=True)
class Spent:
    """A piece of money, in minor units of the journal's currency.

    ``category`` is None for the piece by which a printed total differs from its lines; ``area_id``
    is None for what belongs to no repair area.
    """

    money: int
    category: Category | None
    area_id: AreaId | None
    year: str
    supplier: str
    upkeep: bool
    unproven: bool


@dataclass(frozen=True, slots=True)
class Worked:
    """A piece of time, in minutes."""

    minutes: int
    area_id: AreaId | None
    year: str
    person: str
    upkeep: bool


def has_rate(receipt: Receipt, currency: str) -> bool:
    """Tell whether the receipt can be counted in ``currency``.

    A receipt in another currency whose rate was left at 1 has none: one for one would make a
    thousand yen a thousand euros.
    """
    return receipt.currency == currency or (receipt.rate > 0 and receipt.rate != 1)


def spent(books: Books) -> Iterator[Spent]:
    """All money, receipt by receipt; receipts without a rate are left out."""
    known = {area.id for area in books.areas}
    for receipt in books.receipts:
        if not has_rate(receipt, books.currency):
            continue
        upkeep = is_upkeep(receipt.when, books.milestones)
        unproven = receipt.paper is not Paper.HELD
        year = year_of(receipt.when)
        for category, area_id, part in _parts(receipt, books.currency, known):
            yield Spent(part, category, area_id, year, receipt.supplier, upkeep, unproven)
        if differs(receipt):
            rest = difference(receipt, books.currency)
            yield Spent(rest, None, None, year, receipt.supplier, upkeep, unproven)


def _parts(
    receipt: Receipt, currency: str, known: set[AreaId]
) -> Iterator[tuple[Category, AreaId | None, int]]:
    """A receipt's lines taken apart by repair area; a spread line goes where the others went."""
    amounts = line_amounts(receipt, currency)
    pairs = list(zip(receipt.lines, amounts, strict=True))
    borne = [(line, money) for line, money in pairs if line.spread is Spread.NONE]
    for line, money in pairs:
        if line.spread is Spread.NONE or not borne:
            over = [(line.shares, money)]
        else:
            by_value = line.spread is Spread.VALUE
            weights = [abs(own) if by_value else 1 for _, own in borne]
            parts = share(money, weights)
            over = [(other.shares, part) for (other, _), part in zip(borne, parts, strict=True)]
        for shares, part in over:
            for area_id, piece in _shared(part, shares, known):
                yield line.category, area_id, piece


def worked(books: Books) -> Iterator[Worked]:
    """All time, day by day."""
    known = {area.id for area in books.areas}
    for work in books.work:
        upkeep = is_upkeep(work.when, books.milestones)
        for area_id, part in _shared(work.minutes, work.shares, known):
            yield Worked(part, area_id, year_of(work.when), work.person, upkeep)


def line_amounts(receipt: Receipt, currency: str) -> tuple[int, ...]:
    """What each line came to in ``currency``, in minor units.

    The running sum is what is turned into the other currency, so that the lines add up to their
    total turned into it, and no line is more than a unit away from its own.
    """
    amounts = []
    running, before = 0, 0
    for line in receipt.lines:
        running += line.amount
        now = in_currency(running, receipt, currency)
        amounts.append(now - before)
        before = now
    return tuple(amounts)


def new_price(line: Line, receipt: Receipt, currency: str) -> int | None:
    """What a line would have cost new, in minor units of ``currency``; None where not known."""
    if line.new_price is None:
        return None
    return in_currency(line.new_price, receipt, currency)


def differs(receipt: Receipt) -> bool:
    """Tell whether the printed total is something else than the sum of the lines."""
    return receipt.printed_total is not None and receipt.printed_total != receipt.lines_total


def difference(receipt: Receipt, currency: str) -> int:
    """The printed total less the lines, in minor units of ``currency``; 0 where none is printed."""
    if receipt.printed_total is None:
        return 0
    printed = in_currency(receipt.printed_total, receipt, currency)
    return printed - in_currency(receipt.lines_total, receipt, currency)


def in_currency(minor: int, receipt: Receipt, currency: str) -> int:
    """A sum of the receipt in ``currency``, by the receipt's own rate."""
    if receipt.currency == currency:
        return minor
    return to_currency(minor, receipt.currency, receipt.rate, currency)


def year_of(when: When) -> str:
    """The year that a date counts in: that of its earliest day, ``NO_DATE`` for an open start."""
    return NO_DATE if when.earliest == datetime.min else f"{when.earliest.year:04d}"


def _shared(
    whole: int, shares: tuple[Share, ...], known: set[AreaId]
) -> Iterator[tuple[AreaId | None, int]]:
    """Parts of a whole by repair area; what no area of the journal has goes to None."""
    if not shares:
        yield None, whole
        return
    parts = share(whole, [one.weight for one in shares])
    for one, part in zip(shares, parts, strict=True):
        yield (one.area_id if one.area_id in known else None), part
