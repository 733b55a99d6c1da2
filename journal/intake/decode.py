"""Pixels out of a file, scaled down on the way and upright.

Whether a picture still has to be turned depends on its type: HEIF and TIFF readers turn it
themselves, for JPEG, PNG and WebP the orientation in the file has to be followed. It is done here,
once, and nowhere else.
"""

import contextlib
import io
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from journal.domain.errors import JournalError
from journal.domain.photos import Kind
from journal.domain.pictures import Picture
from journal.intake import kinds
from journal.intake.content import Content, as_file, opened
from journal.intake.facts import Facts, facts_of
from journal.intake.pillow import LARGEST_WHOLE_MEGAPIXELS, Image, ImageOps, Room, refuse_huge

#: What has to be done to a stored picture of each Exif orientation to see it upright.
_TURNS = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}

_PAPER = (255, 255, 255)
#: Enough of a picture, in pixels, to see that it can be decoded and which side is the longer.
_GLANCE = 256
_UNDECODED = "its picture can't be decoded"


class UndecodableError(JournalError):
    """The file is at hand, but its picture is broken."""


def picture(source: Path | bytes, longest: int, *, turn: int = 0) -> Picture:
    """A file's picture, its longer side at most ``longest`` pixels, upright.

    ``turn`` is what the owner turned it by, in degrees clockwise, a multiple of 90.
    JournalError says in half a sentence why there is nothing to see.
    """
    image = _turned(_image_of(source, longest), turn)
    return Picture(image.width, image.height, image.tobytes())


def upright_size(source: Path | bytes) -> tuple[int, int]:
    """Width and height of a file's whole picture, upright; JournalError as with ``picture``."""
    with _plain_errors(), opened(source) as content:
        facts = facts_of(content)
        small = _decoded(content, facts, _GLANCE)
    # What a decoder gives is sure to be the right way up; the header is sure of the size.
    longest, shortest = max(facts.width, facts.height), min(facts.width, facts.height)
    if not shortest:
        return int(small.width), int(small.height)
    return (longest, shortest) if small.width >= small.height else (shortest, longest)


def thumbnail(source: Path | bytes, *, longest: int = 256, quality: int = 80) -> bytes:
    """A file's picture as a small JPEG, upright; JournalError as with ``picture``."""
    return encode(_image_of(source, longest), quality)


def small_jpeg(jpeg: bytes, orientation: int | None, longest: int = 256) -> bytes:
    """A thumbnail cut out of a camera's file, turned as the file's own orientation asks.

    JournalError where it can't be decoded.
    """
    with _plain_errors():
        return encode(_upright(_jpeg(jpeg, longest), orientation), 80)


def encode(image: Any, quality: int) -> bytes:
    """An RGB image of Pillow's as a JPEG."""
    room = io.BytesIO()
    image.save(room, "JPEG", quality=quality)
    return room.getvalue()


def _image_of(source: Path | bytes, longest: int) -> Any:
    with _plain_errors(), opened(source) as content:
        return _decoded(content, facts_of(content), longest)


@contextlib.contextmanager
def _plain_errors() -> Iterator[None]:
    """Whatever a library raises becomes half a sentence about the file."""
    try:
        yield
    except JournalError:
        raise
    except Exception as error:
        what = "it can't be read" if isinstance(error, OSError) and error.errno else _UNDECODED
        reason = str(error).strip().partition("\n")[0].rstrip(".")
        kind = UndecodableError if what is _UNDECODED else JournalError
        raise kind(f"{what} ({reason or type(error).__name__})") from error


def _decoded(content: Content, facts: Facts, longest: int) -> Any:
    if facts.type is None or facts.type.kind is None:
        raise JournalError("it is no picture")
    if facts.type.kind is Kind.VIDEO:
        raise JournalError("it is a film, and films are not shown")
    refuse_huge(facts.width, facts.height)
    if facts.type.kind is Kind.RAW:
        return _upright(_raw_preview(content, facts, longest), facts.orientation)
    if facts.type is kinds.JPEG:
        return _upright(_jpeg(content, longest, facts), facts.orientation)
    if facts.type in (kinds.HEIC, kinds.HEIF):
        return _heif(content, facts, longest)
    turned_by_reader = facts.type in (kinds.TIFF, kinds.AVIF)
    image = _any(content, facts, longest, follow=turned_by_reader)
    return image if turned_by_reader else _upright(image, facts.orientation)


def _jpeg(content: Content, longest: int, facts: Facts | None = None) -> Any:
    """A JPEG decoded at an eighth to the whole of its size, whichever is just large enough."""
    if facts and facts.layered:
        refuse_huge(facts.width, facts.height, LARGEST_WHOLE_MEGAPIXELS)
        with Room(facts.width, facts.height):
            return _shrunk(_with_draft(content, longest), longest)
    image = _with_simplejpeg(content, longest, facts) if facts and facts.channels == 3 else None
    return _shrunk(image or _with_draft(content, longest), longest)


def _with_simplejpeg(content: Content, longest: int, facts: Facts) -> Any:
    try:
        import simplejpeg
    except ImportError:
        return None
    scale = min(1.0, longest / max(facts.width, facts.height))
    try:
        pixels = simplejpeg.decode_jpeg(
            content,
            min_width=max(1, int(facts.width * scale)),
            min_height=max(1, int(facts.height * scale)),
            fastdct=True,
            fastupsample=True,
            strict=False,
        )
    except ValueError:
        return None
    return Image.fromarray(pixels)


def _with_draft(content: Content, longest: int) -> Any:
    # An end mark after the end lets the decoder give what there is of a file cut short.
    image = Image.open(io.BytesIO(content[:] + b"\xff\xd9"))
    refuse_huge(*image.size)
    scale = min(1.0, longest / max(image.size))
    image.draft("RGB", (max(1, int(image.width * scale)), max(1, int(image.height * scale))))
    return _in_rgb(image)


def _heif(content: Content, facts: Facts, longest: int) -> Any:
    """A HEIF picture, from its thumbnail where that is large enough or all that can be had."""
    import pillow_heif

    main = pillow_heif.open_heif(content[:])
    primary: Any = main[main.primary_index]
    sizes = [(size, index) for index, size in enumerate(primary.info["thumbnails"])]
    too_large = facts.width * facts.height > LARGEST_WHOLE_MEGAPIXELS * 1_000_000
    enough = [found for found in sizes if found[0] >= longest or too_large]
    for _, index in sorted(enough, reverse=too_large):
        with contextlib.suppress(Exception):
            return _shrunk(_in_rgb(primary.get_thumbnail(index).to_pillow()), longest)
    refuse_huge(facts.width, facts.height, LARGEST_WHOLE_MEGAPIXELS)
    with Room(facts.width, facts.height):
        return _shrunk(_in_rgb(primary.to_pillow()), longest)


def _raw_preview(content: Content, facts: Facts, longest: int) -> Any:
    """The smallest preview in a camera raw file that is large enough, or else the largest."""
    found = []
    for preview in facts.previews:
        jpeg = bytes(content[preview.start : preview.start + preview.length])
        size = facts_of(jpeg)
        if size.type is kinds.JPEG and size.width:
            found.append((max(size.width, size.height), jpeg, size))
    if not found and (facts.damage or facts.type is kinds.CR3):
        raise JournalError("this camera raw file holds no preview that can be shown")
    if not found:
        return _any(content, facts, longest, follow=False)
    enough = [preview for preview in found if preview[0] >= longest]
    _, jpeg, size = min(enough) if enough else max(found, key=lambda preview: preview[0])
    return _jpeg(jpeg, longest, size)


def _any(content: Content, facts: Facts, longest: int, *, follow: bool) -> Any:
    refuse_huge(facts.width, facts.height, LARGEST_WHOLE_MEGAPIXELS)
    with Room(facts.width, facts.height):
        image = Image.open(as_file(content))
        refuse_huge(*image.size, LARGEST_WHOLE_MEGAPIXELS)
        image.load()
        upright = ImageOps.exif_transpose(image) if follow else image
        return _shrunk(_in_rgb(upright), longest)


def _in_rgb(image: Any) -> Any:
    """The image in three channels of eight bits, on white where it is transparent."""
    if image.mode == "RGB":
        image.load()
        return image
    if image.mode in ("I", "F") or image.mode.startswith("I;16"):
        return _stretched(image).convert("RGB")
    if image.mode in ("RGBA", "LA", "PA", "RGBa", "La") or "transparency" in image.info:
        layered = image.convert("RGBA")
        paper = Image.new("RGB", image.size, _PAPER)
        paper.paste(layered, mask=layered.getchannel("A"))
        return paper
    return image.convert("RGB")


def _stretched(image: Any) -> Any:
    """A grey picture of more than eight bits with its own darkest and lightest as black and white.

    Thermal and scanner pictures use a small part of the range and would come out black otherwise.
    """
    import numpy as np

    values = np.asarray(image, dtype=np.float64)
    low, high = float(np.nanmin(values)), float(np.nanmax(values))
    scaled = np.nan_to_num((values - low) * (255 / ((high - low) or 1)))
    return Image.fromarray(scaled.astype(np.uint8))


def _shrunk(image: Any, longest: int) -> Any:
    scale = longest / max(image.size)
    if scale >= 1:
        return image
    size = tuple(max(1, round(side * scale)) for side in image.size)
    # Averaging whole boxes is quick and clean from half the size downwards, but ragged above it.
    way = Image.Resampling.BOX if scale <= 0.5 else Image.Resampling.BILINEAR
    return image.resize(size, way, reducing_gap=2.0)


def _upright(image: Any, orientation: int | None) -> Any:
    turn = _TURNS.get(orientation or 1)
    return image if turn is None else image.transpose(turn)


def _turned(image: Any, degrees: int) -> Any:
    return _upright(image, {90: 6, 180: 3, 270: 8}.get(degrees % 360))
