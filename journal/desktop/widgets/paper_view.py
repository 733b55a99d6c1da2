"""The picture of a receipt's paper, with the places that fields were read from."""

from collections.abc import Mapping

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from journal.desktop.theme import colours_of
from journal.desktop.widgets.picture_view import PictureView
from journal.domain.papers import Box

_MARGIN = 3.0
#: Print this high, pixels, can be read without effort; closer than this all bearings are lost.
_LEGIBLE, _CLOSEST = 26.0, 4.0


class PaperView(PictureView):
    """Shows a page; the field in hand has a strong frame, the others a thin one."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent, dark_ground=False)
        self._boxes: Mapping[str, Box] = {}
        self._chosen = ""
        self.setMinimumSize(260, 240)
        self.setAccessibleName("The paper, with the places that were read")

    @property
    def chosen(self) -> str:
        """The name of the field whose place is framed strongly; "" for none."""
        return self._chosen

    def set_boxes(self, boxes: Mapping[str, Box]) -> None:
        """Frame the places of these fields, by name."""
        self._boxes = dict(boxes)
        self.update()

    def choose(self, name: str) -> None:
        """Frame the place of one field strongly and bring it into sight."""
        self._chosen = name if name in self._boxes else ""
        if box := self._boxes.get(self._chosen):
            zoom = self._legible(box)
            self.look_at(zoom, (box.left + box.right) / 2, (box.top + box.bottom) / 2)
        self.update()

    def frame_of(self, name: str) -> QRectF:
        """Where a field's frame lies now, in the widget's own pixels."""
        area, box = self._area(), self._boxes[name]
        corner = QPointF(area.x() + box.left * area.width(), area.y() + box.top * area.height())
        wide = (box.right - box.left) * area.width()
        high = (box.bottom - box.top) * area.height()
        frame = QRectF(corner.x(), corner.y(), wide, high)
        return frame.adjusted(-_MARGIN, -_MARGIN, _MARGIN, _MARGIN)

    def _legible(self, box: Box) -> float:
        """The zoom at which a place can be read, and still be seen from end to end."""
        wide, high = self._fitted()
        if not wide or not high:
            return self.zoom
        wanted = _LEGIBLE / max((box.bottom - box.top) * high, 1.0)
        whole = self.width() / max((box.right - box.left) * wide + 4 * _MARGIN, 1.0)
        return max(1.0, min(wanted, whole, _CLOSEST))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the page and the frames over it."""
        super().paintEvent(event)
        if self.pixmap is None or self.pixmap.isNull():
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        accent = QColor(colours_of(self.palette()).accent)
        for name in self._boxes:
            if name != self._chosen:
                painter.setPen(QPen(accent, 1, Qt.PenStyle.DotLine))
                painter.drawRect(self.frame_of(name))
        if self._chosen:
            ground = QColor(accent)
            ground.setAlpha(45)
            painter.setPen(QPen(accent, 3))
            painter.setBrush(ground)
            painter.drawRect(self.frame_of(self._chosen))
