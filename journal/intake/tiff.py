"""The skeleton of a TIFF file, on which most camera raw formats are built too.

Only what is needed to size a picture, to find previews in it and to see that bytes are missing;
the tags of a photo are read by libraries.
"""

import struct
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from journal.intake.content import Content

#: Bytes of one value, by the type numbers of TIFF 6.0 and its supplements.
_SIZES = {1: 1, 2: 1, 3: 2, 4: 4, 5: 8, 6: 1, 7: 1, 8: 2, 9: 4, 10: 8, 11: 4, 12: 8, 13: 4}
_FORMATS = {1: "B", 3: "H", 4: "I", 8: "h", 9: "i", 13: "I"}

#: No honest file has more directories, or more values in one of the tags read here.
_MOST_DIRECTORIES = 64
_MOST_VALUES = 100_000

#: How far a JPEG is searched for, how many are taken, and how long one may be, in bytes.
_SEARCHED, _MOST_PREVIEWS, _LONGEST_PREVIEW = 4 * 1024 * 1024, 4, 16 * 1024 * 1024

_WIDTH, _HEIGHT, _COMPRESSION = 256, 257, 259
_STRIP_OFFSETS, _STRIP_COUNTS, _TILE_OFFSETS, _TILE_COUNTS = 273, 279, 324, 325
_JPEG_OFFSET, _JPEG_LENGTH = 513, 514
_SUB_DIRECTORIES, _MAKER, _SUBFILE = 330, 271, 254
_WANTED = {
    _SUBFILE, _WIDTH, _HEIGHT, _COMPRESSION, _MAKER, _STRIP_OFFSETS, _STRIP_COUNTS, 274,
    _TILE_OFFSETS, _TILE_COUNTS, _JPEG_OFFSET, _JPEG_LENGTH, _SUB_DIRECTORIES, 50706,
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Extent:
    """Where some bytes of a picture lie in the file."""

    start: int
    length: int


@dataclass(frozen=True, slots=True)
class Layout:
    """What a TIFF holds.

    ``width`` and ``height`` are those of the largest picture, as stored. ``previews`` are the
    pictures that are JPEGs of their own. ``missing`` tells whether picture data lies past the end
    or is not there where the file says.
    """

    width: int
    height: int
    previews: tuple[Extent, ...]
    missing: bool


def first_entries(content: Content) -> dict[int, Any]:
    """The wanted tags of the first directory, as far as ``content`` reaches."""
    return next(_directories(content), {})


def layout(content: Content) -> Layout:
    """Walk every directory; a damaged one is passed over."""
    width = height = 0
    extents: list[Extent] = []
    previews: list[Extent] = []
    missing = False
    for entries in _directories(content):
        size = _number(entries.get(_WIDTH)), _number(entries.get(_HEIGHT))
        if size[0] * size[1] > width * height:
            width, height = size
        found = list(_extents(entries))
        extents += found
        if len(found) == 1 and content[found[0].start : found[0].start + 3] == b"\xff\xd8\xff":
            previews += found
        elif _JPEG_OFFSET in entries and entries.get(_COMPRESSION) in (6, None):
            missing = True
    past_end = any(e.start + e.length > len(content) for e in extents)
    return Layout(width, height, tuple(previews), missing or past_end or not extents)


def jpegs_in(content: Content) -> tuple[Extent, ...]:
    """Whatever looks like the start of a JPEG in a file whose structure isn't known here."""
    found: list[Extent] = []
    at = content.find(b"\xff\xd8\xff", 0, _SEARCHED)
    while at >= 0 and len(found) < _MOST_PREVIEWS:
        found.append(Extent(at, min(len(content) - at, _LONGEST_PREVIEW)))
        at = content.find(b"\xff\xd8\xff", at + 3, _SEARCHED)
    return tuple(found)


def _directories(content: Content) -> Iterator[dict[int, Any]]:
    """Every directory that can be reached, each once, however they point at each other."""
    order = "<" if content[:2] == b"II" else ">"
    waiting = [_unsigned(content, 4, order)]
    seen: set[int] = set()
    while waiting and len(seen) < _MOST_DIRECTORIES:
        offset = waiting.pop(0)
        if offset in seen or not 8 <= offset < len(content) - 2:
            continue
        seen.add(offset)
        entries, following = _entries(content, offset, order)
        waiting += [following, *_numbers(entries.get(_SUB_DIRECTORIES))]
        yield entries


def _entries(content: Content, offset: int, order: str) -> tuple[dict[int, Any], int]:
    (count,) = struct.unpack(order + "H", content[offset : offset + 2])
    entries = {}
    for index in range(count):
        raw = content[offset + 2 + index * 12 : offset + 14 + index * 12]
        if len(raw) < 12:
            break
        tag, kind, length = struct.unpack(order + "HHI", raw[:8])
        if tag in _WANTED:
            entries[tag] = _value(content, raw[8:], kind, length, order)
    return entries, _unsigned(content, offset + 2 + count * 12, order)


def _value(content: Content, inline: bytes, kind: int, length: int, order: str) -> Any:
    size = _SIZES.get(kind, 1) * length
    if length > _MOST_VALUES:
        return None
    if size > 4:
        start = struct.unpack(order + "I", inline)[0]
        inline = content[start : start + size]
    if kind not in _FORMATS:
        return inline[:size]
    length = min(length, len(inline) // _SIZES[kind])
    values = struct.unpack(f"{order}{length}{_FORMATS[kind]}", inline[: length * _SIZES[kind]])
    return values[0] if len(values) == 1 else values


def _extents(entries: dict[int, Any]) -> Iterator[Extent]:
    for offsets, counts in (
        (_STRIP_OFFSETS, _STRIP_COUNTS),
        (_TILE_OFFSETS, _TILE_COUNTS),
        (_JPEG_OFFSET, _JPEG_LENGTH),
    ):
        pairs = zip(_numbers(entries.get(offsets)), _numbers(entries.get(counts)), strict=False)
        yield from (Extent(start, length) for start, length in pairs if length > 0)


def _numbers(value: Any) -> tuple[int, ...]:
    if isinstance(value, int):
        return (value,)
    return value if isinstance(value, tuple) else ()


def _number(value: Any) -> int:
    return next(iter(_numbers(value)), 0)


def _unsigned(content: Content, offset: int, order: str) -> int:
    raw = content[offset : offset + 4]
    return int(struct.unpack(order + "I", raw)[0]) if len(raw) == 4 else 0
