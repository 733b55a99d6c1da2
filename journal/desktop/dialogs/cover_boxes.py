"""Covering what is not to be seen on a photo: number plates, faces, addresses."""

from dataclasses import replace

from PySide6.QtCore import Qt
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QLabel,
    QListWidgetItem,
    QVBoxLayout,
    QWidget,
)

from journal.actions import covers
from journal.actions import photos as photo_actions
from journal.desktop.desk import Desk
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.widgets.cover_canvas import CoverCanvas
from journal.desktop.widgets.parts import PlainList, button, column, label, row, tool
from journal.desktop.widgets.pictures import PictureSource, needed_size
from journal.domain.changes import Changes
from journal.domain.covers import CoverBox
from journal.domain.errors import JournalError
from journal.domain.ids import CoverBoxId, PhotoId
from journal.domain.photos import Photo
from journal.domain.private_words import LISTED, Private

_WORDS = (
    "Draw a box over each thing. It is burnt into every copy that leaves the house while its "
    "sort is withheld. The original stays as it is, and so does the photo in this program."
)
_KEYS = (
    "By key: Insert adds a box, arrows move it, Shift and arrows size it, Ctrl makes smaller "
    "steps, Delete removes it."
)
_SIDE = 280


class CoverBoxesDialog(QDialog):
    """One photo with its boxes.

    Attributes:
        canvas: the photo to draw on.
        list: the boxes by what they hide.
        hides: what the current box hides, and the next one.
    """

    def __init__(self, desk: Desk, photo: Photo, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._photo = photo
        self._current: int | None = None
        self.setWindowTitle(f"Cover something on “{photo.name}”")
        self.resize(1100, 700)
        self.canvas = CoverCanvas()
        self.canvas.editable = not desk.read_only
        self.canvas.setAccessibleName("The photo, with boxes over what is covered")
        self.canvas.setAccessibleDescription(_KEYS)
        self.list = PlainList("Covered places")
        self.hides = QComboBox()
        self.hides.setAccessibleName("What it hides")
        self.add = button("&Add a box", self._on_add, icon="plus")
        self.remove = button("&Remove it", self._on_remove, icon="remove")
        self.source = PictureSource(desk, self)
        self._build()
        self._connect()
        self._show_boxes()
        self.canvas.setFocus()

    def _build(self) -> None:
        for kind in LISTED:
            self.hides.addItem(kind.value.capitalize(), kind)
        self.hides.setCurrentIndex(self.hides.findData(Private.PLATE))
        what = QLabel("&It hides")
        what.setBuddy(self.hides)
        close = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        close.rejected.connect(self.accept)
        side = QWidget()
        side.setFixedWidth(_SIDE)
        layout = column(label(_WORDS), spacing=10)
        layout.addWidget(self.list, 1)
        layout.addLayout(row(what, self.hides))
        layout.addLayout(row(self.add, self.remove))
        layout.addWidget(label(_KEYS, "muted"))
        layout.addWidget(close)
        side.setLayout(layout)
        left = QVBoxLayout()
        left.addWidget(self.canvas, 1)
        left.addLayout(
            row(
                None,
                tool("zoom-out", "Smaller (-)", lambda: self.canvas.zoom_by(-1)),
                tool("fit", "The whole photo (0)", self.canvas.fit),
                tool("zoom-in", "Larger (+)", lambda: self.canvas.zoom_by(1)),
            )
        )
        whole = row(spacing=16)
        whole.setContentsMargins(16, 16, 16, 16)
        whole.addLayout(left, 1)
        whole.addWidget(side)
        self.setLayout(whole)

    def _connect(self) -> None:
        self.source.ready.connect(self._on_picture)
        self.canvas.drawn.connect(self._on_drawn)
        self.canvas.changed.connect(self._on_changed)
        self.canvas.picked.connect(self._pick)
        self.canvas.removal_wanted.connect(lambda _number: self._on_remove())
        self.list.currentRowChanged.connect(self._on_row)
        self.hides.activated.connect(self._on_hides)
        self._desk.changed.connect(self._on_record)
        self.source.ask(self._photo, max(1280, needed_size(self.canvas)))

    # --- showing ---

    def boxes(self) -> tuple[CoverBox, ...]:
        """The boxes as the record has them now."""
        return self._desk.ask(covers.covers_on, self._photo) or ()

    def _show_boxes(self) -> None:
        boxes = self.boxes()
        if self._current not in {box.id for box in boxes}:
            self._current = boxes[-1].id if boxes else None
        self.canvas.show_boxes(boxes, self._current)
        self.list.blockSignals(True)
        self.list.clear()
        for number, box in enumerate(boxes, 1):
            item = QListWidgetItem(f"{number}. {box.hides.value.capitalize()}")
            item.setData(Qt.ItemDataRole.UserRole, int(box.id))
            self.list.addItem(item)
            if box.id == self._current:
                self.list.setCurrentItem(item)
        self.list.blockSignals(False)
        if (box_now := self.canvas.box(self._current)) is not None:
            self.hides.setCurrentIndex(self.hides.findData(box_now.hides))
        self.add.setEnabled(not self._desk.read_only)
        self.hides.setEnabled(not self._desk.read_only)
        self.remove.setEnabled(bool(boxes) and not self._desk.read_only)

    def _on_picture(self, _number: int, pixmap: QPixmap | None) -> None:
        self.canvas.show_picture(pixmap, "There is no picture to show.")

    def _on_record(self, changes: Changes) -> None:
        if "photos" in changes.kinds:
            photo = self._desk.ask(photo_actions.photo, self._photo.id)
            if photo is not None and photo.turn != self._photo.turn:
                self._photo = photo
                self.source.ask(photo, max(1280, needed_size(self.canvas)))
        if changes.kinds & {"photos", "covers"}:
            self._show_boxes()

    # --- acting ---

    def _on_add(self) -> None:
        self.canvas.add_in_the_middle()
        self.canvas.setFocus()

    def _on_drawn(self, place: tuple[float, float, float, float]) -> None:
        hides = Private(self.hides.currentData())
        try:
            changes = covers.add_cover(self._desk.session, self._photo, place, hides)
        except JournalError as error:
            self._desk.message.emit(str(error), "error")
            return
        self._current = changes.made
        self._desk.announce(changes)
        self._show_boxes()

    def _on_changed(self, box: CoverBox) -> None:
        self._current = box.id
        self._desk.act(covers.change_cover, self._photo, box)

    def _pick(self, number: int) -> None:
        self._current = number
        self._show_boxes()

    def _on_row(self, place: int) -> None:
        if (item := self.list.item(place)) is not None:
            self._pick(item.data(Qt.ItemDataRole.UserRole))

    def _on_hides(self) -> None:
        self.canvas.keep()
        if (box := self.canvas.box(self._current)) is not None:
            self._on_changed(replace(box, hides=Private(self.hides.currentData())))

    def _on_remove(self) -> None:
        if self._current is not None:
            self._desk.act(covers.remove_cover, CoverBoxId(self._current))

    def done(self, result: int) -> None:
        """Keep what was moved by key, and close."""
        self.canvas.keep()
        super().done(result)


def cover_something(desk: Desk, photo_id: PhotoId, parent: QWidget) -> None:
    """Open the photo to cover something on it."""
    photo = desk.ask(photo_actions.photo, photo_id)
    if photo is not None:
        open_dialog(CoverBoxesDialog(desk, photo, parent))
