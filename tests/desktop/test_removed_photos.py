"""Removed photos on the Timeline and in the Journal menu: seen, brought back, cleared out."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMessageBox

from journal.actions import photos as photo_actions
from journal.actions.journals import open_journal
from journal.actions.settings import Settings
from journal.desktop.desk import Desk, Nothing
from journal.desktop.pages.timeline import TimelinePage
from journal.desktop.pages.timeline_groups import Shown
from journal.desktop.tasks import TaskRunner
from journal.desktop.window import Window
from journal.domain.ids import PhotoId
from tests.desktop import workshop
from tests.desktop.garage import garage

FIRST, SECOND = PhotoId(1), PhotoId(5)


@pytest.fixture
def session(tmp_path):
    with garage(tmp_path, 4, 3) as made:
        yield made


@pytest.fixture
def page(qtbot, qapp, session):
    runner = TaskRunner()
    desk = Desk(session, runner, Settings())
    made = TimelinePage(desk)
    qtbot.addWidget(made)
    desk.changed.connect(made.refresh)
    desk.selected.connect(made.show_selection)
    made.resize(1000, 800)
    made.show()
    made.refresh(None)
    read(qtbot, made)
    yield made
    runner.close()


def read(qtbot, page):
    qtbot.waitUntil(lambda: page._reading is None)


def remove(qtbot, page, *ids):
    page.desk.act(photo_actions.remove_photos, ids)
    read(qtbot, page)


def test_the_filter_of_removed_photos_shows_only_where_there_are_some(qtbot, page):
    choice = page.bar.choice(Shown.REMOVED)
    assert not choice.isVisible()
    remove(qtbot, page, FIRST, SECOND)
    assert choice.isVisible()
    assert choice.text() == "Removed (2)"
    assert page.bar.choice(Shown.ALL).text() == "All (5)"


def test_removed_photos_are_brought_back_from_among_themselves(qtbot, page, session):
    remove(qtbot, page, FIRST, SECOND)
    page.bar.choice(Shown.REMOVED).click()
    assert set(page.grid.selection.order) == {FIRST, SECOND}
    page.grid.select([SECOND])
    assert page.selection_bar.bring_back.isEnabled()
    page.selection_bar.bring_back.click()
    read(qtbot, page)
    assert [photo.id for photo in photo_actions.removed_photos(session)] == [FIRST]
    assert page.grid.selection.order == (FIRST,)


def test_once_the_last_is_back_all_photos_show_again(qtbot, page):
    remove(qtbot, page, FIRST)
    page.bar.choice(Shown.REMOVED).click()
    page.grid.select([FIRST])
    page.grid.setFocus()
    qtbot.keyClick(page.grid, Qt.Key.Key_B)
    read(qtbot, page)
    assert page.bar.shown is Shown.ALL
    assert not page.bar.choice(Shown.REMOVED).isVisible()
    assert len(page.grid.selection.order) == 7


def test_a_removed_photo_is_only_brought_back_and_is_in_nobodys_hand(qtbot, page):
    remove(qtbot, page, FIRST)
    page.bar.choice(Shown.REMOVED).click()
    page.grid.select([FIRST])
    offered = [action.text().replace("&", "") for action in page.acts.menu().actions()]
    visible = [a.text().replace("&", "") for a in page.acts.menu().actions() if a.isVisible()]
    assert "Remove" in offered
    assert [text for text in visible if text] == ["Show large", "Bring back"]
    assert page.desk.selection == Nothing()
    shown = [b.text() for b in page.selection_bar._buttons if b.isVisible()]
    assert shown == []


def test_a_journal_whose_photos_are_all_removed_still_offers_them(qtbot, page, session):
    remove(qtbot, page, *(photo.id for photo in photo_actions.all_photos(session)))
    assert page.bar.choice(Shown.REMOVED).isVisible()


def test_reading_only_brings_nothing_back(qtbot, page, session):
    remove(qtbot, page, FIRST)
    with open_journal(session.folder) as reading:
        assert reading.read_only
        runner = TaskRunner()
        second = TimelinePage(Desk(reading, runner, Settings()))
        qtbot.addWidget(second)
        second.show()
        second.refresh(None)
        read(qtbot, second)
        second.bar.choice(Shown.REMOVED).click()
        second.grid.select([FIRST])
        assert not second.selection_bar.bring_back.isEnabled()
        runner.close()


@pytest.fixture
def window(qtbot, tmp_path):
    with workshop.empty(tmp_path) as made:
        workshop_photos(made, tmp_path)
        folder = made.folder
    window = Window(Settings())
    window.show()
    window.acts.open_folder(folder)
    yield window
    window.tasks.stop_all()
    window.close()
    window.deleteLater()


def workshop_photos(session, folder):
    from journal.actions.add_photos import add_photos

    for number in range(3):
        (folder / f"IMG_{number}.jpg").write_bytes(workshop.picture(number))
    added = add_photos(session, sorted(folder.glob("IMG_*.jpg"))).added
    photo_actions.remove_photos(session, [one.photo_id for one in added[:2]])


def test_clearing_out_says_how_many_files_and_keeps_them_unless_told(window, monkeypatch):
    asked = []
    monkeypatch.setattr(QMessageBox, "exec", lambda box: asked.append(box.text()))
    window.acts.clear_out()
    assert asked == ["Send 2 files of removed photos and papers to the system's trash?"]
    assert photo_actions.count_removed_originals(window.desk.session) == 2


def test_clearing_out_sends_the_files_to_the_trash(qtbot, window, monkeypatch, tmp_path):
    sent = []

    def trash(path):
        sent.append(path)
        path.chmod(0o644)
        path.unlink()

    monkeypatch.setattr(photo_actions, "to_trash", trash)
    monkeypatch.setattr(QMessageBox, "exec", lambda box: None)
    monkeypatch.setattr(QMessageBox, "clickedButton", lambda box: box.buttons()[0])
    told = []
    window.desk.changed.connect(lambda changes: told.append(changes.kinds))
    window.acts.clear_out()
    session = window.desk.session
    qtbot.waitUntil(lambda: bool(told))
    assert len(sent) == 2
    # Hours and welds were known by photos too.
    assert told[-1] >= {"photos", "work", "metalwork"}
    assert photo_actions.removed_photos(session) == ()


def test_tables_are_exported_into_the_folder_chosen(qtbot, window, monkeypatch, tmp_path):
    out = tmp_path / "tables"
    monkeypatch.setattr(window.acts, "_choose_folder", lambda _question: out)
    said = []
    window.desk.message.connect(lambda text, _level: said.append(text))
    window.menus.actions["Export tables"].trigger()
    qtbot.waitUntil(lambda: bool(said))
    files = list(out.iterdir())
    assert said == [f"{len(files)} files are in {out}."]
    assert (out / "journal.xlsx").stat().st_size > 0
