"""Photos in order of time, and the sittings they make."""

from datetime import datetime

from journal.actions.session import Session
from journal.domain import sittings as rules
from journal.domain.errors import JournalError
from journal.domain.ids import PhotoId
from journal.domain.photos import Photo
from journal.domain.sittings import Moment, Sitting
from journal.store.rows import UNDATED


def moments(session: Session) -> tuple[Moment, ...]:
    """Every photo's place in time, in order, undated ones last."""
    return tuple(
        Moment(PhotoId(number), "" if earliest == UNDATED else earliest, bool(placed))
        for number, earliest, placed in session.journal.photos.moments()
    )


def sittings(session: Session) -> tuple[Sitting, ...]:
    """Every photo gathered into visits to the workshop, undated ones as the last group.

    The pause that parts two of them is the journal's, or chosen from the photos themselves.
    """
    found = moments(session)
    return rules.sittings(found, pause_minutes(session, found))


def pause_minutes(session: Session, found: tuple[Moment, ...] | None = None) -> int:
    """The pause that parts two sittings: the owner's, or the one chosen from the photos."""
    chosen = session.journal.car.get().pause_minutes
    if chosen:
        return chosen
    times = moments(session) if found is None else found
    return rules.default_pause(datetime.fromisoformat(m.earliest) for m in times if m.earliest)


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
