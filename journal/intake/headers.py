"""What the headers of JPEG, PNG and WebP files say, without decoding a pixel.

Their libraries give the same, but PNG's decodes the whole picture to find the Exif block behind it,
and none of them notices before decoding that a file is cut short.
"""

import re
import zlib
from collections.abc import Iterator
from dataclasses import dataclass

from journal.intake.content import Content

#: Exif blocks are at most 64 kB in JPEG; a larger one in another type is no honest one.
_LONGEST_EXIF = 4 * 1024 * 1024
_MOST_SEGMENTS = 2000
_MOST_CHUNKS = 100_000

_NO_LENGTH = {0x01, *range(0xD0, 0xD9)}
_PROGRESSIVE = {0xC2, 0xC6, 0xCA, 0xCE}
_FRAMES = {*range(0xC0, 0xD0)} - {0xC4, 0xC8, 0xCC}
_XMP_ORIENTATION = re.compile(rb"tiff:Orientation(?:=['\"]|>)([1-8])")


@dataclass(frozen=True, slots=True)
class Header:
    """What a picture's header says.

    ``width`` and ``height`` are as stored, 0 where unknown. ``exif`` is a TIFF structure, b"" where
    there is none. ``xmp_orientation`` stands in for an orientation that Exif doesn't give.
    ``channels`` is 0 where unknown. ``missing`` tells whether the end of the picture is missing,
    ``layered`` whether it is stored in layers that must all be unpacked to see any of it.
    """

    width: int
    height: int
    exif: bytes = b""
    xmp_orientation: int | None = None
    channels: int = 0
    missing: bool = False
    layered: bool = False


def jpeg_header(content: Content) -> Header:
    """Walk the segments of a JPEG up to its picture data, then look for the end mark."""
    width = height = channels = scan = coding = 0
    exif: list[bytes] = []
    for marker, start, end in _segments(content):
        if marker == 0xDA:
            scan = end
        elif marker in _FRAMES and not width:
            frame = content[start : start + 6]
            if len(frame) == 6:
                height, width = int.from_bytes(frame[1:3], "big"), int.from_bytes(frame[3:5], "big")
                channels, coding = frame[5], marker
        elif marker == 0xE1 and content[start : start + 6] == b"Exif\0\0":
            exif.append(content[start + 6 : end])
    # In picture data a byte FF is always followed by 00 or a restart mark, so this is no accident.
    missing = not scan or content.rfind(b"\xff\xd9", scan) < 0
    layered = coding in _PROGRESSIVE
    return Header(width, height, b"".join(exif), None, channels, missing, layered)


def _segments(content: Content) -> Iterator[tuple[int, int, int]]:
    """(marker, start of content, end of content) of each segment, the start of scan last."""
    at = 2
    for _ in range(_MOST_SEGMENTS):
        while content[at : at + 2] == b"\xff\xff":
            at += 1
        head = content[at : at + 4]
        if len(head) < 4 or head[0] != 0xFF:
            return
        if head[1] in _NO_LENGTH:
            at += 2
            continue
        length = int.from_bytes(head[2:], "big")
        if length < 2 or head[1] == 0xD9:
            return
        yield head[1], at + 4, at + 2 + length
        if head[1] == 0xDA:
            return
        at += 2 + length


def png_header(content: Content) -> Header:
    """Walk the chunks of a PNG to its end."""
    size = content[16:24]
    width, height = int.from_bytes(size[:4], "big"), int.from_bytes(size[4:], "big")
    exif, orientation, missing = b"", None, True
    for kind, start, end in _chunks(content):
        if end > len(content):
            break
        if kind == b"IEND":
            missing = False
            break
        if kind == b"eXIf":
            exif = content[start : min(end, start + _LONGEST_EXIF)]
        elif kind in (b"tEXt", b"zTXt", b"iTXt") and end - start <= _LONGEST_EXIF:
            text = _png_text(kind, content[start:end])
            exif = exif or _raw_profile(text)
            orientation = orientation or _orientation_in_xmp(text)
    return Header(width, height, exif, orientation, 0, missing)


def _chunks(content: Content) -> Iterator[tuple[bytes, int, int]]:
    at = 8
    for _ in range(_MOST_CHUNKS):
        head = content[at : at + 8]
        if len(head) < 8:
            return
        end = at + 8 + int.from_bytes(head[:4], "big")
        yield head[4:], at + 8, end
        at = end + 4


def _png_text(kind: bytes, chunk: bytes) -> bytes:
    """Keyword and text of a text chunk, unpacked up to a limit."""
    keyword, _, rest = chunk.partition(b"\0")
    packed = kind == b"zTXt" or (kind == b"iTXt" and rest[:1] == b"\1")
    if kind == b"zTXt":
        rest = rest[1:]
    elif kind == b"iTXt":
        rest = rest[2:].partition(b"\0")[2].partition(b"\0")[2]
    if packed:
        try:
            rest = zlib.decompressobj().decompress(rest, _LONGEST_EXIF)
        except zlib.error:
            rest = b""
    return keyword + b"\0" + rest


def _raw_profile(text: bytes) -> bytes:
    """The Exif block in the older text form: a name, a length, then hexadecimal digits."""
    keyword, _, profile = text.partition(b"\0")
    if keyword not in (b"Raw profile type exif", b"Raw profile type APP1"):
        return b""
    digits = b"".join(profile.split()[2:])
    try:
        block = bytes.fromhex(digits.decode("ascii"))
    except ValueError:
        return b""
    return block if block[:2] in (b"II", b"MM") else block.partition(b"Exif\0\0")[2]


def webp_header(content: Content) -> Header:
    """Walk the chunks of a WebP; its size is in the first, whichever of three kinds that is."""
    total = 8 + int.from_bytes(content[4:8], "little")
    width = height = 0
    exif, orientation, at = b"", None, 12
    for _ in range(_MOST_CHUNKS):
        head = content[at : at + 8]
        if len(head) < 8:
            break
        start, end = at + 8, at + 8 + int.from_bytes(head[4:], "little")
        if not width:
            width, height = _webp_size(head[:4], content[start : start + 10])
        if head[:4] == b"EXIF":
            exif = content[start : min(end, start + _LONGEST_EXIF)]
        elif head[:4] == b"XMP ":
            orientation = _orientation_in_xmp(content[start : min(end, start + _LONGEST_EXIF)])
        at = end + (end & 1)
    return Header(width, height, exif, orientation, 0, total > len(content))


def _webp_size(kind: bytes, head: bytes) -> tuple[int, int]:
    if kind == b"VP8X":
        return 1 + int.from_bytes(head[4:7], "little"), 1 + int.from_bytes(head[7:10], "little")
    if kind == b"VP8 ":
        sizes = int.from_bytes(head[6:8], "little"), int.from_bytes(head[8:10], "little")
        return sizes[0] & 0x3FFF, sizes[1] & 0x3FFF
    if kind == b"VP8L":
        bits = int.from_bytes(head[1:5], "little")
        return 1 + (bits & 0x3FFF), 1 + (bits >> 14 & 0x3FFF)
    return 0, 0


def _orientation_in_xmp(text: bytes) -> int | None:
    found = _XMP_ORIENTATION.search(text)
    return int(found[1]) if found else None
