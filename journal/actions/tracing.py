"""Tracing: a photo or a sketch laid under a view, squared up, and drawn over."""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from journal.actions.session import Session
from journal.domain.changes import Changes
from journal.domain.drawing import View
from journal.domain.errors import JournalError, ReadOnlyError
from journal.domain.homographies import Matrix, inverse, product
from journal.domain.ids import PhotoId, Sha256, ViewId
from journal.domain.pictures import Picture
from journal.domain.underlays import Underlay, check_underlay
from journal.store.originals import recorded_path
from journal.store.papers import arriving


def underlays(session: Session) -> tuple[Underlay, ...]:
    """Every picture under a view, in order of view."""
    return session.journal.underlays.all()


def underlay(session: Session, view_id: ViewId) -> Underlay | None:
    """The picture under one view, None where there is none."""
    return next((u for u in underlays(session) if u.view_id == view_id), None)


def lay_under(session: Session, view_id: ViewId, file: Path) -> Changes:
    """Keep a picture among the originals and lay it under a view, as large as it fits.

    Raises:
        JournalError: there is no such view, or the file can't be read as a picture.
    """
    journal = session.journal
    view = journal.drawing.get(view_id).view(view_id)
    if session.read_only:
        raise ReadOnlyError(f"No picture can be laid under a view. {session.notice}")
    size = _size(file, file.name)
    matrix = _fitted(view, *size, turn=0)
    with (
        arriving(journal, [file]) as kept,
        journal.edit(f"Lay a picture under {view.name}") as edit,
    ):
        (sha256,) = kept.record()
        journal.underlays.put(Underlay(view_id, sha256, matrix))
    return edit.changes()


def lay_photo_under(session: Session, view_id: ViewId, photo_id: PhotoId) -> Changes:
    """Lay a photo of the journal under a view, turned as its owner turned it.

    Raises:
        JournalError: there is no such view or photo, or its original can't be read as a picture.
    """
    journal = session.journal
    view = journal.drawing.get(view_id).view(view_id)
    (photo,) = journal.photos.get([photo_id])
    size = _size(recorded_path(journal, photo.sha256), photo.name)
    matrix = _fitted(view, *size, turn=photo.turn)
    with journal.edit(f"Lay a photo under {view.name}") as edit:
        journal.underlays.put(Underlay(view_id, photo.sha256, matrix))
    return edit.changes()


def set_underlay(
    session: Session,
    view_id: ViewId,
    *,
    matrix: Matrix | None = None,
    strength: float | None = None,
    shown: bool | None = None,
) -> Changes:
    """Place the picture under a view anew, fade it, show it or hide it; what isn't given stays.

    Raises:
        JournalError: nothing lies under the view, or the picture could not be seen or placed so.
    """
    before = _laid(session, view_id)
    after = replace(
        before,
        matrix=before.matrix if matrix is None else matrix,
        strength=before.strength if strength is None else strength,
        shown=before.shown if shown is None else shown,
    )
    words = "Place" if matrix is not None else "Fade" if strength is not None else "Show"
    if shown is False:
        words = "Hide"
    return _put(session, after, f"{words} the picture under")


def square_up_underlay(
    session: Session,
    view_id: ViewId,
    corners: Sequence[tuple[float, float]],
    width_mm: float,
    height_mm: float,
    at: tuple[float, float] = (0.0, 0.0),
) -> Changes:
    """Square the picture up: four corners in it (pixels) become a rectangle of a known size.

    ``corners`` go round from the top left; ``at`` is where on the view that one comes to lie.

    Raises:
        JournalError: nothing lies under the view, or the corners or the size are unsound.
    """
    from journal.vision.squaring import square_up

    before = _laid(session, view_id)
    matrix = square_up(corners, width_mm, height_mm, at)
    return _put(session, replace(before, matrix=matrix), "Square up the picture under")


def scale_underlay(
    session: Session,
    view_id: ViewId,
    one: tuple[float, float],
    other: tuple[float, float],
    distance_mm: float,
) -> Changes:
    """Make the picture so large that two points in it (pixels) lie a known distance apart.

    Raises:
        JournalError: nothing lies under the view, the points are one, or the distance is nothing.
    """
    from journal.vision.squaring import scale_by

    before = _laid(session, view_id)
    matrix = scale_by(before.matrix, one, other, distance_mm)
    return _put(session, replace(before, matrix=matrix), "Scale the picture under")


def take_underlay(session: Session, view_id: ViewId) -> Changes:
    """Take the picture from under a view; it stays among the originals.

    Raises:
        JournalError: nothing lies under the view.
    """
    _laid(session, view_id)
    name = _name(session, view_id)
    with session.journal.edit(f"Take the picture from under {name}") as edit:
        session.journal.underlays.take(view_id)
    return edit.changes()


def underlay_size(session: Session, sha256: Sha256) -> tuple[int, int]:
    """Width and height of the upright picture, in its own pixels: what a matrix counts in.

    Raises:
        JournalError: the original is missing or no picture.
    """
    return _size(recorded_path(session.journal, sha256), "The picture under the view")


def underlay_picture(session: Session, sha256: Sha256, longest: int) -> Picture:
    """The picture itself, upright, its longer side at most ``longest`` pixels.

    Raises:
        JournalError: the original is missing or can't be decoded.
    """
    from journal.intake import decode

    return decode.picture(recorded_path(session.journal, sha256), longest)


def flat_underlay(session: Session, underlay: Underlay, longest: int) -> Picture:
    """The whole sheet of the view with the picture on it as placed, ``longest`` pixels long.

    Raises:
        JournalError: the original is missing or can't be decoded.
    """
    from journal.vision.flattening import laid_flat

    view = session.journal.drawing.get(underlay.view_id).view(underlay.view_id)
    width, height = underlay_size(session, underlay.sha256)
    seen = underlay_picture(session, underlay.sha256, 2 * longest)
    grown = (width / seen.width, 0, 0, 0, height / seen.height, 0, 0, 0, 1)
    matrix = product(underlay.matrix, grown)
    return laid_flat(seen, matrix, view.width, view.height, longest)


def _laid(session: Session, view_id: ViewId) -> Underlay:
    found = underlay(session, view_id)
    if found is None:
        raise JournalError(f"No picture lies under {_name(session, view_id)}.")
    return found


def _put(session: Session, underlay: Underlay, words: str) -> Changes:
    check_underlay(underlay)
    inverse(underlay.matrix)
    name = _name(session, underlay.view_id)
    with session.journal.edit(f"{words} {name}") as edit:
        session.journal.underlays.put(underlay)
    return edit.changes()


def _name(session: Session, view_id: ViewId) -> str:
    return session.journal.drawing.get(view_id).view(view_id).name


def _size(path: Path, name: str) -> tuple[int, int]:
    from journal.intake import decode

    try:
        return decode.upright_size(path)
    except JournalError as error:
        raise JournalError(f"“{name}” can't be laid under a view: {error}.") from error


def _fitted(view: View, width: int, height: int, *, turn: int) -> Matrix:
    """Where a picture lies at first: as large as it goes, in the middle of the view."""
    wide, high = (height, width) if turn % 180 else (width, height)
    scale = min(view.width / wide, view.height / high)
    left, top = (view.width - wide * scale) / 2, (view.height - high * scale) / 2
    return product((scale, 0, left, 0, scale, top, 0, 0, 1), _turned(width, height, turn))


def _turned(width: int, height: int, turn: int) -> Matrix:
    """A picture turned by quarter turns clockwise, its top left corner in its place again."""
    return {
        0: (1, 0, 0, 0, 1, 0, 0, 0, 1),
        90: (0, -1, height, 1, 0, 0, 0, 0, 1),
        180: (-1, 0, width, 0, -1, height, 0, 0, 1),
        270: (0, 1, 0, -1, 0, width, 0, 0, 1),
    }[turn % 360]
