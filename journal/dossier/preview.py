"""The dossier's pages as pictures, to be looked at before it is made."""

from dataclasses import dataclass, replace

from journal.domain.progress import Context
from journal.dossier.document import Dossier
from journal.dossier.pages import sheet
from journal.dossier.papers import paper_of
from journal.dossier.pdf import pictured
from journal.dossier.printing import Pictures, prints
from journal.files.scratch import scratch_folder

_INCH = 25.4


@dataclass(frozen=True, slots=True)
class Pages:
    """Pictures of pages as PNG, how many pages there are in all, and what can't be shown right."""

    pictures: tuple[bytes, ...]
    count: int
    notes: tuple[str, ...]


def pages(
    dossier: Dossier, pictures: Pictures, *, longest: int, first: int, context: Context
) -> Pages:
    """The first pages, or with 0 all of them, their longer side ``longest`` pixels."""
    small = replace(dossier, choices=replace(dossier.choices, pictures="screen"))
    with scratch_folder("preview") as folder:
        sizes = {row.number: 256 for row in small.shown}
        printed = prints(sizes, small.shown, pictures, folder, context)
        context.report(len(sizes), len(sizes), "Setting the pages")
        context.checkpoint()
        per_inch = longest / paper_of(small).height * _INCH
        made, notes = pictured(sheet(small, printed), folder, per_inch)
    return Pages(tuple(made[: first or None]), len(made), notes)
