"""Receipts: what was paid to one supplier on one day, in lines."""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, LineId, ReceiptId, Sha256
from journal.domain.money import MOST
from journal.domain.quantities import LEAST_QUANTITY, LEAST_RATE, MOST_QUANTITY, MOST_RATE
from journal.domain.when import When


class Paper(StrEnum):
    """Where a receipt's paper is."""

    HELD = "held"
    LOST = "lost"
    NEVER = "never existed"


class Category(StrEnum):
    """What a line was bought for (common practice, no source)."""

    PANELS = "panels and metal"
    MECHANICAL = "mechanical parts"
    ELECTRICAL = "electrical"
    TRIM = "trim and glass"
    PAINT = "paint and protection"
    CONSUMABLES = "consumables"
    TOOLS = "tools"
    SERVICES = "work by others"
    FEES = "fees and postage"
    CAR = "the car itself"
    OTHER = "other"


class Condition(StrEnum):
    """In what condition a part was bought."""

    NEW = "new"
    USED = "used"
    NEW_OLD_STOCK = "new old stock"
    RECONDITIONED = "reconditioned"
    NONE = "not a part"


class Spread(StrEnum):
    """How a line that is for the whole receipt (postage, a discount) goes over the other lines."""

    NONE = ""
    VALUE = "by value"
    COUNT = "by count"


@dataclass(frozen=True, slots=True)
class Share:
    """How much of a line or of a day's work belongs to a repair area: a whole-number weight."""

    area_id: AreaId
    weight: int


@dataclass(frozen=True, slots=True)
class Line:
    """One thing bought. ``amount`` is for the whole line, in minor units of the receipt's currency.

    ``new_price`` is what the line would have cost new, in the same units, where the owner knows.
    A line with a ``spread`` belongs to the repair areas of the other lines, in parts.
    """

    id: LineId
    text: str
    quantity: Decimal
    amount: int
    category: Category
    condition: Condition
    new_price: int | None = None
    shares: tuple[Share, ...] = ()
    spread: Spread = Spread.NONE


@dataclass(frozen=True, slots=True)
class Receipt:
    """What was paid to one supplier on one day.

    ``printed_total`` is the total as the paper has it, minor units, None where it isn't known;
    it is kept as printed even where the lines add up to something else. ``papers`` are originals.
    ``stands_in`` says what stands in for a paper that is lost or never was. ``rate`` is how many
    units of the journal's currency one unit of ``currency`` cost, 1 for the journal's own.
    ``tax`` is the tax printed on it, contained in the total. ``refund_of`` is the receipt that this
    one takes back in part or whole, with negative lines. ``read_text`` is what was read from its
    paper, kept for searching.
    """

    id: ReceiptId
    supplier: str
    when: When
    currency: str
    paper: Paper
    printed_total: int | None
    lines: tuple[Line, ...]
    papers: tuple[Sha256, ...] = ()
    stands_in: str = ""
    note: str = ""
    rate: Decimal = Decimal(1)
    tax: int | None = None
    refund_of: ReceiptId | None = None
    read_text: str = ""

    @property
    def lines_total(self) -> int:
        """The sum of the lines, in minor units."""
        return sum(line.amount for line in self.lines)


def refuse_unreasonable(receipt: Receipt) -> None:
    """Refuse numbers that no receipt has and no sum could hold.

    Raises:
        JournalError: a quantity, a sum, a share or the rate is out of reason.
    """
    if not _lies_in(receipt.rate, LEAST_RATE, MOST_RATE):
        raise JournalError(f"The rate {receipt.rate:.6g} is not one that a currency has.")
    if abs(receipt.printed_total or 0) > MOST:
        raise JournalError("The printed total is too large a sum to have been spent on a car.")
    for line in receipt.lines:
        shown = line.text[:40]
        if not _lies_in(line.quantity, LEAST_QUANTITY, MOST_QUANTITY):
            raise JournalError(f"{line.quantity:.6g} is not a quantity that “{shown}” comes in.")
        if max(abs(line.amount), abs(line.new_price or 0)) > MOST:
            raise JournalError(f"The price of “{shown}” is too large a sum for a car.")
        refuse_odd_shares(line.shares)


def refuse_odd_shares(shares: Iterable[Share]) -> None:
    """Refuse shares that nothing can be shared out by.

    Raises:
        JournalError: a share is less than nothing or beyond all reason.
    """
    if any(not 0 <= share.weight <= MOST for share in shares):
        raise JournalError("A share can't be less than nothing, nor beyond all reason.")


def _lies_in(number: Decimal, least: Decimal, most: Decimal) -> bool:
    return number.is_finite() and least <= number <= most
