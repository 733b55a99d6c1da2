"""Areas, stages, hours and entries as a person records them."""

from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from journal.actions import areas, drawings, history, hours
from journal.actions.settings import load_settings
from journal.desktop.desk import AreaSelected, PanelSelected
from journal.desktop.dialogs.area import AreaDialog
from journal.desktop.dialogs.entry import EntryDialog
from journal.desktop.dialogs.hours import HoursDialog
from journal.desktop.dialogs.measure import MeasureDialog
from journal.desktop.dialogs.stage import StageDialog, next_stage
from journal.desktop.stylesheet import dress
from journal.domain.areas import DEFAULT_STAGES
from journal.domain.shapes import Point
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
def show(qtbot):
    def show_dialog(dialog):
        qtbot.addWidget(dialog)
        dialog.show()
        return dialog

    return show_dialog


def test_no_sentence_lies_over_the_field_above_it(qtbot, desk, session, show):
    view = drawings.views(session)[0].id
    points = (Point(10, 20), Point(300, 400))
    dialog = show(MeasureDialog(desk, None, view_id=view, points=points))
    field = dialog.points
    qtbot.waitUntil(lambda: field.note.geometry().top() > field.edit.geometry().bottom())


# --- repair areas ---


def test_an_area_is_marked_on_panels_typed_in_parts(qtbot, desk, session, show):
    dialog = show(AreaDialog(desk))
    qtbot.keyClicks(dialog.panels.pick, "right sill")
    qtbot.keyClick(dialog.panels.pick, Qt.Key.Key_Return)
    qtbot.keyClicks(dialog.panels.pick, "Front door, right")
    qtbot.keyClick(dialog.panels.pick, Qt.Key.Key_Return)
    assert dialog.isVisible()
    qtbot.keyClicks(dialog.what_found, "Filler over rust")
    dialog.when.set_text("summer 2009")
    dialog.accept_button.click()
    made = areas.areas(session)[0]
    labels = [panel.label for panel in drawings.area_panels(session, made)]
    assert labels[1] == "Front door, right"
    assert "right" in labels[0]
    assert "ill" in labels[0]
    assert made.name == labels[0]
    assert made.found == "Filler over rust"
    assert (made.stage, made.changes[0].when.edtf) == ("found", "2009-22")
    assert desk.selection == AreaSelected(made.id)


def test_a_panel_taken_from_the_list_leaves_the_line_empty(qtbot, desk, session, show):
    dress(QApplication.instance(), "light")
    dialog = show(AreaDialog(desk))
    qtbot.keyClicks(dialog.panels.pick, "sill")
    popup = dialog.panels.pick.completer().popup()
    qtbot.waitUntil(popup.isVisible)
    qtbot.keyClick(popup, Qt.Key.Key_Down)
    qtbot.keyClick(popup, Qt.Key.Key_Return)
    assert len(dialog.panels.panel_ids()) == 1
    qtbot.waitUntil(lambda: dialog.panels.pick.text() == "")
    chip = dialog.panels._flow.itemAt(0).widget()
    qtbot.waitUntil(lambda: chip.height() >= chip.sizeHint().height())
    assert chip.geometry().bottom() <= dialog.panels._chips.rect().bottom()


def test_a_new_area_starts_on_the_panel_selected_and_its_name_can_be_written_over(
    qtbot, desk, session, show
):
    boot = workshop.panel(session, "Boot lid")
    desk.select(PanelSelected(boot))
    dialog = show(AreaDialog(desk))
    assert dialog.name.text() == "Boot lid"
    dialog.name.set_text("Boot lid, inner frame")
    dialog.accept_button.click()
    made = max(areas.areas(session), key=lambda area: area.id)
    assert (made.name, made.panel_ids) == ("Boot lid, inner frame", (boot,))


def test_words_that_mean_no_panel_are_refused_with_near_ones(qtbot, desk, session, show):
    before = areas.areas(session)
    dialog = show(AreaDialog(desk))
    qtbot.keyClicks(dialog.panels.pick, "flux capacitor")
    dialog.accept_button.click()
    assert "no panel" in dialog.panels.problem.text()
    assert areas.areas(session) == before


def test_an_area_that_is_there_opens_at_the_words_it_lacks(desk, session, show):
    known = areas.areas(session)[0]
    dialog = show(AreaDialog(desk, area=known))
    assert dialog.focusWidget() is dialog.what_done


def test_an_area_needs_a_name(desk, session, show):
    before = areas.areas(session)
    dialog = show(AreaDialog(desk))
    dialog.accept_button.click()
    assert dialog.name.is_wrong
    assert areas.areas(session) == before


def test_what_was_done_is_said_later(qtbot, desk, session, show):
    known = areas.areas(session)[0]
    dialog = show(AreaDialog(desk, area=known))
    qtbot.keyClicks(dialog.what_done, "1 mm steel let in, wax behind it")
    dialog.accept_button.click()
    changed = areas.area(session, known.id)
    assert changed.done == "1 mm steel let in, wax behind it"
    assert (changed.name, changed.found, changed.changes) == (
        known.name,
        known.found,
        known.changes,
    )


# --- stages ---


def test_the_next_stage_is_proposed_with_todays_date(desk, session, show):
    known = next(a for a in areas.areas(session) if a.stage == "new metal in")
    dialog = show(StageDialog(desk, known))
    assert dialog.stage.currentText() == "welded"
    dialog.note.setText("plug welds, 8 mm")
    dialog.accept_button.click()
    change = areas.area(session, known.id).changes[-1]
    assert (change.stage, change.when, change.note) == (
        "welded",
        When.on(date.today()),
        "plug welds, 8 mm",
    )


def test_the_stage_after():
    assert next_stage(DEFAULT_STAGES, "") == "found"
    assert next_stage(DEFAULT_STAGES, "welded") == "dressed"
    assert next_stage(DEFAULT_STAGES, "finished") == ""
    assert next_stage((), "welded") == ""


# --- hours ---


def test_enter_records_hours_and_offers_the_next(qtbot, desk, session, show):
    one = areas.areas(session)[0]
    dialog = show(HoursDialog(desk, area_id=one.id))
    dialog.when.set_text("4 June 2016")
    dialog.person.set_text("Iris")
    qtbot.keyClicks(dialog.hours.edit, "2h 15")
    qtbot.keyClick(dialog.hours.edit, Qt.Key.Key_Return)
    assert dialog.isVisible()
    assert dialog.hours.text() == ""
    assert "2 h 15 min by Iris" in dialog.recorded.text()
    qtbot.keyClicks(dialog.hours.edit, "45 min")
    qtbot.keyClick(dialog.hours.edit, Qt.Key.Key_Return)
    made = sorted(hours.work(session), key=lambda w: w.id)[-2:]
    assert [(w.minutes, w.person, w.when.edtf) for w in made] == [
        (135, "Iris", "2016-06-04"),
        (45, "Iris", "2016-06-04"),
    ]
    assert all(w.shares[0].area_id == one.id for w in made)


def test_the_last_person_is_remembered(qtbot, desk, session, show):
    dialog = show(HoursDialog(desk))
    assert dialog.person.text() == "Tom"
    dialog.person.set_text("Iris")
    dialog.hours.set_text("1")
    dialog.accept_button.click()
    dialog.close()
    assert load_settings().person == "Iris"
    assert show(HoursDialog(desk)).person.text() == "Iris"


def test_hours_that_are_none_are_said_at_the_field(qtbot, desk, session, show):
    before = hours.work(session)
    dialog = show(HoursDialog(desk))
    dialog.hours.set_text("25")
    dialog.accept_button.click()
    assert "more time than a day has" in dialog.hours.note.text()
    dialog.hours.set_text("3")
    dialog.person.set_text("")
    dialog.accept_button.click()
    assert dialog.person.is_wrong
    assert hours.work(session) == before


def test_hours_are_shared_to_the_minute(qtbot, desk, session, show):
    dialog = show(HoursDialog(desk))
    dialog.hours.set_text("1:40")
    for known in areas.areas(session)[:3]:
        dialog.shares.add(known.id)
    assert dialog.shares.amounts() == (34, 33, 33)


def test_hours_that_are_there_are_changed_and_the_dialog_closes(qtbot, desk, session, show):
    known = hours.work(session)[0]
    dialog = show(HoursDialog(desk, work=known))
    assert dialog.hours.text() == "3 h 30 min"
    dialog.hours.set_text("4")
    qtbot.keyClick(dialog.hours.edit, Qt.Key.Key_Return)
    assert not dialog.isVisible()
    changed = next(w for w in hours.work(session) if w.id == known.id)
    assert (changed.minutes, changed.shares) == (240, known.shares)


# --- entries ---


def test_an_entry_starts_about_what_is_selected(qtbot, desk, session, show):
    known = areas.areas(session)[1]
    desk.select(AreaSelected(known.id))
    dialog = show(EntryDialog(desk))
    qtbot.keyClicks(dialog.words, "Drain holes were blocked.")
    dialog.accept_button.click()
    made = areas.entries(session)[-1]
    assert (made.text, made.area_id) == ("Drain holes were blocked.", known.id)


def test_an_entry_may_be_about_the_whole_car_or_moved_to_a_panel(qtbot, desk, session, show):
    dialog = show(EntryDialog(desk))
    qtbot.keyClicks(dialog.words, "Towed home.")
    dialog.accept_button.click()
    made = areas.entries(session)[-1]
    assert (made.area_id, made.panel_id) == (None, None)
    again = show(EntryDialog(desk, entry=made))
    again.about.set_text("Panel: Boot lid")
    again.accept_button.click()
    changed = next(e for e in areas.entries(session) if e.id == made.id)
    assert changed.panel_id == workshop.panel(session, "Boot lid")


def test_an_entry_without_words_or_about_nothing_known_is_refused(desk, session, show):
    before = history.edits(session)
    dialog = show(EntryDialog(desk))
    dialog.accept_button.click()
    assert "needs some words" in dialog.problem.text()
    dialog.words.setPlainText("Something")
    dialog.about.set_text("no such thing")
    dialog.accept_button.click()
    assert dialog.about.is_wrong
    assert history.edits(session) == before
