"""Seams, patches, anchor points, measures, underlays and a reshaped drawing come back."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from journal.domain.anchors import AnchorKind, AnchorPoint
from journal.domain.drawing import Drawing, Panel, PanelShape, Side, System
from journal.domain.errors import JournalError
from journal.domain.ids import (
    AnchorId,
    AreaId,
    MeasureId,
    PanelId,
    PatchId,
    PhotoId,
    ReadingId,
    SeamChangeId,
    SeamId,
    ViewId,
)
from journal.domain.patches import Patch
from journal.domain.readings import Measure, MeasureKind, Moment, Reading
from journal.domain.seams import Joint, Seam, SeamChange, SeamState
from journal.domain.shapes import Curve, Line, Point, Stroke, polygon
from journal.domain.underlays import Underlay
from journal.domain.when import When
from journal.store.journal import Journal
from tests.store.values import DAY, DRAWING, ROOF, SILL, WING, keep, new_photo

LEFT, TOP = ViewId(1), ViewId(2)
STROKE = Stroke(
    Point(1000, 1300),
    (Line(Point(1400.25, 1300)), Curve(Point(1500, 1310), Point(1600, 1320), Point(1700, 1300))),
)


@pytest.fixture
def area(journal: Journal) -> AreaId:
    with journal.edit("Area"):
        return journal.areas.add("Sill, left", [SILL], "holes")


def test_seams_with_their_states(journal: Journal, area: AreaId) -> None:
    store = journal.metalwork
    with journal.edit("Seam"):
        made = store.add_seam(Seam(SeamId(0), area, LEFT, STROKE, Joint.PLUGS, 40.0, "outer"))
        later = SeamChange(SeamChangeId(0), made, SeamState.WELDED, 0, 400, DAY, "", (PhotoId(3),))
        earlier = When.on(date(2016, 1, 1))
        store.add_change(later)
        store.add_change(replace(later, state=SeamState.TACKED, when=earlier, end_mm=700.5))
    (seam,) = store.seams()
    assert seam == Seam(made, area, LEFT, STROKE, Joint.PLUGS, 40.0, "outer")
    assert [c.state for c in store.changes()] == [SeamState.TACKED, SeamState.WELDED]
    assert store.changes()[1].photo_ids == (3,)
    assert store.changes()[0].end_mm == 700.5
    with journal.edit("Change"):
        store.change_seam(replace(seam, joint=Joint.BUTT, spacing_mm=None))
    assert store.seam(made).spacing_mm is None
    with journal.edit("Remove"):
        store.remove_seam(made)
    assert store.seams() == store.changes() == ()
    with pytest.raises(JournalError, match="no seam number"):
        store.seam(made)


def test_patches_and_anchor_points(journal: Journal, area: AreaId) -> None:
    store = journal.metalwork
    shape = polygon([(1000, 1300), (1200, 1300), (1200, 1400)])
    with journal.edit("Metal"):
        patch = store.add_patch(Patch(PatchId(0), area, LEFT, shape, 1.2, "mild", "", DAY))
        bare = store.add_patch(Patch(PatchId(0), area, TOP, shape, 0.9))
        anchor = AnchorPoint(AnchorId(0), LEFT, 1500, 900, AnchorKind.SEAT_BELT, "B-post, lower")
        point = store.add_anchor(anchor)
    assert store.patches()[0] == Patch(patch, area, LEFT, shape, 1.2, "mild", "", DAY)
    assert store.patches()[1].when is None
    assert store.anchors() == (replace(anchor, id=point),)
    with journal.edit("Change"):
        store.change_patch(replace(store.patches()[0], thickness_mm=1.0))
        store.change_anchor(replace(store.anchors()[0], radius_mm=250))
        store.remove_patch(bare)
    assert [p.thickness_mm for p in store.patches()] == [1.0]
    assert store.anchors()[0].radius_mm == 250
    with journal.edit("Remove"):
        store.remove_anchor(point)
    assert store.anchors() == ()


def test_an_area_goes_with_its_welds_and_comes_back_with_them(
    journal: Journal, area: AreaId
) -> None:
    store = journal.metalwork
    with journal.edit("Metal"):
        seam = store.add_seam(Seam(SeamId(0), area, LEFT, STROKE, Joint.LAP))
        store.add_change(SeamChange(SeamChangeId(0), seam, SeamState.WELDED, 0, 100, DAY))
        shape = polygon([(1000, 1300), (1200, 1300), (1200, 1400)])
        store.add_patch(Patch(PatchId(0), area, LEFT, shape, 1.2))
        points = (Point(1, 2), Point(3, 4))
        journal.readings.add_measure(
            Measure(MeasureId(0), "Door", MeasureKind.DIAGONAL, LEFT, points, "mm", area_id=area)
        )
    with journal.edit("Remove"):
        journal.areas.remove(area)
    assert store.seams() == store.patches() == ()
    assert journal.readings.measures()[0].area_id is None
    journal.undo()
    assert len(store.seams()) == len(store.changes()) == len(store.patches()) == 1
    assert journal.readings.measures()[0].area_id == area


def test_measures_with_their_readings(journal: Journal) -> None:
    store = journal.readings
    measure = Measure(
        MeasureId(0), "Door gap", MeasureKind.GAP, LEFT, (Point(1, 2.5), Point(3, 4), Point(5, 6)),
        "mm", Decimal("4.0"), Decimal("0.5"), None, WING,
    )  # fmt: skip
    with journal.edit("Measure"):
        made = store.add_measure(measure)
        for point in range(3):
            store.add(
                Reading(ReadingId(0), made, point, Decimal("4.2"), DAY, Moment.BEFORE, "feeler")
            )
    assert store.measure(made) == replace(measure, id=made)
    assert [r.point for r in store.all()] == [0, 1, 2]
    assert store.all()[0].value == Decimal("4.2")
    with journal.edit("Change"):
        store.change(replace(store.all()[0], value=Decimal("3.9")))
        store.remove(store.all()[1].id)
        store.change_measure(replace(store.measure(made), tolerance=None))
    assert len(store.all()) == 2
    with journal.edit("Remove"):
        store.remove_measure(made)
    assert store.measures() == store.all() == ()


def test_one_picture_lies_under_a_view(journal: Journal) -> None:
    keep(journal, 1, 2)
    one, two = (new_photo(n).sha256 for n in (1, 2))
    with journal.edit("Underlay"):
        journal.underlays.put(Underlay(LEFT, one))
        journal.underlays.put(Underlay(LEFT, two, (2.0,) + (0.5,) * 8, 0.25, shown=False))
    assert journal.underlays.all() == (Underlay(LEFT, two, (2.0,) + (0.5,) * 8, 0.25, shown=False),)
    with journal.edit("Take"):
        journal.underlays.take(LEFT)
    assert journal.underlays.all() == ()


def test_a_reshaped_drawing_writes_only_what_differs(journal: Journal) -> None:
    square = polygon([(0, 0), (100, 0), (100, 100)])
    new = Panel(PanelId(4), "Repair section", Side.LEFT, System.STRUCTURE)
    shapes = (*DRAWING.shapes[:1], PanelShape(new.id, LEFT, square, 7))
    panels = (DRAWING.panels[0], replace(DRAWING.panels[1], name="Wing"), DRAWING.panels[2], new)
    after = Drawing(DRAWING.views, panels, shapes)
    with journal.edit("Reshape") as edit:
        journal.drawing.redraw(after)
    found = journal.drawing.get()
    assert found.panels == after.panels
    assert set(found.shapes) == set(after.shapes)
    (rows,) = journal.db.execute(
        "SELECT count(*) FROM changes WHERE edit_id = ?", (edit.id,)
    ).fetchone()
    assert rows == 4  # one name, one panel, one outline in, one outline out
    journal.undo()
    assert journal.drawing.get() == DRAWING


def test_two_panels_can_change_names(journal: Journal) -> None:
    sill, wing, roof = DRAWING.panels
    swapped = (replace(sill, name=wing.name), replace(wing, name=sill.name), roof)
    with journal.edit("Swap"):
        journal.drawing.redraw(replace(DRAWING, panels=swapped))
    assert journal.drawing.panels() == swapped


def test_what_hangs_on_a_panel_moves_over_without_doubling(journal: Journal, area: AreaId) -> None:
    one, two = keep(journal, 1, 2)
    with journal.edit("Hang"):
        for photo in (one, two):
            journal.pins.put(PhotoId(photo), SILL, None, None, None)
        journal.pins.put(PhotoId(one), ROOF, None, None, None)
    assert journal.drawing.hanging(SILL) == {"photo": 2, "repair area": 1}
    with journal.edit("Over"):
        journal.drawing.hang_over(SILL, ROOF)
    assert journal.drawing.hanging(SILL) == {}
    assert sorted(pin.photo_id for pin in journal.pins.all()) == [one, two]
    assert journal.areas.get(area).panel_ids == (ROOF,)
