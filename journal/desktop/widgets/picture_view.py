"""One picture, as large as there is room, or larger and pulled about."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPixmap,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from journal.desktop.theme import DARK, colours_of
from journal.desktop.widgets.cover_paint import paint_boxes
from journal.domain.covers import CoverBox

_STEP = 1.25
_MOST = 8.0


class PictureView(QWidget):
    """Shows a pixmap fitted; the wheel, + and - make it larger, pulling moves it.

    The place looked at is kept as a part of the picture, so that two views can show the same one.
    """

    #: It shows another part or another size: zoom, and the middle in parts of width and height.
    looked = Signal(float, float, float)
    #: It was double clicked where that does not zoom.
    double_clicked = Signal()

    def __init__(
        self, parent: QWidget | None = None, *, dark_ground: bool = True, zooms: bool = True
    ) -> None:
        super().__init__(parent)
        self._pixmap: QPixmap | None = None
        self._words = ""
        self._covers: tuple[CoverBox, ...] = ()
        self._zoom = 1.0
        self._middle = QPointF(0.5, 0.5)
        self._pulled: QPointF | None = None
        self._dark_ground = dark_ground
        self._zooms = zooms
        self.setMinimumSize(160, 120)

    @property
    def zoom(self) -> float:
        """How much larger than fitted, 1 to 8."""
        return self._zoom

    @property
    def middle(self) -> QPointF:
        """The place looked at, in parts of the picture's width and height."""
        return self._middle

    @property
    def pixmap(self) -> QPixmap | None:
        """What is shown."""
        return self._pixmap

    def show_picture(self, pixmap: QPixmap | None, words: str = "") -> None:
        """Show a picture, or ``words`` where there is none; the place looked at stays."""
        self._pixmap, self._words = pixmap, words
        self.update()

    def show_covers(self, covers: Sequence[CoverBox]) -> None:
        """Hatch these places of the picture."""
        self._covers = tuple(covers)
        self.update()

    def look_at(self, zoom: float, x: float, y: float) -> None:
        """Show a part without telling anybody."""
        self._zoom, self._middle = zoom, QPointF(x, y)
        self._hold()
        self.update()

    def fit(self) -> None:
        """Show the whole picture."""
        self._look(1.0, QPointF(0.5, 0.5))

    def zoom_by(self, steps: int, at: QPointF | None = None) -> None:
        """Make it larger by so many steps, round a spot of the widget."""
        zoom = max(1.0, min(_MOST, self._zoom * _STEP**steps))
        area = self._area()
        if at is None or area.isEmpty():
            self._look(zoom, self._middle)
            return
        part = QPointF(
            (at.x() - area.x()) / area.width(),
            (at.y() - area.y()) / area.height(),
        )
        keep = self._zoom / zoom
        self._look(zoom, part + (self._middle - part) * keep)

    def _look(self, zoom: float, middle: QPointF) -> None:
        self._zoom, self._middle = zoom, middle
        self._hold()
        self.update()
        self.looked.emit(self._zoom, self._middle.x(), self._middle.y())

    def _fitted(self) -> tuple[float, float]:
        """Width and height of the whole picture when fitted."""
        if self._pixmap is None or self._pixmap.isNull():
            return 0.0, 0.0
        wide, high = self._pixmap.width(), self._pixmap.height()
        scale = min(self.width() / wide, self.height() / high)
        return wide * scale, high * scale

    def _area(self) -> QRectF:
        """Where the whole picture lies, in the widget's own pixels."""
        wide, high = (side * self._zoom for side in self._fitted())
        left = self.width() / 2 - self._middle.x() * wide
        top = self.height() / 2 - self._middle.y() * high
        return QRectF(left, top, wide, high)

    def _hold(self) -> None:
        """Keep the picture's edges from coming further in than they need to."""
        wide, high = (side * self._zoom for side in self._fitted())
        if not wide or not high:
            return
        reach_x = min(0.5, self.width() / 2 / wide)
        reach_y = min(0.5, self.height() / 2 / high)
        self._middle = QPointF(
            max(reach_x, min(1 - reach_x, self._middle.x())),
            max(reach_y, min(1 - reach_y, self._middle.y())),
        )

    # Qt

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the picture."""
        painter = QPainter(self)
        colours = DARK if self._dark_ground else colours_of(self.palette())
        painter.fillRect(self.rect(), QColor(colours.rail))
        if self._pixmap is None or self._pixmap.isNull():
            painter.setPen(QColor(colours.muted))
            words = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
            painter.drawText(self.rect().adjusted(24, 24, -24, -24), words, self._words)
            return
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.drawPixmap(self._area(), self._pixmap, QRectF(self._pixmap.rect()))
        paint_boxes(painter, self._area(), self._covers)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Hold the edges."""
        super().resizeEvent(event)
        self._hold()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Make it larger or smaller round the pointer."""
        if not self._zooms:
            event.ignore()
            return
        self.zoom_by(1 if event.angleDelta().y() > 0 else -1, event.position())
        event.accept()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin to pull."""
        if event.button() == Qt.MouseButton.LeftButton:
            self._pulled = event.position()
            if self._zoom > 1:
                self.setCursor(Qt.CursorShape.ClosedHandCursor)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Pull the picture about."""
        if self._pulled is None or self._zoom == 1:
            return
        area, pull = self._area(), event.position() - self._pulled
        self._pulled = event.position()
        if not area.isEmpty():
            by = QPointF(pull.x() / area.width(), pull.y() / area.height())
            self._look(self._zoom, self._middle - by)

    def mouseReleaseEvent(self, _event: QMouseEvent) -> None:
        """Let go."""
        self._pulled = None
        self.unsetCursor()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Twice as large at that spot, or the whole again."""
        if not self._zooms:
            self.double_clicked.emit()
        elif self._zoom > 1:
            self.fit()
        else:
            self.zoom_by(4, event.position())
