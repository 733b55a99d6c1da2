"""The left side of the Drawing page: what is to be placed and the acts of pinning; all panels."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QTabWidget, QWidget

from journal.desktop.desk import Desk
from journal.desktop.widgets.panel_list import PanelList
from journal.desktop.widgets.parts import button, column
from journal.desktop.widgets.proposal_list import ProposalList
from journal.desktop.widgets.tray import ToPlace, Tray


class DrawingSide(QTabWidget):
    """A tab with the tray, the proposals and the acts of pinning, and one with all panels."""

    #: What is in hand is to be pinned to the panel looked at.
    pin_here_wanted = Signal()
    #: What is in hand is to be pinned where the last photos went.
    pin_again_wanted = Signal()

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.tray = Tray(desk)
        self.panels = PanelList()
        self.proposals = ProposalList()
        self.proposals.skipped.connect(self.tray.skip)
        self.proposals.one_by_one_changed.connect(self.tray.set_one_by_one)
        self.pin_here = button("Pin &here", self.pin_here_wanted.emit, icon="pin", role="primary")
        self.pin_again = button("Pin &again", self.pin_again_wanted.emit, icon="pin")
        self.pin_again.setToolTip("Pin what is in hand where the last photos went (Ctrl+P)")
        placing = QWidget()
        placing.setLayout(
            column(self.tray, self.proposals, self.pin_here, self.pin_again, margin=8)
        )
        listing = QWidget()
        listing.setLayout(column(self.panels, margin=8))
        self.addTab(placing, "&To place")
        self.addTab(listing, "&Panels")

    def show_to_place(self, rows: tuple[ToPlace, ...], *, any_photos: bool) -> None:
        """Show what is to be placed, and how many photos that is."""
        self.tray.set_sittings(rows, any_photos=any_photos)
        self.proposals.setVisible(bool(rows))
        count = sum(len(sitting.ids) for sitting in rows)
        self.setTabText(0, f"&To place ({count:,})" if count else "&To place")

    def show_acts(self, here: str, last: str, *, writable: bool) -> None:
        """Name the panel looked at and the one pinned to last, and enable what can be done."""
        self.pin_here.setText(f"Pin to {here}" if here else "Pin &here")
        self.pin_here.setEnabled(writable and bool(here) and bool(self.tray.in_hand()))
        self.pin_again.setText(f"Pin &again: {last}" if last else "Pin &again")
        self.pin_again.setVisible(bool(last))
        self.pin_again.setEnabled(writable and bool(last) and bool(self.tray.next_in_hand()))
