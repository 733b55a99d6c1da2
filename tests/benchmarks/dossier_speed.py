"""How long a dossier of 100 photos takes, against typst alone on the very same pages.

Run it with the interpreter of the project's environment: python tests/benchmarks/dossier_speed.py
Both sides are measured in this one process, in turn, and the median of the rounds counts. The
reference gets the finished pictures, drawings and texts on the disk and only compiles them; the
dossier composes the story, fetches, checks and writes the pictures, sets the pages and writes the
file. The goal is a ratio under 1.5.
"""

import json
import os
import shutil
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from functools import cache, partial
from pathlib import Path
from statistics import median

import pypdfium2
import typst

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from journal.domain.photos import Photo
from journal.domain.progress import Silent
from journal.domain.record import Record
from journal.dossier import glyphs, pdf, typeset
from journal.dossier.compose import compose
from journal.dossier.document import Dossier
from journal.dossier.gaps import gaps
from journal.dossier.pages import sheet
from journal.dossier.printing import prints
from journal.dossier.typeset import write_pdf
from journal.files.assets import asset
from tests.dossier import showcase

ROUNDS = 8
MADE_ON = date(2026, 11, 25)


@cache
def picture(photo: Photo, longest: int) -> bytes | None:
    """A picture drawn once: what decoding costs depends on the originals, not on the dossier."""
    return showcase.picture(photo, longest)


def composed(record: Record, title: str) -> Dossier:
    summary, tables = showcase.costs(record)
    named = replace(record, car=replace(record.car, title=title))
    return compose(named, summary, tables, gaps(named), MADE_ON, "0.1.0")


def ready_pages(dossier: Dossier, folder: Path) -> str:
    """Put into ``folder`` all that typst needs for the same pages; the texts, as JSON."""
    printed = prints(typeset.sizes(dossier), dossier.shown, picture, folder, Silent())
    laid = sheet(dossier, printed)
    pdf.typeset(laid, folder)
    return json.dumps(glyphs.everywhere(laid.data, glyphs.breakable), ensure_ascii=False)


def typst_alone(folder: Path, texts: str) -> bytes:
    return typst.compile(
        folder / "main.typ",
        root=folder,
        font_paths=typst.Fonts(include_system_fonts=False, font_paths=[str(asset("fonts"))]),
        sys_inputs={"dossier": texts},
        pdf_standards=["a-2a", "ua-1"],
    )


def seconds(work: Callable[[], object]) -> float:
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def one_round(record: Record, number: int, folder: Path) -> tuple[float, float, int]:
    """Seconds of typst alone and of the dossier, and the pages; both start from nothing.

    Typst remembers what it has set before in the same process, so titles and folders differ from
    round to round and side to side, and the sides take turns at going first.
    """
    ready, fresh, out = folder / "ready", folder / "fresh", folder / "dossier.pdf"
    ready.mkdir()
    texts = ready_pages(composed(record, f"Round {number}, made ready"), ready)
    shutil.copytree(ready, fresh)
    texts = texts.replace(", made ready", ", typst alone")

    def dossier() -> None:
        write_pdf(composed(record, f"Round {number}, the dossier"), picture, out)

    sides: list[Callable[[], object]] = [partial(typst_alone, fresh, texts), dossier]
    first = number % 2
    spent = {side: seconds(sides[side]) for side in (first, 1 - first)}
    return spent[0], spent[1], len(pypdfium2.PdfDocument(out.read_bytes()))


def main() -> int:
    record = showcase.showcase(areas=25, photos_each=4)
    rounds = []
    for number in range(ROUNDS):
        with tempfile.TemporaryDirectory() as folder:
            rounds.append(one_round(record, number, Path(folder)))
    alone, whole = (median(row[side] for row in rounds) for side in (0, 1))
    ratio = whole / alone
    lines = (
        f"{len(record.photos)} photos, {rounds[0][2]} pages, {os.cpu_count()} cores",
        f"typst alone  {alone * 1000:7.0f} ms",
        f"the dossier  {whole * 1000:7.0f} ms",
        f"ratio        {ratio:7.2f}  (goal: under 1.5)",
    )
    sys.stdout.write("\n".join(lines) + "\n")
    return 0 if ratio < 1.5 else 1


if __name__ == "__main__":
    sys.exit(main())
