"""Where a drawn or dragged spot comes to rest: on corners, edges, right angles, whole lengths."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise
from typing import TYPE_CHECKING

from journal.domain.drawing import Drawing
from journal.domain.ids import ViewId
from journal.domain.shapes import Curve, Point, flatten_edges
from journal.domain.shaping.corners import corner_points
from journal.domain.shaping.segments import (
    SAME,
    Segment,
    direction,
    nearest,
    nearest_within,
    ring,
    rounded_point,
)

if TYPE_CHECKING:
    from shapely import STRtree

#: How near a spot must come to be caught, in millimetres, unless said otherwise.
WITHIN = 8.0


class Why(StrEnum):
    """What caught a spot."""

    CORNER = "corner"
    EDGE = "edge"
    RIGHT_ANGLE = "right angle"
    LENGTH = "length"
    FREE = ""


@dataclass(frozen=True, slots=True)
class Snap:
    """Where a spot came to rest and what caught it.

    Attributes:
        length: millimetres from the start, None where none was given.
        angle: direction from the start in degrees, 0 to the right, 90 up; None without a start.
    """

    point: Point
    why: Why
    length: float | None = None
    angle: float | None = None


@dataclass(frozen=True, slots=True)
class _Chord:
    """A straight piece of a flattened edge and the part of the edge it stands for."""

    segment: Segment
    low: float
    high: float


class Snapper:
    """The corners and edges of one view, ready to catch spots; made once for a drawing."""

    def __init__(self, drawing: Drawing, view_id: ViewId) -> None:
        import shapely

        drawing.view(view_id)
        self._corners: list[Point] = []
        self._chords: list[_Chord] = []
        seen: set[Segment] = set()
        lines: list[tuple[Point, Point]] = []
        for placed in drawing.shapes_on(view_id):
            self._corners.extend(point for _, point in corner_points(placed.shape))
            for contour in placed.shape.contours:
                for segment in ring(contour):
                    if segment not in seen:
                        seen.add(segment)
                        self._add(segment, lines)
        self._corners = list(dict.fromkeys(self._corners))
        spots = shapely.points(self._corners) if self._corners else []
        self._corner_tree: STRtree = shapely.STRtree(spots)
        self._edge_tree: STRtree = shapely.STRtree(shapely.linestrings(lines) if lines else [])

    def _add(self, segment: Segment, lines: list[tuple[Point, Point]]) -> None:
        if len(segment) == 2:
            spots = list(segment)
        else:
            spots = flatten_edges(segment[0], [Curve(segment[1], segment[2], segment[3])])
        count = len(spots) - 1
        for n, (a, b) in enumerate(pairwise(spots)):
            self._chords.append(_Chord(segment, n / count, (n + 1) / count))
            lines.append((a, b))

    def snap(
        self,
        point: Point,
        *,
        start: Point | None = None,
        within_mm: float = WITHIN,
        step_mm: float = 0.0,
        besides: Point | None = None,
    ) -> Snap:
        """Where a spot comes to rest: on a corner, else an edge, else square to the start.

        ``start`` is the other end of the line being drawn. Square means level, upright, along or
        across an edge that arrives at the start. ``step_mm`` rounds the length from the start,
        where no corner or edge has caught the spot. ``besides`` is the corner being dragged: it
        and the edges that meet there catch nothing.
        """
        corner = self._corner(point, within_mm, start, besides)
        if corner is not None:
            return _snap(corner, Why.CORNER, start)
        edge = self._edge(point, within_mm, besides, start)
        if edge is not None:
            return _snap(edge, Why.EDGE, start)
        if start is None:
            return _snap(rounded_point(point), Why.FREE, None)
        return self._square(point, start, within_mm, step_mm)

    def _corner(
        self, point: Point, within: float, start: Point | None, besides: Point | None
    ) -> Point | None:
        import shapely

        if not self._corners:
            return None
        found = self._corner_tree.query(shapely.Point(point), predicate="dwithin", distance=within)
        corners = [self._corners[i] for i in found]
        corners = [c for c in corners if not (_is(c, start) or _is(c, besides))]
        return min(corners, key=lambda c: math.dist(c, point), default=None)

    def _near_chords(self, point: Point, within: float) -> list[_Chord]:
        import shapely

        if not self._chords:
            return []
        found = self._edge_tree.query(shapely.Point(point), predicate="dwithin", distance=within)
        return [self._chords[i] for i in found]

    def _edge(
        self, point: Point, within: float, besides: Point | None, start: Point | None
    ) -> Point | None:
        best: tuple[float, Point] | None = None
        # A chord may lie half a millimetre from its curve.
        for chord in self._near_chords(point, within + 0.5):
            ends = chord.segment[0], chord.segment[-1]
            if any(_is(end, besides) for end in ends):
                continue
            if len(chord.segment) == 2:
                near = nearest(chord.segment, point)
            else:
                wide = chord.high - chord.low
                near = nearest_within(chord.segment, point, chord.low - wide, chord.high + wide)
            if near.distance <= within and (best is None or near.distance < best[0]):
                best = near.distance, near.point
        spot = rounded_point(best[1]) if best else None
        return None if spot is not None and _is(spot, start) else spot

    def _square(self, point: Point, start: Point, within: float, step: float) -> Snap:
        dx, dy = point.x - start.x, point.y - start.y
        caught: tuple[float, float, float] | None = None
        reach = 0.0
        for ux, uy in self._directions(start):
            along, aside = dx * ux + dy * uy, abs(dx * uy - dy * ux)
            if aside <= within and (caught is None or aside < caught[2]):
                caught, reach = (ux, uy, aside), along
        if caught is None:
            reach = math.hypot(dx, dy)
        rounded = _stepped(reach, step)
        if caught is not None:
            spot = Point(start.x + caught[0] * rounded, start.y + caught[1] * rounded)
            return _snap(rounded_point(spot), Why.RIGHT_ANGLE, start)
        if step and reach:
            share = rounded / reach
            spot = Point(start.x + dx * share, start.y + dy * share)
            return _snap(rounded_point(spot), Why.LENGTH, start)
        return _snap(rounded_point(point), Why.FREE, start)

    def _directions(self, start: Point) -> list[tuple[float, float]]:
        """Level, upright, and along and across each edge that arrives at the start."""
        found = [(1.0, 0.0), (0.0, 1.0)]
        for chord in self._near_chords(start, SAME):
            near = nearest(chord.segment, start)
            if near.distance <= SAME:
                ux, uy = direction(chord.segment, near.t)
                found += [(ux, uy), (-uy, ux)]
        return found


def _is(spot: Point, other: Point | None) -> bool:
    return other is not None and math.dist(spot, other) <= SAME


def _stepped(length: float, step: float) -> float:
    """The length rounded to a whole number of steps, at least one."""
    if not step or not length:
        return length
    count = max(1, round(abs(length) / step))
    return math.copysign(count * step, length)


def _snap(point: Point, why: Why, start: Point | None) -> Snap:
    if start is None:
        return Snap(point, why)
    dx, dy = point.x - start.x, start.y - point.y
    return Snap(point, why, math.hypot(dx, dy), math.degrees(math.atan2(dy, dx)) % 360)
