"""Single edges with their own starts: points on them, pieces of them, where lines cross them."""

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from journal.domain.shapes import Contour, Curve, Line, Point, on_curve

#: One edge with its own start: two points for a straight one, four for a curve.
Segment = tuple[Point, ...]

#: Spots nearer to each other than this, in millimetres, are one and the same.
SAME = 0.05

#: How many pieces a curve is looked at in before a nearest spot is sought in the best of them.
_PIECES = 16


class Near(NamedTuple):
    """The spot of a segment nearest to some point, how far along (0 to 1), and how far away."""

    distance: float
    t: float
    point: Point


def ring(contour: Contour) -> list[Segment]:
    """The edges of an outline, each with its start; the last arrives where the first begins."""
    found: list[Segment] = []
    here = contour.start
    for edge in contour.edges:
        if isinstance(edge, Line):
            found.append((here, edge.to))
        else:
            found.append((here, edge.handle1, edge.handle2, edge.to))
        here = edge.to
    if here != contour.start:
        found.append((here, contour.start))
    return found


def closes_itself(contour: Contour) -> bool:
    """Whether the last edge as written arrives at the start."""
    return bool(contour.edges) and contour.edges[-1].to == contour.start


def contour_of(pieces: Sequence[Segment], *, open_end: bool = False) -> Contour:
    """The outline of segments that follow each other round.

    With ``open_end`` a straight last edge is left out, since closing the outline draws it.
    """
    kept = pieces[:-1] if open_end and len(pieces[-1]) == 2 else pieces
    return Contour(pieces[0][0], tuple(edge_of(s) for s in kept))


def edge_of(segment: Segment) -> Line | Curve:
    """The segment without its start."""
    return Line(segment[1]) if len(segment) == 2 else Curve(segment[1], segment[2], segment[3])


def point_at(segment: Segment, t: float) -> Point:
    """The spot at ``t`` (0 to 1)."""
    if len(segment) == 2:
        return _mix(segment[0], segment[1], t)
    return on_curve(segment[0], Curve(segment[1], segment[2], segment[3]), t)


def _mix(a: Point, b: Point, t: float) -> Point:
    return Point(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t)


def split(segment: Segment, t: float) -> tuple[Segment, Segment]:
    """The two pieces on either side of ``t``, by de Casteljau: together the same edge."""
    row = list(segment)
    head, tail = [row[0]], [row[-1]]
    while len(row) > 1:
        row = [_mix(a, b, t) for a, b in pairwise(row)]
        head.append(row[0])
        tail.append(row[-1])
    return tuple(head), tuple(reversed(tail))


def between(segment: Segment, t0: float, t1: float) -> Segment:
    """The piece from ``t0`` to ``t1``, with t0 < t1."""
    head = split(segment, t1)[0] if t1 < 1 else segment
    return split(head, t0 / t1)[1] if t0 > 0 else head


def turned(segment: Segment) -> Segment:
    """The segment drawn from its other end."""
    return tuple(reversed(segment))


def turned_all(pieces: Sequence[Segment]) -> list[Segment]:
    """A line of segments drawn from its other end."""
    return [turned(s) for s in reversed(pieces)]


def rounded_segment(segment: Segment) -> Segment:
    """The segment with the numbers that the written form keeps."""
    return tuple(rounded_point(p) for p in segment)


def rounded_point(point: Point) -> Point:
    """The spot with the numbers that the written form keeps."""
    return Point(round(point.x, 2) + 0.0, round(point.y, 2) + 0.0)


def direction(segment: Segment, t: float) -> tuple[float, float]:
    """The unit vector along the segment at ``t``; (0, 0) where it has no length."""
    row: list[Point] = list(segment)
    while len(row) > 2:
        row = [_mix(a, b, t) for a, b in pairwise(row)]
    dx, dy = row[1].x - row[0].x, row[1].y - row[0].y
    if math.hypot(dx, dy) < 1e-9:
        dx, dy = segment[-1].x - segment[0].x, segment[-1].y - segment[0].y
    size = math.hypot(dx, dy)
    return (dx / size, dy / size) if size else (0.0, 0.0)


def nearest(segment: Segment, point: Point) -> Near:
    """The spot of a segment nearest to a point."""
    if len(segment) == 2:
        return _nearest_straight(segment[0], segment[1], point)
    spots = [math.dist(point_at(segment, n / _PIECES), point) for n in range(_PIECES + 1)]
    best = min(range(_PIECES + 1), key=spots.__getitem__)
    return nearest_within(segment, point, (best - 1) / _PIECES, (best + 1) / _PIECES)


def nearest_within(segment: Segment, point: Point, low: float, high: float) -> Near:
    """The spot of a curve nearest to a point between two ``t``, by golden section."""
    low, high = max(0.0, low), min(1.0, high)
    first, last = low, high
    golden = (math.sqrt(5) - 1) / 2
    for _ in range(40):
        a, b = high - golden * (high - low), low + golden * (high - low)
        if math.dist(point_at(segment, a), point) < math.dist(point_at(segment, b), point):
            high = b
        else:
            low = a
    tried = ((low + high) / 2, first, last)
    return min(_near(segment, point, t) for t in tried)


def _near(segment: Segment, point: Point, t: float) -> Near:
    spot = point_at(segment, t)
    return Near(math.dist(spot, point), t, spot)


def _nearest_straight(a: Point, b: Point, point: Point) -> Near:
    dx, dy = b.x - a.x, b.y - a.y
    size = dx * dx + dy * dy
    t = ((point.x - a.x) * dx + (point.y - a.y) * dy) / size if size else 0.0
    t = min(1.0, max(0.0, t))
    spot = _mix(a, b, t)
    return Near(math.dist(spot, point), t, spot)


def crossings(segment: Segment, a: Point, b: Point) -> Iterator[tuple[float, float]]:
    """Where a segment crosses the straight line a-b: how far along each, 0 to 1.

    A segment that lies along the line crosses it nowhere.
    """
    dx, dy = b.x - a.x, b.y - a.y
    size = dx * dx + dy * dy
    if not size:
        return
    off = [(p.x - a.x) * dy - (p.y - a.y) * dx for p in segment]
    for t in _zeros(off):
        spot = point_at(segment, t)
        s = ((spot.x - a.x) * dx + (spot.y - a.y) * dy) / size
        if -1e-9 <= s <= 1 + 1e-9:
            yield t, min(1.0, max(0.0, s))


def _zeros(off: Sequence[float]) -> list[float]:
    """Where a Bezier of one coordinate is zero, in order."""
    flat = max(map(abs, off)) * 1e-12
    if all(abs(v) <= flat for v in off):
        return []
    if len(off) == 2:
        start, end = off
        return [start / (start - end)] if start * end <= 0 else []
    stops = [0.0, *sorted(_turns(off)), 1.0]
    found: list[float] = []
    for low, high in pairwise(stops):
        start, end = _value(off, low), _value(off, high)
        if start * end <= 0 and start != end:
            root = _bisect(off, low, high, start)
            if not found or root - found[-1] > 1e-9:
                found.append(root)
    return found


def _value(off: Sequence[float], t: float) -> float:
    a, b, c, d = off
    s = 1 - t
    return s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d


def _turns(off: Sequence[float]) -> list[float]:
    """Where the value turns back, inside 0 to 1."""
    a, b, c, d = off
    p, q, r = d - a + 3 * (b - c), 2 * (a - 2 * b + c), b - a
    if abs(p) < 1e-12 * max(abs(q), abs(r), 1e-300):
        roots = [-r / q] if q else []
    else:
        under = q * q - 4 * p * r
        roots = [(-q + sign * math.sqrt(under)) / (2 * p) for sign in (1, -1)] if under > 0 else []
    return [t for t in roots if 0 < t < 1]


def _bisect(off: Sequence[float], low: float, high: float, start: float) -> float:
    if start == 0:
        return low
    for _ in range(60):
        middle = (low + high) / 2
        if _value(off, middle) * start > 0:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def rejoined(first: Segment, second: Segment, within: float = SAME) -> Segment | None:
    """The one edge that two pieces were split from, None where they weren't, to ``within`` mm."""
    if len(first) != len(second):
        return None
    before, after = math.dist(first[-2], first[-1]), math.dist(second[0], second[1])
    if before + after < 1e-9:
        return None
    t = before / (before + after)
    if not 0 < t < 1:
        return None
    whole: Segment
    if len(first) == 2:
        whole = (first[0], second[-1])
    else:
        handle1 = _mix(first[0], first[1], 1 / t)
        handle2 = _mix(second[3], second[2], 1 / (1 - t))
        whole = (first[0], handle1, handle2, second[3])
    head, tail = split(whole, t)
    pairs = zip(head + tail, first + second, strict=True)
    return whole if all(math.dist(a, b) <= within for a, b in pairs) else None
