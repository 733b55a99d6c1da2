"""Recording the day a seam, or a part of it, came to a state."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QLineEdit, QListWidgetItem, QWidget

from journal.actions import areas as area_actions
from journal.actions import metalwork
from journal.actions import photos as photo_actions
from journal.desktop.desk import Desk, PhotosSelected
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.dialogs.metal_fields import mm_box
from journal.desktop.widgets.parts import PlainList
from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.ids import PhotoId
from journal.domain.seams import Seam, SeamChange, SeamState, length, stretches
from journal.domain.when import spoken

_PHOTO_ROLE = Qt.ItemDataRole.UserRole
_LIST_HEIGHT = 120


def next_state(seam: Seam, changes: Sequence[SeamChange]) -> SeamState:
    """The state that comes after the least advanced part of a seam."""
    now = min((s.state.rank for s in stretches(seam, changes)), default=-1)
    return list(SeamState)[min(now + 1, len(SeamState) - 1)]


class SeamStateDialog(FormDialog):
    """Which state, since when, from where to where, with a note and photos."""

    def __init__(
        self,
        desk: Desk,
        seam: Seam,
        parent: QWidget | None = None,
        *,
        changes: Sequence[SeamChange] = (),
        state: SeamState | None = None,
        part: tuple[float, float] | None = None,
    ) -> None:
        super().__init__(f"State of a seam, {length(seam):,.0f} mm", "&Record", parent)
        self._desk = desk
        self._seam = seam
        self.state = QComboBox()
        self.state.addItems([each.value for each in SeamState])
        self.state.setCurrentText((state or next_state(seam, changes)).value)
        self.when = WhenEdit()
        self.when.set_today()
        whole = length(seam)
        start, end = part or (0.0, whole)
        self.start = mm_box(start, 0, whole)
        self.end = mm_box(end, 0, whole + 0.05)
        self.note = QLineEdit()
        self.photos = PlainList("Photos that show it")
        self.photos.setFixedHeight(_LIST_HEIGHT)
        self.add_row("&State", self.state)
        self.add_row("Reached &on", self.when)
        self.add_row("&From", self.start, "Along the seam, from its start.")
        self.add_row("&To", self.end)
        self.add_row("&Note", self.note)
        self._offer_photos()
        self.when.edit.selectAll()
        self.when.setFocus()

    def _offer_photos(self) -> None:
        """Offer the photos selected, ticked, and those of the repair area."""
        selection = self._desk.selection
        selected = selection.ids if isinstance(selection, PhotosSelected) else ()
        offered = {
            photo.id: photo for photo in self._desk.ask(photo_actions.photos, selected) or ()
        }
        chosen = self._desk.ask(area_actions.area_photos, self._seam.area_id) or ()
        offered |= {photo.id: photo for _, photo in chosen if photo.id not in offered}
        for photo in offered.values():
            date = spoken(photo.when) if photo.when else "no date"
            item = QListWidgetItem(f"{photo.caption or photo.name}, {date}")
            item.setFlags(item.flags() | Qt.ItemFlag.ItemIsUserCheckable)
            ticked = photo.id in selected
            item.setCheckState(Qt.CheckState.Checked if ticked else Qt.CheckState.Unchecked)
            item.setData(_PHOTO_ROLE, int(photo.id))
            self.photos.addItem(item)
        if offered:
            self.add_row("P&hotos", self.photos)
        else:
            self.photos.hide()

    def photo_ids(self) -> tuple[PhotoId, ...]:
        """The photos ticked."""
        items = (self.photos.item(place) for place in range(self.photos.count()))
        return tuple(
            PhotoId(item.data(_PHOTO_ROLE))
            for item in items
            if item.checkState() is Qt.CheckState.Checked
        )

    def submit(self) -> bool:
        """Record the day."""
        when = self.when.required()
        whole = length(self._seam)
        start, end = self.start.value(), min(self.end.value(), whole)
        is_whole = start < 0.1 and end > whole - 0.1
        changes = metalwork.move_seam(
            self._desk.session,
            self._seam.id,
            SeamState(self.state.currentText()),
            when,
            part=None if is_whole else (start, end),
            note=self.note.text().strip(),
            photo_ids=self.photo_ids(),
        )
        self._desk.announce(changes)
        return True
