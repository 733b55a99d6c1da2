"""What a person does, by its outcome on the record."""

from dataclasses import replace
from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pytest

from journal.actions import (
    areas,
    cars,
    costs,
    drawings,
    find,
    gaps,
    history,
    hours,
    panels,
    photos,
    pins,
    receipts,
    timeline,
)
from journal.actions.journals import new_journal, open_journal
from journal.actions.session import Session
from journal.domain.car import Car, MilestoneKind
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, PanelId, PhotoId, ViewId, WorkId
from journal.domain.photos import Basis, Role
from journal.domain.receipts import Paper, Share
from journal.domain.when import When, parse
from journal.domain.work import Work
from tests.store.values import DAY, keep, new_photo, receipt


def shoot(session: Session, *numbers: int) -> list[PhotoId]:
    return [PhotoId(number) for number in keep(session.journal, *numbers)]


def sill(session: Session) -> PanelId:
    return drawings.find_panel(session, "sill left").id


def mark(session: Session, name: str = "Sill, left") -> AreaId:
    made = areas.add_area(session, name, [sill(session)], "rotten through", DAY).made
    assert made is not None
    return AreaId(made)


def shown(session: Session, photo_id: PhotoId) -> str:
    when = photos.photo(session, photo_id).when
    return when.edtf if when else ""


@pytest.mark.parametrize(
    ("car", "reason"),
    [
        (Car(" "), "needs a name"),
        (Car("Rook", currency="XYZ"), "XYZ"),
        (Car("Rook", body="hovercraft"), "hovercraft"),
        (Car("Rook", wheelbase_mm=250), "250"),
    ],
)
def test_a_car_that_cannot_be_is_refused_and_leaves_no_folder(
    tmp_path: Path, car: Car, reason: str
) -> None:
    with pytest.raises(JournalError, match=reason):
        new_journal(tmp_path / "new", car)
    assert not (tmp_path / "new").exists()


def test_a_new_journal_has_every_view_and_trade_names(session: Session) -> None:
    assert len(drawings.views(session)) == 8
    labels = {panel.label for panel in drawings.panels(session)}
    assert {"Sill, left", "Front wing, right", "Bonnet", "Roof"} <= labels


def test_a_panel_is_found_as_people_write_it(session: Session) -> None:
    wanted = sill(session)
    for text in ("Sill, left", "sill LEFT", "left sill", "sill l", str(wanted)):
        assert drawings.find_panel(session, text).id == wanted
    with pytest.raises(JournalError, match="more than one panel"):
        drawings.find_panel(session, "sill")
    with pytest.raises(JournalError, match=r"Do you mean .*Bonnet"):
        drawings.find_panel(session, "bonet")


def test_a_reopened_journal_holds_what_was_done(session: Session) -> None:
    (photo,) = shoot(session, 1)
    pins.pin(session, [photo], sill(session))
    folder = session.folder
    session.close()
    with open_journal(folder) as again:
        assert not again.read_only
        assert photos.photo(again, photo).placed
        assert history.undo_label(again) == "Pin 1 photo to Sill, left"


def test_the_owners_date_wins_and_can_be_forgotten(session: Session) -> None:
    (photo,) = shoot(session, 1)
    camera = photos.photo(session, photo).when
    photos.set_date(session, [photo], "summer 2009")
    known = photos.photo(session, photo)
    assert (known.basis, shown(session, photo)) == (Basis.OWNER, "2009-22")
    photos.forget_owner_date(session, [photo])
    assert photos.photo(session, photo).when == camera
    assert photos.photo(session, photo).basis is Basis.CAMERA
    with pytest.raises(JournalError, match="date"):
        photos.set_date(session, [photo], "the day before")


def test_a_wrong_clock_is_put_right_once_for_all_its_photos(session: Session) -> None:
    one, two, three = shoot(session, 1, 2, 3)
    photos.set_date(session, [three], "2014")
    photos.correct_clock(session, one, datetime(2017, 3, 5, 10, 0, 1))
    assert shown(session, one) == "2017-03-05T10:00:01"
    assert shown(session, two) == "2017-03-05T10:00:02"
    assert shown(session, three) == "2014"
    photos.forget_owner_date(session, [three])
    assert shown(session, three) == "2017-03-05T10:00:03"
    photos.correct_clock(session, two, datetime(2017, 3, 5, 10, 0, 0))
    assert shown(session, one) == "2017-03-05T09:59:59"
    assert photos.cameras(session)[0].shift_seconds == 365 * 86400 - 2
    history.undo(session)
    assert shown(session, two) == "2017-03-05T10:00:02"
    photos.set_date(session, [one], "2016")
    with pytest.raises(JournalError, match="camera's clock"):
        photos.correct_clock(session, one, datetime(2017, 1, 1))


def test_photos_turn_by_quarters(session: Session) -> None:
    (photo,) = shoot(session, 1)
    for _ in range(5):
        photos.turn(session, [photo], 90)
    assert photos.photo(session, photo).turn == 90
    photos.turn(session, [photo], -180)
    assert photos.photo(session, photo).turn == 270
    with pytest.raises(JournalError, match="quarter turns"):
        photos.turn(session, [photo], 45)


def test_removed_photos_come_back_with_their_pins(session: Session) -> None:
    one, two = shoot(session, 1, 2)
    pins.pin(session, [one, two], sill(session))
    photos.remove_photos(session, [one])
    assert timeline.count_photos(session) == 1
    assert [pin.photo_id for pin in pins.pins(session)] == [two]
    photos.bring_back_photos(session, [one])
    assert len(pins.pins(session)) == 2


def test_sittings_part_at_the_owners_pause(session: Session) -> None:
    shoot(session, 0, 60, 660, 661)
    cars.change_car(session, replace(cars.car(session), pause_minutes=5))
    assert [len(sitting.photo_ids) for sitting in timeline.sittings(session)] == [2, 2]
    cars.change_car(session, replace(cars.car(session), pause_minutes=30))
    assert [len(sitting.photo_ids) for sitting in timeline.sittings(session)] == [4]


def test_pinning_names_the_panel_and_needs_one(session: Session) -> None:
    one, two = shoot(session, 1, 2)
    changes = pins.pin(session, [one, two], sill(session), view_id=ViewId(1), x=2000, y=900)
    assert changes.label == "Pin 2 photos to Sill, left"
    assert changes.kinds == {"pins"}
    with pytest.raises(JournalError):
        pins.pin(session, [one], PanelId(9999))
    pins.unpin(session, [one])
    assert [pin.photo_id for pin in pins.pins(session)] == [two]


def test_an_area_moves_through_its_stages(session: Session) -> None:
    area = mark(session)
    areas.move_to_stage(session, area, "welded", parse("2016-05"), "plug welds every 40 mm")
    assert areas.area(session, area).stage == "welded"
    assert drawings.panel_stages(session) == {sill(session): "welded"}
    assert drawings.panel_stages(session, parse("2016-04")) == {sill(session): "found"}
    assert drawings.panel_stages(session, parse("2015")) == {}
    with pytest.raises(JournalError, match="no stage “shiny”"):
        areas.move_to_stage(session, area, "shiny", DAY)
    with pytest.raises(JournalError, match="needs a name"):
        areas.add_area(session, "", [])


def test_a_panel_shows_its_least_advanced_area(session: Session) -> None:
    areas.move_to_stage(session, mark(session, "One"), "finished", parse("2017"))
    mark(session, "Two")
    assert drawings.panel_stages(session)[sill(session)] == "found"


def test_photos_of_an_area_stand_in_their_roles(session: Session) -> None:
    one, two, three = shoot(session, 1, 2, 3)
    area = mark(session)
    areas.choose_photos(session, area, [three], Role.AFTER)
    areas.choose_photos(session, area, [one, two], Role.BEFORE)
    areas.choose_photos(session, area, [two], Role.DURING)
    chosen = [(role, photo.id) for role, photo in areas.area_photos(session, area)]
    assert chosen == [(Role.BEFORE, one), (Role.DURING, two), (Role.AFTER, three)]
    assert [found.name for _, found in areas.photo_areas(session, one)] == ["Sill, left"]
    areas.unchoose_photos(session, area, [one])
    assert len(areas.area_photos(session, area)) == 2


def test_the_whole_story_of_a_panel_in_order_of_date(session: Session) -> None:
    (photo,) = shoot(session, 1)
    panel, area = sill(session), mark(session)
    pins.pin(session, [photo], panel)
    areas.move_to_stage(session, area, "welded", parse("2016-06"))
    areas.add_entry(session, parse("2016-04-01"), "worse inside than it looked", area_id=area)
    receipts.record_receipt(session, receipt(Share(area, 1), when=parse("2016-05-01")))
    hours.record_work(
        session, Work(WorkId(0), parse("2016-05-02"), 90, "Ines", "", (Share(area, 1),))
    )
    story = panels.history(session, panel)
    assert [event.kind for event in story.events] == [
        "stage", "photos", "entry", "receipt", "work", "stage",
    ]  # fmt: skip
    assert story.events[0].detail == "rotten through"
    assert [line.text for line in story.receipts[0][1]] == ["Sill, outer"]
    with pytest.raises(JournalError, match="no panel number"):
        panels.history(session, PanelId(9999))


def test_an_empty_file_is_no_paper(session: Session, tmp_path: Path) -> None:
    paper = tmp_path / "torn.pdf"
    paper.write_bytes(b"")
    with pytest.raises(JournalError, match=r"torn\.pdf” is empty"):
        receipts.record_receipt(session, receipt(), [paper])
    assert receipts.receipts(session) == ()
    assert [path for path in session.journal.staging.glob("*") if path.is_file()] == []


def test_an_edit_of_a_receipt_is_named_with_its_date_in_words(session: Session) -> None:
    receipts.record_receipt(session, receipt(when=parse("2016-05-01")))
    assert (history.undo_label(session) or "").endswith(", 1 May 2016")


def test_a_receipt_keeps_its_papers_as_originals(session: Session, tmp_path: Path) -> None:
    paper = tmp_path / "till roll.PDF"
    paper.write_bytes(b"%PDF-1.4 made up")
    made = receipts.record_receipt(session, receipt(), [paper, paper]).made
    assert made is not None
    (kept,) = receipts.receipts(session)
    assert kept.id == made
    (sha,) = kept.papers
    assert receipts.paper_path(session, sha).read_bytes() == paper.read_bytes()
    assert receipts.paper_path(session, sha).suffix == ".pdf"
    assert list(session.journal.staging.iterdir()) == []
    receipts.change_receipt(session, replace(kept, supplier="Tessel Trim"), [])
    assert receipts.suppliers(session) == ("Tessel Trim",)
    receipts.remove_receipt(session, kept.id)
    assert receipts.receipts(session) == ()


@pytest.mark.parametrize(
    ("changes", "files", "reason"),
    [
        ({"supplier": " "}, [], "supplier"),
        ({"lines": ()}, [], "line"),
        ({"paper": Paper.LOST}, ["a"], "lost"),
        ({"currency": "QQQ"}, [], "QQQ"),
        ({"rate": Decimal(0)}, [], "rate"),
        ({}, ["not there.pdf"], "not there.pdf"),
    ],
)
def test_an_impossible_receipt_is_refused_in_words(
    session: Session, changes: dict[str, object], files: list[str], reason: str
) -> None:
    paths = [session.folder / name for name in files]
    with pytest.raises(JournalError, match=reason):
        receipts.record_receipt(session, receipt(**changes), paths)
    assert receipts.receipts(session) == ()


@pytest.mark.parametrize(("minutes", "person"), [(0, "Ines"), (1441, "Ines"), (60, " ")])
def test_impossible_hours_are_refused(session: Session, minutes: int, person: str) -> None:
    with pytest.raises(JournalError):
        hours.record_work(session, Work(WorkId(0), DAY, minutes, person))


def test_costs_part_at_the_road(session: Session) -> None:
    cars.add_milestone(session, MilestoneKind.ON_THE_ROAD, parse("2018-06-01"))
    area = mark(session)
    receipts.record_receipt(session, receipt(Share(area, 1)))
    receipts.record_receipt(session, receipt(when=parse("2019-01-01"), paper=Paper.LOST))
    hours.record_work(session, Work(WorkId(0), DAY, 90, "Ines", "", (Share(area, 1),)))
    figures = costs.summary(session)
    assert (figures.restoration, figures.upkeep, figures.unproven) == (11425, 11425, 11425)
    by_area = {row.label: row for row in costs.costs(session, "area").rows}
    assert by_area["Sill, left"].money == 8950
    assert by_area["Sill, left"].minutes == 90


def test_find_and_gaps_reach_everything(session: Session) -> None:
    shoot(session, 1, 2)
    area = mark(session)
    areas.add_entry(session, DAY, "worse inside than it looked")
    assert [(hit.kind, hit.id) for hit in find.find(session, "rotten")] == [("area", area)]
    assert [hit.kind for hit in find.find(session, "worse insi")] == ["entry"]
    found = {gap.target_kind for gap in gaps.gaps(session)}
    assert {"area", "photos", "milestone"} <= found


def test_history_lists_edits_with_their_size(session: Session) -> None:
    shoot(session, 1)
    photos.set_caption(session, [PhotoId(1)], "the sill, before")
    history.undo(session)
    rows = history.edits(session)
    assert [row.label for row in rows[:2]] == ["Undo: Caption 1 photo", "Caption 1 photo"]
    assert rows[0].rows == 1
    assert len(rows[0].digest) == 64
    assert history.redo_label(session) == "Caption 1 photo"
    history.redo(session)
    assert photos.photo(session, PhotoId(1)).caption == "the sill, before"


def test_a_milestone_changes_and_goes(session: Session) -> None:
    made = cars.add_milestone(session, MilestoneKind.ACQUIRED, When.on(date(2015, 4, 1)))
    (milestone,) = cars.milestones(session)
    assert milestone.id == made.made
    cars.change_milestone(session, replace(milestone, note="with two boxes of parts"))
    assert cars.milestones(session)[0].note == "with two boxes of parts"
    cars.remove_milestone(session, milestone.id)
    assert cars.milestones(session) == ()


def test_photo_is_meant_by_name_or_not_at_all(session: Session) -> None:
    (one,) = shoot(session, 1)
    assert timeline.find_photo(session, "DSCF0001.JPG").id == one
    assert timeline.find_photo(session, new_photo(1).sha256[:10]).id == one
    with pytest.raises(JournalError, match="no photo"):
        timeline.find_photo(session, "IMG_9999.JPG")
