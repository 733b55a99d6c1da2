"""The tool for corners, handles and edges of a panel."""

from dataclasses import dataclass, replace

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QKeyEvent, QPainter, QTransform

from journal.desktop.desk import Desk
from journal.desktop.tools.corner_choice import CornerChoice
from journal.desktop.tools.corner_paint import paint_bend, paint_nodes, paint_sizes
from journal.desktop.tools.shaping_tool import CLICK, arrow_step
from journal.desktop.tools.tool import Held
from journal.desktop.widgets.announce import announce
from journal.domain.shapes import Point, Shape
from journal.domain.shaping import corners, edges
from journal.domain.shaping.corners import Grip, Node, Part
from journal.domain.shaping.placed import index_of
from journal.domain.shaping.segments import Segment, point_at, ring, rounded_point
from journal.domain.shaping.snapping import Snap, Why

_PICK = "Click the panel to shape, or travel to it with the arrow keys."
_CHOOSE = (
    "Drag a corner or a handle, or an edge to bend it. "
    "Double-click an edge for a new corner. Tab steps through the corners."
)
_CHOSEN = (
    "Arrows move it 1 mm, with Shift 10; Enter keeps it. "
    "Del takes it out, I puts a corner in, C bends its edge, L makes it straight."
)
_DRAGGED = "Let go to keep it. Alt (or Ctrl) frees it from what catches it, Esc drops it."
_NUDGED = "Enter keeps it here, Esc puts it back."
_BENT = "Let go to keep the curve, Esc drops it."


@dataclass(frozen=True, slots=True)
class _Drag:
    """A corner or handle being moved: what is held, where it is now, and what caught it."""

    grip: Grip
    snap: Snap
    by_key: bool = False


@dataclass(frozen=True, slots=True)
class _Bend:
    """An edge being bent: where it was pressed and where its middle is drawn to, if anywhere."""

    contour: int
    edge: int
    pressed: Point
    through: Point | None = None


class CornersTool(CornerChoice):
    """Moves corners and handles with all that shares them; puts corners in and takes them out.

    Resting until something is pressed; then a corner is dragged, or an edge is bent, until it is
    let go. By keys a chosen corner is moved in steps until Enter.
    """

    name = "Corners"
    icon = "corners"
    what = "Move corners and curves of a panel"
    cursor = Qt.CursorShape.ArrowCursor

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(desk, parent)
        self._drag: _Drag | None = None
        self._bend: _Bend | None = None
        self._pressed: Point | None = None
        self._hint = _PICK

    # What is chosen

    def shown_shape(self) -> Shape | None:
        """The outline of the panel marked, as it would be if the hand let go now."""
        if self._drag is None or self.panel_id is None or self.view_id is None:
            return self.shape()
        index = index_of(self.drawing, self.panel_id, self.view_id)
        made = corners.dragged_shapes(self.drawing, self._drag.grip, self._drag.snap.point)
        return made[index].shape if index in made else self.shape()

    def spot(self) -> Point | None:
        """What is being moved, else the corner chosen."""
        return self._drag.snap.point if self._drag else self.here() or super().spot()

    def tell(self) -> None:
        """Say what can be done now, and show it."""
        if self._bend is not None:
            self.say(_BENT)
        elif self._drag is not None:
            self.say(_NUDGED if self._drag.by_key else _DRAGGED)
        elif self.panel_id is None:
            self.say(_PICK)
        else:
            self.say(_CHOOSE if self.node is None else _CHOSEN)
        super().tell()

    # What it is told

    def begin(self, canvas: object) -> None:
        """Start with nothing chosen."""
        super().begin(canvas)  # type: ignore[arg-type]
        self.choose(None)

    def shown_changed(self) -> None:
        """Keep the corner chosen where it still is."""
        self._drag = self._bend = self._pressed = None
        shape = self.shape()
        if shape is None or self.node not in corners.corners(shape):
            self._chosen = None
        self.tell()

    def selection_changed(self) -> None:
        """Another panel is marked."""
        if self._owner != self.panel_id:
            self.cancel()
            self.choose(None)

    @property
    def is_half_done(self) -> bool:
        """Whether something is being moved."""
        return self._drag is not None or self._bend is not None

    def cancel(self) -> bool:
        """Drop the move, else the choice of a corner."""
        had = self.is_half_done
        self._drag = self._bend = self._pressed = None
        if had and self.at_work:
            self.canvas.show_as_drawn()
        elif self._chosen is not None:
            self._chosen, had = None, True
        if self.at_work:
            self.tell()
        return had

    def pressed(self, point: Point, _held: Held) -> None:
        """Take hold of a corner, a handle or an edge; else choose the panel there."""
        if self._drag is not None and not self._commit():
            return
        self._pressed = point
        node = self.node_at(point)
        place = None if node else self.edge_at(point)
        if node is not None:
            self._take_hold(node)
        elif place is not None:
            self._bend = _Bend(place.contour, place.edge, point)
        else:
            found = self.canvas.panel_under(point)
            if found is not None and found != self.panel_id:
                self.pick(found)
            self.choose(None)

    def moved(self, point: Point, held: Held) -> None:
        """Drag what is held."""
        if self._pressed is None:
            return
        if self._bend is not None:
            if self._bend.through or not self.near(point, self._pressed, CLICK):
                self._bend = replace(self._bend, through=rounded_point(point))
                self.tell()
        elif self._drag is not None and (
            self._drag.snap.point != self._drag.grip.at
            or not self.near(point, self._pressed, CLICK)
        ):
            self._drag_to(self._drag.grip, self._catch(point, held))

    def released(self, _point: Point, _held: Held) -> None:
        """Let go: write what was moved."""
        self._pressed = None
        bend, drag = self._bend, self._drag
        if bend is not None:
            self._bend = None
            if bend.through is not None:
                self._write_bend(bend, bend.through)
            self.tell()
        elif drag is not None and drag.snap.point != drag.grip.at:
            self._commit()
        elif drag is not None:
            self._drag = None
            self.tell()

    def double_clicked(self, point: Point, held: Held) -> None:
        """Put a corner in where an edge was clicked."""
        self._pressed = self._drag = self._bend = None
        if self.node_at(point) is None and self.edge_at(point) is not None:
            self.insert(point)
        else:
            self.pressed(point, held)

    def key(self, event: QKeyEvent) -> bool:
        """Step through the corners, move the one chosen, put in, take out, bend, straighten."""
        key = event.key()
        if key in (Qt.Key.Key_Tab, Qt.Key.Key_Backtab):
            return self._step(-1 if key == Qt.Key.Key_Backtab else 1)
        if self.node is None:
            return self.travelled(event)
        step = arrow_step(event)
        if step is not None:
            self._nudge(*step)
            return True
        acts = {
            Qt.Key.Key_Return: self._commit,
            Qt.Key.Key_Enter: self._commit,
            Qt.Key.Key_Delete: self.take_out,
            Qt.Key.Key_Backspace: self.take_out,
            Qt.Key.Key_Insert: self.insert_after,
            Qt.Key.Key_I: self.insert_after,
            Qt.Key.Key_C: self.bend,
            Qt.Key.Key_L: self.straighten,
        }
        act = acts.get(Qt.Key(key)) if key in acts else None
        if act is not None:
            act()
        return act is not None

    # Finding

    def _catch(self, point: Point, held: Held) -> Snap:
        """Where the corner held comes to rest, square to either neighbour."""
        assert self._drag is not None
        at, segment = self._drag.grip.at, self.segment()
        if self.node is None or segment is None or self.node.part is not Part.TO:
            return Snap(rounded_point(point), Why.FREE)
        snap = self.caught(point, held, start=segment[0], besides=at)
        following = self.after()
        if snap.why in (Why.LENGTH, Why.FREE) and following is not None:
            other = self.caught(point, held, start=following[-1], besides=at)
            if other.why is Why.RIGHT_ANGLE:
                return other
        return snap

    # Doing

    def _take_hold(self, node: Node) -> None:
        grip = self.grip(node)
        if grip is not None:
            self._drag = _Drag(grip, Snap(grip.at, Why.FREE))
            self.choose(node)

    def _drag_to(self, grip: Grip, snap: Snap, *, by_key: bool = False) -> None:
        self._drag = _Drag(grip, snap, by_key)
        changed = corners.dragged_shapes(self.drawing, grip, snap.point)
        self.canvas.show_shapes(changed)
        self.tell()

    def _nudge(self, dx: float, dy: float) -> None:
        here, node = self.here(), self.node
        grip = self._drag.grip if self._drag else self.grip(node) if node else None
        if grip is not None and here is not None:
            to = rounded_point(Point(here.x + dx, here.y + dy))
            self._drag_to(grip, Snap(to, Why.FREE), by_key=True)

    def _step(self, step: int) -> bool:
        shape = self.shape()
        if shape is None or (self._drag is not None and not self._commit()):
            return shape is not None
        nodes = list(corners.corners(shape))
        at = nodes.index(self.node) + step if self.node in nodes else min(step, 0) % len(nodes)
        self.choose(nodes[at % len(nodes)])
        self._speak(at % len(nodes) + 1, len(nodes))
        return True

    def _speak(self, number: int, count: int) -> None:
        """Tell a screen reader which corner or handle is chosen."""
        here, node = self.here(), self.node
        if here is not None and node is not None:
            kind = "Corner" if node.part is Part.TO else "Handle"
            place = f"{here.x:.0f}, {here.y:.0f} mm"
            announce(self.canvas, f"{kind} {number} of {count}, {place}")

    def put(self, point: Point) -> None:
        """Move the corner or handle chosen to a spot given by numbers."""
        grip = self.grip(self.node) if self.node else None
        if grip is not None and rounded_point(point) != grip.at:
            self._drag_to(grip, Snap(rounded_point(point), Why.FREE), by_key=True)
            self._commit()

    def _commit(self) -> bool:
        """Write the move; whether there was none or it was taken."""
        drag, node, panel, view = self._drag, self.node, self.panel_id, self.view_id
        if drag is None or node is None or panel is None or view is None:
            return True
        at, to = drag.grip.at, drag.snap.point
        if at == to:
            self.cancel()
            return True
        if node.part is Part.TO:
            label = f"Move a corner of {self.label_of(panel)}"
            done = self.reshape(label, lambda d: corners.move_corner(d, view, at, to))
        else:
            label = f"Bend an edge of {self.label_of(panel)}"
            done = self.reshape(label, lambda d: corners.move_handle(d, panel, view, node, to))
        self._drag = self._pressed = None
        self.tell()
        return done is not None

    def _write_bend(self, bend: _Bend, through: Point) -> None:
        panel, view = self.panel_id, self.view_id
        if panel is None or view is None:
            return
        label = f"Bend an edge of {self.label_of(panel)}"
        to = self._middle_for(bend, through)
        self.reshape(label, lambda d: edges.curve_edge(d, panel, view, bend.contour, bend.edge, to))

    def _middle_for(self, bend: _Bend, through: Point) -> Point:
        """Where the middle of the edge goes when the spot pressed goes through a spot."""
        segment = self._bent_segment(bend)
        middle = point_at(segment, 0.5)
        dx, dy = through.x - bend.pressed.x, through.y - bend.pressed.y
        return rounded_point(Point(middle.x + dx, middle.y + dy))

    def _bent_segment(self, bend: _Bend) -> Segment:
        shape = self.shape()
        assert shape is not None
        return ring(shape.contours[bend.contour])[bend.edge]

    # Painting

    def paint_over(self, painter: QPainter, to_screen: QTransform) -> None:
        """Paint corners and handles of the panel marked, and the sizes beside what moves."""
        shape = self.shown_shape()
        if shape is None:
            return
        paint_nodes(painter, shape, self.node, to_screen, self.colours)
        font = self.canvas.font()
        if self._bend is not None and self._bend.through is not None:
            segment = self._bent_segment(self._bend)
            through = self._middle_for(self._bend, self._bend.through)
            paint_bend(painter, segment, through, to_screen, self.colours)
        elif self.node is not None and self.node.part is Part.TO:
            snap = self._drag.snap if self._drag else None
            around = self.segment(), self.after()
            paint_sizes(painter, around, snap, to_screen, self.colours, font)
