"""What a file is, told by its bytes and never by its name."""

from dataclasses import dataclass

from journal.domain.photos import Kind


@dataclass(frozen=True, slots=True)
class FileType:
    """A type of file. ``kind`` is None for what is no photo; ``suffix`` is its usual extension."""

    name: str
    mime: str
    suffix: str
    kind: Kind | None


def _picture(name: str, mime: str, suffix: str) -> FileType:
    return FileType(name, mime, suffix, Kind.PICTURE)


def _raw(name: str, suffix: str, mime: str = "") -> FileType:
    return FileType(name, mime or f"image/x-{suffix.removeprefix('.')}", suffix, Kind.RAW)


def _video(name: str, mime: str, suffix: str) -> FileType:
    return FileType(name, mime, suffix, Kind.VIDEO)


def _other(name: str, mime: str, suffix: str) -> FileType:
    return FileType(name, mime, suffix, None)


JPEG = _picture("JPEG", "image/jpeg", ".jpg")
PNG = _picture("PNG", "image/png", ".png")
GIF = _picture("GIF", "image/gif", ".gif")
BMP = _picture("BMP", "image/bmp", ".bmp")
WEBP = _picture("WebP", "image/webp", ".webp")
TIFF = _picture("TIFF", "image/tiff", ".tif")
JPEG_2000 = _picture("JPEG 2000", "image/jp2", ".jp2")
HEIC = _picture("HEIC", "image/heic", ".heic")
HEIF = _picture("HEIF", "image/heif", ".heif")
AVIF = _picture("AVIF", "image/avif", ".avif")
DNG = _raw("DNG", ".dng", "image/x-adobe-dng")
CR2 = _raw("CR2", ".cr2", "image/x-canon-cr2")
CR3 = _raw("CR3", ".cr3", "image/x-canon-cr3")
RAW = _raw("camera raw", ".raw", "image/x-dcraw")
MP4 = _video("MP4", "video/mp4", ".mp4")
MOV = _video("QuickTime", "video/quicktime", ".mov")

#: Types whose container is that of HEIF: boxes of ISO 14496-12 around items.
HEIF_FAMILY = (HEIC, HEIF, AVIF)

#: How many bytes of a file ``recognise`` wants to see; fewer are enough for most types.
HEAD = 64 * 1024

_STARTS = (
    (b"\xff\xd8\xff", JPEG),
    (b"\x89PNG\r\n\x1a\n", PNG),
    (b"GIF87a", GIF),
    (b"GIF89a", GIF),
    (b"\x00\x00\x00\x0cjP  \r\n\x87\n", JPEG_2000),
    (b"II\x1a\x00\x00\x00HEAPCCDR", _raw("CRW", ".crw")),
    (b"IIU\x00", _raw("RW2", ".rw2")),
    (b"IIRO", _raw("ORF", ".orf")),
    (b"IIRS", _raw("ORF", ".orf")),
    (b"MMOR", _raw("ORF", ".orf")),
    (b"FUJIFILMCCD-RAW", _raw("RAF", ".raf")),
    (b"\x00MRM", _raw("MRW", ".mrw")),
    (b"FOVb", _raw("X3F", ".x3f")),
    (b"\x1aE\xdf\xa3", _video("Matroska", "video/x-matroska", ".mkv")),
    (b"%PDF-", _other("a PDF document", "application/pdf", ".pdf")),
    (b"PK\x03\x04", _other("a ZIP package", "application/zip", ".zip")),
    (b"bplist00", _other("an Apple property list", "application/x-bplist", ".plist")),
    (b"8BPS", _other("a layered picture", "image/vnd.adobe.photoshop", ".psd")),
)

#: The lengths that the second header of a BMP may have.
_BMP_HEADERS = [size.to_bytes(4, "little") for size in (12, 40, 52, 56, 64, 108, 124)]

_BRANDS = {
    **dict.fromkeys((b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx"), HEIC),
    **dict.fromkeys((b"avif", b"avis"), AVIF),
    **dict.fromkeys((b"mif1", b"msf1"), HEIF),
    b"crx ": CR3,
    b"qt  ": MOV,
    **dict.fromkeys((b"M4A ", b"M4B "), _other("a sound recording", "audio/mp4", ".m4a")),
}

_MAKERS_OF_RAW = {
    b"nikon": _raw("NEF", ".nef", "image/x-nikon-nef"),
    b"sony": _raw("ARW", ".arw", "image/x-sony-arw"),
    b"pentax": _raw("PEF", ".pef", "image/x-pentax-pef"),
    b"samsung": _raw("SRW", ".srw", "image/x-samsung-srw"),
    b"seiko epson": _raw("ERF", ".erf", "image/x-epson-erf"),
    b"hasselblad": _raw("3FR", ".3fr", "image/x-hasselblad-3fr"),
}


def recognise(head: bytes) -> FileType | None:
    """The type of a file that begins with ``head``, None for an unknown one."""
    for start, found in _STARTS:
        if head.startswith(start):
            return found
    if head[:4] in (b"II*\x00", b"MM\x00*"):
        return _tiff_family(head)
    if head[:4] == b"RIFF":
        video = _video("AVI", "video/x-msvideo", ".avi")
        return {b"WEBP": WEBP, b"AVI ": video}.get(head[8:12])
    if head[:2] == b"BM" and head[6:10] == bytes(4) and head[14:18] in _BMP_HEADERS:
        return BMP
    return _box_family(head)


def _box_family(head: bytes) -> FileType | None:
    """The type of a file made of boxes, by the brands in its first box."""
    if head[4:8] in (b"moov", b"mdat", b"wide", b"pnot"):
        return MOV
    if head[4:8] != b"ftyp":
        return None
    size = int.from_bytes(head[:4], "big")
    listed = head[16 : min(max(size, 16), 256)]
    brands = [head[8:12], *(listed[i : i + 4] for i in range(0, len(listed) - 3, 4))]
    main = _BRANDS.get(brands[0])
    if main not in (HEIF, None):
        return main
    known = [_BRANDS[brand] for brand in brands if brand in _BRANDS]
    for better in (CR3, AVIF, HEIC, HEIF):
        if better in known:
            return better
    return MP4


def _tiff_family(head: bytes) -> FileType:
    """A plain TIFF, or one of the raw formats that are built like one."""
    from journal.intake.tiff import first_entries

    if head[8:10] == b"CR":
        return CR2
    entries = first_entries(head)
    if 50706 in entries:
        return DNG
    maker = bytes(entries.get(271, b"")).lower()
    sub_pictures, reduced = 330 in entries, entries.get(254) == 1
    for name, found in _MAKERS_OF_RAW.items():
        if maker.startswith(name) and (sub_pictures or reduced):
            return found
    return RAW if sub_pictures and reduced else TIFF
