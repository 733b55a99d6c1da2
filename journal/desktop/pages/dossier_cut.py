"""For whom the dossier is: three large choices, one of them taken."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QPushButton, QSizePolicy, QWidget

from journal.desktop import icons
from journal.desktop.widgets.parts import row
from journal.domain.cuts import Cut

_WORDS = {
    Cut.BUYER: "The story, before and after; nothing private",
    Cut.VALUER: "Which car, how it stands, what it cost",
    Cut.OWN: "Everything there is",
}


class CutBar(QWidget):
    """Three buttons of which one is pressed in."""

    #: Another cut was taken: a Cut.
    chosen = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.buttons: dict[Cut, QPushButton] = {}
        self._group = QButtonGroup(self)
        for cut in Cut:
            made = QPushButton(f"{cut.words}\n{_WORDS[cut]}")
            made.setCheckable(True)
            made.setStyleSheet("min-height: 54px")
            made.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
            made.setAccessibleName(cut.words)
            made.setAccessibleDescription(_WORDS[cut])
            self._group.addButton(made)
            self.buttons[cut] = made
            made.clicked.connect(lambda _checked, cut=cut: self._on_clicked(cut))
        self.setLayout(row(*self.buttons.values()))

    def show_cut(self, cut: Cut) -> None:
        """Press one in, with a tick, so that it is told by more than its colour."""
        for one, made in self.buttons.items():
            made.setChecked(one is cut)
            icons.put(made, "done" if one is cut else "dossier")

    def _on_clicked(self, cut: Cut) -> None:
        self.show_cut(cut)
        self.chosen.emit(cut)
