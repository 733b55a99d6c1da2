"""The mark at a spot of the drawing where something can't be done, with the reason beside it."""

from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter, QPen

from journal.desktop.theme import Colours

_RADIUS = 11.0
_WIDEST = 320


def paint_fault(
    painter: QPainter, at: QPointF, words: str, room: QRect, colours: Colours, font: QFont
) -> None:
    """Paint a ring with a sign at a spot and the words beside it, all in pixels.

    A spot out of sight is marked at the edge.
    """
    edge = _RADIUS + 4
    seen = QRectF(room).adjusted(edge, edge, -edge, -edge)
    at = QPointF(
        max(seen.left(), min(seen.right(), at.x())), max(seen.top(), min(seen.bottom(), at.y()))
    )
    danger = QColor(colours.danger)
    painter.setPen(QPen(danger, 2.5))
    painter.setBrush(QColor(colours.surface))
    painter.drawEllipse(at, _RADIUS, _RADIUS)
    bold = QFont(font)
    bold.setBold(True)
    painter.setFont(bold)
    painter.setPen(danger)
    disc = QRectF(0, 0, 2 * _RADIUS, 2 * _RADIUS)
    disc.moveCenter(at)
    painter.drawText(disc, Qt.AlignmentFlag.AlignCenter, "!")
    plate = _plate(at, words, room, font)
    painter.setPen(QPen(danger, 1.5))
    painter.drawRoundedRect(QRectF(plate), 4, 4)
    painter.setFont(font)
    painter.setPen(QColor(colours.text))
    painter.drawText(plate.adjusted(10, 6, -10, -6), Qt.TextFlag.TextWordWrap, words)


def _plate(at: QPointF, words: str, room: QRect, font: QFont) -> QRect:
    """Room for the words below and right of the spot, never past the edge."""
    box = QRect(0, 0, min(_WIDEST, room.width() - 24), 1000)
    need = QFontMetrics(font).boundingRect(box, int(Qt.TextFlag.TextWordWrap), words)
    plate = QRect(0, 0, need.width() + 22, need.height() + 14)
    plate.moveTopLeft(at.toPoint())
    plate.translate(int(_RADIUS) + 6, int(_RADIUS) + 4)
    if plate.right() > room.right() - 4:
        plate.moveRight(room.right() - 4)
    if plate.bottom() > room.bottom() - 4:
        plate.moveBottom(round(at.y() - _RADIUS) - 4)
    if plate.left() < room.left() + 4:
        plate.moveLeft(room.left() + 4)
    return plate
