"""Dialogs of the frame: new journal, car, milestones, history, check, help."""

import re

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from journal.actions import cars, history
from journal.actions.settings import Settings
from journal.desktop.desk import Desk
from journal.desktop.dialogs.car import CarDialog
from journal.desktop.dialogs.checked import CheckedDialog, check_words
from journal.desktop.dialogs.help import HELP_PAGES, HelpDialog, help_text
from journal.desktop.dialogs.history import HistoryDialog
from journal.desktop.dialogs.milestones import MilestoneDialog, MilestonesDialog
from journal.desktop.dialogs.new_journal import NewJournalDialog
from journal.desktop.tasks import TaskRunner
from journal.domain.car import MilestoneKind
from journal.domain.cautions import CAUTIONS
from journal.domain.checks import CheckReport, Fault
from journal.domain.starters.bodies import BODIES
from journal.domain.when import parse
from journal.files.assets import asset
from tests.desktop.workshop import empty


@pytest.fixture
def desk(qapp, tmp_path):
    runner = TaskRunner()
    with empty(tmp_path) as session:
        yield Desk(session, runner, Settings())
    runner.close()


# --- new journal ---


@pytest.fixture
def asking(qtbot, tmp_path):
    made = NewJournalDialog(tmp_path)
    qtbot.addWidget(made)
    yield made
    if made.session:
        made.session.close()


def test_a_name_is_enough_for_a_journal(asking, tmp_path):
    asking._name.setText("Halden Rook")
    asking.accept_button.click()
    assert asking.session is not None
    assert asking.session.folder == tmp_path / "Halden Rook"
    assert cars.car(asking.session).title == "Halden Rook"


def test_without_a_name_a_sentence_says_so_and_nothing_is_made(asking, tmp_path):
    asking.accept_button.click()
    assert asking.session is None
    assert asking.problem.text().startswith("Give the car a name")
    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_holds_something_is_refused_in_words(asking, tmp_path):
    (tmp_path / "Halden Rook").mkdir()
    (tmp_path / "Halden Rook" / "notes.txt").write_text("mine")
    asking._name.setText("Halden Rook")
    asking.accept_button.click()
    assert asking.session is None
    assert asking.problem.text()
    assert (tmp_path / "Halden Rook" / "notes.txt").read_text() == "mine"


@pytest.mark.parametrize("folder", ["", "below/here"])
def test_a_folder_must_be_given_with_its_full_path(asking, folder):
    asking._name.setText("Halden Rook")
    asking._folder.setText(folder)
    asking.accept_button.click()
    assert asking.session is None
    assert asking.problem.text()


def test_an_unknown_currency_is_named(asking):
    asking._name.setText("Halden Rook")
    asking._currency.setCurrentText("eurodollars")
    asking.accept_button.click()
    assert "EURODOLLARS" in asking.problem.text()


def test_the_folder_follows_the_name_until_it_is_typed(asking, tmp_path):
    asking._name.setText('Halden: "Rook"/2')
    assert asking.folder() == tmp_path / "Halden Rook2"
    asking._folder.setText("/elsewhere")
    asking._folder.textEdited.emit("/elsewhere")
    asking._name.setText("Other")
    assert str(asking.folder()) == "/elsewhere"


def test_each_body_is_drawn_as_it_is_picked(qtbot, asking):
    asking.show()
    seen = set()
    for number in range(len(BODIES)):
        asking._body.setCurrentIndex(number)
        asking._draw()
        assert asking.problem.text() == ""
        seen.add(asking._preview.accessibleDescription())
        assert not asking._preview.grab().isNull()
    assert len(BODIES) == asking._body.count() >= 7


def test_measurements_count_only_where_they_are_known(asking):
    asking._wheelbase.setValue(2600)
    assert asking.car().wheelbase_mm == 0
    asking._sizes_known.setChecked(True)
    assert asking.car().wheelbase_mm == 2600


def test_measurements_that_fit_no_car_are_named_while_typing(asking):
    asking._sizes_known.setChecked(True)
    asking._wheelbase.setValue(4000)
    asking._length.setValue(2000)
    asking._draw()
    assert asking.problem.text()


def test_the_drawing_follows_a_measurement_at_once(qtbot, asking):
    asking._sizes_known.setChecked(True)
    asking._length.setValue(8999)
    asking._length.setValue(20)
    qtbot.waitUntil(lambda: "20 mm" in asking.problem.text(), timeout=1000)


def test_the_name_can_be_typed_at_once_and_enter_begins_the_journal(qtbot, asking, tmp_path):
    asking.show()
    assert asking.focusWidget() is asking._name
    qtbot.keyClicks(asking._name, "Merle")
    asking._sizes_known.setChecked(True)
    asking._length.setFocus()
    qtbot.keyClick(asking._length, Qt.Key.Key_Return)
    assert asking.session is not None
    assert asking.session.folder == tmp_path / "Merle"


def test_enter_on_cancel_cancels(qtbot, asking):
    asking._name.setText("Merle")
    asking.show()
    asking.cancel_button.setFocus()
    qtbot.keyClick(asking.cancel_button, Qt.Key.Key_Return)
    assert asking.session is None
    assert not asking.isVisible()


def test_tab_comes_to_the_buttons_last(qtbot, asking):
    with qtbot.waitActive(asking):
        asking.show()
    passed = []
    asking._folder.setFocus()
    for _ in range(3):
        qtbot.keyClick(asking.focusWidget(), Qt.Key.Key_Tab)
        passed.append(asking.focusWidget())
    assert passed[1:] == [asking.accept_button, asking.cancel_button]


# --- car and milestones ---


def test_the_car_is_changed_in_one_edit(qtbot, desk):
    dialog = CarDialog(desk)
    qtbot.addWidget(dialog)
    dialog._fields["year"].setText("1968")
    dialog._story.setPlainText("Bought with rust nobody saw.")
    dialog._stages.setPlainText("found\n\nmended\n")
    with qtbot.waitSignal(desk.changed):
        dialog.accept_button.click()
    car = desk.ask(cars.car)
    assert (car.year, car.story, car.stages) == (
        "1968",
        "Bought with rust nobody saw.",
        ("found", "mended"),
    )
    desk.act(history.undo)
    assert desk.ask(cars.car).year == ""


def test_a_car_left_as_it_was_makes_no_edit(qtbot, desk):
    dialog = CarDialog(desk)
    qtbot.addWidget(dialog)
    before = len(desk.ask(history.edits))
    dialog.accept_button.click()
    assert len(desk.ask(history.edits)) == before


@pytest.mark.parametrize("stages", ["only one", "same\nsame", ""])
def test_a_list_of_stages_that_cannot_be_is_refused(qtbot, desk, stages):
    dialog = CarDialog(desk)
    qtbot.addWidget(dialog)
    dialog._stages.setPlainText(stages)
    dialog.accept_button.click()
    assert dialog.problem.text()
    assert len(desk.ask(cars.car).stages) == 7


def test_milestones_are_listed_changed_and_removed(qtbot, desk):
    desk.act(cars.add_milestone, MilestoneKind.STRIPPED, parse("2015-06"))
    dialog = MilestonesDialog(desk)
    qtbot.addWidget(dialog)
    assert dialog._list.topLevelItemCount() == 1
    assert not dialog._remove.isEnabled()
    dialog._list.setCurrentItem(dialog._list.topLevelItem(0))
    dialog._remove.click()
    assert dialog._list.topLevelItemCount() == 0
    desk.act(history.undo)
    assert dialog._list.topLevelItemCount() == 1


def test_without_milestones_there_is_an_invitation(qtbot, desk):
    dialog = MilestonesDialog(desk)
    qtbot.addWidget(dialog)
    dialog.show()
    assert dialog._nothing.isVisible()
    assert not dialog._list.isVisible()
    desk.act(cars.add_milestone, MilestoneKind.STRIPPED, parse("2015-06"))
    assert not dialog._nothing.isVisible()
    assert dialog._list.isVisible()


def test_a_milestone_needs_a_date_that_can_be_read(qtbot):
    saved = []
    dialog = MilestoneDialog(lambda *given: saved.append(given), None)
    qtbot.addWidget(dialog)
    dialog.accept_button.click()
    assert saved == []
    assert dialog.problem.text()
    dialog._when.set_text("summer 2016")
    dialog.accept_button.click()
    assert saved == [(MilestoneKind.ACQUIRED, parse("summer 2016"), "")]


# --- history and check ---


def test_every_edit_is_listed_and_the_latest_can_be_taken_back(qtbot, desk):
    desk.act(cars.add_milestone, MilestoneKind.STRIPPED, parse("2015-06"))
    dialog = HistoryDialog(desk)
    qtbot.addWidget(dialog)
    assert dialog._list.topLevelItem(0).text(1) == "Add milestone “stripped”"
    before = dialog._list.topLevelItemCount()
    dialog._undo.click()
    assert desk.ask(cars.milestones) == ()
    assert dialog._list.topLevelItemCount() == before + 1
    assert dialog._list.topLevelItem(0).text(2) == "taken back"
    dialog._redo.click()
    assert len(desk.ask(cars.milestones)) == 1


def test_a_check_says_how_much_was_looked_at():
    words = check_words(CheckReport((), originals=1200, edits=40, loose=0))
    assert words == "All is as it was recorded: 1,200 originals and 40 edits were checked."


def test_a_check_names_each_fault(qtbot):
    fault = Fault("originals/ab/abcd.jpg", "its bytes have changed")
    dialog = CheckedDialog(CheckReport((fault,), originals=3, edits=4, loose=2))
    qtbot.addWidget(dialog)
    words = " ".join(label.text() for label in dialog.findChildren(QLabel))
    assert "Something is wrong" in words
    assert "1 fault was found" in words


# --- help ---


@pytest.mark.parametrize("page", [name for name, _ in HELP_PAGES])
def test_every_page_of_the_help_is_there_and_its_links_lead_somewhere(page):
    names = {name for name, _ in HELP_PAGES}
    text = help_text(page)
    assert text.startswith("# ")
    assert set(re.findall(r"\]\(([^)]+)\)", text)) <= names


def test_no_page_of_the_help_is_out_of_reach():
    assert {p.stem for p in asset("help").glob("*.md")} == {name for name, _ in HELP_PAGES}


def test_the_help_holds_every_caution_with_its_source():
    text = help_text("cautions")
    for caution in CAUTIONS:
        assert caution.title in text
        assert caution.text in text
        assert caution.source in text


def test_links_turn_the_page(qtbot):
    from PySide6.QtCore import QUrl

    dialog = HelpDialog("start")
    qtbot.addWidget(dialog)
    assert "Where to start" in dialog._text.toPlainText()
    dialog._text.anchorClicked.emit(QUrl("dates"))
    assert dialog._text.toPlainText().startswith("Dates, and how they are known")
    assert dialog._list.currentItem().text() == "Dates, and how they are known"


def test_every_key_of_the_menus_is_in_the_help(qtbot):
    from journal.desktop.window import Window

    window = Window(Settings())
    qtbot.addWidget(window)
    text = help_text("keys")
    for action in set(window.menus.actions.values()):
        keys = action.shortcut().toString()
        if not keys or re.fullmatch(r"Ctrl\+[1-6]", keys):
            continue
        letter = keys.rsplit("+", 1)[-1]
        assert keys in text or re.search(rf"Ctrl\+Shift\+.*\b{letter}\b", text), keys
    window.tasks.close()
