"""Open lines measured, against exact figures and shapely."""

import math

import pytest
import shapely
from hypothesis import assume, given
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.domain.shapes import QUARTER, Curve, Line, Point, Stroke, flatten_edges
from journal.domain.strokes import (
    EXACT,
    is_closed,
    mm_at,
    part_of,
    point_at,
    stroke_length,
)
from tests.strategies import edges, points

SOME = st.integers(-15_000, 15_000).map(lambda tenths: tenths / 10)
shares = st.floats(0, 1)
strokes = st.builds(Stroke, points(SOME), st.lists(edges(SOME), min_size=1, max_size=5).map(tuple))


def polyline(*corners: tuple[float, float]) -> Stroke:
    first, *rest = (Point(x, y) for x, y in corners)
    return Stroke(first, tuple(Line(p) for p in rest))


def raised(start: Point, handle: Point, end: Point) -> Stroke:
    """A quadratic Bezier as the cubic that is the same curve."""

    def towards(a: Point) -> Point:
        return Point(a.x + (handle.x - a.x) * 2 / 3, a.y + (handle.y - a.y) * 2 / 3)

    return Stroke(start, (Curve(towards(start), towards(end), end),))


def quadratic_length(start: Point, handle: Point, end: Point) -> float:
    """The closed form: the integral of sqrt(a t^2 + b t + c), a textbook result."""
    ax, ay = start.x - 2 * handle.x + end.x, start.y - 2 * handle.y + end.y
    bx, by = 2 * (handle.x - start.x), 2 * (handle.y - start.y)
    a, b, c = 4 * (ax * ax + ay * ay), 4 * (ax * bx + ay * by), bx * bx + by * by

    def primitive(t: float) -> float:
        root = math.sqrt(a * t * t + b * t + c)
        slope = 2 * a * t + b
        inside = slope / (2 * math.sqrt(a)) + root
        return slope * root / (4 * a) + (4 * a * c - b * b) / (8 * a**1.5) * math.log(inside)

    return primitive(1) - primitive(0)


def test_a_gentle_quadratic_is_as_long_as_its_closed_form_to_the_thousandth() -> None:
    a, b, c = Point(0, 0), Point(200, 160), Point(420, 40)
    assert stroke_length(raised(a, b, c)) == pytest.approx(quadratic_length(a, b, c), abs=1e-3)


def test_the_nearest_spot_of_a_curve_that_comes_by_twice() -> None:
    hook = Stroke(Point(0.6, 0), (Curve(Point(0, 0), Point(0, -10.2), Point(0, 0.6)),))
    assert mm_at(hook, 0, 0)[1] == pytest.approx(0, abs=0.01)


def test_straight_edges_add_up() -> None:
    assert stroke_length(polyline((0, 0), (30, 40), (30, 100), (30, 100))) == pytest.approx(110)
    assert stroke_length(Stroke(Point(3, 4), ())) == 0


@pytest.mark.parametrize("radius", [20, 300, 340, 1000])
def test_a_quarter_circle_is_as_long_as_its_cubic_can_say(radius: float) -> None:
    # No cubic is a circle: this one is up to 0.02 % off in radius, and its length by less.
    arc = Curve(Point(radius, QUARTER * radius), Point(QUARTER * radius, radius), Point(0, radius))
    exact = math.pi / 2 * radius
    assert stroke_length(Stroke(Point(radius, 0), (arc,))) == pytest.approx(exact, rel=1e-4)


@pytest.mark.parametrize("degrees", [1, 5, 15, 30])
def test_a_short_arc_of_a_circle_is_as_long_as_it_should_be(degrees: float) -> None:
    angle, radius = math.radians(degrees), 500.0
    handle = 4 / 3 * math.tan(angle / 4) * radius
    end = Point(radius * math.cos(angle), radius * math.sin(angle))
    back = Point(end.x + handle * math.sin(angle), end.y - handle * math.cos(angle))
    arc = Stroke(Point(radius, 0), (Curve(Point(radius, handle), back, end),))
    assert stroke_length(arc) == pytest.approx(angle * radius, abs=1e-3)


@given(points(SOME), points(SOME), points(SOME))
def test_a_quadratic_is_as_long_as_its_closed_form(a: Point, b: Point, c: Point) -> None:
    bend = math.hypot(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y)
    off_line = abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x))
    # On one line the closed form takes the logarithm of nothing.
    assume(bend > 1 and off_line > 1000)
    assert stroke_length(raised(a, b, c)) == pytest.approx(quadratic_length(a, b, c), abs=EXACT)


@given(strokes)
def test_lengths_agree_with_shapely_on_the_finely_flattened_line(stroke: Stroke) -> None:
    fine = shapely.LineString(flatten_edges(stroke.start, stroke.edges, 1e-4))
    assert stroke_length(stroke) == pytest.approx(fine.length, rel=1e-4, abs=5 * EXACT)


@given(strokes)
def test_a_line_is_never_shorter_than_its_flattened_one(stroke: Stroke) -> None:
    coarse = shapely.LineString(flatten_edges(stroke.start, stroke.edges, 0.5))
    assert stroke_length(stroke) >= coarse.length - EXACT * len(stroke.edges)


def test_a_curve_that_doubles_back_on_one_line_counts_both_ways() -> None:
    # x = 300 t (1 - t): out to 75 and back.
    there = Stroke(Point(0, 0), (Curve(Point(100, 0), Point(100, 0), Point(0, 0)),))
    assert stroke_length(there) == pytest.approx(150, abs=0.01)


@given(strokes, shares)
def test_the_way_to_a_spot_is_as_long_as_asked(stroke: Stroke, share: float) -> None:
    whole = stroke_length(stroke)
    assume(whole * share > 0.1)
    way = part_of(stroke, 0, whole * share)
    assert stroke_length(way) == pytest.approx(whole * share, abs=10 * EXACT)
    assert math.dist(way.end, point_at(stroke, whole * share)) < 10 * EXACT


@given(strokes, shares, shares)
def test_a_part_is_as_long_as_asked_and_lies_on_the_line(
    stroke: Stroke, one: float, other: float
) -> None:
    whole = stroke_length(stroke)
    start, end = whole * min(one, other), whole * max(one, other)
    assume(end - start > 0.1)
    part = part_of(stroke, start, end)
    assert stroke_length(part) == pytest.approx(end - start, abs=10 * EXACT)
    line = shapely.LineString(flatten_edges(stroke.start, stroke.edges, 0.01))
    for spot in (part.start, part.end, point_at(part, (end - start) / 2)):
        assert line.distance(shapely.Point(spot)) < 0.05


def test_a_part_keeps_curves_true() -> None:
    curve = raised(Point(0, 0), Point(100, 200), Point(200, 0))
    part = part_of(curve, 50, 150)
    assert [type(edge) for edge in part.edges] == [Curve]
    # The curve is y = 2x - x^2 / 100.
    for x, y in (point_at(part, mm) for mm in (0, 25, 50, 75, 100)):
        assert y == pytest.approx(2 * x - x * x / 100, abs=1e-6)


def test_parts_are_cut_at_the_ends_and_corners_are_kept() -> None:
    corner = polyline((0, 0), (100, 0), (100, 100))
    assert part_of(corner, -50, 900) == corner
    assert part_of(corner, 50, 150) == polyline((50, 0), (100, 0), (100, 50))
    assert part_of(corner, 100, 150) == polyline((100, 0), (100, 50))


@pytest.mark.parametrize(("start", "end"), [(50, 50), (60, 40), (100, 200), (math.nan, 50)])
def test_a_part_without_length_is_refused(start: float, end: float) -> None:
    with pytest.raises(JournalError, match="end further along"):
        part_of(polyline((0, 0), (100, 0)), start, end)


def test_a_spot_beyond_the_ends_is_the_end() -> None:
    line = polyline((0, 0), (100, 0))
    assert point_at(line, -5) == (0, 0)
    assert point_at(line, 500) == (100, 0)
    assert point_at(Stroke(Point(7, 8), ()), 5) == (7, 8)


@given(strokes, points(SOME))
def test_the_nearest_spot_is_as_near_as_shapely_finds(stroke: Stroke, spot: Point) -> None:
    assume(stroke_length(stroke) > 0)
    line = shapely.LineString(flatten_edges(stroke.start, stroke.edges, 0.01))
    along, off = mm_at(stroke, *spot)
    assert off == pytest.approx(line.distance(shapely.Point(spot)), abs=0.5)
    assert math.dist(point_at(stroke, along), spot) == pytest.approx(off, abs=10 * EXACT)


def test_the_nearest_spot_of_a_right_angle() -> None:
    corner = polyline((0, 0), (100, 0), (100, 100))
    assert mm_at(corner, 30, -10) == (pytest.approx(30), pytest.approx(10))
    assert mm_at(corner, 110, 40) == (pytest.approx(140), pytest.approx(10))
    assert mm_at(Stroke(Point(0, 0), ()), 3, 4) == (0, 5)


def test_a_line_is_closed_where_it_ends_at_its_start() -> None:
    assert is_closed(polyline((0, 0), (10, 0), (10, 10), (0, 0)))
    assert not is_closed(polyline((0, 0), (10, 0)))
    assert not is_closed(Stroke(Point(0, 0), ()))
