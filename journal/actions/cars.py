"""The car and its milestones."""

from journal.actions.session import Session
from journal.domain.car import Car, Milestone, MilestoneKind
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.ids import MilestoneId
from journal.domain.when import When


def car(session: Session) -> Car:
    """The car as recorded."""
    return session.journal.car.get()


def change_car(session: Session, car: Car) -> Changes:
    """Record the car anew.

    In another currency rates, valuations, estimates and limits stay as they were typed: 12.50 is
    12.50 of the new one, or 13 where it has no smaller coin. Receipts have currencies of their own.

    Raises:
        JournalError: the name is empty, or the currency is unknown.
    """
    from journal.domain.money import minor_units

    if not car.title.strip():
        raise JournalError("The car needs a name.")
    places = minor_units(car.currency)
    with session.journal.edit(f"Change the particulars of {car.title}") as edit:
        before = session.journal.car.get().currency
        if before != car.currency:
            session.journal.car.shift_sums(places - minor_units(before))
        session.journal.car.change(car)
    return edit.changes()


def milestones(session: Session) -> tuple[Milestone, ...]:
    """The turning points, in order of date."""
    return session.journal.car.milestones()


def add_milestone(session: Session, kind: MilestoneKind, when: When, note: str = "") -> Changes:
    """Record a turning point."""
    with session.journal.edit(f"Add milestone “{note or kind.value}”") as edit:
        made = session.journal.car.add_milestone(kind, when, note)
    return edit.changes(made)


def change_milestone(session: Session, milestone: Milestone) -> Changes:
    """Record a turning point anew."""
    with session.journal.edit(
        f"Change milestone “{milestone.note or milestone.kind.value}”"
    ) as edit:
        session.journal.car.change_milestone(milestone)
    return edit.changes()


def remove_milestone(session: Session, milestone_id: MilestoneId) -> Changes:
    """Take a turning point out."""
    with session.journal.edit("Remove milestone") as edit:
        session.journal.car.remove_milestone(milestone_id)
    return edit.changes()
