"""The panel's pane: its whole story, in either order, and where it leads."""

import pytest

from journal.actions import pins
from journal.actions.settings import Settings
from journal.desktop.desk import AreaSelected, PanelSelected, PhotosSelected, ReceiptSelected
from journal.desktop.inspector.panel import PanelPane
from journal.desktop.tasks import TaskRunner
from journal.domain.changes import Changes
from journal.domain.ids import PhotoId
from tests.desktop.desks import PatientDesk
from tests.desktop.garage import add_sittings, panel_id
from tests.desktop.workshop import furnished


@pytest.fixture
def session(tmp_path):
    with furnished(tmp_path) as made:
        add_sittings(made, 2, 1)
        yield made


@pytest.fixture
def pane(qtbot, session):
    runner = TaskRunner()
    made = PanelPane(PatientDesk(session, runner, Settings()))
    qtbot.addWidget(made)
    made.desk.changed.connect(made.refresh)
    made.show()
    yield made
    runner.close()


def kinds(pane):
    rows = [pane.story.item(n).data(256) for n in range(pane.story.count())]
    return [event.kind for event in rows]


def test_a_panel_tells_all_that_was_done_to_it(pane, session):
    sill = panel_id(session, "Sill, left")
    pins.pin(session, [PhotoId(1), PhotoId(2), PhotoId(3)], sill)
    pane.show_selection(PanelSelected(sill))
    assert pane._title.text() == "Sill, left"
    assert set(kinds(pane)) == {"photos", "stage", "receipt", "work", "entry"}
    assert pane.areas.count() == 2
    assert pane.grid.selection.order == (3, 1, 2) or pane.grid.selection.order == (3, 2, 1)
    assert not pane._nothing.isVisible()


def test_the_order_turns_round(pane, session):
    sill = panel_id(session, "Sill, left")
    pins.pin(session, [PhotoId(1), PhotoId(3)], sill)
    pane.show_selection(PanelSelected(sill))
    newest, photos = kinds(pane), pane.grid.selection.order
    pane._order.click()
    assert kinds(pane) == newest[::-1]
    assert pane.grid.selection.order == photos[::-1] == (1, 3)
    assert pane._order.accessibleName() == "Order: oldest first"


def test_a_panel_without_a_story_says_what_belongs_there(pane, session):
    pane.show_selection(PanelSelected(panel_id(session, "Roof")))
    assert pane._nothing.isVisible()
    assert not pane._split.isVisible()


def test_a_new_pin_shows_at_once(pane, session):
    roof = panel_id(session, "Roof")
    pane.show_selection(PanelSelected(roof))
    pane.desk.act(pins.pin, [PhotoId(2)], roof)
    assert pane.grid.selection.order == (2,)


def test_changes_of_another_kind_are_not_read_again(pane, session):
    pane.show_selection(PanelSelected(panel_id(session, "Roof")))
    before = pane._history
    pane.refresh(Changes("Change milestone", frozenset({"milestones"})))
    assert pane._history is before


@pytest.mark.parametrize(
    ("kind", "selection"),
    [("stage", AreaSelected), ("receipt", ReceiptSelected), ("photos", PhotosSelected)],
)
def test_what_happened_leads_to_the_thing_itself(pane, session, kind, selection):
    sill = panel_id(session, "Sill, left")
    pins.pin(session, [PhotoId(1)], sill)
    pane.show_selection(PanelSelected(sill))
    row = kinds(pane).index(kind)
    pane.story.itemActivated.emit(pane.story.item(row))
    assert isinstance(pane.desk.selection, selection)
