"""The tabs of the Ledger: what each is called and where it comes from; made when first shown."""

from dataclasses import dataclass
from importlib import import_module
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from journal.domain.changes import Changes

if TYPE_CHECKING:
    from journal.actions.ledger_page import LedgerRead
    from journal.desktop.desk import Desk


class LedgerTab(QWidget):
    """What one tab of the Ledger shows.

    It is given the desk alone: ``LedgerTab(desk)``.
    """

    #: What a figure is made of is to be shown: a LinesWanted.
    lines_wanted = Signal(object)

    def __init__(self, desk: "Desk", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk

    def refresh(self, changes: Changes | None) -> None:
        """Read again what ``changes`` touched; everything where it is None.

        Called with None when the tab is first shown, then after every change while it shows. What
        changed while it was out of sight is told in one call when it comes back.
        """

    def show_found(self, found: "LedgerRead") -> None:
        """Show what the page has read of receipts and hours; told after every reading.

        A tab that reads for itself needs none of it.
        """


@dataclass(frozen=True, slots=True)
class TabEntry:
    """A tab that can be made: its title, the module it is in and its class, a ``LedgerTab``."""

    title: str
    module: str
    name: str

    def make(self, desk: "Desk") -> LedgerTab:
        """Import and make the tab."""
        made: LedgerTab = getattr(import_module(self.module), self.name)(desk)
        return made


#: In the order shown. A line here is all that a new tab needs.
TABS = (
    TabEntry("Costs", "journal.desktop.pages.ledger_costs", "CostsTab"),
    TabEntry("Charts", "journal.desktop.pages.ledger_charts", "ChartsTab"),
    TabEntry("Receipts", "journal.desktop.pages.ledger_receipts", "ReceiptList"),
    TabEntry("Hours", "journal.desktop.pages.ledger_hours", "WorkList"),
    TabEntry("Wanted", "journal.desktop.pages.ledger_wanted", "WantedList"),
    TabEntry("Estimate", "journal.desktop.pages.ledger_estimate", "EstimateTab"),
)


class TabHolder(QWidget):
    """The place of a tab: empty until the tab is first shown."""

    #: The tab was made: a LedgerTab.
    made = Signal(object)

    def __init__(self, entry: TabEntry, desk: "Desk") -> None:
        super().__init__()
        self.entry = entry
        self._desk = desk
        self._tab: LedgerTab | None = None
        self._missed: frozenset[str] = frozenset()
        self._found: LedgerRead | None = None
        self._layout = QVBoxLayout(self)
        self._layout.setContentsMargins(0, 0, 0, 0)

    @property
    def is_made(self) -> bool:
        """Whether the tab was made already."""
        return self._tab is not None

    @property
    def tab(self) -> Any:
        """The tab, made and brought up to date as needed."""
        if self._tab is None:
            self._tab = self.entry.make(self._desk)
            self._layout.addWidget(self._tab)
            self._tab.show()  # A layout shows what is new in it a little later: too late for focus.
            self.made.emit(self._tab)
            self._tab.refresh(None)
        elif self._missed:
            missed, self._missed = self._missed, frozenset()
            self._tab.refresh(Changes(label="", kinds=missed))
        if self._found is not None:
            found, self._found = self._found, None
            self._tab.show_found(found)
        return self._tab

    def tell_changes(self, changes: Changes) -> None:
        """Tell the tab what changed, when it is next asked for."""
        self._missed |= changes.kinds if self._tab is not None else frozenset()

    def tell_found(self, found: "LedgerRead") -> None:
        """Tell the tab what the page has read, when it is next asked for."""
        self._found = found
