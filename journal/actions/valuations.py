"""What the car is valued at, and cars to compare it with."""

from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.ids import ComparableId, ValuationId
from journal.domain.valuations import (
    Comparable,
    Valuation,
    refuse_odd_comparable,
    refuse_odd_valuation,
)


def valuations(session: Session) -> tuple[Valuation, ...]:
    """Every valuation, in order of date."""
    return session.journal.valuations.all()


def record_valuation(session: Session, valuation: Valuation) -> Changes:
    """Record what somebody said the car is worth; ``sha256`` is an original of the journal.

    Raises:
        JournalError: nobody said it, or the amount is none that a car has.
    """
    refuse_odd_valuation(valuation)
    with session.journal.edit(f"Record the valuation by {valuation.valuer}") as edit:
        made = session.journal.valuations.add(valuation)
    return edit.changes(made)


def change_valuation(session: Session, valuation: Valuation) -> Changes:
    """Record a valuation anew.

    Raises:
        JournalError: as for ``record_valuation``, or there is none of its number.
    """
    refuse_odd_valuation(valuation)
    with session.journal.edit(f"Change the valuation by {valuation.valuer}") as edit:
        session.journal.valuations.change(valuation)
    return edit.changes(valuation.id)


def remove_valuation(session: Session, valuation_id: ValuationId) -> Changes:
    """Take a valuation out."""
    with session.journal.edit("Remove a valuation") as edit:
        session.journal.valuations.remove(valuation_id)
    return edit.changes()


def comparables(session: Session) -> tuple[Comparable, ...]:
    """Every car to compare with, in order of date."""
    return session.journal.valuations.comparables()


def record_comparable(session: Session, comparable: Comparable) -> Changes:
    """Record another car with its price.

    Raises:
        JournalError: no words say which it is, its currency is unknown, or its price is none that
            a car has.
    """
    refuse_odd_comparable(comparable)
    with session.journal.edit(f"Record “{comparable.text.strip()}” to compare with") as edit:
        made = session.journal.valuations.add_comparable(comparable)
    return edit.changes(made)


def change_comparable(session: Session, comparable: Comparable) -> Changes:
    """Record another car anew.

    Raises:
        JournalError: as for ``record_comparable``, or there is none of its number.
    """
    refuse_odd_comparable(comparable)
    with session.journal.edit(f"Change “{comparable.text.strip()}” to compare with") as edit:
        session.journal.valuations.change_comparable(comparable)
    return edit.changes(comparable.id)


def remove_comparable(session: Session, comparable_id: ComparableId) -> Changes:
    """Take a car to compare with out."""
    with session.journal.edit("Remove a car to compare with") as edit:
        session.journal.valuations.remove_comparable(comparable_id)
    return edit.changes()
