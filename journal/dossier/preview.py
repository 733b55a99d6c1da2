"""The dossier's pages to be looked at before it is made."""

from dataclasses import dataclass, replace

from journal.domain.pictures import Picture
from journal.domain.progress import Context
from journal.dossier.document import Dossier
from journal.dossier.framing import framings
from journal.dossier.pages import sheet
from journal.dossier.pdf import typeset
from journal.dossier.printing import Pictures, prints
from journal.files.pdfium import opened_pdf
from journal.files.scratch import scratch_folder

#: Pixels of a photo's longer side; a thumbnail has no more.
_PHOTO = 256


@dataclass(frozen=True, slots=True)
class Proof:
    """The pages as they would be, with small photos: a PDF in memory, to be looked at only.

    ``photos`` is how many photos are on them, ``withheld`` what is not in it by choice, a sentence
    each, and ``notes`` what can't be shown right.
    """

    pdf: bytes
    count: int
    photos: int
    withheld: tuple[str, ...]
    notes: tuple[str, ...]


def proof(dossier: Dossier, pictures: Pictures, context: Context) -> Proof:
    """Set the pages by the code that makes the dossier itself, with small photos."""
    small = replace(dossier, choices=replace(dossier.choices, pictures="screen"))
    with scratch_folder("preview") as folder:
        sizes = {row.number: _PHOTO for row in small.shown}
        printed = prints(sizes, small.shown, pictures, folder, context)
        context.report(len(sizes), len(sizes), "Setting the pages")
        context.checkpoint()
        framed = framings(small.pairs, printed, folder)
        pdf, count, notes = typeset(sheet(small, printed, framed), folder)
    return Proof(pdf, count, len(small.shown), dossier.withheld, notes)


def page_picture(made: Proof, number: int, width: int) -> Picture:
    """Page ``number``, from 0, as a picture of ``width`` pixels."""
    with opened_pdf(made.pdf) as document:
        page = document[number]
        scale = width / max(page.get_width(), 1.0)
        bitmap = page.render(scale=scale, rev_byteorder=True, prefer_bgrx=False)
        image = bitmap.to_pil().convert("RGB")
        page.close()
    return Picture(image.width, image.height, image.tobytes())
