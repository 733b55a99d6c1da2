"""Hours said in one line of the dialog: understood as typed, recorded by Enter."""

from datetime import date, timedelta

import pytest
from PySide6.QtCore import Qt

from journal.actions import areas, history, hours
from journal.desktop.desk import AreaSelected
from journal.desktop.dialogs.hours import HoursDialog
from journal.domain.when import When
from tests.desktop import workshop
from tests.desktop.desks import desk_over


@pytest.fixture
def session(tmp_path):
    with workshop.furnished(tmp_path) as made:
        yield made


@pytest.fixture
def desk(qapp, session):
    with desk_over(session) as made:
        yield made


@pytest.fixture
def dialog(qtbot, desk):
    made = HoursDialog(desk)
    qtbot.addWidget(made)
    made.show()
    made.person.set_text("Iris")
    return made


def latest(session, count):
    return sorted(hours.work(session), key=lambda work: work.id)[-count:]


def test_a_line_is_understood_as_it_is_typed(qtbot, dialog):
    assert dialog.line.edit.hasFocus() or dialog.focusWidget() is dialog.line.edit
    qtbot.keyClicks(dialog.line.edit, "weld boot lid")
    assert "no time worked" in dialog.line.note.text()
    assert not dialog.line.is_wrong
    qtbot.keyClicks(dialog.line.edit, " 3h with Nils")
    said = dialog.line.note.text()
    assert said.startswith("3 h by Iris and Nils, ")
    assert "for “Boot lid lip”" in said
    assert said.endswith(": weld boot lid")


def test_enter_records_the_line_as_one_edit_and_asks_for_the_next(qtbot, dialog, session, desk):
    before = len(hours.work(session))
    qtbot.keyClicks(dialog.line.edit, "2h 15 boot lid with Nils yesterday")
    qtbot.keyClick(dialog.line.edit, Qt.Key.Key_Return)
    made = latest(session, 2)
    yesterday = When.on(date.today() - timedelta(days=1))
    assert [(w.person, w.minutes, w.when) for w in made] == [
        ("Iris", 135, yesterday),
        ("Nils", 135, yesterday),
    ]
    boot = next(a for a in areas.areas(session) if a.name == "Boot lid lip")
    assert {share.area_id for w in made for share in w.shares} == {boot.id}
    assert dialog.isVisible()
    assert dialog.line.text() == ""
    assert "2 h 15 min by Iris and Nils" in dialog.recorded.text()
    desk.act(history.undo)
    assert len(hours.work(session)) == before


def test_a_line_without_hours_is_refused_at_the_field(qtbot, dialog, session):
    before = hours.work(session)
    qtbot.keyClicks(dialog.line.edit, "weld sill")
    qtbot.keyClick(dialog.line.edit, Qt.Key.Key_Return)
    assert dialog.line.is_wrong
    assert hours.work(session) == before


def test_a_line_that_names_no_area_is_for_the_one_asked_about(qtbot, desk, session):
    area = areas.areas(session)[0]
    dialog = HoursDialog(desk, area_id=area.id)
    qtbot.addWidget(dialog)
    dialog.person.set_text("Iris")
    dialog.line.set_text("45 min sweeping")
    assert f"for “{area.name}”" in dialog.line.note.text()
    dialog.accept_button.click()
    assert latest(session, 1)[0].shares[0].area_id == area.id


def test_words_that_mean_no_one_area_are_not_put_to_the_one_selected(qtbot, desk, session):
    desk.select(AreaSelected(areas.areas(session)[0].id))
    dialog = HoursDialog(desk)
    qtbot.addWidget(dialog)
    dialog.person.set_text("Iris")
    dialog.line.set_text("45 min sweeping")
    assert "no repair area" in dialog.line.note.text()


def test_hours_that_are_there_have_no_line(qtbot, desk, session):
    dialog = HoursDialog(desk, work=hours.work(session)[0])
    qtbot.addWidget(dialog)
    dialog.show()
    assert not dialog.line.isVisible()
