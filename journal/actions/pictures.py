"""Photos as pixels: small ones kept, large ones decoded when asked for, all upright."""

from collections.abc import Sequence
from pathlib import Path

from journal.actions.session import Session
from journal.domain.covers import CoverBox, on_pixels
from journal.domain.errors import JournalError
from journal.domain.photos import Photo
from journal.domain.pictures import Picture
from journal.store.originals import path_of

_PRINT_QUALITY = 88
#: What covers a place on a photo: a grey that nothing shows through.
_COVER = (96, 96, 96)
#: The Exif orientation that means the same as a turn by so many degrees clockwise.
_AS_ORIENTATION = {0: 1, 90: 6, 180: 3, 270: 8}


def original_path(session: Session, photo: Photo) -> Path:
    """Where a photo's original lies."""
    return path_of(session.folder, photo.sha256, photo.suffix)


def thumbnail(session: Session, photo: Photo) -> bytes | None:
    """A photo as a JPEG of at most 256 pixels, upright; None where nothing of it can be shown."""
    # Decoders are large, and a journal whose thumbnails are all there never needs them.
    from journal.intake import decode

    previews = session.journal.previews
    try:
        jpeg = previews.get(photo.sha256) if previews.is_final(photo.sha256) else None
        if jpeg is None:
            jpeg = decode.thumbnail(original_path(session, photo))
            previews.put(photo.sha256, jpeg, rough=False)
    except JournalError:
        jpeg = previews.get(photo.sha256)
    if jpeg is None or not photo.turn:
        return jpeg
    return decode.small_jpeg(jpeg, _AS_ORIENTATION[photo.turn])


def picture(session: Session, photo: Photo, longest: int) -> Picture:
    """A photo's pixels, its longer side at most ``longest``, upright.

    Raises:
        JournalError: the original is missing or can't be decoded, named with the reason.
    """
    from journal.intake import decode

    try:
        return decode.picture(original_path(session, photo), longest, turn=photo.turn)
    except JournalError as error:
        raise JournalError(f"“{photo.name}” can't be shown: {error}.") from error


def printable(
    session: Session, photo: Photo, longest: int, boxes: Sequence[CoverBox] = ()
) -> bytes | None:
    """A photo as a JPEG for print, upright, made anew from its pixels and nothing else of its file.

    ``boxes`` as they lie on the picture shown are painted over, opaque. None where the original is
    missing or unreadable.
    """
    from PIL import Image

    from journal.intake import decode

    try:
        shown = picture(session, photo, longest)
    except JournalError:
        return None
    image = Image.frombytes("RGB", (shown.width, shown.height), shown.rgb)
    for box in boxes:
        image.paste(_COVER, on_pixels(box, image.width, image.height))
    return decode.encode(image, _PRINT_QUALITY)


def covered_jpeg(jpeg: bytes, boxes: Sequence[CoverBox]) -> bytes:
    """A small picture with boxes painted over it, opaque."""
    from io import BytesIO

    from PIL import Image

    from journal.intake import decode

    with Image.open(BytesIO(jpeg)) as opened:
        image = opened.convert("RGB")
    for box in boxes:
        image.paste(_COVER, on_pixels(box, image.width, image.height))
    return decode.encode(image, _PRINT_QUALITY)
