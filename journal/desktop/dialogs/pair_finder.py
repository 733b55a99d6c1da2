"""Likely pairs of every repair area that has none yet, looked for one area after the other."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QListWidgetItem, QProgressBar, QWidget

from journal.actions import areas as area_actions
from journal.actions import pairs as pair_actions
from journal.desktop.desk import Desk
from journal.desktop.dialogs import pair_reading as reading
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.dialogs.pair import PairDialog
from journal.desktop.dialogs.pair_choice import promise_words
from journal.desktop.tasks import Task
from journal.desktop.widgets.parts import PlainList, button, column, label, row
from journal.domain.areas import Area
from journal.domain.pairs import PairProposal
from journal.domain.photos import Photo
from journal.domain.when import spoken

_SAID = (
    "For each repair area without a pair: its photos from before the work and from after that "
    "seem to show one view, laid over each other. Open one to look at it; nothing is kept unseen."
)
_PLACE = Qt.ItemDataRole.UserRole


class PairFinderDialog(QDialog):
    """Lists what is found as it comes; looking can be stopped, and what was found stays.

    Attributes:
        list: the pairs found.
        said: how far it is, or how it ended.
    """

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._task: Task | None = None
        self._found: list[tuple[Area, PairProposal, tuple[Photo, Photo]]] = []
        have = {pair.area_id for pair in desk.ask(pair_actions.pairs) or ()}
        areas = desk.ask(area_actions.areas) or ()
        self._areas = [area for area in areas if area.id not in have]
        self._next = 0
        self.setWindowTitle("Pairs before and after")
        self.resize(760, 520)
        self.list = PlainList("Likely pairs")
        self.bar = QProgressBar()
        self.bar.setRange(0, max(1, len(self._areas)))
        self.bar.setTextVisible(False)
        self.said = label("", "muted")
        self.stop = button("&Stop", self._on_stop, icon="cancel")
        self.look = button("&Open", self._on_open, icon="zoom-in", role="primary")
        close = button("Close", self.accept)
        layout = column(label(_SAID), self.list, self.bar, spacing=10, margin=16)
        below = row(self.said, self.stop, self.look, close)
        below.setStretch(0, 1)
        layout.addLayout(below)
        layout.setStretch(1, 1)
        self.setLayout(layout)
        self.list.itemActivated.connect(lambda _item: self._on_open())
        self.list.currentRowChanged.connect(lambda at: self.look.setEnabled(at >= 0))
        self.look.setEnabled(False)
        self._go_on()

    def _go_on(self) -> None:
        """Look at the next area, or say how it ended."""
        self.bar.setValue(self._next)
        if self._next >= len(self._areas):
            self._end("Every repair area was looked at.")
            return
        area, session = self._areas[self._next], self._desk.session
        self.said.setText(f"Looking at {area.name}")
        self._task = self._desk.read(
            lambda context: reading.proposed(session, area.id, context),
            lambda found: self._on_found(area, found),
            self,
        )

    def _on_found(
        self, area: Area, found: Sequence[tuple[PairProposal, tuple[Photo, Photo]]]
    ) -> None:
        for proposal, photos in found[:1]:
            dates = " and ".join(spoken(p.when) if p.when else "no date" for p in photos)
            item = QListWidgetItem(f"{area.name}\n{dates}: {promise_words(proposal)}")
            item.setData(_PLACE, len(self._found))
            self._found.append((area, proposal, photos))
            self.list.addItem(item)
        self._next += 1
        self._go_on()

    def _on_stop(self) -> None:
        if self._task is not None:
            self._task.cancel()
        self._end("Stopped, as you asked.")

    def _end(self, words: str) -> None:
        self._task = None
        self.bar.hide()
        self.stop.hide()
        count = self.list.count()
        none = "No pair: repair areas need photos chosen before and after the work."
        self.said.setText(f"{words} {count:,} found." if count else f"{words} {none}")

    def _on_open(self) -> None:
        if self.list.currentRow() < 0:
            return
        area, proposal, photos = self._found[self.list.currentItem().data(_PLACE)]
        before, after = (photo.id for photo in photos)
        made = PairDialog(self._desk, area, self, before=before, after=after, fit=proposal.fit)
        open_dialog(made)

    def done(self, result: int) -> None:
        """Look no longer."""
        if self._task is not None:
            self._task.cancel()
            self._task = None
        super().done(result)
