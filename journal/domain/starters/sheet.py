"""The draughtsman's sheets: one per view, and the panels that gather over all of them."""

from collections.abc import Callable
from dataclasses import dataclass, field

from journal.domain.drawing import Decor, Drawing, Panel, PanelShape, Side, View, Weight
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import (
    Contour,
    Line,
    Point,
    Shape,
    Stroke,
    mirror,
    mirror_down,
    moved_edges,
    tidy,
)
from journal.domain.starters.parts import SYSTEMS

_OTHER = {Side.LEFT: Side.RIGHT, Side.RIGHT: Side.LEFT, Side.CENTRE: Side.CENTRE}


@dataclass(slots=True)
class Draft:
    """A drawing being made."""

    views: list[View] = field(default_factory=list)
    panels: dict[tuple[str, Side], Panel] = field(default_factory=dict)
    shapes: list[PanelShape] = field(default_factory=list)
    decor: list[Decor] = field(default_factory=list)

    def sheet(self, name: str, width: float, height: float) -> "Sheet":
        """A new empty view."""
        view = View(ViewId(len(self.views) + 1), name, round(width, 1), round(height, 1))
        self.views.append(view)
        return Sheet(self, view)

    def panel(self, name: str, side: Side) -> Panel:
        """The panel of that name and side, new on first mention."""
        key = name, side
        if key not in self.panels:
            number = PanelId(len(self.panels) + 1)
            self.panels[key] = Panel(number, name, side, SYSTEMS[name])
        return self.panels[key]

    def finish(self) -> Drawing:
        """The finished drawing."""
        panels, shapes = tuple(self.panels.values()), tuple(self.shapes)
        return Drawing(tuple(self.views), panels, shapes, tuple(self.decor))


@dataclass(slots=True)
class Sheet:
    """One view being drawn; what is put later lies on top."""

    draft: Draft
    view: View

    @property
    def middle_x(self) -> float:
        """The upright centre line."""
        return self.view.width / 2

    @property
    def middle_y(self) -> float:
        """The level centre line."""
        return self.view.height / 2

    def put(self, name: str, side: Side, shape: Shape) -> None:
        """A panel's shape on this view."""
        panel = self.draft.panel(name, side)
        order = sum(1 for s in self.draft.shapes if s.view_id == self.view.id)
        self.draft.shapes.append(PanelShape(panel.id, self.view.id, _clean(shape), order))

    def across(self, name: str, shape: Shape, side: Side = Side.LEFT) -> None:
        """A panel of ``side`` and its fellow, mirrored at the upright centre line."""
        self.put(name, side, shape)
        self.put(name, _OTHER[side], mirror(shape, self.middle_x))

    def over(self, name: str, shape: Shape, side: Side = Side.LEFT) -> None:
        """A panel of ``side`` and its fellow, mirrored at the level centre line."""
        self.put(name, side, shape)
        self.put(name, _OTHER[side], mirror_down(shape, self.middle_y))

    def line(self, stroke: Stroke, weight: Weight = Weight.DETAIL) -> None:
        """A line of the background."""
        self.draft.decor.append(Decor(self.view.id, stroke, weight))

    def line_across(self, stroke: Stroke) -> None:
        """A line and its mirror at the upright centre line."""
        self.line(stroke)
        middle = self.middle_x
        self.line(_moved(stroke, lambda p: Point(2 * middle - p.x, p.y)))

    def line_over(self, stroke: Stroke) -> None:
        """A line and its mirror at the level centre line."""
        self.line(stroke)
        middle = self.middle_y
        self.line(_moved(stroke, lambda p: Point(p.x, 2 * middle - p.y)))

    def outline_of(self, shape: Shape) -> None:
        """The outlines of a shape as lines of the background."""
        for contour in shape.contours:
            self.line(Stroke(contour.start, contour.edges))

    def outline_over(self, shape: Shape) -> None:
        """The outlines of a shape and of its mirror at the level centre line."""
        self.outline_of(shape)
        self.outline_of(mirror_down(shape, self.middle_y))

    def mirrored(self, name: str) -> "Sheet":
        """A new view that shows the other side of the car as this one shows its own."""
        other = self.draft.sheet(name, self.view.width, self.view.height)
        panels = {p.id: p for p in self.draft.panels.values()}
        for placed in [s for s in self.draft.shapes if s.view_id == self.view.id]:
            panel = panels[placed.panel_id]
            other.put(panel.name, _OTHER[panel.side], mirror(placed.shape, self.middle_x))
        middle = self.middle_x
        for decor in [d for d in self.draft.decor if d.view_id == self.view.id]:
            moved = _moved(decor.stroke, lambda p: Point(2 * middle - p.x, p.y))
            other.line(moved, decor.weight)
        return other


def _clean(shape: Shape) -> Shape:
    """The shape as it is written, without straight edges that have no length then."""
    contours = []
    for contour in tidy(shape).contours:
        here, edges = contour.start, []
        for edge in contour.edges:
            if not (isinstance(edge, Line) and edge.to == here):
                edges.append(edge)
            here = edge.to
        contours.append(Contour(contour.start, tuple(edges)))
    return Shape(tuple(contours))


def _moved(stroke: Stroke, move: Callable[[Point], Point]) -> Stroke:
    return Stroke(move(stroke.start), moved_edges(stroke.edges, move))
