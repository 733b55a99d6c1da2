"""Lines a draughtsman uses: fair curves through points, pieces of them, eased corners."""

import math
from collections.abc import Sequence
from itertools import pairwise

from journal.domain.shapes import (
    Curve,
    Line,
    Point,
    Stroke,
    flatten_edges,
    on_curve,
)

#: One edge with its own start: two points for a straight one, four for a curve.
Segment = tuple[Point, ...]


def straight(*points: tuple[float, float]) -> Stroke:
    """Straight edges through the points."""
    first, *rest = (Point(x, y) for x, y in points)
    return Stroke(first, tuple(Line(p) for p in rest))


def spline(*points: tuple[float, float]) -> Stroke:
    """A fair curve through the points: slope and curvature run on through each of them."""
    spots = [Point(x, y) for x, y in points]
    if len(spots) < 3:
        return straight(*spots)
    spans = [math.dist(a, b) for a, b in pairwise(spots)]
    slopes_x = _slopes([p.x for p in spots], spans)
    slopes_y = _slopes([p.y for p in spots], spans)
    edges = []
    for i, span in enumerate(spans):
        a, b = spots[i], spots[i + 1]
        third = span / 3
        edges.append(
            Curve(
                Point(a.x + slopes_x[i] * third, a.y + slopes_y[i] * third),
                Point(b.x - slopes_x[i + 1] * third, b.y - slopes_y[i + 1] * third),
                b,
            )
        )
    return Stroke(spots[0], tuple(edges))


def _slopes(values: list[float], spans: list[float]) -> list[float]:
    """First derivatives of the natural cubic spline through ``values``, ``spans`` apart."""
    last = len(values) - 1
    lower, diagonal, upper, right = [0.0], [2.0], [1.0], [3 * (values[1] - values[0]) / spans[0]]
    for i in range(1, last):
        lower.append(1 / spans[i - 1])
        diagonal.append(2 / spans[i - 1] + 2 / spans[i])
        upper.append(1 / spans[i])
        right.append(
            3 * (values[i] - values[i - 1]) / spans[i - 1] ** 2
            + 3 * (values[i + 1] - values[i]) / spans[i] ** 2
        )
    lower.append(1.0)
    diagonal.append(2.0)
    right.append(3 * (values[last] - values[last - 1]) / spans[last - 1])
    for i in range(1, last + 1):
        share = lower[i] / diagonal[i - 1]
        diagonal[i] -= share * upper[i - 1]
        right[i] -= share * right[i - 1]
    slopes = [0.0] * (last + 1)
    slopes[last] = right[last] / diagonal[last]
    for i in range(last - 1, -1, -1):
        slopes[i] = (right[i] - upper[i] * slopes[i + 1]) / diagonal[i]
    return slopes


def arc(x: float, y: float, radius: float, start: float, end: float) -> Stroke:
    """A piece of a circle from one angle to another, in degrees; 0 is right, 90 is down."""
    count = max(1, math.ceil(abs(end - start) / 90 - 1e-9))
    step = math.radians((end - start) / count)
    handle = radius * 4 / 3 * math.tan(step / 4)
    angle = math.radians(start)
    here = Point(x + radius * math.cos(angle), y + radius * math.sin(angle))
    edges, begin = [], here
    for _ in range(count):
        after = angle + step
        there = Point(x + radius * math.cos(after), y + radius * math.sin(after))
        edges.append(
            Curve(
                Point(here.x - handle * math.sin(angle), here.y + handle * math.cos(angle)),
                Point(there.x + handle * math.sin(after), there.y - handle * math.cos(after)),
                there,
            )
        )
        here, angle = there, after
    return Stroke(begin, tuple(edges))


# Taking lines apart


def segments(stroke: Stroke) -> list[Segment]:
    """The edges, each with its own start."""
    found: list[Segment] = []
    here = stroke.start
    for edge in stroke.edges:
        if isinstance(edge, Line):
            found.append((here, edge.to))
        else:
            found.append((here, edge.handle1, edge.handle2, edge.to))
        here = edge.to
    return found


def joined(pieces: Sequence[Segment]) -> Stroke:
    """One line of segments that follow each other."""
    edges = tuple(Line(s[1]) if len(s) == 2 else Curve(s[1], s[2], s[3]) for s in pieces)
    return Stroke(pieces[0][0], edges)


def reverse(stroke: Stroke) -> Stroke:
    """The same line drawn from its other end."""
    return joined([tuple(reversed(s)) for s in reversed(segments(stroke))])


def shifted(stroke: Stroke, dx: float, dy: float) -> Stroke:
    """The line moved by (dx, dy) millimetres."""
    return joined([tuple(Point(p.x + dx, p.y + dy) for p in s) for s in segments(stroke)])


def mirrored(stroke: Stroke, axis_x: float) -> Stroke:
    """The line mirrored at the upright line x = ``axis_x``."""
    return joined([tuple(Point(2 * axis_x - q.x, q.y) for q in s) for s in segments(stroke)])


def _at(segment: Segment, t: float) -> Point:
    if len(segment) == 2:
        (ax, ay), (bx, by) = segment
        return Point(ax + (bx - ax) * t, ay + (by - ay) * t)
    return on_curve(segment[0], Curve(segment[1], segment[2], segment[3]), t)


def _cut(segment: Segment, t0: float, t1: float) -> Segment:
    """The piece of a segment between two of its ``t``."""
    head = _before(segment, t1)
    if t0 <= 0:
        return head
    return tuple(reversed(_before(tuple(reversed(head)), 1 - t0 / t1)))


def _before(segment: Segment, t: float) -> Segment:
    """The piece up to ``t``, by de Casteljau."""
    row, kept = list(segment), [segment[0]]
    while len(row) > 1:
        row = [Point(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t) for a, b in pairwise(row)]
        kept.append(row[0])
    return tuple(kept)


#: Which segment of a line, and the ``t`` on it.
Place = tuple[int, float]


def find(pieces: list[Segment], value: float, axis: int) -> Place:
    """Where the line first has ``value`` as its x (axis 0) or y (axis 1); else the nearer end."""
    for i, segment in enumerate(pieces):
        low, high = segment[0][axis], segment[-1][axis]
        if min(low, high) <= value <= max(low, high) and low != high:
            t0, t1 = 0.0, 1.0
            for _ in range(50):
                middle = (t0 + t1) / 2
                if (_at(segment, middle)[axis] < value) == (low < high):
                    t0 = middle
                else:
                    t1 = middle
            return i, (t0 + t1) / 2
    first, last = pieces[0][0][axis], pieces[-1][-1][axis]
    return (0, 0.0) if abs(first - value) < abs(last - value) else (len(pieces) - 1, 1.0)


def piece(pieces: list[Segment], begin: Place, end: Place) -> Stroke:
    """What lies between two places of a line, from the first to the second."""
    if begin > end:
        return reverse(piece(pieces, end, begin))
    kept = []
    for i in range(begin[0], end[0] + 1):
        t0 = begin[1] if i == begin[0] else 0.0
        t1 = end[1] if i == end[0] else 1.0
        if t1 - t0 > 1e-9:
            kept.append(_cut(pieces[i], t0, t1))
    if not kept:
        spot = _at(pieces[begin[0]], begin[1])
        kept = [(spot, spot)]
    return joined(kept)


def at_x(stroke: Stroke, x: float) -> Point:
    """The spot of a line at ``x``; its nearer end where it doesn't reach so far."""
    pieces = segments(stroke)
    i, t = find(pieces, x, 0)
    return _at(pieces[i], t)


def at_y(stroke: Stroke, y: float) -> Point:
    """The spot of a line at ``y``; its nearer end where it doesn't reach so far."""
    pieces = segments(stroke)
    i, t = find(pieces, y, 1)
    return _at(pieces[i], t)


def between_x(stroke: Stroke, start: float, end: float) -> Stroke:
    """The piece of a line from x = ``start`` to x = ``end``, in that direction."""
    pieces = segments(stroke)
    return piece(pieces, find(pieces, start, 0), find(pieces, end, 0))


def between_y(stroke: Stroke, start: float, end: float) -> Stroke:
    """The piece of a line from y = ``start`` to y = ``end``, in that direction."""
    pieces = segments(stroke)
    return piece(pieces, find(pieces, start, 1), find(pieces, end, 1))


def _length(segment: Segment) -> float:
    if len(segment) == 2:
        return math.dist(segment[0], segment[1])
    points = flatten_edges(segment[0], [Curve(segment[1], segment[2], segment[3])], 0.2)
    return sum(math.dist(a, b) for a, b in pairwise(points))


def length(stroke: Stroke) -> float:
    """How long the line is, in millimetres."""
    return sum(_length(s) for s in segments(stroke))


def _shortened(pieces: list[Segment], cut: float) -> list[Segment]:
    """The segments without their first ``cut`` millimetres."""
    rest = list(pieces)
    while rest and cut > 1e-6:
        size = _length(rest[0])
        if size > cut:
            rest[0] = _cut(rest[0], cut / size, 1.0)
            break
        cut -= size
        rest.pop(0)
    return rest or [pieces[-1]]


def trim(stroke: Stroke, head: float, tail: float) -> Stroke:
    """The line without ``head`` millimetres at its start and ``tail`` at its end."""
    if not stroke.edges:
        return stroke
    pieces = _shortened(segments(stroke), head)
    pieces = [tuple(reversed(s)) for s in reversed(pieces)]
    pieces = _shortened(pieces, tail)
    return joined([tuple(reversed(s)) for s in reversed(pieces)])
