"""Two pictures over each other: the handle, fading, blinking, by mouse and by key."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QColor, QPixmap

from journal.desktop.dialogs.pair_looks import PairLooks
from journal.desktop.dialogs.pair_points import PairPoints
from journal.desktop.widgets.overlay_view import QUICKEST_MS, SLOWEST_MS, Look, OverlayView

LEFT = Qt.MouseButton.LeftButton
RED, BLUE = QColor("#c02020"), QColor("#2020c0")


def plain(colour: QColor, wide: int = 400, high: int = 300) -> QPixmap:
    made = QPixmap(wide, high)
    made.fill(colour)
    return made


@pytest.fixture
def view(qtbot):
    made = OverlayView()
    qtbot.addWidget(made)
    made.resize(400, 300)
    made.show_pair(plain(RED), plain(BLUE))
    made.show()
    return made


def colour_at(view, x, y=250) -> str:
    return view.grab().toImage().pixelColor(x, y).name()


def test_the_handle_divides_before_from_after(qtbot, view):
    assert (colour_at(view, 100), colour_at(view, 300)) == (RED.name(), BLUE.name())
    qtbot.mousePress(view, LEFT, pos=QPoint(320, 150))
    qtbot.mouseRelease(view, LEFT, pos=QPoint(320, 150))
    assert view.at == pytest.approx(0.8)
    assert colour_at(view, 280) == RED.name()
    view.setFocus()
    qtbot.keyClick(view, Qt.Key.Key_Left)
    qtbot.keyClick(view, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    assert view.at == pytest.approx(0.76)
    qtbot.keyClick(view, Qt.Key.Key_Home)
    assert colour_at(view, 100) == BLUE.name()
    qtbot.keyClick(view, Qt.Key.Key_End)
    assert colour_at(view, 300) == RED.name()
    assert "100%" in view.accessibleDescription()


def test_fading_mixes_the_two(view):
    view.set_look(Look.FADED)
    view.set_at(0.5)
    mixed = QColor(colour_at(view, 200))
    assert abs(mixed.red() - mixed.blue()) < 6


def test_blinking_never_begins_by_itself_and_ends_by_itself(qtbot, view):
    view.set_look(Look.BLINKING)
    assert not view.is_blinking
    view.set_interval(10)
    assert view.interval == QUICKEST_MS
    view.set_interval(99_999)
    assert view.interval == SLOWEST_MS
    view.setFocus()
    qtbot.keyClick(view, Qt.Key.Key_Space)
    assert view.is_blinking
    for _ in range(20):
        view._blink()
    assert not view.is_blinking
    assert colour_at(view, 200) == RED.name()
    qtbot.keyClick(view, Qt.Key.Key_Right)
    assert colour_at(view, 200) == BLUE.name()


def test_photos_that_do_not_lie_on_each_other_stand_side_by_side(qtbot, view):
    looks = PairLooks(view)
    qtbot.addWidget(looks)
    looks.set_laid(is_laid=False)
    assert view.look is Look.SIDE_BY_SIDE
    assert not looks.choices[Look.DIVIDED].isEnabled()
    view.show_pair(plain(RED, 200, 300), plain(BLUE, 400, 300))
    first, second = view.halves()
    assert first.height() == pytest.approx(second.height())
    assert second.width() == pytest.approx(2 * first.width())
    looks.set_laid(is_laid=True)
    assert view.look is Look.DIVIDED
    looks.choose(Look.BLINKING)
    looks.slider.setValue(1500)
    assert view.interval == 1500
    looks.choose(Look.FADED)
    looks.slider.setValue(250)
    assert view.at == 0.25


def test_spots_are_shown_on_both_moved_and_taken_away_by_mouse_and_key(qtbot):
    points = PairPoints()
    qtbot.addWidget(points)
    points.resize(900, 400)
    points.show_pictures(plain(RED), plain(BLUE))
    points.show()
    told = []
    points.changed.connect(told.append)
    first, second = points.views
    middle = first.rect().center()
    qtbot.mouseClick(first, LEFT, pos=middle)
    assert points.points() == ()
    assert "spot 1 on the after photo" in points.hint.text()
    qtbot.keyClick(second, Qt.Key.Key_Right)
    qtbot.keyClick(second, Qt.Key.Key_Return)
    (pair,) = points.points()
    assert pair.before == pytest.approx((0.5, 0.5), abs=0.01)
    assert pair.after == pytest.approx((0.52, 0.5), abs=0.01)
    assert told[-1] == (pair,)
    qtbot.mousePress(first, LEFT, pos=middle)
    qtbot.mouseMove(first, middle + QPoint(30, 0))
    qtbot.mouseRelease(first, LEFT, pos=middle + QPoint(30, 0))
    assert len(points.points()) == 1
    first.mark_moved.emit(0, QPointF(0.25, 0.75))
    assert points.points()[0].before == pytest.approx((0.25, 0.75))
    points.set_points((pair, pair))
    qtbot.keyClick(second, Qt.Key.Key_Delete)
    assert points.points() == (pair,)
    points.clear.click()
    assert points.points() == ()
