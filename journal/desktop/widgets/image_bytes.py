"""Pictures from bytes and files in threads beside the window's.

Qt is always told which kind a picture is. Left to find out, it asks each of its plugins, and the
one for SVG connects signals to look: a reader's thread then holds Python while it waits for Qt, and
the window holds Qt while it waits for Python, for ever.
"""

from pathlib import Path

from PySide6.QtGui import QImage, QImageReader

#: How pictures that are kept or drawn by the program begin, and what Qt calls their kind.
_BEGINNINGS = ((b"\xff\xd8", "JPEG"), (b"\x89PNG\r\n\x1a\n", "PNG"))

#: Kinds of files by their endings, as Qt calls them.
_ENDINGS = {
    ".jpg": b"jpeg",
    ".jpeg": b"jpeg",
    ".png": b"png",
    ".tif": b"tiff",
    ".tiff": b"tiff",
    ".webp": b"webp",
}


def image_of(data: bytes | None) -> QImage:
    """A JPEG or PNG as pixels; a null image where there is none or it can't be read."""
    for beginning, kind in _BEGINNINGS:
        if data and data.startswith(beginning):
            # The types ask for bytes, which Qt's own function then refuses.
            return QImage.fromData(data, kind)  # type: ignore[arg-type]
    return QImage()


def reader_of(path: Path) -> QImageReader | None:
    """A reader for a picture's file, by its ending; None for what is no picture that Qt reads."""
    kind = _ENDINGS.get(path.suffix.casefold())
    if kind is None:
        return None
    reader = QImageReader(str(path), kind)
    reader.setAutoDetectImageFormat(False)
    return reader
