"""Seams: what is refused, how far each part is, and the welds of a row."""

from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, SeamChangeId, SeamId, ViewId
from journal.domain.seams import (
    Joint,
    Seam,
    SeamChange,
    SeamState,
    Stretch,
    check_change,
    check_seam,
    count_welds,
    length,
    stretches,
    weld_places,
    weld_points,
)
from journal.domain.shapes import Curve, Line, Point, Stroke, circle
from journal.domain.when import When, parse

PLANNED, TACKED, WELDED, DRESSED = SeamState
DAY = date(2016, 3, 5)
LONG = 400.0


def straight(mm: float = LONG) -> Stroke:
    return Stroke(Point(0, 0), (Line(Point(mm, 0)),))


def seam(
    stroke: Stroke | None = None, joint: Joint = Joint.BUTT, spacing: float | None = None
) -> Seam:
    return Seam(SeamId(1), AreaId(1), ViewId(1), stroke or straight(), joint, spacing)


def change(
    state: SeamState, start: float = 0, end: float = LONG, when: When | date = DAY, seam_id: int = 1
) -> SeamChange:
    dated = When.on(when) if isinstance(when, date) else when
    return SeamChange(SeamChangeId(1), SeamId(seam_id), state, start, end, dated)


tenths = st.integers(0, int(LONG * 10)).map(lambda n: n / 10)
days = st.integers(0, 40).map(lambda n: DAY + timedelta(days=n))
parts = (
    st.tuples(tenths, tenths)
    .filter(lambda pair: pair[0] != pair[1])
    .map(lambda pair: (min(pair), max(pair)))
)
some_changes = st.lists(
    st.builds(
        lambda state, part, day: change(state, part[0], part[1], day),
        st.sampled_from(SeamState),
        parts,
        days,
    ),
    max_size=8,
)


def state_at(found: tuple[Stretch, ...], mm: float) -> SeamState | None:
    return next((s.state for s in found if s.start_mm < mm < s.end_mm), None)


# What is refused


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        (seam(Stroke(Point(5, 5), ())), "A seam needs two points or more, not one."),
        (seam(Stroke(Point(5, 5), (Line(Point(5, 5)),))), "no length"),
        (seam(Stroke(Point(5, 5), (Curve(*[Point(5, 5)] * 3),))), "no length"),
        (seam(Stroke(Point(5, 5), (Line(Point(float("nan"), 5)),))), "no place on the drawing"),
        (
            seam(Stroke(Point(5, 5), (Curve(Point(float("inf"), 0), Point(9, 9), Point(7, 7)),))),
            "no place on the drawing",
        ),
        (seam(joint=Joint.PLUGS), "A plug row needs its spacing"),
        (seam(joint=Joint.SPOTS, spacing=0), "spacing of a spot row must be from 1 to 1000 mm"),
        (seam(joint=Joint.SPOTS, spacing=float("nan")), "must be from 1 to 1000 mm"),
        (seam(joint=Joint.PLUGS, spacing=4000), "not 4000"),
        (seam(joint=Joint.LAP, spacing=40), "lap joint has no spacing"),
    ],
)
def test_a_seam_that_cannot_be_is_refused(wrong: Seam, said: str) -> None:
    with pytest.raises(JournalError, match=said):
        check_seam(wrong)


@pytest.mark.parametrize("joint", Joint)
def test_every_joint_can_be_drawn(joint: Joint) -> None:
    check_seam(seam(joint=joint, spacing=40 if joint.is_row else None))


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        (change(WELDED, 100, 100), "must end further along than it starts"),
        (change(WELDED, 200, 100), "not run from 200 to 100 mm"),
        (change(WELDED, 0, 401), "isn't all on the seam, which is 400.0 mm long"),
        (change(WELDED, -5, 100), "isn't all on the seam"),
        (change(WELDED, 0, float("inf")), "needs numbers"),
        (change(WELDED, float("nan"), 100), "needs numbers"),
        (change(WELDED, 0, 100, seam_id=2), "another seam"),
    ],
)
def test_a_change_that_cannot_be_is_refused(wrong: SeamChange, said: str) -> None:
    with pytest.raises(JournalError, match=said):
        check_change(seam(), wrong)


def test_a_change_up_to_a_hair_beyond_the_end_is_taken() -> None:
    over = change(WELDED, -0.3, 400.4)
    check_change(seam(), over)
    assert stretches(seam(), [over]) == (Stretch(0, 400, WELDED),)


# How far each part is


def test_the_states_stand_in_the_order_of_the_work() -> None:
    assert [state.rank for state in (PLANNED, TACKED, WELDED, DRESSED)] == [0, 1, 2, 3]


def test_a_drawn_seam_is_planned_from_end_to_end() -> None:
    assert stretches(seam(), []) == (Stretch(0, 400, PLANNED),)
    assert stretches(seam(), [], When.on(DAY)) == (Stretch(0, 400, PLANNED),)


def test_a_part_can_be_ahead_of_the_rest() -> None:
    done = [change(TACKED), change(WELDED, 100, 250), change(DRESSED, 200, 250)]
    assert stretches(seam(), done) == (
        Stretch(0, 100, TACKED),
        Stretch(100, 200, WELDED),
        Stretch(200, 250, DRESSED),
        Stretch(250, 400, TACKED),
    )


def test_neighbouring_parts_in_one_state_are_one_stretch() -> None:
    done = [change(WELDED, 0, 150), change(WELDED, 150, 300), change(WELDED, 120, 180)]
    assert stretches(seam(), done) == (Stretch(0, 300, WELDED), Stretch(300, 400, PLANNED))


def test_a_state_counts_from_its_day_on() -> None:
    done = [change(TACKED), change(WELDED, when=DAY + timedelta(days=9))]
    before, between = DAY - timedelta(days=1), DAY + timedelta(days=8)
    assert stretches(seam(), done, When.on(before)) == (Stretch(0, 400, PLANNED),)
    assert stretches(seam(), done, When.on(DAY)) == (Stretch(0, 400, TACKED),)
    assert stretches(seam(), done, When.on(between)) == (Stretch(0, 400, TACKED),)
    assert stretches(seam(), done, parse("March 2016")) == (Stretch(0, 400, WELDED),)


def test_the_further_state_wins_whatever_order_they_were_recorded_in() -> None:
    later_tack = [change(WELDED), change(TACKED, when=DAY + timedelta(days=3))]
    assert stretches(seam(), later_tack) == (Stretch(0, 400, WELDED),)


def test_a_dated_plan_begins_on_its_day() -> None:
    planned = [change(PLANNED, 100, 400), change(TACKED, 300, 400, DAY + timedelta(days=2))]
    assert stretches(seam(), planned, When.on(DAY - timedelta(days=1))) == (
        Stretch(0, 100, PLANNED),
    )
    assert stretches(seam(), planned, When.on(DAY)) == (Stretch(0, 400, PLANNED),)


def test_work_before_the_recorded_plan_still_counts() -> None:
    planned = [change(PLANNED, when=DAY + timedelta(days=9)), change(TACKED, 0, 50)]
    assert stretches(seam(), planned, When.on(DAY)) == (Stretch(0, 50, TACKED),)


def test_changes_of_other_seams_are_left_out() -> None:
    assert stretches(seam(), [change(WELDED, seam_id=2)]) == (Stretch(0, 400, PLANNED),)


def test_a_seam_redrawn_shorter_keeps_only_what_it_has() -> None:
    short = seam(straight(120))
    assert stretches(short, [change(WELDED, 50, 400), change(DRESSED, 300, 400)]) == (
        Stretch(0, 50, PLANNED),
        Stretch(50, 120, WELDED),
    )


@given(some_changes, days)
def test_stretches_are_in_order_and_never_overlap(changes: list[SeamChange], day: date) -> None:
    found = stretches(seam(), changes, When.on(day))
    assert all(s.start_mm < s.end_mm for s in found)
    for left, right in pairwise(found):
        assert left.end_mm <= right.start_mm
        assert left.end_mm < right.start_mm or left.state is not right.state
    assert all(s.start_mm >= 0 and s.end_mm <= LONG for s in found)


@given(some_changes)
def test_stretches_by_now_cover_the_whole_seam(changes: list[SeamChange]) -> None:
    assert sum(s.length_mm for s in stretches(seam(), changes)) == pytest.approx(LONG)


@given(some_changes, days, tenths)
def test_a_spot_is_as_far_as_the_furthest_change_over_it(
    changes: list[SeamChange], day: date, mm: float
) -> None:
    spot = mm + 0.05  # never on the border of a part
    over = [c for c in changes if c.start_mm < spot < c.end_mm and c.when.earliest.date() <= day]
    # Close to the ends, a part is drawn out to them.
    if 1 < spot < LONG - 1 and over:
        furthest = max((c.state for c in over), key=lambda state: state.rank)
        assert state_at(stretches(seam(), changes, When.on(day)), spot) is furthest


@given(some_changes, days, days)
def test_no_part_ever_goes_back(changes: list[SeamChange], one: date, other: date) -> None:
    early = stretches(seam(), changes, When.on(min(one, other)))
    late = stretches(seam(), changes, When.on(max(one, other)))
    for n in range(40):
        before, after = state_at(early, n * 10 + 0.05), state_at(late, n * 10 + 0.05)
        assert before is None or (after is not None and after.rank >= before.rank)


@given(some_changes.flatmap(lambda rows: st.tuples(st.just(rows), st.permutations(rows))))
def test_the_order_of_recording_means_nothing(
    orders: tuple[list[SeamChange], list[SeamChange]],
) -> None:
    one, other = orders
    assert stretches(seam(), one) == stretches(seam(), other)


# Rows


def test_a_row_has_a_weld_at_its_start_and_at_each_spacing() -> None:
    row = seam(joint=Joint.PLUGS, spacing=40)
    assert weld_places(row) == tuple(float(mm) for mm in range(0, 401, 40))
    assert count_welds(row) == 11
    assert weld_points(row)[3] == (120, 0)


def test_what_is_left_of_a_row_bears_no_weld() -> None:
    assert weld_places(seam(straight(79.9), Joint.SPOTS, 40)) == (0, 40)
    assert weld_places(seam(straight(39), Joint.SPOTS, 40)) == (0,)


def test_a_row_round_a_patch_counts_its_first_weld_once() -> None:
    square = Stroke(
        Point(0, 0), tuple(Line(Point(x, y)) for x, y in [(80, 0), (80, 80), (0, 80), (0, 0)])
    )
    assert count_welds(seam(square, Joint.PLUGS, 40)) == 8
    open_row = Stroke(square.start, square.edges[:3])
    assert count_welds(seam(open_row, Joint.PLUGS, 40)) == 7


def test_a_row_on_a_circle_is_evenly_spread() -> None:
    contour = circle(0, 0, 100).contours[0]
    ring = seam(Stroke(contour.start, contour.edges), Joint.SPOTS, 30)
    assert count_welds(ring) == 21
    assert all(abs((x * x + y * y) ** 0.5 - 100) < 0.1 for x, y in weld_points(ring))


def test_a_beads_seam_has_no_single_welds() -> None:
    assert weld_places(seam()) == ()
    assert count_welds(seam()) == 0


def test_the_welds_of_a_row_that_are_done_are_counted() -> None:
    row = seam(joint=Joint.PLUGS, spacing=40)
    done = [change(WELDED, 0, 120), change(TACKED, 120, 400, DAY + timedelta(days=1))]
    assert count_welds(row, done, state=WELDED) == 4
    assert count_welds(row, done, When.on(DAY), TACKED) == 4
    assert count_welds(row, done, None, TACKED) == 11
    assert count_welds(row, done, None, DRESSED) == 0


@given(st.integers(1, 3000), st.integers(1, 1000))
def test_a_row_holds_as_many_welds_as_fit(mm: int, spacing: int) -> None:
    places = weld_places(seam(straight(mm), Joint.SPOTS, spacing))
    assert len(places) == mm // spacing + 1
    assert all(b - a == pytest.approx(spacing) for a, b in pairwise(places))


def test_a_length_is_that_of_the_curve() -> None:
    bow = Stroke(Point(0, 0), (Curve(Point(0, 100), Point(100, 100), Point(100, 0)),))
    # With u = t (1 - t), the square of its speed is (300 - 600 u)^2, which integrates to 200.
    assert length(seam(bow)) == pytest.approx(200.0, abs=1e-3)
    assert length(replace(seam(), note="x")) == 400
