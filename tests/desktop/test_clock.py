"""The clock in the corner, by clicks and keys, and the line for hours from any page."""

from datetime import date, datetime, timedelta

import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtWidgets import QApplication, QMenu

from journal.actions import areas, clockings, history, hours
from journal.actions.journals import open_journal
from journal.actions.settings import Settings, load_settings
from journal.desktop.desk import AreaSelected
from journal.desktop.dialogs.clock import ClockOffDialog, ClockOnDialog
from journal.desktop.window import Window
from journal.domain.work import WorkBasis
from tests.desktop import workshop
from tests.desktop.desks import opened_dialog

KEY = Qt.Key


@pytest.fixture
def folder(tmp_path):
    with workshop.furnished(tmp_path) as session:
        return session.folder


@pytest.fixture
def window(qtbot, tmp_path, folder):
    made = Window(Settings(), QSettings(str(tmp_path / "w.ini"), QSettings.Format.IniFormat))
    made.show()
    made.acts.open_folder(folder)
    yield made
    made.tasks.stop_all()
    made.close()
    made.deleteLater()


@pytest.fixture
def session(window):
    return window.desk.session


def yesterday(hour, minute=0):
    now = datetime.now()
    return clockings.local(now.replace(hour=hour, minute=minute, second=0) - timedelta(days=1))


def press_clock(qtbot, window):
    qtbot.mouseClick(window.workspace.clock, Qt.MouseButton.LeftButton)


def choose(qtbot, words):
    """Press the entry of the clock's menu that holds some words."""
    menu = QApplication.activePopupWidget()
    assert isinstance(menu, QMenu)
    entry = next(act for act in menu.actions() if words in act.text())
    qtbot.mouseClick(menu, Qt.MouseButton.LeftButton, pos=menu.actionGeometry(entry).center())


def latest(session):
    return max(hours.work(session), key=lambda work: work.id)


def banners(window):
    return [banner.text for banner in window._messages.banners()]


def test_a_press_and_enter_clock_on_whom_it_was_last(qtbot, window, session):
    area = areas.areas(session)[1]
    window.desk.select(AreaSelected(area.id))
    clock = window.workspace.clock
    assert clock.text() == "Clock on"
    press_clock(qtbot, window)
    dialog = opened_dialog(ClockOnDialog)
    assert dialog.person.text() == "Tom"
    dialog.person.set_text("Iris")
    qtbot.keyClick(dialog, KEY.Key_Return)
    assert not dialog.isVisible()
    (running,) = clockings.running(session)
    assert running.person == "Iris"
    assert [share.area_id for share in running.shares] == [area.id]
    assert clock.text() == "0:00"
    assert "Iris 0 min, since" in clock.accessibleName()
    assert load_settings().person == "Iris"


def test_two_clocks_show_and_each_is_stopped_by_itself(qtbot, window, session):
    for person, back in (("Iris", 75), ("Tom", 20)):
        started = clockings.now() - timedelta(minutes=back)
        window.desk.act(clockings.clock_on, person, started=started)
    clock = window.workspace.clock
    assert clock.text() == "1:15 +1"
    press_clock(qtbot, window)
    choose(qtbot, "Clock Tom")
    dialog = opened_dialog(ClockOffDialog)
    qtbot.keyClick(dialog, KEY.Key_Escape)
    assert len(clockings.running(session)) == 2
    press_clock(qtbot, window)
    choose(qtbot, "Clock Iris")
    dialog = opened_dialog(ClockOffDialog)
    if not dialog.is_old:
        assert dialog.hours.text() == "1 h 15 min"
    else:  # Started before midnight: the person is asked when it stopped.
        dialog.stopped.set_text("now")
    qtbot.keyClick(dialog.stopped.edit, KEY.Key_Return)
    made = [work for work in hours.work(session) if work.basis is WorkBasis.CLOCKED]
    assert sum(work.minutes for work in made) == 75
    assert clock.text() == "0:20"
    window.acts.undo()
    assert clock.text() == "1:15 +1"


def test_a_clock_found_running_is_asked_about_and_stopped_at_a_stated_time(
    qtbot, window, session, folder
):
    window.desk.act(clockings.clock_on, "Iris", started=yesterday(19, 40))
    assert window.close_journal()
    window.acts.open_folder(folder)
    session = window.desk.session
    (asked,) = banners(window)
    assert "still runs for Iris since yesterday 19:40" in asked
    press_clock(qtbot, window)
    choose(qtbot, "Clock Iris")
    dialog = opened_dialog(ClockOffDialog)
    assert "Still running?" in dialog.said.text()
    assert dialog.hours.text() == ""
    dialog.accept_button.click()
    assert dialog.isVisible()
    assert dialog.stopped.is_wrong
    qtbot.keyClicks(dialog.stopped.edit, "yesterday 22:58")
    assert "The clock ran 3 h 18 min" in dialog.ran.text()
    assert dialog.hours.text() == "3 h 20 min"
    dialog.hours.edit.selectAll()
    qtbot.keyClicks(dialog.hours.edit, "3h")
    qtbot.keyClick(dialog.hours.edit, KEY.Key_Return)
    assert (latest(session).minutes, latest(session).basis) == (180, WorkBasis.CLOCKED)
    assert latest(session).when.earliest.date() == date.today() - timedelta(days=1)


def test_more_than_the_clock_ran_is_refused_in_the_dialog(qtbot, window, session):
    window.desk.act(clockings.clock_on, "Iris", started=yesterday(9))
    window.workspace.clock.clock_off(clockings.running(session)[0])
    dialog = opened_dialog(ClockOffDialog)
    dialog.stopped.set_text("yesterday 10:00")
    dialog.hours.edit.selectAll()
    qtbot.keyClicks(dialog.hours.edit, "1:30")
    dialog.accept_button.click()
    assert "of that, 1 h 30 min can't be recorded" in dialog.problem.text()
    dialog.away_button.click()
    assert not dialog.isVisible()
    assert clockings.running(session) == ()
    window.acts.undo()
    assert len(clockings.running(session)) == 1


def test_ticking_writes_nothing(window, session):
    window.desk.act(clockings.clock_on, "Iris")
    before = len(history.edits(session, 1000))
    data = session.journal.db.execute("PRAGMA data_version").fetchone()
    for _ in range(50):
        window.workspace.clock.show_time()
    assert len(history.edits(session, 1000)) == before
    assert session.journal.db.execute("PRAGMA data_version").fetchone() == data


def test_a_read_only_journal_has_no_clock_to_press(qtbot, window, folder):
    assert window.close_journal()
    with open_journal(folder):
        window.acts.open_folder(folder)
        assert not window.workspace.clock.isEnabled()


# --- the line


def quick(qtbot, window):
    qtbot.keyClick(window, KEY.Key_L, Qt.KeyboardModifier.ControlModifier)
    return window.workspace._quick_line


@pytest.mark.parametrize("page", ["Drawing", "Ledger", "Gaps"])
def test_hours_are_said_in_one_line_from_any_page_and_taken_back(qtbot, window, session, page):
    window.acts.show_page(page)
    before = len(hours.work(session))
    strip = quick(qtbot, window)
    edit = strip.line.edit
    assert strip.isVisible()
    qtbot.keyClicks(edit, "3h boot lid with Iris yesterday")
    assert "3 h by Tom and Iris" in strip.line.note.text()
    qtbot.keyClick(edit, KEY.Key_Return)
    assert len(hours.work(session)) == before + 2
    assert strip.line.note.text().startswith("Recorded: 3 h by Tom and Iris")
    assert edit.text() == ""
    qtbot.keyClick(edit, KEY.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert len(hours.work(session)) == before
    assert strip.line.note.text().startswith("Taken back: Record 3 h")
    qtbot.keyClick(edit, KEY.Key_Escape)
    assert not strip.isVisible()


def test_a_line_without_hours_is_refused_where_it_stands(qtbot, window, session):
    strip = quick(qtbot, window)
    qtbot.keyClicks(strip.line.edit, "sweeping")
    qtbot.keyClick(strip.line.edit, KEY.Key_Return)
    assert strip.line.is_wrong
    assert strip.isVisible()
    assert len(hours.work(session)) == 3
