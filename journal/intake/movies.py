"""What a film's boxes say: its size and when it was made. And a raw format built like a film."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from journal.intake.boxes import Box, boxes, child, number, top
from journal.intake.content import Content
from journal.intake.exif import Exif, read_parts
from journal.intake.tiff import Extent

#: Films count seconds from this moment (ISO 14496-12), in UTC.
_EPOCH = datetime(1904, 1, 1, tzinfo=UTC)

#: The box of a CR3 that holds its Exif directories, and the one that holds its larger preview.
_CR3_TAGS = bytes.fromhex("85c0b687820f11e08111f4ce462b6a48")
_CR3_PREVIEW = bytes.fromhex("eaf42b5e1c984b88b9fbb7dc406e4d16")

_LONGEST_DIRECTORY = 1024 * 1024


@dataclass(frozen=True, slots=True)
class Movie:
    """A film's size in pixels as shown, 0 where unknown, and its time of making in UTC, or None."""

    width: int
    height: int
    made: datetime | None


def movie_facts(content: Content) -> Movie:
    """Read a film's boxes; what is broken in them is left out."""
    moov = child(content, top(content), b"moov")
    if moov is None:
        return Movie(0, 0, None)
    width = height = 0
    for track in boxes(content, moov.start, moov.end):
        header = child(content, track, b"tkhd") if track.type == b"trak" else None
        size = _track_size(content, header) if header else (0, 0)
        if size[0] * size[1] > width * height:
            width, height = size
    return Movie(width, height, _made(content, child(content, moov, b"mvhd")))


def _track_size(content: Content, header: Box) -> tuple[int, int]:
    """Width and height from a track's header, swapped where its matrix turns it on its side."""
    matrix = header.start + (52 if content[header.start] else 40)
    width, height = (number(content, matrix + at, 4) >> 16 for at in (36, 40))
    lies_on_side = not number(content, matrix, 4) and number(content, matrix + 4, 4)
    return (height, width) if lies_on_side else (width, height)


def _made(content: Content, header: Box | None) -> datetime | None:
    if header is None or header.start >= len(content):
        return None
    seconds = number(content, header.start + 4, 8 if content[header.start] else 4)
    try:
        return _EPOCH + timedelta(seconds=seconds) if seconds else None
    except OverflowError:
        return None


def cr3_facts(content: Content) -> tuple[Exif, tuple[Extent, ...]]:
    """The Exif tags of a CR3 and the JPEGs in it."""
    moov = child(content, top(content), b"moov")
    parts: dict[bytes, bytes] = {}
    previews: list[Extent] = []
    outer = [*boxes(content), *(boxes(content, moov.start, moov.end) if moov else ())]
    for box in outer:
        if box.type != b"uuid":
            continue
        name = content[box.start : box.start + 16]
        if name == _CR3_TAGS:
            for part in boxes(content, box.start + 16, box.end):
                end = min(part.end, part.start + _LONGEST_DIRECTORY)
                parts[part.type] = bytes(content[part.start : end])
        elif name == _CR3_PREVIEW:
            previews += _jpegs_in(content, Box(b"", box.start + 24, box.end))
    exif = read_parts(parts.get(b"CMT1", b""), parts.get(b"CMT2", b""), parts.get(b"CMT4", b""))
    return exif, tuple(previews)


def samples_missing(content: Content) -> bool:
    """Whether the tracks are said to hold more bytes than the whole file has."""
    moov = child(content, top(content), b"moov")
    tracks = boxes(content, moov.start, moov.end) if moov else ()
    total = 0
    for track in tracks:
        table = child(content, track, b"mdia", b"minf", b"stbl", b"stsz")
        if table:
            total += number(content, table.start + 4, 4) * number(content, table.start + 8, 4)
    return moov is None or total > len(content)


def _jpegs_in(content: Content, outer: Box) -> list[Extent]:
    found = []
    for box in boxes(content, outer.start, outer.end):
        end = min(box.end, len(content))
        start = content.find(b"\xff\xd8\xff", box.start, min(box.start + 64, end))
        if start >= 0:
            found.append(Extent(start, end - start))
    return found
