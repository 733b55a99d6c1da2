"""A panel as it lies on the drawing: outline, fill, stage, and how it shows what happens to it."""

from enum import Enum

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPainterPath, QPen, QTransform
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from journal.desktop.theme import Colours, StageMark
from journal.desktop.widgets.paths import painter_path
from journal.domain.drawing import Panel, System
from journal.domain.shapes import Shape

#: How strong a stage's pattern is where its sign tells the stage too.
_UNDER_SIGN = 0.55


#: How strong it is where a picture under the view is to be seen through it.
_OVER_PICTURE = 0.3

#: An outline is looked over at so many places across and along.
_GRID = 14


class Touch(Enum):
    """What is going on with a panel, the strongest last."""

    NONE = 0
    HOVERED = 1
    SELECTED = 2
    DROP = 3


class PanelItem(QGraphicsItem):
    """One outline of one panel; it paints, the canvas listens."""

    def __init__(self, panel: Panel, shape: Shape, order: int, colours: Colours) -> None:
        super().__init__()
        self.piece = panel
        self.outline = shape
        self.path = painter_path(shape)
        self.colours = colours
        self.stage: StageMark | None = None
        self.touch = Touch.NONE
        self.is_signed = False
        #: A picture lies under the view and is to be seen through the panel.
        self.is_hollow = False
        self._bounds = self.path.boundingRect()
        self.setZValue(order)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)

    @property
    def middle(self) -> QPointF:
        """A spot inside the outline: its middle, or what a coarse look finds."""
        centre = self._bounds.center()
        if self.path.contains(centre):
            return centre
        box = self._bounds
        for row in range(1, _GRID):
            for column in range(1, _GRID):
                x = box.left() + box.width() * column / _GRID
                y = box.top() + box.height() * row / _GRID
                if self.path.contains(QPointF(x, y)):
                    return QPointF(x, y)
        return centre

    def set_shape(self, shape: Shape) -> None:
        """Lie otherwise from now on."""
        self.prepareGeometryChange()
        self.outline = shape
        self.path = painter_path(shape)
        self._bounds = self.path.boundingRect()

    def twin(self) -> "PanelItem":
        """Another one that looks the same."""
        made = PanelItem(self.piece, self.outline, round(self.zValue()), self.colours)
        made.stage, made.touch, made.is_signed = self.stage, self.touch, self.is_signed
        return made

    def set_touch(self, touch: Touch) -> None:
        """Show what is going on with the panel."""
        if touch is not self.touch:
            self.touch = touch
            self.update()

    def boundingRect(self) -> QRectF:
        """The outline with room for its thickest line, in millimetres."""
        return self._bounds.adjusted(-40, -40, 40, 40)

    def shape(self) -> QPainterPath:
        """The outline: what counts as on the panel."""
        return self.path

    def paint(
        self, painter: QPainter, _option: QStyleOptionGraphicsItem, _widget: QWidget | None = None
    ) -> None:
        """Paint the fill, the stage's pattern over it, and the line."""
        scale = painter.worldTransform().m11()
        if not self.is_hollow:
            painter.fillPath(self.path, QColor(self._ground()))
        if self.stage is not None:
            self._paint_stage(painter, scale, self.stage)
        if self.touch is Touch.DROP or self.touch is Touch.HOVERED:
            wash = QColor(self.colours.accent)
            wash.setAlpha(70 if self.touch is Touch.DROP else 36)
            painter.fillPath(self.path, wash)
        painter.strokePath(self.path, _pen(self.colours.panel_edge, 1.2))

    def _ground(self) -> str:
        if self.touch is Touch.HOVERED:
            return self.colours.hover
        return self.colours.sheet if self.piece.system is System.GLASS else self.colours.panel

    def paint_outline(self, painter: QPainter) -> None:
        """Paint the line that tells what is going on; it lies over the neighbours."""
        if self.touch is not Touch.NONE:
            width = 2.0 if self.touch is Touch.HOVERED else 3.5
            dashed = self.touch is Touch.DROP
            painter.strokePath(self.path, _pen(self.colours.accent, width, dashed=dashed))

    def _paint_stage(self, painter: QPainter, scale: float, mark: StageMark) -> None:
        wash = QColor(mark.colour)
        wash.setAlpha(14 if self.is_hollow else 46)
        painter.fillPath(self.path, wash)
        brush = QBrush(mark.brush())
        if scale:
            brush.setTransform(QTransform.fromScale(1 / scale, 1 / scale))
        painter.save()
        strength = _UNDER_SIGN if self.is_signed else 1.0
        painter.setOpacity(_OVER_PICTURE if self.is_hollow else strength)
        painter.fillPath(self.path, brush)
        painter.restore()


def _pen(colour: str, width: float, *, dashed: bool = False) -> QPen:
    pen = QPen(QColor(colour), width, Qt.PenStyle.DashLine if dashed else Qt.PenStyle.SolidLine)
    pen.setCosmetic(True)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return pen


class SheetItem(QGraphicsItem):
    """The sheet under a view: a plain ground with a measure of one metre."""

    def __init__(self, width: float, height: float, colours: Colours) -> None:
        super().__init__()
        self._sheet = QRectF(0, 0, width, height)
        self.colours = colours
        self.setZValue(-1e9)

    def boundingRect(self) -> QRectF:
        """The whole sheet, in millimetres."""
        return self._sheet

    def paint(
        self, painter: QPainter, _option: QStyleOptionGraphicsItem, _widget: QWidget | None = None
    ) -> None:
        """Paint the measure at the lower left."""
        scale = painter.worldTransform().m11()
        start = painter.worldTransform().map(self._sheet.bottomLeft())
        metre = 1000 * scale
        painter.save()
        painter.resetTransform()
        ink = QColor(self.colours.muted)
        painter.setPen(QPen(ink, 1))
        x, y = round(start.x()) + 8, round(start.y()) - 10
        painter.drawLine(x, y, round(x + metre), y)
        for tick in (0, 0.5, 1):
            painter.drawLine(round(x + metre * tick), y - 4, round(x + metre * tick), y + 4)
        painter.drawText(round(x + metre) + 8, y + 4, "1 m")
        painter.restore()
