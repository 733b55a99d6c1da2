"""Phases between the turning points."""

from datetime import date

from hypothesis import given
from hypothesis import strategies as st

from journal.domain.car import Milestone, MilestoneKind
from journal.domain.ids import MilestoneId
from journal.domain.milestones import is_upkeep
from journal.domain.phases import WHOLE_TIME, phases
from journal.domain.when import When, parse_edtf


def stone(kind: MilestoneKind, when: str, note: str = "") -> Milestone:
    return Milestone(MilestoneId(1), kind, parse_edtf(when), note)


STONES = (
    stone(MilestoneKind.ACQUIRED, "2015-05-02"),
    stone(MilestoneKind.STRIPPED, "2016"),
    stone(MilestoneKind.PAINTED, "2019-07-01"),
    stone(MilestoneKind.OTHER, "2019-07-01", "engine in."),
    stone(MilestoneKind.ON_THE_ROAD, "2021-06-12"),
)


def test_phases_are_named_after_what_they_lie_between() -> None:
    assert phases(STONES).names == (
        "up to acquired",
        "acquired to stripped",
        "stripped to painted and “engine in”",
        "painted and “engine in” to on the road",
        "after on the road",
    )


def test_the_day_of_a_milestone_belongs_to_what_it_ends() -> None:
    found = phases(STONES)
    days = {"2015-05-02": 0, "2015-05-03": 1, "2016-01-01": 1, "2016": 1, "2016-01-02": 2,
            "2021-06-12": 3, "2021-06-13": 4, "2031": 4}  # fmt: skip
    assert {day: found.at(parse_edtf(day)) for day in days} == days
    assert found.at(parse_edtf("../2016")) is None


def test_without_a_dated_milestone_there_is_one_phase_and_it_says_so() -> None:
    found = phases(())
    assert found.names == (WHOLE_TIME,)
    assert found.at(parse_edtf("../2016")) == found.at(parse_edtf("2016")) == 0


@given(st.dates(date(2014, 1, 1), date(2023, 1, 1)))
def test_the_last_phase_is_the_upkeep(day: date) -> None:
    when, found = When.on(day), phases(STONES)
    assert (found.at(when) == len(found.names) - 1) == is_upkeep(when, STONES)
