"""Anchor points: how far things lie from them, and what is said of what lies near."""

import math
import re
from dataclasses import replace

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from journal.domain import cautions
from journal.domain.anchors import (
    RADIUS_MM,
    AnchorKind,
    AnchorPoint,
    Near,
    check_anchor,
    distance,
    marks,
    near,
    near_patch,
    near_pin,
    near_seam,
)
from journal.domain.errors import JournalError
from journal.domain.hits import to_polygon
from journal.domain.ids import AnchorId, AreaId, PanelId, PatchId, PhotoId, PinId, SeamId, ViewId
from journal.domain.patches import Patch
from journal.domain.photos import Pin
from journal.domain.seams import Joint, Seam
from journal.domain.shapes import Curve, Line, Point, Shape, Stroke, circle, polygon, rectangle

SIDE, TOP = ViewId(1), ViewId(2)


def anchor(
    x: float = 0,
    y: float = 0,
    number: int = 1,
    view: ViewId = SIDE,
    kind: AnchorKind = AnchorKind.SEAT_BELT,
) -> AnchorPoint:
    return AnchorPoint(AnchorId(number), view, x, y, kind, "Lower belt mounting")


def line(*corners: tuple[float, float]) -> Stroke:
    first, *rest = (Point(x, y) for x, y in corners)
    return Stroke(first, tuple(Line(p) for p in rest))


def seam(stroke: Stroke, view: ViewId = SIDE) -> Seam:
    return Seam(SeamId(1), AreaId(1), view, stroke, Joint.BUTT)


def patch(shape: Shape, view: ViewId = SIDE) -> Patch:
    return Patch(PatchId(1), AreaId(1), view, shape, 1.0)


def pin(x: float | None, y: float | None, view: ViewId | None = SIDE) -> Pin:
    return Pin(PinId(1), PhotoId(1), PanelId(1), view, x, y)


def test_a_belt_mounting_on_an_inner_sill_brings_in_what_the_manual_says() -> None:
    # DVSA, MOT inspection manual, Appendix A, section 2: within 30 cm of the mounting; its example
    # is a belt mounting on an inner sill, which brings in the outer sill, the pillar and the floor.
    mounting = anchor(1500, 900)
    panels = {
        "inner sill": rectangle(600, 860, 1600, 80),
        "outer sill": rectangle(600, 940, 1600, 120),
        "pillar": rectangle(1640, 300, 120, 560),
        "floor": rectangle(600, 1100, 1600, 60),
        "roof": rectangle(500, 100, 1900, 80),
        "door skin": polygon([(650, 400), (1150, 400), (1150, 850), (650, 850)]),
    }
    within = {name for name, shape in panels.items() if near([mounting], SIDE, shape)}
    assert within == {"inner sill", "outer sill", "pillar", "floor"}


def test_the_radius_is_30_cm_to_begin_with() -> None:
    assert RADIUS_MM == 300
    assert anchor().radius_mm == 300


@pytest.mark.parametrize(
    ("place", "expected"),
    [
        (Point(30, 40), 50),
        (line((100, -500), (100, 500)), 100),
        (line((60, 80), (300, 400)), 100),
        (Stroke(Point(3, 4), ()), 5),
        (rectangle(-10, -10, 20, 20), 0),
        (rectangle(50, -10, 20, 20), 50),
        (circle(400, 0, 100), 300),
        (seam(line((-500, 7), (500, 7))), 7),
        (patch(rectangle(0, 30, 10, 10)), 30),
    ],
)
def test_distances_along_the_drawing(
    place: Point | Stroke | Shape | Seam | Patch, expected: float
) -> None:
    assert distance(anchor(), place) == pytest.approx(expected, abs=0.01)


def test_the_distance_to_a_curve_is_that_of_the_curve() -> None:
    # The lowest spot of this bow is at three quarters of its handles' height.
    bow = Stroke(Point(-100, 0), (Curve(Point(-50, 200), Point(50, 200), Point(100, 0)),))
    assert distance(anchor(0, 400), bow) == pytest.approx(250, abs=0.5)


numbers = st.integers(-1000, 1000)
spots = st.tuples(numbers, numbers)


@given(spots, st.lists(spots, min_size=2, max_size=6, unique=True))
def test_distances_agree_with_shapely(at: tuple[int, int], corners: list[tuple[int, int]]) -> None:
    truth = shapely.LineString(corners).distance(shapely.Point(at))
    assert distance(anchor(*at), line(*corners)) == pytest.approx(truth)


@given(spots, st.lists(spots, min_size=3, max_size=6, unique=True))
def test_what_is_near_agrees_with_a_disc_drawn_round_the_anchor(
    at: tuple[int, int], corners: list[tuple[int, int]]
) -> None:
    shape = polygon(corners)
    found = near([anchor(*at)], SIDE, shape)
    # The disc of 256 sides to a quarter differs from a true one by less than a hundredth.
    disc = shapely.Point(at).buffer(RADIUS_MM, quad_segs=256)
    wide = shapely.Point(at).buffer(RADIUS_MM + 0.1)
    area = to_polygon(shape)
    if area.is_empty:
        return
    if disc.intersects(area):
        assert found
    elif not wide.intersects(area):
        assert not found


def test_a_place_on_the_radius_counts_and_one_beyond_it_does_not() -> None:
    assert near([anchor()], SIDE, Point(300, 0)) == (Near(anchor(), 300),)
    assert near([anchor()], SIDE, Point(300.1, 0)) == ()
    wide = replace(anchor(), radius_mm=400)
    assert near([wide], SIDE, Point(300.1, 0))


def test_the_nearest_anchor_point_comes_first() -> None:
    anchors = [anchor(200, 0, 1), anchor(50, 0, 2), anchor(-50, 0, 3), anchor(900, 0, 4)]
    found = near(anchors, SIDE, rectangle(-10, -10, 20, 20))
    assert [(one.anchor.id, one.distance_mm) for one in found] == [(2, 40), (3, 40), (1, 190)]


def test_other_views_are_not_near() -> None:
    assert near([anchor(view=TOP)], SIDE, Point(0, 0)) == ()
    assert near_seam([anchor(view=TOP)], seam(line((0, 0), (9, 9)))) == ()
    assert near([anchor()], SIDE, seam(line((0, 0), (9, 9)), TOP)) == ()
    assert near([anchor()], None, Point(0, 0)) == ()


def test_seams_patches_and_pins_by_their_own_view() -> None:
    assert near_seam([anchor()], seam(line((-500, 250), (500, 250))))[0].distance_mm == 250
    assert near_patch([anchor()], patch(rectangle(-50, -50, 100, 100)))[0].distance_mm == 0
    assert near_pin([anchor()], pin(0, 120))[0].distance_mm == 120
    assert near_pin([anchor()], pin(0, 301)) == ()


def test_a_pin_without_a_spot_is_near_nothing() -> None:
    assert near_pin([anchor()], pin(None, None, None)) == ()
    assert near_pin([anchor()], pin(0, 0, None)) == ()


def test_a_mark_says_who_should_look_and_names_its_source() -> None:
    (mark,) = marks(near([anchor()], SIDE, Point(0, 212.4)))
    assert mark.title == "Load-bearing: have it inspected"
    assert mark.text.startswith("212 mm from the seat belt anchor point “Lower belt mounting”.")
    assert "competent" in mark.text
    assert "local rules" in mark.text
    assert "Appendix A, section 2" in mark.source
    assert "30 cm" in mark.source


def test_a_mark_on_the_very_spot_says_so() -> None:
    (mark,) = marks(near([anchor()], SIDE, Point(0, 0)))
    assert mark.text.startswith("On the seat belt anchor point")


@pytest.mark.parametrize("kind", AnchorKind)
def test_every_kind_carries_a_caution_and_no_verdict(kind: AnchorKind) -> None:
    (mark,) = marks(near([anchor(kind=kind)], SIDE, Point(9, 9)))
    assert cautions.caution(mark.caution).text
    assert mark.caution == ("belt anchorages" if kind is AnchorKind.SEAT_BELT else "load-bearing")
    assert not re.search(r"\b(pass|passe[sd]|fail\w*|safe\w*|ok)\b", mark.text, re.IGNORECASE)


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        (replace(anchor(), name="  "), "needs a name"),
        (replace(anchor(), x=math.nan), "has no place on the drawing"),
        (replace(anchor(), radius_mm=0), "must be more than nothing"),
        (replace(anchor(), radius_mm=-1), "must be more than nothing"),
        (replace(anchor(), radius_mm=math.inf), "no more than 1000 mm"),
        (replace(anchor(), radius_mm=math.nan), "must be more than nothing"),
    ],
)
def test_an_anchor_point_that_cannot_be_is_refused(wrong: AnchorPoint, said: str) -> None:
    with pytest.raises(JournalError, match=said):
        check_anchor(wrong)


def test_an_ordinary_anchor_point_is_taken() -> None:
    check_anchor(anchor())
