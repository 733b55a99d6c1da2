"""What tools paint over the drawing, in pixels: handles, measures, lines being drawn."""

import math
from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter, QPainterPath, QPen, QTransform

from journal.desktop.theme import Colours
from journal.domain.shapes import Point
from journal.domain.shaping.segments import Segment, point_at
from journal.domain.shaping.snapping import Snap, Why

_CORNER, _HANDLE = 5.0, 4.0
_FLAT = 16


def on_screen(point: Point, to_screen: QTransform) -> QPointF:
    """A spot of the view in pixels."""
    return to_screen.map(QPointF(point.x, point.y))


def paint_corner(painter: QPainter, at: QPointF, colours: Colours, *, chosen: bool = False) -> None:
    """A square where a corner can be taken hold of; a chosen one is larger and filled."""
    size = _CORNER + 2 if chosen else _CORNER
    painter.setPen(QPen(QColor(colours.accent), 2))
    painter.setBrush(QColor(colours.accent if chosen else colours.surface))
    painter.drawRect(QRectF(at.x() - size, at.y() - size, 2 * size, 2 * size))


def paint_handle(
    painter: QPainter,
    at: QPointF,
    corner: QPointF,
    colours: Colours,
    *,
    chosen: bool = False,
) -> None:
    """A disc where a curve's handle can be taken hold of, tied to its corner."""
    painter.setPen(QPen(QColor(colours.accent), 1, Qt.PenStyle.DashLine))
    painter.drawLine(corner, at)
    size = _HANDLE + 2 if chosen else _HANDLE
    painter.setPen(QPen(QColor(colours.accent), 2))
    painter.setBrush(QColor(colours.accent if chosen else colours.surface))
    painter.drawEllipse(at, size, size)


def paint_line(
    painter: QPainter,
    points: Sequence[QPointF],
    colours: Colours,
    *,
    dashed: bool = False,
    width: float = 2.0,
) -> None:
    """A line through spots, light beneath so that it stands out on every ground."""
    if len(points) < 2:
        return
    path = QPainterPath(points[0])
    for point in points[1:]:
        path.lineTo(point)
    paint_path(painter, path, colours, dashed=dashed, width=width)


def paint_path(
    painter: QPainter,
    path: QPainterPath,
    colours: Colours,
    *,
    dashed: bool = False,
    width: float = 2.0,
) -> None:
    """A path in the accent, light beneath."""
    painter.strokePath(path, QPen(QColor(colours.surface), width + 2.5))
    pen = QPen(QColor(colours.accent), width)
    if dashed:
        pen.setStyle(Qt.PenStyle.DashLine)
    painter.strokePath(path, pen)


def segment_points(segment: Segment, to_screen: QTransform) -> list[QPointF]:
    """An edge as spots in pixels, a curve in pieces."""
    if len(segment) == 2:
        return [on_screen(point, to_screen) for point in segment]
    return [on_screen(point_at(segment, n / _FLAT), to_screen) for n in range(_FLAT + 1)]


def paint_words(painter: QPainter, at: QPointF, words: str, colours: Colours, font: QFont) -> None:
    """Words on a plate round a spot."""
    metrics = QFontMetrics(font)
    plate = QRectF(0, 0, metrics.horizontalAdvance(words) + 14, metrics.height() + 6)
    plate.moveCenter(at)
    painter.setFont(font)
    painter.setPen(QPen(QColor(colours.edge), 1))
    painter.setBrush(QColor(colours.surface))
    painter.drawRoundedRect(plate, 3, 3)
    painter.setPen(QColor(colours.text))
    painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, words)


def paint_length(
    painter: QPainter,
    ends: tuple[Point, Point],
    to_screen: QTransform,
    colours: Colours,
    font: QFont,
) -> None:
    """The length between two spots in millimetres, beside the middle of their line."""
    a, b = on_screen(ends[0], to_screen), on_screen(ends[1], to_screen)
    across, along = b.x() - a.x(), b.y() - a.y()
    length = math.hypot(across, along)
    if length < 8:
        return
    middle = (a + b) / 2
    aside = QPointF(along, -across) / length * 18
    paint_words(painter, middle + aside, spoken_mm(math.dist(*ends)), colours, font)


def paint_snap(
    painter: QPainter, snap: Snap, to_screen: QTransform, colours: Colours, font: QFont
) -> None:
    """What has caught the spot: a ring on a corner, a cross on an edge, a word for the rest."""
    at = on_screen(snap.point, to_screen)
    painter.setPen(QPen(QColor(colours.focus), 2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if snap.why is Why.CORNER:
        painter.drawEllipse(at, 10, 10)
    elif snap.why is Why.EDGE:
        painter.drawLine(at - QPointF(8, 8), at + QPointF(8, 8))
        painter.drawLine(at - QPointF(8, -8), at + QPointF(8, -8))
    elif snap.why is Why.RIGHT_ANGLE:
        painter.drawRect(QRectF(at.x() + 8, at.y() - 18, 10, 10))
    if snap.why is not Why.FREE:
        paint_words(painter, at + QPointF(0, 30), snap.why.value, colours, font)


def spoken_mm(length: float) -> str:
    """A length in whole millimetres, to a tenth below 100: "1 240 mm"."""
    if abs(length) < 100 and abs(length - round(length)) >= 0.05:
        return f"{length:.1f} mm"
    return f"{length:,.0f} mm".replace(",", "\N{NARROW NO-BREAK SPACE}")
