"""A pair's two pictures, equally framed: for the screen, the dossier, the album, or as one file."""

import math
from collections.abc import Callable, Sequence
from enum import StrEnum
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING

from journal.actions.pairs import shown_matrix
from journal.actions.pictures import picture
from journal.actions.session import Session
from journal.domain.areas import Area
from journal.domain.covers import CoverBox, on_pixels, turned
from journal.domain.errors import JournalError
from journal.domain.pairs import Fit, Pair, common_part, in_pixels
from journal.domain.photos import Photo
from journal.domain.pictures import Picture
from journal.domain.when import spoken
from journal.store.folder import refuse_inside

if TYPE_CHECKING:
    from journal.vision.pair_sheet import SheetWords

#: No photo is decoded larger than this for a pair, in pixels of its longer side.
_MOST = 6000
#: A larger file than this helps nobody.
MOST_SHEET = 4000
_QUALITY = 90

#: Gives a photo's picture, its longer side at most so many pixels, upright.
Source = Callable[[Photo, int], Picture]


class SheetLook(StrEnum):
    """How a pair is drawn as one picture."""

    SIDE_BY_SIDE = "side by side"
    DIVIDED = "divided"


def pair_pictures(
    session: Session, pair: Pair, longest: int = 1600, boxes: Sequence[CoverBox] = ()
) -> tuple[Picture, Picture]:
    """A pair's pictures, before and after, equally framed.

    Where one lies on the other both show the part that they have in common, of one size, pixel
    for pixel; otherwise each is whole and both are of one height.

    Args:
        session: the open journal.
        pair: the pair.
        longest: the longer side of each, in pixels.
        boxes: what covers the photos as it is kept (``domain.covers``); it is burnt in first, so
            that nothing shows of what lies under it. Boxes on other photos are passed over.

    Raises:
        JournalError: an original is missing or can't be decoded, named with the reason.
    """
    before, after = session.journal.photos.get([pair.before_id, pair.after_id])
    return framed(before, after, pair.fit, longest, covered_source(session, boxes))


def covered_source(session: Session, boxes: Sequence[CoverBox] = ()) -> Source:
    """Pictures of photos with their boxes burnt in."""

    def shown(photo: Photo, longest: int) -> Picture:
        made = picture(session, photo, longest)
        own = [turned(box, photo.turn) for box in boxes if box.photo_id == photo.id]
        return _covered(made, own) if own else made

    return shown


def framed(
    before: Photo, after: Photo, fit: Fit, longest: int, source: Source
) -> tuple[Picture, Picture]:
    """Two photos' pictures, framed by how one lies on the other.

    Raises:
        JournalError: an original is missing or can't be decoded, named with the reason.
    """
    from journal.vision.overlaying import equally_framed, of_one_height

    matrix = shown_matrix(before, after, fit)
    if matrix is None:
        return of_one_height(source(before, longest), source(after, longest), longest)
    part = common_part(matrix)
    share = max(part.right - part.left, part.bottom - part.top)
    larger = min(_MOST, math.ceil(longest / max(share, longest / _MOST)))
    first = source(before, larger)
    second = source(after, _needed(matrix, larger))
    sizes = (first.width, first.height), (second.width, second.height)
    place = (
        part.left * first.width, part.top * first.height,
        part.right * first.width, part.bottom * first.height,
    )  # fmt: skip
    # Enlarging beyond what the photo holds makes a larger file and shows no more.
    least = round(max(place[2] - place[0], place[3] - place[1]))
    return equally_framed(first, second, in_pixels(matrix, *sizes), place, min(longest, least))


def _needed(matrix: Sequence[float], longest: int) -> int:
    """How large the after photo is needed where the before is so large: larger if it lies small."""
    spread = abs(matrix[0] * matrix[4] - matrix[1] * matrix[3])
    return min(_MOST, max(256, round(longest / max(math.sqrt(spread), 0.1))))


def _covered(shown: Picture, boxes: Sequence[CoverBox]) -> Picture:
    from PIL import Image

    image = Image.frombytes("RGB", (shown.width, shown.height), shown.rgb)
    for box in boxes:
        image.paste((96, 96, 96), on_pixels(box, image.width, image.height))
    return Picture(shown.width, shown.height, image.tobytes())


# --- as one picture


def pair_sheet(
    session: Session,
    pair: Pair,
    look: SheetLook = SheetLook.SIDE_BY_SIDE,
    longest: int = 2400,
    *,
    at: float = 0.5,
    words: bool = True,
    as_png: bool = False,
) -> bytes:
    """A pair as one JPEG or PNG, made anew from pixels: nothing of the photos' files is in it.

    Every box drawn on the two photos is burnt in.

    Raises:
        JournalError: an original is missing, or the pair can't be divided since it isn't laid.
    """
    from journal.vision import pair_sheet as sheets

    if look is SheetLook.DIVIDED and not pair.fit.is_laid:
        raise JournalError("The two photos are shown side by side alone: lay one over the other.")
    photos = session.journal.photos.get([pair.before_id, pair.after_id])
    area = session.journal.areas.get(pair.area_id)
    side = longest if look is SheetLook.DIVIDED else longest // 2
    both = pair_pictures(session, pair, min(side, MOST_SHEET), session.journal.covers.all())
    said = _words(area, photos, pair) if words else sheets.SheetWords("", "", "", "")
    if look is SheetLook.DIVIDED:
        image = sheets.divided(*both, said, at)
    else:
        image = sheets.side_by_side(*both, said)
    made = BytesIO()
    if as_png:
        image.save(made, "PNG", optimize=True)
    else:
        image.save(made, "JPEG", quality=_QUALITY, subsampling=0)
    return made.getvalue()


def export_pair(
    session: Session,
    pair: Pair,
    path: Path,
    look: SheetLook = SheetLook.SIDE_BY_SIDE,
    longest: int = 2400,
    *,
    at: float = 0.5,
) -> Path:
    """Write a pair as one picture: PNG by the file's ending, JPEG otherwise.

    Raises:
        JournalError: an original is missing, or the file can't be written or lies in the journal.
    """
    from journal.files.durable import write_atomically

    path = path if path.suffix else path.with_suffix(".jpg")
    if path.suffix.lower() not in {".jpg", ".jpeg", ".png"}:
        raise JournalError(f"“{path.name}” can't be made: a pair becomes a .jpg or a .png.")
    refuse_inside(session.folder, path)
    is_png = path.suffix.lower() == ".png"
    data = pair_sheet(session, pair, look, longest, at=at, as_png=is_png)
    try:
        write_atomically(path, data)
    except OSError as error:
        raise JournalError(f"“{path}” can't be written: {error.strerror or error}.") from error
    return path


def _words(area: Area, photos: Sequence[Photo], pair: Pair) -> "SheetWords":
    from journal.vision.pair_sheet import SheetWords

    names = [
        f"{name}: {spoken(photo.when)}" if photo.when else name
        for name, photo in zip(("Before", "After"), photos, strict=True)
    ]
    return SheetWords(area.name, names[0], names[1], pair.caption)
