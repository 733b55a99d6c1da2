"""What the restoration cost: the tables and figures that the ledger works out.

All money is in minor units of the journal's currency, all time in whole minutes.
"""

from dataclasses import dataclass
from typing import Literal

from journal.domain.ids import ReceiptId

#: What costs can be laid out by.
CostsBy = Literal[
    "category", "area", "panel", "phase", "year", "month", "supplier", "person", "condition"
]
COSTS_BY: tuple[CostsBy, ...] = (
    "category", "area", "panel", "phase", "year", "month", "supplier", "person", "condition",
)  # fmt: skip

#: Those that a document prints, where all of them would be too many.
PRINTED_BY: tuple[CostsBy, ...] = ("category", "area", "year", "supplier")

#: What hours can be laid out by.
HoursBy = Literal["area", "person", "year"]
HOURS_BY: tuple[HoursBy, ...] = ("area", "person", "year")

#: Keys of the rows that stand for no category, area, panel, year, supplier or person.
NOT_SHARED = "(not shared)"
DIFFERENCE = "(difference)"
HOURS = "(hours)"
NO_DATE = "(no date)"
NO_SUPPLIER = "(no supplier)"
NO_PERSON = "(no person)"
NO_PANEL = "(no panel)"
MONEY = "(money)"


@dataclass(frozen=True, slots=True)
class CostRow:
    """One row of a cost table.

    ``key`` is the category, the condition, the year ("2016"), the month ("2016-07"), the supplier,
    the person, the number of the repair area, panel or phase as text, or one of the keys above;
    ``label`` is what people read. ``restoration`` and ``upkeep`` are minor units, ``minutes`` the
    hours worked. ``unproven`` is how much of the two sums rests on a paper that is lost or never
    existed.
    """

    key: str
    label: str
    restoration: int
    upkeep: int
    minutes: int
    unproven: int

    @property
    def money(self) -> int:
        """Restoration and upkeep together."""
        return self.restoration + self.upkeep

    @property
    def proven(self) -> int:
        """The money whose paper is held."""
        return self.money - self.unproven


@dataclass(frozen=True, slots=True)
class CostTable:
    """Costs by one thing; the rows always add up to ``total``, column by column.

    The total is the same whatever the costs are laid out by. Where printed totals differ from
    their lines, the difference is a row of its own (key ``DIFFERENCE``); where hours belong to no
    row of the table they stand in one of their own (key ``HOURS``), and by person, since nothing
    says whose a purchase was, all money does (key ``MONEY``).
    """

    by: CostsBy
    currency: str
    rows: tuple[CostRow, ...]
    total: CostRow


@dataclass(frozen=True, slots=True)
class HoursRow:
    """Minutes worked on one repair area, by one person or in one year."""

    key: str
    label: str
    restoration: int
    upkeep: int

    @property
    def minutes(self) -> int:
        """Restoration and upkeep together."""
        return self.restoration + self.upkeep


@dataclass(frozen=True, slots=True)
class HoursTable:
    """Hours by one thing; the rows always add up to ``total``."""

    by: HoursBy
    rows: tuple[HoursRow, ...]
    total: HoursRow


@dataclass(frozen=True, slots=True)
class MissingRate:
    """Money that stands in no sum, since no rate from its currency was given.

    ``amount`` is in minor units of ``currency``.
    """

    currency: str
    amount: int
    receipt_ids: tuple[ReceiptId, ...]


@dataclass(frozen=True, slots=True)
class CostSummary:
    """What the car cost, in a few figures.

    Money spent and hours worked are never added up: hours have no price here.

    Attributes:
        currency: ISO 4217 code that all money is in.
        restoration: spent up to the "on the road" milestone.
        upkeep: spent after it.
        minutes: all time recorded, by all people.
        restoration_minutes: the part of it up to the "on the road" milestone.
        upkeep_minutes: the part of it after.
        people: the same time by person.
        unproven: part of the money whose paper is lost or never existed.
        difference: part of the money: printed totals less the lines under them.
        differing: the receipts whose printed total is not the sum of their lines.
        saved_against_new: what used, old-stock and reconditioned parts would have cost new, less
            what they did cost, where the owner knows the price new.
        saved_on: what those parts did cost: the money that ``saved_against_new`` rests on.
        saved_lines: how many lines those are.
        not_shared: money of lines that belong to no repair area.
        not_shared_minutes: time that belongs to no repair area.
        missing_rates: money left out of all sums for want of a rate.
    """

    currency: str
    restoration: int
    upkeep: int
    minutes: int
    restoration_minutes: int
    upkeep_minutes: int
    people: tuple[HoursRow, ...]
    unproven: int
    difference: int
    differing: tuple[ReceiptId, ...]
    saved_against_new: int
    saved_on: int
    saved_lines: int
    not_shared: int
    not_shared_minutes: int
    missing_rates: tuple[MissingRate, ...]

    @property
    def money(self) -> int:
        """Restoration and upkeep together."""
        return self.restoration + self.upkeep
