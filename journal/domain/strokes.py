"""Open lines measured: how long, what lies where along them, and parts of them.

Lengths are those of the true curves, within ``EXACT`` millimetres a curve.
"""

import math
from bisect import bisect_right
from collections.abc import Callable, Sequence
from functools import lru_cache
from itertools import accumulate

from journal.domain.errors import JournalError
from journal.domain.shapes import Curve, Line, Point, Stroke, on_curve

#: How far, in millimetres, the length given for one curve may be from the true one at the worst.
#: For curves without a sharp bend it is within a thousandth.
EXACT = 0.05

#: How near to the distance asked for a spot along a curve is looked for, in millimetres.
_NEAR_ENOUGH = 0.001

#: Halvings after which a piece of a curve is taken as it is.
_DEEPEST = 24

#: Equal pieces of a curve that are looked at for the spot nearest to a point.
_LOOKED_AT = 24


def stroke_length(stroke: Stroke) -> float:
    """How long a line is, in millimetres along its straight and curved edges."""
    return sum(_edge_lengths(stroke))


def is_closed(stroke: Stroke) -> bool:
    """Whether a line ends where it starts."""
    return bool(stroke.edges) and stroke.start == stroke.end


def point_at(stroke: Stroke, mm: float) -> Point:
    """The spot that lies ``mm`` millimetres along a line; beyond its ends, the end."""
    starts, lengths = _starts(stroke), _edge_lengths(stroke)
    if not lengths:
        return stroke.start
    index, share = _where(stroke, starts, lengths, mm)
    return _on_edge(starts[index], stroke.edges[index], share)


def mm_at(stroke: Stroke, x: float, y: float) -> tuple[float, float]:
    """How far along a line the spot nearest to (x, y) lies, and how far off; in millimetres."""
    spot = Point(x, y)
    best = (math.dist(stroke.start, spot), 0.0)
    gone = 0.0
    starts, lengths = _starts(stroke), _edge_lengths(stroke)
    for start, edge, length in zip(starts, stroke.edges, lengths, strict=True):
        share, off = _nearest(start, edge, spot)
        if off < best[0]:
            best = off, gone + _length_to(start, edge, share, length)
        gone += length
    return best[1], best[0]


def part_of(stroke: Stroke, start_mm: float, end_mm: float) -> Stroke:
    """The part of a line between two distances along it, its curves true; cut at the line's ends.

    Raises:
        JournalError: the part would have no length.
    """
    starts, lengths = _starts(stroke), _edge_lengths(stroke)
    low, high = max(start_mm, 0.0), min(end_mm, sum(lengths))
    if not low < high:
        raise JournalError("A part of a line must end further along it than it starts.")
    first, from_share = _where(stroke, starts, lengths, low)
    last, to_share = _where(stroke, starts, lengths, high)
    edges: list[Line | Curve] = []
    for index in range(first, last + 1):
        begin = from_share if index == first else 0.0
        end = to_share if index == last else 1.0
        if begin < end:
            edges.append(_cut(starts[index], stroke.edges[index], begin, end))
    return Stroke(_on_edge(starts[first], stroke.edges[first], from_share), tuple(edges))


def _starts(stroke: Stroke) -> list[Point]:
    return [stroke.start, *(edge.to for edge in stroke.edges)][: len(stroke.edges)]


# The states of every seam are asked for on each day that a handle is dragged over.
@lru_cache(maxsize=4096)
def _edge_lengths(stroke: Stroke) -> tuple[float, ...]:
    return tuple(
        math.dist(start, edge.to) if isinstance(edge, Line) else _curve_length(start, edge)
        for start, edge in zip(_starts(stroke), stroke.edges, strict=True)
    )


def _where(
    stroke: Stroke, starts: list[Point], lengths: Sequence[float], mm: float
) -> tuple[int, float]:
    """The edge that ``mm`` lies on, and which share of its own way (a curve's ``t``)."""
    ends = list(accumulate(lengths))
    index = min(bisect_right(ends, mm), len(ends) - 1)
    along = min(max(mm - (ends[index] - lengths[index]), 0.0), lengths[index])
    return index, _share(starts[index], stroke.edges[index], along, lengths[index])


def _share(start: Point, edge: Line | Curve, along: float, length: float) -> float:
    if along <= 0 or not length:
        return 0.0
    if along >= length:
        return 1.0
    if isinstance(edge, Line):
        return along / length
    low, high = 0.0, 1.0
    share = along / length
    for _ in range(40):
        off = _curve_length(start, edge, share) - along
        if abs(off) < _NEAR_ENOUGH:
            break
        low, high = (low, share) if off > 0 else (share, high)
        speed = _speed(start, edge, share)
        guess = share - off / speed if speed else low
        share = guess if low < guess < high else (low + high) / 2
    return share


def _length_to(start: Point, edge: Line | Curve, share: float, length: float) -> float:
    if isinstance(edge, Line):
        return share * length
    return _curve_length(start, edge, share) if share < 1 else length


def _on_edge(start: Point, edge: Line | Curve, share: float) -> Point:
    if share <= 0 or share >= 1:
        return edge.to if share >= 1 else start
    return _mix(start, edge.to, share) if isinstance(edge, Line) else on_curve(start, edge, share)


def _mix(a: Point, b: Point, share: float) -> Point:
    return Point(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share)


def _cut(start: Point, edge: Line | Curve, begin: float, end: float) -> Line | Curve:
    """The edge between two shares of its way."""
    if isinstance(edge, Line):
        return Line(_on_edge(start, edge, end))
    if end < 1:
        edge = _head(start, edge, end)
    if begin > 0:
        edge = _tail(edge, begin / end)
    return edge


def _head(start: Point, curve: Curve, t: float) -> Curve:
    a, b = _mix(start, curve.handle1, t), _mix(curve.handle1, curve.handle2, t)
    c = _mix(curve.handle2, curve.to, t)
    ab, bc = _mix(a, b, t), _mix(b, c, t)
    return Curve(a, ab, _mix(ab, bc, t))


def _tail(curve: Curve, t: float) -> Curve:
    b, c = _mix(curve.handle1, curve.handle2, t), _mix(curve.handle2, curve.to, t)
    return Curve(_mix(b, c, t), c, curve.to)


def _nearest(start: Point, edge: Line | Curve, spot: Point) -> tuple[float, float]:
    """The share of an edge's way nearest to a spot, and how far off it is."""
    if isinstance(edge, Line):
        dx, dy = edge.to.x - start.x, edge.to.y - start.y
        square = dx * dx + dy * dy
        along = ((spot.x - start.x) * dx + (spot.y - start.y) * dy) / square if square else 0.0
        share = min(max(along, 0.0), 1.0)
        return share, math.dist(_mix(start, edge.to, share), spot)

    def off(t: float) -> float:
        return math.dist(on_curve(start, edge, t), spot)

    looked = [off(i / _LOOKED_AT) for i in range(_LOOKED_AT + 1)]
    found = [(looked[0], 0.0), (looked[-1], 1.0)]
    for i, here in enumerate(looked):
        if here <= min(looked[max(i - 1, 0) : i + 2]):
            t = _dip(off, max(i - 1, 0) / _LOOKED_AT, min(i + 1, _LOOKED_AT) / _LOOKED_AT)
            found.append((off(t), t))
    nearest = min(found)
    return nearest[1], nearest[0]


def _dip(off: Callable[[float], float], low: float, high: float) -> float:
    """Where something that falls and then rises is least."""
    for _ in range(40):
        third = (high - low) / 3
        if off(low + third) <= off(high - third):
            high -= third
        else:
            low += third
    return (low + high) / 2


def _curve_length(start: Point, curve: Curve, upto: float = 1.0) -> float:
    return _measured(start, curve if upto >= 1 else _head(start, curve, upto), 2 * EXACT, _DEEPEST)


def _measured(start: Point, curve: Curve, gap: float, deep: int) -> float:
    # A curve is no shorter than its chord and no longer than the way round by its handles. Their
    # mean is far nearer to it than either: its fault falls with the fourth power of the angle that
    # the curve turns through. Sampling the speed instead can miss a sharp bend.
    chord = math.dist(start, curve.to)
    around = (
        math.dist(start, curve.handle1)
        + math.dist(curve.handle1, curve.handle2)
        + math.dist(curve.handle2, curve.to)
    )
    if around - chord <= gap or not deep:
        return (around + chord) / 2
    first, second = _head(start, curve, 0.5), _tail(curve, 0.5)
    return _measured(start, first, gap / 2, deep - 1) + _measured(
        first.to, second, gap / 2, deep - 1
    )


def _speed(start: Point, curve: Curve, t: float) -> float:
    """Millimetres of the curve for each unit of ``t``."""
    (ax, ay), (bx, by), (cx, cy), (dx, dy) = start, curve.handle1, curve.handle2, curve.to
    s = 1 - t
    u, v, w = 3 * s * s, 6 * s * t, 3 * t * t
    return math.hypot(
        u * (bx - ax) + v * (cx - bx) + w * (dx - cx),
        u * (by - ay) + v * (cy - by) + w * (dy - cy),
    )
