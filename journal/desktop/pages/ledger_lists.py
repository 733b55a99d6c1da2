"""A list of the ledger: a table, acts above it, and what of it is shown."""

from collections.abc import Callable, Sequence
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QLineEdit, QPushButton, QWidget

from journal.desktop.desk import Desk
from journal.desktop.pages.ledger_tabs import LedgerTab
from journal.desktop.widgets.parts import EmptyState, button, column, label, row
from journal.desktop.widgets.rows import RowsTable

NOT_SHARED = "not shared"


class LedgerList(LedgerTab):
    """A table with acts above it, words to filter by, and a filter set by a figure.

    Attributes:
        nouns: what one row and what several are called.
    """

    nouns = ("row", "rows")

    def __init__(
        self, desk: Desk, table: RowsTable, acts: Sequence[QPushButton], empty: EmptyState
    ) -> None:
        super().__init__(desk)
        self.table = table
        self.empty = empty
        self._rows: tuple[Any, ...] = ()
        self._passes: Callable[[Any], bool] | None = None
        self.filter = QLineEdit()
        self.filter.setPlaceholderText("Filter by words")
        self.filter.setAccessibleName("Filter by words")
        self.filter.setClearButtonEnabled(True)
        self.filter.textChanged.connect(self.show_rows)
        self.only = button("", self.show_all, icon="close", hint="Show all again")
        self.only.hide()
        self.count = label("", "muted", wrap=False)
        self._bar = QWidget()
        bar = row(*acts, self.only, None, self.filter)
        bar.setStretch(bar.count() - 1, 1)
        self._bar.setLayout(bar)
        self.filter.setMaximumWidth(320)
        for act in acts:
            act.setEnabled(not desk.read_only)
        layout = column(self._bar, table, empty, self.count, spacing=8)
        layout.setContentsMargins(0, 8, 0, 0)
        self._layout = layout
        self.setLayout(layout)

    def insert_above(self, widget: QWidget) -> None:
        """Put something above the acts and the table."""
        self._layout.insertWidget(0, widget)

    @property
    def is_empty(self) -> bool:
        """Whether there is nothing to list, whatever the filters."""
        return not self._rows

    def words(self, shown: Any) -> str:
        """What the filter looks for words in."""
        raise NotImplementedError

    def set_rows(self, rows: Sequence[Any]) -> None:
        """Show these, as far as they pass."""
        self._rows = tuple(rows)
        self.show_rows()

    def set_only(self, words: str, passes: Callable[[Any], bool]) -> None:
        """Show only what a figure is made of."""
        self.only.setText(f"Only: {words}".replace("&", "&&"))
        self.only.setAccessibleName(f"Only {words} is shown; press to show all")
        self.only.show()
        self._passes = passes
        self.filter.clear()
        self.show_rows()
        self.table.setFocus()

    def show_all(self) -> None:
        """Forget the filter of a figure."""
        self.only.hide()
        self._passes = None
        self.show_rows()

    def show_rows(self) -> None:
        """Show what passes."""
        wanted = self.filter.text().casefold().split()
        shown = [
            found
            for found in self._rows
            if (self._passes is None or self._passes(found))
            and all(word in self.words(found).casefold() for word in wanted)
        ]
        self.table.set_rows(shown)
        has_any = bool(self._rows)
        for piece in (self._bar, self.table, self.count):
            piece.setVisible(has_any)
        self.empty.setVisible(not has_any)
        number = len(self._rows)
        all_of_them = f"{number:,} {self.nouns[number != 1]}"
        self.count.setText(
            all_of_them if len(shown) == number else f"{len(shown):,} of {all_of_them}"
        )

    def _on_delete(self, act: Callable[[], object]) -> None:
        keys = QShortcut(QKeySequence(Qt.Key.Key_Delete), self.table)
        keys.setContext(Qt.ShortcutContext.WidgetShortcut)
        keys.activated.connect(act)
