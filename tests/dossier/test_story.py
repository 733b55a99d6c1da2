from dataclasses import replace

import pytest

from journal.domain.areas import Area, Entry, StageChange
from journal.domain.ids import AreaId, EntryId, PhotoId, StageChangeId
from journal.domain.photos import Basis, Role
from journal.domain.receipts import Paper
from journal.domain.when import parse
from journal.dossier.story import in_order_of_time
from tests.dossier import records
from tests.dossier.records import area, chosen, finished_record, photo, record, told, work


def test_a_finished_area_tells_all_it_has() -> None:
    (story,) = told(finished_record())
    assert story.name == "Area 1"
    assert story.panels == "Sill, left"
    assert story.standing == "Finished, May 2016"
    assert (story.found, story.done) == ("Rusted through.", "Cut out and replaced.")
    assert [(s.date, s.stage) for s in story.steps] == [
        ("10 January 2016", "Found"),
        ("12 March 2016", "Welded"),
        ("May 2016", "Finished"),
    ]
    assert [row.number for row in story.shown] == [1, 2, 3]
    assert [(f.value, f.label) for f in story.figures] == [
        ("€120.00", "spent"),
        ("6 h 30 min", "worked"),
    ]
    assert story.lacking == ()
    assert story.evidence == (
        "3 photos: 1 from before, 1 of the work and 1 from after.",
        "Dates: 1 by the owner’s word and 2 by the camera’s clock.",
        "1 receipt; its paper is held.",
        "Work by Ada and Ben on 2 days.",
    )


def test_only_dates_that_do_not_rest_on_the_owner_stand_behind_a_stage() -> None:
    (story,) = told(finished_record())
    assert [step.behind for step in story.steps] == [
        "owner’s record; P1 of that time",
        "owner’s record; P2 of that time",
        "owner’s record alone",
    ]


def test_a_vague_photo_does_not_stand_behind_a_sure_day() -> None:
    rec = finished_record()
    vague = replace(rec.photos[0], when=parse("2016"))
    (story,) = told(replace(rec, photos=(vague, *rec.photos[1:])))
    assert story.steps[0].behind == "owner’s record alone"


def test_what_is_not_evidenced_is_said() -> None:
    (story,) = told(record(areas=(area(1, ("found", "2016")),)))
    assert story.lacking == (
        "No photo shows it.",
        "No receipt is shared to it.",
        "No hours are recorded for it.",
    )
    assert story.evidence == ()
    assert story.standing == "Not finished: found, 2016"


def test_an_area_without_anything_still_has_a_story() -> None:
    bare = Area(AreaId(1), " ", (), "", "", ())
    (story,) = told(record(areas=(bare,)))
    assert story.name == "Unnamed repair area"
    assert story.panels == "on no panel of the drawing"
    assert story.standing == "No stage is recorded"
    assert (story.found, story.steps, story.cautions) == ("", (), ())


def test_areas_come_in_order_of_time_and_undated_ones_last() -> None:
    rec = record(
        areas=(area(1), area(2, ("found", "2018")), area(3, ("found", "2016-05")), area(4)),
        photos=(photo(1, "2017-01-01"),),
        area_photos=(chosen(4, 1, Role.BEFORE),),
    )
    assert [a.id for a in in_order_of_time(rec)] == [3, 4, 2, 1]


def test_a_photo_in_two_areas_keeps_its_number() -> None:
    rec = record(
        areas=(area(1, ("found", "2016")), area(2, ("found", "2017"))),
        photos=(photo(1), photo(2)),
        area_photos=(
            chosen(1, 1, Role.BEFORE),
            chosen(2, 2, Role.BEFORE),
            chosen(2, 1, Role.DURING),
        ),
    )
    first, second = told(rec)
    assert [row.number for row in first.shown] == [1]
    assert [row.number for row in second.shown] == [2, 1]


def test_the_cover_photo_is_number_one_everywhere() -> None:
    rec = finished_record()
    (story,) = told(rec, PhotoId(3))
    assert [row.number for row in story.shown] == [2, 3, 1]


def test_photos_stand_by_role_and_then_in_the_owners_order() -> None:
    rec = record(
        areas=(area(1),),
        photos=tuple(photo(n) for n in range(1, 5)),
        area_photos=(
            chosen(1, 1, Role.AFTER),
            chosen(1, 2, Role.DURING, 2),
            chosen(1, 3, Role.DURING, 1),
            chosen(1, 4, Role.BEFORE),
        ),
    )
    (story,) = told(rec)
    assert [row.photo.id for row in story.shown] == [4, 3, 2, 1]


def test_a_photo_removed_from_the_record_is_left_out() -> None:
    rec = replace(finished_record(), photos=finished_record().photos[1:])
    (story,) = told(rec)
    assert [row.photo.id for row in story.shown] == [2, 3]


def test_a_photo_without_caption_or_date_still_has_words_in_its_place() -> None:
    rec = record(
        areas=(area(1),),
        photos=(photo(1, None),),
        area_photos=(chosen(1, 1, Role.BEFORE),),
    )
    (story,) = told(rec)
    (shown,) = story.shown
    assert shown.alt == "Before: Photo of Area 1. no date."
    assert (shown.date, shown.known) == ("no date", "not known")


@pytest.mark.parametrize("basis", list(Basis))
def test_every_basis_has_words(basis: Basis) -> None:
    rec = replace(finished_record(), photos=tuple(
        replace(p, basis=basis) for p in finished_record().photos
    ))  # fmt: skip
    (story,) = told(rec)
    assert story.shown[0].known


def test_work_shared_with_other_areas_is_said_to_be() -> None:
    rec = record(areas=(area(1), area(2)), work=(work(1, 60, 1), work(2, 90, 1, 2), work(3, 30, 2)))
    first, _ = told(rec)
    assert "Work by Ada on 2 days, 1 of them shared with other repair areas." in first.evidence


def test_receipts_are_numbered_by_date_and_say_where_their_paper_is() -> None:
    late = records.receipt(1, 100, 1, when=parse("2018"))
    early = records.receipt(2, 100, 1, when=parse("2016"), paper=Paper.LOST, papers=())
    (story,) = told(record(areas=(area(1),), receipts=(late, early)))
    assert [(b.number, b.paper) for b in story.bought] == [(1, "paper lost"), (2, "paper held")]
    assert "2 receipts; the papers of 1 are held." in story.evidence


def test_notes_of_the_area_come_in_order_of_date() -> None:
    notes = (
        Entry(EntryId(1), parse("2017"), "later", AreaId(1), None),
        Entry(EntryId(2), parse("2016"), "sooner", AreaId(1), None),
        Entry(EntryId(3), parse("2016"), "of another", AreaId(2), None),
    )
    (story,) = told(record(areas=(area(1),), entries=notes))
    assert [entry.text for entry in story.entries] == ["sooner", "later"]


def test_cautions_are_spelled_out_and_the_owners_own_kept() -> None:
    rec = record(areas=(area(1, cautions=("load-bearing", "sharp edges")),))
    (story,) = told(rec)
    assert "inspected" in story.cautions[0].text
    assert story.cautions[1].title == "Sharp edges"


def test_a_stage_note_is_told() -> None:
    step = StageChange(StageChangeId(1), AreaId(1), "welded", parse("2016"), "in four evenings")
    (story,) = told(record(areas=(area(1, changes=(step,)),)))
    assert story.steps[0].note == "In four evenings."
