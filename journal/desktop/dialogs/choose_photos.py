"""Choosing photos for a repair area from those pinned to its panels, or from all."""

from PySide6.QtWidgets import QCheckBox, QWidget

from journal.actions import areas as actions
from journal.actions import panels as panel_actions
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.parts import label
from journal.desktop.widgets.photo_grid import Group, PhotoGrid
from journal.desktop.widgets.photo_groups import count_words, sitting_groups
from journal.desktop.widgets.thumb_source import thumb_cache
from journal.domain.areas import Area
from journal.domain.errors import JournalError
from journal.domain.ids import PhotoId
from journal.domain.photos import Role


class ChoosePhotosDialog(FormDialog):
    """A grid of photos; those selected become the area's before, during or after."""

    def __init__(self, desk: Desk, area: Area, role: Role, parent: QWidget | None = None) -> None:
        super().__init__(f"Photos of “{area.name}” {role.value} the work", "&Choose", parent)
        self._desk = desk
        self._area = area
        self._role = role
        self.grid = PhotoGrid(thumb_cache(desk))
        self.grid.set_edge(128)
        self.all_photos = QCheckBox("Show &all photos, not those pinned to its panels alone")
        self._count = label("", "muted", wrap=False)
        self.resize(900, 640)
        self.outer.insertWidget(0, self.all_photos)
        self.outer.insertWidget(1, self.grid, 10)
        self.outer.insertWidget(2, self._count)
        self.all_photos.toggled.connect(self._show_groups)
        self.grid.selection_changed.connect(self._show_count)
        pinned = self._pinned()
        self.all_photos.setChecked(not pinned)
        self.all_photos.setEnabled(bool(pinned))
        self._show_groups()
        self.grid.setFocus()

    def submit(self) -> bool:
        """Choose what is selected."""
        photos = self.grid.selected()
        if not photos:
            raise JournalError("Select the photos first; Ctrl or Shift selects several.")
        self._desk.announce(
            actions.choose_photos(self._desk.session, self._area.id, photos, self._role)
        )
        return True

    def _show_groups(self) -> None:
        groups = sitting_groups(self._desk) if self.all_photos.isChecked() else self._pinned()
        self.grid.set_groups(groups)
        self._show_count()

    def _show_count(self) -> None:
        count = len(self.grid.selected())
        self._count.setText(f"{count:,} selected" if count else "Nothing selected yet")
        self.accept_button.setEnabled(bool(count))

    def _pinned(self) -> list[Group]:
        groups, seen = [], set[PhotoId]()
        for panel_id in self._area.panel_ids:
            history = self._desk.ask(panel_actions.history, panel_id)
            photos = [p.id for p in history.photos if p.id not in seen] if history else []
            if history and photos:
                seen.update(photos)
                words = count_words(len(photos))
                groups.append(Group(history.panel.label, words, tuple(photos), len(photos)))
        return groups
