"""Claims on a repair area: read with their evidence, opened, worded, left out."""

from decimal import Decimal

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QPushButton

from journal.actions import areas as area_actions
from journal.actions import claims, drawings, evidence, history, hours, readings
from journal.actions.photos import all_photos
from journal.actions.pictures import original_path
from journal.desktop.desk import MetalSelected, PhotosSelected, ReceiptSelected
from journal.desktop.dialogs.area import AreaDialog
from journal.desktop.dialogs.claim import ClaimDialog
from journal.desktop.dialogs.entry import EntryDialog
from journal.desktop.dialogs.hours import HoursDialog
from journal.desktop.dialogs.stage import StageDialog
from journal.desktop.widgets.area_claims import AreaClaimsBox
from journal.desktop.widgets.grade_marks import GRADE_ICONS, GradeMark
from journal.domain.evidence import Grade, Piece
from journal.domain.ids import MeasureId, ReadingId
from journal.domain.photos import Role
from journal.domain.readings import Measure, MeasureKind, Moment, Reading
from journal.domain.shapes import Point
from journal.domain.when import parse
from tests.desktop import workshop
from tests.desktop.desks import Told, desk_over, opened_dialog, put_away
from tests.desktop.garage import add_sittings


@pytest.fixture
def session(tmp_path):
    with workshop.furnished(tmp_path) as made:
        yield made


@pytest.fixture
def desk(qapp, session):
    with desk_over(session) as made:
        yield made


@pytest.fixture
def area(session):
    """An area with a photo, a receipt, hours, an entry, a reading and a stage."""
    (photos,) = add_sittings(session, 2)
    for photo in all_photos(session):
        original_path(session, photo).parent.mkdir(parents=True, exist_ok=True)
        original_path(session, photo).touch()
    area = area_actions.areas(session)[0]
    area_actions.move_to_stage(session, area.id, "found", parse("2016-03-05"))
    area_actions.choose_photos(session, area.id, photos[:1], Role.BEFORE)
    area_actions.add_entry(session, parse("2016-03-05"), "Poked through it.", area_id=area.id)
    work = workshop.work("2016-03-05", 90, "Nils", area.id)
    hours.record_work(session, work)
    view = drawings.drawing(session).views[0]
    measure = Measure(
        MeasureId(0),
        "Door gap",
        MeasureKind.GAP,
        view.id,
        (Point(10.0, 10.0),),
        "mm",
        area_id=area.id,
    )
    made = readings.add_measure(session, measure).made
    read = Reading(
        ReadingId(0), MeasureId(made), 0, Decimal(5), parse("2016-03-05"), Moment.BEFORE, "Feeler"
    )
    readings.record_readings(session, [read])
    return area_actions.area(session, area.id)


@pytest.fixture
def box(qtbot, desk, area):
    made = AreaClaimsBox(desk)
    qtbot.addWidget(made)
    made.resize(700, 700)
    made.show_area(area)
    desk.changed.connect(lambda _changes: made.show_area(area))
    made.show()
    yield made
    put_away(made)


def said(box):
    return [one.text() for one in box.findChildren(QLabel) if not one.isHidden()]


def marks(box, kind):
    """The marks of evidence of a kind, with the entries of their menus."""
    for mark in box.findChildren(GradeMark):
        for piece, act in zip(mark.pieces, mark.menu().actions(), strict=True):
            if piece.kind == kind:
                yield act


def test_each_claim_shows_its_grades_in_words_and_by_a_mark(box, session, area):
    found = claims.area_claims(session, area.id).claims
    assert [claim.words for claim in box.claims] == [claim.words for claim in found]
    first = [mark.text() for mark in box.findChildren(GradeMark)]
    assert any("photo dated by its camera" in text for text in first)
    assert any("reading with instrument" in text for text in first)
    assert set(GRADE_ICONS) == set(Grade)
    assert len(set(GRADE_ICONS.values())) == len(Grade)


@pytest.mark.parametrize(
    ("kind", "dialog"),
    [("work", HoursDialog), ("entry", EntryDialog), ("stage", StageDialog), ("words", AreaDialog)],
)
def test_what_the_owner_said_opens_its_form(box, desk, area, session, kind, dialog):
    from journal.desktop.widgets.evidence_opening import open_piece

    act = next(marks(box, kind), None)
    if act is None:
        open_piece(desk, Piece(Grade.WORD, "words", area.id), area, box)
    else:
        act.trigger()
    opened_dialog(dialog).reject()


def test_a_photo_is_shown_and_a_reading_found_on_the_drawing(box, desk):
    told = Told(desk)
    next(marks(box, "photo")).trigger()
    assert isinstance(desk.selection, PhotosSelected)
    reading = next(marks(box, "reading"))
    assert reading.text().startswith("Door gap: 5 mm (Feeler), 5 March 2016")
    reading.trigger()
    assert isinstance(desk.selection, MetalSelected)
    assert told.pages == ["Drawing"]


def test_a_receipt_opens_in_the_ledger(desk, box, session, area):
    from journal.actions.receipts import receipts
    from journal.desktop.widgets.evidence_opening import open_piece

    told, paid = Told(desk), receipts(session)[0]
    piece = Piece(Grade.PAPER, "receipt", paid.id, paid.when)
    assert evidence.in_words(session, [piece])[piece].startswith(paid.supplier)
    open_piece(desk, piece, area, box)
    assert told.pages == ["Ledger"]
    assert desk.selection == ReceiptSelected(paid.id)


def test_own_words_stand_until_the_programs_are_wanted_again(qtbot, box, desk, session, area):
    claim = box.claims[0]
    press = next(b for b in box.findChildren(QPushButton) if claim.key in b.accessibleName())
    qtbot.mouseClick(press, Qt.MouseButton.LeftButton)
    dialog = opened_dialog(ClaimDialog)
    assert "photo dated by its camera" in dialog.grades.text()
    dialog.words.setPlainText("It was rotten, and we have the photo.")
    dialog.accept_button.click()
    assert claims.area_claims(session, area.id).claims[0].own.startswith("It was rotten")
    assert any(text == f"In your words. The program’s: {claim.words}" for text in said(box))
    again = ClaimDialog(desk, area.name, box.claims[0])
    qtbot.addWidget(again)
    again.usual.click()
    again.accept_button.click()
    assert not claims.area_claims(session, area.id).claims[0].own


def test_the_button_pressed_has_the_focus_again_when_the_claims_are_read_anew(qtbot, box, area):
    name = f"Words of the claim “{box.claims[0].key}”"

    def presses():
        found = [b for b in box.findChildren(QPushButton) if b.accessibleName() == name]
        return [b for b in found if b.isVisible()]

    box.activateWindow()
    qtbot.waitUntil(lambda: bool(presses()))
    (before,) = presses()
    before.setFocus()
    qtbot.waitUntil(before.hasFocus)
    box.show_area(area)
    qtbot.waitUntil(lambda: any(b is not before and b.hasFocus() for b in presses()))


def test_a_claim_is_left_out_and_taken_in_by_undo(qtbot, box, desk, session, area):
    dialog = ClaimDialog(desk, area.name, box.claims[0])
    qtbot.addWidget(dialog)
    dialog.left_out.setChecked(True)
    dialog.accept_button.click()
    assert box.claims[0].left_out
    assert any("Left out of the dossier" in text for text in said(box))
    desk.act(history.undo)
    assert not box.claims[0].left_out


def test_what_rests_on_the_owner_alone_is_said_to(box, desk, session, area):
    area_actions.move_to_stage(session, area.id, "welded", parse("2018-05-01"))
    box.show_area(area_actions.area(session, area.id))
    assert next(c for c in box.claims if c.key == "welded").is_word_alone
    assert any("Nothing but your word stands behind it" in text for text in said(box))


def test_pieces_that_are_gone_are_told_by_their_kind(session):
    kinds = ("photo", "receipt", "reading", "work", "entry", "words")
    pieces = [Piece(Grade.WORD, kind, 999) for kind in kinds]
    told = evidence.in_words(session, pieces)
    assert set(told) == set(pieces)
    assert all(told.values())
