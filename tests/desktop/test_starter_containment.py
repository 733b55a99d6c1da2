"""Hits agree with Qt: its own painter paths hold the same spots as our flattened areas."""

import pytest
import shapely
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPainterPath

from journal.domain.hits import to_polygon
from journal.domain.shapes import Line, Shape, bounds
from journal.domain.starters import BODIES, starter

#: How near to an edge, in millimetres, the two may differ.
_EDGE = 1.0
#: How many spots are tried along each side of a panel's box.
_GRID = 16


def painter_path(shape: Shape) -> QPainterPath:
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.OddEvenFill)
    for contour in shape.contours:
        path.moveTo(QPointF(*contour.start))
        for edge in contour.edges:
            if isinstance(edge, Line):
                path.lineTo(QPointF(*edge.to))
            else:
                path.cubicTo(QPointF(*edge.handle1), QPointF(*edge.handle2), QPointF(*edge.to))
        path.closeSubpath()
    return path


def spots(shape: Shape) -> list[tuple[float, float]]:
    box = bounds(shape)
    wide, high = box.right - box.left, box.bottom - box.top
    # From a little outside the box to a little outside on the other side.
    shares = [-0.05 + 1.1 * i / (_GRID - 1) for i in range(_GRID)]
    return [(box.left + wide * a, box.top + high * b) for a in shares for b in shares]


@pytest.mark.parametrize("body", [b for b in BODIES if b != "blank"])
def test_qt_and_shapely_agree_on_every_panel(body: str) -> None:
    compared = inside = 0
    for placed in starter(body).shapes:
        path, area = painter_path(placed.shape), to_polygon(placed.shape)
        tried = spots(placed.shape)
        points = shapely.points(tried)
        away = shapely.distance(area.boundary, points) > _EDGE
        held = shapely.contains(area, points)
        for spot, far, ours in zip(tried, away, held, strict=True):
            if far:
                compared += 1
                inside += bool(ours)
                assert path.contains(QPointF(*spot)) == ours, (placed.panel_id, spot)
    # The comparison says something only if it saw both inside and outside.
    assert compared > 20_000
    assert 0.2 < inside / compared < 0.9
