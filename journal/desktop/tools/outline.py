"""The tool for a new panel, point by point, with curves where a point is dragged."""

from dataclasses import dataclass

from PySide6.QtCore import QObject
from PySide6.QtGui import QPainter, QTransform

from journal.desktop.desk import Desk
from journal.desktop.tools.drawing_tool import DrawingTool
from journal.desktop.tools.new_panel import name_for, write_panel
from journal.desktop.tools.overlay import (
    on_screen,
    paint_corner,
    paint_handle,
    paint_length,
    paint_line,
    segment_points,
)
from journal.desktop.tools.shaping_tool import CLICK
from journal.desktop.tools.tool import Held
from journal.domain.drawing import Side, System
from journal.domain.errors import JournalError
from journal.domain.shapes import Contour, Point, Shape
from journal.domain.shaping.placed import check_shape
from journal.domain.shaping.segments import Segment, edge_of, rounded_point

_FIRST = "Click the first corner of the new panel, or move the cross with the arrows: Space puts."
_MORE = "Click the next corner; drag as you click for a curve. Backspace takes the last one back."
_CLOSE = (
    "Click the next corner (drag for a curve). "
    "Click the first one or press Enter to close the outline; Backspace takes one back."
)


@dataclass(frozen=True, slots=True)
class _Knot:
    """A corner put, and the handle dragged out of it towards the next one, if any."""

    at: Point
    out: Point | None = None

    @property
    def back(self) -> Point | None:
        """The handle towards the corner before: the other one, turned round."""
        if self.out is None:
            return None
        return Point(2 * self.at.x - self.out.x, 2 * self.at.y - self.out.y)


class OutlineTool(DrawingTool):
    """Corner after corner until the outline is closed."""

    name = "New panel"
    icon = "outline"
    what = "Draw a panel corner by corner"

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        self._knots: list[_Knot] = []
        self._pressed: Point | None = None
        super().__init__(desk, parent)

    def guide(self) -> str:
        """What to do next."""
        return (_FIRST, _MORE, _MORE)[len(self._knots)] if len(self._knots) < 3 else _CLOSE

    def last(self) -> Point | None:
        """The corner put last."""
        return self._knots[-1].at if self._knots else None

    def add(self, point: Point) -> None:
        """Put a corner; the first one again closes the outline."""
        if len(self._knots) > 2 and self.near(point, self._knots[0].at):
            self.finish()
        elif not self._knots or point != self._knots[-1].at:
            self._knots.append(_Knot(rounded_point(point)))

    def take_back(self) -> bool:
        """Take the last corner back."""
        return bool(self._knots and self._knots.pop())

    def clear(self) -> None:
        """Begin anew."""
        self._knots, self._pressed = [], None

    def pressed(self, point: Point, held: Held) -> None:
        """Put a corner, whose handle may be dragged out of it."""
        if self.naming is not None:
            return
        before = len(self._knots)
        snap = self.catch(point, held)
        if before > 2 and self.near(point, self._knots[0].at):
            self.finish()
            return
        self.add(snap.point)
        if len(self._knots) > before:
            self._pressed = point
        self.tell()

    def moved(self, point: Point, held: Held) -> None:
        """Drag the handle out of the corner just put, else show where the next one would go."""
        if self._pressed is None:
            super().moved(point, held)
        elif not self.near(point, self._pressed, CLICK):
            self._knots[-1] = _Knot(self._knots[-1].at, rounded_point(point))
            self.repaint()

    def released(self, _point: Point, _held: Held) -> None:
        """The corner is put."""
        self._pressed = None

    def finish(self) -> None:
        """Close the outline and ask for its name; refused, it stays open to be mended."""
        if self.view_id is None:
            return
        if len(self._knots) < 3:
            self.refuse("A panel needs at least three corners.")
            return
        try:
            check_shape(self.drawing, self.view_id, self._shape(), "The new panel")
        except JournalError as error:
            self.refuse(str(error))
            return
        self.ask_name(name_for(self.drawing, self.view_id, self.panel_id))

    def named(self, name: str, side: Side, system: System) -> bool:
        """Write the panel."""
        if self.naming is None:
            return False
        return write_panel(self, self._shape(), name, side, system)

    def _segments(self) -> list[Segment]:
        """The edges so far, the one that closes the outline last."""
        return [
            _edge(a, b) for a, b in zip(self._knots, self._knots[1:] + self._knots[:1], strict=True)
        ]

    def _shape(self) -> Shape:
        segments = self._segments()
        return Shape((Contour(segments[0][0], tuple(edge_of(s) for s in segments)),))

    def paint_over(self, painter: QPainter, to_screen: QTransform) -> None:
        """Paint the outline so far, and the edge that the next corner would make."""
        font, colours = self.canvas.font(), self.colours
        segments = self._segments() if self._knots else []
        closing = segments.pop() if segments else None
        for segment in segments:
            paint_line(painter, segment_points(segment, to_screen), colours)
        if closing is not None and (self.naming is not None or len(segments) > 1):
            dashed = self.naming is None
            paint_line(painter, segment_points(closing, to_screen), colours, dashed=dashed)
        if self.snap is not None and self._knots and self.naming is None and not self._pressed:
            leading = _edge(self._knots[-1], _Knot(self.snap.point))
            paint_line(painter, segment_points(leading, to_screen), colours, dashed=True)
            ends = self._knots[-1].at, self.snap.point
            paint_length(painter, ends, to_screen, colours, font)
        for number, knot in enumerate(self._knots):
            at = on_screen(knot.at, to_screen)
            for handle in (knot.out, knot.back):
                if handle is not None:
                    paint_handle(painter, on_screen(handle, to_screen), at, colours)
            paint_corner(painter, at, colours, chosen=number == 0 and len(self._knots) > 2)
        self.paint_cross(painter, to_screen)


def _edge(a: _Knot, b: _Knot) -> Segment:
    """The edge between two corners: straight unless a handle was dragged out of one of them."""
    if a.out is None and b.back is None:
        return a.at, b.at
    one = a.out or _third(a.at, b.at)
    two = b.back or _third(b.at, a.at)
    return a.at, rounded_point(one), rounded_point(two), b.at


def _third(a: Point, b: Point) -> Point:
    return Point(a.x + (b.x - a.x) / 3, a.y + (b.y - a.y) / 3)
