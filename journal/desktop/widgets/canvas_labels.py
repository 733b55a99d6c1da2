"""The label of the panel pointed at, drawn beside it and never past the edge."""

from PySide6.QtCore import QRect, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter, QPen

from journal.desktop.theme import Colours


def paint_label(
    painter: QPainter, words: str, panel: QRect, room: QRect, colours: Colours, font: QFont
) -> None:
    """Paint words above a panel, or below it where there is no room above; all in pixels."""
    bold = QFont(font)
    bold.setWeight(QFont.Weight.DemiBold)
    metrics = QFontMetrics(bold)
    plate = QRect(0, 0, metrics.horizontalAdvance(words) + 20, metrics.height() + 10)
    plate.moveCenter(panel.center())
    plate.moveBottom(panel.top() - 6)
    if plate.top() < room.top() + 4:
        plate.moveTop(panel.bottom() + 6)
    if plate.bottom() > room.bottom() - 4:
        plate.moveTop(max(room.top() + 4, panel.top() + 6))
    plate.moveLeft(max(room.left() + 4, min(plate.left(), room.right() - plate.width() - 4)))
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(QColor(colours.edge), 1))
    painter.setBrush(QColor(colours.surface))
    painter.drawRoundedRect(QRectF(plate).adjusted(0.5, 0.5, -0.5, -0.5), 4, 4)
    painter.setFont(bold)
    painter.setPen(QColor(colours.text))
    painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, words)
