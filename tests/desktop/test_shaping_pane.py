"""The pane of the shaping mode, and how modes and tools are entered and left."""

import pytest
from PySide6.QtCore import QPointF
from PySide6.QtWidgets import QToolButton

from journal.actions import drawings, history, shaping
from journal.actions.journals import open_journal
from journal.actions.settings import Settings
from journal.desktop.desk import Desk
from journal.desktop.pages.drawing import DrawingPage
from journal.desktop.tasks import TaskRunner
from journal.desktop.tools.tool import Tool
from journal.domain.drawing import Side, System
from journal.domain.ids import PanelId, ViewId
from tests.desktop.desks import Told
from tests.desktop.shaper import HELD, KEY, Hand, choose, corners, panel, tool, two_plates


@pytest.fixture
def runner(qapp):
    made = TaskRunner()
    yield made
    made.close()


@pytest.fixture
def session(tmp_path):
    with two_plates(tmp_path) as made:
        yield made


@pytest.fixture
def page(qtbot, runner, session):
    desk = Desk(session, runner, Settings())
    made = DrawingPage(desk)
    qtbot.addWidget(made)
    desk.changed.connect(made.refresh)
    desk.selected.connect(made.show_selection)
    made.resize(1300, 800)
    made.show()
    made.refresh(None)
    qtbot.waitUntil(lambda: made.is_read)
    made.modes.enter("Shape")
    return made


@pytest.fixture
def hand(qtbot, page):
    return Hand(qtbot, page)


@pytest.fixture
def told(page):
    return Told(page.desk)


# The pane


def fields(page):
    return page.modes.mode.pane().panel


def test_a_view_with_nothing_on_it_says_how_to_begin(page, session):
    shown = page.canvas.view_id
    assert "click one" in fields(page)._nothing.text()
    for placed in drawings.drawing(session).shapes_on(shown):
        page.desk.act(shaping.remove_panel, placed.panel_id)
    assert fields(page)._nothing.isVisible()
    assert "New panel" in fields(page)._nothing.text()


def test_a_panel_is_renamed_and_put_on_the_other_side(qtbot, page, told):
    choose(page, "Plate, left")
    fields(page).name.setText("Floor pan")
    qtbot.keyClick(fields(page).name, KEY.Key_Return)
    assert told.labels == ["Rename Plate, left to Floor pan"]
    fields(page).side.setCurrentIndex(1)
    fields(page).side.activated.emit(1)
    fields(page).system.setCurrentIndex(list(System).index(System.STRUCTURE))
    fields(page).system.activated.emit(0)
    made = drawings.drawing(page.desk.session).panel(panel(page, "Floor pan, right"))
    assert (made.side, made.system) == (Side.RIGHT, System.STRUCTURE)


def test_a_name_that_is_taken_leaves_the_panel_as_it_is(qtbot, page, told):
    choose(page, "Plate, left")
    fields(page).name.setText("Fellow")
    qtbot.keyClick(fields(page).name, KEY.Key_Return)
    assert told.messages == ["The drawing has a panel “Fellow, left” already."]
    assert fields(page).name.text() == "Plate"


def test_a_panel_is_moved_in_the_stack(page, told):
    choose(page, "Plate, left")
    acts = fields(page).findChildren(QToolButton)
    next(act for act in acts if act.toolTip() == "To the top of the stack").click()
    shown = drawings.drawing(page.desk.session).shapes_on(ViewId(1))
    assert shown[-1].panel_id == panel(page, "Plate, left")
    assert told.labels == ["Move Plate, left to the top"]


def test_a_panel_is_mirrored_to_a_view_of_the_other_side(page, told):
    choose(page, "Plate, left")
    fields(page).mirror.click()
    assert told.labels == ["Mirror Plate, left"]
    drawing = drawings.drawing(page.desk.session)
    other = next(view.id for view in drawing.views if view.name == "Right side")
    found = corners(page, "Plate, right", other)
    assert found == {(1800, 200), (1200, 200), (1200, 600), (1800, 600)}


def test_a_panel_is_removed_and_comes_back_by_undo(page, told):
    choose(page, "Plate, left")
    fields(page).remove.click()
    assert told.labels == ["Remove panel Plate, left"]
    assert PanelId(1) not in {p.id for p in page.canvas.panels_shown()}
    page.desk.act(history.undo)
    assert panel(page, "Plate, left") in {p.id for p in page.canvas.panels_shown()}


def test_views_are_added_resized_renamed_and_removed(qtbot, page, told):
    view = page.modes.mode.pane().view
    view.new_name.setText("Boot floor")
    view.new_width.setValue(1500)
    view.new_height.setValue(900)
    view.add.click()
    made = page.canvas.drawing.view(page.canvas.view_id)
    assert (made.name, made.width, made.height) == ("Boot floor", 1500, 900)
    view.name.setText("Boot, from above")
    view.width_box.setValue(1600)
    view.change.click()
    made = page.canvas.drawing.view(made.id)
    assert (made.name, made.width) == ("Boot, from above", 1600)
    view.remove.click()
    assert "Boot, from above" not in {v.name for v in page.canvas.drawing.views}
    assert told.messages == []


def test_a_view_with_panels_on_it_is_not_removed(page, told):
    page.modes.mode.pane().view.remove.click()
    assert told.messages == ["The view Left side has panels on it (2): remove them first."]


def test_a_whole_side_is_mirrored(page, told):
    page.modes.mode.pane().view.mirror.click()
    assert told.labels == ["Mirror Left side"]
    drawing = drawings.drawing(page.desk.session)
    right = next(view for view in drawing.views if view.name == "Right side")
    assert len(drawing.shapes_on(right.id)) == 2


# Modes


def test_esc_drops_then_leaves_the_tool_then_the_mode(page, hand):
    drawing = tool(page, "New panel")
    hand.click(300, 700)
    hand.keys(KEY.Key_Escape)
    assert page.canvas.tool is drawing
    hand.keys(KEY.Key_Escape)
    assert page.canvas.tool is page.modes.mode.corners
    hand.keys(KEY.Key_Escape)
    assert page.canvas.tool is None
    assert page.modes.title == "Look"
    assert page.side.isVisible()


def test_digits_take_up_tools(page, hand):
    for number, one in enumerate(page.modes.mode.tools, start=1):
        hand.keys(KEY(KEY.Key_0 + number))
        assert page.canvas.tool is one


def test_every_tool_says_what_to_do_and_has_its_picture(page):
    for one in page.modes.mode.tools:
        page.canvas.set_tool(one)
        assert one.hint.endswith(".")
        assert page.modes._hint.text() == one.hint


def test_shaping_is_not_offered_where_nothing_can_be_written(qtbot, runner, session):
    with open_journal(session.folder) as reader:
        assert reader.read_only
        page = DrawingPage(Desk(reader, runner, Settings()))
        qtbot.addWidget(page)
        page.modes.enter("Shape")
        assert page.modes.title == "Look"


def test_the_scale_and_place_stay_after_an_edit(page, hand):
    choose(page, "Plate, left")
    page.canvas.zoom(3)
    page.canvas.centerOn(QPointF(800, 200))
    before = page.canvas.viewportTransform()
    hand.drag((800, 200), (800, 180), held=HELD.AltModifier)
    after = page.canvas.viewportTransform()
    assert after.m11() == before.m11()
    assert (after.dx(), after.dy()) == pytest.approx((before.dx(), before.dy()), abs=3)


def test_what_is_painted_as_a_picture_looks_like_the_drawing_itself(page, hand):
    choose(page, "Plate, left")
    page.modes.enter("Look")
    page.canvas.select_panel(None)
    page.canvas._point_at(None)
    looked = page.canvas.grab().toImage()
    tool_free = tool_less(page)
    assert worst_difference(looked, tool_free) < 40


def tool_less(page):
    """The canvas with a tool in hand that paints nothing."""
    page.canvas.set_tool(Tool(page.desk, page))
    made = page.canvas.grab().toImage()
    page.canvas.set_tool(None)
    return made


def worst_difference(one, other):
    """The largest difference of a colour channel at any of many spots."""
    assert one.size() == other.size()
    worst = 0
    for x in range(0, one.width(), 3):
        for y in range(0, one.height(), 3):
            a, b = one.pixelColor(x, y), other.pixelColor(x, y)
            worst = max(worst, abs(a.red() - b.red()), abs(a.blue() - b.blue()))
    return worst
