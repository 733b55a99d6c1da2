"""The six pages, and what each of them is to the window."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from journal.desktop.desk import Desk, Selection
from journal.domain.changes import Changes


class Page(QWidget):
    """One page of the window.

    Attributes:
        title: what the rail calls it, in the words of the trade.
        icon: the name of its drawn icon.
        inspects: the kinds of selection that the inspector stands beside this page for; None for
            all. A page that shows a kind in full itself, or has no use for it, leaves it out.
    """

    title: str = ""
    icon: str = ""
    inspects: tuple[type, ...] | None = None

    #: The kinds of selection that the inspector stands beside this page for are others now.
    inspects_changed = Signal()

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk

    def refresh(self, changes: Changes | None) -> None:
        """Read again what ``changes`` touched; everything where it is None.

        Called with None when the page is first shown, then after every change. A page that is out
        of sight gets the changes it missed in one call, their kinds together, when it comes back.
        """
        raise NotImplementedError

    def show_selection(self, selection: Selection) -> None:
        """Mark what is selected, where this page shows it; do nothing where it doesn't."""
