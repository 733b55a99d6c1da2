"""The Drawing page: the car in the centre, everything hangs on a place on it."""

from collections import Counter
from dataclasses import dataclass

from PySide6.QtCore import Qt, QTimer, Slot
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QSplitter, QTabWidget, QVBoxLayout, QWidget

from journal.actions import areas as area_actions
from journal.actions import cars, drawings, timeline
from journal.actions import pins as pin_actions
from journal.desktop.desk import Desk, PanelSelected, PhotosSelected, Selection
from journal.desktop.pages import Page
from journal.desktop.tasks import Task
from journal.desktop.widgets.as_it_stood import AsItStood
from journal.desktop.widgets.canvas import DrawingCanvas
from journal.desktop.widgets.legend import Legend
from journal.desktop.widgets.panel_list import PanelList
from journal.desktop.widgets.parts import button, column, row
from journal.desktop.widgets.tray import ToPlace, Tray, to_place
from journal.desktop.widgets.view_tabs import ViewTabs
from journal.domain.changes import Changes
from journal.domain.drawing import Drawing
from journal.domain.hits import to_polygon
from journal.domain.ids import PanelId, PhotoId, ViewId
from journal.domain.photos import Pin
from journal.domain.progress import Context

_TRAVEL_MS = 120
#: Room for two photos beside each other.
_SIDE = 264


@dataclass(frozen=True, slots=True)
class Place:
    """Where photos were pinned last: a panel, and the spot on a view where one was pointed at."""

    panel_id: PanelId
    view_id: ViewId | None = None
    x: float | None = None
    y: float | None = None


class DrawingPage(Page):
    """The drawing, its views, the stages, and the tray of what is to be placed."""

    title = "Drawing"
    icon = "drawing"

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._drawing = Drawing((), (), ())
        self._labels: dict[PanelId, str] = {}
        self._pins: tuple[Pin, ...] = ()
        self._stages: dict[PanelId, str] = {}
        self._last: Place | None = None
        self._reading: Task | None = None
        self.canvas = DrawingCanvas()
        self.tabs = ViewTabs()
        self.legend = Legend()
        self.panels = PanelList()
        self.years = AsItStood()
        self.tray = Tray(desk)
        self._travel = QTimer(self)
        self._travel.setSingleShot(True)
        self._travel.setInterval(_TRAVEL_MS)
        self._build()
        self._connect()

    def _build(self) -> None:
        self._pin_here = button("Pin &here", self.pin_here, icon="pin", role="primary")
        self._pin_again = button("Pin &again", self.pin_again, icon="pin")
        self._pin_again.setToolTip("Pin what is in hand where the last photos went (Ctrl+P)")
        placing = QWidget()
        placing.setLayout(column(self.tray, self._pin_here, self._pin_again, margin=8))
        listing = QWidget()
        listing.setLayout(column(self.panels, margin=8))
        self._sides = QTabWidget()
        self._sides.addTab(placing, "&To place")
        self._sides.addTab(listing, "&Panels")
        self._sides.setMinimumWidth(_SIDE)
        centre = QWidget()
        layout = QVBoxLayout(centre)
        layout.setContentsMargins(8, 4, 8, 8)
        layout.setSpacing(6)
        layout.addWidget(self.tabs)
        layout.addWidget(self.canvas, 1)
        layout.addLayout(row(self.legend))
        layout.addWidget(self.years)
        split = QSplitter(Qt.Orientation.Horizontal)
        split.setChildrenCollapsible(False)
        split.setHandleWidth(3)
        split.addWidget(self._sides)
        split.addWidget(centre)
        split.setStretchFactor(1, 1)
        split.setSizes([_SIDE, 900])
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(split)
        self.setFocusProxy(self.canvas)
        self._show_what_can_be_done()

    def _connect(self) -> None:
        self.tabs.chosen.connect(self._on_view_wanted)
        self.canvas.view_changed.connect(self._on_view_changed)
        self.canvas.panel_clicked.connect(self._on_panel_clicked)
        self.canvas.panel_chosen.connect(self._on_panel_chosen)
        self.canvas.panel_pointed.connect(self._on_panel_pointed)
        self.canvas.pins_clicked.connect(self._on_pins_clicked)
        self.canvas.photos_dropped.connect(self._on_photos_dropped)
        self.panels.panel_clicked.connect(self._on_panel_clicked)
        self.panels.panel_chosen.connect(self._on_panel_chosen)
        self.years.moved.connect(self._read_stages)
        self.tray.picked.connect(self._on_picked)
        self.tray.hand_changed.connect(self._show_what_can_be_done)
        self._travel.timeout.connect(self._on_travelled)
        QShortcut(QKeySequence("Ctrl+P"), self, self.pin_again)
        for holder in (self.canvas, self.tray.list, self.tray.grid):
            again = QShortcut(QKeySequence("P"), holder, self.pin_again)
            again.setContext(Qt.ShortcutContext.WidgetShortcut)
            drop = QShortcut(QKeySequence("Escape"), holder, self.tray.let_go)
            drop.setContext(Qt.ShortcutContext.WidgetShortcut)

    # --- showing ---

    def refresh(self, changes: Changes | None) -> None:
        """Read again what changed: the drawing, the stages, the pins and the tray."""
        kinds = changes.kinds if changes else None
        if kinds is None or "drawing" in kinds:
            self._read_drawing()
        if kinds is None or "areas" in kinds:
            self.years.set_areas(self.desk.ask(area_actions.areas) or ())
        if kinds is None or kinds & {"areas", "car", "drawing"}:
            self._read_stages()
        if kinds is None or kinds & {"photos", "pins", "car", "cameras"}:
            self._read_photos()

    def show_selection(self, selection: Selection) -> None:
        """Mark the panel selected; take photos selected elsewhere in hand."""
        if isinstance(selection, PanelSelected):
            self._show_panel(selection.id)
        elif isinstance(selection, PhotosSelected):
            self.tray.take(selection.ids)
        self._show_what_can_be_done()

    def _read_drawing(self) -> None:
        drawing = self.desk.ask(drawings.drawing)
        if drawing is None:
            return
        self._drawing = drawing
        self._labels = {panel.id: panel.label for panel in drawing.panels}
        self.canvas.set_drawing(drawing)
        self.panels.set_drawing(drawing)
        self.tabs.set_drawing(drawing)
        self.tabs.mark(self.canvas.view_id)

    @Slot()
    def _read_stages(self) -> None:
        car = self.desk.ask(cars.car)
        self._stages = self.desk.ask(drawings.panel_stages, self.years.when) or {}
        names = car.stages if car else ()
        self.canvas.set_stages(self._stages, names)
        self.legend.set_stages(names)
        self._show_state()

    def _read_photos(self) -> None:
        """Read pins and sittings in a reader's thread: there may be many thousand."""
        session, shapes = self.desk.session, self._drawing.shapes

        def job(_context: Context) -> tuple[tuple[ToPlace, ...], tuple[Pin, ...]]:
            # The canvas wants the geometry library next; loaded here, it stops no painting.
            for shape in shapes[:1]:
                to_polygon(shape.shape)
            placed = {moment.photo_id for moment in timeline.moments(session) if moment.placed}
            return to_place(timeline.sittings(session), placed), pin_actions.pins(session)

        if self._reading is not None:
            self._reading.cancel()
        self._reading = self.desk.read(job, self._on_photos_read, self)

    def _on_photos_read(self, found: tuple[tuple[ToPlace, ...], tuple[Pin, ...]]) -> None:
        rows, self._pins = found
        self._reading = None
        self.canvas.set_pins(self._pins)
        self.tray.set_sittings(rows, any_photos=bool(rows or self._pins))
        count = sum(len(sitting.ids) for sitting in rows)
        self._sides.setTabText(0, f"&To place ({count:,})" if count else "&To place")
        self._show_state()

    def _show_state(self) -> None:
        photos: Counter[PanelId] = Counter(pin.panel_id for pin in self._pins)
        self.panels.model.set_state(self._stages, photos)

    def _show_panel(self, panel_id: PanelId) -> None:
        views = [shape.view_id for shape in self._drawing.shapes if shape.panel_id == panel_id]
        if views and self.canvas.view_id not in views:
            self.canvas.set_view(views[0])
        self.canvas.select_panel(panel_id)
        self.panels.select_panel(panel_id)

    def _show_what_can_be_done(self) -> None:
        writable = not self.desk.read_only
        panel_id = self.canvas.selected_panel
        name = self._labels.get(panel_id, "") if panel_id is not None else ""
        self._pin_here.setText(f"Pin to {name}" if name else "Pin &here")
        self._pin_here.setEnabled(writable and bool(name) and bool(self.tray.in_hand()))
        last = self._labels.get(self._last.panel_id, "") if self._last else ""
        self._pin_again.setText(f"Pin &again: {last}" if last else "Pin &again")
        self._pin_again.setVisible(bool(last))
        self._pin_again.setEnabled(writable and bool(last) and bool(self.tray.next_in_hand()))

    # --- pinning ---

    @Slot()
    def pin_here(self) -> None:
        """Pin what is in hand to the panel selected."""
        panel_id = self.canvas.selected_panel
        if panel_id is not None and self.tray.in_hand():
            self._pin(self.tray.in_hand(), Place(panel_id))

    @Slot()
    def pin_again(self) -> None:
        """Pin what is in hand, else the first sitting, where the last photos went."""
        ids = self.tray.next_in_hand()
        if self._last is None:
            self.desk.message.emit(
                "Nothing was pinned yet; pin the first sitting to a panel.", "info"
            )
        elif not ids:
            self.desk.message.emit("Every photo has its place; there is nothing to pin.", "info")
        else:
            self._pin(ids, self._last)

    def _pin(self, ids: tuple[PhotoId, ...], place: Place) -> None:
        self.tray.was_pinned(ids)
        changes = self.desk.act(
            pin_actions.pin,
            ids,
            place.panel_id,
            view_id=place.view_id,
            x=place.x,
            y=place.y,
        )
        if changes is not None:
            self._last = place
        self._show_what_can_be_done()

    # --- reacting ---

    @Slot(int)
    def _on_view_wanted(self, view_id: int) -> None:
        self.canvas.set_view(ViewId(view_id))
        self.canvas.setFocus()

    @Slot(int)
    def _on_view_changed(self, view_id: int) -> None:
        self.tabs.mark(ViewId(view_id))

    @Slot(int)
    def _on_panel_clicked(self, panel_id: int) -> None:
        self._travel.stop()
        self.desk.select(PanelSelected(PanelId(panel_id)))
        self._show_panel(PanelId(panel_id))
        self._show_what_can_be_done()

    @Slot(int)
    def _on_panel_chosen(self, panel_id: int) -> None:
        self._on_panel_clicked(panel_id)
        self.pin_here()

    @Slot(int)
    def _on_panel_pointed(self, panel_id: int) -> None:
        if panel_id == self.canvas.selected_panel:
            self._show_what_can_be_done()
            self._travel.start()

    @Slot()
    def _on_travelled(self) -> None:
        if (panel_id := self.canvas.selected_panel) is not None:
            self.desk.select(PanelSelected(panel_id))

    @Slot(object)
    def _on_pins_clicked(self, ids: tuple[PhotoId, ...]) -> None:
        self.desk.select(PhotosSelected(tuple(ids)))

    @Slot(object)
    def _on_picked(self, ids: tuple[PhotoId, ...]) -> None:
        if ids:
            self.desk.select(PhotosSelected(ids))

    @Slot(object, int, int, float, float)
    def _on_photos_dropped(
        self, ids: tuple[PhotoId, ...], panel_id: int, view_id: int, x: float, y: float
    ) -> None:
        place = Place(PanelId(panel_id), ViewId(view_id), x, y)
        self._pin(tuple(ids), place)
        self._on_panel_clicked(panel_id)
