"""The metalwork over one drawing: read when it changes, shown as of a day, followed by panes."""

from dataclasses import replace
from typing import TYPE_CHECKING, TypeVar, cast

from PySide6.QtCore import QObject, QPoint, Signal, Slot

from journal.desktop.desk import Desk, MetalKind, MetalSelected, Selection
from journal.desktop.tasks import Task
from journal.desktop.widgets.canvas_sheet import CanvasSheet
from journal.desktop.widgets.metal_layer import MetalLayer
from journal.desktop.widgets.metal_quiet import QuietMetal
from journal.desktop.widgets.metal_reading import KINDS, MetalFound, read_metal
from journal.domain.changes import Changes
from journal.domain.shapes import Point
from journal.domain.when import When

if TYPE_CHECKING:
    from journal.domain.anchors import AnchorPoint
    from journal.domain.patches import Patch
    from journal.domain.readings import Measure
    from journal.domain.seams import Seam

_T = TypeVar("_T")


class MetalBoard(QObject):
    """Reads the metalwork in a reader's thread and lays it over the canvas."""

    #: The metalwork was read: a MetalFound.
    read = Signal(object)
    #: Another day is looked at: a When, None for today.
    day_changed = Signal(object)

    def __init__(self, desk: Desk, canvas: CanvasSheet) -> None:
        super().__init__(canvas)
        self._desk = desk
        self._canvas = canvas
        self._reading: Task | None = None
        self.layer = MetalLayer(canvas, self)
        self.quiet = QuietMetal(canvas, self.layer)
        self.found: MetalFound | None = None
        self.on: When | None = None
        desk.selected.connect(self._on_selected)
        self._on_selected(desk.selection)
        canvas.takers.append(self._take_click)

    @property
    def is_read(self) -> bool:
        """Whether what is shown is what is recorded."""
        return self.found is not None and self._reading is None

    def refresh(self, changes: Changes | None) -> None:
        """Read again where the metalwork, or what it hangs on, changed."""
        if changes is not None and not changes.kinds & KINDS:
            return
        session = self._desk.session
        if self._reading is not None:
            self._reading.cancel()
        self._reading = self._desk.read(lambda _context: read_metal(session), self._on_read, self)

    def look_at(self, on: When | None) -> None:
        """Show the metalwork as it stood by the end of a date; None for today."""
        self.on = on
        self.layer.look_at(on)
        self.day_changed.emit(on)

    def _on_read(self, found: MetalFound) -> None:
        self._reading, self.found = None, found
        self.layer.lay(found.laid)
        self.read.emit(found)

    def show_changed(self, before: "Seam | Patch | AnchorPoint | Measure", now: object) -> None:
        """Show a thing changed by hand at once; it is read again in a moment."""
        if self.found is None:
            return
        laid = self.found.laid

        def anew(things: tuple[_T, ...]) -> tuple[_T, ...]:
            return tuple(cast("_T", now) if thing == before else thing for thing in things)

        metal = replace(
            laid.metal,
            seams=anew(laid.metal.seams),
            patches=anew(laid.metal.patches),
            anchors=anew(laid.metal.anchors),
        )
        laid = replace(laid, metal=metal, measures=anew(laid.measures))
        self.found = replace(self.found, laid=laid)
        self.layer.lay(laid)

    @Slot(object)
    def _on_selected(self, selection: Selection) -> None:
        self.layer.choose(selection if isinstance(selection, MetalSelected) else None)

    def _take_click(self, spot: QPoint) -> bool:
        """Select a thing clicked while looking; a patch, once its panel is the one looked at."""
        at = self._canvas.mapToScene(spot)
        thin = set(MetalKind) - {MetalKind.PATCH}
        thing = self.layer.thing_at(Point(at.x(), at.y()), thin)
        panel_id = self._canvas.panel_at(spot)
        if thing is None and panel_id == self._canvas.selected_panel:
            thing = self.layer.thing_at(Point(at.x(), at.y()))
        if thing is not None:
            self._desk.select(thing)
        return thing is not None


def board_on(desk: Desk, canvas: CanvasSheet) -> MetalBoard:
    """The board of a canvas, made when it is first asked for."""
    made = canvas.findChild(MetalBoard)
    if made is None:
        made = MetalBoard(desk, canvas)
        made.refresh(None)
    return made
