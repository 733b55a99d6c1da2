"""A picture on which numbered spots are shown, moved and taken away, by mouse or by key."""

import math
from collections.abc import Callable, Sequence

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QFont,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import QWidget

from journal.desktop.theme import colours_of
from journal.desktop.widgets.picture_view import PictureView

#: A mark is taken hold of within so many pixels.
_REACH = 14.0
#: Less than this far a press is a click, not a pull.
_STILL = 5.0
_STEP, _FINE = 0.02, 0.002
_RADIUS = 9.0


class PointView(PictureView):
    """Shows marks by their number; a click where none is makes a new one.

    By key: the arrows move a cross (with Shift finely), Enter puts a mark there, Delete takes the
    chosen one away. Places are shares of the picture's width and height.
    """

    #: A new mark is wanted at a place.
    placed = Signal(QPointF)
    #: A mark was moved: its number from 0, and where to.
    mark_moved = Signal(int, QPointF)
    #: A mark is to be taken away.
    mark_removed = Signal(int)
    #: A mark was chosen.
    mark_chosen = Signal(int)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent, dark_ground=False)
        self._marks: tuple[QPointF | None, ...] = ()
        self._chosen = -1
        self._held = -1
        self._pressed: QPointF | None = None
        self._cross = QPointF(0.5, 0.5)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.CrossCursor)
        self.setAccessibleName(name)
        self._describe()

    def show_marks(self, marks: Sequence[QPointF | None], chosen: int) -> None:
        """Show these marks; None where a number has no place here yet."""
        self._marks, self._chosen = tuple(marks), chosen
        self._describe()
        self.update()

    @property
    def cross(self) -> QPointF:
        """Where the cross is that the keys move."""
        return self._cross

    def _describe(self) -> None:
        count = sum(mark is not None for mark in self._marks)
        self.setAccessibleDescription(
            f"{count} spots; cross at {self._cross.x():.0%} from the left, "
            f"{self._cross.y():.0%} from the top; Enter puts a spot there"
        )

    def _spot(self, place: QPointF) -> QPointF:
        area = self._area()
        return QPointF(
            area.left() + place.x() * area.width(), area.top() + place.y() * area.height()
        )

    def _place(self, spot: QPointF) -> QPointF | None:
        area = self._area()
        if area.isEmpty() or not area.contains(spot):
            return None
        return QPointF(
            (spot.x() - area.left()) / area.width(), (spot.y() - area.top()) / area.height()
        )

    def _mark_at(self, spot: QPointF) -> int:
        near = [
            (math.hypot(*(self._spot(mark) - spot).toTuple()), number)
            for number, mark in enumerate(self._marks)
            if mark is not None
        ]
        best = min(near, default=(_REACH + 1, -1))
        return best[1] if best[0] <= _REACH else -1

    # --- hands

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold of a mark, or begin a click or a pull."""
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        if event.button() != Qt.MouseButton.LeftButton or self.pixmap is None:
            return
        self._pressed = event.position()
        self._held = self._mark_at(event.position())
        if self._held >= 0:
            self.mark_chosen.emit(self._held)
        else:
            super().mousePressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Move the mark that is held, or pull the picture."""
        if self._held < 0:
            super().mouseMoveEvent(event)
        elif place := self._place(event.position()):
            self.mark_moved.emit(self._held, place)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Make a mark where a click was."""
        pressed, held = self._pressed, self._held
        self._pressed, self._held = None, -1
        super().mouseReleaseEvent(event)
        self.setCursor(Qt.CursorShape.CrossCursor)
        if pressed is None or held >= 0:
            return
        if math.hypot(*(event.position() - pressed).toTuple()) > _STILL:
            return
        if place := self._place(event.position()):
            self._cross = place
            self.placed.emit(place)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Two clicks are two clicks here."""
        self.mousePressEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move the cross, put a mark down or take one away, look closer."""
        key = Qt.Key(event.key())
        fine = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        step = (_FINE if fine else _STEP) / self.zoom
        ways = {
            Qt.Key.Key_Left: (-step, 0.0), Qt.Key.Key_Right: (step, 0.0),
            Qt.Key.Key_Up: (0.0, -step), Qt.Key.Key_Down: (0.0, step),
        }  # fmt: skip
        acts: dict[Qt.Key, Callable[[], object]] = {
            Qt.Key.Key_Plus: lambda: self.zoom_by(1, self._spot(self._cross)),
            Qt.Key.Key_Equal: lambda: self.zoom_by(1, self._spot(self._cross)),
            Qt.Key.Key_Minus: lambda: self.zoom_by(-1, self._spot(self._cross)),
            Qt.Key.Key_0: self.fit,
            Qt.Key.Key_Return: lambda: self.placed.emit(self._cross),
            Qt.Key.Key_Enter: lambda: self.placed.emit(self._cross),
            Qt.Key.Key_Delete: lambda: self.mark_removed.emit(self._chosen),
            Qt.Key.Key_Backspace: lambda: self.mark_removed.emit(self._chosen),
        }
        if key in ways:
            dx, dy = ways[key]
            self._cross = QPointF(_held(self._cross.x() + dx), _held(self._cross.y() + dy))
            self._describe()
            self.update()
        elif key in acts and self.pixmap is not None:
            acts[key]()
        else:
            event.ignore()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the cross."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Hide the cross."""
        super().focusOutEvent(event)
        self.update()

    # --- painting

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the picture, its marks, and the cross of the keys."""
        super().paintEvent(event)
        if self.pixmap is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colours = colours_of(self.palette())
        for number, mark in enumerate(self._marks):
            if mark is not None:
                chosen = (colours.accent, colours.on_accent)
                look = chosen if number == self._chosen else ("#202020", "#ffffff")
                self._paint_mark(painter, self._spot(mark), str(number + 1), look)
        if self.hasFocus():
            self._paint_cross(painter, self._spot(self._cross))
            painter.setPen(QPen(QColor(colours.focus), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(self.rect().adjusted(1, 1, -2, -2))

    def _paint_mark(
        self, painter: QPainter, spot: QPointF, words: str, look: tuple[str, str]
    ) -> None:
        """A ring whose middle stays free, and its number on a plain ground beside it."""
        colour, ink = look
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for width, pen in ((5.0, "#ffffff"), (2.5, colour)):
            painter.setPen(QPen(QColor(pen), width))
            painter.drawEllipse(spot, _RADIUS, _RADIUS)
        painter.setPen(QPen(QColor(colour), 1))
        painter.drawPoint(spot)
        font = QFont(self.font())
        font.setWeight(QFont.Weight.DemiBold)
        painter.setFont(font)
        box = QRectF(spot.x() + _RADIUS + 3, spot.y() - 11, 12 + 9 * len(words), 22)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(colour))
        painter.drawRoundedRect(box, 4, 4)
        painter.setPen(QColor(ink))
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, words)

    def _paint_cross(self, painter: QPainter, spot: QPointF) -> None:
        for width, colour in ((4.0, "#ffffff"), (1.5, "#000000")):
            painter.setPen(QPen(QColor(colour), width))
            for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1)):
                way = QPointF(dx, dy)
                painter.drawLine(spot + way * 5, spot + way * 16)


def _held(share: float) -> float:
    return min(max(share, 0.0), 1.0)
