"""The panes at the right: what is selected, and all that hangs on it."""

from PySide6.QtWidgets import QWidget

from journal.desktop.desk import Desk, Selection
from journal.domain.changes import Changes


class Pane(QWidget):
    """One pane of the inspector, for one kind of selection."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = desk

    def show_selection(self, selection: Selection) -> None:
        """Show what is selected; always of the kind this pane is for."""
        raise NotImplementedError

    def refresh(self, changes: Changes | None) -> None:
        """Read again what ``changes`` touched of the thing shown."""
        raise NotImplementedError
