"""All six pages and every pane are there, and can be made on a journal with and without records."""

import pytest

from journal.actions import areas, costs, drawings, receipts
from journal.actions.settings import Settings
from journal.desktop.desk import (
    AreaSelected,
    Desk,
    Nothing,
    PanelSelected,
    PhotosSelected,
    ReceiptSelected,
)
from journal.desktop.inspector.stack import Inspector
from journal.desktop.pages import Page
from journal.desktop.pages.registry import PAGES, PageEntry
from journal.desktop.tasks import TaskRunner
from journal.desktop.workspace import Workspace
from journal.domain.ids import PhotoId
from journal.ledger.pieces import taken_apart
from tests.desktop.garage import add_sittings, panel_id
from tests.desktop.workshop import empty, furnished


@pytest.fixture(params=[empty, furnished], ids=["empty", "furnished"])
def desk(request, qapp, tmp_path):
    runner = TaskRunner()
    with request.param(tmp_path) as session:
        yield Desk(session, runner, Settings())
        runner.close()


@pytest.mark.parametrize("entry", PAGES, ids=[entry.title for entry in PAGES])
def test_a_page_is_what_the_rail_says(qtbot, desk, entry):
    workspace = Workspace(desk)
    qtbot.addWidget(workspace)
    workspace.resize(1280, 760)
    workspace.show()
    with qtbot.waitSignal(workspace.page_shown) as told:
        workspace.show_page(entry.title)
    assert told.args == [entry.title]
    page = workspace.current_page()
    assert isinstance(page, Page)
    assert (page.title, page.icon) == (entry.title, entry.icon)
    assert page.accessibleName() == f"{entry.title} page"
    desk.tasks.stop_all()


def test_sums_are_added_up_at_leisure(qtbot, desk, monkeypatch):
    monkeypatch.setattr("journal.desktop.workspace._LEISURE", 0)
    workspace = Workspace(desk)
    qtbot.addWidget(workspace)
    monkeypatch.setattr(PageEntry, "make", lambda entry, desk, parent: _Blank(desk, parent))
    made = []
    monkeypatch.setattr("journal.actions.costs.taken_apart", _noting(made))
    workspace.show_page("Drawing")
    assert not made
    qtbot.waitUntil(lambda: bool(made))
    qtbot.waitUntil(lambda: not desk.tasks.is_busy())
    costs.summary(desk.session)
    assert len(made) == 1


def _noting(made):
    """Taking receipts apart, with a note of each time."""

    def noted(*given):
        made.append(given)
        return taken_apart(*given)

    return noted


def test_pages_are_loaded_at_leisure_and_not_while_somebody_waits(qtbot, desk, monkeypatch):
    loaded = []
    monkeypatch.setattr("journal.desktop.pages.registry.import_module", loaded.append)
    workspace = Workspace(desk)
    qtbot.addWidget(workspace)
    monkeypatch.setattr(PageEntry, "make", lambda entry, desk, parent: _Blank(desk, parent))
    workspace.show_page("Drawing")
    assert not loaded
    workspace.show_page("Timeline")
    qtbot.waitUntil(lambda: len(loaded) == len(PAGES))


class _Blank(Page):
    title = "Blank"
    icon = "drawing"

    def refresh(self, changes):
        """Nothing is read."""


@pytest.fixture
def full(qapp, tmp_path):
    runner = TaskRunner()
    with furnished(tmp_path) as session:
        add_sittings(session, 2)
        yield Desk(session, runner, Settings())
        runner.close()


def selections(desk):
    return [
        PhotosSelected((PhotoId(1),)),
        PhotosSelected((PhotoId(1), PhotoId(2))),
        PanelSelected(panel_id(desk.session, "Sill, left")),
        AreaSelected(areas.areas(desk.session)[0].id),
        ReceiptSelected(receipts.receipts(desk.session)[0].id),
    ]


def test_every_selection_has_its_pane(qtbot, full):
    inspector = Inspector(full)
    qtbot.addWidget(inspector)
    inspector.show()
    panes = []
    for selection in selections(full):
        full.select(selection)
        panes.append(type(inspector.current_pane()).__name__)
    assert panes == ["PhotoPane", "PhotoPane", "PanelPane", "AreaPane", "ReceiptPane"]
    full.select(Nothing())
    assert inspector.current_pane() is None
    full.tasks.stop_all()


def test_back_leads_to_what_was_selected_before(qtbot, full):
    inspector = Inspector(full)
    qtbot.addWidget(inspector)
    inspector.show()
    photo, _, panel, area, _ = selections(full)
    for selection in (panel, photo, area):
        full.select(selection)
    inspector.go_back()
    assert full.selection == photo
    inspector.go_back()
    assert full.selection == panel
    assert not inspector._back.isVisible()
    full.tasks.stop_all()


def test_an_inspector_put_away_catches_up_when_it_is_shown_again(qtbot, full):
    inspector = Inspector(full)
    qtbot.addWidget(inspector)
    inspector.hide()
    full.select(PhotosSelected((PhotoId(1),)))
    assert inspector.current_pane() is None
    inspector.show()
    assert type(inspector.current_pane()).__name__ == "PhotoPane"
    full.tasks.stop_all()


def test_shaping_and_tracing_keep_the_width_of_the_drawing(qtbot, full):
    workspace = Workspace(full)
    qtbot.addWidget(workspace)
    workspace.resize(1280, 760)
    workspace.show()
    workspace.show_page("Drawing")
    page = workspace.current_page()
    full.select(PanelSelected(drawings.panels(full.session)[0].id))
    qtbot.waitUntil(workspace.inspector.isVisible)
    for title, beside in (("Shape", False), ("Look", True), ("Trace", False), ("Metal", True)):
        page.modes.enter(title)
        assert workspace.inspector.isVisible() is beside, title
    beside = workspace.inspector
    qtbot.waitUntil(lambda: page.width() + beside.width() <= workspace.width())
    narrow = page.canvas.width()
    page.modes.enter("Shape")
    qtbot.waitUntil(lambda: page.canvas.width() > narrow)
    wide = page.canvas.width()
    full.select(PanelSelected(drawings.panels(full.session)[1].id))
    qtbot.wait(2 * workspace._opening.interval())
    assert page.canvas.width() == wide
