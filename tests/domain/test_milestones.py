from datetime import date, datetime

from journal.domain.car import Milestone, MilestoneKind
from journal.domain.ids import MilestoneId
from journal.domain.milestones import is_upkeep, on_the_road
from journal.domain.when import When


def milestone(when: When, kind: MilestoneKind = MilestoneKind.ON_THE_ROAD) -> Milestone:
    return Milestone(MilestoneId(1), kind, when)


ROAD = (milestone(When.on(date(2021, 6, 12))),)


def test_the_day_it_went_on_the_road_is_still_restoration() -> None:
    assert not is_upkeep(When.on(date(2021, 6, 12)), ROAD)
    assert not is_upkeep(When.at(datetime(2021, 6, 12, 23, 59)), ROAD)
    assert is_upkeep(When.at(datetime(2021, 6, 13)), ROAD)


def test_nothing_is_upkeep_while_the_car_is_off_the_road() -> None:
    painted = milestone(When.on(date(2015, 1, 1)), MilestoneKind.PAINTED)
    assert not is_upkeep(When.on(date(2030, 1, 1)), (painted,))
    assert on_the_road((painted,)) is None


def test_an_uncertain_date_counts_by_its_earliest_day() -> None:
    year = When(datetime(2021, 1, 1), datetime(2021, 12, 31, 23, 59, 59), "2021")
    july = When(datetime(2021, 7, 1), datetime(2021, 7, 31, 23, 59, 59), "2021-07")
    assert not is_upkeep(year, ROAD)
    assert is_upkeep(july, ROAD)


def test_an_uncertain_milestone_counts_by_its_earliest_day() -> None:
    june = milestone(When(datetime(2021, 6, 1), datetime(2021, 6, 30, 23, 59, 59), "2021-06"))
    assert is_upkeep(When.on(date(2021, 6, 2)), (june,))
    assert not is_upkeep(When.on(date(2021, 6, 1)), (june,))


def test_the_first_time_on_the_road_ends_the_restoration() -> None:
    again = (milestone(When.on(date(2024, 5, 1))), *ROAD)
    assert on_the_road(again) == date(2021, 6, 12)


def test_a_date_with_an_open_start_is_restoration() -> None:
    assert not is_upkeep(When(datetime.min, datetime(2022, 1, 1), "../2022-01-01"), ROAD)


def test_a_milestone_with_an_open_start_counts_by_its_end() -> None:
    by_2020 = milestone(When(datetime.min, datetime(2020, 12, 31, 23, 59, 59), "../2020"))
    assert on_the_road((by_2020,)) == date(2020, 12, 31)
    unknown = milestone(When(datetime.min, datetime.max, "../.."))
    assert on_the_road((unknown,)) is None
