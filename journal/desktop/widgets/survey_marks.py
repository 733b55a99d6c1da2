"""The marks of findings: a shape for how bad it is, with the finding's number in it."""

import math

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QIcon, QPainter, QPainterPath, QPen, QPixmap, QPolygonF

from journal.desktop.theme import Colours
from journal.domain.findings import Severity

#: How far a mark reaches from its middle, in pixels.
REACH = 13.0
#: How large a mark in a list is, with room round it.
MARK_SIZE = 44

#: Corners of each shape, and where the first one points, in degrees from the right; 0 is a disc.
_SHAPES = {
    Severity.SURFACE: (0, 0.0),
    Severity.SCABBY: (4, 45.0),
    Severity.PERFORATED: (4, 0.0),
    Severity.STRUCTURAL: (3, -90.0),
    Severity.WORN: (6, 0.0),
    Severity.MISSING: (0, 0.0),
}


def mark_path(severity: Severity, at: QPointF, reach: float = REACH) -> QPainterPath:
    """The outline of a mark: disc, square, diamond, triangle, hexagon, or a disc in dashes."""
    corners, turn = _SHAPES[severity]
    path = QPainterPath()
    if not corners:
        path.addEllipse(at, reach * 0.92, reach * 0.92)
        return path
    grown = reach * {3: 1.35, 4: 1.15}.get(corners, 1.05)
    low = reach * 0.2 if corners == 3 else 0.0
    points = [math.radians(turn + 360 * number / corners) for number in range(corners)]
    path.addPolygon(
        QPolygonF(
            [
                QPointF(at.x() + grown * math.cos(a), at.y() - low + grown * math.sin(a))
                for a in points
            ]
        )
    )
    path.closeSubpath()
    return path


def paint_mark(
    painter: QPainter,
    at: QPointF,
    severity: Severity,
    number: int,
    colours: Colours,
    *,
    chosen: bool = False,
    load_bearing: bool = False,
    font: QFont | None = None,
) -> None:
    """A mark with its number; a chosen one is filled, one near a mounting has a second outline."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    path = mark_path(severity, at)
    colour = colours.danger if severity is Severity.STRUCTURAL else colours.warning
    painter.strokePath(path, QPen(QColor(colours.surface), 6))
    if load_bearing:
        painter.strokePath(mark_path(severity, at, REACH + 5), QPen(QColor(colours.surface), 5))
        painter.strokePath(mark_path(severity, at, REACH + 5), QPen(QColor(colours.danger), 2))
    painter.fillPath(path, QColor(colour if chosen else colours.surface))
    line = QPen(QColor(colour), 2.4)
    if severity is Severity.MISSING:
        line.setDashPattern([2.0, 1.6])
    painter.strokePath(path, line)
    own = QFont(font or painter.font())
    own.setPixelSize(11 if number < 100 else 9)
    own.setBold(True)
    painter.setFont(own)
    painter.setPen(QColor(colours.surface if chosen else colours.text))
    room = QRectF(at.x() - REACH, at.y() - REACH, 2 * REACH, 2 * REACH)
    painter.drawText(room, Qt.AlignmentFlag.AlignCenter, str(number))


def mark_icon(
    severity: Severity, number: int, colours: Colours, *, load_bearing: bool = False
) -> QIcon:
    """A mark for a list."""
    size = QSize(MARK_SIZE, MARK_SIZE)
    made = QPixmap(size * 2)
    made.setDevicePixelRatio(2)
    made.fill(Qt.GlobalColor.transparent)
    painter = QPainter(made)
    paint_mark(
        painter,
        QPointF(MARK_SIZE / 2, MARK_SIZE / 2),
        severity,
        number,
        colours,
        load_bearing=load_bearing,
    )
    painter.end()
    icon = QIcon(made)
    icon.addPixmap(made, QIcon.Mode.Selected)
    return icon
