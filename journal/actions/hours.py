"""Hours worked."""

from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.hours import spoken_hours
from journal.domain.ids import WorkId
from journal.domain.receipts import refuse_odd_shares
from journal.domain.work import Work

#: No day has more; a larger figure is a slip of the finger. Several days are several records.
_LONGEST = 24 * 60


def work(session: Session) -> tuple[Work, ...]:
    """All hours, in order of date."""
    return session.journal.work.all()


def record_work(session: Session, work: Work) -> Changes:
    """Record hours by one person on one day.

    Raises:
        JournalError: no person, or a time that no day has.
    """
    refuse_impossible(work)
    with session.journal.edit(_label("Record", work)) as edit:
        made = session.journal.work.add(work)
    return edit.changes(made)


def change_work(session: Session, work: Work) -> Changes:
    """Record hours anew.

    Raises:
        JournalError: as for ``record_work``.
    """
    refuse_impossible(work)
    with session.journal.edit(_label("Change", work)) as edit:
        session.journal.work.change(work)
    return edit.changes(work.id)


def remove_work(session: Session, work_id: WorkId) -> Changes:
    """Take hours out."""
    with session.journal.edit("Remove hours") as edit:
        session.journal.work.remove(work_id)
    return edit.changes()


def people(session: Session) -> tuple[str, ...]:
    """Everybody who worked, the one with the most days first."""
    return session.journal.work.people()


def _label(verb: str, work: Work) -> str:
    return f"{verb} {spoken_hours(work.minutes)} by {work.person}"


def refuse_impossible(work: Work) -> None:
    """Refuse hours without a person, or of a time that no day has.

    Raises:
        JournalError: naming what is wrong.
    """
    if not work.person.strip():
        raise JournalError("Hours need a person.")
    if not 0 < work.minutes <= _LONGEST:
        raise JournalError("A day's work is more than nothing and at most 24 hours.")
    refuse_odd_shares(work.shares)
