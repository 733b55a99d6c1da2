"""What the dialog of pairs reads in readers' threads: fits, pictures, proposals."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtGui import QImage

from journal.actions import areas as area_actions
from journal.actions.pair_pictures import covered_source, framed
from journal.actions.pair_proposals import propose_pairs
from journal.actions.pairs import find_fit, pinned_photos
from journal.actions.photos import photos as photos_of
from journal.actions.session import Session
from journal.desktop.widgets.image_bytes import image_of
from journal.desktop.widgets.pictures import decode
from journal.domain.areas import Area
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, PhotoId
from journal.domain.pairs import SIDE_BY_SIDE, Fit, PairProposal
from journal.domain.photos import Photo, Role
from journal.domain.pictures import Picture
from journal.domain.progress import Context

#: The longer side of pictures shown, in pixels.
LONGEST = 1600
#: No more photos than these are offered for one half.
_MOST_OFFERED = 200


@dataclass(frozen=True, slots=True)
class Seen:
    """What was found of two photos: the fit, None where there is none, and their pictures.

    ``problem`` says in a sentence why there are no pictures.
    """

    fit: Fit | None
    pictures: tuple[QImage, QImage] | None
    problem: str = ""


def see(session: Session, before: Photo, after: Photo, known: Fit | None, context: Context) -> Seen:
    """Two photos' pictures framed by the fit that is known, or by the one that can be found."""
    try:
        fit = known or find_fit(session, before, after, context)
        both = framed(before, after, fit or SIDE_BY_SIDE, LONGEST, covered_source(session))
    except JournalError as error:
        return Seen(None, None, str(error))
    return Seen(fit, (as_image(both[0]), as_image(both[1])))


def wholes(session: Session, photos: Sequence[Photo]) -> list[QImage | None]:
    """Photos' pictures, whole."""
    return [decode(session, photo, LONGEST) for photo in photos]


def as_image(picture: Picture) -> QImage:
    """A picture as Qt has it."""
    made = QImage(
        picture.rgb, picture.width, picture.height, picture.width * 3,
        QImage.Format.Format_RGB888,
    )  # fmt: skip
    return made.convertToFormat(QImage.Format.Format_RGB32)


def offered(session: Session, area: Area) -> tuple[tuple[Role | None, Photo], ...]:
    """The photos that a pair can be made of: those chosen for the area, then those pinned there."""
    chosen = area_actions.area_photos(session, area.id)
    seen = {photo.id for _, photo in chosen}
    pinned = [photo for photo in pinned_photos(session, area) if photo.id not in seen]
    return (*chosen, *((None, photo) for photo in pinned[:_MOST_OFFERED]))


def proposed(
    session: Session, area_id: AreaId, context: Context
) -> list[tuple[PairProposal, tuple[Photo, Photo]]]:
    """Pairs that may show one view, with their photos."""
    found = []
    for row in propose_pairs(session, area_id, context):
        before, after = photos_of(session, [row.before_id, row.after_id])
        found.append((row, (before, after)))
    return found


def thumbs(session: Session, photos: Sequence[Photo]) -> dict[PhotoId, QImage]:
    """Small pictures, for those photos that have one."""
    from journal.actions.pictures import thumbnail

    found = {}
    for photo in photos:
        try:
            image = image_of(thumbnail(session, photo))
        except JournalError:
            continue
        if not image.isNull():
            found[photo.id] = image
    return found
