"""The inspector's photo pane: date and how it is known, places, repair areas, caption, file."""

from datetime import datetime

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QPushButton, QSpinBox, QToolButton

from journal.actions import areas as area_actions
from journal.actions import drawings
from journal.actions import photos as photo_actions
from journal.actions import pins as pin_actions
from journal.actions.settings import Settings
from journal.desktop.desk import AreaSelected, Desk, PanelSelected, PhotosSelected
from journal.desktop.dialogs.photo_date import PhotoDateDialog
from journal.desktop.inspector.photo import PhotoPane
from journal.desktop.inspector.photo_dates import said_of
from journal.desktop.tasks import TaskRunner
from journal.domain.ids import PhotoId
from journal.domain.photos import Basis, DateCandidate, Role
from journal.domain.when import When, parse
from tests.desktop.garage import add_sittings, panel_id
from tests.desktop.photo_fakes import fake_photo
from tests.desktop.workshop import furnished, with_photos

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def session(tmp_path):
    """Six real photos on the first area's panel (two before, three during, one after), 7 more."""
    with furnished(tmp_path) as made:
        with_photos(made, tmp_path / "card", 6)
        add_sittings(made, 5, undated=2)
        yield made


@pytest.fixture
def pane(qtbot, session):
    runner = TaskRunner()
    made = PhotoPane(Desk(session, runner, Settings()))
    qtbot.addWidget(made)
    made.desk.changed.connect(made.refresh)
    made.resize(360, 1400)
    made.show()
    yield made
    runner.close()


def show(pane, *numbers):
    selection = PhotosSelected(tuple(PhotoId(n) for n in numbers))
    pane.desk.selection = selection
    pane.show_selection(selection)


def named(qtbot, pane, name, kind=QPushButton):
    """The button of that name, once it is there to be pressed."""

    def found():
        return [b for b in pane.findChildren(kind) if b.accessibleName() == name and b.isVisible()]

    qtbot.waitUntil(lambda: bool(found()))
    return found()[-1]


def test_one_photo_is_told_in_full(qtbot, pane, session):
    show(pane, 1)
    photo = photo_actions.photo(session, PhotoId(1))
    assert pane.name.text() == "IMG_0000.jpg"
    assert pane.caption.text() == ""
    assert photo.sha256[:16] in pane.file.sha.text()
    assert "400 × 300 pixels" in pane.file._facts.text()
    qtbot.waitUntil(lambda: pane.picture.pixmap is not None)


def test_the_whole_sha_can_be_copied(qtbot, pane, session):
    show(pane, 1)
    qtbot.mouseClick(pane.file.copy, LEFT)
    assert QGuiApplication.clipboard().text() == photo_actions.photo(session, PhotoId(1)).sha256


def test_where_it_is_pinned_leads_to_the_panel_and_can_be_undone(qtbot, pane, session):
    show(pane, 1)
    sill = area_actions.areas(session)[0].panel_ids[0]
    (link,) = [b for b in pane.findChildren(QPushButton) if b.text() == "Sill, left"]
    pages = []
    pane.desk.page_wanted.connect(pages.append)
    qtbot.mouseClick(link, LEFT)
    assert pane.desk.selection == PanelSelected(sill)
    assert pages == ["Drawing"]
    qtbot.mouseClick(named(qtbot, pane, "Unpin from Sill, left", QToolButton), LEFT)
    assert pin_actions.pins_of(session, PhotoId(1)) == ()


def test_the_role_buttons_choose_change_and_take_out(qtbot, pane, session):
    show(pane, 1)
    area = area_actions.areas(session)[0]

    def role():
        return {photo.id: role for role, photo in area_actions.area_photos(session, area.id)}.get(1)

    assert role() is Role.BEFORE
    assert named(qtbot, pane, f"Before of {area.name}").isChecked()
    qtbot.mouseClick(named(qtbot, pane, f"After of {area.name}"), LEFT)
    assert role() is Role.AFTER
    assert named(qtbot, pane, f"After of {area.name}").isChecked()
    qtbot.mouseClick(named(qtbot, pane, f"After of {area.name}"), LEFT)
    assert role() is None


def test_areas_of_the_same_panel_are_offered_and_others_can_be_typed(qtbot, pane, session):
    show(pane, 1)
    _, second, _, boot = area_actions.areas(session)
    assert not named(qtbot, pane, f"Before of {second.name}").isChecked()
    assert boot.name in pane.areas.pick.choices
    qtbot.keyClicks(pane.areas.pick, "boot lid")
    qtbot.keyClick(pane.areas.pick, Qt.Key.Key_Return)
    assert [p.id for _, p in area_actions.area_photos(session, boot.id)] == [1]
    assert named(qtbot, pane, f"During of {boot.name}").isChecked()


def test_an_area_is_a_click_away(qtbot, pane, session):
    show(pane, 1)
    area = area_actions.areas(session)[0]
    (link,) = [b for b in pane.areas.findChildren(QPushButton) if b.text() == area.name]
    qtbot.mouseClick(link, LEFT)
    assert pane.desk.selection == AreaSelected(area.id)


def test_several_photos_are_told_together_and_acted_on_together(qtbot, pane, session):
    show(pane, 1, 2, 7)
    assert pane.when.text() == "3 photos"
    assert not pane.dates.isVisible()
    qtbot.keyClicks(pane.caption, "Left sill")
    qtbot.keyClick(pane.caption, Qt.Key.Key_Return)
    captions = [photo_actions.photo(session, PhotoId(n)).caption for n in (1, 2, 7, 3)]
    assert captions == ["Left sill"] * 3 + [""]
    wing = panel_id(session, "Front wing, left")
    pin_actions.pin(session, [PhotoId(7)], wing)
    pane.refresh(None)
    texts = {b.text() for b in pane.findChildren(QPushButton)}
    assert {"Sill, left (2)", "Front wing, left (1)"} <= texts


def test_a_caption_typed_is_kept_when_another_photo_is_selected(qtbot, pane, session):
    show(pane, 1)
    qtbot.keyClicks(pane.caption, "Trim off")
    show(pane, 2)
    assert photo_actions.photo(session, PhotoId(1)).caption == "Trim off"
    assert photo_actions.photo(session, PhotoId(2)).caption == ""


def test_the_date_is_given_in_a_dialog(qtbot, pane, session):
    show(pane, 12)
    assert pane.when.text() == "No date"
    qtbot.mouseClick(pane._date, LEFT)
    qtbot.waitUntil(lambda: isinstance(QApplication.activeModalWidget(), PhotoDateDialog))
    asked = QApplication.activeModalWidget()
    asked._when.set_text("about 2012")
    qtbot.mouseClick(asked.accept_button, LEFT)
    assert pane.when.text() == "about 2012"
    assert pane.known.text() == "Date given by you"


def test_it_can_be_shown_large(qtbot, pane):
    show(pane, 1, 2)
    qtbot.mouseDClick(pane.picture, LEFT)
    assert pane._viewer.photo.id == 1
    qtbot.keyClick(pane._viewer, Qt.Key.Key_Escape)


def test_a_removed_selection_breaks_nothing(pane, session):
    show(pane, 1)
    photo_actions.remove_photos(session, [PhotoId(1)])
    pane.refresh(None)
    show(pane, 2)
    assert pane.name.text() == "IMG_0001.jpg"


def candidate(basis, text, doubt=""):
    when = parse(text) if text else None
    return DateCandidate(basis, "source", text, when, None, doubt)


def test_what_lost_is_told_with_the_reason():
    photo = fake_photo(1, basis=Basis.CAMERA, when=parse("2016-03-05T10:00:00"))
    rows = said_of(
        photo,
        (
            candidate(Basis.FILE_TIME, "2019-01-01"),
            candidate(Basis.CAMERA, "2016-03-05T10:00:00"),
            candidate(Basis.FILE_NAME, "2016-03-05"),
            candidate(Basis.DIGITISED, "2099-01-01", "it lies in the future"),
        ),
    )
    assert [(row.source.split(" (")[0], row.counts) for row in rows] == [
        ("The camera", True),
        ("The file's name", False),
        ("The scan or edit", False),
        ("The file's own time", False),
    ]
    assert rows[1].reason == "left out: the camera is trusted more"
    assert rows[2].reason == "left out: it lies in the future"


def test_the_owners_word_counts_and_the_camera_is_told_why_not():
    photo = fake_photo(1, basis=Basis.OWNER, when=parse("2009-22"))
    rows = said_of(photo, (candidate(Basis.CAMERA, "2016-03-05T10:00:00"),))
    assert rows[0].counts
    assert rows[0].date == "summer 2009"
    assert rows[1].reason == "left out: your word is trusted more"


def test_a_clock_put_right_is_told():
    photo = fake_photo(1, basis=Basis.CAMERA, when=When.at(datetime(2016, 3, 6, 11)))
    (row,) = said_of(photo, (candidate(Basis.CAMERA, "2012-01-01T00:00:00"),))
    assert row.reason == "this one counts, put right to 6 March 2016, 11:00"


def test_the_way_the_camera_faced_is_told_in_degrees_and_taken_back(qtbot, pane, session):
    sill = panel_id(session, "Sill, left")
    show(pane, 8)
    pane.desk.act(pin_actions.pin, [PhotoId(8)], sill)
    view = drawings.views(session)[0].id
    pane.desk.act(pin_actions.pin, [PhotoId(8)], sill, view_id=view, x=100, y=200)

    def shown_boxes():
        return [box for box in pane.findChildren(QSpinBox) if box.isVisible()]

    def facing_box():
        qtbot.waitUntil(lambda: len(shown_boxes()) == 1)
        return shown_boxes()[0]

    def facing():
        return pin_actions.pins_of(session, PhotoId(8))[0].facing

    assert facing_box().text() == "not known"
    box = facing_box()
    box.setFocus()
    box.stepUp()
    box.stepDown()
    assert box.value() == 345
    qtbot.keyClick(box, Qt.Key.Key_Return)
    assert facing() == 345
    box = facing_box()
    box.setValue(-1)
    qtbot.keyClick(box, Qt.Key.Key_Return)
    assert facing() is None
