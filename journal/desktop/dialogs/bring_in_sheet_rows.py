"""The first rows of a sheet as they stand in its file."""

from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt
from PySide6.QtGui import QPalette

from journal.domain.sheet_rows import BadCell, Cell, Grid, Proposal, Role, shown

#: So many rows are shown to tell the columns by; all are read.
SHOWN_ROWS = 200
_ROOT = QModelIndex()
_Index = QModelIndex | QPersistentModelIndex


class SheetRowsModel(QAbstractTableModel):
    """The first rows below the headings, as they stand in the file."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._grid = Grid("", ())
        self._heading = 0
        self._names: tuple[str, ...] = ()
        self._roles: tuple[Role, ...] = ()

    def show_rows(self, grid: Grid, proposal: Proposal) -> None:
        """Show a sheet's rows."""
        self.beginResetModel()
        self._grid, self._heading = grid, proposal.choices.heading
        self._names, self._roles = proposal.headings, proposal.choices.roles
        self.endResetModel()

    def mark_roles(self, roles: tuple[Role, ...]) -> None:
        """Grey the columns that are left out."""
        self._roles = roles
        last = self.index(self.rowCount() - 1, self.columnCount() - 1)
        self.dataChanged.emit(self.index(0, 0), last, [Qt.ItemDataRole.ForegroundRole])

    def rowCount(self, parent: _Index = _ROOT) -> int:
        """How many rows are shown."""
        return 0 if parent.isValid() else min(SHOWN_ROWS, len(self._grid.rows) - self._heading)

    def columnCount(self, parent: _Index = _ROOT) -> int:
        """How many columns."""
        return 0 if parent.isValid() else len(self._names)

    def cell(self, row: int, place: int) -> Cell:
        """The value in a cell."""
        cells = self._grid.rows[self._heading + row]
        return cells[place] if place < len(cells) else None

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """What a cell says."""
        if not index.isValid():
            return None
        cell = self.cell(index.row(), index.column())
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole):
            return " ".join(shown(cell).split())
        if role == Qt.ItemDataRole.TextAlignmentRole:
            words = isinstance(cell, str | bool | BadCell | None)
            side = Qt.AlignmentFlag.AlignLeft if words else Qt.AlignmentFlag.AlignRight
            return side | Qt.AlignmentFlag.AlignVCenter
        is_out = self._roles[index.column()] is Role.LEAVE_OUT
        if role == Qt.ItemDataRole.ForegroundRole and is_out:
            return QPalette().brush(QPalette.ColorRole.PlaceholderText)
        return None

    def headerData(
        self,
        section: int,
        orientation: Qt.Orientation,
        role: int = Qt.ItemDataRole.DisplayRole,
    ) -> Any:
        """The headings of the file, and its row numbers."""
        if role != Qt.ItemDataRole.DisplayRole:
            return None
        if orientation == Qt.Orientation.Vertical:
            return str(self._heading + section + 1)
        return self._names[section] if section < len(self._names) else None
