"""What it came to."""

from journal.actions.session import Session
from journal.domain.costs import (
    COSTS_BY,
    CostsBy,
    CostSummary,
    CostTable,
    HoursBy,
    HoursTable,
)
from journal.ledger.books import Books
from journal.ledger.costs import cost_summary, cost_table
from journal.ledger.hours import hours_table


def costs(session: Session, by: CostsBy) -> CostTable:
    """Money and hours by category, repair area, year or supplier, restoration against upkeep."""
    return cost_table(by, _books(session))


def summary(session: Session) -> CostSummary:
    """The few figures that say what the car cost."""
    return cost_summary(_books(session))


def laid_out(session: Session) -> tuple[CostSummary, tuple[CostTable, ...]]:
    """The figures and every cost table, in the order of ``COSTS_BY``, from one reading."""
    books = _books(session)
    return cost_summary(books), tuple(cost_table(by, books) for by in COSTS_BY)


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
