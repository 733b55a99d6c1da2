"""The lines of a drawing that are no panels: ground, swage lines, grille bars, hubs."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from journal.desktop.theme import Colours
from journal.desktop.widgets.paths import stroke_path
from journal.domain.drawing import Decor, Weight

_WIDTHS = {Weight.GROUND: 1.6, Weight.DETAIL: 0.8, Weight.CENTRE: 0.8}
#: Under every panel, or over them all.
_UNDER, _OVER = -1e8, 1e8


def decor_pen(line: Decor, colours: Colours) -> QPen:
    """The pen of a line, in pixels whatever the scale."""
    ink = colours.muted if line.weight is Weight.GROUND else colours.panel_edge
    pen = QPen(QColor(ink), _WIDTHS[line.weight])
    if line.weight is Weight.CENTRE:
        pen.setStyle(Qt.PenStyle.DashDotLine)
    pen.setCosmetic(True)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    return pen


class DecorItem(QGraphicsItem):
    """One line; it is only to look at, what lies under it is clicked."""

    def __init__(self, line: Decor, colours: Colours) -> None:
        super().__init__()
        self._path = stroke_path(line.stroke)
        self._pen = decor_pen(line, colours)
        self._bounds = self._path.boundingRect().adjusted(-20, -20, 20, 20)
        self.setZValue(_UNDER if line.weight is Weight.GROUND else _OVER)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)

    def boundingRect(self) -> QRectF:
        """The line with room for its width, in millimetres."""
        return self._bounds

    def paint(
        self, painter: QPainter, _option: QStyleOptionGraphicsItem, _widget: QWidget | None = None
    ) -> None:
        """Paint the line."""
        painter.strokePath(self._path, self._pen)
