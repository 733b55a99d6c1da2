"""All that a file's structure says of it, whatever its type: one walk, no pixel decoded."""

from dataclasses import dataclass

from journal.domain.photos import Kind
from journal.intake import kinds
from journal.intake.boxes import cut_short
from journal.intake.content import Content, as_file
from journal.intake.exif import NOTHING, Exif, read_block, read_with_exifread
from journal.intake.headers import Header, jpeg_header, png_header, webp_header
from journal.intake.heif_boxes import heif_facts
from journal.intake.kinds import FileType, recognise
from journal.intake.movies import Movie, cr3_facts, movie_facts, samples_missing
from journal.intake.tiff import Extent, jpegs_in, layout

_CUT_SHORT = "the end of the file is missing"


@dataclass(frozen=True, slots=True)
class Facts:
    """What a file's structure says.

    ``width`` and ``height`` are as stored, unless ``turned``: then the reader of this type turns
    the picture itself and they are as shown. ``orientation`` is from Exif, else from XMP.
    ``layered`` is that of a JPEG's ``Header``. ``damage`` says in words what is wrong, "" where
    nothing seems to be. ``previews`` are JPEGs in the file.
    """

    type: FileType | None
    width: int = 0
    height: int = 0
    turned: bool = False
    orientation: int | None = None
    channels: int = 0
    layered: bool = False
    exif: Exif = NOTHING
    movie: Movie | None = None
    previews: tuple[Extent, ...] = ()
    damage: str = ""

    @property
    def shown(self) -> tuple[int, int]:
        """Width and height, upright."""
        if self.orientation in (5, 6, 7, 8) and not self.turned:
            return self.height, self.width
        return self.width, self.height


def facts_of(content: Content) -> Facts:
    """Read the structure of a file; what is broken in it is left out or told as damage."""
    found = recognise(bytes(content[: kinds.HEAD]))
    if found is None or found.kind is None:
        return Facts(found)
    if found in kinds.HEIF_FAMILY:
        return _of_heif(content, found)
    if found.kind is Kind.VIDEO:
        return _of_movie(content, found)
    if found is kinds.CR3:
        return _of_cr3(content, found)
    if content[:4] in (b"II*\0", b"MM\0*"):
        return _of_tiff(content, found)
    walk = {kinds.JPEG: jpeg_header, kinds.PNG: png_header, kinds.WEBP: webp_header}.get(found)
    return _of_header(content, found, walk(content)) if walk else _of_other(content, found)


def _of_header(content: Content, found: FileType, header: Header) -> Facts:
    exif = read_block(header.exif) if header.exif else NOTHING
    if header.exif and not exif.dates and found is kinds.JPEG:
        exif = _better(exif, content)
    return Facts(
        found,
        header.width,
        header.height,
        orientation=exif.orientation if exif.orientation is not None else header.xmp_orientation,
        channels=header.channels,
        layered=header.layered,
        exif=exif,
        damage=_CUT_SHORT if header.missing else "" if header.width else "its size can't be read",
    )


def _better(exif: Exif, content: Content) -> Exif:
    second = read_with_exifread(content)
    return second if second.dates else exif


def _of_heif(content: Content, found: FileType) -> Facts:
    heif = heif_facts(content)
    exif = read_block(heif.exif) if heif.exif else NOTHING
    return Facts(
        found,
        heif.width,
        heif.height,
        turned=True,
        orientation=exif.orientation,
        exif=exif,
        damage=_CUT_SHORT if heif.missing else "",
    )


def _of_movie(content: Content, found: FileType) -> Facts:
    movie = movie_facts(content) if found in (kinds.MP4, kinds.MOV) else None
    if movie is None:
        return Facts(found)
    damage = _CUT_SHORT if cut_short(content) or not movie.width else ""
    return Facts(found, movie.width, movie.height, turned=True, movie=movie, damage=damage)


def _of_cr3(content: Content, found: FileType) -> Facts:
    exif, previews = cr3_facts(content)
    damage = _CUT_SHORT if cut_short(content) or samples_missing(content) else ""
    return Facts(
        found,
        exif.width,
        exif.height,
        orientation=exif.orientation,
        exif=exif,
        previews=previews,
        damage=damage,
    )


def _of_tiff(content: Content, found: FileType) -> Facts:
    tiff = layout(content)
    exif = read_block(content)
    if not exif.dates:
        exif = _better(exif, content)
    width, height = tiff.width, tiff.height
    if found.kind is Kind.RAW and exif.width * exif.height > width * height:
        width, height = exif.width, exif.height
    return Facts(
        found,
        width,
        height,
        orientation=exif.orientation,
        exif=exif,
        previews=tiff.previews,
        damage="picture data is missing" if tiff.missing else "",
    )


def _of_other(content: Content, found: FileType) -> Facts:
    """The rarer types, left to the libraries."""
    from journal.intake.pillow import Image

    if found.kind is Kind.RAW:
        exif = read_with_exifread(content)
        return Facts(
            found,
            exif.width,
            exif.height,
            orientation=exif.orientation,
            exif=exif,
            previews=jpegs_in(content),
        )
    try:
        return Facts(found, *Image.open(as_file(content)).size)
    except Exception:
        return Facts(found, damage="its header can't be read")
