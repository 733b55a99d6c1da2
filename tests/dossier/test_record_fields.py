"""The table in the help says truly where each field of AIC Commentaries 24 and 27 stands.

The fields are those of the American Institute for Conservation's Guidelines for Practice, as
published at conservation-us.org.
"""

import re
from dataclasses import replace
from datetime import date
from pathlib import Path

from journal.domain.cuts import Cut, usual
from journal.domain.ids import AreaId
from journal.domain.outcomes import AreaOutcome, Outcome
from journal.dossier.compose import Beside, compose
from journal.dossier.gaps import gaps
from journal.dossier.tables import foreseen
from journal.dossier.typeset import write_pdf
from journal.files.assets import asset
from tests.dossier import showcase
from tests.dossier.records import picture
from tests.dossier.test_metal import welded_record
from tests.dossier.test_typeset import text_of

#: Those that Commentary 24 and 27 ask for, each once.
_LISTED_24, _LISTED_27 = 12, 13


def rows() -> list[list[str]]:
    text = asset("help/record.md").read_text(encoding="utf-8")
    cells = [line.strip("|").split("|") for line in text.splitlines() if line.startswith("|")]
    return [[cell.strip() for cell in row] for row in cells[2:]]


def test_every_field_stands_where_the_table_says(tmp_path: Path) -> None:
    shown = showcase.showcase(3, 4)
    welded = welded_record()
    rec = replace(
        shown,
        seams=welded.seams,
        seam_changes=welded.seam_changes,
        patches=welded.patches,
        measures=welded.measures,
        readings=welded.readings,
    )
    summary, tables = showcase.costs(rec)
    row = AreaOutcome(AreaId(1), "Sill", 100.0, 60.0, 120, 90, finished=True)
    held = Outcome((row,), None, None, None, None, 0, 0.0, 0.0, None)
    beside = Beside(estimate=foreseen(held, "Survey", "EUR", {AreaId(1): 1}, has_money=True))
    made = compose(rec, summary, tables, gaps(rec), date(2026, 11, 25), "1", usual(Cut.OWN), beside)
    write_pdf(made, picture, tmp_path / "a.pdf")
    said = text_of(tmp_path / "a.pdf").casefold()
    for _, _, where in rows():
        places = re.findall(r"\*\*(.+?)\*\*", where)
        assert places or where.startswith(("not kept", "the dossier")), where
        for place in places:
            assert place.casefold() in said, place


def test_the_table_has_every_field_of_both_lists() -> None:
    by = [row[1] for row in rows()]
    assert (by.count("24"), by.count("27")) == (_LISTED_24, _LISTED_27)
