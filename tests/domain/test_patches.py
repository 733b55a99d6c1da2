"""Patches: area, mass, gauges, and outlines that are refused."""

import math
from datetime import date

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, PatchId, ViewId
from journal.domain.patches import (
    Patch,
    PatchSums,
    check_patch,
    patch_area,
    patch_mass,
    patch_sums,
    patch_sums_by,
)
from journal.domain.shapes import (
    Contour,
    Line,
    Point,
    Shape,
    circle,
    polygon,
    rectangle,
    rounded,
    with_hole,
)
from journal.domain.sheet import GAUGES, gauge, nearest_gauge, steel_mass
from journal.domain.when import When


def patch(shape: Shape, thickness: float = 1.0, area: int = 1, when: When | None = None) -> Patch:
    return Patch(PatchId(1), AreaId(area), ViewId(1), shape, thickness, "mild steel", "", when)


SQUARE = rectangle(0, 0, 1000, 1000)


def test_a_square_metre_of_one_millimetre_weighs_7_85_kilograms() -> None:
    # 7,850 kg/m³, the density of steel that trade tables use.
    assert patch_area(patch(SQUARE)) == pytest.approx(10_000)
    assert patch_mass(patch(SQUARE)) == pytest.approx(7850)
    assert patch_mass(patch(SQUARE, 0.8)) == pytest.approx(6280)
    assert steel_mass(100 * 200, 1.2) == pytest.approx(188.4)


@pytest.mark.parametrize("sides", [3, 4, 6, 12])
def test_the_area_of_a_regular_polygon(sides: int) -> None:
    radius = 120.0
    corners = [
        (radius * math.cos(2 * math.pi * n / sides), radius * math.sin(2 * math.pi * n / sides))
        for n in range(sides)
    ]
    exact = sides / 2 * radius**2 * math.sin(2 * math.pi / sides) / 100
    assert patch_area(patch(polygon(corners))) == pytest.approx(exact)


@pytest.mark.parametrize("radius", [25, 100, 400])
def test_the_area_of_a_circle_is_right_within_what_half_a_millimetre_leaves(radius: float) -> None:
    exact = math.pi * radius**2 / 100
    # Flattened to 0.5 mm, the outline lies at most that far inside the circle.
    least = math.pi * (radius - 0.6) ** 2 / 100
    assert least < patch_area(patch(circle(0, 0, radius))) <= exact * 1.001


def test_a_hole_weighs_nothing() -> None:
    ring = with_hole(SQUARE, rectangle(400, 400, 200, 200))
    check_patch(patch(ring))
    assert patch_area(patch(ring)) == pytest.approx(9600)


spots = st.tuples(st.integers(0, 400), st.integers(0, 400))


@given(st.lists(spots, min_size=3, max_size=8, unique=True))
def test_what_is_taken_and_how_large_it_is_agrees_with_shapely(
    corners: list[tuple[int, int]],
) -> None:
    truth = shapely.Polygon(corners)
    drawn = patch(polygon(corners))
    if truth.is_valid and truth.area >= 1:
        check_patch(drawn)
        assert patch_area(drawn) == pytest.approx(truth.area / 100)
        assert patch_mass(drawn) == pytest.approx(truth.area * 7.85e-3)
    else:
        with pytest.raises(JournalError, match=r"crosses itself|no area"):
            check_patch(drawn)


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        (polygon([(0, 0), (90, 100), (100, 0), (0, 100)]), "outline that crosses itself"),
        (polygon([(0, 0), (100, 0), (200, 0)]), "The patch has no area"),
        (polygon([(5, 5), (5, 5), (5, 5)]), "The patch has no area"),
        (rectangle(0, 0, 0.5, 0.5), "no area"),
        (Shape(()), "no area"),
        (Shape((Contour(Point(0, 0), (Line(Point(50, 50)),)),)), "no area"),
        (polygon([(0, 0), (math.nan, 0), (9, 9)]), "no place on the drawing"),
        (with_hole(SQUARE, rectangle(900, 900, 300, 300)), "outlines that cross each other"),
    ],
)
def test_an_outline_that_cannot_be_cut_is_refused(wrong: Shape, said: str) -> None:
    with pytest.raises(JournalError, match=said):
        check_patch(patch(wrong))


def test_a_corner_given_twice_is_no_fault() -> None:
    check_patch(patch(polygon([(0, 0), (0, 0), (100, 0), (100, 100), (100, 100)])))


def test_rounded_corners_are_no_fault() -> None:
    check_patch(patch(rounded([(0, 0), (200, 0), (200, 80), (0, 80)], 20)))


@pytest.mark.parametrize("thickness", [0, -1, 0.05, 40, math.nan, math.inf])
def test_a_thickness_beyond_reason_is_refused(thickness: float) -> None:
    with pytest.raises(JournalError, match="can't be meant"):
        check_patch(patch(SQUARE, thickness))


def test_sums_of_new_metal_by_area_and_date() -> None:
    early, late = When.on(date(2016, 3, 5)), When.on(date(2017, 8, 1))
    patches = (
        patch(SQUARE, 1.0, 1, early),
        patch(rectangle(0, 0, 100, 200), 1.2, 2, late),
        patch(rectangle(0, 0, 100, 100), 1.0, 2),
    )
    assert patch_sums(patches) == PatchSums(3, pytest.approx(10_300), pytest.approx(8116.9))
    by_area = patch_sums_by(patches, lambda p: p.area_id)
    assert by_area[AreaId(2)] == PatchSums(2, pytest.approx(300), pytest.approx(266.9))
    assert patch_sums(patches, early) == PatchSums(1, pytest.approx(10_000), pytest.approx(7850))
    assert list(patch_sums_by(patches, lambda p: p.area_id, early)) == [1]


# Gauges


@pytest.mark.parametrize(("number", "mm"), [(16, 1.52), (18, 1.21), (20, 0.91), (22, 0.76)])
def test_gauges_both_ways(number: int, mm: float) -> None:
    assert gauge(number).thickness_mm == mm
    found = nearest_gauge(mm)
    assert found is not None
    assert found.number == number


@pytest.mark.parametrize(("number", "inches"), [(18, 0.0478), (20, 0.0359)])
def test_gauges_against_the_inches_that_gauge_charts_print(number: int, inches: float) -> None:
    assert gauge(number).thickness_mm == pytest.approx(inches * 25.4, abs=0.005)


@pytest.mark.parametrize(("number", "pounds"), [(16, 2.5), (18, 2.0), (20, 1.5), (22, 1.25)])
def test_gauges_follow_from_the_weight_they_are_defined_by(number: int, pounds: float) -> None:
    # 41.82 lb per square foot for an inch, from gauge charts; the pounds are from memory.
    assert gauge(number).thickness_mm == pytest.approx(pounds / 41.82 * 25.4, abs=0.006)


@pytest.mark.parametrize(
    ("mm", "number"), [(1.2, 18), (0.9, 20), (1.5, 16), (0.8, 22), (1.0, None), (3.0, None)]
)
def test_metric_sheet_goes_by_a_gauge_only_where_one_is_near(mm: float, number: int | None) -> None:
    found = nearest_gauge(mm)
    assert (found.number if found else None) == number


def test_a_gauge_that_is_not_in_the_table_is_refused() -> None:
    with pytest.raises(JournalError, match="There is no 19 gauge"):
        gauge(19)


def test_every_gauge_says_whose_figure_it_is() -> None:
    assert all(known.source for known in GAUGES)
    assert "no source" in gauge(22).source
    assert gauge(18).label == "18 gauge, 1.21 mm"
