"""The tool that selects what is welded and measured, and moves its points."""

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QKeyEvent, QPainter, QTransform

from journal.actions import metalwork, readings
from journal.desktop.desk import Desk, MetalKind, MetalSelected, Nothing, PanelSelected
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.tools.metal_points import MetalThing, points_of, with_point
from journal.desktop.tools.overlay import on_screen, paint_corner, paint_line, paint_snap
from journal.desktop.tools.shaping_tool import CLICK, ShapingTool, arrow_step
from journal.desktop.tools.tool import Held
from journal.desktop.widgets.metal_board import MetalBoard
from journal.domain.anchors import AnchorPoint
from journal.domain.changes import Changes
from journal.domain.ids import AnchorId, MeasureId, PatchId, SeamId
from journal.domain.patches import Patch
from journal.domain.seams import Seam
from journal.domain.shapes import Point
from journal.domain.shaping.snapping import Snap

_NONE = "Click a seam, patch, anchor point or measure; Tab goes from one to the next."
_HELD = (
    "Drag a point of it, or choose one with N and move it with the arrows. "
    "Enter changes it by numbers, Delete removes it."
)


class MetalSelectTool(ShapingTool):
    """Selects, moves points, changes and removes."""

    name = "Select"
    icon = "look"
    what = "Select seams, patches, anchor points and measures, and move their points"
    cursor = Qt.CursorShape.ArrowCursor
    hides_pins = True

    def __init__(self, desk: Desk, board: MetalBoard, parent: QObject | None = None) -> None:
        super().__init__(desk, parent)
        self._board = board
        self._shown: MetalSelected | None = None
        self._place: int | None = None
        self._pressed: Point | None = None
        self._moved_to: Snap | None = None
        self.selection_changed()

    # What is selected

    @property
    def selected(self) -> MetalSelected | None:
        """What is selected, where it is on the view shown."""
        chosen = self.desk.selection
        return chosen if isinstance(chosen, MetalSelected) and self.thing(chosen) else None

    def thing(self, chosen: MetalSelected | None) -> MetalThing | None:
        """The thing itself, where it is on the view shown."""
        found = self._board.found
        if found is None or chosen is None:
            return None
        metal = found.laid.metal
        kinds: dict[MetalKind, tuple[MetalThing, ...]] = {
            MetalKind.SEAM: metal.seams,
            MetalKind.PATCH: metal.patches,
            MetalKind.ANCHOR: metal.anchors,
            MetalKind.MEASURE: found.laid.measures,
        }
        one = next((each for each in kinds[chosen.kind] if each.id == chosen.id), None)
        if one is None or (self.at_work and one.view_id != self.view_id):
            return None
        return one

    def selection_changed(self) -> None:
        """Follow what is selected; the point chosen stays while it is the same thing."""
        chosen = self.selected
        one = self.thing(chosen)
        if chosen != self._shown or one is None or (self._place or 0) >= len(points_of(one)):
            self._place = self._pressed = self._moved_to = None
        self._shown = chosen
        self.say(_HELD if chosen else _NONE)
        self.here_changed.emit()
        self.repaint()

    # By numbers

    def here(self) -> Point | None:
        """The point chosen."""
        one = self.thing(self.selected)
        if one is None or self._place is None:
            return None
        return points_of(one)[self._place]

    def put(self, point: Point) -> None:
        """Move the point chosen to a spot given by numbers."""
        self._write(point)

    # By hand

    def pressed(self, point: Point, held: Held) -> None:
        """Take hold of a point of what is selected, or select what is there."""
        del held
        one = self.thing(self.selected)
        points = points_of(one) if one is not None else ()
        near = [n for n, each in enumerate(points) if self.near(point, each)]
        self._pressed = None
        if near:
            self._place, self._pressed = near[0], point
            self.here_changed.emit()
            self.repaint()
            return
        found = self._board.layer.thing_at(point)
        if found is not None:
            self.desk.select(found)
        elif (panel_id := self.canvas.panel_under(point)) is not None:
            self.desk.select(PanelSelected(panel_id))
        else:
            self.desk.select(Nothing())

    def moved(self, point: Point, held: Held) -> None:
        """Drag the point taken hold of."""
        if self._pressed is None or self._place is None:
            return
        if self._moved_to is None and self.near(point, self._pressed, CLICK):
            return
        self._moved_to = self.caught(point, held)
        self.repaint()

    def released(self, point: Point, held: Held) -> None:
        """Write where the point came to."""
        del point, held
        goal, self._pressed, self._moved_to = self._moved_to, None, None
        if goal is not None:
            self._write(goal.point)
        self.repaint()

    def double_clicked(self, point: Point, held: Held) -> None:
        """Change it by numbers."""
        del point, held
        self.edit()

    def cancel(self) -> bool:
        """Let go of a point being dragged."""
        had = self._moved_to is not None
        self._pressed = self._moved_to = None
        self.repaint()
        return had

    def shown_changed(self) -> None:
        """Hold nothing on another view."""
        self.cancel()
        self.selection_changed()

    # By key

    def key(self, event: QKeyEvent) -> bool:
        """Step on, choose a point, move it, change, remove."""
        key, step = event.key(), arrow_step(event)
        here = self.here()
        if key in (Qt.Key.Key_Tab, Qt.Key.Key_Backtab):
            return self._step(1 if key == Qt.Key.Key_Tab else -1)
        one = self.thing(self.selected)
        if one is None:
            return False
        if key == Qt.Key.Key_N:
            count = len(points_of(one))
            self._place = 0 if self._place is None else (self._place + 1) % count
            self.here_changed.emit()
            self.repaint()
        elif step is not None and here is not None:
            self._write(Point(here.x + step[0], here.y + step[1]))
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.edit()
        elif key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.remove()
        else:
            return False
        return True

    def _step(self, by: int) -> bool:
        things = list(self._board.layer.items)
        if not things:
            return False
        chosen = self.selected
        at = things.index(chosen) if chosen in things else (-1 if by > 0 else 0)
        self.desk.select(things[(at + by) % len(things)])
        return True

    # Acts

    def _write(self, point: Point) -> None:
        one = self.thing(self.selected)
        if one is None or self._place is None:
            return
        place = self._place
        changed = with_point(one, place, point)
        result: Changes | None
        if isinstance(changed, Seam):
            result = self.attempt(metalwork.change_seam, changed)
        elif isinstance(changed, Patch):
            result = self.attempt(metalwork.change_patch, changed)
        elif isinstance(changed, AnchorPoint):
            result = self.attempt(metalwork.change_anchor, changed)
        else:
            result = self.attempt(readings.change_measure, changed)
        if result is not None:
            self._board.show_changed(one, changed)
            self._place = place
            self.here_changed.emit()

    def edit(self) -> None:
        """Change what is selected by numbers and words."""
        from journal.desktop.dialogs.metal_edit import edit_dialog

        one = self.thing(self.selected)
        if one is not None:
            open_dialog(edit_dialog(self.desk, one, self.canvas.window()))

    def remove(self) -> None:
        """Take what is selected out."""
        chosen = self.selected
        if chosen is None:
            return
        if chosen.kind is MetalKind.SEAM:
            self.attempt(metalwork.remove_seam, SeamId(chosen.id))
        elif chosen.kind is MetalKind.PATCH:
            self.attempt(metalwork.remove_patch, PatchId(chosen.id))
        elif chosen.kind is MetalKind.ANCHOR:
            self.attempt(metalwork.remove_anchor, AnchorId(chosen.id))
        else:
            self.attempt(readings.remove_measure, MeasureId(chosen.id))

    def paint_over(self, painter: QPainter, to_screen: QTransform) -> None:
        """Paint the points of what is selected, and where one is being dragged to."""
        one = self.thing(self.selected)
        if one is None:
            return
        goal = self._moved_to
        if goal is not None and self._place is not None:
            one = with_point(one, self._place, goal.point)
            spots = [on_screen(point, to_screen) for point in points_of(one)]
            closed = [*spots, spots[0]] if isinstance(one, Patch) else spots
            paint_line(painter, closed, self.colours, dashed=True)
            paint_snap(painter, goal, to_screen, self.colours, self.canvas.font())
        for place, point in enumerate(points_of(one)):
            at = on_screen(point, to_screen)
            paint_corner(painter, at, self.colours, chosen=place == self._place)
