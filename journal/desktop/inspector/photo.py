"""What the inspector says of photos: when, where, of which repair area, and the file behind it."""

from collections import Counter
from collections.abc import Sequence

from PySide6.QtCore import Qt, Slot
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from journal.actions import covers, drawings
from journal.actions import photos as photo_actions
from journal.actions import pins as pin_actions
from journal.desktop.desk import Desk, PanelSelected, PhotosSelected, Selection
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.dialogs.photo_date import PhotoDateDialog
from journal.desktop.inspector import Pane
from journal.desktop.inspector.photo_areas import PhotoAreas
from journal.desktop.inspector.photo_dates import said_of
from journal.desktop.inspector.photo_facing import facing_box
from journal.desktop.inspector.photo_facts import PhotoDates, PhotoFile
from journal.desktop.widgets.parts import button, clear_layout, label, row, scrolled, tool
from journal.desktop.widgets.photo_viewer import PhotoViewer
from journal.desktop.widgets.photo_words import BASIS_WORDS
from journal.desktop.widgets.picture_view import PictureView
from journal.desktop.widgets.pictures import PictureSource
from journal.domain.changes import Changes
from journal.domain.ids import PanelId, PhotoId
from journal.domain.photos import Photo, Pin
from journal.domain.when import spoken

_KINDS = frozenset({"photos", "pins", "areas", "pairs", "cameras", "drawing", "covers"})
#: Of a larger selection only so many photos are looked at one by one.
_LOOKED_AT = 200
_PICTURE = 512
_ELLIPSIS = "\N{HORIZONTAL ELLIPSIS}"


class PhotoPane(Pane):
    """One photo in full, or what several have in common."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._ids: tuple[PhotoId, ...] = ()
        self._photos: tuple[Photo, ...] = ()
        self._viewer: PhotoViewer | None = None
        self.source = PictureSource(desk, self)
        self.picture = PictureView(dark_ground=False, zooms=False)
        self.name = label("", "muted")
        self.when = label("", "heading")
        self.known = label("", "muted")
        self.caption = QLineEdit()
        self.areas = PhotoAreas(desk)
        self.dates = PhotoDates()
        self.file = PhotoFile()
        self._places = QVBoxLayout()
        self._build()
        self._connect()

    def _build(self) -> None:
        self.picture.setFixedHeight(220)
        self.picture.setAccessibleName("The photo, small")
        self.picture.setToolTip("Double click shows it large")
        self.caption.setPlaceholderText("What does it show?")
        self.caption.setAccessibleName("Caption")
        self.caption.setReadOnly(self.desk.read_only)
        self._date = button("&Date", self._on_date, icon="edit", hint="Say when it was taken")
        self._date.setEnabled(not self.desk.read_only)
        large = button("Show &large", self._on_large, icon="zoom-in")
        said = "Cover what is not to be seen on copies that leave the house"
        self._cover = button(f"Co&ver{_ELLIPSIS}", self._on_cover, hint=said)
        self._one = QWidget()
        one = QVBoxLayout(self._one)
        one.setContentsMargins(0, 0, 0, 0)
        one.setSpacing(8)
        one.addWidget(label("How the date is known", "subheading"))
        one.addWidget(self.dates)
        one.addWidget(label("The file", "subheading"))
        one.addWidget(self.file)
        content = QWidget()
        layout = QVBoxLayout(content)
        layout.setContentsMargins(12, 8, 12, 16)
        layout.setSpacing(8)
        for piece in (self.picture, self.when, self.known, self.name, self.caption):
            layout.addWidget(piece)
        layout.addLayout(row(large, self._date, self._cover, None))
        layout.addWidget(label("Where on the car", "subheading"))
        layout.addLayout(self._places)
        layout.addWidget(label("Of which repair area", "subheading"))
        layout.addWidget(self.areas)
        layout.addWidget(self._one)
        layout.addStretch(1)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(scrolled(content))

    def _connect(self) -> None:
        self.source.ready.connect(self._on_picture)
        self.picture.double_clicked.connect(self._on_large)
        self.caption.editingFinished.connect(self._save_caption)

    # --- showing ---

    def show_selection(self, selection: Selection) -> None:
        """Show the photos selected."""
        if isinstance(selection, PhotosSelected):
            self._save_caption()
            self._ids = selection.ids
            self._read()

    def refresh(self, changes: Changes | None) -> None:
        """Read the photos again where something of them may have changed."""
        if self._ids and (changes is None or changes.kinds & _KINDS):
            self._read()

    def _read(self) -> None:
        self._photos = self.desk.ask(photo_actions.photos, self._ids[:_LOOKED_AT]) or ()
        if not self._photos:
            return
        first = self._photos[0]
        self.source.ask(first, _PICTURE)
        self.picture.show_covers(self.desk.ask(covers.covers_on, first) or ())
        self._one.setVisible(len(self._ids) == 1)
        if len(self._ids) == 1:
            self._show_one(first)
        else:
            self._show_many()
        captions = {photo.caption for photo in self._photos}
        same = len(captions) == 1
        self.caption.setText(captions.pop() if same else "")
        self.caption.setPlaceholderText("What does it show?" if same else "Different captions")
        self.areas.show_photos(self._ids[:_LOOKED_AT], self._show_places())

    def _show_one(self, photo: Photo) -> None:
        self.when.setText(spoken(photo.when) if photo.when is not None else "No date")
        self.known.setText(BASIS_WORDS[photo.basis].capitalize())
        self.name.setText(photo.name)
        candidates = self.desk.ask(photo_actions.date_candidates, photo.id) or ()
        self.dates.show_said(said_of(photo, candidates))
        self.file.show_photo(photo)

    def _show_many(self) -> None:
        self.when.setText(f"{len(self._ids):,} photos")
        dated = [photo.when for photo in self._photos if photo.when is not None]
        words = f"{spoken(min(dated))} to {spoken(max(dated))}" if dated else "No dates"
        if len(self._ids) > len(self._photos):
            words = f"The first {len(self._photos):,}: {words}"
        self.known.setText(words)
        self.name.setText(", ".join(sorted({p.camera for p in self._photos if p.camera})))

    def _show_places(self) -> list[PanelId]:
        """Show where the photos are pinned; gives the panels."""
        found = [pin for photo in self._photos if photo.placed for pin in self._pins_of(photo.id)]
        counts = Counter(pin.panel_id for pin in found)
        labels = {panel.id: panel.label for panel in self.desk.ask(drawings.panels) or ()}
        clear_layout(self._places)
        for panel_id, count in counts.most_common(8):
            self._places.addLayout(self._place_row(panel_id, labels.get(panel_id, "?"), count))
            if len(self._ids) == 1:
                self._add_facing(next(pin for pin in found if pin.panel_id == panel_id))
        if not counts:
            them = "it" if len(self._ids) == 1 else "them"
            words = f"Not placed yet: drag {them} onto a panel of the drawing."
            self._places.addWidget(label(words, "muted"))
        return list(counts)

    def _pins_of(self, photo_id: PhotoId) -> Sequence[Pin]:
        return self.desk.ask(pin_actions.pins_of, photo_id) or ()

    def _place_row(self, panel_id: PanelId, name: str, count: int) -> QVBoxLayout:
        words = name if len(self._ids) == 1 else f"{name} ({count:,})"
        show = button(
            words.replace("&", "&&"),
            lambda: self._go_to(panel_id),
            icon="panel",
            role="quiet",
            hint="Show this panel on the drawing",
        )
        show.setStyleSheet("text-align: left")
        off = tool("unpin", f"Unpin from {name}", lambda: self._unpin(panel_id))
        off.setProperty("role", "quiet")
        off.setEnabled(not self.desk.read_only)
        made = QVBoxLayout()
        line = row(show, off, spacing=4)
        line.setStretch(0, 1)
        made.addLayout(line)
        return made

    def _add_facing(self, pin: Pin) -> None:
        if pin.x is not None:
            box = facing_box(pin.facing, lambda degrees: self._face(pin, degrees))
            box.setEnabled(not self.desk.read_only)
            self._places.addLayout(row(label("The camera faced", "muted"), box, None))

    # --- acting ---

    def _face(self, pin: Pin, degrees: float | None) -> None:
        self.desk.act(pin_actions.face_pins, ((pin.photo_id, pin.panel_id),), degrees)

    def _go_to(self, panel_id: PanelId) -> None:
        self.desk.show_page("Drawing")
        self.desk.select(PanelSelected(panel_id))

    def _unpin(self, panel_id: PanelId) -> None:
        self.desk.act(pin_actions.unpin, self._ids, panel_id)

    def _save_caption(self) -> None:
        text = self.caption.text().strip()
        if not self._photos or self.desk.read_only or not self.caption.isModified():
            return
        self.caption.setModified(False)
        if any(photo.caption != text for photo in self._photos):
            self.desk.act(photo_actions.set_caption, self._ids, text)

    def _on_date(self) -> None:
        open_dialog(PhotoDateDialog(self.desk, self._ids, self.window()))

    def _on_cover(self) -> None:
        from journal.desktop.dialogs.cover_boxes import cover_something

        if self._ids:
            cover_something(self.desk, self._ids[0], self.window())

    @Slot()
    def _on_large(self) -> None:
        if not self._ids:
            return
        if self._viewer is None:
            self._viewer = PhotoViewer(self.desk, None, self.window())
        self._viewer.open_at(self._ids, self._ids[0])

    @Slot(int, object)
    def _on_picture(self, number: int, pixmap: QPixmap | None) -> None:
        if self._photos and number == self._photos[0].id:
            self.picture.setCursor(Qt.CursorShape.PointingHandCursor)
            self.picture.show_picture(pixmap, "There is no picture to show.")
