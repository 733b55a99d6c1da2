"""The standard views of the whole car: a photo for each side, as a valuer asks for them."""

from PySide6.QtWidgets import QDialog, QDialogButtonBox, QWidget

from journal.actions import dossier_cuts
from journal.actions import photos as photo_actions
from journal.desktop.desk import Desk
from journal.desktop.widgets.flow import FlowLayout
from journal.desktop.widgets.parts import button, column, label, row
from journal.desktop.widgets.photo_grid import PhotoGrid
from journal.desktop.widgets.photo_groups import say_if_none, sitting_groups
from journal.desktop.widgets.thumb_source import thumb_cache
from journal.desktop.widgets.view_slot import ViewSlot
from journal.domain.changes import Changes
from journal.domain.ids import PhotoId
from journal.domain.standard_views import STANDARD_VIEWS

_WORDS = (
    "Drag a photo onto the side that it shows; or pick it below and press the side. "
    "Delete empties a side."
)


class StandardViewsDialog(QDialog):
    """Seven places above, all photos below.

    Attributes:
        slots: the place of each view by its name.
        grid: all photos, the latest first.
    """

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.setWindowTitle("Standard views")
        self.resize(1010, 680)
        self.slots: dict[str, ViewSlot] = {}
        self.said = label("", "muted")
        self.grid = PhotoGrid(thumb_cache(desk))
        self.grid.set_edge(128)
        self.empty = button("&Empty the side", self._on_empty, icon="remove")
        self._last: str = STANDARD_VIEWS[0]
        self._build()
        desk.changed.connect(self._on_record)
        groups = list(reversed(sitting_groups(desk)))
        self.grid.set_groups(groups)
        say_if_none(self.grid, none=not groups)
        self._show()
        self.grid.setFocus()

    def _build(self) -> None:
        places = QWidget()
        flow = FlowLayout(places, spacing=8)
        for name in STANDARD_VIEWS:
            slot = ViewSlot(self._desk, name)
            slot.clicked.connect(lambda _checked=False, name=name: self._on_pressed(name))
            slot.dropped.connect(lambda photo, name=name: self._put(name, PhotoId(photo)))
            slot.emptied.connect(lambda name=name: self._put(name, None))
            flow.addWidget(slot)
            self.slots[name] = slot
        close = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        close.rejected.connect(self.reject)
        layout = column(label(_WORDS, "muted"), places, spacing=10, margin=16)
        layout.addWidget(self.grid, 1)
        foot = row(self.said, self.empty, close)
        foot.setStretch(0, 1)
        layout.addLayout(foot)
        self.setLayout(layout)

    def _show(self) -> None:
        chosen = {
            row.name: row.photo_id for row in self._desk.ask(dossier_cuts.standard_views) or ()
        }
        found = self._desk.ask(photo_actions.photos, tuple(chosen.values())) or ()
        by_id = {photo.id: photo for photo in found}
        for name, slot in self.slots.items():
            photo = by_id.get(chosen[name]) if name in chosen else None
            if photo != slot.photo:
                slot.show_photo(photo)
        self.said.setText(f"{len(chosen)} of {len(self.slots)} sides have their photo.")
        self._show_empty()

    def _show_empty(self) -> None:
        held = self.slots[self._last].photo is not None
        self.empty.setEnabled(held and not self._desk.read_only)
        self.empty.setText(f"&Empty “{self._last}”")

    def _on_record(self, changes: Changes) -> None:
        if changes.kinds & {"dossier", "photos"}:
            self._show()

    def _on_pressed(self, name: str) -> None:
        self._last = name
        chosen = self.grid.selected()
        if chosen and not self._desk.read_only:
            self._put(name, chosen[0])
        elif not chosen:
            self.said.setText(f"Pick the photo below first that shows the car’s {name}.")
        self._show_empty()

    def _put(self, name: str, photo: PhotoId | None) -> None:
        self._last = name
        if not self._desk.read_only:
            self._desk.act(dossier_cuts.set_standard_view, name, photo)
        self._show_empty()

    def _on_empty(self) -> None:
        self._put(self._last, None)
