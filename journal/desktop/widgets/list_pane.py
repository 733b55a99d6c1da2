"""A short list of records with what is done to them: add, change, remove."""

from collections.abc import Callable, Sequence
from typing import Any

from PySide6.QtWidgets import QPushButton, QWidget

from journal.desktop.widgets.parts import EmptyState, button, column, label, row
from journal.desktop.widgets.rows import Column, RowsTable


class ListPane(QWidget):
    """A table with three acts under it; where it is empty it says what belongs there.

    Attributes:
        table: the rows.
        add: the act that adds one; ``change`` and ``remove`` do it to the picked one.
    """

    def __init__(
        self,
        name: str,
        columns: Sequence[Column],
        empty: EmptyState,
        words: str,
        *,
        add: tuple[str, Callable[[], object]],
        change: tuple[str, Callable[[Any], object]],
        remove: Callable[[Any], object],
        more: Sequence[QPushButton] = (),
        can_write: bool = True,
    ) -> None:
        super().__init__()
        self._can_write = can_write
        self.table = RowsTable(name, columns)
        self.empty = empty
        self.add = button(add[0], add[1], icon="plus", role="primary")
        self.change = button(change[0], lambda: self._do(change[1]), icon="edit")
        self.remove = button("&Remove", lambda: self._do(remove), icon="remove")
        self.add.setEnabled(can_write)
        layout = column(label(words, "muted"), self.table, empty)
        layout.addLayout(row(self.add, self.change, self.remove, *more, None))
        layout.setContentsMargins(0, 8, 0, 0)
        self.setLayout(layout)
        self.table.on_opened(lambda _row: self._do(change[1]))
        self.table.selectionModel().currentRowChanged.connect(self._show_what_can_be_done)
        self.show_rows(())

    def show_rows(self, rows: Sequence[Any]) -> None:
        """Show these."""
        self.table.set_rows(rows)
        self.table.setVisible(bool(rows))
        self.empty.setVisible(not rows)
        self._show_what_can_be_done()

    def picked(self) -> Any:
        """The row that is picked, None where none is."""
        return self.table.picked()

    def _do(self, act: Callable[[Any], object]) -> None:
        picked = self.picked()
        if picked is not None and self._can_write:
            act(picked)

    def _show_what_can_be_done(self) -> None:
        for act in (self.change, self.remove):
            act.setEnabled(self._can_write and self.picked() is not None)
