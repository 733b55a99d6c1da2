"""The tool that sets the picture's scale by two points of known distance."""

import math

from PySide6.QtGui import QPainter, QTransform

from journal.actions.tracing import scale_underlay
from journal.desktop.tools.overlay import on_screen, paint_length, paint_line
from journal.desktop.tools.picture_tool import PictureTool

_GUIDE = (
    "Drag the two points onto spots whose distance you know, the two hubs for instance, give it on "
    "the left, and press Enter. Tab changes the point, arrows move it."
)


class ScaleTool(PictureTool):
    """Two handles, and how far apart they are in truth."""

    name = "Scale"
    icon = "scale-by"
    what = "Make the picture as large as it is by two points of known distance"
    starts = ((0.25, 0.6), (0.75, 0.6))

    #: The distance in millimetres, as given by the person; 0 for not yet.
    distance_mm: float = 0.0

    def guide(self) -> str:
        """What to do next."""
        return _GUIDE

    def labels(self) -> tuple[str, ...]:
        """Which point each is."""
        return ("1", "2")

    def distance_now(self) -> float:
        """How far apart the points lie on the view now, in millimetres."""
        return math.dist(*self.places) if len(self.places) == 2 else 0.0

    def apply(self) -> None:
        """Scale the picture; its first point stays where it is."""
        laid = self.laid
        if laid is not None and len(self.handles) == 2:
            view = laid.underlay.view_id
            self.attempt(scale_underlay, view, *self.handles, self.distance_mm)

    def paint_over(self, painter: QPainter, to_screen: QTransform) -> None:
        """Paint the line between the points with its length now."""
        places = self.places
        if len(places) == 2:
            spots = [on_screen(place, to_screen) for place in places]
            paint_line(painter, spots, self.colours)
            ends = places[0], places[1]
            paint_length(painter, ends, to_screen, self.colours, self.canvas.font())
        self.paint_handles(painter, to_screen)
