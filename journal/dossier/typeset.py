"""Making the dossier's file: pictures fetched, pages set, and the whole put in its place."""

import math
from collections.abc import Iterator, Mapping
from pathlib import Path

from journal.domain.errors import JournalError
from journal.domain.hidden_words import Finder
from journal.domain.progress import Context, Silent
from journal.dossier.document import Dossier, DossierReport
from journal.dossier.framing import framings
from journal.dossier.leaks import leaks
from journal.dossier.pages import COVER_HEIGHT, sheet
from journal.dossier.papers import paper_of
from journal.dossier.pdf import typeset
from journal.dossier.printing import Pictures, Print, Unprinted, prints
from journal.dossier.rows import HALF_SHAPE, half_width, in_rows, pixels, placed, shape_of
from journal.dossier.words import excerpt, listed
from journal.files.durable import write_atomically
from journal.files.scratch import scratch_folder

#: Pictures are scaled to this many dots per inch of their printed size, as long as there is room.
DOTS_PER_INCH = {"print": 220, "screen": 110}

#: So many pixels all pictures together may have: the typesetter's memory grows with them. Five
#: hundred in print size stay well below it; with more, all are scaled by as much as it takes.
_MOST_PIXELS = 300_000_000

#: A picture may be this much larger than the record says of its shape.
_SLACK, _SLACK_UNKNOWN = 1.02, 1.1

#: A photo that is cut to what another shows too is made so much larger first.
_CUT = 1.4


def write_pdf(
    dossier: Dossier,
    pictures: Pictures,
    out: Path,
    context: Context | None = None,
    withheld: Finder | None = None,
) -> DossierReport:
    """Typeset ``dossier`` and put it at ``out`` whole, in place of what may have been there.

    A photo that can't be shown leaves a word on its page and a note in the report. The PDF is read
    back, and what ``withheld`` still finds in it is noted too. ``Cancelled`` and every failure
    leave what was at ``out`` as it was.

    Raises:
        JournalError: ``out`` can't be written.
    """
    context = context or Silent()
    _check_target(out)
    shown = dossier.shown
    try:
        with scratch_folder("dossier") as folder:
            printed = prints(sizes(dossier), shown, pictures, folder, context)
            context.report(len(shown), len(shown), "Typesetting")
            context.checkpoint()
            framed = framings(dossier.pairs, printed, folder)
            data, pages, notes = typeset(sheet(dossier, printed, framed), folder)
        context.checkpoint()
        write_atomically(out, data)
    except OSError as error:
        raise JournalError(f"The dossier can't be written to {out}: {_reason(error)}.") from error
    on_pages = sum(isinstance(result, Print) for result in printed.values())
    notes = (*_photo_notes(dossier, printed), *notes, *_leak_notes(data, dossier, withheld))
    return DossierReport(out, pages, on_pages, notes)


def _leak_notes(data: bytes, dossier: Dossier, withheld: Finder | None) -> Iterator[str]:
    """One sentence for each sort of withheld thing that the finished file still holds."""
    if withheld is None or not dossier.choices.withheld:
        return
    for kind, pages in leaks(data, withheld).items():
        shown = [f"page {page}" if page else "its description" for page in pages[:6]]
        yield (
            f"A word to be withheld ({kind.value}) still stands in {listed(shown)}. It may be a "
            "word of the program’s own that is spelt alike; look before you give the dossier away."
        )


def _check_target(out: Path) -> None:
    """Say at once what would stand in the way at the end."""
    try:
        if not out.parent.is_dir():
            raise JournalError(f"The dossier can't be written: there is no folder {out.parent}.")
        if out.is_dir():
            raise JournalError(f"The dossier can't be written: {out} is a folder, not a file.")
    except (OSError, ValueError) as error:
        raise JournalError(f"The dossier can't be written to {out}: {_reason(error)}.") from error


def _reason(error: OSError | ValueError) -> str:
    said = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
    return said[:1].lower() + said[1:].rstrip(".")


def sizes(dossier: Dossier) -> dict[int, int]:
    """Pixels of the longer side of every photo shown, at the largest size it is printed in."""
    wanted = {number: max(box) for number, box in _boxes(dossier).items()}
    dots = DOTS_PER_INCH[dossier.choices.pictures]
    shapes = {shown.number: shape_of(shown.photo) for shown in dossier.shown}
    whole = sum(
        pixels(side, 0, dots) ** 2 / max(shapes[number], 1 / shapes[number])
        for number, side in wanted.items()
    )
    fewer = min(1.0, math.sqrt(_MOST_PIXELS / whole)) if whole else 1.0
    return {number: pixels(side * fewer, 0, dots) for number, side in wanted.items()}


def _boxes(dossier: Dossier) -> dict[int, tuple[float, float]]:
    """Width and height in millimetres that each photo is printed in at its largest."""
    measure = paper_of(dossier).measure
    found: dict[int, tuple[float, float]] = {}

    def want(number: int, width: float, height: float) -> None:
        found[number] = max((width, height), found.get(number, (0.0, 0.0)), key=max)

    for area in dossier.areas:
        for row in in_rows(area.shown):
            for cell in placed(row, {}, measure):
                slack = _SLACK if cell.shown.photo.width else _SLACK_UNKNOWN
                want(cell.shown.number, cell.width * slack, cell.height * slack)
    laid = {s.number for p in dossier.pairs if p.matrix for s in (p.before, p.after)}
    halves = [view.shown for view in dossier.views if view.shown]
    halves += [shown for pair in dossier.pairs for shown in (pair.before, pair.after)]
    for shown in halves:
        wide = half_width(measure)
        high = wide / HALF_SHAPE
        ratio = shape_of(shown.photo)
        # A pair laid over each other is cut to what both show, so that more is needed.
        more = _CUT if shown.number in laid else 1.0
        want(shown.number, min(wide, high * ratio) * more, min(high, wide / ratio) * more)
    if dossier.cover is not None:
        ratio = shape_of(dossier.cover.photo)
        height = min(paper_of(dossier).width / ratio, COVER_HEIGHT)
        want(dossier.cover.number, height * ratio, height)
    return found


def _photo_notes(dossier: Dossier, printed: Mapping[int, Print | Unprinted]) -> Iterator[str]:
    """One sentence on each photo that isn't shown, or shown in part."""
    for shown in dossier.shown:
        result = printed[shown.number]
        name = excerpt(shown.photo.name, 80)
        if isinstance(result, Unprinted):
            yield f"{name} (P{shown.number}) isn’t shown: {result.reason}."
        elif shown.photo.damage:
            yield f"{name} (P{shown.number}) is damaged: {shown.photo.damage.rstrip('.')}."
