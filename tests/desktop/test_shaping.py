"""Shaping the drawing by mouse and keys: one edit a step, undo, and nothing half done."""

import pytest

from journal.actions import drawings, history
from journal.actions.settings import Settings
from journal.desktop.desk import Desk, PanelSelected
from journal.desktop.pages.drawing import DrawingPage
from journal.desktop.tasks import TaskRunner
from journal.domain.drawing import Side
from journal.domain.ids import ViewId
from journal.domain.shapes import Curve, Point
from journal.domain.shaping.corners import corner_points
from journal.domain.shaping.placed import shape_of
from tests.desktop.desks import Told
from tests.desktop.shaper import (
    HELD,
    KEY,
    Hand,
    choose,
    corners,
    edits,
    name_it,
    panel,
    tool,
    two_plates,
)


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


# Corners


def test_a_shared_corner_is_dragged_as_one_and_written_once(page, hand, told):
    choose(page, "Plate, left")
    hand.press(800, 200)
    before = edits(page)
    for step in range(1, 8):
        hand.move(800 + step * 9, 200 - step * 7, held=HELD.AltModifier)
    assert edits(page) == before
    hand.release(863, 151, held=HELD.AltModifier)
    assert told.labels == ["Move a corner of Plate, left"]
    there = corners(page, "Plate, left") & corners(page, "Fellow, left")
    assert (800, 600) in there
    assert any(abs(x - 863) < 4 and abs(y - 151) < 4 for x, y in there)
    history.undo(page.desk.session)
    assert (800, 200) in corners(page, "Plate, left") & corners(page, "Fellow, left")


def test_a_drag_shows_what_it_would_do_before_it_is_written(page, hand):
    choose(page, "Plate, left")
    hand.press(800, 200)
    hand.move(800, 120, held=HELD.AltModifier)
    for label in ("Plate, left", "Fellow, left"):
        box = page.canvas.outline_of(panel(page, label)).boundingRect()
        assert box.top() == pytest.approx(120, abs=3)
    hand.keys(KEY.Key_Escape)
    assert page.canvas.outline_of(panel(page, "Plate, left")).boundingRect().top() == 200
    hand.release(800, 120)
    assert (800, 200) in corners(page, "Plate, left")


def test_a_dragged_corner_is_caught_by_a_right_angle_and_alt_frees_it(page, hand):
    choose(page, "Plate, left")
    hand.press(200, 200)
    hand.move(203, 110)
    hand.move(203, 100)
    hand.release(203, 100)
    assert min(corners(page, "Plate, left"), key=lambda c: c[1])[0] == 200
    hand.drag((200, 600), (212, 650), held=HELD.AltModifier)
    assert any(abs(x - 212) < 3 and abs(y - 650) < 3 for x, y in corners(page, "Plate, left"))


def test_tab_arrows_and_enter_move_a_corner_by_millimetres(page, hand, told):
    choose(page, "Plate, left")
    hand.keys(KEY.Key_Tab)
    chosen = page.modes.mode.corners.here()
    hand.keys(KEY.Key_Right, KEY.Key_Right, KEY.Key_Down)
    hand.keys(KEY.Key_Up, held=HELD.ShiftModifier)
    assert told.labels == []
    hand.keys(KEY.Key_Return)
    assert told.labels == ["Move a corner of Plate, left"]
    assert (round(chosen.x + 2), round(chosen.y - 9)) in corners(page, "Plate, left")


def test_tab_goes_round_all_corners(page, hand):
    choose(page, "Plate, left")
    seen = set()
    for _ in range(4):
        hand.keys(KEY.Key_Tab)
        seen.add(page.modes.mode.corners.here())
    assert {(round(p.x), round(p.y)) for p in seen} == corners(page, "Plate, left")
    last = page.modes.mode.corners.here()
    hand.keys(KEY.Key_Tab)
    hand.keys(KEY.Key_Backtab, held=HELD.ShiftModifier)
    assert page.modes.mode.corners.here() == last


def test_a_corner_is_moved_by_numbers(qtbot, page, hand):
    choose(page, "Plate, left")
    hand.click(200, 200)
    fields = page.modes.mode.pane().point
    assert (fields.x_box.value(), fields.y_box.value()) == (200, 200)
    fields.x_box.setValue(150)
    fields.y_box.setValue(90.5)
    qtbot.keyClick(fields.y_box, KEY.Key_Return)
    assert Point(150, 90.5) in {
        p
        for _, p in corner_points(
            shape_of(drawings.drawing(page.desk.session), panel(page, "Plate, left"), ViewId(1))
        )
    }


def test_a_corner_is_moved_by_length_and_angle(qtbot, page, hand):
    choose(page, "Plate, left")
    hand.click(800, 600)
    corner, before = page.modes.mode.corners.here(), page.modes.mode.corners.origin()
    assert (before, corner) == (Point(800, 200), Point(800, 600))
    fields = page.modes.mode.pane().point
    assert (fields.length.value(), fields.angle.value()) == (400, 270)
    fields.length.setValue(500)
    qtbot.keyClick(fields.length, KEY.Key_Return)
    assert (800, 700) in corners(page, "Plate, left") & corners(page, "Fellow, left")


def test_a_double_click_puts_a_corner_into_both_neighbours_and_delete_takes_it_out(
    page, hand, told
):
    choose(page, "Plate, left")
    hand.double_click(800, 400)
    assert told.labels == ["Put a corner into Plate, left"]
    assert (800, 400) in corners(page, "Plate, left") & corners(page, "Fellow, left")
    hand.keys(KEY.Key_Delete)
    assert (800, 400) not in corners(page, "Plate, left") | corners(page, "Fellow, left")


def test_an_edge_is_bent_by_dragging_it_and_made_straight_by_key(page, hand):
    choose(page, "Plate, left")
    hand.drag((500, 200), (500, 130))
    shape = shape_of(drawings.drawing(page.desk.session), panel(page, "Plate, left"), ViewId(1))
    assert sum(isinstance(edge, Curve) for edge in shape.contours[0].edges) == 1
    top = page.canvas.outline_of(panel(page, "Plate, left")).boundingRect().top()
    assert top == pytest.approx(130, abs=4)
    hand.click(800, 200)
    hand.keys(KEY.Key_L)
    assert page.canvas.outline_of(panel(page, "Plate, left")).boundingRect().top() == 200


def test_a_corner_that_would_cross_the_outline_is_refused_at_the_place(page, hand, told):
    choose(page, "Plate, left")
    before = edits(page)
    hand.drag((200, 200), (700, 900), held=HELD.AltModifier)
    assert edits(page) == before
    assert told.messages
    assert "crosses its own outline" in told.messages[0]
    at, words = page.canvas.fault
    assert words == told.messages[0]
    assert at == pytest.approx((700, 900), abs=3)
    assert page.canvas.outline_of(panel(page, "Plate, left")).boundingRect().top() == 200
    hand.keys(KEY.Key_Tab)
    hand.click(500, 400)
    assert page.canvas.fault is None


def test_a_click_chooses_another_panel(page, hand):
    choose(page, "Plate, left")
    hand.click(1100, 400)
    assert page.desk.selection == PanelSelected(panel(page, "Fellow, left"))


# New panels


def test_a_panel_is_drawn_corner_by_corner_with_a_curve_and_named(qtbot, page, hand, told):
    tool(page, "New panel")
    for at in ((300, 700), (600, 700)):
        hand.click(*at, held=HELD.AltModifier)
    hand.drag((600, 900), (500, 960), held=HELD.AltModifier)
    hand.click(300, 900, held=HELD.AltModifier)
    hand.keys(KEY.Key_Return)
    assert told.labels == []
    name_it(qtbot, page, "Closing plate")
    assert told.labels == ["Draw Closing plate, left"]
    made = panel(page, "Closing plate, left")
    shape = shape_of(drawings.drawing(page.desk.session), made, ViewId(1))
    assert sum(isinstance(edge, Curve) for edge in shape.contours[0].edges) == 2
    assert page.desk.selection == PanelSelected(made)
    history.undo(page.desk.session)
    assert made not in {p.id for p in drawings.panels(page.desk.session)}


def test_clicking_the_first_corner_closes_the_outline(qtbot, page, hand):
    drawing = tool(page, "New panel")
    for at in ((300, 700), (600, 700), (450, 900)):
        hand.click(*at, held=HELD.AltModifier)
    assert drawing.naming is None
    hand.click(300, 700)
    assert drawing.naming is not None
    name_it(qtbot, page, "Gusset")
    assert len(corners(page, "Gusset, left")) == 3


def test_an_outline_that_crosses_itself_is_refused_and_can_be_mended(qtbot, page, hand, told):
    tool(page, "New panel")
    for at in ((300, 650), (600, 900), (600, 650), (300, 900)):
        hand.click(*at, held=HELD.AltModifier)
    hand.keys(KEY.Key_Return)
    assert told.messages == [page.canvas.fault[1]]
    assert "crosses its own outline" in told.messages[0]
    hand.keys(KEY.Key_Backspace, KEY.Key_Return)
    name_it(qtbot, page, "Gusset")
    assert len(corners(page, "Gusset, left")) == 3


def test_a_name_that_is_taken_is_refused_and_asked_for_again(qtbot, page, hand, told):
    drawing = tool(page, "Rectangle")
    hand.drag((300, 700), (600, 900))
    name_it(qtbot, page, "plate")
    assert told.labels == []
    assert told.messages == ["The drawing has a panel “Plate, left” already."]
    assert drawing.naming is not None
    name_it(qtbot, page, "Cover")
    assert told.labels == ["Draw Cover, left"]


def test_a_rectangle_comes_to_rest_at_whole_steps(qtbot, page, hand):
    drawing = tool(page, "Rectangle")
    hand.drag((300, 700), (603, 898))
    name_it(qtbot, page, "Cover")
    xs, ys = zip(*corners(page, "Cover, left"), strict=True)
    assert (max(xs) - min(xs)) % drawing.step() == 0
    assert (max(ys) - min(ys)) % drawing.step() == 0


def test_a_rectangle_is_drawn_by_keys_alone(qtbot, page, hand):
    tool(page, "Rectangle").canvas.select_panel(None)
    hand.keys(KEY.Key_Right, KEY.Key_Space)
    start = page.canvas.tool.last()
    hand.keys(*[KEY.Key_Right] * 5, *[KEY.Key_Down] * 4, held=HELD.ShiftModifier)
    hand.keys(KEY.Key_Space)
    name_it(qtbot, page, "Washer")
    assert (round(start.x + 50), round(start.y + 40)) in corners(page, "Washer, left")


def test_points_are_put_by_numbers(qtbot, page):
    drawing = tool(page, "New panel")
    fields = page.modes.mode.pane().point
    for x, y in ((300, 700), (500, 700), (500, 850)):
        fields.x_box.setValue(x)
        fields.y_box.setValue(y)
        qtbot.keyClick(fields.y_box, KEY.Key_Return)
    drawing.finish()
    name_it(qtbot, page, "Gusset")
    assert corners(page, "Gusset, left") == {(300, 700), (500, 700), (500, 850)}


def test_a_known_panel_is_drawn_on_another_view(qtbot, page, hand, told):
    page.canvas.set_view(ViewId(2))
    tool(page, "Rectangle")
    hand.drag((300, 200), (600, 400))
    fields = page.modes.mode.pane().name
    fields._side.show_side(Side.LEFT)
    name_it(qtbot, page, "Plate")
    assert told.labels == ["Draw Plate, left on Underside"]
    assert len(corners(page, "Plate, left", view=2)) == 4


def test_ctrl_z_takes_a_point_back_and_esc_all_of_them(page, hand):
    drawing = tool(page, "New panel")
    for at in ((300, 700), (600, 700), (450, 900)):
        hand.click(*at, held=HELD.AltModifier)
    before = edits(page)
    hand.keys(KEY.Key_Z, held=HELD.ControlModifier)
    assert drawing.last() == pytest.approx((600, 700), abs=3)
    hand.keys(KEY.Key_Escape)
    assert drawing.last() is None
    assert edits(page) == before


# Cutting, joining, sharing


def test_a_line_across_a_panel_cuts_it_in_two(qtbot, page, hand, told):
    choose(page, "Plate, left")
    tool(page, "Cut")
    hand.drag((400, 150), (400, 650))
    assert told.labels == []
    name_it(qtbot, page, "Plate, front")
    assert told.labels == ["Cut Plate, front off Plate, left"]
    assert corners(page, "Plate, left") == {(400, 200), (800, 200), (800, 600), (400, 600)}
    assert corners(page, "Plate, front, left") == {(200, 200), (400, 200), (400, 600), (200, 600)}


def test_a_cut_with_a_corner_is_clicked_and_ended_by_enter(qtbot, page, hand):
    choose(page, "Plate, left")
    tool(page, "Cut")
    for at in ((400, 150), (400, 400), (150, 400)):
        hand.click(*at, held=HELD.AltModifier)
    hand.keys(KEY.Key_Return)
    name_it(qtbot, page, "Quarter")
    assert len(corners(page, "Plate, left")) == 6


def test_a_line_that_cuts_nothing_off_is_refused_and_dropped(page, hand, told):
    choose(page, "Plate, left")
    cut = tool(page, "Cut")
    before = edits(page)
    hand.drag((300, 300), (500, 500), held=HELD.AltModifier)
    assert told.messages == ["The line doesn't cross Plate, left from edge to edge."]
    assert page.canvas.fault is not None
    assert cut.last() is None
    assert edits(page) == before


def test_two_neighbours_are_joined_by_two_clicks(page, hand, told):
    tool(page, "Join")
    hand.click(500, 400)
    assert "Plate, left" in page.canvas.tool.hint
    hand.click(1100, 400)
    assert told.labels == ["Join Fellow, left to Plate, left"]
    assert corners(page, "Plate, left") == {(200, 200), (1400, 200), (1400, 600), (200, 600)}


def test_panels_are_joined_by_keys(page, hand, told):
    choose(page, "Plate, left")
    tool(page, "Join")
    hand.keys(KEY.Key_Return, KEY.Key_Right, KEY.Key_Return)
    assert told.labels == ["Join Fellow, left to Plate, left"]


def test_panels_apart_are_not_joined(qtbot, page, hand, told):
    tool(page, "Rectangle")
    hand.drag((1600, 700), (1800, 900))
    name_it(qtbot, page, "Far")
    tool(page, "Join")
    hand.click(500, 400)
    hand.click(1700, 800)
    assert told.messages == ["Plate, left and Far, left share no edge: give them one edge first."]
    assert page.canvas.fault[1] == told.messages[0]


def test_neighbours_that_nearly_touch_get_one_edge(qtbot, page, hand, told):
    tool(page, "Rectangle")
    hand.drag((204, 604), (796, 850), held=HELD.AltModifier)
    name_it(qtbot, page, "Lower")
    tool(page, "Share edge")
    hand.click(500, 400)
    hand.click(500, 750)
    assert told.labels[-1] == "Give Plate, left and Lower, left one edge"
    assert {(200, 600), (800, 600)} <= corners(page, "Lower, left")
