"""Photos in order of time, and the sittings they make."""

from dataclasses import dataclass

from journal.actions.session import Session
from journal.domain.errors import JournalError
from journal.domain.ids import PhotoId
from journal.domain.photos import Photo
from journal.domain.sittings import Sitting, default_pause, sittings_of
from journal.store.rows import UNDATED


@dataclass(frozen=True, slots=True)
class Moment:
    """A photo's place in time: ``earliest`` is ISO text in local time, "" where it has no date."""

    photo_id: PhotoId
    earliest: str
    placed: bool


def moments(session: Session) -> tuple[Moment, ...]:
    """Every photo in order of time, undated ones last."""
    return tuple(
        Moment(PhotoId(i), "" if earliest == UNDATED else earliest, bool(placed))
        for i, earliest, placed in session.journal.photos.moments()
    )


def sittings(session: Session) -> tuple[Sitting, ...]:
    """Every photo gathered into visits to the workshop, undated ones as the last group.

    The pause that parts two of them is the journal's, or chosen from the photos themselves.
    """
    found = moments(session)
    pause = session.journal.car.get().pause_minutes or default_pause([m.earliest for m in found])
    return sittings_of([(m.photo_id, m.earliest, m.placed) for m in found], pause)


def count_photos(session: Session) -> int:
    """How many photos the journal has, removed ones left out."""
    return session.journal.photos.count()


def find_photo(session: Session, text: str) -> Photo:
    """The photo that a number, a file name or the beginning of its SHA-256 means.

    Raises:
        JournalError: it means none, or more than one.
    """
    found = session.journal.photos.by_text(text)
    if not found:
        raise JournalError(f"There is no photo “{text}”: give its number, name or SHA-256.")
    if len(found) > 1:
        raise JournalError(f"“{text}” means more than one photo; give its number or SHA-256.")
    return found[0]
