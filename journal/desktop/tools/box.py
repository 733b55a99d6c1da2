"""The tool for a new rectangular panel."""

from PySide6.QtCore import QObject
from PySide6.QtGui import QPainter, QTransform

from journal.desktop.desk import Desk
from journal.desktop.tools.drawing_tool import DrawingTool
from journal.desktop.tools.new_panel import name_for, write_panel
from journal.desktop.tools.overlay import (
    on_screen,
    paint_corner,
    paint_length,
    paint_line,
)
from journal.desktop.tools.shaping_tool import CLICK, FREE
from journal.desktop.tools.tool import Held
from journal.domain.drawing import Side, System
from journal.domain.errors import JournalError
from journal.domain.shapes import Point, Shape, polygon
from journal.domain.shaping.placed import check_shape
from journal.domain.shaping.segments import rounded_point
from journal.domain.shaping.snapping import Snap

_FIRST = "Drag from one corner to the other, or click them; arrows and Space do it by key."
_SECOND = "Click the corner across. Its sides rest at whole steps; Alt (or Ctrl) frees them."


class BoxTool(DrawingTool):
    """Two corners across from each other."""

    name = "Rectangle"
    icon = "box"
    what = "Draw a rectangular panel"

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        self._ends: list[Point] = []
        self._pressed: Point | None = None
        super().__init__(desk, parent)

    def guide(self) -> str:
        """What to do next."""
        return _SECOND if self._ends else _FIRST

    def last(self) -> Point | None:
        """The first corner."""
        return self._ends[-1] if self._ends else None

    def add(self, point: Point) -> None:
        """Put a corner; the second one makes the rectangle."""
        self._ends.append(rounded_point(point))
        if len(self._ends) == 2:
            self.finish()

    def take_back(self) -> bool:
        """Take the first corner back."""
        return bool(self._ends and self._ends.pop())

    def clear(self) -> None:
        """Begin anew."""
        self._ends, self._pressed = [], None

    def cancel(self) -> bool:
        """Drop the name asked for and the second corner, else all."""
        if self.naming is not None:
            self._ends = self._ends[:1]
        return super().cancel()

    def catch(self, point: Point, held: Held) -> Snap:
        """Where a corner comes to rest: on what is there, else at whole steps from the first."""
        self._by_key = False
        snap = self.caught(point, held)
        start, step = self.last(), self.step()
        if start is not None and not snap.why and not held & FREE:
            across = round((point.x - start.x) / step) * step
            along = round((point.y - start.y) / step) * step
            snap = Snap(rounded_point(Point(start.x + across, start.y + along)), snap.why)
        self.snap = snap
        return snap

    def pressed(self, point: Point, held: Held) -> None:
        """Put a corner."""
        if self.naming is None:
            self._pressed = point if not self._ends else None
            self.add(self.catch(point, held).point)
            self.tell()

    def released(self, point: Point, held: Held) -> None:
        """Put the corner across, if the first one was dragged out."""
        pressed, self._pressed = self._pressed, None
        if pressed is not None and not self.near(point, pressed, CLICK):
            self.add(self.catch(point, held).point)
            self.tell()

    def finish(self) -> None:
        """Ask for a name; refused, the first corner stays."""
        if self.view_id is None or len(self._ends) < 2:
            return
        try:
            check_shape(self.drawing, self.view_id, self._shape(), "The new panel")
        except JournalError as error:
            self._ends = self._ends[:1]
            self.refuse(str(error))
            return
        self.ask_name(name_for(self.drawing, self.view_id, self.panel_id))

    def named(self, name: str, side: Side, system: System) -> bool:
        """Write the panel."""
        if self.naming is None:
            return False
        return write_panel(self, self._shape(), name, side, system)

    def _shape(self) -> Shape:
        return polygon(_around(*self._ends))

    def paint_over(self, painter: QPainter, to_screen: QTransform) -> None:
        """Paint the rectangle and the lengths of its sides."""
        if self._ends:
            far = self._ends[1] if len(self._ends) > 1 else self.here() or self._ends[0]
            corners = _around(self._ends[0], far)
            spots = [on_screen(corner, to_screen) for corner in corners]
            paint_line(painter, [*spots, spots[0]], self.colours, dashed=self.naming is None)
            font = self.canvas.font()
            for ends in ((corners[0], corners[1]), (corners[1], corners[2])):
                paint_length(painter, ends, to_screen, self.colours, font)
            paint_corner(painter, spots[0], self.colours, chosen=True)
        self.paint_cross(painter, to_screen)


def _around(one: Point, other: Point) -> list[Point]:
    """The corners of the upright rectangle between two of them, clockwise from the top left."""
    left, right = sorted((one.x, other.x))
    top, bottom = sorted((one.y, other.y))
    return [Point(left, top), Point(right, top), Point(right, bottom), Point(left, bottom)]
