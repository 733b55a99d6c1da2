"""Corners and handles: found by place, moved with all that shares them."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import NamedTuple

from journal.domain.drawing import Drawing, PanelShape
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Contour, Curve, Line, Point, Shape, tidy
from journal.domain.shaping.placed import check_placed, index_of, on_view
from journal.domain.shaping.segments import SAME, Segment, ring


class Part(StrEnum):
    """What of an edge is taken hold of."""

    TO = "to"
    HANDLE1 = "handle1"
    HANDLE2 = "handle2"


class Node(NamedTuple):
    """A corner or a handle of a shape: which outline, which edge of it, and what of the edge.

    The straight edge that closes an outline left open counts as its last edge; the corner it
    arrives at is the outline's start.
    """

    contour: int
    edge: int
    part: Part


@dataclass(frozen=True, slots=True)
class Grip:
    """A corner or a handle taken hold of, with all that moves as one with it.

    Attributes:
        at: where it was.
        held: by where in ``Drawing.shapes`` a shape is, the nodes of it that move.
    """

    view_id: ViewId
    at: Point
    held: tuple[tuple[int, tuple[Node, ...]], ...]


def corners(shape: Shape) -> dict[Node, Point]:
    """Every corner and handle of a shape, with where it is, in the order of the outlines."""
    found: dict[Node, Point] = {}
    for number, contour in enumerate(shape.contours):
        for at, segment in enumerate(ring(contour)):
            if len(segment) == 4:
                found[Node(number, at, Part.HANDLE1)] = segment[1]
                found[Node(number, at, Part.HANDLE2)] = segment[2]
            found[Node(number, at, Part.TO)] = segment[-1]
    return found


def corner_points(shape: Shape) -> Iterator[tuple[Node, Point]]:
    """The corners alone, without the handles."""
    for number, contour in enumerate(shape.contours):
        edges = contour.edges
        for at, edge in enumerate(edges):
            yield Node(number, at, Part.TO), edge.to
        if not edges or edges[-1].to != contour.start:
            yield Node(number, len(edges), Part.TO), contour.start


# Taking hold


def grab_corner(drawing: Drawing, view_id: ViewId, at: Point) -> Grip:
    """Take hold of the corner at a spot, and of every neighbour's corner within 0.05 mm of it.

    Raises:
        JournalError: no panel of the view has a corner there.
    """
    drawing.view(view_id)
    held = []
    for index, placed in on_view(drawing, view_id):
        nodes = tuple(n for n, p in corner_points(placed.shape) if _same(p, at))
        if nodes:
            held.append((index, nodes))
    if not held:
        raise JournalError(f"There is no corner at {at.x:.0f}, {at.y:.0f} mm.")
    return Grip(view_id, at, tuple(held))


def grab_handle(drawing: Drawing, panel_id: PanelId, view_id: ViewId, node: Node) -> Grip:
    """Take hold of a curve's handle, and of the same handle where neighbours share the curve.

    Raises:
        JournalError: the panel's shape has no such handle.
    """
    own = drawing.shapes[index_of(drawing, panel_id, view_id)].shape
    at = corners(own).get(node)
    if at is None or node.part is Part.TO:
        raise JournalError(f"{drawing.panel(panel_id).label} has no such handle.")
    curve = ring(own.contours[node.contour])[node.edge]
    held = []
    for index, placed in on_view(drawing, view_id):
        nodes = tuple(_handles(placed.shape, curve, at))
        if nodes:
            held.append((index, nodes))
    return Grip(view_id, at, tuple(held))


def _handles(shape: Shape, curve: Segment, at: Point) -> Iterator[Node]:
    """The handles at a spot of every edge of a shape that is the curve, drawn either way."""
    for number, contour in enumerate(shape.contours):
        for edge, segment in enumerate(ring(contour)):
            if not same_edge(segment, curve):
                continue
            for part, spot in ((Part.HANDLE1, segment[1]), (Part.HANDLE2, segment[2])):
                if _same(spot, at):
                    yield Node(number, edge, part)


def same_edge(one: Segment, two: Segment) -> bool:
    """Whether two edges are one, drawn either way, to 0.05 mm."""
    if len(one) != len(two):
        return False
    forward = zip(one, two, strict=True)
    backward = zip(one, reversed(two), strict=True)
    return all(_same(a, b) for a, b in forward) or all(_same(a, b) for a, b in backward)


def _same(a: Point, b: Point) -> bool:
    return abs(a.x - b.x) <= SAME and abs(a.y - b.y) <= SAME and math.dist(a, b) <= SAME


# Moving


def dragged_shapes(drawing: Drawing, grip: Grip, to: Point) -> dict[int, PanelShape]:
    """What a drag of a grip to a spot makes of the shapes it holds; nothing is checked.

    A corner takes the handles beside it along. Quick, for every move of the mouse.
    """
    dx, dy = to.x - grip.at.x, to.y - grip.at.y
    changed = {}
    for index, nodes in grip.held:
        placed = drawing.shapes[index]
        shape = tidy(_with_moved(placed.shape, nodes, dx, dy))
        changed[index] = replace(placed, shape=shape)
    return changed


def dragged(drawing: Drawing, grip: Grip, to: Point) -> Drawing:
    """The drawing with a grip moved to a spot.

    Raises:
        JournalError: a shape would cross itself, lose its area or leave the sheet.
    """
    changed = dragged_shapes(drawing, grip, to)
    shapes = tuple(changed.get(i, placed) for i, placed in enumerate(drawing.shapes))
    made = replace(drawing, shapes=shapes)
    for placed in changed.values():
        check_placed(made, placed)
    return made


def move_corner(drawing: Drawing, view_id: ViewId, at: Point, to: Point) -> Drawing:
    """Move the corner at a spot, with every neighbour's corner there, as one.

    Raises:
        JournalError: there is no corner, or a shape would cross itself, lose its area or leave
            the sheet.
    """
    return dragged(drawing, grab_corner(drawing, view_id, at), to)


def move_handle(
    drawing: Drawing, panel_id: PanelId, view_id: ViewId, node: Node, to: Point
) -> Drawing:
    """Move a curve's handle, in every panel that shares the curve.

    Raises:
        JournalError: there is no such handle, or a shape would cross itself or leave the sheet.
    """
    return dragged(drawing, grab_handle(drawing, panel_id, view_id, node), to)


def _with_moved(shape: Shape, nodes: tuple[Node, ...], dx: float, dy: float) -> Shape:
    contours = list(shape.contours)
    for number in {n.contour for n in nodes}:
        contour = contours[number]
        moving = _moving(contour, [n for n in nodes if n.contour == number])
        contours[number] = _contour_with_moved(contour, moving, dx, dy)
    return Shape(tuple(contours))


def _moving(contour: Contour, nodes: list[Node]) -> set[tuple[int, Part]]:
    """The nodes that move, with the handles their corners take along."""
    count = len(ring(contour))
    moving = set()
    for _, edge, part in nodes:
        moving.add((edge, part))
        if part is Part.TO:
            moving.add((edge, Part.HANDLE2))
            moving.add(((edge + 1) % count, Part.HANDLE1))
    return moving


def _contour_with_moved(
    contour: Contour, moving: set[tuple[int, Part]], dx: float, dy: float
) -> Contour:
    def put(point: Point, edge: int, part: Part) -> Point:
        return Point(point.x + dx, point.y + dy) if (edge, part) in moving else point

    edges = tuple(
        Line(put(e.to, i, Part.TO))
        if isinstance(e, Line)
        else Curve(
            put(e.handle1, i, Part.HANDLE1),
            put(e.handle2, i, Part.HANDLE2),
            put(e.to, i, Part.TO),
        )
        for i, e in enumerate(contour.edges)
    )
    last = len(ring(contour)) - 1
    return Contour(put(contour.start, last, Part.TO), edges)
