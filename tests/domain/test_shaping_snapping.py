"""Snapping: corners before edges, edges before right angles, then whole lengths; and quick."""

import math
import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.drawing import Drawing, PanelShape
from journal.domain.shapes import Point, circle, polygon, tidy
from journal.domain.shaping.making import blank_sheet
from journal.domain.shaping.snapping import Snapper, Why
from journal.domain.starters import starter
from tests.domain.quilts import VIEW, drawing_of, two_squares


@pytest.fixture
def squares() -> Snapper:
    return Snapper(two_squares(), VIEW)


def test_a_corner_catches_before_an_edge(squares: Snapper) -> None:
    snap = squares.snap(Point(204, 104))
    assert (snap.point, snap.why) == (Point(200, 100), Why.CORNER)
    snap = squares.snap(Point(204, 150))
    assert (snap.point, snap.why) == (Point(200, 150), Why.EDGE)
    snap = squares.snap(Point(250.123, 150.456))
    assert (snap.point, snap.why) == (Point(250.12, 150.46), Why.FREE)


def test_what_is_dragged_does_not_catch_itself(squares: Snapper) -> None:
    snap = squares.snap(Point(203, 102), besides=Point(200, 100))
    assert snap.why is Why.FREE
    # An edge that doesn't meet the corner catches all the same.
    snap = squares.snap(Point(203, 197), besides=Point(200, 100))
    assert (snap.point, snap.why) == (Point(200, 200), Why.CORNER)


def test_a_curve_catches_on_the_curve_itself() -> None:
    snapper = Snapper(drawing_of(tidy(circle(400, 400, 200))), VIEW)
    for degrees in range(5, 360, 10):
        way = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
        snap = snapper.snap(Point(400 + 205 * way[0], 400 + 205 * way[1]))
        if snap.why is Why.EDGE:
            # Four cubics stray from the circle by 0.02 % of its radius.
            assert math.dist(snap.point, (400, 400)) == pytest.approx(200, abs=0.06)
        else:
            assert snap.why is Why.CORNER


def test_right_angles_and_lengths_from_the_start(squares: Snapper) -> None:
    start = Point(500, 500)
    snap = squares.snap(Point(623, 503), start=start, step_mm=5)
    assert (snap.point, snap.why) == (Point(625, 500), Why.RIGHT_ANGLE)
    assert (snap.length, snap.angle) == (125, 0)
    snap = squares.snap(Point(497, 380), start=start, step_mm=50)
    assert (snap.point, snap.why, snap.angle) == (Point(500, 400), Why.RIGHT_ANGLE, 90)
    snap = squares.snap(Point(531, 541), start=start, step_mm=10)
    assert snap.why is Why.LENGTH
    assert snap.length == pytest.approx(50, abs=0.01)
    assert squares.snap(Point(531, 541), start=start).why is Why.FREE


def test_square_to_an_edge_that_arrives_at_the_start() -> None:
    slope = polygon([(300, 300), (400, 340), (300, 500)])
    snapper = Snapper(drawing_of(slope), VIEW)
    # Across the edge that rises by 40 in 100: 4 to the left for each 10 down.
    snap = snapper.snap(Point(441, 242), start=Point(400, 340))
    assert snap.why is Why.RIGHT_ANGLE
    dx, dy = snap.point.x - 400, snap.point.y - 340
    assert dx * 100 + dy * 40 == pytest.approx(0, abs=2)


def test_an_empty_view_catches_by_angle_and_length_alone() -> None:
    snapper = Snapper(blank_sheet([("Top", 1000, 1000)]), VIEW)
    assert snapper.snap(Point(10, 10)).why is Why.FREE
    snap = snapper.snap(Point(103, 11), start=Point(0, 10), step_mm=10)
    assert (snap.point, snap.why) == (Point(100, 10), Why.RIGHT_ANGLE)


spots = st.builds(Point, st.floats(0, 1000), st.floats(0, 800))


@given(spots, st.one_of(st.none(), spots), st.floats(0.5, 30), st.sampled_from([0, 1, 5, 10]))
def test_nothing_is_dragged_farther_than_it_says(
    point: Point, start: Point | None, within: float, step: float
) -> None:
    snap = Snapper(two_squares(), VIEW).snap(point, start=start, within_mm=within, step_mm=step)
    # A start nearer than half a step is pushed out to a whole one.
    farthest = within + (step if start is not None else 0) + 0.02
    assert math.dist(snap.point, point) <= farthest
    if snap.why is Why.LENGTH and start is not None:
        assert snap.length == pytest.approx(round(snap.length / step) * step, abs=0.02)


@pytest.mark.slow
def test_a_spot_snaps_within_a_millisecond_among_four_hundred_panels() -> None:
    base = starter("saloon")
    view = base.views[0]
    some = base.shapes_on(view.id)
    shapes = tuple(
        PanelShape(some[n % len(some)].panel_id, view.id, some[n % len(some)].shape, n)
        for n in range(400)
    )
    snapper = Snapper(Drawing((view,), base.panels, shapes), view.id)
    tried = [Point(x, y) for x in range(0, int(view.width), 90) for y in range(0, 1700, 90)]
    start = time.perf_counter()
    for spot in tried:
        snapper.snap(spot, start=Point(spot.x + 70, spot.y + 31), step_mm=5)
    assert (time.perf_counter() - start) / len(tried) < 1e-3
