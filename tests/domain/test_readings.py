"""Readings: what is refused, before against after, and what is outside what the owner set."""

import re
from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.diagonals import compare_diagonals, pair_diagonals
from journal.domain.errors import JournalError
from journal.domain.films import FACTORY_LAYERS, FILM_BANDS, MIL_UM, film_band
from journal.domain.ids import MeasureId, ReadingId, ViewId
from journal.domain.readings import (
    Measure,
    MeasureKind,
    Moment,
    Reading,
    as_micrometres,
    check_measure,
    check_reading,
    compare,
    is_outside,
    latest,
    off_target,
    remark,
    series,
    spread,
)
from journal.domain.shapes import Point
from journal.domain.when import When

DAY = date(2016, 3, 5)
BEFORE, DURING, AFTER = Moment
CORNERS = Point(0, 0), Point(900, 1000)


def measure(
    kind: MeasureKind = MeasureKind.GAP,
    points: tuple[Point, ...] = (Point(5, 5),),
    number: int = 1,
    target: str | None = None,
    tolerance: str | None = None,
) -> Measure:
    return Measure(
        MeasureId(number),
        "Door gap, rear",
        kind,
        ViewId(1),
        points,
        kind.unit,
        None if target is None else Decimal(target),
        None if tolerance is None else Decimal(tolerance),
    )


def reading(
    value: str, moment: Moment = BEFORE, day: int = 0, point: int = 0, number: int = 1, row: int = 1
) -> Reading:
    when = When.on(DAY + timedelta(days=day))
    return Reading(ReadingId(row), MeasureId(number), point, Decimal(value), when, moment)


# What is refused


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        (replace(measure(), name=" "), "needs a name"),
        (replace(measure(), unit="inch"), "in mm or µm, not in “inch”"),
        (measure(points=()), "needs a point on the drawing"),
        (measure(points=(Point(float("nan"), 0),)), "no place on the drawing"),
        (measure(MeasureKind.DIAGONAL), "needs two points, not 1"),
        (measure(MeasureKind.DIAGONAL, (*CORNERS, Point(1, 1))), "needs two points, not 3"),
        (measure(MeasureKind.DIAGONAL, (Point(1, 1), Point(1, 1))), "can't be one and the same"),
        (measure(tolerance="1"), "tolerance but no target"),
        (measure(target="4", tolerance="-1"), "must be a number, nothing or more"),
        (measure(target="4", tolerance="NaN"), "must be a number, nothing or more"),
        (measure(target="NaN"), "The target of Door gap, rear must be a number"),
        (measure(target="-4"), "can't be less than nothing"),
        (measure(target="99999"), "longer than any car"),
    ],
)
def test_a_measure_that_cannot_be_is_refused(wrong: Measure, said: str) -> None:
    with pytest.raises(JournalError, match=said):
        check_measure(wrong)


@pytest.mark.parametrize(
    ("kind", "points"),
    [
        (MeasureKind.GAP, (Point(1, 1), Point(2, 2), Point(3, 3))),
        (MeasureKind.DIAGONAL, CORNERS),
        (MeasureKind.HEIGHT, (Point(1, 1),)),
        (MeasureKind.FILM, (Point(1, 1), Point(2, 2))),
    ],
)
def test_every_kind_can_be_defined(kind: MeasureKind, points: tuple[Point, ...]) -> None:
    check_measure(measure(kind, points, target="4", tolerance="0"))


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        (reading("4", number=2), "belongs to another measure"),
        (reading("4", point=1), "read at 1 place; it has no place number 2"),
        (reading("4", point=-1), "no place number 0"),
        (reading("NaN"), "must be a number"),
        (reading("Infinity"), "must be a number"),
        (reading("-0.1"), "can't be less than nothing"),
        (reading("20001"), "longer than any car"),
    ],
)
def test_a_reading_that_cannot_be_is_refused(wrong: Reading, said: str) -> None:
    with pytest.raises(JournalError, match=said):
        check_reading(measure(), wrong)


def test_a_height_may_lie_below_what_it_is_measured_from() -> None:
    check_reading(measure(MeasureKind.HEIGHT), reading("-12.5"))


def test_micrometres_reach_further_before_they_are_refused() -> None:
    check_reading(measure(MeasureKind.FILM), reading("25000"))


# Places


@pytest.mark.parametrize(
    ("kind", "count", "places"),
    [
        (MeasureKind.GAP, 1, 1),
        (MeasureKind.GAP, 2, 1),
        (MeasureKind.GAP, 5, 5),
        (MeasureKind.DIAGONAL, 2, 1),
        (MeasureKind.FILM, 2, 2),
        (MeasureKind.SHEET, 2, 2),
    ],
)
def test_two_points_make_one_distance_but_for_what_is_read_at_a_spot(
    kind: MeasureKind, count: int, places: int
) -> None:
    row = tuple(Point(n, 0) for n in range(count))
    assert measure(kind, row).places == places


def test_films_are_read_in_micrometres() -> None:
    assert MeasureKind.FILM.unit == "µm"
    assert {kind.unit for kind in MeasureKind if kind is not MeasureKind.FILM} == {"mm"}


# Over time


def test_the_latest_before_stands_against_the_latest_after() -> None:
    taken = [
        reading("4.0", AFTER, 90),
        reading("5.5", BEFORE, 0),
        reading("6.0", BEFORE, 3),
        reading("3.0", DURING, 40),
        reading("4.2", AFTER, 60),
        reading("99", AFTER, 95, number=2),
    ]
    (row,) = compare(measure(), taken)
    assert row.before is not None
    assert row.after is not None
    assert (row.before.value, row.after.value) == (Decimal("6.0"), Decimal("4.0"))
    assert row.difference == Decimal("-2.0")


def test_each_place_of_a_row_is_compared_by_itself() -> None:
    row = measure(points=tuple(Point(n, 0) for n in range(3)))
    taken = [reading("4", BEFORE, point=0), reading("5", AFTER, 9, 0), reading("7", AFTER, 9, 2)]
    found = compare(row, taken)
    assert [one.point for one in found] == [0, 1, 2]
    assert [one.difference for one in found] == [Decimal(1), None, None]
    assert found[1].after is None
    assert found[2].before is None


def test_readings_in_order_of_date_then_moment_then_record() -> None:
    taken = [
        reading("1", AFTER, 5, row=1),
        reading("2", DURING, 5, row=9),
        reading("3", BEFORE, 7, row=2),
        reading("4", DURING, 5, row=3),
        reading("5", BEFORE, 0, row=4),
    ]
    assert [int(r.value) for r in series(measure(), taken)] == [5, 4, 2, 1, 3]


def test_a_series_of_one_point() -> None:
    row = measure(points=tuple(Point(n, 0) for n in range(3)))
    taken = [reading("1", point=0), reading("2", point=1), reading("3", day=1, point=0)]
    assert [int(r.value) for r in series(row, taken, 0)] == [1, 3]
    assert len(series(row, taken)) == 3
    found = latest(row, taken, 0)
    assert found is not None
    assert found.value == 3
    assert latest(row, taken, 2) is None


decimals = st.decimals(0, 2000, places=2)


@given(st.lists(st.tuples(decimals, st.sampled_from(Moment), st.integers(0, 30)), max_size=10))
def test_the_difference_is_always_after_less_before(
    rows: list[tuple[Decimal, Moment, int]],
) -> None:
    taken = [reading(str(value), moment, day) for value, moment, day in rows]
    (row,) = compare(measure(), taken)
    moments = {moment for _, moment, _ in rows}
    assert (row.before is None) == (BEFORE not in moments)
    assert (row.after is None) == (AFTER not in moments)
    if row.before is not None and row.after is not None:
        assert row.before.value + (row.difference or 0) == row.after.value


# What the owner set


@pytest.mark.parametrize(
    ("value", "outside"),
    [("4", False), ("4.5", False), ("3.5", False), ("4.51", True), ("0", True)],
)
def test_a_number_is_outside_only_beyond_the_owners_tolerance(value: str, outside: bool) -> None:
    gap = measure(target="4", tolerance="0.5")
    assert is_outside(gap, Decimal(value)) is outside
    assert remark(gap, Decimal(value)) == ("outside what you set" if outside else "")


def test_without_a_target_or_tolerance_nothing_is_outside() -> None:
    assert remark(measure(), Decimal(99)) == ""
    assert remark(measure(target="4"), Decimal(99)) == ""
    assert off_target(measure(target="4"), Decimal("3.2")) == Decimal("-0.8")
    assert off_target(measure(), Decimal(3)) is None


def test_the_spread_along_a_row() -> None:
    assert spread([Decimal("3.9"), Decimal("2.3"), Decimal("3")]) == Decimal("1.6")
    assert spread([]) is None


# Diagonals


def diagonal(number: int, *points: tuple[float, float], view: int = 1) -> Measure:
    found = measure(MeasureKind.DIAGONAL, tuple(Point(x, y) for x, y in points), number)
    return replace(found, view_id=ViewId(view))


def test_diagonals_before_cutting_and_after_welding() -> None:
    rising, falling = diagonal(1, (0, 0), (900, 1000)), diagonal(2, (0, 1000), (900, 0))
    taken = [
        reading("1345.5", BEFORE, 0, number=1),
        reading("1343.0", BEFORE, 0, number=2),
        reading("1346.0", AFTER, 200, number=1),
        reading("1342.0", AFTER, 200, number=2),
    ]
    pair = compare_diagonals(rising, falling, taken)
    assert (pair.before, pair.after, pair.change) == (Decimal("2.5"), Decimal(4), Decimal("1.5"))
    assert pair.first_readings.difference == Decimal("0.5")
    assert pair.second_readings.difference == Decimal(-1)


def test_a_missing_diagonal_leaves_its_differences_open() -> None:
    rising, falling = diagonal(1, (0, 0), (900, 1000)), diagonal(2, (0, 1000), (900, 0))
    taken = [reading("1345", BEFORE), reading("1345", AFTER), reading("1340", BEFORE, number=2)]
    pair = compare_diagonals(rising, falling, taken)
    assert (pair.before, pair.after, pair.change) == (Decimal(5), None, None)


def test_crossing_diagonals_of_a_view_belong_together() -> None:
    front = diagonal(1, (0, 0), (900, 1000)), diagonal(2, (0, 1000), (900, 0))
    rear = diagonal(3, (1000, 0), (1800, 1000)), diagonal(4, (1000, 1000), (1800, 0))
    elsewhere = diagonal(5, (0, 1000), (900, 0), view=2)
    alone = diagonal(6, (2000, 0), (2100, 0))
    found = pair_diagonals([*rear, elsewhere, *front, alone, measure(number=7)])
    assert found == (rear, front)


def test_a_diagonal_over_two_openings_goes_with_none_of_theirs() -> None:
    front = diagonal(1, (0, 0), (900, 1000)), diagonal(2, (0, 1000), (900, 0))
    long = diagonal(3, (0, 900), (2000, 100))
    assert pair_diagonals([long, *front]) == (front,)


# Films


def test_the_bands_follow_each_other_without_a_hole() -> None:
    assert FILM_BANDS[0].least == 0
    for thinner, thicker in pairwise(FILM_BANDS):
        assert thinner.most == thicker.least


@pytest.mark.parametrize(
    ("micrometres", "said"),
    [
        (60, "thinner"),
        (100, "as factory paint"),
        (179.9, "as factory paint"),
        (250, "sources differ"),
        (400, "painted again"),
        (1500, "filler"),
    ],
)
def test_what_a_film_suggests(micrometres: float, said: str) -> None:
    assert said in film_band(micrometres).text


def test_bands_name_their_source_and_their_doubt_and_judge_nothing() -> None:
    for band in FILM_BANDS:
        assert "differ" in band.source or "no source" in band.source
        assert not re.search(r"\b(pass|fail|good|bad|safe)\w*", band.text)


@pytest.mark.parametrize("wrong", [-1, float("nan"), float("inf")])
def test_no_film_is_refused(wrong: float) -> None:
    with pytest.raises(JournalError, match="A film can't be"):
        film_band(wrong)


def test_factory_coats_are_thinner_than_the_whole() -> None:
    # Ranges read at several paint sites: e-coat 12-33, primer 18-60, base 15-40, clear 35-60.
    assert [(layer.least, layer.most) for layer in FACTORY_LAYERS] == [
        (12, 33), (18, 60), (15, 40), (35, 60),
    ]  # fmt: skip
    assert MIL_UM == 25.4


def test_films_written_in_millimetres_come_to_micrometres() -> None:
    film = measure(MeasureKind.FILM)
    assert as_micrometres(film, Decimal(120)) == 120
    assert as_micrometres(replace(film, unit="mm"), Decimal("0.12")) == 120
