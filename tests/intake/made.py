"""Pictures made for the tests: an F on a field of two colours, which shows every wrong turn."""

import io
import struct
import zlib

from PIL import Image, ImageDraw

DATE, DIGITISED, CHANGED = 0x9003, 0x9004, 0x0132
SUBSEC, OFFSET = 0x9291, 0x9011


def scene(width: int = 400, height: int = 300) -> Image.Image:
    """A picture with no symmetry at all, upright."""
    image = Image.new("RGB", (width, height), (40, 90, 160))
    draw = ImageDraw.Draw(image)
    draw.rectangle((0, 0, width // 4, height), (200, 60, 40))
    draw.rectangle((0, 0, width, height // 5), (230, 210, 120))
    draw.rectangle((width // 2, height // 2, width, height // 2 + height // 10), (20, 20, 20))
    return image


#: How an upright picture lies in a file of each Exif orientation.
STORED = {
    1: None,
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_90,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_270,
}


def lying(image: Image.Image, orientation: int) -> Image.Image:
    """The picture as a camera held that way stores it."""
    turn = STORED[orientation]
    return image if turn is None else image.transpose(turn)


def exif(
    main: dict[int, object] | None = None,
    inner: dict[int, object] | None = None,
    gps: dict[int, object] | None = None,
) -> bytes:
    """An Exif block with the given tags."""
    block = Image.Exif()
    block.update(main or {})
    if inner:
        block.get_ifd(0x8769).update(inner)
    if gps:
        block.get_ifd(0x8825).update(gps)
    return block.tobytes()


def saved(image: Image.Image, kind: str = "JPEG", **options: object) -> bytes:
    """The picture as a file."""
    room = io.BytesIO()
    image.save(room, kind, **options)
    return room.getvalue()


def jpeg(
    date: str = "", *, size: tuple[int, int] = (400, 300), seed: int = 0, **main: object
) -> bytes:
    """A small JPEG with a date; ``seed`` makes its bytes its own."""
    image = scene(*size)
    image.putpixel((seed % size[0], seed // size[0] % size[1]), (255, 0, 255))
    inner = {DATE: date} if date else {}
    tags = {0x010F: "Rook Optical", 0x0110: "Rook 1", 0x010E: f"number {seed}", **main}
    return saved(image, quality=85, exif=exif(tags, inner))


def with_thumbnail(picture: bytes, thumbnail: bytes, orientation: int = 1) -> bytes:
    """A JPEG whose Exif block holds a small JPEG, as cameras write it."""
    entries = struct.pack("<HHHIHH", 1, 0x0112, 3, 1, orientation, 0)
    second_at = 8 + len(entries) + 4
    data_at = second_at + 2 + 3 * 12 + 4
    second = struct.pack("<H", 3)
    second += struct.pack("<HHIHH", 0x0103, 3, 1, 6, 0)
    second += struct.pack("<HHII", 0x0201, 4, 1, data_at)
    second += struct.pack("<HHII", 0x0202, 4, 1, len(thumbnail)) + bytes(4)
    block = b"II*\0" + struct.pack("<I", 8) + entries + struct.pack("<I", second_at)
    block += second + thumbnail
    segment = b"Exif\0\0" + block
    head = b"\xff\xd8\xff\xe1" + struct.pack(">H", len(segment) + 2) + segment
    return head + picture[2:]


def png_chunk(kind: bytes, content: bytes) -> bytes:
    """One chunk of a PNG."""
    check = zlib.crc32(kind + content)
    return struct.pack(">I", len(content)) + kind + content + struct.pack(">I", check)


def png_with(picture: bytes, *chunks: bytes, before_end: bool = True) -> bytes:
    """A PNG with more chunks, behind the picture data or before it."""
    at = len(picture) - 12 if before_end else 33
    return picture[:at] + b"".join(chunks) + picture[at:]


def bomb_png(width: int = 60_000, height: int = 60_000) -> bytes:
    """A PNG of some kilobytes that would unpack to gigabytes."""
    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    packed = zlib.compress(bytes(1_000_000), 9)
    chunks = [png_chunk(b"IHDR", head), png_chunk(b"IDAT", packed), png_chunk(b"IEND", b"")]
    return b"\x89PNG\r\n\x1a\n" + b"".join(chunks)


def circling_tiff() -> bytes:
    """A TIFF whose directories point at each other and at themselves."""
    entry = struct.pack("<HHII", 330, 4, 1, 8) + struct.pack("<HHII", 0x8769, 4, 1, 8)
    one = struct.pack("<H", 2) + entry + struct.pack("<I", 40)
    two = struct.pack("<H", 1) + struct.pack("<HHII", 330, 4, 1, 8) + struct.pack("<I", 8)
    return (b"II*\0" + struct.pack("<I", 8) + one).ljust(40, b"\0") + two


def film(
    made: int = 0, size: tuple[int, int] = (640, 480), brand: bytes = b"isom", turned: bool = False
) -> bytes:
    """The boxes of a film without its pictures; ``made`` counts seconds from 1904."""
    matrix = (0, 0x10000, 0, -0x10000, 0, 0, 0, 0, 0x40000000)
    plain = (0x10000, 0, 0, 0, 0x10000, 0, 0, 0, 0x40000000)
    head = bytes(4) + struct.pack(">IIIII", made, made, 1, 0, 100) + bytes(16)
    track = head + struct.pack(">9i", *(matrix if turned else plain))
    track += struct.pack(">II", size[0] << 16, size[1] << 16)
    movie = bytes(4) + struct.pack(">IIII", made, made, 1000, 5000) + bytes(80)
    moov = box(b"moov", box(b"mvhd", movie) + box(b"trak", box(b"tkhd", track)))
    return box(b"ftyp", brand + bytes(4) + brand) + moov + box(b"mdat", bytes(64))


def box(kind: bytes, content: bytes) -> bytes:
    """One box of ISO 14496-12."""
    return struct.pack(">I", 8 + len(content)) + kind + content
