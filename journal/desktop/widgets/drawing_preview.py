"""A small picture of a drawing's views, only to look at."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from journal.desktop import theme
from journal.desktop.widgets.paths import painter_path
from journal.domain.drawing import Drawing, View
from journal.domain.ids import ViewId

_MARGIN = 12


class DrawingPreview(QWidget):
    """Paints one view of a drawing, or the first two of them side by side, as outlines."""

    def __init__(self, views: int = 2, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._count = views
        self._views: tuple[View, ...] = ()
        self._paths: dict[ViewId, list[QPainterPath]] = {}
        self.setAccessibleName("The car's drawing")

    def set_drawing(self, drawing: Drawing, view_id: ViewId | None = None) -> None:
        """Show a drawing's first views, or the one named."""
        chosen = [v for v in drawing.views if view_id is None or v.id == view_id]
        self._views = tuple(chosen[: self._count])
        self._paths = {view.id: [] for view in self._views}
        for shape in sorted(drawing.shapes, key=lambda s: s.order):
            if shape.view_id in self._paths:
                self._paths[shape.view_id].append(painter_path(shape.shape))
        self.setAccessibleDescription(f"{len(drawing.views)} views, {len(drawing.panels)} panels")
        self.update()

    def sizeHint(self) -> QSize:
        """Room for one view, wide and low."""
        return QSize(300, 140)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the views at one scale."""
        colours = theme.colours_of(self.palette())
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(self.rect(), QColor(colours.sheet))
        if not self._views:
            return
        wide = sum(view.width for view in self._views)
        high = max(view.height for view in self._views)
        room_x = self.width() - _MARGIN * (len(self._views) + 1)
        scale = min(room_x / wide, (self.height() - 2 * _MARGIN) / high)
        x = (self.width() - wide * scale - _MARGIN * (len(self._views) - 1)) / 2
        pen = QPen(QColor(colours.panel_edge), 1.2)
        pen.setCosmetic(True)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        for view in self._views:
            area = QRectF(x, (self.height() - view.height * scale) / 2, 0, 0)
            painter.save()
            painter.translate(area.topLeft())
            painter.scale(scale, scale)
            painter.setPen(pen)
            painter.setBrush(QColor(colours.panel))
            for path in self._paths[view.id]:
                painter.drawPath(path)
            painter.restore()
            x += view.width * scale + _MARGIN
