"""Finding a photo, or the pictures on the pages of a PDF, among a journal's originals."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from journal.actions.pictures import thumbnail
from journal.actions.session import Session
from journal.domain.checks import Fault, Likeness, PictureCheck, PictureFound
from journal.domain.errors import JournalError
from journal.domain.photos import Photo
from journal.domain.progress import Context, Silent
from journal.files.ahead import in_order
from journal.files.copying import hash_file
from journal.files.names import shown_name
from journal.store.folder import open_folder
from journal.store.originals import path_of

if TYPE_CHECKING:
    from journal.vision.same_picture import Sight

#: Pictures are compared at this many pixels.
_LONGEST = 256
_BY_LOOKS = (
    "“Same picture” is judged by looks: it is a copy, and what was changed in it may be too small "
    "to be seen so. Only the original's bytes prove anything; compare by its SHA-256."
)
_CUT = (
    "A picture that was cut isn't found by its looks: in a dossier, the pairs before and after "
    "that were laid over each other are cut to what both show."
)


@dataclass(frozen=True, slots=True)
class _Seen:
    """A picture that is looked for: what it is called, and what there is to see of it."""

    what: str
    sight: "Sight"


def look_up(journal: Session | Path, path: Path, context: Context | None = None) -> PictureCheck:
    """Look a file up by its SHA-256, and where that fails, its pictures by their looks.

    Raises:
        JournalError: the file can't be read, or the journal can't be opened.
        Cancelled: the person asked to stop.
    """
    if isinstance(journal, Session):
        return _looked_up(journal, path, context or Silent())
    with Session(open_folder(journal, read_only=True)) as session:
        return _looked_up(session, path, context or Silent())


def _looked_up(session: Session, path: Path, context: Context) -> PictureCheck:
    name = shown_name(path.name)
    try:
        sha256 = hash_file(path)
    except OSError as error:
        raise JournalError(f"“{name}” can't be read: {error.strerror or error}.") from error
    by_bytes = _by_bytes(session, name, sha256)
    if by_bytes is not None:
        return by_bytes
    seen = _seen(path, name, context)
    photos = session.journal.photos.all()
    pictures = tuple(_by_looks(session, seen, photos, context))
    return PictureCheck(name, sha256, pictures, notes=tuple(_notes(pictures)))


def _by_bytes(session: Session, name: str, sha256: str) -> PictureCheck | None:
    """What is known of a file whose bytes are an original's."""
    suffix = session.journal.kept_suffix(sha256, "?")
    if suffix == "?":
        return None
    photo = next((one for one in session.journal.photos.all() if one.sha256 == sha256), None)
    found = (
        _found(name, photo, Likeness.ORIGINAL)
        if photo
        else PictureFound(name, Likeness.ORIGINAL, name="a paper of the journal", sha256=sha256)
    )
    place = path_of(session.folder, sha256, suffix)
    faults = []
    if not place.is_file():
        faults.append(Fault(place.name, "The journal's own copy of it is missing."))
    elif hash_file(place) != sha256:
        faults.append(Fault(place.name, "The journal's own copy of it was altered."))
    return PictureCheck(name, sha256, (found,), tuple(faults))


def _seen(path: Path, name: str, context: Context) -> tuple[_Seen, ...]:
    # Pixels are heavy, and a file known by its bytes needs none.
    from PIL import Image

    from journal.intake import decode
    from journal.intake.pdf_pictures import pictures
    from journal.intake.reading.files import is_pdf
    from journal.vision.same_picture import sight

    try:
        if is_pdf(path):
            seen = [
                _Seen(f"page {page}, picture {number}", sight(image))
                for page, number, image in pictures(path, context)
            ]
            if not seen:
                raise JournalError("no page of it holds a picture")
            return tuple(seen)
        shown = decode.picture(path, _LONGEST)
    except JournalError as error:
        raise JournalError(f"“{name}” can't be compared: {error}.") from error
    image = Image.frombytes("RGB", (shown.width, shown.height), shown.rgb)
    return (_Seen(name, sight(image)),)


def _by_looks(
    session: Session, seen: Sequence[_Seen], photos: Sequence[Photo], context: Context
) -> list[PictureFound]:
    """For each picture the photo that looks most like it, if one looks the same."""
    from journal.vision.same_picture import alike, apart, is_same, sight_of_jpeg

    def work(photo: Photo) -> "Sight | None":
        jpeg = thumbnail(session, photo)
        return sight_of_jpeg(jpeg) if jpeg else None

    best: dict[int, tuple[float, Photo, int]] = {}
    for done, (photo, kept) in enumerate(in_order(work, photos)):
        context.checkpoint()
        context.report(done, len(photos), "Comparing pictures")
        if kept is None:
            continue
        for number, one in enumerate(seen):
            if is_same(one.sight, kept):
                found = (alike(one.sight, kept), photo, apart(one.sight, kept))
                best[number] = max(best.get(number, found), found, key=lambda row: row[0])
    return [
        _found(one.what, best[number][1], Likeness.SAME_PICTURE, best[number][2])
        if number in best
        else PictureFound(one.what, Likeness.UNKNOWN)
        for number, one in enumerate(seen)
    ]


def _found(
    what: str, photo: Photo, likeness: Likeness, distance: int | None = None
) -> PictureFound:
    return PictureFound(
        what=what,
        likeness=likeness,
        photo_id=photo.id,
        name=photo.name,
        taken=photo.when.edtf if photo.when else "",
        sha256=photo.sha256,
        distance=distance,
    )


def _notes(pictures: Sequence[PictureFound]) -> list[str]:
    kinds = {one.likeness for one in pictures}
    said = [_BY_LOOKS] if Likeness.SAME_PICTURE in kinds else []
    return [*said, _CUT] if Likeness.UNKNOWN in kinds else said
