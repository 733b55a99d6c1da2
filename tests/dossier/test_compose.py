from dataclasses import replace
from datetime import date

import pytest

from journal.domain.areas import Area, Entry
from journal.domain.car import Car, MilestoneKind
from journal.domain.costs import CostRow, MissingRate
from journal.domain.cuts import Cut, Part, usual
from journal.domain.ids import AreaId, CameraId, EntryId, PinId, ReceiptId
from journal.domain.photos import Camera, Kind, Role
from journal.domain.receipts import Paper
from journal.domain.record import Record
from journal.domain.when import parse
from journal.dossier.compose import compose
from journal.dossier.cover import cover_photo, period, subtitle
from journal.dossier.document import Dossier
from journal.dossier.gaps import gaps
from tests.dossier import records, showcase
from tests.dossier.records import area, chosen, finished_record, photo, pin, record

MADE_ON = date(2026, 11, 25)


def composed(rec: Record, **changes: object) -> Dossier:
    arguments = {
        "summary": records.summary(),
        "tables": records.tables(),
        "gaps": gaps(rec),
    } | changes
    return compose(rec, made_on=MADE_ON, program_version="0.1.0", **arguments)  # type: ignore[arg-type]


def all_text(value: object) -> str:
    return repr(value)


def test_the_same_record_makes_the_same_dossier() -> None:
    rec = showcase.showcase(6, 3)
    summary, tables = showcase.costs(rec)
    first = compose(rec, summary, tables, gaps(rec), MADE_ON, "0.1.0")
    assert first == compose(rec, summary, tables, gaps(rec), MADE_ON, "0.1.0")


def test_nothing_that_lacks_is_withheld() -> None:
    rec = record(
        car=Car("R"), areas=(area(1),), receipts=(records.receipt(1, 5, 1, paper=Paper.LOST),)
    )
    said = [item.label for lack in composed(rec).lacks for item in lack.items]
    assert len(said) == len(gaps(rec))
    assert all(any(gap.title in label for label in said) for gap in gaps(rec))


@pytest.mark.parametrize(("body", "said"), [("blank", False), ("saloon", True)])
def test_a_blank_sheet_is_no_body(body: str, said: bool) -> None:
    rows = composed(record(car=Car("Rook", body=body, colour="Red"))).identity
    assert [row.label for row in rows] == (["Body", "Colour"] if said else ["Colour"])


def test_a_lack_of_a_receipt_has_its_number_in_the_document() -> None:
    rec = record(receipts=(records.receipt(7, 5, 1, paper=Paper.LOST),))
    (lack,) = composed(rec).lacks
    assert lack.items[0].label.startswith("R1, Ostwell Steel")


def test_the_cover_shows_what_is_finished() -> None:
    assert cover_photo(finished_record()) == finished_record().photos[2]


def test_the_cover_prefers_a_photo_of_more_of_the_car() -> None:
    rec = replace(
        finished_record(),
        photos=(*finished_record().photos, photo(4, "2019-07-01"), photo(5, "2019-08-01")),
        pins=(pin(4, 1), replace(pin(4, 2), id=PinId(50)), pin(5, 1)),
    )
    found = cover_photo(rec)
    assert found is not None
    assert found.id == 4


def test_the_cover_prefers_the_whole_car_on_its_day_to_any_detail() -> None:
    rec = replace(
        finished_record(),
        photos=(
            *finished_record().photos,
            photo(4, "2019-06-01T11:00:00", caption="On the road."),
            photo(5, "2019-06-01T11:05:00"),
            photo(6, "2021-08-01", caption="A detail"),
        ),
        pins=(pin(6, 1),),
    )
    found = cover_photo(rec)
    assert found is not None
    assert found.id == 4


def test_each_caution_is_said_once_with_its_repair_areas() -> None:
    rec = record(
        areas=(area(1, cautions=("welding", "lead")), area(2, cautions=("welding",)), area(3)),
    )
    made = composed(rec)
    assert [(c.title[:4], c.areas) for c in made.cautions] == [("Weld", (1, 2)), ("Lead", (1,))]


def test_the_cover_shows_no_damaged_photo_and_no_video() -> None:
    rec = record(photos=(photo(1, damage="ends early"), photo(2, kind=Kind.VIDEO)))
    assert cover_photo(rec) is None


def test_the_subtitle_does_not_say_the_title_again() -> None:
    assert subtitle(Car("Halden Rook", maker="Halden", model="Rook", year="1971")) == "1971"
    assert subtitle(Car("Tilly", maker="Halden", year="1971")) == "Halden · 1971"
    assert subtitle(Car("Tilly")) == ""


def test_the_period_spans_what_is_dated() -> None:
    assert period(finished_record()) == "2015 to 2019"
    assert period(record(milestones=())) == ""
    assert period(record(milestones=(), photos=(photo(1, "2016"),))) == "2016"


def test_an_open_start_does_not_reach_back_for_ever() -> None:
    opened = records.milestone(MilestoneKind.ACQUIRED, "../2016")
    assert period(record(milestones=(opened,))) == "2016"


def test_a_panel_is_marked_by_its_least_advanced_area() -> None:
    rec = record(
        areas=(area(1, ("found", "2015"), ("finished", "2016")), area(2, ("welded", "2017")))
    )
    (mark,) = composed(rec).marks
    assert (mark.stage, mark.areas) == ("welded", (1, 2))


def test_an_area_without_a_stage_is_the_least_advanced() -> None:
    rec = record(areas=(area(1, ("finished", "2016")), area(2)))
    (mark,) = composed(rec).marks
    assert mark.stage == ""


def test_money_and_hours_stay_two_figures() -> None:
    costs = composed(finished_record()).costs
    assert [(f.label, f.value) for f in costs.figures] == [
        ("Restoration", "€120.00"),
        ("All money, proven by paper", "€120.00"),
        ("Hours worked", "6 h 30 min"),
    ]
    assert "never added up" in costs.remarks[0]


def test_unproven_money_upkeep_and_savings_are_said() -> None:
    summary = records.summary(
        10000, upkeep=2000, unproven=500, saved_lines=2, saved_on=300, saved_against_new=900,
        differing=(ReceiptId(1),), difference=-50,
        missing_rates=(MissingRate("USD", 700, (ReceiptId(1),)),),
    )  # fmt: skip
    costs = composed(finished_record(), summary=summary).costs
    figures = {f.label: f.value for f in costs.figures}
    assert figures["Upkeep since on the road"] == "€20.00"
    assert figures["All money, proven by paper"] == "€115.00"
    assert figures["All money, without paper"] == "€5.00"
    remarks = " ".join(costs.remarks)
    assert "2 parts bought used, old stock or reconditioned cost €3.00, €9.00 less" in remarks
    assert "The printed total of R1 differs" in remarks
    assert "$7.00 from 1 receipt is in no sum here: no rate from USD was given." in remarks


def test_tables_show_only_columns_that_hold_something() -> None:
    category, by_area = composed(finished_record()).costs.grids
    assert category.columns == ("Category", "Restoration")
    assert category.rows == (("Panels and metal", "€120.00"),)
    assert by_area.columns == ("Repair area", "Restoration", "Hours")
    assert by_area.rows == (("1  Area 1", "€120.00", "6 h 30 min"),)
    assert by_area.total == ("Total", "€120.00", "6 h 30 min")


def test_the_area_table_is_in_the_order_of_the_pages() -> None:
    rec = record(areas=(area(1, ("found", "2018")), area(2, ("found", "2016"))))
    table = records.table(
        "area",
        CostRow("not shared", "not shared", 5, 0, 0, 0),
        CostRow("1", "Area 1", 900, 0, 0, 0),
        CostRow("2", "Area 2", 100, 0, 0, 0),
    )
    (grid,) = composed(rec, tables=(table,)).costs.grids
    assert [row[0] for row in grid.rows] == ["1  Area 2", "2  Area 1", "Not shared"]


def test_every_receipt_is_listed_with_its_printed_total() -> None:
    rec = record(receipts=(records.receipt(1, 100, printed_total=150, papers=()),))
    (paid,) = composed(rec).costs.receipts
    assert (paid.number, paid.total, paid.paper) == (1, "€1.50", "paper held, no scan")


def test_a_corrected_clock_and_the_owners_dates_are_said() -> None:
    camera = Camera(CameraId(1), "Orrin", "P2", "", -3725)
    rec = replace(
        finished_record(),
        cameras=(camera,),
        photos=tuple(replace(p, camera_id=CameraId(1)) for p in finished_record().photos),
    )
    corrected = next(p for p in composed(rec).method if p.heading == "What was corrected")
    assert corrected.paragraphs == (
        (
            "The clock of Orrin P2 was 1 h 2 min 5 s fast; the dates of its 3 photos are put right "
            "by that."
        ),
        "The owner gave the date of 1 photo by hand.",
    )


def test_nothing_in_a_dossier_calls_the_car_safe() -> None:
    said = all_text(composed(finished_record())).casefold()
    assert "never passes the car, a weld or a repair as safe" in said
    assert "is safe" not in said
    assert "roadworthy" not in said


def test_a_photo_of_the_cover_and_of_an_area_is_shown_once() -> None:
    made = composed(finished_record())
    assert [row.number for row in made.shown] == [1, 2, 3]


def test_areas_outside_the_stage_list_are_not_taken_for_finished() -> None:
    own = replace(finished_record().car, stages=("seen", "done"))
    made = composed(replace(finished_record(), car=own))
    assert made.areas[0].standing == "Not finished: finished, May 2016"
    assert made.figures[0].value == "0 of 1"


def test_a_milestone_of_no_kind_is_called_by_its_note() -> None:
    other = replace(records.milestone(MilestoneKind.OTHER, "2017"), note="engineer's first visit")
    bare = records.milestone(MilestoneKind.OTHER, "2018")
    made = composed(record(milestones=(bare, other))).milestones
    assert [(m.date, m.title, m.text) for m in made] == [
        ("2017", "Engineer's first visit", ""),
        ("2018", "Other", ""),
    ]


def test_notes_on_no_repair_area_are_told_too() -> None:
    rec = record(
        areas=(area(1),),
        entries=(
            Entry(EntryId(1), parse("2017"), " on the roof ", None, records.ROOF.id),
            Entry(EntryId(2), parse("2016"), "on nothing", None, None),
            Entry(EntryId(3), parse("2016"), "on the area", AreaId(1), None),
        ),
    )
    assert [(n.date, n.title, n.text) for n in composed(rec).notes] == [
        ("2016", "", "on nothing"),
        ("2017", "Roof", "on the roof"),
    ]


def test_an_area_of_the_record_is_never_left_out() -> None:
    many = tuple(area(n) for n in range(1, 40))
    made = composed(record(areas=many, area_photos=(chosen(1, 1, Role.AFTER),)))
    assert sorted(a.area_id for a in made.areas) == sorted(a.id for a in many)
    assert all(isinstance(a, Area) for a in many)


def test_a_reader_is_told_what_is_only_untidy_in_one() -> None:
    unshared = tuple(records.receipt(n, 900) for n in range(1, 4))
    rec = record(receipts=unshared, areas=(area(1),))
    own = composed(rec, choices=usual(Cut.OWN)).lacks
    bought = composed(rec, choices=usual(Cut.BUYER)).lacks
    assert "Receipts shared to no repair area" in [lack.heading for lack in own]
    assert bought[-1].heading == "Smaller things"
    assert bought[-1].items[0].label == "3 receipts shared to no repair area"


def test_the_car_as_it_was_stands_before_the_car_as_it_is() -> None:
    rec = record(
        areas=(area(1, ("found", "2016-01"), ("welded", "2017"), ("finished", "2018")),),
        milestones=(records.milestone(MilestoneKind.STRIPPED, "2016-05"),),
    )
    made = composed(rec)
    assert made.was is not None
    assert made.was.heading == "May 2016, when the car was stripped"
    assert [mark.stage for mark in made.was.marks] == ["found"]
    assert [mark.stage for mark in made.marks] == ["finished"]
    still = record(areas=(area(1, ("found", "2016-01")),))
    assert composed(still).was is None


def test_only_the_areas_chosen_are_told() -> None:
    rec = record(areas=(area(1, ("found", "2015")), area(2, ("found", "2016"))))
    made = composed(rec, choices=replace(usual(Cut.OWN), areas=frozenset({AreaId(2)})))
    assert [story.number for story in made.areas] == [2]


def test_few_photos_of_an_area_are_those_that_tell_the_most() -> None:
    photos = tuple(photo(n, f"2016-0{n}-10T10:00:00") for n in range(1, 8))
    roles = (Role.BEFORE, *[Role.DURING] * 5, Role.AFTER)
    stages = (
        ("found", "2016-01"), ("cut back", "2016-02"), ("welded", "2016-05-01"),
        ("finished", "2016-07"),
    )  # fmt: skip
    rec = record(
        areas=(area(1, *stages),),
        photos=photos,
        area_photos=tuple(chosen(1, n, role, n) for n, role in enumerate(roles, 1)),
    )
    choices = replace(usual(Cut.OWN), photos=4).with_part(Part.PAIRS, wanted=False)
    (story,) = composed(rec, choices=choices).areas
    # Before, the first of the work and after; then one for the claim that had none: the weld.
    assert [row.photo.id for row in story.shown] == [1, 2, 5, 7]
