"""The stages of a repair area on its page: moved on, dated, changed, taken out."""

from dataclasses import replace
from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QToolButton

from journal.actions import areas, history
from journal.desktop.dialogs.stage import StageDialog
from journal.desktop.pages.areas import AreasPage
from journal.desktop.widgets.stage_chip import StageChip
from journal.domain.errors import JournalError
from journal.domain.ids import StageChangeId
from journal.domain.when import When, parse
from tests.desktop import workshop
from tests.desktop.area_hands import area_named, pick
from tests.desktop.desks import desk_over, opened_dialog, put_away


@pytest.fixture
def session(tmp_path):
    with workshop.furnished(tmp_path) as made:
        yield made


@pytest.fixture
def desk(qapp, session):
    with desk_over(session) as made:
        yield made


@pytest.fixture
def page(qtbot, desk):
    made = AreasPage(desk)
    qtbot.addWidget(made)
    desk.changed.connect(made.refresh)
    desk.selected.connect(made.show_selection)
    made.resize(900, 700)
    made.refresh(None)
    made.show()
    yield made
    put_away(made)


def test_one_press_moves_to_the_next_stage_today_and_undo_takes_it_back(qtbot, page, desk, session):
    pick(qtbot, page, "Sill, left, rear end")
    assert page.detail.move_button.text() == "&Move to welded"
    qtbot.mouseClick(page.detail.move_button, Qt.MouseButton.LeftButton)
    known = area_named(session, "Sill, left, rear end")
    assert (known.stage, known.changes[-1].when) == ("welded", When.on(date.today()))
    assert page.detail.move_button.text() == "&Move to dressed"
    desk.act(history.undo)
    assert page.detail.move_button.text() == "&Move to welded"


def test_a_date_of_a_stage_is_taken_out(qtbot, page, session):
    pick(qtbot, page, "Sill, left, rear end")
    away = next(
        b
        for b in page.detail.findChildren(QToolButton)
        if b.toolTip() == "Take out the date of “new metal in”"
    )
    away.click()
    assert area_named(session, "Sill, left, rear end").stage == "cut back"


def test_a_finished_area_offers_no_further_stage(qtbot, page):
    pick(qtbot, page, "Front wing, lower edge")
    assert page.detail.move_button.isHidden()


STAGED = "Sill, left, rear end"


def chip(page, stage):
    return next(c for c in page.detail.findChildren(StageChip) if c.words.text().startswith(stage))


def test_the_date_of_a_stage_is_changed_from_its_chip(qtbot, page, session, desk):
    pick(qtbot, page, STAGED)
    chip(page, "cut back").words.click()
    dialog = opened_dialog(StageDialog)
    assert (dialog.stage.currentText(), dialog.when.value()) == ("cut back", parse("2015-05-02"))
    dialog.when.set_text("3 May 2015")
    dialog.note.setText("with the thin disc")
    dialog.accept_button.click()
    changed = next(c for c in area_named(session, STAGED).changes if c.stage == "cut back")
    assert (changed.when, changed.note) == (parse("2015-05-03"), "with the thin disc")
    assert len(area_named(session, STAGED).changes) == 3
    desk.act(history.undo)
    again = next(c for c in area_named(session, STAGED).changes if c.stage == "cut back")
    assert (again.id, again.when, again.note) == (changed.id, parse("2015-05-02"), "")


def test_the_dialog_says_which_stage_shows_afterwards(qtbot, desk, session):
    dialog = StageDialog(desk, area_named(session, STAGED), stage="found")
    qtbot.addWidget(dialog)
    assert dialog.after.text() == "Afterwards the area shows as “found”."
    dialog.when.set_text("2015-01-01")
    still = "Afterwards the area still shows as “new metal in”: its 9 May 2015 is later."
    assert dialog.after.text() == still
    dialog.stage.setCurrentText("welded")
    assert dialog.after.text() == still
    dialog.when.set_text("9 May 2015")
    assert dialog.after.text() == "Afterwards the area shows as “welded”."
    dialog.accept_button.click()
    assert area_named(session, STAGED).stage == "welded"


def test_a_date_not_yet_typed_is_not_complained_of(qtbot, desk, session):
    dialog = StageDialog(desk, area_named(session, STAGED))
    qtbot.addWidget(dialog)
    dialog.when.set_text("20")
    dialog.when.set_text("")
    assert dialog.after.text() == ""
    assert not dialog.when.is_wrong


def test_what_the_dialog_says_of_a_change_is_what_comes_of_it(qtbot, desk, session):
    known = area_named(session, STAGED)
    last = known.changes[-1]
    dialog = StageDialog(desk, known, change=last)
    qtbot.addWidget(dialog)
    dialog.when.set_text("2015-04-01")
    assert "still shows as “cut back”" in dialog.after.text()
    dialog.accept_button.click()
    assert area_named(session, STAGED).stage == "cut back"


def test_a_change_that_the_area_has_not_is_refused(session):
    change = replace(area_named(session, STAGED).changes[0], id=StageChangeId(999))
    with pytest.raises(JournalError, match="no such date"):
        areas.change_stage_change(session, change)
    known = area_named(session, STAGED).changes[0]
    with pytest.raises(JournalError, match="no stage “shiny”"):
        areas.change_stage_change(session, replace(known, stage="shiny"))
