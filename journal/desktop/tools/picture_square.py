"""The tool that squares the picture up: four handles go onto the corners of something square."""

import math

from PySide6.QtGui import QPainter, QTransform

from journal.actions.tracing import square_up_underlay
from journal.desktop.tools.overlay import on_screen, paint_line
from journal.desktop.tools.picture_tool import PictureTool

_GUIDE = (
    "Drag the four corners onto those of something square in the picture, give its width and "
    "height on the left, and press Enter. Tab steps through them, arrows move one."
)


class SquareUpTool(PictureTool):
    """Four handles round a rectangle of a known size, as it looks in the picture."""

    name = "Square up"
    icon = "square-up"
    what = "Make the picture true by four corners of something of known size"
    starts = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))

    #: Width and height of the rectangle in millimetres, as given by the person; 0 for not yet.
    width_mm: float = 0.0
    height_mm: float = 0.0

    def guide(self) -> str:
        """What to do next."""
        return _GUIDE

    def labels(self) -> tuple[str, ...]:
        """Which corner each is."""
        return ("1", "2", "3", "4")

    def size_now(self) -> tuple[float, float]:
        """About how wide and high the four corners lie on the view now, in millimetres."""
        if len(self.places) != 4:
            return 0.0, 0.0
        a, b, c, d = self.places
        wide = (math.dist(a, b) + math.dist(d, c)) / 2
        return wide, (math.dist(a, d) + math.dist(b, c)) / 2

    def apply(self) -> None:
        """Square the picture up; its first corner stays where it is."""
        laid, places = self.laid, self.places
        if laid is None or not places:
            return
        view, at = laid.underlay.view_id, places[0]
        self.attempt(
            square_up_underlay, view, self.handles, self.width_mm, self.height_mm, (at.x, at.y)
        )

    def paint_over(self, painter: QPainter, to_screen: QTransform) -> None:
        """Paint the rectangle as it looks in the picture."""
        spots = [on_screen(place, to_screen) for place in self.places]
        if spots:
            paint_line(painter, [*spots, spots[0]], self.colours, dashed=True)
        self.paint_handles(painter, to_screen)
