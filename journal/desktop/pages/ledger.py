"""The page of money and hours: a few figures, and tabs that show what they are made of."""

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QTimer
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QTabWidget, QWidget

from journal.desktop.desk import Desk, ReceiptSelected, Selection, WantedSelected
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.locales import money
from journal.desktop.once_painted import once_painted
from journal.desktop.pages import Page, ledger_filters
from journal.desktop.pages.ledger_filters import Lines, LinesWanted, Only
from journal.desktop.pages.ledger_head import LedgerHead
from journal.desktop.pages.ledger_papers import read_papers
from journal.desktop.pages.ledger_tabs import TABS, LedgerTab, TabHolder
from journal.desktop.tasks import Task
from journal.desktop.widgets.drops import accept_copies, dropped_paths
from journal.desktop.widgets.parts import column, label
from journal.domain.changes import Changes
from journal.domain.price_index import InMoneyOf

if TYPE_CHECKING:
    from journal.actions.ledger_page import LedgerRead

_KINDS = frozenset(
    ("receipts", "work", "areas", "milestones", "car", "people", "valuations", "price_indices",
     "drawing", "metalwork")
)  # fmt: skip


#: How long the first sums may take before it is said that they are being added up.
_PATIENCE_MS = 400


class LedgerPage(Page):
    """What the car cost, and what each figure rests on.

    Attributes:
        head: the figures and remarks.
        tabs: what they are made of.
    """

    title = "Ledger"
    icon = "ledger"
    inspects = (ReceiptSelected, WantedSelected)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._reading: Task | None = None
        self._opening: Task | None = None
        self._wish: InMoneyOf | None = None
        self._opened: LinesWanted | None = None
        self._waiting = label("Adding up receipts and hours\N{HORIZONTAL ELLIPSIS}", "muted")
        self._waiting.hide()
        self.head = LedgerHead()
        self.head.hide()
        self.figures = self.head.figures
        self.tabs = QTabWidget()
        self.tabs.setAccessibleName("Costs, charts, receipts, hours and more")
        self.tabs.setDocumentMode(True)
        self._holders = {entry.title: TabHolder(entry, desk) for entry in TABS}
        for title, holder in self._holders.items():
            holder.made.connect(self._on_tab_made)
            self.tabs.addTab(holder, title)
        layout = column(self._waiting, self.head, self.tabs, margin=12)
        layout.setStretch(2, 1)
        self.setLayout(layout)
        self.setFocusProxy(self.tabs.tabBar())
        self.setAcceptDrops(not desk.read_only)
        self._connect()

    def _connect(self) -> None:
        self.desk.tab_wanted.connect(self.show_tab)
        self.tabs.currentChanged.connect(lambda _place: self._bring_forward())
        self.head.lines_wanted.connect(self.open_lines)
        self.head.only_wanted.connect(self._show_only_receipts)
        self.head.valuations_wanted.connect(self._show_valuations)
        self.head.indices_wanted.connect(self._show_indices)
        self.head.wish_changed.connect(self.show_in_money_of)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take files: what is dropped on the ledger is the paper of a receipt."""
        if any(path.is_file() for path in dropped_paths(event)):
            accept_copies(event)
        else:
            event.ignore()

    def dropEvent(self, event: QDropEvent) -> None:
        """Read what was dropped, each file as one receipt."""
        accept_copies(event)
        read_papers(self.desk, dropped_paths(event), self.window())

    # --- reading ---

    def refresh(self, changes: Changes | None) -> None:
        """Read the sums and lists again, in a reader's thread."""
        if changes is not None:
            for holder in self._holders.values():
                holder.tell_changes(changes)
        if changes is not None and not changes.kinds & _KINDS:
            self._bring_forward()
            return
        if changes is None:
            # The tab is made while the sums are read, and not in the turn that shows them.
            once_painted(self, self._bring_forward)
            QTimer.singleShot(_PATIENCE_MS, self, self._say_waiting)
        self._read()

    def show_in_money_of(self, wish: InMoneyOf | None) -> None:
        """Show all money of the page in that of a year; None: as it was paid."""
        self._wish = wish
        self._forget_opened()
        self._read()

    def _read(self) -> None:
        session, wish = self.desk.session, self._wish
        if self._reading is not None:
            self._reading.cancel()

        def job(_context: object) -> "LedgerRead":
            from journal.actions.ledger_page import read_ledger

            found = read_ledger(session, wish)
            money(0, found.summary.currency)  # How a sum is written is read from files, once.
            return found

        self._reading = self.desk.read(job, self._on_read, self)

    def _say_waiting(self) -> None:
        """Say that the first sums take a moment, as they do with ten thousand receipts."""
        self._waiting.setVisible(self._reading is not None)

    def _on_read(self, found: "LedgerRead") -> None:
        self._reading = None
        self._waiting.hide()
        # Without money and hours there is no figure to show, but there may be a survey to make.
        self.head.setVisible(bool(found.receipts or found.work or found.figures.valuation))
        self.head.show_found(found)
        for holder in self._holders.values():
            holder.tell_found(found)
        self._bring_forward()
        if self._opened is not None:
            self._read_lines(self._opened, self._keep_lines)
        self.show_selection(self.desk.selection)

    def show_selection(self, selection: Selection) -> None:
        """Pick the receipt or the wanted part that is selected."""
        if isinstance(selection, ReceiptSelected):
            receipts = self.tab("Receipts")
            picked = receipts.table.picked()
            if picked is None or picked.id != selection.id:
                self.show_tab("Receipts")
                receipts.pick(selection.id)
        elif isinstance(selection, WantedSelected):
            wanted = self.tab("Wanted")
            if wanted.wanted_id != selection.id:
                self.show_tab("Wanted")
                wanted.pick(selection.id)

    # --- tabs ---

    def tab(self, title: str) -> Any:
        """A tab by its title, made where it wasn't yet."""
        return self._holders[title].tab

    def show_tab(self, title: str) -> None:
        """Bring a tab to the front."""
        self.tabs.setCurrentWidget(self._holders[title])

    def _bring_forward(self) -> None:
        """Make the tab in front, or bring it up to date."""
        holder = self.tabs.currentWidget()
        if isinstance(holder, TabHolder):
            _ = holder.tab

    def _on_tab_made(self, tab: LedgerTab) -> None:
        tab.lines_wanted.connect(self.open_lines)
        for name, act in (
            ("rest_wanted", self._show_rest),
            ("all_shown", self._forget_opened),
        ):
            if hasattr(tab, name):
                getattr(tab, name).connect(act)

    # --- what a figure is made of ---

    def open_lines(self, wanted: LinesWanted) -> None:
        """Read what a figure is made of, and show it."""
        self._read_lines(wanted, self._show_lines)

    def _read_lines(self, wanted: LinesWanted, then: Callable[[LinesWanted, Lines], None]) -> None:
        session = self.desk.session
        if self._opening is not None:
            self._opening.cancel()
        self._opening = self.desk.read(
            lambda _context: ledger_filters.read_lines(session, wanted),
            lambda found: then(wanted, found),
            self,
        )

    def _show_lines(self, wanted: LinesWanted, found: Lines) -> None:
        """Bring the list to the front that a figure's lines stand in."""
        self._opened = wanted
        self._keep_lines(wanted, found)
        title = "Hours" if found.work and (wanted.hours or not found.receipts) else "Receipts"
        self.show_tab(title)
        self.tab(title).table.setFocus()

    def _keep_lines(self, _wanted: LinesWanted, found: Lines) -> None:
        """Show in both lists only what a figure is made of."""
        self._opening = None
        for title, only in (("Receipts", found.receipts), ("Hours", found.work)):
            if only is not None:
                self.tab(title).set_only(only)

    def _show_rest(self) -> None:
        """Show the other list: what a figure is made of stands in both."""
        here = self.tabs.tabText(self.tabs.currentIndex())
        self.show_tab("Receipts" if here == "Hours" else "Hours")

    def _forget_opened(self) -> None:
        """Show all in both lists again."""
        if self._opened is None:
            return
        self._opened = None
        for title in ("Receipts", "Hours"):
            if self._holders[title].is_made:
                self.tab(title).show_all()

    def _show_only_receipts(self, only: Only) -> None:
        self._forget_opened()
        self.show_tab("Receipts")
        self.tab("Receipts").set_only(only)

    def _show_valuations(self) -> None:
        from journal.desktop.dialogs.valuation import ValuationsDialog

        open_dialog(ValuationsDialog(self.desk, self.window()))

    def _show_indices(self) -> None:
        from journal.desktop.dialogs.price_index import PriceIndicesDialog

        open_dialog(PriceIndicesDialog(self.desk, self.window()))
