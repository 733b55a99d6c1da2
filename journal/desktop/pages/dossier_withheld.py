"""What is withheld from a dossier: a tick for each sort, and what a reader will not see for it."""

from collections.abc import Collection

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QFrame, QVBoxLayout, QWidget

from journal.desktop.widgets.parts import clear_layout, column, label, row
from journal.domain.privacy import ALWAYS
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

    def show_withheld(self, kinds: Collection[Private], *, words: int, photos: int) -> None:
        """Show what is withheld; ``words`` are listed as private, boxes lie on ``photos``."""
        for kind, tick in self.ticks.items():
            tick.setChecked(kind in kinds)
        clear_layout(self._unseen)
        for sentence in self.sentences(kinds, words=words, photos=photos):
            self._unseen.addWidget(label(sentence))
        self._unseen.addWidget(label(ALWAYS, "muted"))

    def sentences(self, kinds: Collection[Private], *, words: int, photos: int) -> tuple[str, ...]:
        """What a reader will not see, a sentence each."""
        if not kinds:
            return (_NOTHING,)
        said = [_UNSEEN[kind] for kind in Private if kind in kinds]
        if words:
            said.append(f"Looked for besides: {_count(words, 'listed word')}.")
        if photos:
            said.append(f"Covered on {_count(photos, 'photo')}, where what it hides is ticked.")
        return tuple(said)

    def _on_clicked(self) -> None:
        self.changed.emit(frozenset(k for k, tick in self.ticks.items() if tick.isChecked()))


def _count(number: int, noun: str) -> str:
    return f"1 {noun}" if number == 1 else f"{number:,} {noun}s"
