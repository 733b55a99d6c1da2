"""The wanted parts of the made-up story hold together with the rest of it."""

from journal.demo.scenario import SCENARIO
from journal.demo.wanted import WANTED
from journal.domain.starters import starter
from journal.domain.wanted import WantedState
from journal.domain.when import parse_edtf


def test_every_state_is_shown_and_two_parts_became_lines_of_receipts() -> None:
    assert {story.states[-1][0] for story in WANTED} == set(WantedState)
    lines = {(r.supplier, line.text) for r in SCENARIO.receipts for line in r.lines}
    became = [story.became for story in WANTED if story.became]
    assert len(became) == 2
    assert set(became) <= lines


def test_parts_are_for_places_that_are_there_and_come_on_in_order() -> None:
    car = SCENARIO.car
    labels = {p.label for p in starter(car.body, car.wheelbase_mm, car.length_mm).panels}
    areas = {area.key for area in SCENARIO.areas}
    for story in WANTED:
        assert not story.panel or story.panel in labels
        assert not story.area or story.area in areas
        assert [s.rank for s, _ in story.states] == sorted({s.rank for s, _ in story.states})
        days = [parse_edtf(day) for _, day in story.states]
        assert days == sorted(days)
