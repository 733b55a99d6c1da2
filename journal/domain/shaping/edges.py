"""Edges: corners put in and taken out, edges bent and straightened, with all that shares them."""

import math
from collections.abc import Callable
from typing import NamedTuple

from journal.domain.drawing import Drawing
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Contour, Point, Shape
from journal.domain.shaping.corners import Node, Part, same_edge
from journal.domain.shaping.placed import index_of, on_view, shape_of, with_checked
from journal.domain.shaping.segments import (
    SAME,
    Segment,
    closes_itself,
    contour_of,
    direction,
    nearest,
    rejoined,
    ring,
    rounded_point,
    split,
)

#: Two edges run alike where their directions differ by less than this sine.
_ALIKE = 0.02


class Place(NamedTuple):
    """A spot on the outline of a shape: which outline, which edge, how far along, how far away."""

    contour: int
    edge: int
    t: float
    point: Point
    distance: float


def place_near(shape: Shape, point: Point) -> Place:
    """The spot of a shape's outlines nearest to a point."""
    places = [
        Place(number, edge, near.t, near.point, near.distance)
        for number, contour in enumerate(shape.contours)
        for edge, segment in enumerate(ring(contour))
        for near in [nearest(segment, point)]
    ]
    return min(places, key=lambda place: place.distance)


def insert_corner(drawing: Drawing, panel_id: PanelId, view_id: ViewId, near: Point) -> Drawing:
    """Put a corner on a panel's outline where it comes nearest to a spot.

    The outline stays as it is, to the rounding of a stored number. Every neighbour whose edge
    runs along there gets the same corner.

    Raises:
        JournalError: the panel isn't on the view, or a corner is there already.
    """
    index = index_of(drawing, panel_id, view_id)
    shape = drawing.shapes[index].shape
    place = place_near(shape, near)
    spot = rounded_point(place.point)
    segment = ring(shape.contours[place.contour])[place.edge]
    if min(math.dist(spot, segment[0]), math.dist(spot, segment[-1])) <= SAME:
        raise JournalError(
            f"{drawing.panel(panel_id).label} has a corner at {spot.x:.0f}, {spot.y:.0f} mm "
            "already."
        )
    along = direction(segment, place.t)
    changed = {index: with_corner(shape, place, spot)}
    changed.update(neighbours_with_corner(drawing, view_id, spot, along, but_for={index}))
    return with_checked(drawing, changed)


def neighbours_with_corner(
    drawing: Drawing,
    view_id: ViewId,
    spot: Point,
    along: tuple[float, float],
    but_for: set[int],
) -> dict[int, Shape]:
    """The shapes that get a corner at a spot since one of their edges runs along there."""
    changed = {}
    for index, placed in on_view(drawing, view_id):
        if index in but_for:
            continue
        place = place_near(placed.shape, spot)
        if place.distance > SAME:
            continue
        segment = ring(placed.shape.contours[place.contour])[place.edge]
        if min(math.dist(spot, segment[0]), math.dist(spot, segment[-1])) <= SAME:
            continue
        own = direction(segment, place.t)
        if abs(own[0] * along[1] - own[1] * along[0]) < _ALIKE:
            changed[index] = with_corner(placed.shape, place, spot)
    return changed


def with_corner(shape: Shape, place: Place, spot: Point) -> Shape:
    """The shape with the edge at a place split there, its new corner put at ``spot``."""

    def change(pieces: list[Segment]) -> list[Segment]:
        head, tail = split(pieces[place.edge], place.t)
        both = [(*head[:-1], spot), (spot, *tail[1:])]
        return pieces[: place.edge] + both + pieces[place.edge + 1 :]

    return with_ring(shape, place.contour, change)


def with_ring(shape: Shape, number: int, change: Callable[[list[Segment]], list[Segment]]) -> Shape:
    """The shape with the edges of one outline changed."""
    contour = shape.contours[number]
    made = contour_of(change(ring(contour)), open_end=not closes_itself(contour))
    return Shape((*shape.contours[:number], made, *shape.contours[number + 1 :]))


def remove_corner(drawing: Drawing, panel_id: PanelId, view_id: ViewId, node: Node) -> Drawing:
    """Take a corner out: its two edges become one, in every neighbour that shares them both.

    Edges that were one before a corner was put in become that edge again.

    Raises:
        JournalError: there is no such corner, the outline has no more than three, or what is left
            would cross itself.
    """
    shape = shape_of(drawing, panel_id, view_id)
    label = drawing.panel(panel_id).label
    if node.part is not Part.TO or not _has(shape, node.contour, node.edge):
        raise JournalError(f"{label} has no such corner.")
    pieces = ring(shape.contours[node.contour])
    if len(pieces) <= 3:
        raise JournalError(f"{label} needs the corner: an outline has at least three.")
    first, second = pieces[node.edge], pieces[(node.edge + 1) % len(pieces)]
    changed = {}
    for index, placed in on_view(drawing, view_id):
        found = _pair(placed.shape, first, second)
        if found is not None:
            changed[index] = _without_corner(placed.shape, *found)
    return with_checked(drawing, changed)


def _has(shape: Shape, contour: int, edge: int) -> bool:
    return 0 <= contour < len(shape.contours) and 0 <= edge < len(ring(shape.contours[contour]))


def _pair(shape: Shape, first: Segment, second: Segment) -> tuple[int, int] | None:
    """Where in a shape two edges follow each other, either way round: outline and first edge."""
    for number, contour in enumerate(shape.contours):
        pieces = ring(contour)
        if len(pieces) <= 3:
            continue
        for at, segment in enumerate(pieces):
            after = pieces[(at + 1) % len(pieces)]
            if same_edge(segment, first) and same_edge(after, second):
                return number, at
            if same_edge(segment, second) and same_edge(after, first):
                return number, at
    return None


def _without_corner(shape: Shape, number: int, at: int) -> Shape:
    def change(pieces: list[Segment]) -> list[Segment]:
        second = (at + 1) % len(pieces)
        whole = as_one(pieces[at], pieces[second])
        if second == 0:
            return [*pieces[1:at], whole]
        return [*pieces[:at], whole, *pieces[second + 1 :]]

    return with_ring(shape, number, change)


def as_one(first: Segment, second: Segment) -> Segment:
    """One edge in place of two: the one they were split from, else a fair one."""
    whole = rejoined(first, second)
    if whole is not None:
        return whole
    if len(first) == len(second) == 2:
        return first[0], second[1]
    return first[0], _longer(first, second), _longer(second[::-1], first[::-1]), second[-1]


def _longer(near: Segment, far: Segment) -> Point:
    """The handle at the start of ``near``, reaching over the length of both."""
    handle = near[1] if len(near) == 4 else _third(near[0], near[1])
    own = math.dist(near[0], near[-1])
    share = (own + math.dist(far[0], far[-1])) / own if own else 1.0
    start = near[0]
    return Point(start.x + (handle.x - start.x) * share, start.y + (handle.y - start.y) * share)


def _third(a: Point, b: Point) -> Point:
    return Point(a.x + (b.x - a.x) / 3, a.y + (b.y - a.y) / 3)


# Bending and straightening


def straighten_edge(
    drawing: Drawing, panel_id: PanelId, view_id: ViewId, contour: int, edge: int
) -> Drawing:
    """Make an edge straight, in every panel that shares it.

    Raises:
        JournalError: there is no such edge, it is straight already, or a shape would cross itself
            or lose its area.
    """
    segment = _edge(drawing, panel_id, view_id, contour, edge)
    if len(segment) == 2:
        raise JournalError(f"This edge of {drawing.panel(panel_id).label} is straight already.")
    return _with_edge(drawing, view_id, segment, (segment[0], segment[-1]))


def curve_edge(
    drawing: Drawing,
    panel_id: PanelId,
    view_id: ViewId,
    contour: int,
    edge: int,
    through: Point | None = None,
) -> Drawing:
    """Make an edge a curve, in every panel that shares it.

    Its handles lie at the thirds of the straight edge; with ``through`` its middle is that spot.

    Raises:
        JournalError: there is no such edge, or a shape would cross itself or leave the sheet.
    """
    segment = _edge(drawing, panel_id, view_id, contour, edge)
    start, end = segment[0], segment[-1]
    dx = dy = 0.0
    if through is not None:
        # The middle of a cubic moves by three quarters of what both handles move by.
        dx = (through.x - (start.x + end.x) / 2) * 4 / 3
        dy = (through.y - (start.y + end.y) / 2) * 4 / 3
    one, two = _third(start, end), _third(end, start)
    handles = (Point(one.x + dx, one.y + dy), Point(two.x + dx, two.y + dy))
    return _with_edge(drawing, view_id, segment, (start, *handles, end))


def _edge(drawing: Drawing, panel_id: PanelId, view_id: ViewId, contour: int, edge: int) -> Segment:
    shape = shape_of(drawing, panel_id, view_id)
    if not _has(shape, contour, edge):
        raise JournalError(f"{drawing.panel(panel_id).label} has no such edge.")
    return ring(shape.contours[contour])[edge]


def _with_edge(drawing: Drawing, view_id: ViewId, old: Segment, new: Segment) -> Drawing:
    """The drawing with one edge replaced wherever it is, either way round."""
    changed = {}
    for index, placed in on_view(drawing, view_id):
        shape = Shape(tuple(_replaced(c, old, new) for c in placed.shape.contours))
        if shape != placed.shape:
            changed[index] = shape
    return with_checked(drawing, changed)


def _replaced(contour: Contour, old: Segment, new: Segment) -> Contour:
    pieces = ring(contour)
    made = []
    for segment in pieces:
        if not same_edge(segment, old):
            made.append(segment)
            continue
        forward = math.dist(segment[0], old[0]) <= SAME
        inner = new[1:-1] if forward else new[-2:0:-1]
        made.append((segment[0], *inner, segment[-1]))
    if made == pieces:
        return contour
    return contour_of(made, open_end=not closes_itself(contour))
