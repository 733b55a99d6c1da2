"""Saying which line of a recorded receipt a wanted part is."""

from PySide6.QtWidgets import QLineEdit, QWidget

from journal.actions import wanted as actions
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.parts import label
from journal.desktop.widgets.rows import Column, RowsTable
from journal.domain.errors import JournalError
from journal.domain.money import format_money
from journal.domain.wanted import BoughtLine, Wanted
from journal.domain.when import spoken


class WantedLineDialog(FormDialog):
    """Lines of receipts that are no wanted part yet, those that sound like it first."""

    def __init__(self, desk: Desk, wanted: Wanted, parent: QWidget | None = None) -> None:
        super().__init__(f"Which line is “{wanted.text}”?", "&That's it", parent)
        self._desk = desk
        self._wanted = wanted
        self._lines: tuple[BoughtLine, ...] = ()
        self.words = QLineEdit()
        self.words.setClearButtonEnabled(True)
        self.words.setPlaceholderText("words of the line or the supplier")
        self.words.textChanged.connect(self._show_lines)
        self.table = RowsTable(
            "Lines of receipts",
            (
                Column("Line", lambda line: line.text, wide=True),
                Column("Supplier", lambda line: line.supplier),
                Column("Date", lambda line: spoken(line.when), lambda line: line.when),
                Column(
                    "Paid",
                    lambda line: format_money(line.amount, line.currency),
                    lambda line: line.amount,
                    number=True,
                ),
            ),
        )
        self.table.setMinimumHeight(360)
        self.table.on_opened(lambda _line: self.accept_button.click())
        self.said = label("Looking through the receipts ...", "muted")
        self.add_row("&Find", self.words)
        self.outer.insertWidget(1, self.table, 1)
        self.outer.insertWidget(2, self.said)
        self.resize(900, 520)
        session = desk.session
        self._reading = desk.read(
            lambda _context: actions.lines_to_tie(session, wanted.id), self._on_read, self
        )

    def _on_read(self, found: tuple[BoughtLine, ...]) -> None:
        self._lines = found
        self._show_lines()

    def _show_lines(self) -> None:
        words = self.words.text().casefold().split()
        shown = [
            line
            for line in self._lines
            if all(word in f"{line.text} {line.supplier}".casefold() for word in words)
        ]
        self.table.set_rows(shown)
        if shown:
            self.table.selectRow(0)
        none = "No line has these words." if self._lines else "No line of a receipt is free."
        self.said.setText("" if shown else none)
        self.said.setVisible(not shown)

    def submit(self) -> bool:
        """Tie the part to the line that is picked."""
        line = self.table.picked()
        if line is None:
            raise JournalError("Pick the line of the receipt first.")
        session = self._desk.session
        self._desk.announce(actions.tie_wanted(session, self._wanted.id, line.line_id))
        return True
