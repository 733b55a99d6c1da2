"""Covers as they show on a photo in the program: hatched, with what each hides."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFont, QPainter, QPen

from journal.domain.covers import CoverBox

#: Half the side of a handle, in pixels.
HANDLE = 5
_INK, _PAPER = QColor("#24211D"), QColor("#FBFAF7")


def box_rect(box: CoverBox, area: QRectF) -> QRectF:
    """Where a box lies on a picture that is painted in ``area``."""
    return QRectF(
        area.x() + box.x * area.width(),
        area.y() + box.y * area.height(),
        box.width * area.width(),
        box.height * area.height(),
    )


def paint_boxes(
    painter: QPainter, area: QRectF, boxes: Sequence[CoverBox], current: int | None = None
) -> None:
    """Paint boxes over a picture; the current one has handles at its corners."""
    for box in boxes:
        rect = box_rect(box, area)
        painter.setPen(Qt.PenStyle.NoPen)
        ground = QColor(_PAPER)
        ground.setAlpha(120)
        painter.fillRect(rect, ground)
        painter.fillRect(rect, QBrush(_INK, Qt.BrushStyle.BDiagPattern))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(_PAPER, 4))
        painter.drawRect(rect)
        painter.setPen(QPen(_INK, 2))
        painter.drawRect(rect)
        _paint_words(painter, rect, box.hides.value)
        if box.id == current:
            for corner in corners(rect):
                painter.setBrush(_PAPER)
                painter.drawRect(
                    QRectF(corner.x() - HANDLE, corner.y() - HANDLE, 2 * HANDLE, 2 * HANDLE)
                )


def corners(rect: QRectF) -> tuple[QPointF, ...]:
    """The corners in order: top left, top right, bottom right, bottom left."""
    return rect.topLeft(), rect.topRight(), rect.bottomRight(), rect.bottomLeft()


def _paint_words(painter: QPainter, rect: QRectF, words: str) -> None:
    """What it hides, inside where there is room and else not at all."""
    font = QFont(painter.font())
    font.setBold(True)
    painter.setFont(font)
    metrics = painter.fontMetrics()
    wide, high = metrics.horizontalAdvance(words) + 12, metrics.height() + 4
    if rect.width() < wide + 4 or rect.height() < high + 4:
        return
    plate = QRectF(0, 0, wide, high)
    plate.moveCenter(rect.center())
    painter.fillRect(plate, _PAPER)
    painter.setPen(_INK)
    painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, words)
