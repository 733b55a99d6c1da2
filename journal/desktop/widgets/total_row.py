"""The total of a table, in a row that stays in sight below it however far the table scrolls."""

from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QTableView, QWidget

from journal.desktop.theme import TARGET
from journal.desktop.widgets.rows import Column, RowsModel, RowsTable


class TotalRow(QTableView):
    """One row, its columns as wide as those of the table above, which grow where it needs more."""

    def __init__(
        self, table: RowsTable, columns: Sequence[Column], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._table = table
        self._columns = tuple(columns)
        self._model = RowsModel(columns, self)
        self.setModel(self._model)
        self.setAccessibleName("Total")
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setSelectionMode(QTableView.SelectionMode.NoSelection)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setHorizontalScrollMode(QTableView.ScrollMode.ScrollPerPixel)
        for off in (self.setHorizontalScrollBarPolicy, self.setVerticalScrollBarPolicy):
            off(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        for header in (self.horizontalHeader(), self.verticalHeader()):
            header.hide()
        self.verticalHeader().setDefaultSectionSize(TARGET)
        self.setFixedHeight(TARGET + 2 * self.frameWidth())
        table.widths_from(self.sizeHintForColumn)
        table.horizontalHeader().sectionResized.connect(self._on_resized)
        table.horizontalScrollBar().valueChanged.connect(self.horizontalScrollBar().setValue)

    def show_total(self, total: Any) -> None:
        """Show a total; the table says it too, for those who hear it."""
        self._model.set_rows((), total)
        said = [f"{column.title} {column.text(total)}" for column in self._columns[1:]]
        self._table.setAccessibleDescription(f"Total: {', '.join(said)}")
        for place in range(len(self._columns)):
            self.setColumnWidth(place, self._table.columnWidth(place))

    def _on_resized(self, place: int, _before: int, width: int) -> None:
        self.setColumnWidth(place, width)
