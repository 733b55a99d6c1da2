"""Which panel lies under a spot of the drawing, and which one an arrow key leads to.

Shapely does the geometry; it is imported on first use, since a window can show itself without.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from journal.domain.drawing import Drawing, PanelShape
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Point, Shape, flatten
from journal.domain.travel import Box, Direction, Piece, arrows

if TYPE_CHECKING:
    from shapely import STRtree
    from shapely.geometry.base import BaseGeometry

#: How far, in millimetres, a centre may lie from the roomiest spot of its panel.
_ROOMY = 2.0


def to_polygon(shape: Shape, tolerance: float = 0.5) -> BaseGeometry:
    """The area of a shape, even-odd, its curves flattened to ``tolerance`` millimetres."""
    import shapely

    rings = [ring for ring in flatten(shape, tolerance) if len(ring) > 2]
    area: BaseGeometry = shapely.Polygon()
    for ring in rings:
        area = area.symmetric_difference(_sound(shapely.Polygon(ring)))
    return area


def _sound(area: BaseGeometry) -> BaseGeometry:
    import shapely

    return area if area.is_valid else shapely.make_valid(area)


@dataclass(slots=True)
class _ViewMap:
    """One view's shapes, lowest first, their areas, and a tree over them."""

    shapes: tuple[PanelShape, ...]
    areas: list[BaseGeometry]
    tree: STRtree


class PanelMap:
    """The panels of a drawing, ready to be asked about spots.

    Each view is prepared when it is first asked about.
    """

    def __init__(self, drawing: Drawing) -> None:
        self._drawing = drawing
        self._maps: dict[ViewId, _ViewMap] = {}
        self._centres: dict[tuple[ViewId, PanelId], Point] = {}
        self._arrows: dict[ViewId, dict[tuple[PanelId, Direction], PanelId]] = {}

    def prepare(self) -> None:
        """Work out now what would be worked out on first use, so that no answer keeps waiting."""
        for view in self._drawing.views:
            for panel_id in self.panels_on(view.id):
                self.centre(view.id, panel_id)

    def panel_at(self, view_id: ViewId, x: float, y: float) -> PanelId | None:
        """The topmost panel at a spot of a view, ``None`` on empty paper."""
        import shapely

        view = self._map(view_id)
        boxes = view.tree.query(shapely.Point(x, y))
        for index in sorted(boxes, reverse=True):
            if shapely.intersects_xy(view.areas[index], x, y):
                found: PanelShape = view.shapes[index]
                return found.panel_id
        return None

    def panels_near(
        self, view_id: ViewId, x: float, y: float, distance: float
    ) -> tuple[PanelId, ...]:
        """The panels within ``distance`` millimetres of a spot, nearest first, each once.

        Of panels equally near (those the spot lies on) the topmost comes first.
        """
        import shapely

        view = self._map(view_id)
        spot = shapely.Point(x, y)
        found = view.tree.query(spot, predicate="dwithin", distance=distance)
        ranked = sorted((view.areas[i].distance(spot), -i) for i in found)
        return tuple(dict.fromkeys(view.shapes[-i].panel_id for _, i in ranked))

    def centre(self, view_id: ViewId, panel_id: PanelId) -> Point:
        """The roomiest spot of what can be seen of a panel on a view.

        A pin dropped on the panel by keyboard lands here. Where the panel lies hidden under
        others, it is the roomiest spot of its whole shape.

        Raises:
            JournalError: the panel has no shape on that view.
        """
        key = view_id, panel_id
        if key not in self._centres:
            self._centres[key] = self._roomiest(view_id, panel_id)
        return self._centres[key]

    def next_panel(
        self, view_id: ViewId, panel_id: PanelId, direction: Direction | str
    ) -> PanelId | None:
        """The panel an arrow key leads to from ``panel_id``, ``None`` at the edge of the car.

        Raises:
            JournalError: the panel has no shape on that view.
        """
        self.centre(view_id, panel_id)
        if view_id not in self._arrows:
            pieces = {
                other: Piece(self.centre(view_id, other), self._box(view_id, other))
                for other in self.panels_on(view_id)
            }
            self._arrows[view_id] = arrows(pieces)
        return self._arrows[view_id].get((panel_id, Direction(direction)))

    def panels_on(self, view_id: ViewId) -> tuple[PanelId, ...]:
        """The panels with a shape on a view, each once, lowest first."""
        return tuple(dict.fromkeys(s.panel_id for s in self._map(view_id).shapes))

    def _box(self, view_id: ViewId, panel_id: PanelId) -> Box:
        """What a panel spans on a view."""
        import shapely

        view = self._map(view_id)
        own = [a for a, s in zip(view.areas, view.shapes, strict=True) if s.panel_id == panel_id]
        left, top, right, bottom = map(float, shapely.total_bounds(own))
        return left, top, right, bottom

    def _map(self, view_id: ViewId) -> _ViewMap:
        import shapely

        if view_id not in self._maps:
            shapes = self._drawing.shapes_on(view_id)
            areas = [to_polygon(s.shape) for s in shapes]
            shapely.prepare(areas)
            self._maps[view_id] = _ViewMap(shapes, areas, shapely.STRtree(areas))
        return self._maps[view_id]

    def _roomiest(self, view_id: ViewId, panel_id: PanelId) -> Point:
        import shapely

        view = self._map(view_id)
        own = [i for i, s in enumerate(view.shapes) if s.panel_id == panel_id]
        if not own:
            panel = self._drawing.panel(panel_id).label
            raise JournalError(
                f"{panel} isn't drawn on the view {self._drawing.view(view_id).name}."
            )
        whole = shapely.union_all([view.areas[i] for i in own])
        seen = shapely.union_all([self._seen(view, i) for i in own])
        return _middle(whole if seen.area < 1 else seen)

    def _seen(self, view: _ViewMap, index: int) -> BaseGeometry:
        """What no shape above covers of one shape."""
        import shapely

        area = view.areas[index]
        panel = view.shapes[index].panel_id
        above = [
            view.areas[i]
            for i in view.tree.query(area)
            if i > index and view.shapes[i].panel_id != panel
        ]
        return area.difference(shapely.union_all(above)) if above else area


def _middle(area: BaseGeometry) -> Point:
    """The centre of the largest circle inside an area."""
    import shapely

    radius = shapely.maximum_inscribed_circle(area, tolerance=_ROOMY)
    x, y = radius.coords[0]
    if not shapely.intersects_xy(area, x, y):
        inside = area.representative_point()
        x, y = inside.x, inside.y
    return Point(x, y)
