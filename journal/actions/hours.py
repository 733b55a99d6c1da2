"""Hours worked."""

from dataclasses import replace

from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.hour_sums import HourTable, SumsBy
from journal.domain.hours import spoken_hours
from journal.domain.ids import WorkId
from journal.domain.people import same_name
from journal.domain.receipts import refuse_odd_shares
from journal.domain.work import Work, WorkBasis

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

    Hours that a clock or photos gave are the owner's word once their time, day or person differs.

    Raises:
        JournalError: as for ``record_work``.
    """
    refuse_impossible(work)
    before = next((one for one in session.journal.work.all() if one.id == work.id), work)
    same = _known_by(before) == _known_by(work)
    kept = replace(work, basis=before.basis if same else WorkBasis.STATED)
    with session.journal.edit(_label("Change", work)) as edit:
        session.journal.work.change(kept)
    return edit.changes(work.id)


def remove_work(session: Session, work_id: WorkId) -> Changes:
    """Take hours out."""
    with session.journal.edit("Remove hours") as edit:
        session.journal.work.remove(work_id)
    return edit.changes()


def people(session: Session) -> tuple[str, ...]:
    """Everybody who worked, the one with the most days first; then who is only on the list."""
    worked = session.journal.work.people()
    known = {same_name(name) for name in worked}
    listed = (person.name for person in session.journal.people.all())
    return (*worked, *(name for name in listed if same_name(name) not in known))


def basis_in_words(session: Session, work: Work) -> str:
    """What hours that aren't the owner's word rest on, in a sentence; "" for the owner's word."""
    journal = session.journal
    if work.basis is WorkBasis.CLOCKED:
        run = journal.clockings.of_work(work.id)
        if run is not None and run.stopped is not None:
            return f"Clocked, {run.started:%H:%M} to {run.stopped:%H:%M}."
    span = journal.photo_spans.of_work(work.id) if work.basis is WorkBasis.PHOTOS else None
    if span is None:
        return ""
    first, last = journal.photos.get(span)
    if first.when is None or last.when is None:
        return ""
    return (
        f"At least: first to last shot, {first.when.earliest:%H:%M} to {last.when.earliest:%H:%M}."
    )


def hour_sums(session: Session, by: SumsBy) -> HourTable:
    """Hours by repair area, panel, person, year or month: own, paid, valued, and how known."""
    from journal.ledger.books import Books
    from journal.ledger.hour_sums import sum_hours

    journal = session.journal
    books = Books(
        currency=journal.car.get().currency,
        receipts=(),
        work=journal.work.all(),
        areas=journal.areas.all(),
        milestones=journal.car.milestones(),
    )
    labels = {panel.id: panel.label for panel in journal.drawing.panels()}
    return sum_hours(by, books, journal.people.all(), labels)


def _known_by(work: Work) -> tuple[object, ...]:
    """What of hours a clock or photos told."""
    return work.minutes, work.when.edtf, same_name(work.person)


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
