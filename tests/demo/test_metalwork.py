"""The Rook's metalwork lies where the drawing has its panels, and keeps to the story's days."""

import pytest

from journal.demo.metalwork import anchors_of, measures_of, patch_of, seams_of
from journal.demo.scenario import SCENARIO
from journal.domain.anchors import AnchorKind, check_anchor, near_seam
from journal.domain.diagonals import pair_diagonals
from journal.domain.ids import AreaId
from journal.domain.patches import check_patch
from journal.domain.readings import MeasureKind, Moment, check_measure
from journal.domain.seams import SeamState, check_seam, length
from journal.domain.shapes import bounds
from journal.domain.starters import starter
from journal.domain.when import parse_edtf

DRAWING = starter(SCENARIO.car.body, SCENARIO.car.wheelbase_mm, SCENARIO.car.length_mm)
LET_IN = [area for area in SCENARIO.areas if "new metal in" in {s.stage for s in area.stages}]


def test_most_areas_have_new_metal() -> None:
    assert len(LET_IN) >= 20
    assert all(patch_of(a, AreaId(1), DRAWING) is None for a in SCENARIO.areas if a not in LET_IN)


@pytest.mark.parametrize("area", LET_IN, ids=lambda area: area.key)
def test_a_patch_lies_on_its_panel_with_sound_seams(area) -> None:
    patch = patch_of(area, AreaId(1), DRAWING)
    check_patch(patch)
    panel = next(p for p in DRAWING.panels if p.label == area.panels[0])
    shape = next(
        s.shape for s in DRAWING.shapes if (s.panel_id, s.view_id) == (panel.id, patch.view_id)
    )
    outer, inner = bounds(shape), bounds(patch.shape)
    assert outer.left <= inner.left < inner.right <= outer.right
    assert outer.top <= inner.top < inner.bottom <= outer.bottom
    days = {stage.stage: parse_edtf(stage.when) for stage in area.stages}
    for row in seams_of(area, patch):
        check_seam(row.seam)
        assert length(row.seam) > 40
        states = {state: when for state, when, share in row.days if share == 1}
        assert states[SeamState.WELDED] == days["welded"]
        assert (SeamState.DRESSED in states) <= ("dressed" in days)


def test_load_bearing_seams_are_near_an_anchor_point() -> None:
    anchors = anchors_of(DRAWING)
    for anchor in anchors:
        check_anchor(anchor)
    assert {a.kind for a in anchors} >= {AnchorKind.SEAT_BELT, AnchorKind.SUSPENSION}
    jacking = next(area for area in LET_IN if area.key == "jack-front-left")
    patch = patch_of(jacking, AreaId(1), DRAWING)
    assert all(near_seam(anchors, row.seam) for row in seams_of(jacking, patch))


def test_the_door_aperture_kept_its_shape() -> None:
    measures = dict(measures_of(DRAWING))
    for measure, rounds in measures.items():
        check_measure(measure)
        assert all(len(taken.values) == measure.places for taken in rounds)
        assert {taken.moment for taken in rounds} >= {Moment.BEFORE, Moment.AFTER}
    assert len(pair_diagonals(measures)) == 1
    for measure, rounds in measures.items():
        if measure.kind is MeasureKind.DIAGONAL:
            assert abs(rounds[-1].values[0] - rounds[0].values[0]) <= 1
