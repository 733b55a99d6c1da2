"""A stage with its date: press the words to change it, the cross to take it out."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QToolButton, QWidget

from journal.desktop.widgets.parts import row, tool
from journal.domain.areas import StageChange
from journal.domain.when import spoken


class StageChip(QWidget):
    """One recorded change of stage."""

    #: The words were pressed.
    change_wanted = Signal()
    #: The cross was pressed.
    removal_wanted = Signal()

    def __init__(self, change: StageChange, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        words = f"{change.stage}, {spoken(change.when)}"
        self.words = QToolButton()
        self.words.setText(words.replace("&", "&&"))
        self.words.setToolTip(f"Change the date of “{change.stage}”")
        self.words.setAccessibleName(f"{words}; press to change it")
        self.words.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.words.clicked.connect(lambda: self.change_wanted.emit())
        self.away = tool("close", f"Take out the date of “{change.stage}”")
        self.away.setProperty("role", "quiet")
        self.away.clicked.connect(lambda: self.removal_wanted.emit())
        self.setLayout(row(self.words, self.away, spacing=0))
