"""Shapes in millimetres as paths that Qt paints and hits."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainterPath

from journal.domain.shapes import Curve, Shape


def painter_path(shape: Shape) -> QPainterPath:
    """A shape as a path, filled even-odd as the shape is."""
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.OddEvenFill)
    for contour in shape.contours:
        path.moveTo(*contour.start)
        for edge in contour.edges:
            if isinstance(edge, Curve):
                path.cubicTo(*edge.handle1, *edge.handle2, *edge.to)
            else:
                path.lineTo(*edge.to)
        path.closeSubpath()
    return path
