"""A panel's whole story: its photos, its repair areas, and everything done to it in order."""

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize, Qt, Slot
from PySide6.QtGui import QIcon, QPainter, QPixmap
from PySide6.QtWidgets import QListWidgetItem, QSplitter, QVBoxLayout, QWidget

from journal.actions import areas as area_actions
from journal.actions import cars, panels
from journal.desktop import icons, theme
from journal.desktop.desk import (
    AreaSelected,
    Desk,
    FindingSelected,
    MetalKind,
    MetalSelected,
    PanelSelected,
    PhotosSelected,
    ReceiptSelected,
    Selection,
    WantedSelected,
)
from journal.desktop.inspector import Pane
from journal.desktop.tasks import Task
from journal.desktop.widgets.flow import FlowLayout
from journal.desktop.widgets.grid_layout import Group
from journal.desktop.widgets.legend import paint_swatch
from journal.desktop.widgets.parts import PlainList, button, column, label
from journal.desktop.widgets.photo_grid import PhotoGrid
from journal.desktop.widgets.thumb_source import thumb_cache
from journal.domain.areas import Area
from journal.domain.changes import Changes
from journal.domain.ids import (
    AreaId,
    EntryId,
    FindingId,
    PanelId,
    PhotoId,
    ReceiptId,
    WantedId,
    WorkId,
)
from journal.domain.photos import Photo
from journal.domain.when import spoken

_KIND_ICONS = {
    "photos": "photo",
    "stage": "area",
    "receipt": "receipt",
    "work": "hours",
    "entry": "entry",
    "wanted": "wanted",
    "finding": "survey",
    "seam": "seam",
    "patch": "patch",
    "reading": "measure",
}
_METAL = {"seam": MetalKind.SEAM, "patch": MetalKind.PATCH, "reading": MetalKind.MEASURE}
_KINDS = frozenset({"photos", "pins", "areas", "receipts", "work", "entries", "drawing", "car"}) | {
    "wanted",
    "metalwork",
    "anchors",
    "readings",
    "surveys",
}
_EVENT_ROLE = Qt.ItemDataRole.UserRole


class PanelPane(Pane):
    """Everything about one panel."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._panel_id: PanelId | None = None
        self._reading: Task | None = None
        self._history: panels.PanelHistory | None = None
        self._newest_first = True
        self._title = label("", "subheading")
        self._facts = label("", "muted")
        self.areas = PlainList("Repair areas of this panel")
        self.areas.setIconSize(QSize(30, 20))
        self.grid = PhotoGrid(thumb_cache(desk))
        self.grid.setAccessibleName("Photos of this panel")
        self.grid.set_edge(128)
        self.story = PlainList("Everything done to this panel, in order")
        self.story.setIconSize(QSize(20, 20))
        self._order = button("", self._on_order, icon="order", role="quiet")
        self._order.setToolTip("Turn the order of photos and story round")
        self._nothing = label(
            "Nothing is recorded of this panel yet. Drag photos onto it, or mark a repair area.",
            "muted",
        )
        self._build()
        self._connect()

    def _build(self) -> None:
        self._new_area = button("New &area", self._on_new_area, icon="new-area")
        self._new_area.setToolTip("Mark a repair area on this panel")
        self._new_entry = button("&Entry", self._on_new_entry, icon="entry")
        self._new_entry.setToolTip("Write a dated note about this panel")
        for act in (self._new_area, self._new_entry):
            act.setEnabled(not self.desk.read_only)
        self._show_order()
        self._photos = QWidget()
        self._photos.setLayout(column(self.grid))
        self._telling = QWidget()
        telling = column(label("Everything done", "subheading"), self.story)
        telling.setContentsMargins(0, 6, 0, 0)
        self._telling.setLayout(telling)
        self._split = QSplitter(Qt.Orientation.Vertical)
        self._split.setChildrenCollapsible(False)
        self._split.addWidget(self._photos)
        self._split.addWidget(self._telling)
        self._split.setSizes([300, 260])
        layout = QVBoxLayout(self)
        layout.setContentsMargins(12, 8, 12, 8)
        layout.setSpacing(8)
        layout.addWidget(self._title)
        layout.addWidget(self._facts)
        acts = QWidget()
        flow = FlowLayout(acts)
        for act in (self._new_area, self._new_entry, self._order):
            flow.addWidget(act)
        layout.addWidget(acts)
        layout.addWidget(self.areas)
        layout.addWidget(self._nothing)
        layout.addWidget(self._split, 1)
        layout.addStretch()

    def _connect(self) -> None:
        self.areas.itemActivated.connect(self._on_area)
        self.areas.itemClicked.connect(self._on_area)
        self.story.itemActivated.connect(self._on_event)
        self.grid.opened.connect(self._on_photo)

    # --- showing ---

    def show_selection(self, selection: Selection) -> None:
        """Show a panel."""
        if isinstance(selection, PanelSelected):
            self._panel_id = selection.id
            self._read()

    def refresh(self, changes: Changes | None) -> None:
        """Read the story again where something it tells of has changed."""
        if changes is None or changes.kinds & _KINDS:
            self._read()

    def _read(self) -> None:
        """Read the story in a reader's thread: hundreds of photos may belong to it."""
        panel_id, session = self._panel_id, self.desk.session
        if panel_id is None:
            return
        if self._reading is not None:
            self._reading.cancel()
        self._reading = self.desk.read(
            lambda _context: panels.history(session, panel_id), self._show, self
        )

    def _show(self, history: panels.PanelHistory) -> None:
        self._reading, self._history = None, history
        self._title.setText(history.panel.label)
        self._facts.setText(_facts(history))
        self._show_areas(history.areas)
        self._show_photos(history.photos)
        self._show_story(history.events)
        empty = not history.events and not history.photos and not history.areas
        self._nothing.setVisible(empty)
        self._order.setVisible(not empty)
        self._split.setVisible(not empty)

    def _show_order(self) -> None:
        first = "Newest" if self._newest_first else "Oldest"
        self._order.setText(first)
        self._order.setAccessibleName(f"Order: {first.lower()} first")

    def _show_areas(self, areas: Sequence[Area]) -> None:
        self.areas.clear()
        car = self.desk.ask(cars.car) if areas else None
        stages = car.stages if car else ()
        for area in areas:
            item = QListWidgetItem(f"{area.name}\n{area.stage or 'no stage recorded'}")
            item.setData(_EVENT_ROLE, int(area.id))
            item.setIcon(self._swatch(stages, area.stage))
            item.setSizeHint(QSize(0, 46))
            item.setToolTip(area.found)
            self.areas.addItem(item)
        self.areas.setVisible(bool(areas))
        self.areas.setFixedHeight(min(3, len(areas)) * 47 + 6)

    def _swatch(self, stages: tuple[str, ...], stage: str) -> QIcon:
        colours = theme.colours_of(self.palette())
        mark = theme.stage_mark(colours, stages, stage)
        if mark is None:
            return QIcon()
        made = QPixmap(60, 40)
        made.setDevicePixelRatio(2)
        made.fill(Qt.GlobalColor.transparent)
        painter = QPainter(made)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        paint_swatch(painter, QRectF(1, 1, 28, 18), mark, colours)
        painter.end()
        return QIcon(made)

    def _show_photos(self, photos: Sequence[Photo]) -> None:
        ids = [photo.id for photo in _in_time(photos, newest_first=self._newest_first)]
        title = "1 photo" if len(ids) == 1 else f"{len(ids):,} photos"
        self.grid.set_groups([Group(title, "", tuple(ids), len(ids))] if ids else [])
        self.grid.refresh_cards()
        self._photos.setVisible(bool(ids))

    def _show_story(self, events: Sequence[panels.Event]) -> None:
        self.story.clear()
        colours = theme.colours_of(self.palette())
        for event in reversed(events) if self._newest_first else events:
            when = spoken(event.when) if event.when else "no date"
            words = f"{when}\n{event.title}"
            if event.detail:
                words += f"\n{event.detail}"
            item = QListWidgetItem(icons.icon(_KIND_ICONS[event.kind], colours.muted), words)
            item.setData(_EVENT_ROLE, event)
            self.story.addItem(item)
        self._telling.setVisible(bool(events))

    # --- reacting ---

    @Slot()
    def _on_order(self) -> None:
        self._newest_first = not self._newest_first
        self._show_order()
        if self._history is not None:
            self._show_photos(self._history.photos)
            self._show_story(self._history.events)

    @Slot(QListWidgetItem)
    def _on_area(self, item: QListWidgetItem) -> None:
        self.desk.select(AreaSelected(AreaId(item.data(_EVENT_ROLE))))

    @Slot(int)
    def _on_photo(self, photo_id: int) -> None:
        self.desk.select(PhotosSelected((PhotoId(photo_id),)))

    @Slot(QListWidgetItem)
    def _on_event(self, item: QListWidgetItem) -> None:
        event: panels.Event = item.data(_EVENT_ROLE)
        if event.kind == "photos":
            self.desk.select(PhotosSelected((PhotoId(event.id),)))
        elif event.kind == "stage":
            self.desk.select(AreaSelected(AreaId(event.id)))
        elif event.kind == "receipt":
            self.desk.select(ReceiptSelected(ReceiptId(event.id)))
        elif event.kind == "finding":
            self.desk.select(FindingSelected(FindingId(event.id)))
        elif event.kind == "wanted":
            self.desk.select(WantedSelected(WantedId(event.id)))
        elif event.kind in _METAL:
            self.desk.select(MetalSelected(_METAL[event.kind], event.id))
        elif event.kind == "entry":
            self._change_entry(EntryId(event.id))
        else:
            self._change_work(WorkId(event.id))

    def _change_entry(self, entry_id: EntryId) -> None:
        from journal.desktop.dialogs.entry import EntryDialog

        entries = self.desk.ask(area_actions.entries) or ()
        found = next((entry for entry in entries if entry.id == entry_id), None)
        if found is not None:
            EntryDialog(self.desk, self.window(), entry=found).exec()

    def _change_work(self, work_id: WorkId) -> None:
        from journal.desktop.dialogs.hours import HoursDialog

        known = self._history.work if self._history else ()
        found = next((work for work in known if work.id == work_id), None)
        if found is not None:
            HoursDialog(self.desk, self.window(), work=found).exec()

    def _on_new_area(self) -> None:
        from journal.desktop.dialogs.area import AreaDialog

        if self._panel_id is not None:
            AreaDialog(self.desk, self.window(), panel_ids=(self._panel_id,)).exec()

    def _on_new_entry(self) -> None:
        from journal.desktop.dialogs.entry import EntryDialog

        if self._panel_id is not None:
            EntryDialog(self.desk, self.window(), panel_id=self._panel_id).exec()


def _facts(history: panels.PanelHistory) -> str:
    counts = (
        (len(history.photos), "photo", "photos"),
        (len(history.areas), "repair area", "repair areas"),
        (len(history.receipts), "receipt", "receipts"),
        (len(history.entries), "entry", "entries"),
    )
    words = [f"{n:,} {one if n == 1 else many}" for n, one, many in counts if n]
    return " \N{MIDDLE DOT} ".join([history.panel.system.value, *words])


def _in_time(photos: Sequence[Photo], *, newest_first: bool) -> list[Photo]:
    """Dated photos in order of time, undated ones last either way."""
    dated = [photo for photo in photos if photo.when is not None]
    if newest_first:
        dated.reverse()
    return [*dated, *(photo for photo in photos if photo.when is None)]
