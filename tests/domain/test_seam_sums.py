"""Metres of seam, summed by area, view, panel and date."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.drawing import Drawing, Panel, PanelShape, Side, System, View
from journal.domain.hits import PanelMap
from journal.domain.ids import AreaId, PanelId, SeamChangeId, SeamId, ViewId
from journal.domain.seam_sums import (
    SeamSums,
    SumsOn,
    panel_under,
    seam_sums,
    series,
    sums,
    sums_by,
)
from journal.domain.seams import Joint, Seam, SeamChange, SeamState
from journal.domain.shapes import Line, Point, Stroke, rectangle
from journal.domain.when import When

DAY = date(2016, 3, 5)
PLANNED, TACKED, WELDED, DRESSED = SeamState


def seam(number: int, mm: float, area: int = 1, view: int = 1, y: float = 0) -> Seam:
    line = Stroke(Point(0, y), (Line(Point(mm, y)),))
    return Seam(SeamId(number), AreaId(area), ViewId(view), line, Joint.BUTT)


def change(number: int, state: SeamState, start: float, end: float, day: int = 0) -> SeamChange:
    when = When.on(DAY + timedelta(days=day))
    return SeamChange(SeamChangeId(0), SeamId(number), state, start, end, when)


SEAMS = seam(1, 400), seam(2, 600, area=2, view=2), seam(3, 1000, area=2)
CHANGES = (
    change(1, TACKED, 0, 400),
    change(1, WELDED, 0, 300, 2),
    change(3, WELDED, 100, 600, 2),
    change(3, DRESSED, 100, 200, 9),
)
#: What the seams above come to, added up by hand.
WHOLE = SeamSums(2000, 900, 800, 100)


def test_each_sum_counts_what_is_further_along() -> None:
    assert seam_sums(SEAMS[0], CHANGES) == SeamSums(400, 400, 300, 0)
    assert seam_sums(SEAMS[2], CHANGES) == SeamSums(1000, 500, 500, 100)
    assert seam_sums(SEAMS[1], CHANGES) == SeamSums(planned=600)


def test_the_sums_of_the_car() -> None:
    assert sums(SEAMS, CHANGES) == WHOLE
    assert sums((), CHANGES) == SeamSums()
    assert WHOLE.at_least(WELDED) == 800


def test_sums_by_area_and_by_view() -> None:
    assert sums_by(SEAMS, CHANGES, lambda s: s.area_id) == {
        1: SeamSums(400, 400, 300, 0),
        2: SeamSums(1600, 500, 500, 100),
    }
    assert sums_by(SEAMS, CHANGES, lambda s: s.view_id) == {
        1: SeamSums(1400, 900, 800, 100),
        2: SeamSums(planned=600),
    }


def test_seams_without_a_group_are_left_out() -> None:
    under = {SeamId(1): PanelId(7), SeamId(2): None, SeamId(3): PanelId(7)}
    assert sums_by(SEAMS, CHANGES, lambda s: under[s.id]) == {7: SeamSums(1400, 900, 800, 100)}


def test_sums_on_a_date() -> None:
    assert sums(SEAMS, CHANGES, When.on(DAY)) == SeamSums(2000, 400)
    assert sums_by(SEAMS, CHANGES, lambda s: s.area_id, When.on(DAY))[AreaId(2)] == SeamSums(1600)


def test_the_series_has_each_day_on_which_something_changed() -> None:
    assert series(SEAMS, CHANGES) == (
        SumsOn(DAY, SeamSums(2000, 400)),
        SumsOn(DAY + timedelta(days=2), SeamSums(2000, 900, 800)),
        SumsOn(DAY + timedelta(days=9), WHOLE),
    )


def test_a_dated_plan_shows_in_the_series() -> None:
    planned = (change(1, PLANNED, 0, 400, 1), change(2, PLANNED, 0, 600, 4))
    assert [point.sums.planned for point in series(SEAMS[:2], planned)] == [400, 1000]


def test_no_change_makes_no_series() -> None:
    assert series(SEAMS, ()) == ()
    assert series((), CHANGES) == ()


some_changes = st.lists(
    st.builds(
        lambda number, state, start, more, day: change(number, state, start, start + more, day),
        st.integers(1, 3),
        st.sampled_from(SeamState),
        st.integers(0, 300),
        st.integers(1, 300),
        st.integers(0, 20),
    ),
    max_size=12,
)


@given(some_changes)
def test_sums_never_rise_from_state_to_state(changes: list[SeamChange]) -> None:
    found = sums(SEAMS, changes)
    assert found.planned >= found.tacked >= found.welded >= found.dressed >= 0
    assert found.planned == pytest.approx(2000)


@given(some_changes)
def test_the_parts_add_up_to_the_car(changes: list[SeamChange]) -> None:
    whole = sums(SEAMS, changes)
    for key in (lambda s: s.area_id, lambda s: s.view_id, lambda s: s.id):
        parts = sum(sums_by(SEAMS, changes, key).values(), SeamSums())
        for state in SeamState:
            assert parts.at_least(state) == pytest.approx(whole.at_least(state))


@given(some_changes)
def test_every_point_of_the_series_is_the_sum_on_its_day(changes: list[SeamChange]) -> None:
    found = series(SEAMS, changes)
    assert [point.day for point in found] == sorted({c.when.earliest.date() for c in changes})
    for point in found:
        exact = sums(SEAMS, changes, When.on(point.day))
        for state in SeamState:
            assert point.sums.at_least(state) == pytest.approx(exact.at_least(state))
    if found:
        assert found[-1].sums.dressed == pytest.approx(sums(SEAMS, changes).dressed)


def test_the_panel_under_a_seam_is_the_one_under_most_of_it() -> None:
    panels = tuple(Panel(PanelId(n), f"Panel {n}", Side.CENTRE, System.FLOOR) for n in (1, 2))
    shapes = (
        PanelShape(PanelId(1), ViewId(1), rectangle(0, -50, 300, 100), 1),
        PanelShape(PanelId(2), ViewId(1), rectangle(300, -50, 700, 100), 2),
    )
    views = (View(ViewId(1), "Underside", 2000, 1000), View(ViewId(2), "Top", 2000, 1000))
    drawn = PanelMap(Drawing(views, panels, shapes))
    assert panel_under(seam(1, 400), drawn) == 1
    assert panel_under(seam(3, 1000), drawn) == 2
    assert panel_under(seam(3, 1000, y=500), drawn) is None
    assert panel_under(seam(3, 1000, view=2), drawn) is None
