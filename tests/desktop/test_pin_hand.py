"""Pins by hand and key: choose with a lasso, move, shift, turn; each one edit."""

import math

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QMouseEvent, QTransform
from PySide6.QtWidgets import QApplication

from journal.actions import history, pins
from journal.actions.journals import open_journal
from journal.actions.settings import Settings
from journal.desktop.desk import Desk, PhotosSelected
from journal.desktop.pages.drawing import DrawingPage
from journal.desktop.tasks import TaskRunner
from journal.desktop.widgets.canvas_pins import Spot, gather
from journal.domain.ids import PanelId, PhotoId
from tests.desktop.garage import garage, panel_id

LEFT = Qt.MouseButton.LeftButton
NONE = Qt.KeyboardModifier.NoModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier
ALT = Qt.KeyboardModifier.AltModifier
KEY = Qt.Key


@pytest.fixture
def runner(qapp):
    made = TaskRunner()
    yield made
    made.close()


@pytest.fixture
def session(tmp_path):
    with garage(tmp_path, 6) as made:
        yield made


def shown(qtbot, runner, session):
    desk = Desk(session, runner, Settings())
    page = DrawingPage(desk)
    qtbot.addWidget(page)
    desk.changed.connect(page.refresh)
    desk.selected.connect(page.show_selection)
    page.resize(1300, 800)
    page.show()
    page.refresh(None)
    settled(qtbot, page)
    return page


def settled(qtbot, page):
    qtbot.waitUntil(lambda: page.is_read and page.pinning.proposing.is_read)


@pytest.fixture
def door(session):
    return panel_id(session, "Front door, left")


@pytest.fixture
def wing(session):
    return panel_id(session, "Front wing, left")


@pytest.fixture
def page(qtbot, runner, session, door, wing):
    """Photos 1 and 2 apart on the door, 3 on the wing, all on the left side."""
    page = shown(qtbot, runner, session)
    view = page.canvas.view_id
    middle = page.canvas.spot_on(door)
    pins.pin(session, [PhotoId(1)], door, view_id=view, x=middle.x() - 120, y=middle.y())
    pins.pin(session, [PhotoId(2)], door, view_id=view, x=middle.x() + 120, y=middle.y())
    at = page.canvas.spot_on(wing)
    page.desk.act(pins.pin, [PhotoId(3)], wing, view_id=view, x=at.x(), y=at.y())
    settled(qtbot, page)
    return page


def dot(page, photo):
    return next(d for d in page.canvas.dots() if photo in d.photo_ids).at.toPoint()


def drag(qtbot, page, spots, held=NONE):
    view = page.canvas.viewport()
    qtbot.mousePress(view, LEFT, held, spots[0])
    for spot in spots[1:]:
        # A move without its button held is no drag, and qtbot's carries none.
        send_move(view, spot, held)
    qtbot.mouseRelease(view, LEFT, held, spots[-1])
    settled(qtbot, page)


def send_move(view, spot, held):
    at = QPointF(spot)
    event = QMouseEvent(QEvent.Type.MouseMove, at, view.mapToGlobal(at), LEFT, LEFT, held)
    QApplication.sendEvent(view, event)


def round_about(*points):
    box = 20
    left, right = min(p.x() for p in points) - box, max(p.x() for p in points) + box
    top, bottom = min(p.y() for p in points) - box, max(p.y() for p in points) + box
    corners = ((left, top), (right, top), (right, bottom), (left, bottom))
    return [QPoint(*corner) for corner in corners]


def pin_of(page, photo):
    (found,) = pins.pins_of(page.desk.session, PhotoId(photo))
    return found


def test_a_lasso_chooses_the_pins_inside_it(qtbot, page, door):
    drag(qtbot, page, round_about(dot(page, 1), dot(page, 2)), SHIFT)
    assert page.desk.selection == PhotosSelected((1, 2))
    assert set(page.pinning.pins.hand.chosen) == {(1, door), (2, door)}


def test_shift_and_click_adds_a_pin_and_lets_it_go_again(qtbot, page, door, wing):
    hand, view = page.pinning.pins.hand, page.canvas.viewport()
    qtbot.mouseClick(view, LEFT, SHIFT, dot(page, 1))
    qtbot.mouseClick(view, LEFT, SHIFT, dot(page, 3))
    assert hand.chosen == ((1, door), (3, wing))
    qtbot.mouseClick(view, LEFT, SHIFT, dot(page, 1))
    assert hand.chosen == ((3, wing),)


def test_a_click_on_a_dot_selects_its_photos_as_ever(qtbot, page, door):
    qtbot.mouseClick(page.canvas.viewport(), LEFT, NONE, dot(page, 1))
    assert page.desk.selection == PhotosSelected((1,))
    assert page.pinning.pins.hand.chosen == ((1, door),)


def test_a_pin_is_dragged_to_another_spot_of_its_panel(qtbot, page, door):
    goal = dot(page, 1) + QPoint(20, 30)
    drag(qtbot, page, [dot(page, 1), dot(page, 1) + QPoint(10, 10), goal])
    at = page.canvas.mapToScene(goal)
    moved = pin_of(page, 1)
    assert moved.panel_id == door
    assert (moved.x, moved.y) == (pytest.approx(at.x(), abs=5), pytest.approx(at.y(), abs=5))


def test_a_pin_dragged_to_another_panel_leaves_the_first_in_one_edit(qtbot, page, door, wing):
    before = len(history.edits(page.desk.session))
    drag(qtbot, page, [dot(page, 1), dot(page, 2), dot(page, 3) + QPoint(0, 14)])
    assert pin_of(page, 1).panel_id == wing
    assert len(history.edits(page.desk.session)) == before + 1
    assert history.undo_label(page.desk.session) == "Move 1 pin to Front wing, left"
    page.desk.act(history.undo)
    assert pin_of(page, 1).panel_id == door


def test_all_chosen_pins_go_along(qtbot, page, wing):
    drag(qtbot, page, round_about(dot(page, 1), dot(page, 2)), SHIFT)
    drag(qtbot, page, [dot(page, 2), dot(page, 1), dot(page, 3) + QPoint(0, 14)])
    assert [pin_of(page, n).panel_id for n in (1, 2, 3)] == [wing] * 3


def test_a_pin_let_go_beside_the_car_stays(qtbot, page):
    before = pin_of(page, 1)
    drag(qtbot, page, [dot(page, 1), QPoint(40, 40), QPoint(4, 4)])
    assert pin_of(page, 1) == before


def test_escape_while_dragging_leaves_everything_as_it_was(qtbot, page):
    before, view = pin_of(page, 1), page.canvas.viewport()
    page.canvas.setFocus()
    goal = dot(page, 3)
    qtbot.mousePress(view, LEFT, NONE, dot(page, 1))
    send_move(view, goal, NONE)
    qtbot.keyClick(page.canvas, KEY.Key_Escape)
    qtbot.mouseRelease(view, LEFT, NONE, goal)
    settled(qtbot, page)
    assert pin_of(page, 1) == before


def test_dragging_a_pin_of_a_large_drawing_does_not_pull_the_sheet(qtbot, page):
    page.canvas.zoom(4)
    page.canvas.centerOn(QPointF(pin_of(page, 1).x, pin_of(page, 1).y))
    view, start = page.canvas.viewport(), dot(page, 1)
    before = page.canvas.horizontalScrollBar().value()
    qtbot.mousePress(view, LEFT, NONE, start)
    for pulled in (3, 40, 60):
        send_move(view, start + QPoint(pulled, 0), NONE)
    assert page.canvas.horizontalScrollBar().value() == before
    goal = page.canvas.mapToScene(start + QPoint(60, 0))
    qtbot.mouseRelease(view, LEFT, NONE, start + QPoint(60, 0))
    assert pin_of(page, 1).x == pytest.approx(goal.x(), abs=1)


@pytest.mark.parametrize(
    ("pull", "degrees"),
    [((0, -60), 0), ((60, 0), 90), ((0, 60), 180), ((-60, 0), 270), ((42, -42), 45)],
)
def test_alt_and_dragging_tells_the_way_the_camera_faced(qtbot, page, pull, degrees):
    start = dot(page, 1)
    drag(qtbot, page, [start, start + QPoint(*pull) / 2, start + QPoint(*pull)], ALT)
    assert pin_of(page, 1).facing == degrees
    (shown_dot,) = [d for d in page.canvas.dots() if d.photo_ids == (1,)]
    assert shown_dot.facing == degrees


def test_a_pin_without_a_spot_gets_the_one_it_shows_on_when_it_is_turned(qtbot, page, session):
    roof = panel_id(session, "Roof")
    page.desk.act(pins.pin, [PhotoId(4)], roof)
    settled(qtbot, page)
    start = dot(page, 4)
    drag(qtbot, page, [start, start + QPoint(0, 30), start + QPoint(0, 50)], ALT)
    turned = pin_of(page, 4)
    assert (turned.view_id, turned.facing) == (page.canvas.view_id, 180)
    assert page.canvas.mapFromScene(QPointF(turned.x, turned.y)) == start


def test_keys_choose_shift_turn_and_move(qtbot, page, door, wing):
    page.canvas.select_panel(door)
    page.canvas.setFocus()
    qtbot.keyClick(page.canvas, KEY.Key_A)
    assert page.desk.selection == PhotosSelected((1, 2))
    before = pin_of(page, 1)
    qtbot.keyClick(page.canvas, KEY.Key_Right, ALT)
    qtbot.keyClick(page.canvas, KEY.Key_Down, ALT | SHIFT)
    shifted = pin_of(page, 1)
    assert (shifted.x, shifted.y) == (before.x + 10, before.y + 100)
    qtbot.keyClick(page.canvas, KEY.Key_BracketRight)
    qtbot.keyClick(page.canvas, KEY.Key_BracketRight)
    assert pin_of(page, 2).facing == 15
    page.canvas.select_panel(wing)
    qtbot.keyClick(page.canvas, KEY.Key_M)
    assert [pin_of(page, n).panel_id for n in (1, 2)] == [wing, wing]


def test_keys_with_nothing_chosen_say_how_to_choose(qtbot, page):
    page.canvas.setFocus()
    with qtbot.waitSignal(page.desk.message) as told:
        qtbot.keyClick(page.canvas, KEY.Key_M)
    assert told.args[0].startswith("Choose pins first")


def test_other_photos_selected_let_the_pins_go(qtbot, page):
    drag(qtbot, page, round_about(dot(page, 1), dot(page, 2)), SHIFT)
    page.desk.select(PhotosSelected((5,)))
    assert page.pinning.pins.hand.chosen == ()


def test_the_chosen_pins_and_those_of_the_panel_look_different(page, door):
    view = page.canvas.viewport()
    plain = view.grab().toImage()
    page.pinning.pins.hand.choose(((3, page.canvas.dots()[0].pins()[0][1]),))
    page.pinning.pins.hand.choose(((1, door),))
    chosen = view.grab().toImage()
    assert chosen != plain
    at = dot(page, 1) + QPoint(10, 0)
    assert chosen.pixelColor(at) != plain.pixelColor(at)


def test_in_a_journal_open_for_reading_pins_stay(qtbot, runner, session, door):
    with open_journal(session.folder, read_only=True) as reader:
        page = shown(qtbot, runner, reader)
        pins.pin(session, [PhotoId(1)], door)
        page.refresh(None)
        settled(qtbot, page)
        drag(qtbot, page, [dot(page, 1), QPoint(300, 300), QPoint(400, 400)])
        assert pin_of(page, 1).x is None
        runner.close()


def spots(*places):
    return [Spot((PhotoId(n),), x, y, panel_id=PanelId(1)) for n, (x, y) in enumerate(places)]


def test_pins_of_one_place_spread_when_near_and_lie_clear_of_each_other():
    (count,) = gather(spots(*[(500, 500)] * 12), QTransform())
    assert len(count.photo_ids) == 12
    spread = gather(spots(*[(500, 500)] * 12), QTransform(), spread=True)
    assert sorted(d.photo_ids[0] for d in spread) == list(range(12))
    for n, one in enumerate(spread):
        for other in spread[n + 1 :]:
            assert math.dist(one.at.toTuple(), other.at.toTuple()) > 2 * one.radius


def test_a_count_without_room_or_with_too_many_stays_a_count():
    crowded = spots(*[(500, 500)] * 12, *[(540, 500)] * 12)
    assert [len(d.photo_ids) for d in gather(crowded, QTransform(), spread=True)] == [12, 12]
    many = spots(*[(500, 500)] * 41)
    assert [len(d.photo_ids) for d in gather(many, QTransform(), spread=True)] == [41]


def test_a_dot_knows_the_panels_of_its_photos():
    mixed = [Spot((PhotoId(1), PhotoId(2)), 5, 5, panel_id=PanelId(7)), *spots((6, 6))]
    (dot,) = gather(mixed, QTransform())
    assert dot.pins() == ((1, 7), (2, 7), (0, 1))
    assert dot.is_on(PanelId(7))
    assert not dot.is_on(PanelId(8))
