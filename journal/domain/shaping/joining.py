"""Joining two neighbours to one panel: the edge they share disappears."""

import math
from collections.abc import Iterator
from dataclasses import replace

from journal.domain.drawing import Drawing
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Contour, Line, Point, Shape, tidy
from journal.domain.shaping.corners import corner_points
from journal.domain.shaping.making import remove_panel
from journal.domain.shaping.placed import check_placed, index_of, on_view, shape_of
from journal.domain.shaping.segments import (
    SAME,
    Segment,
    contour_of,
    nearest,
    point_at,
    rejoined,
    ring,
    split,
    turned,
)

#: How far apart, in millimetres, two edges may lie and be the one edge that neighbours share.
ONE_EDGE = 0.1

#: How much, in square millimetres, neighbours may overlap and still be joined edge by edge.
_OVERLAP = 1.0

#: How far, in millimetres, curves are flattened to where panels are joined that overlap.
FLATTENED = 0.1

#: How far, in millimetres, the edge that two become again may stray from them.
_SEAMLESS = 0.01


def join_panels(drawing: Drawing, keep: PanelId, gone: PanelId) -> Drawing:
    """Make one panel of two neighbours; it is ``keep``, and ``gone`` is no more.

    Where they share an edge, the edge disappears and all other edges stay as they are. On a view
    where they overlap instead, the joined outline is straight edges no more than 0.1 mm from the
    curves. Where only one of them is drawn, its shape is the joined panel's.

    Raises:
        JournalError: they are one and the same panel, or neither share an edge nor overlap on any
            view.
    """
    if keep == gone:
        raise JournalError(f"{drawing.panel(keep).label} can't be joined to itself.")
    labels = drawing.panel(keep).label, drawing.panel(gone).label
    common = [
        v.id for v in drawing.views_of(keep) if v.id in {w.id for w in drawing.views_of(gone)}
    ]
    if not common:
        raise JournalError(f"{labels[0]} and {labels[1]} are on no view together.")
    joined = {view: _joined(drawing, keep, gone, view) for view in common}
    if not any(joined.values()):
        raise JournalError(f"{labels[0]} and {labels[1]} share no edge: give them one edge first.")
    for view, shape in joined.items():
        if shape is None:
            both = shape_of(drawing, keep, view).contours + shape_of(drawing, gone, view).contours
            joined[view] = Shape(both)
    return _with_joined(drawing, keep, gone, {v: s for v, s in joined.items() if s is not None})


def _with_joined(
    drawing: Drawing, keep: PanelId, gone: PanelId, joined: dict[ViewId, Shape]
) -> Drawing:
    shapes = []
    for placed in drawing.shapes:
        if placed.view_id not in joined and placed.panel_id == gone:
            shapes.append(replace(placed, panel_id=keep))
        elif placed.view_id in joined and placed.panel_id == keep:
            shapes.append(replace(placed, shape=tidy(joined[placed.view_id])))
        elif placed.panel_id != gone:
            shapes.append(placed)
    made = remove_panel(replace(drawing, shapes=tuple(shapes)), gone)
    for view in joined:
        check_placed(made, made.shapes[index_of(made, keep, view)])
    return made


def _joined(drawing: Drawing, keep: PanelId, gone: PanelId, view_id: ViewId) -> Shape | None:
    """The one shape of both on a view, None where they neither share an edge nor overlap."""
    from journal.domain.hits import to_polygon

    one, two = shape_of(drawing, keep, view_id), shape_of(drawing, gone, view_id)
    overlap = to_polygon(one).intersection(to_polygon(two)).area
    if overlap > _OVERLAP:
        return _united(one, two)
    others = [
        spot
        for _, placed in on_view(drawing, view_id)
        if placed.panel_id not in (keep, gone)
        for _, spot in corner_points(placed.shape)
    ]
    return _without_shared(one, two, others)


def _united(one: Shape, two: Shape) -> Shape:
    """The area of both, of straight edges."""
    from journal.domain.hits import to_polygon

    area = to_polygon(one, FLATTENED / 2).union(to_polygon(two, FLATTENED / 2))
    area = area.simplify(FLATTENED / 2)
    rings = [
        closed
        for part in getattr(area, "geoms", [area])
        for closed in (part.exterior, *part.interiors)
    ]
    return Shape(tuple(_straight([Point(*xy) for xy in r.coords[:-1]]) for r in rings))


def _straight(points: list[Point]) -> Contour:
    return Contour(points[0], tuple(Line(p) for p in points[1:]))


def _without_shared(one: Shape, two: Shape, others: list[Point]) -> Shape | None:
    """Both outlines without the edges they share, None where there are none.

    Filled even-odd, outlines of areas that don't overlap need no more than that their common
    edges go: what is left closes of itself.
    """
    mine = _noded(one, two)
    theirs = _noded(two, one)
    left, shared = _unmatched(mine, theirs)
    if not shared:
        return None
    ends = [p for s in shared for p in (s[0], s[-1]) if not _among(p, others)]
    loops = list(_loops(left))
    return Shape(tuple(contour_of(_eased(loop, ends)) for loop in loops))


def _among(point: Point, spots: list[Point]) -> bool:
    return any(math.dist(point, spot) <= SAME for spot in spots)


def _noded(shape: Shape, other: Shape) -> list[Segment]:
    """The edges of a shape, split where corners of the other lie on them."""
    corners = [point for _, point in corner_points(other)]
    found: list[Segment] = []
    for contour in shape.contours:
        for segment in ring(contour):
            found.extend(_split_at(segment, corners))
    return found


def _split_at(segment: Segment, corners: list[Point]) -> list[Segment]:
    for corner in corners:
        ends = math.dist(corner, segment[0]), math.dist(corner, segment[-1])
        if min(ends) <= SAME:
            continue
        near = nearest(segment, corner)
        if near.distance <= ONE_EDGE:
            head, tail = split(segment, near.t)
            return _split_at(head, corners) + _split_at(tail, corners)
    return [segment]


def _unmatched(mine: list[Segment], theirs: list[Segment]) -> tuple[list[Segment], list[Segment]]:
    """The edges that only one of two has, and those that both have."""
    rest, shared, left = list(theirs), [], []
    for segment in mine:
        fellow = next((s for s in rest if _one_edge(segment, s)), None)
        if fellow is None:
            left.append(segment)
        else:
            rest.remove(fellow)
            shared.append(segment)
    return left + rest, shared


def _one_edge(a: Segment, b: Segment) -> bool:
    if math.dist(a[0], b[0]) > ONE_EDGE or math.dist(a[-1], b[-1]) > ONE_EDGE:
        b = turned(b)
        if math.dist(a[0], b[0]) > ONE_EDGE or math.dist(a[-1], b[-1]) > ONE_EDGE:
            return False
    return all(nearest(b, point_at(a, t)).distance <= ONE_EDGE for t in (0.25, 0.5, 0.75))


def _loops(left: list[Segment]) -> Iterator[list[Segment]]:
    """Closed outlines of all the edges, each set upon the end of the one before it."""
    rest = list(left)
    while rest:
        loop = [rest.pop(0)]
        while math.dist(loop[-1][-1], loop[0][0]) > ONE_EDGE:
            end = loop[-1][-1]
            at, way = min(
                ((i, way) for i, s in enumerate(rest) for way in (0, -1)),
                key=lambda found: math.dist(end, rest[found[0]][found[1]]),
                default=(-1, 0),
            )
            if at < 0 or math.dist(end, rest[at][way]) > 2 * ONE_EDGE:
                raise JournalError("The two panels can't be joined: their edges don't close.")
            segment = rest.pop(at) if way == 0 else turned(rest.pop(at))
            loop.append((end, *segment[1:]))
        last = loop[-1]
        loop[-1] = (*last[:-1], loop[0][0])
        yield loop


def _eased(loop: list[Segment], ends: list[Point]) -> list[Segment]:
    """The outline without the corners where a shared edge ended and a neighbour edge runs on."""
    made = list(loop)
    at = 0
    while at < len(made) and len(made) > 3:
        following = (at + 1) % len(made)
        corner = made[at][-1]
        whole = rejoined(made[at], made[following], _SEAMLESS) if _among(corner, ends) else None
        if whole is None:
            at += 1
            continue
        made[at] = whole
        made.pop(following)
        at -= following == 0
    return made
