"""Shapes in millimetres as paths that Qt paints and hits."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainterPath

from journal.domain.shapes import Contour, Curve, Shape, Stroke


def painter_path(shape: Shape) -> QPainterPath:
    """A shape as a path, filled even-odd as the shape is."""
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.OddEvenFill)
    for contour in shape.contours:
        _draw(path, contour)
        path.closeSubpath()
    return path


def stroke_path(stroke: Stroke) -> QPainterPath:
    """An open line as a path to be stroked."""
    path = QPainterPath()
    _draw(path, stroke)
    return path


def _draw(path: QPainterPath, line: Contour | Stroke) -> None:
    path.moveTo(*line.start)
    for edge in line.edges:
        if isinstance(edge, Curve):
            path.cubicTo(*edge.handle1, *edge.handle2, *edge.to)
        else:
            path.lineTo(*edge.to)
