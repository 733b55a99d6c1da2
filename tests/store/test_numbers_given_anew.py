"""The database gives the number of a last row that went to the next: nothing may still name it."""

import re
from dataclasses import replace
from datetime import date
from pathlib import Path

from journal.domain.cuts import Cut, usual
from journal.domain.ids import AreaId, PhotoId, SeamChangeId, SeamId, ViewId
from journal.domain.progress import Silent
from journal.domain.seams import Joint, Seam, SeamChange, SeamState
from journal.domain.shapes import Line, Point, Stroke
from journal.domain.when import When
from journal.store import clearing
from journal.store.checking import check
from journal.store.journal import Journal
from journal.store.tables import RECORDED
from tests.store.values import SILL, keep

DAY = When.on(date(2016, 3, 5))
STROKE = Stroke(Point(0, 0), (Line(Point(100, 0)),))


def columns_naming(table: str) -> set[tuple[str, str]]:
    """Every table and column with a reference to a table."""
    found = set()
    for name, definition in RECORDED.items():
        for part in definition.split(","):
            if re.search(rf"REFERENCES {table} \(", part):
                found.add((name, part.split()[0]))
    return found


def test_every_original_that_a_table_names_is_in_use() -> None:
    for table, column in columns_naming("originals"):
        assert re.search(rf"FROM {table} (\w) WHERE \1\.{column} = o\.sha256", clearing.UNUSED)


def test_every_column_that_names_a_photo_is_emptied_before_it_goes() -> None:
    apart = {("photo_spans", "first_photo"), ("photo_spans", "last_photo")}
    assert columns_naming("photos") - apart == set(clearing.ON_PHOTOS)


def test_a_weld_is_not_shown_by_the_photo_added_after_its_own_was_cleared_out(
    journal: Journal,
) -> None:
    one, two = keep(journal, 1, 2)
    with journal.edit("Weld"):
        area = journal.areas.add("Sill", [SILL], "")
        seam = journal.metalwork.add_seam(
            Seam(SeamId(0), area, ViewId(1), STROKE, Joint.PLUGS, None, "")
        )
        photos = (PhotoId(one), PhotoId(two))
        journal.metalwork.add_change(
            SeamChange(SeamChangeId(0), seam, SeamState.WELDED, 0, 100, DAY, "", photos)
        )
    with journal.edit("Remove"):
        journal.photos.set_removed(PhotoId(two), removed=True)
    assert clearing.clear_out(journal, Path.unlink) == 1
    assert keep(journal, 3) == [two]
    assert journal.metalwork.changes()[0].photo_ids == (one,)
    assert check(journal, Silent()).faults == ()


def test_an_area_made_after_one_that_went_is_not_in_a_dossier_chosen_before(
    journal: Journal,
) -> None:
    with journal.edit("Choose"):
        kept, gone = (journal.areas.add(name, [], "") for name in ("Sill", "Wing"))
        journal.cuts.choose(replace(usual(Cut.BUYER), areas=frozenset((kept, gone))))
    with journal.edit("Remove"):
        journal.areas.remove(AreaId(gone))
    with journal.edit("Add"):
        assert journal.areas.add("Roof", [], "") == gone
    assert journal.cuts.choices(Cut.BUYER).areas == {kept}
    journal.undo()
    journal.undo()
    assert journal.cuts.choices(Cut.BUYER).areas == {kept, gone}
