"""A photo on which boxes are drawn over what is not to be seen, by hand or by key."""

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import QPointF, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from journal.desktop.theme import colours_of
from journal.desktop.widgets.cover_paint import HANDLE, box_rect, corners, paint_boxes
from journal.desktop.widgets.picture_view import PictureView
from journal.domain.covers import CoverBox

#: What an arrow key moves, as a share of the picture, and with Ctrl.
_COARSE, _FINE = 0.01, 0.002
_LEAST = 0.005
#: Moves by key are kept as one edit after so long without another, in milliseconds.
_CALM = 600

_ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}


class CoverCanvas(PictureView):
    """Draw on empty places, pull a box to move it, pull a corner to size it; the wheel zooms."""

    #: A box was drawn: x, y, width and height as shares of the picture.
    drawn = Signal(object)
    #: A box lies elsewhere or is of another size: a CoverBox.
    changed = Signal(object)
    #: Another box is the current one: its number.
    picked = Signal(int)
    #: The current box is to go: its number.
    removal_wanted = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.editable = True
        self._boxes: tuple[CoverBox, ...] = ()
        self._current: int | None = None
        self._from: QPointF | None = None
        self._to = QPointF()
        self._held: CoverBox | None = None
        self._corner: int | None = None
        self._by_key: CoverBox | None = None
        self._calm = QTimer(self, interval=_CALM, singleShot=True)
        self._calm.timeout.connect(self.keep)

    # --- what is shown ---

    @property
    def boxes(self) -> tuple[CoverBox, ...]:
        """The boxes as they are shown."""
        return self._boxes

    def show_boxes(self, boxes: Sequence[CoverBox], current: int | None) -> None:
        """Show these; ``current`` is the one with handles."""
        self._boxes = tuple(boxes)
        self._current = current
        self.update()

    def box(self, number: int | None) -> CoverBox | None:
        """A box by its number."""
        return next((box for box in self._boxes if box.id == number), None)

    def keep(self) -> None:
        """Record what was moved by key."""
        self._calm.stop()
        moved, self._by_key = self._by_key, None
        if moved is not None:
            self.changed.emit(moved)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the photo, the boxes, and the one being drawn."""
        super().paintEvent(event)
        if self.pixmap is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        paint_boxes(painter, self._area(), self._boxes, self._current)
        if self._from is not None and self._held is None:
            painter.setBrush(Qt.BrushStyle.BDiagPattern)
            painter.setPen(QPen(Qt.GlobalColor.white, 2, Qt.PenStyle.DashLine))
            painter.drawRect(QRectF(self._from, self._to).normalized())
        if self.hasFocus():
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(QColor(colours_of(self.palette()).focus), 2))
            painter.drawRect(self.rect().adjusted(1, 1, -1, -1))

    # --- by hand ---

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take a corner, a box, or begin a new one."""
        if event.button() != Qt.MouseButton.LeftButton or not self.editable or self.pixmap is None:
            return
        self.keep()
        spot = event.position()
        self._from = self._to = spot
        self._corner = self._corner_at(spot)
        self._held = self.box(self._current) if self._corner is not None else self._box_at(spot)
        if self._held is not None and self._held.id != self._current:
            self._current = self._held.id
            self.picked.emit(self._held.id)
        self.update()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Go on with it."""
        if self._from is None:
            self._show_cursor(event.position())
            return
        self._to = event.position()
        if self._held is not None:
            self._put(self._as_pulled(self._held))
        self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go: a box is drawn, moved or sized."""
        if self._from is None or event.button() != Qt.MouseButton.LeftButton:
            return
        self._to = event.position()
        held, start = self._held, self._from
        if held is None:
            self._finish_new(QRectF(start, self._to).normalized())
        else:
            moved = self._as_pulled(held)
            if moved != held:
                self.changed.emit(moved)
        self._from, self._held, self._corner = None, None, None
        self.update()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """A second click is a press like the first."""
        self.mousePressEvent(event)

    def _finish_new(self, rect: QRectF) -> None:
        area = self._area()
        place = (
            (rect.x() - area.x()) / area.width(),
            (rect.y() - area.y()) / area.height(),
            rect.width() / area.width(),
            rect.height() / area.height(),
        )
        if min(place[2:]) >= _LEAST and rect.intersects(area):
            self.drawn.emit(place)

    def _as_pulled(self, box: CoverBox) -> CoverBox:
        """The box as the hand has it now."""
        area, start = self._area(), self._from or QPointF()
        by_x = (self._to.x() - start.x()) / area.width()
        by_y = (self._to.y() - start.y()) / area.height()
        if self._corner is None:
            return _moved(box, by_x, by_y)
        left, top, right, low = box.x, box.y, box.x + box.width, box.y + box.height
        if self._corner in (0, 3):
            left = min(left + by_x, right - _LEAST)
        else:
            right = max(right + by_x, left + _LEAST)
        if self._corner in (0, 1):
            top = min(top + by_y, low - _LEAST)
        else:
            low = max(low + by_y, top + _LEAST)
        left, top, right, low = max(left, 0), max(top, 0), min(right, 1), min(low, 1)
        return replace(box, x=left, y=top, width=right - left, height=low - top)

    def _put(self, moved: CoverBox) -> None:
        self._boxes = tuple(moved if box.id == moved.id else box for box in self._boxes)
        self.update()

    def _corner_at(self, spot: QPointF) -> int | None:
        box = self.box(self._current)
        if box is None:
            return None
        for number, corner in enumerate(corners(box_rect(box, self._area()))):
            if max(abs(spot.x() - corner.x()), abs(spot.y() - corner.y())) <= 2 * HANDLE:
                return number
        return None

    def _box_at(self, spot: QPointF) -> CoverBox | None:
        area = self._area()
        return next((b for b in reversed(self._boxes) if box_rect(b, area).contains(spot)), None)

    def _show_cursor(self, spot: QPointF) -> None:
        corner = self._corner_at(spot)
        if corner is not None:
            falling = corner in (0, 2)
            shape = Qt.CursorShape.SizeFDiagCursor if falling else Qt.CursorShape.SizeBDiagCursor
        elif self._box_at(spot) is not None:
            shape = Qt.CursorShape.SizeAllCursor
        else:
            shape = Qt.CursorShape.CrossCursor
        self.setCursor(shape)

    # --- by key ---

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows move the current box, with Shift they size it; Insert adds, Delete removes."""
        key = Qt.Key(event.key())
        box = self.box(self._current)
        if key in _ARROWS and box is not None and self.editable:
            fine = event.modifiers() & Qt.KeyboardModifier.ControlModifier
            step = _FINE if fine else _COARSE
            across, down = (step * way for way in _ARROWS[key])
            sized = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
            self._by_key = _sized(box, across, down) if sized else _moved(box, across, down)
            self._put(self._by_key)
            self._calm.start()
        elif key in (Qt.Key.Key_Plus, Qt.Key.Key_Equal):
            self.zoom_by(1)
        elif key == Qt.Key.Key_Minus:
            self.zoom_by(-1)
        elif key == Qt.Key.Key_0:
            self.fit()
        elif key == Qt.Key.Key_Insert and self.editable:
            self.add_in_the_middle()
        elif key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace) and box is not None:
            self._by_key = None
            self.removal_wanted.emit(box.id)
        else:
            super().keyPressEvent(event)

    def add_in_the_middle(self) -> None:
        """Draw a box where the eye is, to be moved by key."""
        self.keep()
        x, y = self.middle.x(), self.middle.y()
        wide, high = 0.2 / self.zoom, 0.1 / self.zoom
        self.drawn.emit((x - wide / 2, y - high / 2, wide, high))

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Keep what was moved."""
        self.keep()
        super().focusOutEvent(event)


def _moved(box: CoverBox, across: float, down: float) -> CoverBox:
    x = min(max(box.x + across, 0.0), 1.0 - box.width)
    y = min(max(box.y + down, 0.0), 1.0 - box.height)
    return replace(box, x=x, y=y)


def _sized(box: CoverBox, across: float, down: float) -> CoverBox:
    width = min(max(box.width + across, _LEAST), 1.0 - box.x)
    height = min(max(box.height + down, _LEAST), 1.0 - box.y)
    return replace(box, width=width, height=height)
