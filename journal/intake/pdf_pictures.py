"""The pictures on the pages of a PDF, as they lie in it."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from journal.domain.progress import Context
from journal.intake.reading.pdf_text import opened

#: Smaller ones are signs and lines, not photos; in pixels of the longer side.
SMALLEST = 64
#: No more are looked at in one file.
MOST = 5000


def pictures(path: Path, context: Context) -> Iterator[tuple[int, int, Any]]:
    """Each picture as (page, its number on the page, Pillow image), both counted from 1.

    Raises:
        JournalError: the file can't be opened as a PDF.
        Cancelled: the person asked to stop.
    """
    import pypdfium2 as pdfium
    from pypdfium2 import raw

    found = 0
    with opened(path) as document:
        for number in range(len(document)):
            context.checkpoint()
            context.report(number, len(document), "Looking at pages")
            page = document[number]
            place = 0
            for part in page.get_objects(filter=[raw.FPDF_PAGEOBJ_IMAGE], max_depth=6):
                try:
                    image = part.get_bitmap(render=False).to_pil()
                except (pdfium.PdfiumError, ValueError, RuntimeError):
                    continue
                if max(image.size) < SMALLEST or found >= MOST:
                    continue
                place, found = place + 1, found + 1
                yield number + 1, place, image
