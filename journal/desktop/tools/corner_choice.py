"""The corner, handle or edge of a panel that is chosen, and what can be done to it at once."""

import math

from PySide6.QtCore import QObject

from journal.desktop.desk import Desk
from journal.desktop.tools.shaping_tool import REACH, ShapingTool
from journal.domain.ids import PanelId
from journal.domain.shapes import Point, Shape
from journal.domain.shaping import corners, edges
from journal.domain.shaping.corners import Grip, Node, Part
from journal.domain.shaping.placed import index_of
from journal.domain.shaping.segments import Segment, point_at, ring


class CornerChoice(ShapingTool):
    """Knows which corner or handle of the panel marked is chosen, and acts on it."""

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(desk, parent)
        self._owner: PanelId | None = None
        self._chosen: Node | None = None

    # What is chosen

    @property
    def node(self) -> Node | None:
        """The corner or handle chosen, of the panel marked."""
        return self._chosen if self._owner == self.panel_id else None

    def shape(self) -> Shape | None:
        """The outline of the panel marked, as it is recorded."""
        if self.panel_id is None or self.view_id is None:
            return None
        return self.drawing.shapes[index_of(self.drawing, self.panel_id, self.view_id)].shape

    def shown_shape(self) -> Shape | None:
        """The outline of the panel marked, as it would be if the hand let go now."""
        return self.shape()

    def here(self) -> Point | None:
        """The corner or handle chosen, where it is now."""
        shape = self.shown_shape()
        return corners.corners(shape).get(self.node) if shape and self.node else None

    def origin(self) -> Point | None:
        """The corner before the one chosen; a handle's own corner."""
        segment = self.segment()
        if segment is None or self.node is None:
            return None
        return segment[-1] if self.node.part is Part.HANDLE2 else segment[0]

    def segment(self) -> Segment | None:
        """The edge that arrives at the corner chosen, or that the handle chosen bends."""
        shape, node = self.shown_shape(), self.node
        return ring(shape.contours[node.contour])[node.edge] if shape and node else None

    def after(self) -> Segment | None:
        """The edge that leaves the corner chosen."""
        shape, node = self.shown_shape(), self.node
        if shape is None or node is None or node.part is not Part.TO:
            return None
        pieces = ring(shape.contours[node.contour])
        return pieces[(node.edge + 1) % len(pieces)]

    def choose(self, node: Node | None) -> None:
        """Take a corner or handle of the panel marked as the one meant."""
        self._owner, self._chosen = self.panel_id, node
        self.tell()

    def tell(self) -> None:
        """Say what can be done now, and show it."""
        self.here_changed.emit()
        self.repaint()

    # Finding

    def node_at(self, point: Point) -> Node | None:
        """The corner or handle of the panel marked within reach of a spot."""
        shape = self.shape()
        if shape is None:
            return None
        reach = self.canvas.mm(REACH)
        return nearest_node(corners.corners(shape), point, reach)

    def edge_at(self, point: Point) -> edges.Place | None:
        """The spot of an edge of the panel marked within reach of a spot."""
        shape = self.shape()
        place = edges.place_near(shape, point) if shape else None
        return place if place and place.distance <= self.canvas.mm(REACH - 2) else None

    def grip(self, node: Node) -> Grip | None:
        """All that moves with a corner or handle of the panel marked."""
        shape = self.shape()
        if shape is None or self.panel_id is None or self.view_id is None:
            return None
        if node.part is Part.TO:
            at = corners.corners(shape)[node]
            return corners.grab_corner(self.drawing, self.view_id, at)
        return corners.grab_handle(self.drawing, self.panel_id, self.view_id, node)

    # Acting at once

    def insert(self, near: Point) -> None:
        """Put a corner in where the outline comes nearest to a spot, and choose it."""
        panel, view = self.panel_id, self.view_id
        if panel is None or view is None:
            return
        label = f"Put a corner into {self.label_of(panel)}"
        if self.reshape(label, lambda d: edges.insert_corner(d, panel, view, near)):
            shape = self.shape()
            if shape is not None:
                found = {n: p for n, p in corners.corners(shape).items() if n.part is Part.TO}
                self.choose(nearest_node(found, near, float("inf")))

    def insert_after(self) -> None:
        """Put a corner in, in the middle of the edge that arrives at the one chosen."""
        segment = self.segment()
        if segment is not None:
            self.insert(point_at(segment, 0.5))

    def take_out(self) -> None:
        """Take the corner chosen out; a handle chosen makes its edge straight."""
        node, panel, view = self.node, self.panel_id, self.view_id
        if node is None or panel is None or view is None:
            return
        if node.part is not Part.TO:
            self.straighten()
            return
        label = f"Take a corner out of {self.label_of(panel)}"
        self.reshape(label, lambda d: edges.remove_corner(d, panel, view, node))

    def bend(self) -> None:
        """Make the edge that arrives at the corner chosen a curve, whose handles can be moved."""
        node, panel, view = self.node, self.panel_id, self.view_id
        if node is not None and panel is not None and view is not None:
            label = f"Bend an edge of {self.label_of(panel)}"
            self.reshape(label, lambda d: edges.curve_edge(d, panel, view, node.contour, node.edge))

    def straighten(self) -> None:
        """Make the edge that arrives at the corner chosen straight."""
        node, panel, view = self.node, self.panel_id, self.view_id
        if node is not None and panel is not None and view is not None:
            label = f"Straighten an edge of {self.label_of(panel)}"
            self.reshape(
                label, lambda d: edges.straighten_edge(d, panel, view, node.contour, node.edge)
            )


def nearest_node(nodes: dict[Node, Point], point: Point, reach: float) -> Node | None:
    """The corner or handle nearest to a spot, within reach; of two at one spot the corner."""
    found = [
        (math.dist(at, point), node.part is not Part.TO, node)
        for node, at in nodes.items()
        if math.dist(at, point) <= reach
    ]
    return min(found)[2] if found else None
