"""Small pictures of a drawing's views, only to look at."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPixmap
from PySide6.QtWidgets import QWidget

from journal.desktop import theme
from journal.desktop.theme import Colours
from journal.desktop.widgets.canvas_decor import decor_pen
from journal.desktop.widgets.paths import painter_path, stroke_path
from journal.domain.drawing import Drawing, View, Weight

_MARGIN = 12


def paint_view(
    painter: QPainter, drawing: Drawing, view: View, area: QRectF, colours: Colours, width: float
) -> None:
    """Paint a view as large as it fits into ``area``; ``width`` is the lines', in pixels."""
    scale = min(area.width() / view.width, area.height() / view.height)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(area.center())
    painter.scale(scale, scale)
    painter.translate(-view.width / 2, -view.height / 2)
    pen = QPen(QColor(colours.panel_edge), width)
    pen.setCosmetic(True)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    painter.setPen(pen)
    painter.setBrush(QColor(colours.panel))
    lines = drawing.decor_on(view.id)
    for line in lines:
        if line.weight is Weight.GROUND:
            painter.strokePath(stroke_path(line.stroke), decor_pen(line, colours))
    for shape in drawing.shapes_on(view.id):
        painter.drawPath(painter_path(shape.shape))
    for line in lines:
        if line.weight is not Weight.GROUND:
            painter.strokePath(stroke_path(line.stroke), decor_pen(line, colours))
    painter.restore()


def view_pixmap(
    drawing: Drawing, view: View, size: QSize, colours: Colours, ratio: float
) -> QPixmap:
    """A view as a picture of ``size`` device-independent pixels on nothing."""
    made = QPixmap(size * ratio)
    made.setDevicePixelRatio(ratio)
    made.fill(Qt.GlobalColor.transparent)
    painter = QPainter(made)
    paint_view(
        painter, drawing, view, QRectF(1, 1, size.width() - 2, size.height() - 2), colours, 1
    )
    painter.end()
    return made


class DrawingPreview(QWidget):
    """Paints the first views of a drawing side by side, at one scale."""

    def __init__(self, views: int = 2, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._count = views
        self._drawing: Drawing | None = None
        self.setAccessibleName("The car's drawing")

    def set_drawing(self, drawing: Drawing) -> None:
        """Show another drawing."""
        self._drawing = drawing
        names = ", ".join(view.name for view in drawing.views)
        self.setAccessibleDescription(f"{len(drawing.panels)} panels on {names}")
        self.update()

    def sizeHint(self) -> QSize:
        """Room for two views, wide and low."""
        return QSize(600, 190)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the views."""
        colours = theme.colours_of(self.palette())
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(colours.sheet))
        views = self._drawing.views[: self._count] if self._drawing else ()
        if self._drawing is None or not views:
            return
        wide = sum(view.width for view in views)
        room = self.width() - _MARGIN * (len(views) + 1)
        x = float(_MARGIN)
        for view in views:
            share = room * view.width / wide
            area = QRectF(x, _MARGIN, share, self.height() - 2 * _MARGIN)
            paint_view(painter, self._drawing, view, area, colours, 1.2)
            x += share + _MARGIN
