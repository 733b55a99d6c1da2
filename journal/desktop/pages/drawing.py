"""The Drawing page: the car in the centre, everything hangs on a place on it."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer, Slot
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QSplitter, QVBoxLayout, QWidget

from journal.actions import drawings
from journal.desktop.desk import Desk, FindingSelected, PanelSelected, PhotosSelected, Selection
from journal.desktop.modes.bar import ModeBar
from journal.desktop.once_painted import once_painted
from journal.desktop.pages import Page
from journal.desktop.pages.drawing_years import DrawnYears
from journal.desktop.tasks import Task
from journal.desktop.widgets.as_it_stood import AsItStood
from journal.desktop.widgets.parts import column
from journal.desktop.widgets.tool_canvas import ToolCanvas
from journal.desktop.widgets.view_tabs import ViewTabs
from journal.domain.changes import Changes
from journal.domain.drawing import Drawing
from journal.domain.ids import PanelId, PhotoId, ViewId

if TYPE_CHECKING:
    from journal.desktop.pages.drawing_pinning import Pinning
    from journal.desktop.pages.drawing_reading import Found
    from journal.desktop.pages.drawing_side import DrawingSide
    from journal.desktop.pages.drawing_underlays import DrawnUnderlays
    from journal.desktop.widgets.metal_board import MetalBoard
    from journal.desktop.widgets.panel_list import PanelList
    from journal.desktop.widgets.tray import Tray
    from journal.domain.hits import PanelMap

_TRAVEL_MS = 120
#: Room for two photos beside each other.
_SIDE = 264
_READ_KINDS = frozenset({"drawing", "photos", "pins", "car", "cameras"})
_ALL_KINDS = _READ_KINDS | {"areas"}
_TINT_KINDS = frozenset({"photos", "pins", "receipts", "work", "entries", "milestones"})


class DrawingPage(Page):
    """The drawing, its views, the stages, and the tray of what is to be placed.

    One view is shown first; what stands on the left and what takes long to read follow once it is
    on screen.
    """

    title = "Drawing"
    icon = "drawing"

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._drawing = Drawing((), (), ())
        self._reading: Task | None = None
        self._unread: frozenset[str] = frozenset()
        self._left = column()
        self._made_side: DrawingSide | None = None
        self._made_pinning: Pinning | None = None
        self._metal: MetalBoard | None = None
        self._underlays: DrawnUnderlays | None = None
        self.canvas = ToolCanvas()
        self.modes = ModeBar(desk, self.canvas, self._left)
        self.tabs = ViewTabs()
        self.years = AsItStood()
        self.drawn = DrawnYears(desk, self.canvas, self.years, self)
        self.legend = self.drawn.legend
        self._travel = QTimer(self)
        self._travel.setSingleShot(True)
        self._travel.setInterval(_TRAVEL_MS)
        self._build()
        self._connect()

    def _build(self) -> None:
        left = QWidget()
        left.setMinimumWidth(_SIDE)
        left.setLayout(self._left)
        centre = QWidget()
        layout = QVBoxLayout(centre)
        layout.setContentsMargins(8, 4, 8, 8)
        layout.setSpacing(6)
        layout.addWidget(self.tabs)
        layout.addWidget(self.modes)
        layout.addWidget(self.canvas, 1)
        dated = column(spacing=6)
        dated.addLayout(self.drawn.bar())
        dated.addWidget(self.years)
        below = QWidget()
        below.setLayout(dated)
        layout.addWidget(below)
        self.modes.take_room_of(below)
        split = QSplitter(Qt.Orientation.Horizontal)
        split.setChildrenCollapsible(False)
        split.setHandleWidth(3)
        split.addWidget(left)
        split.addWidget(centre)
        split.setStretchFactor(1, 1)
        split.setSizes([_SIDE, 900])
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(split)
        self.setFocusProxy(self.canvas)

    @property
    def side(self) -> "DrawingSide":
        """What stands on the left of the drawing; made when first asked for."""
        return self._made_side or self._make_side()

    @property
    def tray(self) -> "Tray":
        """The sittings to place."""
        return self.side.tray

    @property
    def panels(self) -> "PanelList":
        """The panels as a list."""
        return self.side.panels

    @property
    def pinning(self) -> "Pinning":
        """What is done with what is in hand."""
        self._made_pinning = self._made_pinning or self._make_pinning()
        return self._made_pinning

    @property
    def metal(self) -> "MetalBoard":
        """What is welded and measured, laid over the drawing."""
        if self._metal is None:
            from journal.desktop.widgets.metal_board import board_on

            self._metal = board_on(self.desk, self.canvas)
            self.years.moved.connect(self._metal.look_at)
            self._metal.look_at(self.years.when)
            self._metal.quiet.shown_changed.connect(self._on_layers)
            self._on_layers()
        return self._metal

    @property
    def is_read(self) -> bool:
        """Whether nothing is left to be read."""
        others = self.drawn.is_read and (self._underlays is None or self._underlays.is_read)
        return self._reading is None and not self._unread and others

    def _make_side(self) -> "DrawingSide":
        from journal.desktop.pages.drawing_side import DrawingSide

        side = self._made_side = DrawingSide(self.desk)
        side.panels.panel_clicked.connect(self._on_panel_clicked)
        side.panels.panel_chosen.connect(self._on_panel_chosen)
        side.tray.picked.connect(self._on_picked)
        side.panels.set_drawing(self._drawing)
        side.panels.select_panel(self.canvas.selected_panel)
        self._left.addWidget(side)
        self._show_state()
        self._show_what_can_be_done()
        return side

    def _make_pinning(self) -> "Pinning":
        from journal.desktop.pages.drawing_pinning import Pinning

        return Pinning(self.desk, self.canvas, self.side, lambda: self._drawing, self)

    def _make_underlays(self) -> "DrawnUnderlays":
        from journal.desktop.pages.drawing_underlays import DrawnUnderlays

        return DrawnUnderlays(self.desk, self.canvas, self)

    def _connect(self) -> None:
        self.tabs.chosen.connect(self._on_view_wanted)
        self.canvas.view_changed.connect(self._on_view_changed)
        self.canvas.panel_clicked.connect(self._on_panel_clicked)
        self.canvas.panel_chosen.connect(self._on_panel_chosen)
        self.canvas.panel_pointed.connect(self._on_panel_pointed)
        self.canvas.pins_clicked.connect(self._on_pins_clicked)
        self.canvas.photos_dropped.connect(self._on_photos_dropped)
        self.years.export_wanted.connect(self._on_export_wanted)
        self.canvas.tool_changed.connect(self._on_tool_changed)
        self.modes.entered.connect(self._on_mode_entered)
        self.desk.mode_wanted.connect(self.modes.enter)
        self.drawn.shown.connect(self._show_state)
        self._travel.timeout.connect(self._on_travelled)
        QShortcut(QKeySequence("Ctrl+P"), self, lambda: self.pinning.again())

    # --- showing ---

    def refresh(self, changes: Changes | None) -> None:
        """Read again what changed: the drawing, the stages, the pins and the tray."""
        kinds = changes.kinds if changes else _ALL_KINDS
        is_first = not self._drawing.views
        if is_first:
            self._show_drawing(self.desk.ask(drawings.first_view) or self._drawing)
        if kinds & {"areas", "car", "drawing"}:
            self.drawn.read()
        elif kinds & _TINT_KINDS:
            self.drawn.refresh_tint()
        elif "metalwork" in kinds:
            self.drawn.read_metal()
        if self.modes.mode is not None and "drawing" in kinds:
            # What was just shaped is shaped on at once.
            kinds -= {"drawing"}
            self._show_drawing(self.desk.ask(drawings.drawing) or self._drawing)
            self._read_map()
        self.modes.refresh(changes)
        if self._metal is not None:
            self._metal.refresh(changes)
        if self._underlays is not None:
            self._underlays.refresh(changes)
        self._unread |= kinds & _READ_KINDS
        if is_first:
            once_painted(self.canvas.viewport(), self._read)
        else:
            self._read()

    def show_selection(self, selection: Selection) -> None:
        """Mark the panel selected; take photos selected elsewhere in hand."""
        if isinstance(selection, PanelSelected):
            self._show_panel(selection.id)
        elif isinstance(selection, FindingSelected) and self.modes.title != "Survey":
            self.modes.enter("Survey")
        elif isinstance(selection, PhotosSelected):
            self.tray.take(selection.ids)
        self.modes.show_selection(selection)
        self._show_what_can_be_done()

    def _show_drawing(self, drawing: Drawing) -> None:
        self._drawing = drawing
        self.canvas.set_drawing(drawing)
        self.tabs.set_drawing(drawing)
        self.tabs.mark(self.canvas.view_id)
        if self._made_side is not None:
            self.panels.set_drawing(drawing)

    def _read(self) -> None:
        """Read what takes long in a reader's thread: there may be many thousand photos."""
        from journal.desktop.pages.drawing_reading import read_all

        if not self._unread:
            return
        session, kinds, shown = self.desk.session, self._unread, self._drawing
        if self._reading is not None:
            self._reading.cancel()
        self._reading = self.desk.read(
            lambda _context: read_all(session, kinds, shown), self._on_read, self
        )
        if self._made_side is None:
            self._make_side()

    def _on_read(self, found: "Found") -> None:
        """Show the drawing, and in the event loop's next turn the rest: each takes its time."""
        reading, self._metal = self._reading, self.metal
        if found.drawing is not self._drawing:
            self._show_drawing(found.drawing)
            if self.canvas.selected_panel is not None:
                self._show_panel(self.canvas.selected_panel)
            self._read_map()
        QTimer.singleShot(0, self, lambda: self._show_rest(found, reading))

    def _show_rest(self, found: "Found", reading: Task | None) -> None:
        if self._reading is not reading:
            return
        self._reading, self._unread = None, frozenset()
        self._underlays = self._underlays or self._make_underlays()
        if found.pins is not None:
            self.drawn.set_pins(found.pins)
            any_photos = bool(found.rows or found.pins.on(None).counts)
            self.side.show_to_place(found.rows, any_photos=any_photos)
            self.pinning.proposing.look(self.tray.in_hand(), again=True)
        self._show_state()

    def _read_map(self) -> None:
        from journal.desktop.pages.drawing_reading import prepared_map

        drawing = self._drawing

        def done(found: "PanelMap") -> None:
            if drawing is self._drawing:
                self.canvas.set_map(found)

        self.desk.read(lambda _context: prepared_map(drawing), done, self)

    @Slot()
    def _show_state(self) -> None:
        if self._made_side is not None:
            self.panels.model.set_state(dict(self.drawn.stages), self.canvas.photo_counts)

    def _show_panel(self, panel_id: PanelId) -> None:
        views = [shape.view_id for shape in self._drawing.shapes if shape.panel_id == panel_id]
        if views and self.canvas.view_id not in views:
            self.canvas.set_view(views[0])
        self.canvas.select_panel(panel_id)
        if self._made_side is not None:
            self.panels.select_panel(panel_id)

    @Slot()
    def _show_what_can_be_done(self) -> None:
        if self._made_side is not None:
            self.pinning.show_what_can_be_done()

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
        self.pinning.here()

    @Slot(int)
    def _on_panel_pointed(self, panel_id: int) -> None:
        if panel_id == self.canvas.selected_panel:
            self._show_what_can_be_done()
            self._travel.start()

    @Slot()
    def _on_travelled(self) -> None:
        if (panel_id := self.canvas.selected_panel) is not None:
            self.desk.select(PanelSelected(panel_id))

    @Slot()
    def _on_export_wanted(self) -> None:
        from journal.desktop.dialogs.opening import open_dialog
        from journal.desktop.dialogs.take_out import TakeOutDialog

        when, by = self.years.when, self.drawn.by
        open_dialog(TakeOutDialog(self.desk, when, by, self.window(), years=True))

    @Slot()
    def _on_layers(self) -> None:
        self.legend.set_layers(self.metal.quiet.shown)

    @Slot(str)
    def _on_mode_entered(self, _title: str) -> None:
        mode = self.modes.mode
        self.inspects = None if mode is None or mode.has_inspector else ()
        self.inspects_changed.emit()

    @Slot()
    def _on_tool_changed(self) -> None:
        self.legend.set_pins(shown=not self.canvas.hides_pins)

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
        from journal.desktop.pages.drawing_pinning import Place

        self.pinning.pin(tuple(ids), Place(PanelId(panel_id), ViewId(view_id), x, y))
        self._on_panel_clicked(panel_id)
