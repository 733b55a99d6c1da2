"""What the sums are made of: receipts, work, and what one line of a receipt came to."""

from dataclasses import dataclass
from datetime import datetime

from journal.domain.areas import Area
from journal.domain.car import Milestone
from journal.domain.costs import NO_DATE
from journal.domain.drawing import Panel
from journal.domain.ids import AreaId
from journal.domain.money import to_currency
from journal.domain.receipts import Line, Receipt, Share
from journal.domain.sharing import share
from journal.domain.when import When
from journal.domain.work import Work

#: Parts of a whole by repair area; None for what belongs to no area of the journal.
Parts = tuple[tuple[AreaId | None, int], ...]


@dataclass(frozen=True, slots=True)
class Books:
    """What was paid and worked on one car; ``currency`` is the one all sums are in.

    ``panels`` are in the order of the drawing; they give names to those that areas lie on.
    """

    currency: str
    receipts: tuple[Receipt, ...]
    work: tuple[Work, ...]
    areas: tuple[Area, ...]
    milestones: tuple[Milestone, ...]
    panels: tuple[Panel, ...] = ()


def has_rate(receipt: Receipt, currency: str) -> bool:
    """Tell whether the receipt can be counted in ``currency``.

    A receipt in another currency whose rate was left at 1 has none: one for one would make a
    thousand yen a thousand euros.
    """
    return receipt.currency == currency or (receipt.rate > 0 and receipt.rate != 1)


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
    """What a line would have cost new, in minor units of ``currency``; None where not known.

    Of a line that takes money back it is below zero too: what was saved on it is saved no more.
    """
    if line.new_price is None:
        return None
    price = in_currency(line.new_price, receipt, currency)
    return -abs(price) if line.amount < 0 else price


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


def shared(whole: int, shares: tuple[Share, ...], known: set[AreaId]) -> Parts:
    """Parts of a whole by repair area; what no area of the journal has goes to None."""
    if not shares:
        return ((None, whole),)
    if len(shares) == 1:
        return ((_known(shares[0], known), whole),)
    parts = share(whole, [one.weight for one in shares])
    return tuple((_known(one, known), part) for one, part in zip(shares, parts, strict=True))


def _known(one: Share, known: set[AreaId]) -> AreaId | None:
    return one.area_id if one.area_id in known else None
