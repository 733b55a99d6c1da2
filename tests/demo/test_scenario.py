"""The made-up story: what it promises, and that it holds together."""

from collections import Counter
from datetime import date
from itertools import pairwise

import pytest

from journal.demo.life import HELPER, INSPECTOR, OWNER
from journal.demo.looks import LOOKS
from journal.demo.places import PLACES
from journal.demo.plan import plan
from journal.demo.scenario import SCENARIO
from journal.demo.story import AreaShot, AreaStory, ReceiptStory, lines_of, shares_of
from journal.domain.areas import DEFAULT_STAGES
from journal.domain.car import MilestoneKind
from journal.domain.cautions import caution
from journal.domain.photos import Role
from journal.domain.receipts import Category, Condition, Paper
from journal.domain.starters import starter
from journal.domain.when import When, parse_edtf

AREAS = {area.key: area for area in SCENARIO.areas}
ON_THE_ROAD = next(
    parse_edtf(m.when) for m in SCENARIO.milestones if m.kind is MilestoneKind.ON_THE_ROAD
)


def of_area(area: AreaStory) -> str:
    return area.key


def of_receipt(receipt: ReceiptStory) -> str:
    return f"{receipt.supplier} {receipt.day}"


def test_it_holds_what_it_promises() -> None:
    assert len(plan()) >= 240
    assert len(SCENARIO.areas) == 25
    assert len(SCENARIO.receipts) == 60
    papers = Counter(receipt.paper for receipt in SCENARIO.receipts)
    assert papers[Paper.LOST] == 3
    assert papers[Paper.NEVER] in (1, 2)


def test_two_people_worked_about_three_hundred_hours_and_a_third_was_paid() -> None:
    assert {day.person for day in SCENARIO.work} == {OWNER, HELPER, INSPECTOR}
    assert 285 <= sum(day.minutes for day in SCENARIO.work) / 60 <= 315


def test_it_spans_about_six_years_with_upkeep_at_the_end() -> None:
    days = [p.true.date() for p in plan() if p.true]
    assert 5.5 <= (max(days) - min(days)).days / 365.25 <= 6.5
    road = ON_THE_ROAD.latest.date()
    assert sum(receipt.day > road for receipt in SCENARIO.receipts) >= 5
    assert sum(day > road for day in days) >= 5


def test_the_milestones_come_in_order() -> None:
    starts = [parse_edtf(m.when).earliest for m in SCENARIO.milestones]
    assert starts == sorted(starts)
    kinds = {m.kind for m in SCENARIO.milestones}
    assert kinds == set(MilestoneKind)


@pytest.mark.parametrize("area", SCENARIO.areas, ids=of_area)
def test_an_area_lies_on_panels_of_the_cars_drawing(area: AreaStory) -> None:
    car = SCENARIO.car
    drawing = starter(car.body, car.wheelbase_mm, car.length_mm)
    labels = {panel.label for panel in drawing.panels}
    assert set(area.panels) <= labels
    assert area.mirrored == area.panels[0].endswith(", right")


@pytest.mark.parametrize("area", SCENARIO.areas, ids=of_area)
def test_an_area_goes_through_its_stages_in_order(area: AreaStory) -> None:
    order = [DEFAULT_STAGES.index(change.stage) for change in area.stages]
    assert order == sorted(set(order))
    assert order[0] == 0
    whens = [parse_edtf(change.when) for change in area.stages]
    assert all(one.earliest <= other.earliest for one, other in pairwise(whens))


@pytest.mark.parametrize("area", SCENARIO.areas, ids=of_area)
def test_an_areas_pictures_agree_with_its_stages(area: AreaStory) -> None:
    reached = {change.stage: parse_edtf(change.when) for change in area.stages}
    shown_at = {
        "cut": "cut back",
        "clamped": "new metal in",
        "welded": "welded",
        "dressed": "welded",
        "zinc": "welded",
        "red": "welded",
        "sealed": "welded",
    }
    days = [shot.day for shot in area.shots]
    assert days == sorted(days)
    for shot in area.shots:
        assert shot.look in LOOKS
        stage = shown_at.get(shot.look, "found")
        if stage in reached and shot.look != "bought":
            assert shot.day >= reached[stage].earliest.date(), shot
        if shot.role is Role.BEFORE and "cut back" in reached:
            assert shot.day <= reached["cut back"].latest.date(), shot
        if shot.role is Role.AFTER:
            assert shot.day >= reached["protected"].earliest.date(), shot


@pytest.mark.parametrize("area", SCENARIO.areas, ids=of_area)
def test_an_area_has_words_cautions_and_a_place(area: AreaStory) -> None:
    assert area.place in PLACES
    assert area.found
    assert area.done
    assert area.cautions
    for key in area.cautions:
        assert caution(key).text


def test_a_few_areas_lack_an_after_so_that_there_are_gaps() -> None:
    without = [a.key for a in SCENARIO.areas if all(s.role is not Role.AFTER for s in a.shots)]
    assert 2 <= len(without) <= 5


def test_most_areas_can_be_seen_before_during_and_after() -> None:
    whole = [a for a in SCENARIO.areas if {s.role for s in a.shots} == set(Role)]
    assert len(whole) >= 20


@pytest.mark.parametrize("receipt", SCENARIO.receipts, ids=of_receipt)
def test_a_receipt_is_sound(receipt: ReceiptStory) -> None:
    assert receipt.lines
    assert (receipt.form == "") == (receipt.paper is not Paper.HELD)
    assert bool(receipt.stands_in) == (receipt.paper is not Paper.HELD)
    assert (receipt.rate == 1) == (receipt.currency == SCENARIO.car.currency)
    for line in receipt.lines:
        assert line.amount > 0
        assert line.quantity > 0
        assert line.new_price is None or line.new_price > line.amount
        for key, weight in line.shares:
            assert key in AREAS
            assert weight > 0


def test_no_mark_of_a_table_is_left_in_the_words_of_a_day() -> None:
    assert not [day.note for day in SCENARIO.work if "|" in day.note]


def test_receipts_and_days_of_work_come_in_order() -> None:
    for days in ([r.day for r in SCENARIO.receipts], [d.day for d in SCENARIO.work]):
        assert days == sorted(days)


def test_some_receipts_are_in_other_currencies() -> None:
    assert {receipt.currency for receipt in SCENARIO.receipts} > {"EUR"}
    assert {line.condition for r in SCENARIO.receipts for line in r.lines} == set(Condition)
    assert len({line.category for r in SCENARIO.receipts for line in r.lines}) == len(Category)


def test_no_metal_is_paid_for_after_the_area_is_welded() -> None:
    for receipt in SCENARIO.receipts:
        for line in receipt.lines:
            if line.category is not Category.PANELS:
                continue
            for key, _ in line.shares:
                stages = {change.stage: change.when for change in AREAS[key].stages}
                welded = parse_edtf(stages["welded"]).latest.date()
                assert receipt.day <= welded, (receipt.supplier, receipt.day, key)


def test_hours_go_to_areas_while_they_were_worked_on() -> None:
    for day in SCENARIO.work:
        for key, weight in day.shares:
            assert weight > 0
            first, last = AREAS[key].stages[0], AREAS[key].stages[-1]
            assert parse_edtf(first.when).earliest.date() <= day.day, (day, key)
            assert day.day <= max(parse_edtf(last.when).latest.date(), date(2021, 9, 30))
        assert 0 < day.minutes <= 10 * 60


def test_every_area_has_hours_and_receipts() -> None:
    worked = {key for day in SCENARIO.work for key, _ in day.shares}
    paid = {key for r in SCENARIO.receipts for line in r.lines for key, _ in line.shares}
    assert worked == paid == set(AREAS)


def test_entries_come_in_order_and_name_what_there_is() -> None:
    whens = [parse_edtf(entry.when) for entry in SCENARIO.entries]
    assert all(isinstance(when, When) for when in whens)
    starts = [when.earliest for when in whens]
    assert starts == sorted(starts)
    assert {entry.area for entry in SCENARIO.entries} - {""} <= set(AREAS)


def test_shares_and_lines_are_read_as_written() -> None:
    assert shares_of("a:2 b") == (("a", 2), ("b", 1))
    (line,) = lines_of("2.5 | Sheet | 12.40 | metal | used | new=30.00 | a:2 b")
    assert (line.amount, line.new_price, line.condition) == (1240, 3000, Condition.USED)
    assert line.shares == (("a", 2), ("b", 1))


def test_looks_tell_the_roles_apart() -> None:
    for area in SCENARIO.areas:
        for shot in area.shots:
            assert isinstance(shot, AreaShot)
            if shot.look in ("clamped", "tacked", "welded", "dressed"):
                assert shot.role is Role.DURING
            if shot.look in ("painted", "satin", "chipped", "waxed"):
                assert shot.role is Role.AFTER
