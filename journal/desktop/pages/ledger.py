"""The page of money and hours: a few figures, and tabs that show what they are made of."""

from functools import partial
from typing import Any

from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QHBoxLayout, QTabWidget, QVBoxLayout, QWidget

from journal.actions import cars
from journal.actions.costs import LaidOut, laid_out
from journal.desktop.desk import Desk, ReceiptSelected, Selection, WantedSelected
from journal.desktop.pages import Page, ledger_filters
from journal.desktop.pages.ledger_filters import ReceiptFilter, WorkFilter
from journal.desktop.pages.ledger_papers import read_papers
from journal.desktop.pages.ledger_tabs import TABS, LedgerTab, TabHolder
from journal.desktop.tasks import Task
from journal.desktop.widgets.drops import accept_copies, dropped_paths
from journal.desktop.widgets.figure import Figure
from journal.desktop.widgets.parts import button, clear_layout, column, label, row
from journal.domain.changes import Changes
from journal.domain.costs import CostSummary
from journal.domain.hours import spoken_hours
from journal.domain.money import format_money

_KINDS = frozenset({"receipts", "work", "areas", "milestones", "car"})
_NAMES = ("Restoration", "Upkeep", "Hours", "Not proven", "Saved", "Not shared")


class LedgerPage(Page):
    """What the car cost, and what each figure rests on."""

    title = "Ledger"
    icon = "ledger"
    inspects = (ReceiptSelected, WantedSelected)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._reading: Task | None = None
        self.figures = {name: Figure(name) for name in _NAMES}
        self.remarks = QVBoxLayout()
        self.tabs = QTabWidget()
        self._holders = {entry.title: TabHolder(entry, desk) for entry in TABS}
        self._build()
        self._connect()

    def _build(self) -> None:
        figures = QHBoxLayout()
        figures.setSpacing(8)
        for figure in self.figures.values():
            figures.addWidget(figure, 1)
        self.remarks.setSpacing(2)
        self.tabs.setAccessibleName("Costs, receipts and hours")
        self.tabs.setDocumentMode(True)
        for title, holder in self._holders.items():
            holder.made.connect(self._on_tab_made)
            self.tabs.addTab(holder, title)
        self._head = QWidget()
        head = column(spacing=8)
        head.addLayout(figures)
        head.addLayout(self.remarks)
        self._head.setLayout(head)
        layout = column(self._head, self.tabs, margin=12)
        layout.setStretch(1, 1)
        self.setLayout(layout)
        self.setFocusProxy(self.tabs.tabBar())
        self.setAcceptDrops(not self.desk.read_only)

    def _connect(self) -> None:
        self.tabs.currentChanged.connect(lambda _place: self._bring_forward())
        opens = {
            "Restoration": self._on_restoration,
            "Upkeep": self._on_upkeep,
            "Hours": self._show_hours,
            "Not proven": lambda: self._show_receipts(ledger_filters.not_proven()),
            "Saved": lambda: self._show_receipts(ledger_filters.second_hand()),
            "Not shared": lambda: self._show_receipts(ledger_filters.not_shared()),
        }
        for name, act in opens.items():
            self.figures[name].clicked.connect(lambda _checked=False, act=act: act())

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
        session = self.desk.session
        if self._reading is not None:
            self._reading.cancel()
        self._reading = self.desk.read(lambda _context: laid_out(session), self._on_read, self)

    def _on_read(self, found: LaidOut) -> None:
        self._reading = None
        # Without money and hours there is no figure to show, but there may be a survey to make.
        self._head.setVisible(bool(found.receipts or found.work))
        self._show_figures(found.summary)
        self._show_remarks(found.summary)
        for holder in self._holders.values():
            holder.tell_found(found)
        self._bring_forward()
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
        tab.pieces_wanted.connect(self._show_pieces)

    # --- showing ---

    def _show_figures(self, found: CostSummary) -> None:
        def money(minor: int) -> str:
            return format_money(minor, found.currency)

        show = self.figures
        people = ", ".join(f"{one.label} {_about(one.minutes)}" for one in found.people)
        saved = "no price new is known"
        if found.saved_lines:
            saved = f"against new, on {money(found.saved_on)}"
        unshared = "belongs to no repair area"
        if found.not_shared_minutes:
            unshared = f"and {_about(found.not_shared_minutes)}, to no area"
        show["Restoration"].show_figure(money(found.restoration), "spent until on the road")
        show["Upkeep"].show_figure(money(found.upkeep), "spent since on the road")
        show["Hours"].show_figure(spoken_hours(found.own_minutes), people or "nobody's yet")
        show["Not proven"].show_figure(money(found.unproven), "paper lost or never existed")
        show["Saved"].show_figure(
            money(found.saved_against_new), saved, can_open=bool(found.saved_lines)
        )
        show["Not shared"].show_figure(money(found.not_shared), unshared)

    def _show_remarks(self, found: CostSummary) -> None:
        """Say what the sums leave out or keep as printed, with a way to the receipts."""
        clear_layout(self.remarks)
        if found.differing:
            words = (
                f"The lines of {_receipts(len(found.differing))} don't make the printed total: "
                f"{format_money(found.difference, found.currency)} in all, kept as printed."
            )
            wanted = ledger_filters.these("lines that don't make the total", found.differing)
            self._add_remark(words, wanted)
        for missing in found.missing_rates:
            words = (
                f"{format_money(missing.amount, missing.currency)} on "
                f"{_receipts(len(missing.receipt_ids))} stands in no sum: no rate to "
                f"{found.currency} is given."
            )
            wanted = ledger_filters.these(f"{missing.currency} without a rate", missing.receipt_ids)
            self._add_remark(words, wanted)

    def _add_remark(self, words: str, wanted: ReceiptFilter) -> None:
        show = button("Show them", partial(self._show_receipts, wanted), role="quiet")
        line = row(label(words, "muted"), show)
        line.setStretch(0, 1)
        self.remarks.addLayout(line)

    # --- what a figure is made of ---

    def _on_restoration(self) -> None:
        milestones = self.desk.ask(cars.milestones) or ()
        self._show_receipts(ledger_filters.restoration(milestones))

    def _on_upkeep(self) -> None:
        milestones = self.desk.ask(cars.milestones) or ()
        self._show_receipts(ledger_filters.upkeep(milestones))

    def _show_pieces(self, wanted: ReceiptFilter | WorkFilter) -> None:
        """Show what a figure is made of."""
        if isinstance(wanted, ReceiptFilter):
            self._show_receipts(wanted)
        else:
            self._show_hours(wanted)

    def _show_receipts(self, wanted: ReceiptFilter) -> None:
        self.show_tab("Receipts")
        self.tab("Receipts").keep_only(wanted)

    def _show_hours(self, wanted: WorkFilter | None = None) -> None:
        self.show_tab("Hours")
        if wanted is None:
            self.tab("Hours").show_all()
        else:
            self.tab("Hours").keep_only(wanted)


def _about(minutes: int) -> str:
    """Hours for a narrow card: whole ones, from the second on."""
    return spoken_hours(minutes) if minutes < 120 else f"{minutes / 60:,.0f} h"


def _receipts(count: int) -> str:
    return "1 receipt" if count == 1 else f"{count:,} receipts"
