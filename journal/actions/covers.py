"""Boxes drawn on photos over what is not to be seen on copies that leave the house."""

from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.covers import CoverBox, check_box, turned
from journal.domain.errors import JournalError
from journal.domain.ids import CoverBoxId, PhotoId
from journal.domain.photos import Photo
from journal.domain.private_words import Private


def covers_on(session: Session, photo: Photo) -> tuple[CoverBox, ...]:
    """The boxes on a photo as it is shown, its own turn and all."""
    return tuple(turned(box, photo.turn) for box in session.journal.covers.on(photo.id))


def all_covers(session: Session) -> tuple[CoverBox, ...]:
    """Every box, as it is kept: before its photo's own turn."""
    return session.journal.covers.all()


def covered_photos(session: Session) -> tuple[PhotoId, ...]:
    """The photos that have a box, each once."""
    return tuple(dict.fromkeys(box.photo_id for box in session.journal.covers.all()))


def add_cover(
    session: Session, photo: Photo, place: tuple[float, float, float, float], hides: Private
) -> Changes:
    """Cover a place on a photo: x, y, width and height as shares of the picture as it is shown.

    Raises:
        JournalError: nothing of it lies on the picture.
    """
    box = _as_kept(photo, CoverBox(CoverBoxId(0), photo.id, *place, hides))
    with session.journal.edit(f"Cover a place on “{photo.name}”") as edit:
        made = session.journal.covers.add(box)
    return edit.changes(made)


def change_cover(session: Session, photo: Photo, box: CoverBox) -> Changes:
    """Record a box anew, as it is shown on its photo.

    Raises:
        JournalError: nothing of it lies on the picture, or there is no such box.
    """
    with session.journal.edit(f"Change a cover on “{photo.name}”") as edit:
        session.journal.covers.change(_as_kept(photo, box))
    return edit.changes()


def remove_cover(session: Session, box_id: CoverBoxId) -> Changes:
    """Take a box off its photo."""
    with session.journal.edit("Uncover a place on a photo") as edit:
        session.journal.covers.remove(box_id)
    return edit.changes()


def _as_kept(photo: Photo, box: CoverBox) -> CoverBox:
    if box.photo_id != photo.id:
        raise JournalError("The box belongs to another photo.")
    return turned(check_box(box), -photo.turn)
