"""Costs in one table, laid out by what is chosen above it."""

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QComboBox, QStackedLayout, QWidget

from journal.desktop.desk import Desk
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.pages import ledger_filters
from journal.desktop.pages.ledger_papers import choose_papers
from journal.desktop.pages.ledger_tables import TITLES, CostsView
from journal.desktop.pages.ledger_tabs import LedgerTab
from journal.desktop.tasks import Task
from journal.desktop.widgets.parts import EmptyState, button, column, label, row
from journal.domain.costs import COSTS_BY, CostRow, CostsBy, CostTable

if TYPE_CHECKING:
    from journal.actions.ledger_page import LedgerRead


class CostsTab(LedgerTab):
    """One table of costs."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._found: LedgerRead | None = None
        self._reading: Task | None = None
        self.choice = QComboBox()
        for by in COSTS_BY:
            self.choice.addItem(TITLES[by].lower(), by)
        self.choice.setAccessibleName("Costs laid out by")
        said = label("Laid out b&y", wrap=False)
        said.setBuddy(self.choice)
        self.view = CostsView()
        filled = QWidget()
        layout = column(self.view, spacing=0)
        layout.insertLayout(0, row(said, self.choice, None))
        layout.setContentsMargins(0, 8, 0, 0)
        filled.setLayout(layout)
        self._stack = QStackedLayout(self)
        self._stack.addWidget(filled)
        self.empty = self._make_empty()
        self._stack.addWidget(self.empty)
        self.choice.currentIndexChanged.connect(self._read_table)
        self.view.opened.connect(self._on_row)

    def _make_empty(self) -> EmptyState:
        receipt = button("New &receipt", self._new_receipt, icon="receipt", role="primary")
        papers = button("Read &papers", self._read_papers, icon="file")
        hours = button("&Hours", self._new_hours, icon="hours")
        for act in (receipt, papers, hours):
            act.setEnabled(not self.desk.read_only)
        return EmptyState(
            "ledger",
            "No receipt and no hours yet",
            "Record what was paid, line by line, with the paper scanned, lost or never given, and "
            "who worked how long. The sums by category, repair area, panel, year and more follow.",
            receipt,
            papers,
            hours,
        )

    @property
    def by(self) -> CostsBy:
        """What the costs are laid out by."""
        chosen: CostsBy = self.choice.currentData()
        return chosen

    def lay_out_by(self, by: CostsBy) -> None:
        """Lay the costs out by something else."""
        self.choice.setCurrentIndex(COSTS_BY.index(by))

    def show_found(self, found: "LedgerRead") -> None:
        """Show the table that the page has read."""
        self._found = found
        self._stack.setCurrentIndex(0 if found.receipts or found.work else 1)
        self._read_table()

    def _read_table(self) -> None:
        if self._found is None:
            return
        session, by, wish = self.desk.session, self.by, self._found.wish
        if self._reading is not None:
            self._reading.cancel()

        def job(_context: object) -> CostTable:
            from journal.actions.ledger_page import ledger_table

            return ledger_table(session, by, wish)

        self._reading = self.desk.read(job, self._on_read, self)

    def _on_read(self, table: CostTable) -> None:
        self._reading = None
        self.view.show_table(table)

    def _on_row(self, row: CostRow) -> None:
        if self._found is not None:
            currency, wish = self._found.summary.currency, self._found.wish
            self.lines_wanted.emit(ledger_filters.of_row(self.by, row, currency, wish))

    def _new_receipt(self) -> None:
        from journal.desktop.dialogs.receipt import ReceiptDialog

        open_dialog(ReceiptDialog(self.desk, self.window()))

    def _read_papers(self) -> None:
        choose_papers(self.desk, self.window())

    def _new_hours(self) -> None:
        from journal.desktop.dialogs.hours import HoursDialog

        open_dialog(HoursDialog(self.desk, self.window()))
