"""Every kind of record comes back as it went in."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from journal.domain.areas import Entry
from journal.domain.car import Milestone, MilestoneKind
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, EntryId, PhotoId
from journal.domain.photos import Basis, Role
from journal.domain.receipts import Paper, Share, Spread
from journal.domain.when import When
from journal.store.journal import Journal
from journal.store.record import record
from tests.store.values import CAR, DAY, ROOF, SILL, WING, keep, new_photo, receipt, work


def test_car_and_milestones(journal: Journal) -> None:
    later = When.on(date(2020, 6, 1))
    with journal.edit("Car"):
        journal.car.change(replace(CAR, colour="slate", stages=("found", "finished")))
        journal.car.add_milestone(MilestoneKind.ON_THE_ROAD, later, "first drive")
        first = journal.car.add_milestone(MilestoneKind.ACQUIRED, DAY, "")
    assert journal.car.get().stages == ("found", "finished")
    assert [m.kind for m in journal.car.milestones()] == ["acquired", "on the road"]
    with journal.edit("Change"):
        journal.car.change_milestone(Milestone(first, MilestoneKind.STRIPPED, DAY, "bare"))
    assert journal.car.milestones()[0].note == "bare"
    with journal.edit("Remove"):
        journal.car.remove_milestone(first)
    assert len(journal.car.milestones()) == 1


def test_photos_in_order_of_time_with_their_camera_and_place(journal: Journal) -> None:
    second, first = keep(journal, 70, 5)
    with journal.edit("Pin"):
        journal.pins.put(PhotoId(first), SILL, None, None, None)
    found = journal.photos.all()
    assert [p.id for p in found] == [first, second]
    assert [p.placed for p in found] == [True, False]
    assert found[0].camera == "Lumenfield L20"
    assert found[0].when == new_photo(5).when
    assert journal.photos.candidates(PhotoId(first)) == new_photo(5).candidates
    assert [p.id for p in journal.photos.get([PhotoId(second), PhotoId(first)])] == [second, first]
    assert journal.photos.on_panel(SILL) == (found[0],)
    with pytest.raises(JournalError, match="no photo number 99"):
        journal.photos.get([PhotoId(99)])


def test_undated_photos_come_last(journal: Journal) -> None:
    with journal.edit("Add"):
        journal.photos.add([new_photo(1, when=None, basis=Basis.UNKNOWN), new_photo(2)])
    assert [p.name for p in journal.photos.all()] == ["DSCF0002.JPG", "DSCF0001.JPG"]
    assert journal.photos.all()[-1].when is None


def test_a_removed_photo_is_gone_from_every_list_but_one(journal: Journal) -> None:
    (photo,) = keep(journal, 1)
    with journal.edit("Use"):
        journal.pins.put(PhotoId(photo), SILL, None, None, None)
        area = journal.areas.add("Sill", [SILL], "")
        journal.areas.choose_photo(area, PhotoId(photo), Role.BEFORE)
        journal.photos.set_caption(PhotoId(photo), "rusty")
    with journal.edit("Remove"):
        journal.photos.set_removed(PhotoId(photo), removed=True)
    assert journal.photos.all() == ()
    assert journal.photos.count() == 0
    assert journal.pins.all() == ()
    assert journal.areas.photos() == ()
    assert journal.search.find("rusty", 9) == ()
    assert [p.id for p in journal.photos.removed()] == [photo]
    with journal.edit("Back"):
        journal.photos.set_removed(PhotoId(photo), removed=False)
    assert journal.photos.on_panel(SILL)[0].caption == "rusty"
    assert [h.kind for h in journal.search.find("rusty", 9)] == ["photo"]


def test_a_camera_put_right_shifts_photos_that_come_later(journal: Journal) -> None:
    keep(journal, 1)
    (camera,) = journal.photos.cameras()
    with journal.edit("Clock"):
        journal.photos.set_shift(camera.id, 3600)
    keep(journal, 2)
    late = journal.photos.all()[-1]
    assert late.when is not None
    assert late.when.edtf == "2016-03-05T11:00:02"


def test_photo_is_found_by_number_name_and_hash(journal: Journal) -> None:
    one, two = keep(journal, 1, 2)
    assert journal.photos.by_text(str(one))[0].id == one
    assert journal.photos.by_text("DSCF0002.JPG")[0].id == two
    assert journal.photos.by_text(new_photo(2).sha256[:12])[0].id == two
    assert journal.photos.by_text("%") == ()


def test_pins_move_rather_than_double(journal: Journal) -> None:
    (photo,) = keep(journal, 1)
    view = journal.drawing.views()[0].id
    with journal.edit("Pin"):
        first = journal.pins.put(PhotoId(photo), SILL, view, (10.04, 20), None)
        again = journal.pins.put(PhotoId(photo), SILL, view, (30, 40), 90)
        journal.pins.put(PhotoId(photo), ROOF, None, None, None)
    assert first == again
    assert [(p.panel_id, p.x, p.facing) for p in journal.pins.all()] == [
        (SILL, 30, 90),
        (ROOF, None, None),
    ]
    with journal.edit("Unpin"):
        journal.pins.take(PhotoId(photo), SILL)
    assert [p.panel_id for p in journal.pins.of_photo(PhotoId(photo))] == [ROOF]


def test_areas_with_stages_photos_and_entries(journal: Journal) -> None:
    one, two = keep(journal, 1, 2)
    later = When.on(date(2016, 5, 1))
    with journal.edit("Area"):
        area = journal.areas.add("Sill, left", [SILL, WING], "holes")
        journal.areas.add_stage_change(area, "welded", later, "plug welds")
        journal.areas.add_stage_change(area, "found", DAY, "")
        journal.areas.choose_photo(area, PhotoId(two), Role.AFTER)
        journal.areas.choose_photo(area, PhotoId(one), Role.BEFORE)
        journal.areas.add_entry(Entry(EntryId(0), DAY, "worse inside", area, None))
    found = journal.areas.get(area)
    assert [c.stage for c in found.changes] == ["found", "welded"]
    assert found.stage == "welded"
    assert found.stage_on(When.on(date(2016, 4, 1))) == "found"
    assert journal.areas.on_panel(WING) == (found,)
    assert [(p.photo_id, p.role) for p in journal.areas.photos_of(area)] == [
        (two, Role.AFTER),
        (one, Role.BEFORE),
    ]
    assert journal.areas.entries_on_panel(SILL)[0].text == "worse inside"
    with journal.edit("Change"):
        journal.areas.change(
            replace(found, done="new sill", panel_ids=(SILL,), cautions=("welding",))
        )
    assert journal.areas.get(area).cautions == ("welding",)
    assert journal.areas.on_panel(WING) == ()
    with journal.edit("Remove"):
        journal.areas.remove(area)
    assert journal.areas.all() == ()
    assert journal.areas.entries()[0].area_id is None
    with pytest.raises(JournalError, match="no repair area"):
        journal.areas.get(area)


def test_receipts_keep_lines_shares_and_papers(journal: Journal) -> None:
    keep(journal, 1)
    sha = new_photo(1).sha256
    with journal.edit("Receipt"):
        area = journal.areas.add("Sill", [SILL], "")
        made = journal.receipts.add(receipt(Share(area, 3), papers=(sha,), rate=Decimal("1.085")))
    found = journal.receipts.get(made)
    assert found.lines_total == 11425
    assert found.lines[0].shares == (Share(area, 3),)
    assert found.lines[1].quantity == Decimal("2.5")
    assert found.papers == (sha,)
    assert found.rate == Decimal("1.085")
    assert journal.receipts.for_panel(SILL) == (found,)
    changed = replace(
        found, lines=(replace(found.lines[1], amount=9),), papers=(), paper=Paper.LOST
    )
    with journal.edit("Change"):
        journal.receipts.change(changed)
    assert journal.receipts.get(made) == changed
    with journal.edit("Remove"):
        journal.receipts.remove(made)
    assert journal.receipts.all() == ()


def test_a_refund_knows_its_receipt_and_outlives_it(journal: Journal) -> None:
    postage = replace(receipt().lines[1], spread=Spread.VALUE)
    with journal.edit("Receipts"):
        bought = journal.receipts.add(
            receipt(lines=(receipt().lines[0], postage), tax=1824, read_text="GRELLING PANELS")
        )
        back = journal.receipts.add(receipt(refund_of=bought))
    found = journal.receipts.get(bought)
    assert (found.tax, found.lines[1].spread) == (1824, Spread.VALUE)
    assert [hit.id for hit in journal.search.find("grelling", 9)] == [bought]
    with journal.edit("Remove"):
        journal.receipts.remove(bought)
    assert journal.receipts.get(back).refund_of is None


def test_work_keeps_its_shares(journal: Journal) -> None:
    with journal.edit("Work"):
        areas = [journal.areas.add(name, [SILL], "") for name in ("One", "Two")]
        made = journal.work.add(work(*areas))
    (found,) = journal.work.all()
    assert (found.id, found.minutes, [s.area_id for s in found.shares]) == (made, 210, areas)
    assert journal.work.for_panel(SILL) == (found,)
    assert journal.work.people() == ("Ines Toller",)
    with journal.edit("Remove"):
        journal.work.remove(made)
    assert journal.work.all() == ()


def test_find_takes_beginnings_of_all_words_without_accents(journal: Journal) -> None:
    with journal.edit("Words"):
        area = journal.areas.add("Sill, left", [SILL], "Löcher under the jacking point")
        journal.areas.add_stage_change(area, "welded", DAY, "stitched")
        made = journal.receipts.add(receipt())
        journal.work.add(work())
    assert [(h.kind, h.id) for h in journal.search.find("loch JACK", 9)] == [("area", area)]
    assert [(h.kind, h.id) for h in journal.search.find("zinc", 9)] == [("receipt", made)]
    assert [(h.kind, h.id) for h in journal.search.find("stitch", 9)] == [("area", area)]
    assert {h.kind for h in journal.search.find("sill", 9)} == {"area", "panel", "receipt", "work"}
    assert journal.search.find('"; DROP TABLE search; --', 9) == ()
    assert journal.search.find("  *  ", 9) == ()
    assert len(journal.search.find("s", 2)) == 2


def test_the_whole_record_leaves_removed_photos_out(journal: Journal) -> None:
    one, two = keep(journal, 1, 2)
    with journal.edit("Fill"):
        area = journal.areas.add("Sill", [SILL], "")
        journal.areas.choose_photo(AreaId(area), PhotoId(one), Role.BEFORE)
        journal.pins.put(PhotoId(two), SILL, None, None, None)
        journal.photos.set_removed(PhotoId(one), removed=True)
    whole = record(journal)
    assert [p.id for p in whole.photos] == [two]
    assert whole.area_photos == ()
    assert len(whole.pins) == 1
    assert whole.car == CAR
