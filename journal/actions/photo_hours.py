"""Hours offered from the first to the last photo of a day."""

from dataclasses import dataclass

from journal.actions.hours import refuse_impossible
from journal.actions.labels import photos as said_photos
from journal.actions.session import Session
from journal.actions.timeline import pause_minutes
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.hours import spoken_hours
from journal.domain.ids import WorkId
from journal.domain.photo_spans import PhotoDay, photo_days, without_hours
from journal.domain.receipts import Share, refuse_odd_shares
from journal.domain.when import When
from journal.domain.work import Work


@dataclass(frozen=True, slots=True)
class PhotoHours:
    """Hours to be recorded of a day's photos: whose they are, and for what."""

    day: PhotoDay
    person: str
    note: str = ""
    shares: tuple[Share, ...] = ()


def days_without_hours(session: Session) -> tuple[PhotoDay, ...]:
    """The days that photos show somebody at work on, and nobody's hours are recorded for."""
    spans = session.journal.photo_spans
    taken = spans.shots()
    if not taken:
        return ()
    days = photo_days(taken, pause_minutes(session), spans.areas())
    return without_hours(days, session.journal.work.all())


def record_photo_hours(session: Session, wanted: tuple[PhotoHours, ...]) -> Changes:
    """Record the hours of one or more days as one edit, each marked as a lower bound.

    Raises:
        JournalError: nobody named, or nothing to record.
    """
    if not wanted:
        raise JournalError("There is no day to record hours of.")
    works = []
    for one in wanted:
        work = Work(
            WorkId(0), When.on(one.day.day), one.day.minutes, " ".join(one.person.split()),
            one.note.strip(), one.shares,
        )  # fmt: skip
        refuse_impossible(work)
        refuse_odd_shares(one.shares)
        works.append(work)
    total = sum(work.minutes for work in works)
    photos = [photo for one in wanted for photo in one.day.photo_ids]
    label = f"Record at least {spoken_hours(total)} from {said_photos(photos)}"
    with session.journal.edit(label) as edit:
        made = []
        for one, work in zip(wanted, works, strict=True):
            made.append(session.journal.work.add(work))
            session.journal.photo_spans.add(made[-1], one.day.first.photo_id, one.day.last.photo_id)
    return edit.changes(made[0])
