"""The Timeline page: sittings, filters, years, and what is done with the selected photos."""

from datetime import datetime

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QPushButton

from journal.actions import drawings, history
from journal.actions import photos as photo_actions
from journal.actions import pins as pin_actions
from journal.actions.journals import open_journal
from journal.actions.settings import Settings
from journal.desktop.desk import Desk, Nothing, PhotosSelected
from journal.desktop.dialogs.camera_clock import CameraClockDialog
from journal.desktop.dialogs.photo_date import PhotoDateDialog
from journal.desktop.pages.timeline import TimelinePage
from journal.desktop.pages.timeline_groups import Shown
from journal.desktop.tasks import TaskRunner
from journal.desktop.widgets.year_strip import Month
from journal.domain.ids import PhotoId
from tests.desktop.garage import garage

LEFT = Qt.MouseButton.LeftButton
NONE = Qt.KeyboardModifier.NoModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier
CONTROL = Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def session(tmp_path):
    """Sittings of 4, 3 and 5 photos a week apart from 5 March 2016, and two without a date."""
    with garage(tmp_path, 4, 3, 5, undated=2) as made:
        yield made


@pytest.fixture
def runner(qapp, session):
    """It ends before the journal is closed, as in the window."""
    made = TaskRunner()
    yield made
    made.close()


def shown(qtbot, runner, session):
    desk = Desk(session, runner, Settings())
    made = TimelinePage(desk)
    qtbot.addWidget(made)
    desk.changed.connect(made.refresh)
    desk.selected.connect(made.show_selection)
    made.resize(1000, 800)
    made.show()
    made.refresh(None)
    read(qtbot, made)
    return made


def read(qtbot, page):
    qtbot.waitUntil(lambda: page._reading is None)


@pytest.fixture
def page(qtbot, runner, session):
    return shown(qtbot, runner, session)


def click(qtbot, page, photo, modifier=NONE):
    spot = page.grid.cell_rect(PhotoId(photo)).center()
    qtbot.mouseClick(page.grid.viewport(), LEFT, modifier, spot)


def headings(page):
    return [group.title for group in page.grid.grid_layout.groups]


def pinned(session):
    return {(pin.photo_id, pin.panel_id) for pin in pin_actions.pins(session)}


def dialog(qtbot, kind):
    qtbot.waitUntil(lambda: isinstance(QApplication.activeModalWidget(), kind))
    return QApplication.activeModalWidget()


def test_sittings_come_newest_first_and_turn_round_at_a_press(qtbot, page):
    assert headings(page) == [
        "Saturday 19 March 2016",
        "Saturday 12 March 2016",
        "Saturday 5 March 2016",
        "No date",
    ]
    qtbot.mouseClick(page.bar._order, LEFT)
    assert headings(page)[0] == "Saturday 5 March 2016"
    assert headings(page)[-1] == "No date"


def test_selecting_tells_everybody(qtbot, page):
    click(qtbot, page, 2)
    click(qtbot, page, 4, SHIFT)
    assert page.desk.selection == PhotosSelected((2, 3, 4))
    qtbot.keyClick(page.grid, Qt.Key.Key_Escape)
    assert page.desk.selection == Nothing()


def test_a_double_click_opens_the_photo_that_was_clicked(qtbot, page):
    spot = page.grid.cell_rect(PhotoId(6)).center()
    qtbot.mouseClick(page.grid.viewport(), LEFT, NONE, spot)
    qtbot.mouseDClick(page.grid.viewport(), LEFT, NONE, spot)
    assert page._viewer.photo.id == 6
    qtbot.keyClick(page._viewer, Qt.Key.Key_Escape)
    assert page._viewer.isHidden()


def test_a_panel_is_chosen_by_typing_and_one_key_pins_there_again(qtbot, page, session):
    sill = drawings.find_panel(session, "sill left").id
    click(qtbot, page, 1)
    click(qtbot, page, 4, SHIFT)
    qtbot.keyClick(page.grid, Qt.Key.Key_P, SHIFT)
    assert page.ask_bar.edit.hasFocus()
    qtbot.keyClicks(page.ask_bar.edit, "sill left")
    qtbot.keyClick(page.ask_bar.edit, Qt.Key.Key_Return)
    read(qtbot, page)
    assert pinned(session) == {(photo, sill) for photo in (1, 2, 3, 4)}
    assert page.grid.hasFocus()
    click(qtbot, page, 5)
    qtbot.keyClick(page.grid, Qt.Key.Key_P)
    read(qtbot, page)
    assert (5, sill) in pinned(session)


def test_the_first_p_asks_for_the_panel(qtbot, page):
    click(qtbot, page, 1)
    qtbot.keyClick(page.grid, Qt.Key.Key_P)
    assert page.ask_bar.isVisible()
    qtbot.keyClick(page.ask_bar.edit, Qt.Key.Key_Escape)
    assert not page.ask_bar.isVisible()
    assert page.selection_bar.isVisible()


def test_a_panel_that_is_none_is_asked_for_again_with_the_reason(qtbot, page, session):
    click(qtbot, page, 1)
    qtbot.keyClick(page.grid, Qt.Key.Key_P, SHIFT)
    qtbot.keyClicks(page.ask_bar.edit, "flux capacitor")
    qtbot.keyClick(page.ask_bar.edit, Qt.Key.Key_Return)
    assert page.ask_bar.isVisible()
    assert "no panel" in page.ask_bar._problem.text()
    assert pinned(session) == set()


def test_only_what_is_to_be_placed_or_dated_is_shown(qtbot, page, session):
    pin_actions.pin(session, [PhotoId(1), PhotoId(2)], drawings.panels(session)[0].id)
    page.refresh(None)
    read(qtbot, page)
    qtbot.mouseClick(page.bar.choice(Shown.TO_PLACE), LEFT)
    assert page.bar.choice(Shown.TO_PLACE).text() == "To place (12)"
    assert {1, 2}.isdisjoint(page.grid.all_photos())
    assert len(page.grid.all_photos()) == 12
    qtbot.mouseClick(page.bar.choice(Shown.UNDATED), LEFT)
    assert page.grid.all_photos() == (13, 14)


def test_the_next_sitting_to_place_comes_to_hand_and_one_key_pins_it(qtbot, page, session):
    sill = drawings.find_panel(session, "sill left").id
    qtbot.mouseClick(page.bar.choice(Shown.TO_PLACE), LEFT)
    qtbot.mouseClick(page.grid.viewport(), LEFT, NONE, page.grid.heading_rect(0).center())
    assert page.grid.selected() == (8, 9, 10, 11, 12)
    qtbot.keyClick(page.grid, Qt.Key.Key_P)
    qtbot.keyClicks(page.ask_bar.edit, "sill left")
    qtbot.keyClick(page.ask_bar.edit, Qt.Key.Key_Return)
    read(qtbot, page)
    assert page.grid.selected() == (5, 6, 7)
    assert page.desk.selection == PhotosSelected((5, 6, 7))
    qtbot.keyClick(page.grid, Qt.Key.Key_P)
    read(qtbot, page)
    assert pinned(session) == {(photo, sill) for photo in range(5, 13)}
    assert page.grid.selected() == (1, 2, 3, 4)


def test_when_nothing_is_left_to_place_the_page_says_so(qtbot, page, session):
    every = page.grid.all_photos()
    pin_actions.pin(session, every, drawings.panels(session)[0].id)
    page.refresh(None)
    read(qtbot, page)
    qtbot.mouseClick(page.bar.choice(Shown.TO_PLACE), LEFT)
    assert page._stack.currentWidget() is page._filtered[Shown.TO_PLACE]
    page.bar.show_only(Shown.ALL)
    assert page._stack.currentWidget() is page.grid


def test_a_photo_selected_elsewhere_is_shown_even_if_the_filter_hid_it(qtbot, page):
    page.bar.show_only(Shown.UNDATED)
    page.desk.select(PhotosSelected((PhotoId(3),)))
    assert page.bar.shown is Shown.ALL
    assert page.grid.selected() == (3,)
    assert page.desk.selection == PhotosSelected((3,))


def test_the_years_go_there_and_follow_the_grid(qtbot, page, session):
    photo_actions.set_date(session, [PhotoId(n) for n in range(1, 5)], "2011-06-04")
    page.refresh(None)
    read(qtbot, page)
    page.grid.set_edge(256)
    page.resize(700, 420)
    assert page.years.place == Month(2016, 3)
    spot = QPoint(page.years.x_of(Month(2011, 6)), 40)
    qtbot.mouseClick(page.years, LEFT, NONE, spot)
    assert page.years.place == Month(2011, 6)
    assert 1 in page.grid.visible_photos()
    qtbot.keyClick(page.grid, Qt.Key.Key_Home)
    assert page.years.place == Month(2016, 3)


def test_a_date_is_given_in_words(qtbot, page, session):
    click(qtbot, page, 1)
    click(qtbot, page, 2, CONTROL)
    qtbot.keyClick(page.grid, Qt.Key.Key_D)
    asked = dialog(qtbot, PhotoDateDialog)
    asked._when.set_text("summer 2009")
    qtbot.mouseClick(asked.accept_button, LEFT)
    read(qtbot, page)
    assert {photo_actions.photo(session, PhotoId(n)).when.edtf for n in (1, 2)} == {"2009-22"}
    page.desk.select(PhotosSelected((PhotoId(1),)))
    page.activateWindow()
    qtbot.waitUntil(page.isActiveWindow)
    page.grid.setFocus()
    qtbot.keyClick(page.grid, Qt.Key.Key_D)
    asked = dialog(qtbot, PhotoDateDialog)
    qtbot.mouseClick(asked._forget, LEFT)
    read(qtbot, page)
    assert photo_actions.photo(session, PhotoId(1)).when is None


def test_a_word_that_is_no_date_is_refused_in_the_dialog(qtbot, page, session):
    before = photo_actions.photo(session, PhotoId(1)).when
    click(qtbot, page, 1)
    qtbot.keyClick(page.grid, Qt.Key.Key_D)
    asked = dialog(qtbot, PhotoDateDialog)
    asked._when.set_text("when the sill was done")
    qtbot.mouseClick(asked.accept_button, LEFT)
    assert asked.isVisible()
    assert asked._when.is_wrong
    asked.reject()
    assert photo_actions.photo(session, PhotoId(1)).when == before


def test_the_camera_clock_is_put_right_for_all_its_photos(qtbot, page, session):
    click(qtbot, page, 1)
    qtbot.keyClick(page.grid, Qt.Key.Key_T)
    asked = dialog(qtbot, CameraClockDialog)
    asked._true.set_text("6 March 2016, 10:30")
    qtbot.waitUntil(lambda: "12 photos" in asked._effect.text())
    assert asked.effect_words() == "12 photos move 1 day 1 hour later."
    asked._true.set_text("6 March 2016")
    assert asked.effect_words() == ""
    qtbot.mouseClick(asked.accept_button, LEFT)
    assert "time of day" in asked.problem.text()
    asked._true.set_text("6 March 2016, 10:30")
    qtbot.mouseClick(asked.accept_button, LEFT)
    read(qtbot, page)
    assert f"{photo_actions.photo(session, PhotoId(5)).when.earliest:%d %H:%M}" == "13 10:30"
    assert headings(page)[0] == "Sunday 20 March 2016"


def test_a_clock_that_is_right_to_the_minute_moves_nothing(qtbot, page, session):
    photo_actions.correct_clock(session, PhotoId(1), datetime(2016, 3, 5, 9, 30, 17))
    edits = len(history.edits(session))
    click(qtbot, page, 1)
    qtbot.keyClick(page.grid, Qt.Key.Key_T)
    asked = dialog(qtbot, CameraClockDialog)
    assert asked._true.text() == "5 March 2016, 09:30"
    assert asked.effect_words() == "The clock is right already; nothing moves."
    qtbot.mouseClick(asked.accept_button, LEFT)
    assert len(history.edits(session)) == edits
    click(qtbot, page, 1)
    qtbot.keyClick(page.grid, Qt.Key.Key_T)
    asked = dialog(qtbot, CameraClockDialog)
    asked._true.set_text("5 March 2016, 10:30")
    qtbot.mouseClick(asked.accept_button, LEFT)
    assert photo_actions.photo(session, PhotoId(1)).when.earliest.second == 17


def test_a_caption_is_given_to_all_selected(qtbot, page, session):
    click(qtbot, page, 1)
    click(qtbot, page, 3, SHIFT)
    qtbot.keyClick(page.grid, Qt.Key.Key_C)
    qtbot.keyClicks(page.ask_bar.edit, "Inner sill opened")
    qtbot.keyClick(page.ask_bar.edit, Qt.Key.Key_Return)
    read(qtbot, page)
    captions = [photo_actions.photo(session, PhotoId(n)).caption for n in (1, 2, 3, 4)]
    assert captions == ["Inner sill opened"] * 3 + [""]


def test_removing_takes_photos_out_and_undo_brings_them_back(qtbot, page, session):
    click(qtbot, page, 5)
    click(qtbot, page, 6, CONTROL)
    qtbot.keyClick(page.grid, Qt.Key.Key_Delete)
    read(qtbot, page)
    assert len(page.grid.all_photos()) == 12
    assert page.grid.selected() == ()
    assert page.desk.selection == Nothing()
    page.desk.act(history.undo)
    read(qtbot, page)
    assert {5, 6} <= set(page.grid.all_photos())


def test_turning_is_recorded_by_quarter_turns(qtbot, page, session):
    click(qtbot, page, 1)
    qtbot.keyClick(page.grid, Qt.Key.Key_R)
    qtbot.keyClick(page.grid, Qt.Key.Key_R)
    qtbot.keyClick(page.grid, Qt.Key.Key_R, SHIFT)
    assert photo_actions.photo(session, PhotoId(1)).turn == 90


def test_the_menu_offers_every_act_with_its_key(qtbot, page):
    click(qtbot, page, 1)
    menu = page.acts.menu()
    texts = [action.text().replace("&", "") for action in menu.actions()]
    assert {"Pin to a panel…", "Unpin", "Camera clock…", "Remove"} <= set(texts)
    menu.close()


def test_the_buttons_wait_for_a_selection(qtbot, page):
    assert not any(one.isEnabled() for one in page.selection_bar._buttons)
    click(qtbot, page, 1)
    assert all(one.isEnabled() for one in page.selection_bar._buttons)


def test_an_empty_journal_offers_to_add_photos(qtbot, page, session):
    photo_actions.remove_photos(session, page.grid.all_photos())
    page.refresh(None)
    read(qtbot, page)
    assert page._stack.currentWidget() is page._empty
    with qtbot.waitSignal(page.desk.add_wanted):
        qtbot.mouseClick(page._empty.findChild(QPushButton), LEFT)


def test_a_journal_open_for_reading_lets_nothing_change(qtbot, runner, session):
    with open_journal(session.folder, read_only=True) as reading:
        page = shown(qtbot, runner, reading)
        click(qtbot, page, 1)
        assert page.desk.selection == PhotosSelected((1,))
        for key in (Qt.Key.Key_Delete, Qt.Key.Key_P, Qt.Key.Key_C, Qt.Key.Key_R):
            qtbot.keyClick(page.grid, key)
        assert not page.ask_bar.isVisible()
        assert not any(one.isEnabled() for one in page.selection_bar._buttons)
        assert photo_actions.photo(reading, PhotoId(1)).turn == 0
        runner.stop_all()
