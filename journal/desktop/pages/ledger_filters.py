"""Which receipts or hours a figure of the ledger is made of."""

from collections.abc import Callable, Collection
from dataclasses import dataclass

from journal.domain.car import Milestone
from journal.domain.costs import (
    DIFFERENCE,
    NO_DATE,
    NO_PERSON,
    NO_SUPPLIER,
    NOT_SHARED,
    CostRow,
    CostsBy,
)
from journal.domain.ids import ReceiptId
from journal.domain.milestones import is_upkeep
from journal.domain.receipts import Condition, Paper, Receipt
from journal.domain.when import When
from journal.domain.work import Work

_SECOND_HAND = frozenset({Condition.USED, Condition.NEW_OLD_STOCK, Condition.RECONDITIONED})


@dataclass(frozen=True, slots=True)
class ReceiptFilter:
    """Receipts that pass, and in words which they are."""

    words: str
    passes: Callable[[Receipt], bool]


@dataclass(frozen=True, slots=True)
class WorkFilter:
    """Hours that pass, and in words which they are."""

    words: str
    passes: Callable[[Work], bool]


def of_row(by: CostsBy, row: CostRow) -> ReceiptFilter:
    """The receipts that a row of a cost table is made of."""
    if row.key == DIFFERENCE:
        return ReceiptFilter("lines that don't make the printed total", _differs)
    if row.key == NOT_SHARED:
        return not_shared()
    tests: dict[CostsBy, Callable[[Receipt], bool]] = {
        "category": lambda receipt: any(line.category.value == row.key for line in receipt.lines),
        "area": lambda receipt: any(
            str(part.area_id) == row.key for line in receipt.lines for part in line.shares
        ),
        "year": lambda receipt: _year(receipt.when) == row.key,
        "supplier": lambda receipt: _supplier(receipt) == row.key.casefold(),
    }
    return ReceiptFilter(row.label, tests[by])


def restoration(milestones: Collection[Milestone]) -> ReceiptFilter:
    """What was paid before the car was back on the road."""
    return ReceiptFilter("restoration", lambda receipt: not is_upkeep(receipt.when, milestones))


def upkeep(milestones: Collection[Milestone]) -> ReceiptFilter:
    """What was paid since the car is back on the road."""
    return ReceiptFilter("upkeep", lambda receipt: is_upkeep(receipt.when, milestones))


def not_proven() -> ReceiptFilter:
    """What no paper proves."""
    return ReceiptFilter(
        "paper lost or never existed", lambda receipt: receipt.paper is not Paper.HELD
    )


def second_hand() -> ReceiptFilter:
    """Used, old-stock and reconditioned parts whose price new is known."""

    def passes(receipt: Receipt) -> bool:
        return any(
            line.condition in _SECOND_HAND and line.new_price is not None for line in receipt.lines
        )

    return ReceiptFilter("parts not bought new, price new known", passes)


def not_shared() -> ReceiptFilter:
    """What belongs to no repair area."""
    return ReceiptFilter(
        "not shared over repair areas",
        lambda receipt: any(not line.shares for line in receipt.lines),
    )


def these(words: str, ids: Collection[ReceiptId]) -> ReceiptFilter:
    """Receipts by number."""
    return ReceiptFilter(words, lambda receipt: receipt.id in ids)


def hours_of_row(by: CostsBy, row: CostRow) -> WorkFilter:
    """The hours that a row of a cost table is made of."""
    if by == "area" and row.key == NOT_SHARED:
        return WorkFilter("not shared over repair areas", lambda work: not work.shares)
    if by == "area":
        return WorkFilter(
            row.label, lambda work: any(str(p.area_id) == row.key for p in work.shares)
        )
    if by == "year":
        return WorkFilter(row.label, lambda work: _year(work.when) == row.key)
    return WorkFilter("all hours", lambda _work: True)


def hours_by(person: str) -> WorkFilter:
    """The hours of one person."""
    return WorkFilter(person, lambda work: (work.person or NO_PERSON) == person)


def _differs(receipt: Receipt) -> bool:
    return receipt.printed_total is not None and receipt.printed_total != receipt.lines_total


def _supplier(receipt: Receipt) -> str:
    return " ".join(receipt.supplier.split()).casefold() or NO_SUPPLIER


def _year(when: When) -> str:
    return NO_DATE if when.earliest == when.earliest.min else f"{when.earliest.year:04d}"
