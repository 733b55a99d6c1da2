"""Cutting a panel in two along a line; curves stay curves, split exactly where the line crosses."""

import math
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import NamedTuple

from journal.domain.drawing import Drawing, PanelShape
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Contour, Point, Shape, flatten, tidy
from journal.domain.shaping.edges import neighbours_with_corner, place_near
from journal.domain.shaping.making import with_new_panel
from journal.domain.shaping.placed import LEAST_AREA, check_placed, index_of, with_shapes
from journal.domain.shaping.segments import (
    SAME,
    Segment,
    between,
    contour_of,
    crossings,
    direction,
    ring,
    rounded_point,
    rounded_segment,
    split,
    turned_all,
)

#: An end of the line that is this near to the outline, in millimetres, lies on it.
TOUCH = 0.5


class _Crossing(NamedTuple):
    """How far along the line (a leg's number and a share of it), and where on the outline."""

    along: float
    contour: int
    edge: int
    t: float
    point: Point


def cut_panel(
    drawing: Drawing, panel_id: PanelId, view_id: ViewId, line: Sequence[Point], name: str
) -> Drawing:
    """Cut a panel's shape on a view in two along a line of two or more points.

    The larger part stays the panel; the other one becomes a new panel of that name (the last of
    ``Drawing.panels``) with the same side and system, just above it in the stack. On other views
    the panel stays whole. Neighbours get corners where the line meets their common edge.

    Raises:
        JournalError: the line crosses itself, doesn't cross the panel, crosses its outline more
            than twice or runs along it; or the name is empty or taken.
    """
    index = index_of(drawing, panel_id, view_id)
    placed, panel = drawing.shapes[index], drawing.panel(panel_id)
    points = _checked_line(line)
    first, last = _both_crossings(placed.shape, points, panel.label)
    cut = [first.point, *_inner(points, first, last), last.point]
    legs = [rounded_segment(leg) for leg in pairwise(cut) if math.dist(*leg) > SAME]
    larger, smaller = _halves(placed.shape, first, last, legs, panel.label)
    made, new = with_new_panel(drawing, name, panel.side, panel.system)
    made = _with_halves(made, index, larger, PanelShape(new.id, view_id, smaller, placed.order + 1))
    return _with_corners(made, placed, (first, last), new.id)


def _checked_line(line: Sequence[Point]) -> list[Point]:
    import shapely

    if not all(math.isfinite(v) for p in line for v in p):
        raise JournalError("The cut line has a point at no place: its number is too large.")
    points = [p for i, p in enumerate(line) if i == 0 or math.dist(p, line[i - 1]) > SAME]
    if len(points) < 2:
        raise JournalError("A cut needs a line of at least two different points.")
    if not shapely.LineString(points).is_simple:
        raise JournalError("The cut line crosses or covers itself.")
    return points


def _both_crossings(shape: Shape, points: list[Point], label: str) -> tuple[_Crossing, _Crossing]:
    found = _apart(_touching(shape, points) + _crossed(shape, points))
    if len(found) > 2:
        raise JournalError(
            f"The line crosses the outline of {label} at {len(found)} places; a cut has two, "
            "one in and one out."
        )
    if len(found) < 2:
        raise JournalError(f"The line doesn't cross {label} from edge to edge.")
    first, last = sorted(found)
    if first.contour != last.contour:
        raise JournalError(
            f"The line runs from one outline of {label} to another, which cuts nothing off."
        )
    return first, last


def _crossed(shape: Shape, points: list[Point]) -> list[_Crossing]:
    return [
        _Crossing(leg + s, number, edge, t, _rounded_on(segment, t))
        for leg, (a, b) in enumerate(pairwise(points))
        for number, contour in enumerate(shape.contours)
        for edge, segment in enumerate(ring(contour))
        for t, s in crossings(segment, a, b)
    ]


def _touching(shape: Shape, points: list[Point]) -> list[_Crossing]:
    """The ends of the line that lie on the outline, near enough."""
    found = []
    for along, end in ((0.0, points[0]), (float(len(points) - 1), points[-1])):
        place = place_near(shape, end)
        if place.distance <= TOUCH:
            spot = rounded_point(place.point)
            found.append(_Crossing(along, place.contour, place.edge, place.t, spot))
    return found


def _rounded_on(segment: Segment, t: float) -> Point:
    return rounded_point(split(segment, t)[0][-1])


def _apart(found: list[_Crossing]) -> list[_Crossing]:
    """Each crossing once: what lies within the touching distance of an earlier one is that one."""
    kept: list[_Crossing] = []
    for one in found:
        if all(math.dist(one.point, other.point) > TOUCH for other in kept):
            kept.append(one)
    return kept


def _inner(points: list[Point], first: _Crossing, last: _Crossing) -> list[Point]:
    """The corners of the line between its two crossings."""
    return [p for i, p in enumerate(points) if first.along < i < last.along]


def _halves(
    shape: Shape, first: _Crossing, last: _Crossing, cut: list[Segment], label: str
) -> tuple[Shape, Shape]:
    """The larger and the smaller part."""
    import shapely

    from journal.domain.hits import to_polygon

    pieces = ring(shape.contours[first.contour])
    start, end = _on_ring(pieces, first), _on_ring(pieces, last)
    if not cut or start == end:
        raise JournalError(f"The line cuts nothing off {label}: it runs along its edge.")
    one = _closed(_chain(pieces, start, end), turned_all(cut))
    two = _closed(_chain(pieces, end, start), cut)
    middle = max(cut, key=lambda leg: math.dist(*leg))
    spot = shapely.Point([(a + b) / 2 for a, b in zip(*middle, strict=True)])
    if not to_polygon(shape).intersects(spot):
        raise JournalError(f"The line runs outside of {label}.")
    areas = [to_polygon(tidy(Shape((half,)))) for half in (one, two)]
    if min(area.area for area in areas) < LEAST_AREA:
        raise JournalError(f"The line cuts nothing off {label}: it runs along its edge.")
    rest = [c for i, c in enumerate(shape.contours) if i != first.contour]
    halves = [[one], [two]]
    for contour in rest:
        inside = shapely.Point(flatten(Shape((contour,)))[0][0])
        halves[areas[0].distance(inside) > areas[1].distance(inside)].append(contour)
    shapes = [tidy(Shape(tuple(half))) for half in halves]
    shapes.sort(key=lambda part: -float(to_polygon(part).area))
    return shapes[0], shapes[1]


def _on_ring(pieces: list[Segment], crossing: _Crossing) -> tuple[int, float]:
    """The edge and how far along; a crossing at a corner begins the edge after it."""
    segment = pieces[crossing.edge]
    if math.dist(crossing.point, segment[0]) <= SAME:
        return crossing.edge, 0.0
    if math.dist(crossing.point, segment[-1]) <= SAME:
        return (crossing.edge + 1) % len(pieces), 0.0
    return crossing.edge, crossing.t


def _chain(
    pieces: list[Segment], start: tuple[int, float], end: tuple[int, float]
) -> list[Segment]:
    """The edges from one spot of a ring onwards to another."""
    (first, t0), (last, t1) = start, end
    if first == last and t0 < t1:
        return [between(pieces[first], t0, t1)]
    found = [split(pieces[first], t0)[1] if t0 else pieces[first]]
    at = (first + 1) % len(pieces)
    while at != last:
        found.append(pieces[at])
        at = (at + 1) % len(pieces)
    if t1:
        found.append(split(pieces[last], t1)[0])
    return found


def _closed(chain: list[Segment], cut: list[Segment]) -> Contour:
    """The outline of a chain of edges that the cut closes, corner upon corner."""
    first, last = chain[0], chain[-1]
    if len(chain) == 1:
        both = (cut[-1][-1], *first[1:-1], cut[0][0])
        return contour_of([both, *cut])
    ends = [(cut[-1][-1], *first[1:]), *chain[1:-1], (*last[:-1], cut[0][0])]
    return contour_of([*ends, *cut])


def _with_halves(drawing: Drawing, index: int, larger: Shape, new: PanelShape) -> Drawing:
    """The drawing with the larger part in place of the whole and the new shape just above it."""
    lifted = tuple(
        replace(s, order=s.order + 1) if s.view_id == new.view_id and s.order >= new.order else s
        for s in drawing.shapes
    )
    made = with_shapes(replace(drawing, shapes=(*lifted, new)), {index: larger})
    for placed in (made.shapes[index], made.shapes[-1]):
        check_placed(made, placed)
    return made


def _with_corners(
    drawing: Drawing, whole: PanelShape, ends: tuple[_Crossing, _Crossing], new: PanelId
) -> Drawing:
    """The drawing with the neighbours' corners where the cut meets an edge they share."""
    own = {
        i
        for i, s in enumerate(drawing.shapes)
        if s.view_id == whole.view_id and s.panel_id in (whole.panel_id, new)
    }
    for end in ends:
        along = direction(ring(whole.shape.contours[end.contour])[end.edge], end.t)
        changed = neighbours_with_corner(drawing, whole.view_id, end.point, along, own)
        drawing = with_shapes(drawing, changed)
    return drawing
