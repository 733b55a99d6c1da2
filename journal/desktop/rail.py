"""The rail of pages down the left: big targets with a drawn icon and a word."""

from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QButtonGroup, QFrame, QToolButton, QVBoxLayout, QWidget

from journal.desktop import icons


class Rail(QFrame):
    """One button for each page, in order; Ctrl+1 to Ctrl+6 press them."""

    #: A page was chosen: its title.
    chosen = Signal(str)

    def __init__(self, pages: Sequence[tuple[str, str]], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("role", "rail")
        self.setAccessibleName("Pages")
        self._group = QButtonGroup(self)
        self._group.setExclusive(True)
        self._buttons: dict[str, QToolButton] = {}
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 8, 0, 8)
        layout.setSpacing(2)
        for number, (title, icon) in enumerate(pages, start=1):
            made = self._make_button(title, icon, number)
            layout.addWidget(made)
        layout.addStretch(1)
        self._group.buttonClicked.connect(self._on_clicked)

    def mark(self, title: str) -> None:
        """Show which page is in front."""
        self._buttons[title].setChecked(True)

    def _make_button(self, title: str, icon: str, number: int) -> QToolButton:
        made = QToolButton()
        made.setProperty("role", "rail")
        made.setText(title)
        made.setAccessibleName(f"{title} page")
        made.setToolTip(f"{title} (Ctrl+{number})")
        made.setCheckable(True)
        made.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextUnderIcon)
        made.setIconSize(QSize(28, 28))
        made.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        icons.put(made, icon)
        self._group.addButton(made)
        self._buttons[title] = made
        return made

    def _on_clicked(self, pressed: QToolButton) -> None:
        self.chosen.emit(pressed.text())
