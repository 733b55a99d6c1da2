"""Costs in one table, laid out by what is chosen above it."""

from PySide6.QtWidgets import QComboBox, QStackedLayout, QWidget

from journal.actions.costs import LaidOut
from journal.desktop.desk import Desk
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.pages import ledger_filters
from journal.desktop.pages.ledger_papers import choose_papers
from journal.desktop.pages.ledger_tables import TITLES, CostsView
from journal.desktop.pages.ledger_tabs import LedgerTab
from journal.desktop.widgets.parts import EmptyState, button, column, label, row
from journal.domain.costs import COSTS_BY, HOURS, CostRow, CostsBy


class CostsTab(LedgerTab):
    """One table of costs."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._found: LaidOut | None = None
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
        self.choice.currentIndexChanged.connect(self._show_table)
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
            "who worked how long. The sums by category, repair area, year and supplier follow.",
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

    def show_found(self, found: LaidOut) -> None:
        """Show the table that the page has read."""
        self._found = found
        self._stack.setCurrentIndex(0 if found.receipts or found.work else 1)
        self._show_table()

    def _show_table(self) -> None:
        if self._found is not None:
            by = self.by
            tables = {table.by: table for table in self._found.tables}
            self.view.show_table(tables[by])

    def _on_row(self, found: CostRow) -> None:
        if found.key == HOURS or (not found.money and found.minutes):
            self.pieces_wanted.emit(ledger_filters.hours_of_row(self.by, found))
        else:
            self.pieces_wanted.emit(ledger_filters.of_row(self.by, found))

    def _new_receipt(self) -> None:
        from journal.desktop.dialogs.receipt import ReceiptDialog

        open_dialog(ReceiptDialog(self.desk, self.window()))

    def _read_papers(self) -> None:
        choose_papers(self.desk, self.window())

    def _new_hours(self) -> None:
        from journal.desktop.dialogs.hours import HoursDialog

        open_dialog(HoursDialog(self.desk, self.window()))
