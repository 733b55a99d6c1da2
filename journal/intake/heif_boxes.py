"""What a HEIF picture's boxes say (ISO 23008-12): its size as shown, and its Exif block.

``pillow_heif`` is for the pixels. It decodes a file cut short without a word, takes the size of
such a file from what is left of it, and opens none whose picture is damaged, however whole its
dates are; so these are read here.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from journal.intake.boxes import Box, boxes, child, cut_short, number, top
from journal.intake.content import Content

_MOST_ITEMS = 20_000
_LONGEST_EXIF = 4 * 1024 * 1024


@dataclass(frozen=True, slots=True)
class HeifFacts:
    """``width`` and ``height`` as shown, turned by what the container asks; 0 where unknown.

    ``exif`` is a TIFF structure, b"" where there is none. ``missing`` tells whether bytes that an
    item needs lie past the end of the file.
    """

    width: int
    height: int
    exif: bytes
    missing: bool


@dataclass(frozen=True, slots=True)
class _Item:
    """Where an item's bytes lie: (start, length) each."""

    extents: tuple[tuple[int, int], ...]


def heif_facts(content: Content) -> HeifFacts:
    """Read the boxes of a picture of the HEIF family; a broken box gives nothing, not an error."""
    meta = child(content, top(content), b"meta")
    if meta is None:
        return HeifFacts(0, 0, b"", missing=True)
    meta = Box(meta.type, meta.start + 4, meta.end)
    items = _items(content, meta)
    exif = items.get(_exif_item(content, meta))
    missing = cut_short(content) or any(
        start + length > len(content) for item in items.values() for start, length in item.extents
    )
    # Nobody can say what of a file cut short will be shown, so its size is the stored one.
    width, height = _size(content, meta, crop=not missing)
    return HeifFacts(width, height, _exif(content, exif) if exif else b"", missing)


def _size(content: Content, meta: Box, *, crop: bool) -> tuple[int, int]:
    """The size of the main picture, turned and, if asked, cropped as its properties say."""
    pitm = child(content, meta, b"pitm")
    if pitm is None:
        return 0, 0
    main = number(content, pitm.start + 4, 2 if number(content, pitm.start, 1) == 0 else 4)
    width = height = 0
    for box in _properties(content, meta, main):
        if box.type == b"ispe":
            width, height = number(content, box.start + 4, 4), number(content, box.start + 8, 4)
        elif box.type == b"clap" and crop:
            width, height = _cropped(content, box, (width, height))
        elif box.type == b"irot" and number(content, box.start, 1) & 1:
            width, height = height, width
    return width, height


def _cropped(content: Content, box: Box, size: tuple[int, int]) -> tuple[int, int]:
    wide, wide_of, high, high_of = (number(content, box.start + 4 * i, 4) for i in range(4))
    if not (wide and high and wide_of and high_of):
        return size
    return round(wide / wide_of), round(high / high_of)


def _properties(content: Content, meta: Box, item: int) -> Iterator[Box]:
    """The properties of an item, in the order in which they apply."""
    iprp = child(content, meta, b"iprp")
    ipco = child(content, iprp, b"ipco")
    known = list(boxes(content, ipco.start, ipco.end)) if ipco else []
    for box in boxes(content, iprp.start, iprp.end) if iprp else ():
        if box.type == b"ipma":
            for index in _associations(content, box, item):
                if 1 <= index <= len(known):
                    yield known[index - 1]


def _associations(content: Content, ipma: Box, item: int) -> list[int]:
    version, wide = number(content, ipma.start, 1), number(content, ipma.start + 3, 1) & 1
    at, id_length = ipma.start + 8, 2 if version < 1 else 4
    for _ in range(min(number(content, ipma.start + 4, 4), _MOST_ITEMS)):
        found, count = number(content, at, id_length), number(content, at + id_length, 1)
        at += id_length + 1
        length = 2 if wide else 1
        if found == item:
            mask = 0x7FFF if wide else 0x7F
            return [number(content, at + i * length, length) & mask for i in range(count)]
        at += count * length
    return []


def _exif_item(content: Content, meta: Box) -> int:
    """The number of the item that holds the Exif block, -1 where there is none."""
    iinf = child(content, meta, b"iinf")
    if iinf is None:
        return -1
    head = 6 if number(content, iinf.start, 1) == 0 else 8
    for box in boxes(content, iinf.start + head, iinf.end):
        version = content[box.start] if box.start < len(content) else 0
        id_length = 4 if version == 3 else 2
        kind = box.start + 4 + id_length + 2
        if box.type == b"infe" and version >= 2 and content[kind : kind + 4] == b"Exif":
            return number(content, box.start + 4, id_length)
    return -1


def _items(content: Content, meta: Box) -> dict[int, _Item]:
    """Where every item lies that is in the file itself or in the meta box's own data."""
    iloc = child(content, meta, b"iloc")
    if iloc is None or iloc.start + 8 > len(content):
        return {}
    version = number(content, iloc.start, 1)
    sizes = number(content, iloc.start + 4, 2)
    lengths = (sizes >> 12, sizes >> 8 & 15, sizes >> 4 & 15, sizes & 15 if version else 0)
    idat = child(content, meta, b"idat")
    wide = 4 if version == 2 else 2
    at, items = iloc.start + 6 + wide, {}
    for _ in range(min(number(content, iloc.start + 6, wide), _MOST_ITEMS)):
        name = number(content, at, wide)
        at += wide
        method = number(content, at, 2) & 15 if version else 0
        at += 4 if version else 2
        base = number(content, at, lengths[2]) + (idat.start if method == 1 and idat else 0)
        at += lengths[2]
        extents, at = _extents(content, at, base, lengths)
        if method < 2:
            items[name] = _Item(extents)
        if at > iloc.end or at > len(content):
            break
    return items


def _extents(
    content: Content, at: int, base: int, lengths: tuple[int, int, int, int]
) -> tuple[tuple[tuple[int, int], ...], int]:
    offset_length, length_length, _, index_length = lengths
    count = number(content, at, 2)
    at += 2
    found = []
    for _ in range(min(count, _MOST_ITEMS)):
        at += index_length
        start = base + number(content, at, offset_length)
        found.append((start, number(content, at + offset_length, length_length)))
        at += offset_length + length_length
        if at > len(content):
            break
    return tuple(found), at


def _exif(content: Content, item: _Item) -> bytes:
    """The TIFF structure in an Exif item: a four-byte offset to it comes first."""
    if sum(length for _, length in item.extents) > _LONGEST_EXIF:
        return b""
    raw = b"".join(content[start : start + length] for start, length in item.extents)
    return raw[4 + int.from_bytes(raw[:4], "big") :]
