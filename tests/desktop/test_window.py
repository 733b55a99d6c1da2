"""The window: open, add, undo, close, remember; and what a read-only journal allows."""

import threading
from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image
from PySide6.QtCore import QMimeData, QPointF, QSettings, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QMessageBox

from journal.actions import cars, timeline
from journal.actions.journals import open_journal
from journal.actions.settings import Settings, load_settings
from journal.desktop import theme
from journal.desktop.acts import free_folder
from journal.desktop.app import _Excepthook, make_app
from journal.desktop.desk import Nothing, PanelSelected
from journal.desktop.dialogs.help import HelpDialog
from journal.desktop.window import PROGRAM, Window
from journal.domain.car import MilestoneKind
from journal.domain.when import parse
from tests.desktop.garage import garage, panel_id


@pytest.fixture
def store(tmp_path):
    return QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat)


@pytest.fixture
def window(qtbot, store):
    made = Window(Settings(), store)
    made.show()
    yield made
    made.tasks.stop_all()
    made.close()
    made.deleteLater()


@pytest.fixture
def folder(tmp_path):
    with garage(tmp_path, 3, 2) as session:
        return session.folder


@pytest.fixture
def pictures(tmp_path):
    made = tmp_path / "pictures"
    made.mkdir()
    for number in range(3):
        Image.new("RGB", (40, 30), (number * 60, 80, 90)).save(made / f"IMG_{number}.jpg")
    (made / "empty.jpg").write_bytes(b"")
    return made


def banners(window):
    return [banner.text for banner in window._messages.banners()]


def test_without_a_journal_there_is_a_place_to_start(window):
    assert window.windowTitle() == PROGRAM
    assert window._start.isVisible()
    assert not window.menus.actions["Add photos"].isEnabled()
    assert window.menus.actions["New journal"].isEnabled()


def test_enter_opens_the_journal_opened_last(qtbot, window, folder):
    window.acts.open_folder(folder)
    window.close_journal()
    window.activateWindow()
    assert window.focusWidget() is window._start._recent
    qtbot.keyClick(window._start._recent, Qt.Key.Key_Return)
    assert window.workspace is not None


def test_enter_presses_the_button_that_holds_the_keyboard(qtbot, window, folder):
    window.acts.open_folder(folder)
    ledger = window.workspace._rail._buttons["Ledger"]
    ledger.setFocus()
    qtbot.keyClick(ledger, Qt.Key.Key_Return)
    assert window.workspace.current_page().title == "Ledger"


def test_an_open_journal_shows_its_car_and_its_drawing(window, folder):
    assert window.acts.open_folder(folder)
    assert window.windowTitle().startswith("Halden Rook")
    assert window.workspace.current_page().title == "Drawing"
    assert window.menus.actions["Drawing"].isChecked()
    assert window.menus.actions["Add photos"].isEnabled()
    assert load_settings().recent == (str(folder),)


def test_what_is_no_journal_is_named_and_the_window_stays(window, tmp_path):
    assert not window.acts.open_folder(tmp_path / "nothing here")
    assert len(banners(window)) == 1
    assert window._start.isVisible()


def test_closing_the_journal_leads_back_to_the_start(window, folder):
    window.acts.open_folder(folder)
    assert window.close_journal()
    assert window._start.isVisible()
    assert window.windowTitle() == PROGRAM
    with open_journal(folder) as session:
        assert not session.read_only


def test_undo_is_named_after_what_it_takes_back(window, folder):
    window.acts.open_folder(folder)
    undo, redo = window.menus.actions["Undo"], window.menus.actions["Redo"]
    desk = window.desk
    desk.act(cars.add_milestone, MilestoneKind.STRIPPED, parse("2015-06"))
    assert undo.text() == "&Undo: Add milestone “stripped”"
    assert not redo.isEnabled()
    assert window._strip._words.text() == "Add milestone “stripped”"
    undo.trigger()
    assert desk.ask(cars.milestones) == ()
    assert redo.text() == "&Redo: Add milestone “stripped”"
    redo.trigger()
    assert len(desk.ask(cars.milestones)) == 1


def test_the_title_follows_the_car(window, folder):
    from dataclasses import replace

    window.acts.open_folder(folder)
    car = window.desk.ask(cars.car)
    window.desk.act(cars.change_car, replace(car, title="Halden Rook 1100"))
    assert window.windowTitle().startswith("Halden Rook 1100")


def test_dropped_folders_are_added_and_what_was_left_out_is_named(qtbot, window, folder, pictures):
    window.acts.open_folder(folder)
    drop(window, pictures)
    qtbot.waitUntil(window._summary.isVisible, timeout=20_000)
    assert window.desk.ask(timeline.count_photos) == 8
    assert window._summary._words.text().startswith("3 photos added")
    assert window._summary._list.topLevelItemCount() == 1
    assert window.menus.actions["Undo"].text().startswith("&Undo: Add 3 photos")


def test_dropped_files_are_copied_never_moved(window, pictures):
    drop(window, pictures, by=Qt.DropAction.MoveAction)


def test_a_drop_of_nothing_says_nothing(window, folder):
    window.acts.open_folder(folder)
    spot, none = QPointF(400, 300), Qt.KeyboardModifier.NoModifier
    mime, left = QMimeData(), Qt.MouseButton.LeftButton
    window.dropEvent(QDropEvent(spot, Qt.DropAction.CopyAction, mime, left, none))
    assert not window.tasks.is_writing()


def drop(window, path, by=Qt.DropAction.CopyAction):
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(path))])
    spot, either = QPointF(400, 300), by | Qt.DropAction.CopyAction
    left, none = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    entering = QDragEnterEvent(spot.toPoint(), either, mime, left, none)
    window.dragEnterEvent(entering)
    assert entering.isAccepted()
    dropping = QDropEvent(spot, either, mime, left, none)
    window.dropEvent(dropping)
    assert dropping.dropAction() == entering.dropAction() == Qt.DropAction.CopyAction


def test_photos_dropped_before_a_journal_is_open_are_not_lost_without_a_word(window, pictures):
    drop(window, pictures)
    assert "Open a journal first" in window._strip._words.text()


def test_a_journal_held_elsewhere_is_read_only_and_says_by_whom(window, folder, pictures):
    with open_journal(folder) as holder:
        assert not holder.read_only
        window.acts.open_folder(folder)
        assert window.desk.read_only
        assert len(banners(window)) == 1
        assert window.desk.session.notice in banners(window)[0]
        assert "can be read here, but not changed" in banners(window)[0]
        assert not window.menus.actions["Add photos"].isEnabled()
        assert window.menus.actions["Check the journal"].isEnabled()
        drop(window, pictures)
        assert window.desk.ask(timeline.count_photos) == 5
        window.close_journal()


def test_closing_while_a_job_runs_asks_first(qtbot, window, folder, monkeypatch):
    window.acts.open_folder(folder)
    started = threading.Event()

    def job(context):
        started.set()
        while True:
            context.checkpoint()

    window.desk.run("Counting", job)
    assert started.wait(5)
    asked = []

    def go_on(box):
        asked.append(box.text())
        assert box.defaultButton().text() == "&Go on"

    monkeypatch.setattr(QMessageBox, "exec", go_on)
    assert not window.close_journal()
    assert asked == ["A job is still under way."]
    assert window.workspace is not None


def test_a_long_job_shows_in_the_strip_and_can_be_cancelled(qtbot, window, folder):
    window.acts.open_folder(folder)
    told = []

    def job(context):
        while True:
            context.report(2, 5, "Counting")
            context.checkpoint()

    window.desk.run("Counting", job, on_cancelled=lambda: told.append("stopped"))
    qtbot.waitUntil(window._strip._cancel.isVisible)
    window._strip._cancel.click()
    qtbot.waitUntil(lambda: told == ["stopped"])
    assert not window._strip._cancel.isVisible()


def test_a_check_names_nothing_wrong_in_a_sound_journal(qtbot, window, tmp_path, monkeypatch):
    from journal.desktop.dialogs.checked import CheckedDialog

    with garage(tmp_path / "sound") as session:
        sound = session.folder
    window.acts.open_folder(sound)
    seen = []
    monkeypatch.setattr(CheckedDialog, "exec", lambda dialog: seen.append(words_of(dialog)))
    window.acts.check()
    qtbot.waitUntil(lambda: bool(seen))
    assert "0 originals" in seen[0]


def words_of(dialog):
    from PySide6.QtWidgets import QLabel

    return " ".join(label.text() for label in dialog.findChildren(QLabel))


@pytest.mark.parametrize(
    ("page", "title"), [("Drawing", "3. Pin photos"), ("Areas", "4. Repair areas")]
)
def test_help_opens_at_what_fits_the_page(qtbot, window, folder, page, title):
    window.acts.open_folder(folder)
    window.workspace.show_page(page)
    window.menus.actions["Help"].trigger()
    dialog = window.findChild(HelpDialog)
    assert dialog._list.currentItem().text() == title
    dialog.close()


def test_the_theme_is_changed_at_once_and_kept(qtbot, window, qapp):
    window.acts.set_theme("dark")
    assert theme.colours_of(window.palette()) is theme.DARK
    assert load_settings().theme == "dark"
    assert window.menus.actions["theme dark"].isChecked()
    window.acts.set_theme("light")
    assert theme.colours_of(window.palette()) is theme.LIGHT
    qapp.setStyleSheet("")


def test_pages_come_to_the_front_by_key(qtbot, window, folder):
    window.acts.open_folder(folder)
    window.menus.actions["Areas"].trigger()
    assert window.workspace.current_page().title == "Areas"
    window.desk.show_page("Drawing")
    assert window.workspace.current_page().title == "Drawing"


def test_a_page_out_of_sight_catches_up_when_it_comes_back(qtbot, window, folder):
    window.acts.open_folder(folder)
    drawing = window.workspace.current_page()
    window.workspace.show_page("Areas")
    seen = []
    drawing.refresh = seen.append
    window.desk.act(cars.add_milestone, MilestoneKind.STRIPPED, parse("2015-06"))
    window.desk.act(cars.change_car, window.desk.ask(cars.car))
    assert seen == []
    window.workspace.show_page("Drawing")
    assert len(seen) == 1
    assert "milestones" in seen[0].kinds


def test_room_is_made_for_what_is_selected_once_something_is(qtbot, window, folder):
    window.acts.open_folder(folder)
    workspace = window.workspace
    assert not workspace.inspector.isVisible()
    assert not workspace.inspector_toggle.isEnabled()
    roof = PanelSelected(panel_id(window.desk.session, "Roof"))
    window.desk.select(roof)
    assert not workspace.inspector.isVisible(), "a double click would miss its mark"
    qtbot.waitUntil(workspace.inspector.isVisible)
    window.desk.select(Nothing())
    assert workspace.inspector.isVisible(), "the page keeps its place"
    window.acts.show_page("Timeline")
    assert not workspace.inspector.isVisible()
    window.desk.select(roof)
    qtbot.waitUntil(workspace.inspector.isVisible)
    window.acts.toggle_inspector()
    assert not workspace.inspector.isVisible()


def test_the_window_fits_the_screen_it_opens_on(window):
    assert window.height() < window.screen().availableGeometry().height()


def test_the_window_remembers_its_size(qtbot, store):
    first = Window(Settings(), store)
    first.resize(900, 640)
    first.show()
    first.close()
    second = Window(Settings(), store)
    assert (second.width(), second.height()) == (900, 640)
    second.close()
    first.deleteLater()
    second.deleteLater()


def test_a_folder_that_is_there_gets_a_number(tmp_path: Path):
    assert free_folder(tmp_path, "Halden Rook").name == "Halden Rook"
    (tmp_path / "Halden Rook").mkdir()
    assert free_folder(tmp_path, "Halden Rook").name == "Halden Rook 2"


def test_every_menu_entry_can_be_reached_by_key(window):
    for menu in window.menuBar().actions():
        entries = [entry for entry in menu.menu().actions() if not entry.isSeparator()]
        assert "&" in menu.text()
        letters = [
            entry.text().split("&", 1)[1][0].lower() for entry in entries if "&" in entry.text()
        ]
        assert len(letters) == len(entries)
        assert len(set(letters)) == len(letters), menu.text()


def test_no_two_entries_share_a_key(window):
    keys = [
        action.shortcut().toString()
        for action in set(window.menus.actions.values())
        if not action.shortcut().isEmpty()
    ]
    assert len(set(keys)) == len(keys)


def test_the_program_names_itself(qapp):
    app = make_app(["restoration-journal"])
    assert app.applicationDisplayName() == PROGRAM
    assert not app.windowIcon().isNull()


def test_a_fault_of_the_program_is_logged_and_said_in_words(window, monkeypatch, expected_log):
    said = []
    monkeypatch.setattr(QMessageBox, "exec", lambda box: said.append(box.text()))
    hook = _Excepthook(window)
    try:
        raise ZeroDivisionError("sum of nothing")
    except ZeroDivisionError as error:
        hook(type(error), error, error.__traceback__)
    assert said == ["The program itself went wrong."]
    assert [record.levelname for record in expected_log] == ["ERROR"]


def test_interrupting_from_the_terminal_closes_the_window(window):
    _Excepthook(window)(KeyboardInterrupt, KeyboardInterrupt(), None)
    assert not window.isVisible()


def test_one_key_takes_the_keyboard_from_part_to_part(qtbot, window, folder, qapp):
    window.acts.open_folder(folder)
    window.activateWindow()
    workspace = window.workspace
    parts = {"rail": workspace._rail, "page": workspace._stack, "pane": workspace.inspector}

    def gone_to():
        workspace.focus_next_part()
        held = qapp.focusWidget()
        return next(name for name, part in parts.items() if part.isAncestorOf(held))

    workspace._rail._buttons["Drawing"].setFocus()
    assert [gone_to() for _ in range(3)] == ["page", "rail", "page"]
    window.desk.select(PanelSelected(panel_id(window.desk.session, "Roof")))
    qtbot.waitUntil(workspace.inspector.isVisible)
    assert [gone_to() for _ in range(3)] == ["pane", "rail", "page"]


def test_what_a_dialog_remembers_outlives_a_change_of_theme(window, folder):
    window.acts.open_folder(folder)
    window.desk.settings = replace(window.desk.settings, person="Runa Mellgard")
    window.acts.set_theme("dark")
    assert load_settings().person == "Runa Mellgard"
    assert load_settings().theme == "dark"
    assert window.close_journal()
    assert window.settings.person == "Runa Mellgard"
