"""Bars in a table: restoration filled, upkeep hatched, the part of the whole in words beside."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPen
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from journal.desktop import theme
from journal.desktop.widgets.rows import BAR_ROLE

_HEIGHT = 14
_WORDS = 48


class BarDelegate(QStyledItemDelegate):
    """Paints the bar of a row, and the cell's words to its right."""

    def sizeHint(
        self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> QSize:
        """Room for a bar."""
        return QSize(150, super().sizeHint(option, index).height())

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        """Paint the ground as the table does, then the bar."""
        colours = theme.colours_of(option.palette)
        selected = bool(option.state & QStyle.StateFlag.State_Selected)
        painter.save()
        area = option.rect
        if selected:
            painter.fillRect(area, QColor(colours.accent))
        ink = QColor(colours.on_accent if selected else colours.accent)
        painter.setPen(QColor(colours.on_accent if selected else colours.text))
        words = area.adjusted(area.width() - _WORDS, 0, -8, 0)
        how = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        painter.drawText(words, how, str(index.data() or ""))
        bar = index.data(BAR_ROLE)
        if bar is not None:
            room = QRectF(area.adjusted(8, 0, -_WORDS - 8, 0))
            room = QRectF(room.left(), room.center().y() - _HEIGHT / 2, room.width(), _HEIGHT)
            _paint_bar(painter, room, bar, ink)
        painter.restore()


def _paint_bar(painter: QPainter, room: QRectF, bar: tuple[float, float], ink: QColor) -> None:
    length, split = bar
    width = room.width() * min(1.0, max(0.0, length))
    if width < 1:
        return
    filled = QRectF(room.left(), room.top(), width * split, room.height())
    hatched = QRectF(filled.right(), room.top(), width - filled.width(), room.height())
    painter.setPen(QPen(ink, 1))
    if filled.width() >= 1:
        painter.setBrush(ink)
        painter.drawRect(filled)
    if hatched.width() >= 1:
        painter.setBrush(QBrush(ink, Qt.BrushStyle.BDiagPattern))
        painter.drawRect(hatched)
