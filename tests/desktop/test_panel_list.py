"""The list of panels: filter, state, and telling apart who moved."""

import pytest

from journal.desktop.widgets.panel_list import PanelList, PanelModel
from journal.domain.drawing import Drawing, Panel, Side, System
from journal.domain.ids import PanelId

PANELS = (
    Panel(PanelId(1), "Sill", Side.RIGHT, System.STRUCTURE),
    Panel(PanelId(2), "Sill", Side.LEFT, System.STRUCTURE),
    Panel(PanelId(3), "Bonnet", Side.CENTRE, System.OPENINGS),
)


def names(model):
    return [model.data(model.index(row)) for row in range(model.rowCount())]


def test_panels_are_in_order_of_name():
    model = PanelModel()
    model.set_panels(PANELS)
    assert names(model) == ["Bonnet", "Sill, left", "Sill, right"]


@pytest.mark.parametrize(
    ("typed", "found"),
    [("sill", 2), ("LEFT sill", 1), ("structure", 2), ("nothing such", 0), ("", 3)],
)
def test_every_word_of_the_filter_must_fit(typed, found):
    model = PanelModel()
    model.set_panels(PANELS)
    model.set_filter(typed)
    assert model.rowCount() == found


def test_stage_and_photos_stand_beside_the_name():
    model = PanelModel()
    model.set_panels(PANELS)
    model.set_state({PanelId(2): "welded"}, {PanelId(2): 1, PanelId(3): 1200})
    assert names(model) == ["Bonnet · 1,200 photos", "Sill, left · welded · 1 photo", "Sill, right"]


def test_the_model_behaves_like_one(qtmodeltester, qtbot):
    model = PanelModel()
    model.set_panels(PANELS)
    model.set_filter("sill")
    qtmodeltester.check(model)


@pytest.fixture
def panels(qtbot):
    made = PanelList()
    qtbot.addWidget(made)
    made.set_drawing(Drawing((), PANELS, ()))
    return made


def test_going_to_a_panel_tells_and_enter_chooses(qtbot, panels):
    with qtbot.waitSignal(panels.panel_clicked) as told:
        panels._list.setCurrentIndex(panels.model.index(1))
    assert told.args == [2]
    with qtbot.waitSignal(panels.panel_chosen) as told:
        panels._list.activated.emit(panels.model.index(1))
    assert told.args == [2]


def test_being_shown_a_panel_tells_nobody(qtbot, panels):
    with qtbot.assertNotEmitted(panels.panel_clicked):
        panels.select_panel(PanelId(1))
    assert panels._list.currentIndex().row() == 2
