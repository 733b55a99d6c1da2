"""The photos with something covered, and all others to cover something on."""

from PySide6.QtWidgets import QDialog, QDialogButtonBox, QWidget

from journal.actions import covers
from journal.desktop.desk import Desk
from journal.desktop.dialogs.cover_boxes import cover_something
from journal.desktop.widgets.parts import button, column, label, row
from journal.desktop.widgets.photo_grid import Group, PhotoGrid
from journal.desktop.widgets.photo_groups import count_words, say_if_none, sitting_groups
from journal.desktop.widgets.thumb_source import thumb_cache
from journal.domain.changes import Changes
from journal.domain.ids import PhotoId

_WORDS = (
    "Number plates, faces and addresses can be read on photos too. Open one and draw a box over "
    "each: copies that leave the house get it burnt in, originals stay as they are."
)


class CoveredPhotosDialog(QDialog):
    """A grid: the covered ones first.

    Attributes:
        grid: all photos.
    """

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.setWindowTitle("Covered photos")
        self.resize(960, 660)
        self.grid = PhotoGrid(thumb_cache(desk))
        self.grid.set_edge(128)
        self.cover = button("&Cover something on it", self._on_cover, icon="box", role="primary")
        close = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        close.rejected.connect(self.reject)
        self.count = label("", wrap=False)
        layout = column(label(_WORDS, "muted"), margin=16)
        layout.addWidget(self.grid, 1)
        layout.addLayout(row(self.count, None, self.cover, close))
        self.setLayout(layout)
        self.grid.opened.connect(lambda number: self._open(PhotoId(number)))
        self.grid.selection_changed.connect(self._show_what_can_be_done)
        desk.changed.connect(self._on_record)
        self._show()
        say_if_none(self.grid, none=not self.grid.all_photos())
        self.grid.setFocus()

    def _show(self) -> None:
        covered = self._desk.ask(covers.covered_photos) or ()
        groups = sitting_groups(self._desk, without=frozenset(covered))
        if covered:
            words = count_words(len(covered))
            groups.insert(0, Group("With something covered", words, tuple(covered), len(covered)))
        self.grid.set_groups(groups)
        said = f"Something is covered on {count_words(len(covered))}."
        self.count.setText(said if covered else "Nothing is covered yet.")
        self._show_what_can_be_done()

    def _show_what_can_be_done(self) -> None:
        self.cover.setEnabled(bool(self.grid.selected()))

    def _on_record(self, changes: Changes) -> None:
        if "covers" in changes.kinds:
            self._show()

    def _on_cover(self) -> None:
        if chosen := self.grid.selected():
            self._open(chosen[0])

    def _open(self, photo: PhotoId) -> None:
        cover_something(self._desk, photo, self)
