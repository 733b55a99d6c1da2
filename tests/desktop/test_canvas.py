"""The drawing on screen: pointing, clicking, travelling by key, dropping photos."""

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt
from PySide6.QtGui import QDragEnterEvent, QDragMoveEvent, QDropEvent, QTransform, QWheelEvent
from PySide6.QtWidgets import QApplication

from journal.desktop import theme
from journal.desktop.widgets.canvas import DrawingCanvas
from journal.desktop.widgets.canvas_pins import REACH, Spot, gather
from journal.desktop.widgets.photo_drag import photos_to_mime
from journal.domain.areas import DEFAULT_STAGES
from journal.domain.ids import PanelId, PhotoId, PinId, ViewId
from journal.domain.photos import Pin
from tests.desktop.drawing_fakes import small_drawing

LEFT = Qt.MouseButton.LeftButton
NO_KEY = Qt.KeyboardModifier.NoModifier
WING, DOOR, REAR, SILL, HANDLE, WHEEL, RAIL, FLOOR = map(PanelId, range(1, 9))


@pytest.fixture
def canvas(qtbot):
    made = DrawingCanvas()
    qtbot.addWidget(made)
    made.resize(1000, 560)
    made.set_drawing(small_drawing())
    made.show()
    return made


def pin(number, panel, x=None, y=None, view=1, facing=None):
    view_id = None if x is None else ViewId(view)
    return Pin(PinId(number), PhotoId(number), panel, view_id, x, y, facing)


def click(qtbot, canvas, panel):
    qtbot.mouseClick(canvas.viewport(), LEFT, NO_KEY, canvas.panel_spot(panel))


def test_a_click_selects_the_panel_and_tells_it(qtbot, canvas):
    with qtbot.waitSignal(canvas.panel_clicked) as told:
        click(qtbot, canvas, REAR)
    assert told.args == [REAR]
    assert canvas.selected_panel == REAR


def test_a_double_click_or_enter_chooses(qtbot, canvas):
    with qtbot.waitSignal(canvas.panel_chosen) as told:
        qtbot.mouseDClick(canvas.viewport(), LEFT, NO_KEY, canvas.panel_spot(DOOR))
    assert told.args == [DOOR]
    canvas.select_panel(SILL)
    with qtbot.waitSignal(canvas.panel_chosen) as told:
        qtbot.keyClick(canvas, Qt.Key.Key_Return)
    assert told.args == [SILL]


def test_what_lies_on_top_is_hit_first_and_a_near_miss_counts(canvas):
    handle = canvas.panel_spot(HANDLE)
    assert canvas.panel_at(handle) == HANDLE
    assert canvas.panel_at(canvas.panel_spot(WHEEL)) == WHEEL
    below_sill = canvas.mapFromScene(QPointF(1300, 1060)) + QPoint(0, 6)
    assert canvas.panel_at(below_sill) == SILL
    assert canvas.panel_at(QPoint(3, 3)) is None


def test_a_panel_with_a_hole_in_its_middle_has_a_spot_on_it(canvas):
    assert canvas.panel_at(canvas.panel_spot(RAIL)) == RAIL


def test_pointing_at_a_panel_names_it(qtbot, canvas):
    canvas.set_stages({SILL: "welded"}, DEFAULT_STAGES)
    canvas.set_pins((pin(1, SILL), pin(2, SILL)))
    with qtbot.waitSignal(canvas.panel_pointed) as told:
        qtbot.mouseMove(canvas.viewport(), canvas.panel_spot(SILL))
    assert told.args == [SILL]
    assert canvas.words_of(SILL) == "Sill, left · welded · 2 photos"
    with qtbot.waitSignal(canvas.panel_pointed) as told:
        qtbot.mouseMove(canvas.viewport(), QPoint(3, 3))
    assert told.args == [0]


@pytest.mark.parametrize(
    ("start", "key", "goal"),
    [
        (WING, Qt.Key.Key_Right, DOOR),
        (DOOR, Qt.Key.Key_Down, SILL),
        (REAR, Qt.Key.Key_Right, REAR),
        (DOOR, Qt.Key.Key_Up, RAIL),
        (WING, Qt.Key.Key_Down, WHEEL),
    ],
)
def test_arrows_travel_to_the_neighbour(qtbot, canvas, start, key, goal):
    canvas.select_panel(start)
    qtbot.keyClick(canvas, key)
    assert canvas.selected_panel == goal


def test_every_panel_of_a_view_can_be_reached_by_arrows(qtbot, canvas):
    shown = {panel.id for panel in canvas.panels_shown()}
    reached, edge = {WING}, [WING]
    arrows = (Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Up, Qt.Key.Key_Down)
    while edge:
        start = edge.pop()
        for key in arrows:
            canvas.select_panel(start)
            qtbot.keyClick(canvas, key)
            if canvas.selected_panel not in reached:
                reached.add(canvas.selected_panel)
                edge.append(canvas.selected_panel)
    assert reached == shown


def test_the_reader_is_told_which_panel_the_keyboard_is_on(qtbot, canvas):
    canvas.select_panel(WING)
    qtbot.keyClick(canvas, Qt.Key.Key_Right)
    assert canvas.accessibleDescription() == "Front door, left"
    assert canvas.accessibleName() == "Drawing of the car, Left side"


def test_pages_turn_to_the_other_view_and_back(qtbot, canvas):
    with qtbot.waitSignal(canvas.view_changed) as told:
        qtbot.keyClick(canvas, Qt.Key.Key_PageDown)
    assert told.args == [2]
    assert {panel.id for panel in canvas.panels_shown()} == {SILL, FLOOR}
    qtbot.keyClick(canvas, Qt.Key.Key_PageDown)
    assert canvas.view_id == 1


def test_a_new_drawing_keeps_the_view_looked_at(qtbot, canvas):
    canvas.set_view(ViewId(2))
    canvas.set_drawing(small_drawing())
    assert canvas.view_id == 2


def test_the_wheel_and_keys_zoom_and_zero_fits_again(qtbot, canvas):
    fitted = canvas.transform().m11()
    turn = QWheelEvent(
        QPointF(500, 280),
        QPointF(500, 280),
        QPoint(),
        QPoint(0, 120),
        Qt.MouseButton.NoButton,
        NO_KEY,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(canvas.viewport(), turn)
    assert canvas.transform().m11() == pytest.approx(fitted * 1.25)
    qtbot.keyClick(canvas, Qt.Key.Key_Plus)
    assert canvas.transform().m11() > fitted * 1.5
    qtbot.keyClick(canvas, Qt.Key.Key_0)
    assert canvas.transform().m11() == pytest.approx(fitted)
    qtbot.keyClick(canvas, Qt.Key.Key_Minus)
    assert canvas.transform().m11() == pytest.approx(fitted)


def test_pulling_a_large_sheet_moves_it_and_selects_nothing(qtbot, canvas):
    canvas.zoom(4)
    before = canvas.horizontalScrollBar().value()
    view = canvas.viewport()
    qtbot.mousePress(view, LEFT, NO_KEY, QPoint(500, 280))
    qtbot.mouseMove(view, QPoint(450, 280))
    qtbot.mouseMove(view, QPoint(400, 280))
    qtbot.mouseRelease(view, LEFT, NO_KEY, QPoint(400, 280))
    assert canvas.horizontalScrollBar().value() > before
    assert canvas.selected_panel is None


def drag(canvas, kind, spot, data):
    action, buttons = Qt.DropAction.CopyAction, LEFT
    where = QPointF(spot) if kind is QDropEvent else spot
    event = kind(where, action, data, buttons, NO_KEY)
    handlers = {
        QDragEnterEvent: canvas.dragEnterEvent,
        QDragMoveEvent: canvas.dragMoveEvent,
        QDropEvent: canvas.dropEvent,
    }
    event.setAccepted(False)
    handlers[kind](event)
    return event.isAccepted()


def test_photos_dropped_on_a_panel_tell_where(qtbot, canvas):
    data = photos_to_mime([PhotoId(3), PhotoId(9)])
    spot = canvas.mapFromScene(QPointF(1300, 700))
    assert drag(canvas, QDragEnterEvent, spot, data)
    assert drag(canvas, QDragMoveEvent, spot, data)
    assert not drag(canvas, QDragMoveEvent, QPoint(2, 2), data)
    with qtbot.waitSignal(canvas.photos_dropped) as told:
        assert drag(canvas, QDropEvent, spot, data)
    photos, panel, view, x, y = told.args
    assert (photos, panel, view) == ((3, 9), DOOR, 1)
    assert (x, y) == (pytest.approx(1300, abs=4), pytest.approx(700, abs=4))


def test_a_drop_beside_the_car_or_of_something_else_is_refused(qtbot, canvas):
    text = QMimeData()
    text.setText("a shopping list")
    spot = canvas.panel_spot(DOOR)
    assert not drag(canvas, QDragEnterEvent, spot, text)
    with qtbot.assertNotEmitted(canvas.photos_dropped):
        assert not drag(canvas, QDropEvent, QPoint(2, 2), photos_to_mime([PhotoId(3)]))
        assert not drag(canvas, QDropEvent, spot, text)


def test_pins_close_together_become_one_dot_and_part_when_larger(canvas):
    canvas.set_pins((pin(1, DOOR, 1200, 600), pin(2, DOOR, 1230, 600), pin(3, REAR, 2000, 600)))
    assert sorted(len(dot.photo_ids) for dot in canvas.dots()) == [1, 2]
    canvas.zoom(6)
    assert sorted(len(dot.photo_ids) for dot in canvas.dots()) == [1, 1, 1]


def test_a_pin_without_a_spot_lies_on_its_panel_and_other_views_pins_do_not_show(canvas):
    canvas.set_pins((pin(1, SILL), pin(2, FLOOR, 1000, 300, view=2), pin(3, FLOOR)))
    (dot,) = canvas.dots()
    assert dot.photo_ids == (1,)
    assert canvas.panel_at(dot.at.toPoint()) == SILL
    canvas.set_view(ViewId(2))
    assert sum(len(dot.photo_ids) for dot in canvas.dots()) == 3


def test_a_click_on_a_dot_tells_its_photos(qtbot, canvas):
    canvas.set_pins((pin(7, DOOR, 1200, 600),))
    (dot,) = canvas.dots()
    with qtbot.waitSignal(canvas.pins_clicked) as told:
        qtbot.mouseClick(canvas.viewport(), LEFT, NO_KEY, dot.at.toPoint())
    assert told.args == [(7,)]


def test_no_photo_is_lost_in_the_gathering():
    spots = [Spot((PhotoId(n),), n * 37 % 900, n * 53 % 400) for n in range(500)]
    dots = gather(spots, QTransform())
    assert sorted(photo for dot in dots for photo in dot.photo_ids) == list(range(500))
    for place, dot in enumerate(dots):
        for other in dots[place + 1 :]:
            assert (dot.at - other.at).manhattanLength() >= REACH / 1.5


@pytest.mark.parametrize("choice", ["light", "dark"])
def test_stages_colour_their_panels_in_both_themes(qtbot, canvas, choice):
    colours = theme.LIGHT if choice == "light" else theme.DARK
    canvas.setPalette(theme.palette(colours))
    spot = canvas.mapFromScene(QPointF(2200, 700))

    def pixels():
        shot = canvas.viewport().grab().toImage()
        return {shot.pixelColor(spot + QPoint(x, y)).name() for x in range(12) for y in range(12)}

    assert pixels() == {colours.panel.lower()}
    canvas.set_stages({REAR: "finished"}, DEFAULT_STAGES)
    assert len(pixels()) > 1


def test_an_empty_drawing_takes_keys_and_clicks_in_peace(qtbot):
    canvas = DrawingCanvas()
    qtbot.addWidget(canvas)
    canvas.show()
    qtbot.keyClick(canvas, Qt.Key.Key_Right)
    qtbot.keyClick(canvas, Qt.Key.Key_PageDown)
    qtbot.mouseClick(canvas.viewport(), LEFT, NO_KEY, QPoint(20, 20))
    assert canvas.selected_panel is None


def test_a_stages_sign_stays_where_it_is_however_often_it_is_painted(canvas):
    canvas.set_stages({REAR: "finished"}, DEFAULT_STAGES)
    first = canvas.viewport().grab().toImage()
    for _ in range(3):
        again = canvas.viewport().grab().toImage()
    assert again == first


def test_a_sign_stands_on_its_panel_and_clear_of_every_dot(canvas):
    canvas.set_stages({DOOR: "welded", REAR: "finished", HANDLE: "found"}, DEFAULT_STAGES)
    canvas.set_pins((pin(1, DOOR), pin(2, DOOR, 1320, 660), pin(3, REAR)))
    signs = canvas.signs()
    assert set(signs) == {DOOR, REAR}
    for panel, at in signs.items():
        assert canvas.panel_at(at.toPoint()) == panel
        for dot in canvas.dots():
            apart = ((at.x() - dot.at.x()) ** 2 + (at.y() - dot.at.y()) ** 2) ** 0.5
            assert apart >= dot.radius + 9
