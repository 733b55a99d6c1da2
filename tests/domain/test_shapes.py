"""Shapes: what is written comes back, and measures hold."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.domain.shapes import (
    DECIMALS,
    Contour,
    Curve,
    Line,
    Point,
    Shape,
    bounds,
    circle,
    ellipse,
    flatten,
    from_path_data,
    mirror,
    mirror_down,
    on_curve,
    polygon,
    rectangle,
    rounded,
    tidy,
    to_path_data,
    translate,
    with_hole,
)
from tests.strategies import lengths, shapes, written_shapes


def area(ring: tuple[Point, ...]) -> float:
    following = ring[1:] + ring[:1]
    return abs(sum(a.x * b.y - b.x * a.y for a, b in zip(ring, following, strict=True))) / 2


@given(written_shapes)
def test_a_shape_of_few_decimals_comes_back_from_path_data_unchanged(shape: Shape) -> None:
    assert from_path_data(to_path_data(shape)) == shape


@given(shapes())
def test_any_shape_comes_back_from_path_data_rounded(shape: Shape) -> None:
    assert from_path_data(to_path_data(shape)) == tidy(shape)


@given(shapes())
def test_writing_never_moves_a_point_by_more_than_half_the_last_decimal(shape: Shape) -> None:
    written = from_path_data(to_path_data(shape))
    for before, after in zip(shape.contours, written.contours, strict=True):
        assert abs(before.start.x - after.start.x) <= 0.5000001 * 10**-DECIMALS
        assert abs(before.start.y - after.start.y) <= 0.5000001 * 10**-DECIMALS


@given(st.text(alphabet="MLCZmlczSQAHVT0123456789.,-+eE \n#", max_size=40))
def test_any_text_is_read_or_refused_in_words(text: str) -> None:
    try:
        shape = from_path_data(text)
    except JournalError as error:
        said = str(error)
        shape = None
    assert said.endswith(".") if shape is None else shape.contours


def test_path_data_of_the_svg_standard_is_read() -> None:
    # SVG 1.1 (Second Edition), W3C, section 8.3: triangle01 and cubic02, as far as M, L, C, z.
    triangle = from_path_data("M 100 100 L 300 100 L 200 300 z")
    assert triangle == polygon([(100, 100), (300, 100), (200, 300)])
    curve = from_path_data("M100,200 C100,100 400,100 400,200")
    edge = Curve(Point(100, 100), Point(400, 100), Point(400, 200))
    assert curve == Shape((Contour(Point(100, 200), (edge,)),))


def test_spaces_may_be_left_out_and_commands_repeated_as_the_svg_standard_allows() -> None:
    # SVG 1.1, 8.3.1 and 8.3.2: further pairs after a moveto are lines; a sign or a second dot
    # begins a new number.
    assert from_path_data("M 100-200 10,20 .5.5Z") == polygon([(100, -200), (10, 20), (0.5, 0.5)])
    assert from_path_data("M0 0L1e2 0 1E2,10Z") == polygon([(0, 0), (100, 0), (100, 10)])


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("", "no outline"),
        ("M 1 2", "without an edge"),
        ("M 1 2 L 3", "too few numbers"),
        ("M 1 2 C 3 4 5 6 7 L 1 1", "too few numbers"),
        ("L 1 2", "before any M"),
        ("1 2 3", "command should stand"),
        ("M 0 0 L 1 1 Z 5 5", "command should stand"),
        ("M 0 0 l 1 1 Z", "command l"),
        ("M 0 0 A 25 25 0 0 1 50 50 Z", "command A"),
        ("M 0 0 L 1e999 1 Z", "too large"),
        ("M 0 0 L 1 1 # 2", "character 13"),
        ("M 0 0 L nan 1 Z", "too few numbers"),
    ],
)
def test_malformed_path_data_is_refused_by_name(text: str, named: str) -> None:
    with pytest.raises(JournalError, match=named):
        from_path_data(text)


@given(st.floats(0.5, 5000), lengths, lengths)
def test_a_circle_of_four_cubics_has_the_area_of_a_circle(r: float, x: float, y: float) -> None:
    (ring,) = flatten(circle(x, y, r), tolerance=r * 1e-5)
    assert area(ring) == pytest.approx(math.pi * r * r, rel=1e-3)


@given(st.floats(1, 3000), st.floats(0.05, 5))
def test_flattening_keeps_within_its_tolerance(radius: float, tolerance: float) -> None:
    shape = circle(0, 0, radius)
    (ring,) = flatten(shape, tolerance)
    for a, b in zip(ring, ring[1:] + ring[:1], strict=True):
        middle = math.hypot((a.x + b.x) / 2, (a.y + b.y) / 2)
        assert radius * 0.9995 - tolerance <= middle <= radius * 1.0005


def test_flattening_leaves_straight_edges_alone() -> None:
    assert flatten(rectangle(1, 2, 3, 4)) == (((1, 2), (4, 2), (4, 6), (1, 6)),)


@given(shapes())
def test_bounds_hold_all_of_the_curve_and_touch_it(shape: Shape) -> None:
    box = bounds(shape)
    spots = [p for ring in flatten(shape, 0.01) for p in ring]
    slack, rounding = 0.011, 1e-9
    assert -rounding <= min(p.x for p in spots) - box.left <= slack
    assert -rounding <= box.right - max(p.x for p in spots) <= slack
    assert -rounding <= min(p.y for p in spots) - box.top <= slack
    assert -rounding <= box.bottom - max(p.y for p in spots) <= slack


def test_bounds_of_a_circle_are_its_radius_away() -> None:
    assert bounds(ellipse(10, 20, 5, 3)) == pytest.approx((5, 17, 15, 23))


@given(written_shapes, st.integers(-5000, 5000))
def test_two_mirrorings_cancel(shape: Shape, axis: int) -> None:
    assert tidy(mirror(mirror(shape, axis), axis)) == shape
    assert tidy(mirror_down(mirror_down(shape, axis), axis)) == shape


def test_mirroring_and_moving_by_hand() -> None:
    box = rectangle(0, 0, 10, 5)
    assert bounds(mirror(box, 20)) == (30, 0, 40, 5)
    assert bounds(mirror_down(box, 20)) == (0, 35, 10, 40)
    assert bounds(translate(box, 3, -2)) == (3, -2, 13, 3)


def test_rounded_corners_stay_inside_and_touch_the_sides() -> None:
    shape = rounded([(0, 0), (100, 0), (100, 60), (0, 60)], 20)
    assert bounds(shape) == pytest.approx((0, 0, 100, 60))
    (ring,) = flatten(shape, 0.01)
    # Four quarter circles of radius 20 in place of four squares.
    assert area(ring) == pytest.approx(6000 - (4 - math.pi) * 400, rel=1e-3)


def test_rounding_a_short_edge_takes_no_more_than_half_of_it() -> None:
    box = bounds(rounded([(0, 0), (10, 0), (10, 100), (0, 100)], 50))
    assert box == pytest.approx((0, 0, 10, 100))


def test_a_hole_is_one_more_outline() -> None:
    ring = with_hole(circle(0, 0, 10), circle(0, 0, 5))
    assert len(ring.contours) == 2
    assert bounds(ring) == pytest.approx((-10, -10, 10, 10))


def test_too_few_corners_are_refused() -> None:
    for make in (polygon, lambda corners: rounded(corners, 1)):
        with pytest.raises(JournalError, match="at least three corners"):
            make([(0, 0), (1, 1)])


def test_an_empty_shape_has_no_bounds() -> None:
    with pytest.raises(JournalError, match="empty"):
        bounds(Shape(()))


def test_a_spot_on_a_curve_starts_and_ends_with_it() -> None:
    curve = Curve(Point(0, 10), Point(10, 10), Point(10, 0))
    assert on_curve(Point(0, 0), curve, 0) == (0, 0)
    assert on_curve(Point(0, 0), curve, 1) == (10, 0)
    assert on_curve(Point(0, 0), curve, 0.5) == (5, 7.5)


def test_an_outline_that_returns_to_its_start_gives_that_corner_once() -> None:
    shape = Shape(
        (Contour(Point(0, 0), (Line(Point(5, 0)), Line(Point(5, 5)), Line(Point(0, 0)))),)
    )
    assert flatten(shape) == (((0, 0), (5, 0), (5, 5)),)
