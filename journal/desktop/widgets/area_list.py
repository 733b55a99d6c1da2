"""The list of repair areas: each with its panels, how far it is, its dates, hours and money."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QRect,
    QRectF,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QColor, QFont, QPainter
from PySide6.QtWidgets import (
    QAbstractItemView,
    QListView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from journal.desktop import theme
from journal.desktop.theme import Colours
from journal.desktop.widgets.stage_bar import paint_stages, stage_words
from journal.domain.areas import Area
from journal.domain.hours import spoken_hours
from journal.domain.ids import AreaId
from journal.domain.money import format_money
from journal.domain.when import spoken

_ROW_ROLE = Qt.ItemDataRole.UserRole
_Index = QModelIndex | QPersistentModelIndex
_ROOT = QModelIndex()
_BAR = 14


@dataclass(frozen=True, slots=True)
class AreaRow:
    """A repair area as the list shows it; money in minor units of ``currency``.

    ``expected`` is what a survey expected of it, in words; "" where none did.
    """

    area: Area
    panels: str
    minutes: int
    money: int
    currency: str
    stages: tuple[str, ...]
    expected: str = ""

    @property
    def rank(self) -> int:
        """How far along it is; -1 where no stage is recorded."""
        return self.stages.index(self.area.stage) if self.area.stage in self.stages else -1

    @property
    def is_finished(self) -> bool:
        """Whether it is at the last stage."""
        return bool(self.stages) and self.area.stage == self.stages[-1]

    def dates(self) -> str:
        """From when to when anything was recorded of it."""
        changes = self.area.changes
        if not changes:
            return "no date"
        first, last = spoken(changes[0].when), spoken(changes[-1].when)
        return first if first == last else f"{first} to {last}"

    def last_date(self) -> str:
        """When the last thing was recorded of it."""
        changes = self.area.changes
        return spoken(changes[-1].when) if changes else "no date"

    def figures(self) -> str:
        """Hours and money, where there are any."""
        said = [spoken_hours(self.minutes)] if self.minutes else []
        said += [format_money(self.money, self.currency)] if self.money else []
        return "   ".join(said)

    def words(self) -> str:
        """All that the row shows, for screen readers."""
        stage = stage_words(self.stages, self.area.stage)
        return ", ".join(
            part
            for part in (self.area.name, self.panels, stage, self.dates(), self.figures())
            if part
        )


def _latest(row: AreaRow) -> datetime:
    return row.area.changes[-1].when.latest if row.area.changes else datetime.min


#: What the list can be sorted by: its words, the key, and whether the largest comes first.
SORTS: tuple[tuple[str, Callable[[AreaRow], Any], bool], ...] = (
    ("Least advanced first", lambda row: row.rank, False),
    ("Latest change first", _latest, True),
    ("By name", lambda row: row.area.name.casefold(), False),
    ("By panel", lambda row: row.panels.casefold(), False),
    ("Most money first", lambda row: row.money, True),
    ("Most hours first", lambda row: row.minutes, True),
)


class AreaListModel(QAbstractListModel):
    """The rows that are shown, sorted and filtered already."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._rows: tuple[AreaRow, ...] = ()

    def set_rows(self, rows: Sequence[AreaRow]) -> None:
        """Show these."""
        self.beginResetModel()
        self._rows = tuple(rows)
        self.endResetModel()

    def rows(self) -> tuple[AreaRow, ...]:
        """The rows in the order shown."""
        return self._rows

    def rowCount(self, parent: _Index = _ROOT) -> int:
        """How many."""
        return 0 if parent.isValid() else len(self._rows)

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """The name for the keyboard's search, the whole row in words for screen readers."""
        if not index.isValid():
            return None
        row = self._rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return row.area.name
        if role in (Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole):
            return row.words()
        return row if role == _ROW_ROLE else None


class AreaList(QListView):
    """Repair areas, one picked at a time."""

    #: Another area was picked by hand: its number.
    picked = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.rows_model = AreaListModel(self)
        self.setModel(self.rows_model)
        self.setItemDelegate(_AreaDelegate(self))
        self.setAccessibleName("Repair areas")
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setUniformItemSizes(True)
        self._quiet = False
        self.selectionModel().currentChanged.connect(self._on_current)

    def set_rows(self, rows: Sequence[AreaRow], current: AreaId | None) -> None:
        """Show these rows and mark the current area where it is among them."""
        self._quiet = True
        self.rows_model.set_rows(rows)
        self._quiet = False
        self.mark(current)

    def mark(self, area_id: AreaId | None) -> None:
        """Mark an area without telling anybody."""
        ids = [row.area.id for row in self.rows_model.rows()]
        self._quiet = True
        if area_id in ids:
            index = self.rows_model.index(ids.index(area_id))
            self.setCurrentIndex(index)
            self.scrollTo(index)
        else:
            self.clearSelection()
        self._quiet = False

    def _on_current(self, current: QModelIndex, _before: QModelIndex) -> None:
        if current.isValid() and not self._quiet:
            self.picked.emit(self.rows_model.rows()[current.row()].area.id)


class _AreaDelegate(QStyledItemDelegate):
    """Paints a repair area on four lines."""

    def sizeHint(self, option: QStyleOptionViewItem, _index: _Index) -> QSize:
        """Four lines and the space round them."""
        return QSize(240, 3 * option.fontMetrics.height() + _BAR + 34)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: _Index) -> None:
        """Paint name, panels, stage, dates and figures."""
        row: AreaRow = index.data(_ROW_ROLE)
        colours = theme.colours_of(option.palette)
        state = option.state
        selected = bool(state & QStyle.StateFlag.State_Selected)
        hovered = bool(state & QStyle.StateFlag.State_MouseOver)
        painter.save()
        area: QRect = option.rect
        if selected or hovered:
            painter.fillRect(area, QColor(colours.accent if selected else colours.hover))
        painter.setPen(QColor(colours.rule))
        painter.drawLine(area.bottomLeft(), area.bottomRight())
        text = QColor(colours.on_accent if selected else colours.text)
        muted = QColor(colours.on_accent if selected else colours.muted)
        self._paint_words(painter, area.adjusted(12, 8, -12, -8), row, text, muted)
        self._paint_stage(painter, area.adjusted(12, 8, -12, -8), row, text, colours)
        if state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(QColor(colours.on_accent if selected else colours.focus))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(area.adjusted(2, 2, -3, -3))
        painter.restore()

    def _paint_words(
        self, painter: QPainter, area: QRect, row: AreaRow, text: QColor, muted: QColor
    ) -> None:
        font = QFont(painter.font())
        bold = QFont(font)
        bold.setBold(True)
        line = painter.fontMetrics().height()
        painter.setFont(bold)
        painter.setPen(text)
        _write(painter, QRect(area.left(), area.top(), area.width(), line), row.area.name)
        painter.setFont(font)
        painter.setPen(muted)
        _write(painter, QRect(area.left(), area.top() + line + 2, area.width(), line), row.panels)
        figures = row.figures()
        wide = painter.fontMetrics().horizontalAdvance(figures)
        below = QRect(area.left(), area.bottom() - line, area.width(), line)
        painter.drawText(below, Qt.AlignmentFlag.AlignRight, figures)
        beside = below.adjusted(0, 0, -wide - 12 if figures else 0, 0)
        fits = painter.fontMetrics().horizontalAdvance(row.dates()) <= beside.width()
        _write(painter, beside, row.dates() if fits else row.last_date())

    def _paint_stage(
        self, painter: QPainter, area: QRect, row: AreaRow, text: QColor, colours: Colours
    ) -> None:
        line = painter.fontMetrics().height()
        top = area.top() + 2 * line + 8
        wide = min(160, area.width() // 2)
        bar = QRectF(area.left(), top, wide, _BAR)
        paint_stages(painter, bar, row.stages, row.area.stage, colours)
        painter.setPen(text)
        words = stage_words(row.stages, row.area.stage)
        beside = QRect(area.left() + wide + 10, top - 2, area.width() - wide - 10, line)
        _write(painter, beside, words)


def _write(painter: QPainter, area: QRect, words: str) -> None:
    shown = painter.fontMetrics().elidedText(words, Qt.TextElideMode.ElideRight, area.width())
    painter.drawText(area, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, shown)
