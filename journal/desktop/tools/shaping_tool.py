"""What the tools that change the drawing have in common: catching spots, writing once."""

import math
from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent

from journal.actions import shaping
from journal.desktop.theme import Colours, colours_of
from journal.desktop.tools.tool import Held, Tool
from journal.domain.changes import Changes
from journal.domain.drawing import Drawing
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Point
from journal.domain.shaping.segments import rounded_point
from journal.domain.shaping.snapping import Snap, Why

#: How near in pixels the pointer must come to take hold of something, or be caught.
REACH = 9.0
#: A press that moves no farther than this, in pixels, is a click.
CLICK = 4.0
#: Lengths are rounded to the first of these that shows as so many pixels at least.
_STEPS = (1.0, 5.0, 10.0, 50.0, 100.0)
_STEP_PIXELS = 2.5

ARROWS = {
    Qt.Key.Key_Left: (-1.0, 0.0),
    Qt.Key.Key_Right: (1.0, 0.0),
    Qt.Key.Key_Up: (0.0, -1.0),
    Qt.Key.Key_Down: (0.0, 1.0),
}
_WAYS = {
    Qt.Key.Key_Left: "left",
    Qt.Key.Key_Right: "right",
    Qt.Key.Key_Up: "up",
    Qt.Key.Key_Down: "down",
}
#: Either of these held, nothing is caught.
FREE = Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.ControlModifier


def arrow_step(event: QKeyEvent) -> tuple[float, float] | None:
    """What an arrow key moves by: 1 mm, with Shift 10; None for other keys."""
    way = ARROWS.get(Qt.Key(event.key())) if event.key() in ARROWS else None
    if way is None:
        return None
    step = 10.0 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1.0
    return way[0] * step, way[1] * step


class ShapingTool(Tool):
    """A tool that changes the drawing."""

    hides_pins = True

    #: The spot that the fields of numbers are about has changed, or what it is measured from.
    here_changed = Signal()

    # What the fields of numbers ask

    def here(self) -> Point | None:
        """The spot that can be given by numbers: the chosen corner, or where the hand is."""
        return None

    def origin(self) -> Point | None:
        """The spot that its length and angle are measured from."""
        return None

    def put(self, point: Point) -> None:
        """Take a spot given by numbers."""

    # What tools need

    @property
    def drawing(self) -> Drawing:
        """The drawing as it is recorded."""
        return self.canvas.drawing

    @property
    def view_id(self) -> ViewId | None:
        """The view shown."""
        return self.canvas.view_id

    @property
    def panel_id(self) -> PanelId | None:
        """The panel marked, where it is drawn on the view shown."""
        marked = self.canvas.selected_panel
        return marked if marked is not None and self.canvas.outline_of(marked) else None

    @property
    def colours(self) -> Colours:
        """The colours of the theme in use."""
        return colours_of(self.canvas.palette())

    def near(self, one: Point, other: Point, pixels: float = REACH) -> bool:
        """Whether two spots are within so many pixels of each other."""
        return math.dist(one, other) <= self.canvas.mm(pixels)

    def caught(
        self,
        point: Point,
        held: Held = Held.NoModifier,
        *,
        start: Point | None = None,
        besides: Point | None = None,
    ) -> Snap:
        """Where a spot comes to rest; Alt (or Ctrl) held frees it."""
        if held & FREE or self.view_id is None:
            return Snap(rounded_point(point), Why.FREE)
        return self.canvas.snapper().snap(
            point,
            start=start,
            within_mm=self.canvas.mm(REACH),
            step_mm=self.step(),
            besides=besides,
        )

    def step(self) -> float:
        """What lengths are rounded to at this scale, in millimetres."""
        return next((s for s in _STEPS if s >= self.canvas.mm(_STEP_PIXELS)), _STEPS[-1])

    def reshape(self, label: str, change: Callable[[Drawing], Drawing]) -> Changes | None:
        """Change the drawing in one edit; refused, everything shows as it is recorded."""
        changes = self.attempt(shaping.reshape, label, change)
        if changes is None:
            self.canvas.show_as_drawn()
        return changes

    def pick(self, panel_id: PanelId) -> None:
        """Select a panel, here and everywhere."""
        self.canvas.select_panel(panel_id)
        self.canvas.panel_clicked.emit(panel_id)

    def label_of(self, panel_id: PanelId) -> str:
        """A panel's label."""
        return self.drawing.panel(panel_id).label

    def travelled(self, event: QKeyEvent) -> bool:
        """Travel from panel to panel by an arrow key; whether it was one."""
        way = _WAYS.get(Qt.Key(event.key())) if event.key() in _WAYS else None
        if way is not None:
            self.canvas.travel(way)
        return way is not None
