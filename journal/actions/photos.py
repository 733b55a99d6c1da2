"""What a person does to photos: dates, captions, turning, removing, the camera's clock."""

from collections.abc import Sequence
from datetime import datetime

from journal.actions import labels
from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.clock import best, shift_for, with_shift
from journal.domain.errors import JournalError, ReadOnlyError
from journal.domain.ids import CameraId, PhotoId
from journal.domain.photos import Basis, Camera, DateCandidate, Photo
from journal.domain.when import parse
from journal.files.trash import to_trash
from journal.store import clearing


def photo(session: Session, photo_id: PhotoId) -> Photo:
    """One photo.

    Raises:
        JournalError: there is none of that number.
    """
    return session.journal.photos.get([photo_id])[0]


def photos(session: Session, ids: Sequence[PhotoId]) -> tuple[Photo, ...]:
    """Photos by number, in the order asked."""
    return session.journal.photos.get(ids)


def all_photos(session: Session) -> tuple[Photo, ...]:
    """Every photo that isn't removed, in order of time."""
    return session.journal.photos.all()


def date_candidates(session: Session, photo_id: PhotoId) -> tuple[DateCandidate, ...]:
    """Every date that something said of a photo, as it was said."""
    return session.journal.photos.candidates(photo_id)


def set_date(session: Session, ids: Sequence[PhotoId], text: str) -> Changes:
    """Record when photos were taken, on the owner's word: EDTF, or words like "summer 2009".

    Raises:
        JournalError: the text is no date.
    """
    when = parse(text)
    with session.journal.edit(f"Date {labels.photos(ids)}") as edit:
        for photo_id in ids:
            session.journal.photos.set_when(photo_id, when, Basis.OWNER, None)
    return edit.changes()


def forget_owner_date(session: Session, ids: Sequence[PhotoId]) -> Changes:
    """Go back to what the files themselves say of their date."""
    store = session.journal.photos
    shifts = {camera.id: camera.shift_seconds for camera in store.cameras()}
    with session.journal.edit(f"Date {labels.photos(ids)} by their files") as edit:
        for shown in store.get(ids):
            found = best(store.candidates(shown.id))
            if found is None:
                store.set_when(shown.id, None, Basis.UNKNOWN, None)
                continue
            shift = shifts.get(shown.camera_id, 0) if shown.camera_id else 0
            when = with_shift(found.when, found.basis, shift)
            store.set_when(shown.id, when, found.basis, found.offset)
    return edit.changes()


def set_caption(session: Session, ids: Sequence[PhotoId], caption: str) -> Changes:
    """Say what photos show."""
    with session.journal.edit(f"Caption {labels.photos(ids)}") as edit:
        for photo_id in ids:
            session.journal.photos.set_caption(photo_id, caption)
    return edit.changes()


def turn(session: Session, ids: Sequence[PhotoId], degrees: int) -> Changes:
    """Turn photos as shown by quarter turns clockwise; the originals stay as they are.

    Raises:
        JournalError: not a multiple of 90 degrees.
    """
    if degrees % 90:
        raise JournalError(f"A photo is turned by quarter turns, not by {degrees} degrees.")
    with session.journal.edit(f"Turn {labels.photos(ids)}") as edit:
        for shown in session.journal.photos.get(ids):
            session.journal.photos.set_turn(shown.id, shown.turn + degrees)
    return edit.changes()


def remove_photos(session: Session, ids: Sequence[PhotoId]) -> Changes:
    """Take photos out of the journal; the originals stay, and they can be brought back."""
    with session.journal.edit(f"Remove {labels.photos(ids)}") as edit:
        for photo_id in ids:
            session.journal.photos.set_removed(photo_id, removed=True)
    return edit.changes()


def removed_photos(session: Session) -> tuple[Photo, ...]:
    """The photos that were taken out."""
    return session.journal.photos.removed()


def bring_back_photos(session: Session, ids: Sequence[PhotoId]) -> Changes:
    """Put removed photos back where they were."""
    with session.journal.edit(f"Bring back {labels.photos(ids)}") as edit:
        for photo_id in ids:
            session.journal.photos.set_removed(photo_id, removed=False)
    return edit.changes()


def count_removed_originals(session: Session) -> int:
    """How many originals nothing in the record shows any more, taking up space."""
    return clearing.removed(session.journal)


def clear_out_removed(session: Session) -> int:
    """Send the originals of removed photos and papers to the system's trash; how many.

    Raises:
        JournalError: the journal is read-only, or the trash refuses a file, which then stays.
    """
    if session.read_only:
        raise ReadOnlyError(f"Nothing was cleared out. {session.notice}")
    return clearing.clear_out(session.journal, to_trash)


def cameras(session: Session) -> tuple[Camera, ...]:
    """Every camera that took a photo of the journal."""
    return session.journal.photos.cameras()


def count_by_clock(session: Session, camera_id: CameraId) -> int:
    """How many photos are dated by a camera's clock: those that move when it is put right."""
    taken = session.journal.photos.of_camera(camera_id)
    return sum(shown.basis is Basis.CAMERA for shown in taken)


def correct_clock(session: Session, photo_id: PhotoId, true_time: datetime) -> Changes:
    """Put a camera's clock right by the true local time of one of its photos.

    Every photo dated by that camera's clock shifts with it, also those added later; dates that
    the owner gave stay.

    Raises:
        JournalError: the photo's date does not come from a camera's clock.
    """
    store = session.journal.photos
    known = photo(session, photo_id)
    if known.camera_id is None or known.basis is not Basis.CAMERA or known.when is None:
        raise JournalError(f"The date of “{known.name}” does not come from a camera's clock.")
    camera = next(c for c in store.cameras() if c.id == known.camera_id)
    shift = shift_for(known.when.earliest, true_time, camera.shift_seconds)
    with session.journal.edit(f"Put the clock of {camera.label} right") as edit:
        store.set_shift(camera.id, shift)
        for shown in store.of_camera(camera.id):
            moved = with_shift(shown.when, shown.basis, shift - camera.shift_seconds)
            store.set_when(shown.id, moved, shown.basis, shown.offset)
    return edit.changes()
