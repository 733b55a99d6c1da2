"""Tracing by mouse and keys: a picture laid under, squared up, scaled, faded, taken away."""

import math

import pytest
from PIL import Image, ImageDraw
from PySide6.QtCore import QPoint, Qt

from journal.actions import drawings, history
from journal.actions.settings import Settings
from journal.actions.tracing import lay_under, underlay
from journal.desktop.desk import Desk, PhotosSelected
from journal.desktop.pages.drawing import DrawingPage
from journal.desktop.tasks import TaskRunner
from journal.domain.homographies import mapped
from journal.domain.shapes import Point
from tests.desktop.desks import Told
from tests.desktop.garage import garage

LEFT = Qt.MouseButton.LeftButton
NONE = Qt.KeyboardModifier.NoModifier
KEY = Qt.Key

#: A plate of 2000 by 1000 mm as it looks aslant in the picture, in its pixels.
PLATE = ((150, 120), (640, 160), (620, 380), (170, 410))


@pytest.fixture
def runner(qapp, session):
    made = TaskRunner()
    yield made
    made.close()


@pytest.fixture
def session(tmp_path):
    with garage(tmp_path, 2) as made:
        yield made


@pytest.fixture
def photo(tmp_path):
    path = tmp_path / "plate.png"
    image = Image.new("RGB", (800, 500), "#d0d0d0")
    ImageDraw.Draw(image).polygon(PLATE, fill="#305080")
    image.save(path)
    return path


@pytest.fixture
def page(qtbot, runner, session, photo):
    desk = Desk(session, runner, Settings())
    made = DrawingPage(desk)
    qtbot.addWidget(made)
    desk.changed.connect(made.refresh)
    desk.selected.connect(made.show_selection)
    made.resize(1300, 800)
    made.show()
    made.refresh(None)
    qtbot.waitUntil(lambda: made.is_read)
    made.modes.enter("Trace")
    made.pane = made.modes.mode.pane()
    made.pane.choose = lambda: photo
    return made


@pytest.fixture
def traced(qtbot, page):
    page.pane.lay.click()
    qtbot.waitUntil(lambda: page.is_read and page.canvas.laid() is not None)
    return page


def laid(page):
    return underlay(page.desk.session, page.canvas.view_id)


def at(page, point):
    return page.canvas.mapFromScene(*point)


def drag(qtbot, page, start, end):
    port = page.canvas.viewport()
    a, b = at(page, start), at(page, end)
    qtbot.mousePress(port, LEFT, NONE, a)
    for part in (0.4, 0.8, 1.0):
        spot = QPoint(round(a.x() + (b.x() - a.x()) * part), round(a.y() + (b.y() - a.y()) * part))
        qtbot.mouseMove(port, spot)
    qtbot.mouseRelease(port, LEFT, NONE, b)
    qtbot.waitUntil(lambda: page.is_read)


def settle(qtbot, page):
    qtbot.waitUntil(lambda: page.is_read)


def test_a_picture_is_laid_under_and_seen_through_the_panels(qtbot, page):
    assert page.canvas.underlay_item is None
    assert "Lay a picture under this view first" in page.modes._hint.text()
    page.pane.lay.click()
    settle(qtbot, page)
    assert page.canvas.underlay_item is not None
    assert all(item.is_hollow for items in page.canvas._items.values() for item in items)
    middle = mapped(laid(page).matrix, (400, 300))

    def is_blue():
        colour = page.canvas.grab().toImage().pixelColor(at(page, middle))
        return colour.blue() > colour.red() + 15

    qtbot.waitUntil(is_blue)
    page.desk.act(history.undo)
    settle(qtbot, page)
    assert page.canvas.underlay_item is None


def test_it_is_squared_up_by_dragging_its_corners(qtbot, traced):
    page, square = traced, traced.modes.mode.square
    qtbot.keyClick(page.canvas, KEY.Key_2)
    assert page.canvas.tool is square
    matrix = laid(page).matrix
    for place, pixel in zip(square.places, PLATE, strict=True):
        drag(qtbot, page, place, mapped(matrix, pixel))
    page.pane.width_box.setValue(2000)
    page.pane.height_box.setValue(1000)
    first = square.places[0]
    page.canvas.setFocus()
    qtbot.keyClick(page.canvas, KEY.Key_Return)
    settle(qtbot, page)
    there = [mapped(laid(page).matrix, pixel) for pixel in square.handles]
    wanted = [(0, 0), (2000, 0), (2000, 1000), (0, 1000)]
    for found, (x, y) in zip(there, wanted, strict=True):
        assert found == pytest.approx((first.x + x, first.y + y), abs=0.5)
    # By hand on a screen of some 5 mm a pixel the plate is met to within that.
    true = [mapped(laid(page).matrix, pixel) for pixel in PLATE]
    assert math.dist(true[0], true[1]) == pytest.approx(2000, rel=0.03)
    page.desk.act(history.undo)
    assert laid(page).matrix == pytest.approx(matrix)


def test_corners_are_put_by_keys_and_numbers(qtbot, traced):
    page, square = traced, traced.modes.mode.square
    page.canvas.set_tool(square)
    page.canvas.setFocus()
    start = square.places
    qtbot.keyClick(page.canvas, KEY.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    qtbot.keyClick(page.canvas, KEY.Key_Down)
    assert square.places[0] == pytest.approx((start[0].x + 10, start[0].y + 1))
    qtbot.keyClick(page.canvas, KEY.Key_Tab)
    assert square.chosen == 1
    assert page.pane.point.x_box.value() == pytest.approx(start[1].x, abs=0.01)
    page.pane.point.put.emit(Point(start[1].x - 200, start[1].y + 100))
    assert square.places[1] == pytest.approx((start[1].x - 200, start[1].y + 100))


def test_corners_in_line_are_refused_at_the_place_and_nothing_moves(qtbot, traced):
    page, square = traced, traced.modes.mode.square
    told = Told(page.desk)
    page.canvas.set_tool(square)
    before = laid(page)
    a, c = square.places[0], square.places[2]
    square.choose(1)
    square.put(Point((a.x + c.x) / 2, (a.y + c.y) / 2))
    page.pane.width_box.setValue(2000)
    page.pane.height_box.setValue(1000)
    page.pane.go_square.click()
    assert "one line" in told.messages[-1]
    assert page.canvas.fault[0] == square.here()
    page.pane.height_box.setValue(0)
    square.choose(1)
    square.put(Point(c.x, a.y))
    page.pane.go_square.click()
    assert "more than nothing" in told.messages[-1]
    assert laid(page) == before


def test_its_scale_is_set_by_two_points(qtbot, traced):
    page, scale = traced, traced.modes.mode.scale
    qtbot.keyClick(page.canvas, KEY.Key_3)
    start = scale.places
    drag(qtbot, page, start[0], (start[0].x + 300, start[0].y))
    pixels = scale.handles
    page.pane.distance.setValue(1234.5)
    qtbot.keyClick(page.pane.distance, KEY.Key_Return)
    settle(qtbot, page)
    there = [mapped(laid(page).matrix, pixel) for pixel in pixels]
    assert math.dist(*there) == pytest.approx(1234.5, abs=0.05)
    told = Told(page.desk)
    page.pane.distance.setValue(0)
    page.pane.go_scale.click()
    assert "more than nothing" in told.messages[-1]


def test_it_is_moved_by_hand_and_by_keys(qtbot, traced):
    page, move = traced, traced.modes.mode.move
    assert page.canvas.tool is move
    before = mapped(laid(page).matrix, (400, 250))
    drag(qtbot, page, before, (before.x + 500, before.y - 200))
    moved = mapped(laid(page).matrix, (400, 250))
    assert moved == pytest.approx((before.x + 500, before.y - 200), abs=12)
    page.canvas.setFocus()
    for _ in range(3):
        qtbot.keyClick(page.canvas, KEY.Key_Left, Qt.KeyboardModifier.ShiftModifier)
    assert mapped(laid(page).matrix, (400, 250)) == moved
    qtbot.keyClick(page.canvas, KEY.Key_Return)
    settle(qtbot, page)
    assert mapped(laid(page).matrix, (400, 250)) == pytest.approx((moved.x - 30, moved.y), abs=0.01)
    qtbot.keyClick(page.canvas, KEY.Key_Up)
    qtbot.keyClick(page.canvas, KEY.Key_Escape)
    qtbot.keyClick(page.canvas, KEY.Key_Return)
    assert mapped(laid(page).matrix, (400, 250)) == pytest.approx((moved.x - 30, moved.y), abs=0.01)


def test_it_is_faded_hidden_shown_and_taken_away(qtbot, traced):
    page = traced
    page.pane.strength.setFocus()
    qtbot.keyClick(page.pane.strength, KEY.Key_PageDown)
    qtbot.waitUntil(lambda: laid(page).strength == pytest.approx(0.4))
    page.pane.shown.click()
    settle(qtbot, page)
    assert page.canvas.underlay_item is None
    assert not any(item.is_hollow for items in page.canvas._items.values() for item in items)
    assert page.canvas.laid() is not None
    page.pane.shown.click()
    settle(qtbot, page)
    assert page.canvas.underlay_item is not None
    page.pane.take.click()
    settle(qtbot, page)
    assert laid(page) is None
    assert page.canvas.underlay_item is None


def test_it_stays_under_the_drawing_in_other_modes_and_on_its_own_view(qtbot, traced):
    page = traced
    page.modes.enter("Shape")
    assert page.canvas.underlay_item is not None
    first, second = drawings.views(page.desk.session)[:2]
    page.canvas.set_view(second.id)
    assert page.canvas.underlay_item is None
    page.canvas.set_view(first.id)
    assert page.canvas.underlay_item is not None


def test_what_is_no_picture_is_refused_with_its_name(qtbot, page, tmp_path):
    told = Told(page.desk)
    file = tmp_path / "notes.txt"
    file.write_text("words")
    page.pane.choose = lambda: file
    page.pane.lay.click()
    assert "“notes.txt” can't be laid under a view" in told.messages[-1]
    assert laid(page) is None


def test_a_photo_selected_can_be_laid_under(qtbot, page, session, photo):
    from journal.actions.add_photos import add_photos

    (added,) = add_photos(session, [photo]).added
    assert page.pane.lay_photo.isHidden()
    page.desk.select(PhotosSelected((added.photo_id,)))
    page.pane.lay_photo.click()
    settle(qtbot, page)
    assert laid(page).sha256 == added.sha256


def test_a_missing_original_is_said_and_the_drawing_goes_on(qtbot, runner, session, photo):
    view = drawings.views(session)[0]
    lay_under(session, view.id, photo)
    for kept in (session.folder / "originals").glob("??/*.png"):
        kept.unlink()
    desk = Desk(session, runner, Settings())
    told = Told(desk)
    page = DrawingPage(desk)
    qtbot.addWidget(page)
    page.show()
    page.refresh(None)
    qtbot.waitUntil(lambda: page.is_read)
    assert any("can't be laid" in words for words in told.messages)
    assert page.canvas.underlay_item is None
