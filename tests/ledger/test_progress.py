from dataclasses import replace
from datetime import date, timedelta

import pytest

from journal.domain.areas import Area, StageChange
from journal.domain.costs import CostRow, CostTable
from journal.domain.findings import Finding, Severity, Three
from journal.domain.ids import AreaId, FindingId, StageChangeId, SurveyId, WorkId
from journal.domain.when import When
from journal.domain.work import Work
from journal.ledger.progress import outcome, pace

TODAY = date(2020, 6, 30)


def area(number: int, stage: str) -> Area:
    change = StageChange(StageChangeId(number), AreaId(number), stage, When.on(date(2020, 1, 1)))
    return Area(AreaId(number), f"Area {number}", (), "", "", (), (change,))


def found(number: int, area_id: int | None) -> Finding:
    return Finding(
        FindingId(number), SurveyId(1), "rot", Severity.SCABBY,
        Three(50_00, 100_00, 150_00), Three(300, 600, 900),
        area_id=None if area_id is None else AreaId(area_id), rank=number,
    )  # fmt: skip


def table(*rows: tuple[int, int, int]) -> CostTable:
    made = tuple(CostRow(str(key), "", money, 0, minutes, 0) for key, money, minutes in rows)
    return CostTable("area", "EUR", made, CostRow("", "", 0, 0, 0, 0))


def worked(days_ago: int, minutes: int) -> Work:
    return Work(WorkId(1), When.on(TODAY - timedelta(days=days_ago)), minutes, "Runa", "", ())


AREAS = (*(area(n, "finished") for n in (1, 2, 3)), area(4, "welded"), area(5, "found"))
COSTS = table((1, 150_00, 1200), (2, 50_00, 600), (3, 250_00, 1800), (4, 30_00, 300))


def test_what_is_to_come_is_judged_by_what_finished_areas_came_to() -> None:
    found_ones = [found(n, n) for n in range(1, 6)] + [found(6, None)]
    held = outcome(found_ones, AREAS, COSTS, [worked(3, 1200)], "finished", TODAY)
    assert held.ratio is not None
    # Expected 100.00 of each of three, came to 450.00: half as much again.
    assert (held.ratio.ratio, held.ratio.count) == (1.5, 3)
    assert held.to_come == 150_00 - 30_00 + 150_00
    assert held.to_come_minutes == (2 * 600 - 300) + 2 * 600
    assert (held.loose, held.loose_money) == (1, 100_00)
    assert held.finished == 3


def test_with_fewer_than_three_finished_areas_nothing_is_said() -> None:
    two = (area(1, "finished"), area(2, "finished"), *AREAS[2:])
    two = (two[0], two[1], replace(two[2], changes=()), *two[3:])
    held = outcome(
        [found(n, n) for n in range(1, 6)], two, COSTS, [worked(3, 60)], "finished", TODAY
    )
    assert (held.ratio, held.ratio_minutes, held.to_come, held.pace) == (None, None, None, None)


def test_an_area_dearer_than_foreseen_needs_no_less_than_nothing() -> None:
    dear = table((1, 100_00, 600), (2, 100_00, 600), (3, 100_00, 600), (4, 900_00, 6000))
    held = outcome([found(n, n) for n in range(1, 5)], AREAS, dear, [], "finished", TODAY)
    assert held.to_come == held.to_come_minutes == 0


def test_the_pace_is_a_range_of_the_last_three_months() -> None:
    left = pace([worked(1, 600), worked(40, 1200), worked(70, 300), worked(120, 9999)], 5600, TODAY)
    assert left is not None
    assert left.slowest == pytest.approx(300 * 7 / 30)
    assert left.fastest == pytest.approx(1200 * 7 / 30)
    assert left.weeks_least == pytest.approx(20)
    assert left.weeks_most == pytest.approx(80)


def test_a_month_without_hours_leaves_the_end_open_and_none_lately_says_nothing() -> None:
    open_end = pace([worked(1, 600)], 600, TODAY)
    assert open_end is not None
    assert open_end.weeks_most is None
    assert pace([worked(91, 600), worked(-1, 600)], 600, TODAY) is None
