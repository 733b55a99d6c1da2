"""A panel as it lies on the drawing: outline, fill, stage, and how it shows what happens to it."""

from enum import Enum

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFont, QPainter, QPainterPath, QPen, QTransform
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from journal.desktop.theme import Colours, StageMark
from journal.desktop.widgets.paths import painter_path
from journal.domain.drawing import Panel, System
from journal.domain.shapes import Shape

#: How far a sign stands from a panel's middle one way, and a dot the other way, in pixels.
ASIDE = 13.0

_SIGN = 18
#: How strong a stage's pattern is where its sign tells the stage too.
_UNDER_SIGN = 0.55


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
        self.path = painter_path(shape)
        self.colours = colours
        self.stage: StageMark | None = None
        self.touch = Touch.NONE
        self._bounds = self.path.boundingRect()
        self.setZValue(order)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)

    @property
    def middle(self) -> QPointF:
        """A spot inside the outline where a sign can stand."""
        centre = self._bounds.center()
        if self.path.contains(centre):
            return centre
        return _inner_spot(self.path, self._bounds)

    @property
    def aside(self) -> tuple[float, float]:
        """The way along the panel, right or down: a sign and a dot stand side by side on it."""
        return (1.0, 0.0) if self._bounds.width() >= self._bounds.height() else (0.0, 1.0)

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
        """Paint the fill, the stage over it, the line, and the stage's sign."""
        scale = painter.worldTransform().m11()
        painter.fillPath(self.path, QColor(self._ground()))
        if self.stage is not None:
            self._paint_stage(painter, scale, self.stage)
        if self.touch is Touch.DROP or self.touch is Touch.HOVERED:
            wash = QColor(self.colours.accent)
            wash.setAlpha(70 if self.touch is Touch.DROP else 36)
            painter.fillPath(self.path, wash)
        painter.strokePath(self.path, _pen(self.colours.panel_edge, 1.2))
        if self.stage is not None:
            self._paint_sign(painter, scale, self.stage)

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
        wash.setAlpha(46)
        painter.fillPath(self.path, wash)
        brush = QBrush(mark.brush())
        if scale:
            brush.setTransform(QTransform.fromScale(1 / scale, 1 / scale))
        painter.save()
        painter.setOpacity(_UNDER_SIGN if self._has_room(scale) else 1.0)
        painter.fillPath(self.path, brush)
        painter.restore()

    def _has_room(self, scale: float) -> bool:
        sides = sorted((self._bounds.width() * scale, self._bounds.height() * scale))
        return sides[0] >= _SIGN + 6 and sides[1] >= 2 * _SIGN + 14

    def _paint_sign(self, painter: QPainter, scale: float, mark: StageMark) -> None:
        if not self._has_room(scale):
            return
        across, along = self.aside
        spot = painter.worldTransform().map(self.middle) - QPointF(across, along) * ASIDE
        painter.save()
        painter.resetTransform()
        disc = QRectF(0, 0, _SIGN, _SIGN)
        disc.moveCenter(spot)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(QColor(mark.colour), 2))
        painter.setBrush(QColor(self.colours.surface))
        painter.drawEllipse(disc)
        font = QFont(painter.font())
        font.setPixelSize(12)
        font.setBold(True)
        painter.setFont(font)
        painter.setPen(QColor(self.colours.text))
        painter.drawText(disc, Qt.AlignmentFlag.AlignCenter, mark.sign)
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


def _inner_spot(path: QPainterPath, bounds: QRectF) -> QPointF:
    """A spot inside a path whose middle lies outside it (an arch, a ring): the widest of a few."""
    best, widest = bounds.center(), 0.0
    steps = 24
    for row in (0.5, 0.25, 0.75, 0.12, 0.88):
        y = bounds.top() + bounds.height() * row
        start: float | None = None
        for step in range(steps + 1):
            x = bounds.left() + bounds.width() * step / steps
            inside = path.contains(QPointF(x, y))
            if inside and start is None:
                start = x
            if not inside and start is not None:
                if x - start > widest:
                    best, widest = QPointF((start + x) / 2, y), x - start
                start = None
    return best
