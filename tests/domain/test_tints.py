"""The state of every panel on a date, and the drawing's other tints."""

import math
from datetime import date, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.areas import DEFAULT_STAGES, Area, StageChange
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, PanelId, StageChangeId
from journal.domain.states import PanelYears, days_since, over_panels, panel_states
from journal.domain.tints import Scale, TintBy, legend, scale_for, tint
from journal.domain.when import When, parse

DAY = date(2016, 3, 5)


def area(number: int, panels: tuple[int, ...], *changes: tuple[str, int]) -> Area:
    dated = tuple(
        StageChange(StageChangeId(0), AreaId(number), stage, When.on(DAY + timedelta(days=days)))
        for stage, days in changes
    )
    ids = tuple(PanelId(panel) for panel in panels)
    return Area(AreaId(number), f"Area {number}", ids, "", "", (), dated)


AREAS = (
    area(1, (1, 2), ("found", 0), ("welded", 100), ("finished", 300)),
    area(2, (2, 3), ("found", 50), ("cut back", 200)),
    area(3, (4,)),
)


# States


def test_a_panel_stands_where_its_least_advanced_area_does() -> None:
    assert panel_states(AREAS, DEFAULT_STAGES) == {1: "finished", 2: "cut back", 3: "cut back"}


@pytest.mark.parametrize(
    ("days", "expected"),
    [
        (-1, {}),
        (0, {1: "found", 2: "found"}),
        (60, {1: "found", 2: "found", 3: "found"}),
        (150, {1: "welded", 2: "found", 3: "found"}),
        (250, {1: "welded", 2: "cut back", 3: "cut back"}),
    ],
)
def test_the_states_on_a_date(days: int, expected: dict[int, str]) -> None:
    on = When.on(DAY + timedelta(days=days))
    assert panel_states(AREAS, DEFAULT_STAGES, on) == expected
    assert PanelYears(AREAS, DEFAULT_STAGES).on(on) == expected


def test_a_stage_the_list_no_longer_has_counts_as_the_least_advanced() -> None:
    areas = area(1, (1,), ("found", 0)), area(2, (1,), ("primed", 0))
    assert panel_states(areas, DEFAULT_STAGES) == {1: "primed"}


def test_the_days_on_which_something_changed() -> None:
    days = PanelYears(AREAS, DEFAULT_STAGES).days
    assert days == tuple(DAY + timedelta(days=n) for n in (0, 50, 100, 200, 300))
    assert PanelYears((), DEFAULT_STAGES).days == ()


changes = st.lists(st.tuples(st.sampled_from(DEFAULT_STAGES), st.integers(0, 400)), max_size=5).map(
    lambda rows: sorted(rows, key=lambda row: row[1])
)
some_areas = st.lists(
    st.tuples(st.lists(st.integers(1, 5), unique=True, max_size=3), changes), max_size=6
).map(lambda rows: [area(n, tuple(p), *c) for n, (p, c) in enumerate(rows, 1)])


@given(some_areas, st.lists(st.integers(-10, 420), min_size=1, max_size=6))
def test_the_years_give_what_each_date_gives(areas: list[Area], days: list[int]) -> None:
    years = PanelYears(areas, DEFAULT_STAGES)
    for n in days:
        on = When.on(DAY + timedelta(days=n))
        assert years.on(on) == panel_states(areas, DEFAULT_STAGES, on)


@given(some_areas)
def test_no_area_of_a_panel_is_behind_its_state(areas: list[Area]) -> None:
    order = DEFAULT_STAGES.index
    for panel_id, stage in panel_states(areas, DEFAULT_STAGES).items():
        own = [a.stage for a in areas if panel_id in a.panel_ids and a.stage]
        assert order(stage) == min(map(order, own))


# What belongs to areas, on panels


def test_minutes_of_an_area_are_shared_among_its_panels_to_the_last() -> None:
    found = over_panels({AreaId(1): 101, AreaId(2): 60, AreaId(3): 7}, AREAS)
    assert found == {1: 51, 2: 50 + 30, 3: 30, 4: 7}
    assert over_panels({AreaId(9): 60}, [area(9, ())]) == {}


@given(some_areas, st.lists(st.integers(-500, 5000), min_size=6, max_size=6))
def test_nothing_is_lost_in_sharing(areas: list[Area], amounts: list[int]) -> None:
    by_area = {a.id: amounts[a.id - 1] for a in areas if a.panel_ids}
    assert sum(over_panels(by_area, areas).values()) == sum(by_area.values())


# Days since


def test_days_since_a_panel_was_last_touched() -> None:
    touched = {
        PanelId(1): [parse("5 March 2016"), parse("2016-03-20"), parse("2016-05-01")],
        PanelId(2): [parse("2016-01")],
        PanelId(3): [parse("2017")],
        PanelId(4): [],
        PanelId(5): [parse("2015/..")],
        PanelId(6): [parse("2016")],
    }
    found = days_since(touched, date(2016, 3, 30))
    assert found == {1: 10, 2: 59, 6: 0}


# Levels


@pytest.mark.parametrize(
    ("top", "bounds"),
    [
        (0, (1, 2, 5, 10)),
        (0.5, (1, 2, 5, 10)),
        (15, (1, 2, 5, 10)),
        (20, (1, 2, 5, 10)),
        (21, (2, 5, 10, 20)),
        (200, (10, 20, 50, 100)),
        (50_000, (2000, 5000, 10_000, 20_000)),
    ],
)
def test_bounds_follow_one_two_five(top: float, bounds: tuple[float, ...]) -> None:
    assert scale_for({PanelId(1): top}, TintBy.PHOTOS).bounds == bounds


def test_bounds_are_round_in_the_unit_that_is_shown() -> None:
    hours = scale_for({PanelId(1): 200 * 60, PanelId(2): 30}, TintBy.HOURS, unit=60)
    assert hours.bounds == (600, 1200, 3000, 6000)
    assert hours.level(30) == 1
    assert hours.level(12_000) == 5


def test_the_levels_of_photos() -> None:
    photos = {PanelId(n): n for n in (0, 1, 2, 3, 5, 6, 10, 11)}
    levels = {0: 0, 1: 1, 2: 2, 3: 3, 5: 3, 6: 4, 10: 4, 11: 5}
    assert tint(photos, TintBy.PHOTOS) == levels


def test_days_and_missing_things_have_bounds_of_their_own() -> None:
    days = {PanelId(n): d for n, d in enumerate((0, 7, 8, 30, 91, 365, 366, 4000))}
    assert list(tint(days, TintBy.UNTOUCHED).values()) == [1, 1, 2, 2, 3, 4, 5, 5]
    missing = {PanelId(n): n for n in range(8)}
    assert list(tint(missing, TintBy.MISSING).values()) == [0, 1, 2, 3, 4, 4, 5, 5]


def test_a_scale_given_serves_another_date() -> None:
    now = {PanelId(1): 200.0}
    scale = scale_for(now, TintBy.PHOTOS)
    assert tint({PanelId(1): 15.0}, TintBy.PHOTOS, scale) == {1: 2}


def test_what_is_owed_back_is_no_more_than_nothing() -> None:
    assert tint({PanelId(1): -300, PanelId(2): 900}, TintBy.MONEY)[PanelId(1)] == 0


values = st.dictionaries(
    st.integers(1, 30).map(PanelId), st.floats(0, 1e7) | st.integers(0, 500), max_size=12
)


@given(values, st.sampled_from(TintBy))
def test_more_is_never_paler(found: dict[PanelId, float], by: TintBy) -> None:
    levels = tint(found, by)
    assert levels.keys() == found.keys()
    assert all(0 <= level <= 5 for level in levels.values())
    ordered = sorted(found, key=lambda panel_id: found[panel_id])
    assert [levels[p] for p in ordered] == sorted(levels.values())


@given(values, st.sampled_from([TintBy.HOURS, TintBy.MONEY, TintBy.PHOTOS]))
def test_nothing_is_level_0_and_the_most_of_much_is_level_5(
    found: dict[PanelId, float], by: TintBy
) -> None:
    levels = tint(found, by)
    assert all((levels[p] == 0) == (found[p] == 0) for p in found)
    if found and max(found.values()) > 10:
        assert max(levels.values()) == 5


@given(values, st.sampled_from(TintBy))
def test_every_level_used_stands_in_the_legend(found: dict[PanelId, float], by: TintBy) -> None:
    rows = legend(scale_for(found, by), str)
    assert {row.level for row in rows} >= set(tint(found, by).values())
    assert [row.level for row in rows] == sorted({row.level for row in rows})


def test_the_legend_states_its_bounds() -> None:
    scale = scale_for({PanelId(1): 200 * 60}, TintBy.HOURS, unit=60)
    texts = [row.text for row in legend(scale, lambda minutes: f"{minutes / 60:g} h")]
    assert texts == [
        "none", "up to 10 h", "more than 10 h, up to 20 h", "more than 20 h, up to 50 h",
        "more than 50 h, up to 100 h", "more than 100 h",
    ]  # fmt: skip


def test_the_legend_leaves_out_what_no_value_reaches() -> None:
    scale = scale_for({PanelId(1): 12}, TintBy.UNTOUCHED)
    assert [row.text for row in legend(scale, lambda days: f"{days:g} days")] == [
        "up to 7 days",
        "more than 7 days, up to 30 days",
    ]


@pytest.mark.parametrize("wrong", [math.nan, math.inf, -math.inf])
def test_what_is_no_number_is_refused(wrong: float) -> None:
    with pytest.raises(JournalError, match="no number"):
        tint({PanelId(1): wrong}, TintBy.MONEY)
    if math.isnan(wrong):
        with pytest.raises(JournalError, match="no number"):
            Scale((1, 2, 5, 10), 10).level(wrong)


@pytest.mark.parametrize("unit", [0, -1, math.nan])
def test_a_unit_of_nothing_is_refused(unit: float) -> None:
    with pytest.raises(JournalError, match="no number"):
        scale_for({PanelId(1): 5}, TintBy.HOURS, unit)


@pytest.mark.slow
def test_the_states_of_a_date_are_there_before_a_frame_is_noticed() -> None:
    # 400 panels, 250 areas, 2,000 changes: 50 ms is asked; a slow machine gets three times that.
    areas = [
        area(n, (n % 400, (n * 7) % 400), *((DEFAULT_STAGES[k % 7], n + k * 30) for k in range(8)))
        for n in range(1, 251)
    ]
    on = When.on(DAY + timedelta(days=400))
    start = datetime.now()
    assert panel_states(areas, DEFAULT_STAGES, on)
    assert (datetime.now() - start).total_seconds() < 0.15
