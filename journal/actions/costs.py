"""What it came to."""

from dataclasses import dataclass

from journal.actions.session import Session
from journal.domain.areas import Area
from journal.domain.costs import (
    COSTS_BY,
    CostsBy,
    CostSummary,
    CostTable,
    HoursBy,
    HoursTable,
)
from journal.domain.receipts import Receipt
from journal.domain.work import Work
from journal.ledger.books import Books
from journal.ledger.costs import cost_summary, cost_table
from journal.ledger.hours import hours_table


def costs(session: Session, by: CostsBy) -> CostTable:
    """Money and hours by category, repair area, year or supplier, restoration against upkeep."""
    return cost_table(by, _books(session))


def summary(session: Session) -> CostSummary:
    """The few figures that say what the car cost."""
    return cost_summary(_books(session))


@dataclass(frozen=True, slots=True)
class LaidOut:
    """What the car cost, and what that is made of.

    ``tables`` are in the order of ``COSTS_BY``; receipts and work in order of date.
    """

    summary: CostSummary
    tables: tuple[CostTable, ...]
    receipts: tuple[Receipt, ...]
    work: tuple[Work, ...]
    areas: tuple[Area, ...]


def laid_out(session: Session) -> LaidOut:
    """The figures, every cost table and the books behind them, from one reading."""
    books = _books(session)
    tables = tuple(cost_table(by, books) for by in COSTS_BY)
    return LaidOut(cost_summary(books), tables, books.receipts, books.work, books.areas)


def hours(session: Session, by: HoursBy) -> HoursTable:
    """Hours by repair area, person or year."""
    return hours_table(by, _books(session))


def _books(session: Session) -> Books:
    journal = session.journal
    return Books(
        currency=journal.car.get().currency,
        receipts=journal.receipts.all(),
        work=journal.work.all(),
        areas=journal.areas.all(),
        milestones=journal.car.milestones(),
    )
