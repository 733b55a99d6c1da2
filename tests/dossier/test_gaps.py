from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from journal.domain.car import Car
from journal.domain.gaps import GapKind, Reader
from journal.domain.ids import WantedChangeId, WantedId
from journal.domain.photos import Role
from journal.domain.receipts import Category, Condition, Line, Paper
from journal.domain.record import Record
from journal.domain.wanted import Wanted, WantedChange, WantedState
from journal.domain.when import parse
from journal.dossier.gaps import WEIGHTS, gaps
from tests.dossier.records import (
    area,
    chosen,
    finished_record,
    photo,
    pin,
    receipt,
    record,
    work,
)


def kinds(rec: Record) -> list[GapKind]:
    return [gap.kind for gap in gaps(rec)]


def test_a_full_record_has_no_gaps() -> None:
    assert gaps(finished_record()) == ()


def test_an_empty_record_lacks_only_what_is_worth_asking_for() -> None:
    bare = record(car=Car("The Rook"), milestones=())
    assert kinds(bare) == [GapKind.NO_ACQUIRED, GapKind.CAR_IDENTITY, GapKind.NO_ON_THE_ROAD]


def test_a_part_ordered_long_ago_is_asked_after_while_it_can_still_come() -> None:
    def ordered(number: int, day: str, *more: tuple[WantedState, str]) -> Wanted:
        states = ((WantedState.ORDERED, day), *more)
        changes = tuple(
            WantedChange(WantedChangeId(n), s, parse(d)) for n, (s, d) in enumerate(states)
        )
        return Wanted(WantedId(number), f"Part {number}", changes=changes)

    parts = (
        ordered(1, "2016-01-05"),
        ordered(2, "2016-01-05", (WantedState.ARRIVED, "2016-01-20")),
        ordered(3, "2016-02"),
    )
    full = replace(finished_record(), wanted=parts)
    assert gaps(full) == ()
    (gap,) = gaps(full, today=date(2016, 5, 29))  # 90 days after the last of February
    assert (gap.target_kind, gap.target_id) == ("wanted", 1)
    assert gap.title == "Part 1: ordered 5 January 2016, not arrived"
    assert len(gaps(full, today=date(2016, 5, 30))) == 2


def test_identity_names_every_field_that_is_empty() -> None:
    (gap,) = gaps(record(car=Car("The Rook", maker="Halden", year="1971")))
    assert gap.title == "Not filled in: the car’s model and chassis number"
    assert gap.target_kind == "car"


@pytest.mark.parametrize(
    ("role", "kind"),
    [
        (Role.BEFORE, GapKind.AREA_NO_BEFORE),
        (Role.DURING, GapKind.AREA_NO_DURING),
        (Role.AFTER, GapKind.AREA_NO_AFTER),
    ],
)
def test_a_finished_area_needs_each_photo(role: Role, kind: GapKind) -> None:
    full = finished_record()
    without = replace(
        full, area_photos=tuple(row for row in full.area_photos if row.role is not role)
    )
    (gap,) = gaps(without)
    assert (gap.kind, gap.target_kind, gap.target_id) == (kind, "area", 1)
    assert gap.title.startswith("Area 1: ")


def test_an_area_just_found_needs_no_photo_of_work_not_done() -> None:
    found = record(areas=(area(1, ("found", "2016-02"), done=""),))
    assert kinds(found) == [GapKind.AREA_NO_BEFORE, GapKind.AREA_NOT_FINISHED]


def test_an_area_not_finished_says_where_it_stands() -> None:
    half = record(
        areas=(area(1, ("found", "2016-02"), ("welded", "2016-03")),),
        photos=(photo(1), photo(2)),
        pins=(pin(1), pin(2, 2)),
        area_photos=(chosen(1, 1, Role.BEFORE), chosen(1, 2, Role.DURING)),
        work=(work(1, 60, 1),),
    )
    (gap,) = gaps(half)
    assert gap.kind is GapKind.AREA_NOT_FINISHED
    assert gap.detail == "The last stage recorded is “welded”, March 2016."
    assert gap.claim == "", "finishing it makes no claim on what was done before stronger"


def test_words_on_what_was_found_are_for_the_first_claim_and_on_what_was_done_for_none() -> None:
    at = ("found", "2016-02"), ("welded", "2016-03")
    for found, done, key in (("", "Let in.", "found"), ("Holes.", "", "")):
        made = gaps(record(areas=(area(1, *at, found=found, done=done),)))
        (gap,) = (gap for gap in made if gap.kind is GapKind.AREA_NOTHING_SAID)
        assert (gap.claim_key, bool(gap.claim)) == (key, bool(key))


def test_an_area_of_a_journal_with_its_own_stages_is_finished_by_its_last_one() -> None:
    own = Car("R", maker="H", model="R", year="1", chassis_number="1", stages=("seen", "cured"))
    cured = record(car=own, areas=(area(1, ("seen", "2016"), ("cured", "2017")),))
    assert GapKind.AREA_NOT_FINISHED not in kinds(cured)
    assert GapKind.AREA_NO_AFTER in kinds(cured)


def test_an_area_without_stage_words_panel_or_hours() -> None:
    bare = record(areas=(area(1, found="", done="", panel_ids=()),))
    assert set(kinds(bare)) == {
        GapKind.AREA_NO_BEFORE,
        GapKind.AREA_UNDATED,
        GapKind.AREA_NOTHING_SAID,
        GapKind.AREA_NO_PANEL,
    }
    worked = record(areas=(area(1, ("welded", "2016")),))
    assert GapKind.AREA_NO_HOURS in kinds(worked)


@pytest.mark.parametrize(
    ("paper", "papers", "kind"),
    [
        (Paper.LOST, (), GapKind.RECEIPT_LOST),
        (Paper.NEVER, (), GapKind.RECEIPT_NEVER),
        (Paper.HELD, (), GapKind.RECEIPT_NO_SCAN),
    ],
)
def test_a_receipt_without_its_paper(paper: Paper, papers: tuple[()], kind: GapKind) -> None:
    rec = record(
        receipts=(receipt(1, 500, 1, paper=paper, papers=papers, stands_in="bank line"),),
    )
    (gap,) = gaps(rec)
    assert (gap.kind, gap.target_kind, gap.target_id) == (kind, "receipt", 1)
    assert ("bank line" in gap.detail) == (paper is not Paper.HELD)


def test_a_printed_total_that_differs_from_its_lines() -> None:
    (gap,) = gaps(record(receipts=(receipt(1, 1250, 1, printed_total=1300),)))
    assert gap.kind is GapKind.RECEIPT_TOTAL
    assert gap.detail == "The paper says €13.00, its lines here make €12.50."


def test_an_unknown_printed_total_differs_from_nothing() -> None:
    assert gaps(record(receipts=(receipt(1, 1250, 1, printed_total=None),))) == ()


def test_only_restoration_lines_of_repair_areas_ask_to_be_shared() -> None:
    unshared = receipt(1, 900)
    assert kinds(record(receipts=(unshared,))) == [GapKind.RECEIPT_UNSHARED]
    from journal.domain.when import parse

    after = replace(unshared, when=parse("2020-01-01"))
    assert kinds(record(receipts=(after,))) == []
    tool = Line(unshared.lines[0].id, "Welder", Decimal(1), 900, Category.TOOLS, Condition.NEW)
    assert kinds(record(receipts=(replace(unshared, lines=(tool,)),))) == []


def test_a_weld_that_no_photo_shows_is_a_gap_of_its_own_and_names_its_claim() -> None:
    full = finished_record()
    photos = (full.photos[0], replace(full.photos[1], when=parse("2016-02-01")), full.photos[2])
    cut_back = area(
        1, ("found", "2016-01-10"), ("cut back", "2016-02-01"), ("welded", "2016-03-12"),
        ("finished", "2016-05"),
    )  # fmt: skip
    found = {gap.kind: gap for gap in gaps(replace(full, photos=photos, areas=(cut_back,)))}
    gap = found[GapKind.WELD_UNSEEN]
    assert (gap.target_kind, gap.target_id, gap.claim_key) == ("area", 1, "welded")
    assert gap.claim == "Welded, 12 March 2016."


def test_a_stage_dated_to_the_year_is_a_gap() -> None:
    vague = area(1, ("found", "2015"), ("welded", "2016-03-12"), ("finished", "2016-05"))
    (gap,) = gaps(replace(finished_record(), areas=(vague,)))
    assert gap.kind is GapKind.STAGE_VAGUE
    assert gap.claim_key == "found"


def test_a_buyer_asks_first_for_what_is_hidden_and_a_valuer_for_which_car_it_is() -> None:
    rec = replace(
        finished_record(),
        car=Car("R"),
        area_photos=tuple(
            row for row in finished_record().area_photos if row.role is not Role.DURING
        ),
        receipts=(receipt(1, 500, 1, paper=Paper.LOST),),
    )
    assert gaps(rec, Reader.BUYER)[0].kind is GapKind.AREA_NO_DURING
    assert gaps(rec, Reader.VALUER)[0].kind is GapKind.CAR_IDENTITY
    plain = {gap.kind for gap in gaps(rec)}
    assert plain <= {gap.kind for gap in gaps(rec, Reader.VALUER)}
    assert all(gap.claim for gap in gaps(rec) if gap.target_kind == "area")


def test_every_kind_has_a_weight() -> None:
    assert set(WEIGHTS) == set(GapKind)
    assert all(0 <= weight <= 100 for weight in WEIGHTS.values())


def test_thousands_of_photos_without_a_place_are_one_gap() -> None:
    many = tuple(photo(n) for n in range(1, 3001))
    unplaced = [g for g in gaps(record(photos=many)) if g.kind is GapKind.PHOTOS_UNPLACED]
    assert len(unplaced) == 1
    assert unplaced[0].title == "3,000 photos have no place on the car"
    assert unplaced[0].target_kind == "photos"
    assert len(unplaced[0].photo_ids) == 3000


def test_a_single_photo_is_named_by_its_number() -> None:
    rec = record(photos=(photo(7, None),), pins=(pin(7), pin(7, 2)))
    (gap,) = gaps(rec)
    assert (gap.kind, gap.target_kind, gap.target_id) == (GapKind.PHOTOS_UNDATED, "photo", 7)
    assert gap.title == "1 photo has no date"


@pytest.mark.parametrize(
    ("when", "vague"),
    [("2016", True), ("201X", True), ("2015/2017", True), ("../2016", True), ("2016-21", False),
     ("2016-03", False), ("2016-01/2016-03", False)],
)  # fmt: skip
def test_a_date_of_a_year_or_worse_is_a_gap(when: str, vague: bool) -> None:
    rec = record(photos=(photo(1, when),), pins=(pin(1), pin(1, 2)))
    assert (GapKind.PHOTOS_VAGUE in kinds(rec)) == vague


def test_a_damaged_original_comes_before_everything_else() -> None:
    broken = photo(1, damage="ends after half of the picture")
    rec = record(car=Car("R"), milestones=(), photos=(broken,), areas=(area(1),))
    assert gaps(rec)[0].kind is GapKind.PHOTO_DAMAGED


def test_panels_that_no_photo_shows_are_one_gap() -> None:
    rec = record(photos=(photo(1),), pins=(pin(1),))
    (gap,) = gaps(rec)
    assert (gap.kind, gap.target_kind, gap.target_id) == (GapKind.PANELS_NO_PHOTO, "panel", 2)
    assert gap.detail == "Roof."


def test_every_kind_has_a_weight_and_gaps_fall_in_weight() -> None:
    assert set(WEIGHTS) == set(GapKind)
    bare = record(
        car=Car("R"), milestones=(), photos=(photo(1, None),), areas=(area(1),),
        receipts=(receipt(1, 5, paper=Paper.LOST),),
    )  # fmt: skip
    weights = [gap.weight for gap in gaps(bare)]
    assert weights == sorted(weights, reverse=True)
