"""What is withheld from a dossier: a tick for each sort, and what a reader will not see for it."""

from collections.abc import Collection

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QFrame, QVBoxLayout, QWidget

from journal.desktop.widgets.parts import clear_layout, column, label, row
from journal.domain.private_words import Private

_UNSEEN = {
    Private.PRICES: "No sum of money anywhere: not of receipts, hours, or the car.",
    Private.SUPPLIERS: "Shops are “supplier 1”, “supplier 2”, throughout.",
    Private.PEOPLE: "Everybody is “person 1”, “person 2”; the owner isn’t named.",
    Private.ADDRESSES: "No place, e-mail, web address or telephone number.",
    Private.PLATE: "No number plate; on photos, where you covered it.",
    Private.CHASSIS: "No chassis or engine number; nobody can check the car by them.",
    Private.OTHER: "None of the other words that you listed.",
}
_NOTHING = "Nothing is withheld: everything in the record may be read."


class WithheldPanel(QWidget):
    """Ticks on the left, and beside them in words what follows."""

    #: A tick was set or taken away: a frozenset of Private.
    changed = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.ticks: dict[Private, QCheckBox] = {}
        self._private = 0, 0, ""
        ticks = column(spacing=2)
        for kind in Private:
            made = QCheckBox(kind.value.capitalize())
            made.setAccessibleDescription(_UNSEEN[kind])
            made.clicked.connect(self._on_clicked)
            ticks.addWidget(made)
            self.ticks[kind] = made
        ticks.addStretch(1)
        self._unseen = QVBoxLayout()
        self._unseen.setSpacing(4)
        said = QFrame()
        said.setProperty("role", "card")
        inner = column(label("A reader will not see", "subheading"), spacing=4, margin=10)
        inner.addLayout(self._unseen)
        inner.addStretch(1)
        said.setLayout(inner)
        layout = row(spacing=12)
        layout.addLayout(ticks)
        layout.addWidget(said, 1)
        self.setLayout(layout)

    def show_withheld(self, kinds: Collection[Private]) -> None:
        """Show what is withheld, and what follows."""
        for kind, tick in self.ticks.items():
            tick.setChecked(kind in kinds)
        self._say()

    def show_private(self, words: int, photos: int, always: str) -> None:
        """``words`` are listed as private, boxes lie on ``photos``; ``always`` is withheld ever."""
        self._private = words, photos, always
        self._say()

    def withheld(self) -> frozenset[Private]:
        """The sorts ticked."""
        return frozenset(kind for kind, tick in self.ticks.items() if tick.isChecked())

    def _say(self) -> None:
        clear_layout(self._unseen)
        for sentence in self._sentences():
            self._unseen.addWidget(label(sentence))
        if always := self._private[2]:
            self._unseen.addWidget(label(always, "muted"))

    def _sentences(self) -> tuple[str, ...]:
        """What a reader will not see, a sentence each."""
        kinds, (words, photos, _always) = self.withheld(), self._private
        if not kinds:
            return (_NOTHING,)
        said = [_UNSEEN[kind] for kind in Private if kind in kinds]
        if words:
            said.append(f"Looked for besides: {_count(words, 'listed word')}.")
        if photos:
            said.append(f"Covered on {_count(photos, 'photo')}, where what it hides is ticked.")
        return tuple(said)

    def _on_clicked(self) -> None:
        self.changed.emit(self.withheld())


def _count(number: int, noun: str) -> str:
    return f"1 {noun}" if number == 1 else f"{number:,} {noun}s"
