"""Tables of frozen rows: columns say how a row reads, sorts and is drawn."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Any

from PySide6.QtCore import (
    QAbstractTableModel,
    QEvent,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
)
from PySide6.QtGui import QFont, QKeyEvent, QShowEvent
from PySide6.QtWidgets import QHeaderView, QTableView, QWidget

from journal.desktop.theme import TARGET

#: The role that gives the row itself.
ROW_ROLE = Qt.ItemDataRole.UserRole
#: The role that gives a bar's length, 0 to 1, and where it is split, 0 to 1 of its length.
BAR_ROLE = Qt.ItemDataRole.UserRole + 1

#: The widest a column gets that does not take the room left, in pixels.
_WIDEST = 320
#: How many rows are measured to find the width of a column.
_MEASURED = 60
#: What a cell takes beside its text, in pixels: the style sheet's padding and the view's margin.
_BESIDE = 24

_Index = QModelIndex | QPersistentModelIndex
_ROOT = QModelIndex()


@dataclass(frozen=True, slots=True)
class Column:
    """One column: its title, what it says of a row, and by what it sorts (its text where None).

    ``number`` sets it to the right; ``wide`` lets it take the room that is left.
    """

    title: str
    text: Callable[[Any], str]
    key: Callable[[Any], Any] | None = None
    number: bool = False
    wide: bool = False
    bar: Callable[[Any], tuple[float, float]] | None = None


class RowsModel(QAbstractTableModel):
    """Rows in the order asked for, with a total that always stands last."""

    def __init__(self, columns: Sequence[Column], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._columns = tuple(columns)
        self._given: tuple[Any, ...] = ()
        self._rows: list[Any] = []
        self._total: Any = None
        self._sorted_by: tuple[int, Qt.SortOrder] | None = None

    def set_rows(self, rows: Sequence[Any], total: Any = None) -> None:
        """Show these rows; ``total`` stands in bold below them whatever they are sorted by."""
        self.beginResetModel()
        self._given, self._total = tuple(rows), total
        self._arrange()
        self.endResetModel()

    def columns(self) -> tuple[Column, ...]:
        """The columns, in the order given."""
        return self._columns

    def entitle(self, place: int, title: str) -> None:
        """Call a column something else."""
        columns = list(self._columns)
        columns[place] = replace(columns[place], title=title)
        self._columns = tuple(columns)
        self.headerDataChanged.emit(Qt.Orientation.Horizontal, place, place)

    def rows(self) -> tuple[Any, ...]:
        """The rows in the order shown, without the total."""
        return tuple(self._rows)

    def first(self, count: int) -> Sequence[Any]:
        """As many of the rows shown, from the top."""
        return self._rows[:count]

    def row_at(self, place: int) -> Any:
        """The row at a place; None for the total and beyond."""
        return self._rows[place] if 0 <= place < len(self._rows) else None

    def rowCount(self, parent: _Index = _ROOT) -> int:
        """How many rows, with the total."""
        if parent.isValid():
            return 0
        return len(self._rows) + (self._total is not None)

    def columnCount(self, parent: _Index = _ROOT) -> int:
        """How many columns."""
        return 0 if parent.isValid() else len(self._columns)

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """What a cell says and how."""
        if not index.isValid():
            return None
        column = self._columns[index.column()]
        row = self.row_at(index.row())
        is_total = row is None
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole):
            return column.text(self._total if is_total else row)
        if role == Qt.ItemDataRole.TextAlignmentRole:
            side = Qt.AlignmentFlag.AlignRight if column.number else Qt.AlignmentFlag.AlignLeft
            return side | Qt.AlignmentFlag.AlignVCenter
        if role == Qt.ItemDataRole.FontRole and is_total:
            font = QFont()
            font.setBold(True)
            return font
        if role == ROW_ROLE:
            return row
        if role == BAR_ROLE and column.bar is not None and not is_total:
            return column.bar(row)
        return None

    def headerData(
        self,
        section: int,
        orientation: Qt.Orientation,
        role: int = Qt.ItemDataRole.DisplayRole,
    ) -> Any:
        """The titles of the columns."""
        if orientation != Qt.Orientation.Horizontal or not 0 <= section < len(self._columns):
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return self._columns[section].title
        if role == Qt.ItemDataRole.TextAlignmentRole:
            number = self._columns[section].number
            side = Qt.AlignmentFlag.AlignRight if number else Qt.AlignmentFlag.AlignLeft
            return side | Qt.AlignmentFlag.AlignVCenter
        return None

    def sort(self, column: int, order: Qt.SortOrder = Qt.SortOrder.AscendingOrder) -> None:
        """Sort by a column; -1 is the order the rows were given in."""
        self.layoutAboutToBeChanged.emit()
        held = self.persistentIndexList()
        rows = [self.row_at(index.row()) for index in held]
        self._sorted_by = (column, order) if 0 <= column < len(self._columns) else None
        self._arrange()
        places = {id(row): place for place, row in enumerate(self._rows)}
        moved = [
            self.index(places.get(id(row), len(self._rows)), index.column())
            for row, index in zip(rows, held, strict=True)
        ]
        self.changePersistentIndexList(held, moved)
        self.layoutChanged.emit()

    def _arrange(self) -> None:
        self._rows = list(self._given)
        if self._sorted_by is not None:
            place, order = self._sorted_by
            column = self._columns[place]
            key = column.key or (lambda row: column.text(row).casefold())
            self._rows.sort(key=key, reverse=order == Qt.SortOrder.DescendingOrder)


class RowsTable(QTableView):
    """A table of rows: one is picked at a time, Enter or a double click opens it."""

    def __init__(self, name: str, columns: Sequence[Column], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._least_width: Callable[[int], int] = lambda _column: 0
        self._widths: dict[int, int] = {}
        self.rows_model = RowsModel(columns, self)
        self.setModel(self.rows_model)
        self.setAccessibleName(name)
        self.setSelectionBehavior(QTableView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QTableView.SelectionMode.SingleSelection)
        self.setEditTriggers(QTableView.EditTrigger.NoEditTriggers)
        self.setShowGrid(False)
        self.setAlternatingRowColors(True)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setHorizontalScrollMode(QTableView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(TARGET)
        header = self.horizontalHeader()
        header.setHighlightSections(False)
        header.setMaximumSectionSize(_WIDEST)
        header.setResizeContentsPrecision(_MEASURED)
        for place, column in enumerate(columns):
            mode = QHeaderView.ResizeMode
            header.setSectionResizeMode(
                place, mode.Stretch if column.wide else mode.ResizeToContents
            )
        header.setSortIndicator(-1, Qt.SortOrder.AscendingOrder)
        header.setSortIndicatorClearable(True)
        self.setSortingEnabled(True)
        self._on_opened: Callable[[Any], object] | None = None
        self.doubleClicked.connect(self._open_index)

    def on_opened(self, react: Callable[[Any], object]) -> None:
        """Call ``react`` with a row that is opened by a double click or Enter."""
        self._on_opened = react

    def widths_from(self, width: Callable[[int], int]) -> None:
        """Make every column at least as wide as ``width`` says of it, in pixels."""
        self._least_width = width
        self._widths.clear()

    def sizeHintForColumn(self, column: int) -> int:
        """How wide a column wants to be, in pixels."""
        if column not in self._widths:
            # The header asks at every turn, and each time Qt would measure dozens of rows; and it
            # asks eight things of a cell to know its width, where its text is enough.
            self._widths[column] = max(self._measure(column), self._least_width(column))
        return self._widths[column]

    def _measure(self, column: int) -> int:
        text, metrics = self.rows_model.columns()[column].text, self.fontMetrics()
        widths = (metrics.horizontalAdvance(text(row)) for row in self.rows_model.first(_MEASURED))
        return max(widths, default=0) + _BESIDE

    def set_rows(self, rows: Sequence[Any], total: Any = None) -> None:
        """Show these rows, and keep the picked place."""
        place = self.currentIndex().row()
        self._widths.clear()
        self.rows_model.set_rows(rows, total)
        if place >= 0 and self.rows_model.rowCount():
            self.selectRow(min(place, self.rows_model.rowCount() - 1))

    def picked(self) -> Any:
        """The row that is picked, None where none is."""
        index = self.currentIndex()
        return self.rows_model.row_at(index.row()) if index.isValid() else None

    def pick(self, row: Any) -> None:
        """Pick a row and bring it into view."""
        if row in self.rows_model.rows():
            self.selectRow(self.rows_model.rows().index(row))

    def changeEvent(self, event: QEvent) -> None:
        """Measure anew in another font or style."""
        self._widths.clear()
        super().changeEvent(event)

    def showEvent(self, event: QShowEvent) -> None:
        """Measure anew with the style sheet on."""
        self._widths.clear()
        super().showEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Open with Enter."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.currentIndex().isValid():
            self._open_index(self.currentIndex())
        else:
            super().keyPressEvent(event)

    def _open_index(self, index: QModelIndex) -> None:
        row = self.rows_model.row_at(index.row())
        if row is not None and self._on_opened is not None:
            self._on_opened(row)
