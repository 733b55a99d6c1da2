"""Swatches of the metalwork and the measures that lie over the drawing, for its legend."""

import math

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPen

from journal.desktop.theme import Colours
from journal.desktop.widgets.layers import Layer


def paint_layer(
    painter: QPainter, area: QRectF, layer: Layer, colours: Colours, *, in_full: bool
) -> None:
    """Paint how a layer looks on the drawing, in short; patches are outlines if not ``in_full``."""
    painter.save()
    painter.setPen(QPen(QColor(colours.text), 1.6))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    middle = area.center()
    if layer is Layer.SEAMS:
        painter.drawLine(
            QPointF(area.left() + 2, middle.y()), QPointF(area.right() - 2, middle.y())
        )
    elif layer is Layer.PATCHES:
        if in_full:
            painter.setBrush(QBrush(QColor(colours.muted), Qt.BrushStyle.DiagCrossPattern))
        painter.drawRect(area.adjusted(5, 2, -5, -2))
    elif layer is Layer.ANCHORS:
        _paint_bolt(painter, middle, colours)
    elif layer is Layer.READINGS:
        painter.drawRect(QRectF(middle.x() - 4, middle.y() - 4, 8, 8))
    else:
        painter.setBrush(QColor(colours.stages[4]))
        painter.drawEllipse(middle, 8, 8)
    painter.restore()


def _paint_bolt(painter: QPainter, at: QPointF, colours: Colours) -> None:
    painter.setPen(QPen(QColor(colours.warning), 2))
    corners = (math.radians(60 * n) for n in range(6))
    painter.drawPolygon([at + QPointF(8 * math.cos(a), 8 * math.sin(a)) for a in corners])
    painter.drawEllipse(at, 3, 3)
