"""The points by which a thing of the metalwork can be taken hold of, and the thing with others."""

from dataclasses import replace

from journal.domain.anchors import AnchorPoint
from journal.domain.patches import Patch
from journal.domain.readings import Measure
from journal.domain.seams import Seam
from journal.domain.shapes import Contour, Curve, Line, Point, Shape, Stroke

#: What can be selected and moved.
MetalThing = Seam | Patch | AnchorPoint | Measure


def points_of(thing: MetalThing) -> tuple[Point, ...]:
    """The points of a thing: ends of edges, corners of the outer outline, the mounting."""
    if isinstance(thing, Seam):
        return (thing.stroke.start, *(edge.to for edge in thing.stroke.edges))
    if isinstance(thing, Patch):
        return _corners(thing.shape.contours[0])
    if isinstance(thing, AnchorPoint):
        return (Point(thing.x, thing.y),)
    return thing.points


def with_point(thing: MetalThing, place: int, to: Point) -> MetalThing:
    """A thing with one of its points elsewhere; handles of curves go with their points."""
    if isinstance(thing, AnchorPoint):
        return replace(thing, x=to.x, y=to.y)
    if isinstance(thing, Measure):
        points = (*thing.points[:place], to, *thing.points[place + 1 :])
        return replace(thing, points=points)
    if isinstance(thing, Seam):
        start, edges = _moved(thing.stroke.start, thing.stroke.edges, place, to)
        return replace(thing, stroke=Stroke(start, edges))
    outer, *holes = thing.shape.contours
    start, edges = _moved(outer.start, outer.edges, place, to)
    if place == 0 and len(_corners(outer)) < len(outer.edges) + 1:
        start, edges = _moved(start, edges, len(edges), to)
    return replace(thing, shape=Shape((Contour(start, edges), *holes)))


def _corners(outline: Contour) -> tuple[Point, ...]:
    points = (outline.start, *(edge.to for edge in outline.edges))
    return points[:-1] if points[-1] == points[0] else points


def _moved(
    start: Point, edges: tuple[Line | Curve, ...], place: int, to: Point
) -> tuple[Point, tuple[Line | Curve, ...]]:
    """A line with its point number ``place`` elsewhere; 0 is the start."""
    old = start if place == 0 else edges[place - 1].to
    by = Point(to.x - old.x, to.y - old.y)
    made = list(edges)
    if place > 0:
        made[place - 1] = _ending(made[place - 1], to, by)
    if place < len(made):
        made[place] = _leaving(made[place], by)
    return (to if place == 0 else start), tuple(made)


def _ending(edge: Line | Curve, to: Point, by: Point) -> Line | Curve:
    if isinstance(edge, Line):
        return Line(to)
    return Curve(edge.handle1, _plus(edge.handle2, by), to)


def _leaving(edge: Line | Curve, by: Point) -> Line | Curve:
    return edge if isinstance(edge, Line) else replace(edge, handle1=_plus(edge.handle1, by))


def _plus(point: Point, by: Point) -> Point:
    return Point(point.x + by.x, point.y + by.y)
