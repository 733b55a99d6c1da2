"""A small car of few panels, for the widgets that show a drawing."""

from journal.domain.drawing import Drawing, Panel, PanelShape, Side, System, View
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Contour, Curve, Line, Point, Shape

_BOXES = {
    "Front wing": (200, 500, 900, 900, System.OUTER),
    "Front door": (910, 400, 1700, 950, System.OPENINGS),
    "Rear wing": (1710, 450, 2600, 900, System.OUTER),
    "Sill": (910, 960, 1700, 1060, System.STRUCTURE),
    "Door handle": (1560, 600, 1600, 615, System.TRIM),
    "Front wheel": (350, 850, 750, 1250, System.RUNNING_GEAR),
}


def box(left: float, top: float, right: float, bottom: float) -> Shape:
    corners = (Line(Point(right, top)), Line(Point(right, bottom)), Line(Point(left, bottom)))
    return Shape((Contour(Point(left, top), corners),))


def roof() -> Shape:
    """An arch: curved above, so that its middle lies outside it."""
    return Shape(
        (
            Contour(
                Point(900, 390),
                (
                    Curve(Point(1000, 100), Point(1800, 100), Point(2000, 390)),
                    Line(Point(1900, 390)),
                    Curve(Point(1750, 180), Point(1100, 180), Point(1000, 390)),
                ),
            ),
        )
    )


def small_drawing() -> Drawing:
    """Two views; the sill is on both, the handle lies on the door."""
    views = (View(ViewId(1), "Left side", 2800, 1300), View(ViewId(2), "Underside", 2800, 1200))
    panels, shapes = [], []
    for number, (name, (*corners, system)) in enumerate(_BOXES.items(), 1):
        panels.append(Panel(PanelId(number), name, Side.LEFT, system))
        order = 5 if name in {"Door handle", "Front wheel"} else 1
        shapes.append(PanelShape(PanelId(number), ViewId(1), box(*corners), order))
    panels.append(Panel(PanelId(7), "Roof rail", Side.LEFT, System.STRUCTURE))
    shapes.append(PanelShape(PanelId(7), ViewId(1), roof(), 1))
    shapes.append(PanelShape(PanelId(4), ViewId(2), box(900, 100, 1700, 200), 1))
    panels.append(Panel(PanelId(8), "Floor", Side.LEFT, System.FLOOR))
    shapes.append(PanelShape(PanelId(8), ViewId(2), box(900, 210, 1700, 600), 1))
    return Drawing(views, tuple(panels), tuple(shapes))
