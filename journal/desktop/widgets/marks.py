"""Small drawn signs on photos: how a date is known, placed, damaged, chosen, raw, moving."""

import math
from collections.abc import Callable
from functools import cache

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPen, QPixmap, QPolygonF

from journal.domain.photos import Basis

#: The side of a sign's box, in its own units; signs are drawn in it and scaled.
BOX = 16.0

#: Which sign tells each way of knowing a date.
BASIS_SIGNS = {
    Basis.OWNER: "pen",
    Basis.CAMERA: "camera",
    Basis.FILE_NAME: "letters",
    Basis.NEIGHBOURS: "neighbours",
    Basis.DIGITISED: "scan",
    Basis.FILE_TIME: "clock",
    Basis.UNKNOWN: "unknown",
}


@cache
def mark(name: str, colour: str, size: int, ratio: float, ground: str = "") -> QPixmap:
    """A sign in one colour, ``size`` pixels square; ``ground`` fills what is to be filled."""
    made = QPixmap(round(size * ratio), round(size * ratio))
    made.setDevicePixelRatio(ratio)
    made.fill(Qt.GlobalColor.transparent)
    painter = QPainter(made)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.scale(size / BOX, size / BOX)
    pen = QPen(QColor(colour), 1.6)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    painter.setPen(pen)
    painter.setBrush(QColor(ground) if ground else Qt.BrushStyle.NoBrush)
    _SIGNS[name](painter)
    painter.end()
    return made


def _pen(painter: QPainter) -> None:
    nib = ((2.5, 13.5), (3.5, 9.5), (11, 2), (14, 5), (6.5, 12.5))
    painter.drawPolygon(QPolygonF([QPointF(x, y) for x, y in nib]))
    painter.drawLine(QPointF(9, 4), QPointF(12, 7))


def _camera(painter: QPainter) -> None:
    painter.drawRoundedRect(QRectF(1.5, 4.5, 13, 9), 1.5, 1.5)
    painter.drawLine(QPointF(5, 2.5), QPointF(9, 2.5))
    painter.drawEllipse(QPointF(8, 9), 2.6, 2.6)


def _letters(painter: QPainter) -> None:
    _word(painter, "Aa", 11)


def _unknown(painter: QPainter) -> None:
    _word(painter, "?", 14)


def _word(painter: QPainter, word: str, size: int) -> None:
    font = QFont(painter.font())
    font.setPixelSize(size)
    font.setBold(True)
    painter.setFont(font)
    painter.drawText(QRectF(-4, -4, BOX + 8, BOX + 8), Qt.AlignmentFlag.AlignCenter, word)


def _neighbours(painter: QPainter) -> None:
    for x in (3.0, 13.0):
        painter.drawEllipse(QPointF(x, 8), 2.0, 2.0)
    painter.setPen(QPen(painter.pen().color(), 1.6, Qt.PenStyle.DotLine))
    painter.drawLine(QPointF(6, 8), QPointF(10.5, 8))


def _scan(painter: QPainter) -> None:
    painter.drawRect(QRectF(3, 1.5, 10, 7))
    painter.drawLine(QPointF(1, 11), QPointF(15, 11))
    painter.drawLine(QPointF(3, 14), QPointF(13, 14))


def _clock(painter: QPainter) -> None:
    painter.drawEllipse(QPointF(8, 8), 6, 6)
    painter.drawPolyline(QPolygonF([QPointF(8, 4.5), QPointF(8, 8), QPointF(10.8, 9.6)]))


def _pin(painter: QPainter) -> None:
    painter.save()
    painter.setBrush(painter.pen().color())
    painter.drawEllipse(QPointF(8, 5.5), 4, 4)
    painter.restore()
    painter.drawLine(QPointF(8, 9.5), QPointF(8, 15))


def _damage(painter: QPainter) -> None:
    sides = [QPointF(8, 1.5), QPointF(15, 14.5), QPointF(1, 14.5)]
    painter.drawPolygon(QPolygonF(sides))
    painter.drawLine(QPointF(8, 6), QPointF(8, 10))
    painter.drawPoint(QPointF(8, 12.3))


def _tick(painter: QPainter) -> None:
    ink = painter.pen()
    painter.setPen(Qt.PenStyle.NoPen)
    painter.drawEllipse(QPointF(8, 8), 8, 8)
    ink.setWidthF(2.2)
    painter.setPen(ink)
    painter.drawPolyline(QPolygonF([QPointF(4, 8.4), QPointF(7, 11.2), QPointF(12, 5)]))


def _video(painter: QPainter) -> None:
    painter.drawEllipse(QPointF(8, 8), 7, 7)
    painter.setBrush(painter.pen().color())
    sides = [QPointF(6.2, 4.8), QPointF(11.4, 8), QPointF(6.2, 11.2)]
    painter.drawPolygon(QPolygonF(sides))


def _raw(painter: QPainter) -> None:
    painter.drawEllipse(QPointF(8, 8), 7, 7)
    for blade in range(6):
        angle = math.radians(60 * blade)
        rim = QPointF(8 + 7 * math.cos(angle), 8 + 7 * math.sin(angle))
        hub = QPointF(8 + 3 * math.cos(angle + 1.4), 8 + 3 * math.sin(angle + 1.4))
        painter.drawLine(rim, hub)


_SIGNS: dict[str, Callable[[QPainter], None]] = {
    "pen": _pen,
    "camera": _camera,
    "letters": _letters,
    "unknown": _unknown,
    "neighbours": _neighbours,
    "scan": _scan,
    "clock": _clock,
    "pin": _pin,
    "damage": _damage,
    "tick": _tick,
    "video": _video,
    "raw": _raw,
}
