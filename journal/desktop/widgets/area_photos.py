"""A repair area's photos: before, during and after, in three strips, and side by side."""

from functools import partial

from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from journal.actions import areas as actions
from journal.desktop.desk import Desk, PhotosSelected
from journal.desktop.dialogs.choose_photos import ChoosePhotosDialog
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.widgets.parts import button, column, label, row
from journal.desktop.widgets.photo_strip import PhotoStrip
from journal.desktop.widgets.photo_viewer import PhotoViewer
from journal.desktop.widgets.side_by_side import SideBySide
from journal.desktop.widgets.thumb_source import thumb_cache
from journal.domain.areas import Area
from journal.domain.ids import PhotoId
from journal.domain.photos import Role

_HINTS = {
    Role.BEFORE: "Drop photos here that show what was found",
    Role.DURING: "Drop photos here that show the work and the metal nobody sees again",
    Role.AFTER: "Drop photos here that show it finished",
}
_PAIR_HEIGHT = 340


class AreaPhotos(QWidget):
    """Three strips to drop photos on; a photo dropped from one strip on another changes sides.

    Attributes:
        strips: the strip of each role.
    """

    def __init__(self, desk: Desk, viewer_over: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._area: Area | None = None
        self._viewer_over = viewer_over
        self._viewer: PhotoViewer | None = None
        self._pair: SideBySide | None = None
        self.strips: dict[Role, PhotoStrip] = {}
        self._counts: dict[Role, QLabel] = {}
        self._choose: list[QPushButton] = []
        self.pair_button = button(
            "Before and after, side by side", self._on_pair, icon="before-after"
        )
        self.pair_button.setCheckable(True)
        self._layout = column(spacing=6)
        self._layout.addLayout(
            row(label("Photos", "subheading", wrap=False), None, self.pair_button)
        )
        for role in Role:
            self._add_strip(role)
        self.setLayout(self._layout)

    def show_area(self, area: Area) -> None:
        """Show the photos chosen for an area."""
        if self._area is None or self._area.id != area.id:
            self.pair_button.setChecked(False)
            self._show_pair()
        self._area = area
        chosen = self._desk.ask(actions.area_photos, area.id) or ()
        for role, strip in self.strips.items():
            strip.set_photos([photo for of_role, photo in chosen if of_role is role])
            count = len(strip.ids())
            self._counts[role].setText(f"{count:,}" if count else "none yet")
        both = self.strips[Role.BEFORE].ids() and self.strips[Role.AFTER].ids()
        self.pair_button.setEnabled(bool(both))
        if not both:
            self.pair_button.setChecked(False)
        self._show_pair()

    def _add_strip(self, role: Role) -> None:
        name = role.value.capitalize()
        strip = PhotoStrip(f"{name} photos", _HINTS[role], thumb_cache(self._desk))
        strip.dropped.connect(partial(self._on_dropped, role))
        strip.taken_out.connect(self._on_taken_out)
        strip.opened.connect(self._on_opened)
        strip.picked.connect(partial(self._on_picked, role))
        strip.setAcceptDrops(not self._desk.read_only)
        choose = button("Choose", partial(self._on_choose, role), icon="plus", role="quiet")
        choose.setAccessibleName(f"Choose {role.value} photos")
        choose.setToolTip(f"Choose {role.value} photos from those pinned to its panels")
        choose.setEnabled(not self._desk.read_only)
        count = label("", "muted", wrap=False)
        self._layout.addLayout(row(label(name, wrap=False), count, None, choose))
        self._layout.addWidget(strip)
        self.strips[role] = strip
        self._counts[role] = count

    def _on_dropped(self, role: Role, photos: tuple[PhotoId, ...]) -> None:
        if self._area is not None:
            self._desk.act(actions.choose_photos, self._area.id, photos, role)

    def _on_taken_out(self, photos: tuple[PhotoId, ...]) -> None:
        if self._area is not None and not self._desk.read_only:
            self._desk.act(actions.unchoose_photos, self._area.id, photos)

    def _on_choose(self, role: Role) -> None:
        if self._area is not None:
            open_dialog(ChoosePhotosDialog(self._desk, self._area, role, self.window()))

    def _on_picked(self, role: Role, photo: int) -> None:
        self._desk.select(PhotosSelected((PhotoId(photo),)))
        if self.pair_button.isChecked() and role is not Role.DURING:
            self._show_pair()

    def _on_opened(self, photo: int) -> None:
        if self._viewer is None:
            self._viewer = PhotoViewer(self._desk, None, self._viewer_over)
        ids = [number for strip in self.strips.values() for number in strip.ids()]
        self._viewer.open_at(ids, PhotoId(photo))

    def _on_pair(self) -> None:
        self._show_pair()

    def _show_pair(self) -> None:
        wanted = self.pair_button.isChecked()
        if self._pair is None and wanted:
            self._pair = SideBySide(self._desk, self)
            self._pair.setFixedHeight(_PAIR_HEIGHT)
            self._layout.insertWidget(1, self._pair)
        if self._pair is None:
            return
        self._pair.setVisible(wanted)
        if wanted:
            before, after = self.strips[Role.BEFORE], self.strips[Role.AFTER]
            self._pair.set_pair(
                next(iter(before.chosen() or before.ids()), None),
                next(iter(after.chosen() or tuple(reversed(after.ids()))), None),
            )
