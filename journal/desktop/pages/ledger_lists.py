"""A list of the ledger: a table, acts above it, and what of it is shown."""

from collections.abc import Callable, Sequence
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QLineEdit, QPushButton, QWidget

from journal.desktop.desk import Desk
from journal.desktop.locales import money
from journal.desktop.pages.ledger_filters import Only
from journal.desktop.pages.ledger_tabs import LedgerTab
from journal.desktop.widgets.parts import EmptyState, button, column, label, row
from journal.desktop.widgets.rows import Column, RowsTable
from journal.domain.hours import spoken_hours

NOT_SHARED = "not shared"
#: Longer names of figures are cut short on the chip that takes the filter off.
_MOST_LETTERS = 60


class LedgerList(LedgerTab):
    """A table with acts above it, words to filter by, and a filter set by a figure.

    Attributes:
        nouns: what one row and what several are called.
    """

    nouns = ("row", "rows")

    #: The rest of what the figure is made of is to be shown, in the list it stands in.
    rest_wanted = Signal()
    #: The filter of a figure was taken off.
    all_shown = Signal()

    def __init__(
        self, desk: Desk, table: RowsTable, acts: Sequence[QPushButton], empty: EmptyState
    ) -> None:
        super().__init__(desk)
        self.table = table
        self.empty = empty
        self._rows: tuple[Any, ...] = ()
        self._only: Only | None = None
        self._said: dict[int, str] | None = None
        self.filter = QLineEdit()
        self.filter.setPlaceholderText("Filter by words")
        self.filter.setAccessibleName("Filter by words")
        self.filter.setClearButtonEnabled(True)
        self.filter.textChanged.connect(self._on_filter)
        self.only = button("", self.show_all, icon="close", hint="Show all again")
        self.rest = button("", self.rest_wanted.emit, role="quiet")
        self.count = label("", "muted", wrap=False)
        self._bar = QWidget()
        bar = row(*acts, None, self.filter)
        bar.setStretch(bar.count() - 1, 1)
        self._bar.setLayout(bar)
        self._chips = QWidget()
        self._chips.setLayout(row(self.only, self.rest, None))
        self._chips.hide()
        self.filter.setMaximumWidth(320)
        for act in acts:
            act.setEnabled(not desk.read_only)
        layout = column(self._bar, self._chips, table, empty, self.count, spacing=8)
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
        self._rows, self._said = tuple(rows), None
        self._on_filter()

    def _on_filter(self) -> None:
        """Show what the words are in; all that can be looked through is read once, elsewhere."""
        if self._said is not None or not self.filter.text().strip():
            self.show_rows()
            return
        rows, words = self._rows, self.words

        def done(said: dict[int, str]) -> None:
            if rows is self._rows:
                self._said = said
                self.show_rows()

        self.desk.read(
            lambda _context: {found.id: words(found).casefold() for found in rows}, done, self
        )

    def part_column(self) -> Column:
        """How much of a row lies in the figure that is looked at; shown with its filter alone."""
        return Column("Of this", self._part_words, self._part, number=True)

    def set_only(self, only: Only) -> None:
        """Show only what a figure is made of, and how much of each."""
        self._only = only
        self.only.setText(f"Only: {_short(only.words)}".replace("&", "&&"))
        self.only.setAccessibleName(f"Only {only.words} is shown; press to show all")
        self.rest.setText(only.beside.replace("&", "&&"))
        self.rest.setVisible(bool(only.beside))
        self._chips.show()
        self.filter.clear()
        self.table.selectionModel().clear()
        self._show_parts(shown=bool(only.parts))
        self.show_rows()

    def show_all(self) -> None:
        """Forget the filter of a figure."""
        self._only = None
        self._chips.hide()
        self._show_parts(shown=False)
        self.show_rows()
        self.all_shown.emit()

    def show_rows(self) -> None:
        """Show what passes."""
        said = self._said
        wanted = [] if said is None else self.filter.text().casefold().split()
        shown = [
            found
            for found in self._rows
            if (self._only is None or found.id in self._only.ids)
            and (said is None or all(word in said[found.id] for word in wanted))
        ]
        self.table.set_rows(shown)
        has_any = bool(self._rows)
        for piece in (self._bar, self.table, self.count):
            piece.setVisible(has_any)
        self.empty.setVisible(not has_any)
        self.count.setText(self._count_words(shown))

    def _count_words(self, shown: Sequence[Any]) -> str:
        number = len(self._rows)
        said = f"{number:,} {self.nouns[number != 1]}"
        if len(shown) != number:
            said = f"{len(shown):,} of {said}"
        if self._only is not None and self._only.parts:
            together = sum(self._part(found) for found in shown)
            said += f", together {self._amount(together)}"
        return said

    def _show_parts(self, *, shown: bool) -> None:
        columns = [column.title for column in self.table.rows_model.columns()]
        if "Of this" in columns:
            self.table.setColumnHidden(columns.index("Of this"), not shown)

    def _part(self, found: Any) -> int:
        return 0 if self._only is None else self._only.parts.get(found.id, 0)

    def _part_words(self, found: Any) -> str:
        return self._amount(self._part(found))

    def _amount(self, amount: int) -> str:
        currency = "" if self._only is None else self._only.currency
        return money(amount, currency) if currency else spoken_hours(amount)

    def _on_delete(self, act: Callable[[], object]) -> None:
        keys = QShortcut(QKeySequence(Qt.Key.Key_Delete), self.table)
        keys.setContext(Qt.ShortcutContext.WidgetShortcut)
        keys.activated.connect(act)


def _short(words: str) -> str:
    if len(words) <= _MOST_LETTERS:
        return words
    return words[: _MOST_LETTERS - 1].rstrip() + "\N{HORIZONTAL ELLIPSIS}"
