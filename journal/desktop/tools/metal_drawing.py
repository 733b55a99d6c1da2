"""What the tools that draw metalwork have in common: points, and what is drawn with them."""

from PySide6.QtCore import QObject, QPointF
from PySide6.QtGui import QPainter, QTransform

from journal.desktop.desk import Desk, MetalKind, MetalSelected
from journal.desktop.tools.drawing_tool import DrawingTool
from journal.desktop.tools.overlay import on_screen, paint_corner, paint_length, paint_line
from journal.desktop.tools.shaping_tool import CLICK
from journal.desktop.tools.tool import Held
from journal.domain.drawing import Side, System
from journal.domain.ids import AreaId
from journal.domain.shapes import Point
from journal.domain.shaping.segments import rounded_point


class MetalDrawing(DrawingTool):
    """Point after point; Enter or a double click ends.

    Attributes:
        area_id: the repair area that the next piece belongs to; None: the one of the panel under
            its first point.
    """

    #: Whether the last point is joined to the first one.
    closes = False

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        self.points: list[Point] = []
        self.area_id: AreaId | None = None
        super().__init__(desk, parent)

    def write(self) -> bool:
        """Write what was drawn; whether it was taken."""
        raise NotImplementedError

    def named(self, name: str, side: Side, system: System) -> bool:
        """Nothing drawn here waits for a name."""
        del name, side, system
        return False

    def last(self) -> Point | None:
        """The point put last."""
        return self.points[-1] if self.points else None

    def add(self, point: Point) -> None:
        """Put a point; one on the last one is the same."""
        if not self.points or point != self.points[-1]:
            self.points.append(rounded_point(point))

    def take_back(self) -> bool:
        """Take the last point back."""
        return bool(self.points and self.points.pop())

    def clear(self) -> None:
        """Begin anew."""
        self.points = []

    def pressed(self, point: Point, held: Held) -> None:
        """Put a point where the spot was caught."""
        snap = self.catch(point, held)
        if self.closes and len(self.points) > 2 and self.near(point, self.points[0]):
            self.finish()
            return
        self.add(snap.point)
        self.tell()

    def double_clicked(self, point: Point, held: Held) -> None:
        """End where the first press of the two put a point."""
        del held
        if self.points and self.near(point, self.points[-1], 3 * CLICK):
            self.finish()

    def finish(self) -> None:
        """Write it, and begin anew; refused, it stays to be mended."""
        if self.view_id is not None and self.points and self.write():
            self.clear()
        self.tell()

    def area_here(self) -> AreaId | None:
        """The repair area chosen, or the one most likely meant; None, said, where there is none."""
        from journal.desktop.dialogs.metal_fields import likely_area

        if self.area_id is not None:
            return self.area_id
        under = self.canvas.panel_under(self.points[0])
        found = likely_area(self.desk, under)
        if found is None:
            self.refuse(
                "No repair area is on the panel here; pick one on the left, or mark one first."
            )
        return found

    def select(self, kind: MetalKind, made: int | None) -> None:
        """Select what was just drawn."""
        if made:
            self.desk.select(MetalSelected(kind, made))

    def paint_over(self, painter: QPainter, to_screen: QTransform) -> None:
        """Paint the line so far, and the piece that the next point would add."""
        spots: list[QPointF] = [on_screen(point, to_screen) for point in self.points]
        paint_line(painter, spots, self.colours)
        if self.snap is not None and self.points:
            ends = self.points[-1], self.snap.point
            leading = [on_screen(point, to_screen) for point in ends]
            paint_line(painter, leading, self.colours, dashed=True)
            paint_length(painter, ends, to_screen, self.colours, self.canvas.font())
        for number, spot in enumerate(spots):
            first = self.closes and number == 0 and len(spots) > 2
            paint_corner(painter, spot, self.colours, chosen=first)
        self.paint_cross(painter, to_screen)
