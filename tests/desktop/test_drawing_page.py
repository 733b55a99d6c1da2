"""The Drawing page: pin a sitting, pin the next with one key, read a panel, go back in time."""

import pytest
from PySide6.QtCore import Qt

from journal.actions import history
from journal.actions import pins as pin_actions
from journal.actions.journals import open_journal
from journal.actions.settings import Settings
from journal.desktop.desk import Desk, PanelSelected, PhotosSelected
from journal.desktop.pages.drawing import DrawingPage
from journal.desktop.tasks import TaskRunner
from journal.domain.ids import PhotoId
from tests.desktop.garage import garage, panel_id


@pytest.fixture
def runner(qapp, session):
    made = TaskRunner()
    yield made
    made.close()


@pytest.fixture
def session(tmp_path):
    with garage(tmp_path, 3, 2, 4) as made:
        yield made


def shown(qtbot, runner, session):
    desk = Desk(session, runner, Settings())
    made = DrawingPage(desk)
    qtbot.addWidget(made)
    desk.changed.connect(made.refresh)
    desk.selected.connect(made.show_selection)
    made.resize(1000, 700)
    made.show()
    made.refresh(None)
    read(qtbot, made)
    return made


def read(qtbot, made):
    qtbot.waitUntil(lambda: made.is_read)


@pytest.fixture
def page(qtbot, runner, session):
    return shown(qtbot, runner, session)


def pinned(page, panel):
    return {pin.photo_id for pin in pin_actions.pins(page.desk.session) if pin.panel_id == panel}


def test_every_view_and_panel_of_the_drawing_can_be_reached(page):
    assert len(page.tabs._group.buttons()) == len(page._drawing.views) > 0
    assert page.panels.model.rowCount() == len(page._drawing.panels)
    assert page.side.tabText(0) == "&To place (9)"


def test_a_sitting_in_hand_is_pinned_to_the_panel_chosen(qtbot, page):
    sill = panel_id(page.desk.session, "Sill, left")
    page.tray.list.setCurrentIndex(page.tray.model.index(0))
    page.canvas.panel_chosen.emit(sill)
    read(qtbot, page)
    assert pinned(page, sill) == {6, 7, 8, 9}
    assert page.desk.selection == PanelSelected(sill)
    assert page.tray.in_hand() == (PhotoId(4), PhotoId(5))


def test_one_key_pins_the_next_sitting_where_the_last_one_went(qtbot, page):
    sill = panel_id(page.desk.session, "Sill, left")
    page.tray.list.setCurrentIndex(page.tray.model.index(0))
    page.canvas.panel_chosen.emit(sill)
    read(qtbot, page)
    page.canvas.setFocus()
    qtbot.keyClick(page.canvas, Qt.Key.Key_P, Qt.KeyboardModifier.ControlModifier)
    read(qtbot, page)
    assert pinned(page, sill) == {4, 5, 6, 7, 8, 9}
    qtbot.keyClick(page.canvas, Qt.Key.Key_P)
    read(qtbot, page)
    assert len(pinned(page, sill)) == 9
    assert page.tray.model.rowCount() == 0


def test_choosing_a_panel_with_nothing_in_hand_pins_nothing(qtbot, page):
    sill = panel_id(page.desk.session, "Sill, left")
    page.canvas.panel_chosen.emit(sill)
    assert pin_actions.pins(page.desk.session) == ()
    assert page.desk.selection == PanelSelected(sill)


def test_photos_dropped_on_a_panel_are_pinned_to_the_very_spot(qtbot, page):
    sill = panel_id(page.desk.session, "Sill, left")
    view = page.canvas.view_id
    page.canvas.photos_dropped.emit((PhotoId(1), PhotoId(2)), sill, view, 1500.0, 900.0)
    found = pin_actions.pins(page.desk.session)
    assert [(p.photo_id, p.view_id, p.x, p.y) for p in found] == [
        (1, view, 1500.0, 900.0),
        (2, view, 1500.0, 900.0),
    ]


def test_undoing_a_pin_brings_the_sitting_back_to_the_tray(qtbot, page):
    page.tray.list.setCurrentIndex(page.tray.model.index(0))
    page.canvas.panel_chosen.emit(panel_id(page.desk.session, "Roof"))
    read(qtbot, page)
    assert page.tray.model.rowCount() == 2
    page.desk.act(history.undo)
    read(qtbot, page)
    assert page.tray.model.rowCount() == 3


def test_pinning_again_before_anything_was_pinned_says_so(qtbot, page):
    with qtbot.waitSignal(page.desk.message) as told:
        page.pinning.again()
    assert told.args[1] == "info"
    assert pin_actions.pins(page.desk.session) == ()


def test_photos_selected_on_another_page_are_pinned_from_here(qtbot, page):
    page.desk.select(PhotosSelected((PhotoId(2), PhotoId(5))))
    roof = panel_id(page.desk.session, "Roof")
    page.desk.select(PanelSelected(roof))
    page.pinning.here()
    assert pinned(page, roof) == {2, 5}


def test_a_panel_on_another_view_brings_that_view_to_the_front(page):
    shapes = page._drawing.shapes
    here = {shape.panel_id for shape in shapes if shape.view_id == page.canvas.view_id}
    away = next(shape for shape in shapes if shape.panel_id not in here)
    page.desk.select(PanelSelected(away.panel_id))
    assert page.canvas.view_id == away.view_id
    assert page.tabs._group.checkedId() == away.view_id
    assert page.canvas.selected_panel == away.panel_id


def test_travelling_by_arrow_selects_the_panel_once_it_rests(qtbot, page):
    page.canvas.setFocus()
    with qtbot.waitSignal(page.desk.selected) as told:
        qtbot.keyClick(page.canvas, Qt.Key.Key_Right)
    assert told.args[0] == PanelSelected(page.canvas.selected_panel)


def test_a_journal_open_for_reading_can_be_looked_at_but_not_pinned_in(qtbot, runner, session):
    with open_journal(session.folder, read_only=True) as other:
        page = shown(qtbot, runner, other)
        page.tray.list.setCurrentIndex(page.tray.model.index(0))
        page.desk.select(PanelSelected(panel_id(other, "Roof")))
        assert not page.side.pin_here.isEnabled()
        assert page.panels.model.rowCount() > 0
        runner.close()


def test_what_cannot_be_reached_by_ear_is_named(page):
    for widget in (page.canvas, page.tabs, page.legend, page.tray.list, page.panels._list):
        assert widget.accessibleName()
    for pressed in page.tabs._group.buttons():
        assert pressed.accessibleName().endswith("view")
