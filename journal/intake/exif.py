"""What the Exif block of a photo says: dates, camera, orientation, place.

Pillow reads the block; ExifRead is asked where Pillow finds no date in a file that has a block.
Both raise almost anything on damaged ones, so every failure here ends as "nothing found".
"""

import contextlib
import logging
import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from journal.intake.content import Content, as_file

_EXIF_IFD, _GPS_IFD = 0x8769, 0x8825
_MAKE, _MODEL, _ORIENTATION = 0x010F, 0x0110, 0x0112
_SERIAL, _PIXELS_WIDE, _PIXELS_HIGH = 0xA431, 0xA002, 0xA003
_THUMBNAIL_OFFSET, _THUMBNAIL_LENGTH = 0x0201, 0x0202

#: For each date: its own tag, that of its sub-seconds, that of its offset (CIPA DC-008).
_DATES = {
    "DateTimeOriginal": (0x9003, 0x9291, 0x9011),
    "DateTimeDigitized": (0x9004, 0x9292, 0x9012),
    "DateTime": (0x0132, 0x9290, 0x9010),
}

#: What is taken from a directory read by itself: a broken tag that nobody wants can't stop it.
_WANTED = {
    *(tag for numbers in _DATES.values() for tag in numbers),
    *(_MAKE, _MODEL, _ORIENTATION, _SERIAL, _PIXELS_WIDE, _PIXELS_HIGH, 256, 257, 1, 2, 3, 4),
}


@dataclass(frozen=True, slots=True)
class ExifDate:
    """One date as written: the text, its sub-seconds and its offset, "" where there is none."""

    text: str
    subsec: str
    offset: str


@dataclass(frozen=True, slots=True)
class Exif:
    """What one Exif block says, as written.

    ``dates`` are by the name of their tag. ``width`` and ``height`` are the pixels of the main
    picture as stored, 0 where not given. ``latitude`` and ``longitude`` are WGS 84 degrees.
    ``thumbnail`` is the small JPEG in the block, b"" where there is none.
    """

    dates: Mapping[str, ExifDate]
    make: str = ""
    model: str = ""
    serial: str = ""
    orientation: int | None = None
    width: int = 0
    height: int = 0
    latitude: float | None = None
    longitude: float | None = None
    thumbnail: bytes = b""


NOTHING = Exif({})


def read_block(block: Content) -> Exif:
    """What a TIFF structure with Exif tags says, as far as it can be read."""
    if isinstance(block, bytes):
        block = block.removeprefix(b"Exif\0\0")
    tags = _loaded(block)
    if tags is None:
        return NOTHING
    gps, inner = _directory(tags, _GPS_IFD), _directory(tags, _EXIF_IFD)
    return _exif({**_wanted(tags), **inner}, gps, _thumbnail(tags, block))


def read_parts(main: bytes, inner: bytes, gps: bytes) -> Exif:
    """What an Exif block says whose directories are kept as separate TIFF structures."""
    return _exif({**_alone(main), **_alone(inner)}, _alone(gps), b"")


def read_with_exifread(content: Content) -> Exif:
    """What ExifRead finds in a whole file."""
    import exifread

    # It tells its log of every oddity; what can't be read shows in the photo's record instead.
    logging.getLogger("exifread").setLevel(logging.CRITICAL)
    try:
        tags = exifread.process_file(as_file(content), details=False, extract_thumbnail=False)
    except Exception:
        return NOTHING
    known: dict[str, Any] = {name.rpartition(" ")[2]: tag.values for name, tag in tags.items()}
    dates = {}
    for name in _DATES:
        text = _text(known.get(name))
        tail = name.removeprefix("DateTime")
        if text:
            subsec, offset = known.get(f"SubSecTime{tail}"), known.get(f"OffsetTime{tail}")
            dates[name] = ExifDate(text, _text(subsec), _text(offset))
    return Exif(
        dates,
        make=_text(known.get("Make")),
        model=_text(known.get("Model")),
        orientation=_whole(known.get("Orientation")),
    )


def _alone(block: bytes) -> dict[int, Any]:
    """The wanted tags of a TIFF structure's first directory."""
    tags = _loaded(block)
    return {} if tags is None else _wanted(tags)


def _loaded(block: Content) -> Any:
    from journal.intake.pillow import Image

    tags = Image.Exif()
    try:
        tags.load_from_fp(as_file(block))
    except Exception:
        return None
    return tags


def _wanted(tags: Any) -> dict[int, Any]:
    """The wanted tags that can be read; one broken value doesn't hide the others."""
    found = {}
    for tag in _WANTED:
        with contextlib.suppress(Exception):
            if tag in tags:
                found[tag] = tags[tag]
    return found


def _directory(tags: Any, number: int) -> dict[int, Any]:
    try:
        return dict(tags.get_ifd(number))
    except Exception:
        return {}


def _exif(tags: Mapping[int, Any], gps: Mapping[Any, Any], thumbnail: bytes) -> Exif:
    dates = {
        name: ExifDate(*(_text(tags.get(tag)) for tag in numbers))
        for name, numbers in _DATES.items()
        if _raw_text(tags.get(numbers[0]))
    }
    latitude, longitude = _degrees(gps, 2, 90), _degrees(gps, 4, 180)
    both = latitude is not None and longitude is not None
    return Exif(
        dates,
        make=_text(tags.get(_MAKE)),
        model=_text(tags.get(_MODEL)),
        serial=_text(tags.get(_SERIAL)),
        orientation=_whole(tags.get(_ORIENTATION)),
        width=_whole(tags.get(_PIXELS_WIDE)) or _whole(tags.get(256)) or 0,
        height=_whole(tags.get(_PIXELS_HIGH)) or _whole(tags.get(257)) or 0,
        latitude=latitude if both else None,
        longitude=longitude if both else None,
        thumbnail=thumbnail,
    )


def _thumbnail(tags: Any, block: Content) -> bytes:
    from PIL import ExifTags

    directory = _directory(tags, ExifTags.IFD.IFD1)
    start, length = directory.get(_THUMBNAIL_OFFSET), directory.get(_THUMBNAIL_LENGTH)
    if not isinstance(start, int) or not isinstance(length, int):
        return b""
    found = block[start : start + length]
    return found if found[:3] == b"\xff\xd8\xff" else b""


def _raw_text(value: Any) -> str:
    if isinstance(value, tuple | list) and value:
        value = value[0]
    if isinstance(value, bytes):
        value = value.decode("latin-1")
    return value if isinstance(value, str) else ""


def _text(value: Any) -> str:
    """A text tag without its padding; UTF-8 is put right where a reader took it for Latin-1."""
    text = _raw_text(value).partition("\0")[0].strip()
    with contextlib.suppress(UnicodeError):
        text = text.encode("latin-1").decode("utf-8")
    return re.sub(r"[\x00-\x1f\x7f-\x9f\ud800-\udfff]+", " ", text)[:200].strip()


def _whole(value: Any) -> int | None:
    if isinstance(value, tuple | list) and value:
        value = value[0]
    return value if isinstance(value, int) else None


def _degrees(gps: Mapping[Any, Any], tag: int, highest: int) -> float | None:
    """Latitude or longitude from degrees, minutes and seconds and the letter before them."""
    try:
        parts = [float(part) for part in gps[tag]]
        letter = _text(gps[tag - 1]).upper()
        value = parts[0] + parts[1] / 60 + parts[2] / 3600
    except Exception:
        return None
    if letter[:1] not in ("N", "S", "E", "W") or not math.isfinite(value) or value > highest:
        return None
    return -value if letter[:1] in ("S", "W") else value
