"""Lines put together: chains, outlines with eased corners, areas that lines enclose."""

import math
from collections.abc import Sequence
from itertools import pairwise

from journal.domain.shapes import QUARTER, Contour, Curve, Point, Shape, Stroke, on_curve
from journal.domain.starters.lines import (
    Place,
    Segment,
    joined,
    length,
    piece,
    segments,
    straight,
    trim,
)


def chain(*strokes: Stroke, ease: float = 0.0) -> Stroke:
    """The lines one after the other, gaps bridged straight, corners eased by ``ease``."""
    runs = _bridged(strokes)
    eased = [ease] * (len(runs) - 1)
    return joined(_eased(runs, [0.0, *eased, 0.0]))


def outline(*strokes: Stroke, ease: float | Sequence[float] = 0.0) -> Shape:
    """The closed shape that the lines bound in turn; gaps are bridged by straight edges.

    ``ease`` rounds the corners between lines, each by a curve that starts so many millimetres
    from the corner: one number for all, or one for the start of each line (bridges included).
    """
    runs = _bridged(strokes)
    if math.dist(runs[-1].end, runs[0].start) > 1e-6:
        runs.append(straight(runs[-1].end, runs[0].start))
    values = [ease] * len(runs) if isinstance(ease, int | float) else list(ease)
    pieces = _eased(runs, [*values, values[0]])
    whole = joined(pieces)
    return Shape((Contour(whole.start, whole.edges),))


def _bridged(strokes: Sequence[Stroke]) -> list[Stroke]:
    runs: list[Stroke] = []
    for stroke in strokes:
        if runs and math.dist(runs[-1].end, stroke.start) > 1e-6:
            runs.append(straight(runs[-1].end, stroke.start))
        runs.append(stroke)
    return runs


def _eased(runs: list[Stroke], eases: list[float]) -> list[Segment]:
    """All segments of the runs, with curves between them; ``eases`` has one more than runs."""
    limits = [length(run) * 0.48 for run in runs]
    cuts = [
        (min(eases[i], limit, limits[i - 1]), min(eases[i + 1], limit, limits[(i + 1) % len(runs)]))
        for i, limit in enumerate(limits)
    ]
    trimmed = [trim(run, *cut) for run, cut in zip(runs, cuts, strict=True)]
    pieces: list[Segment] = []
    for i, run in enumerate(trimmed):
        pieces.extend(segments(run))
        if eases[i + 1] > 0:
            after = trimmed[(i + 1) % len(runs)].start
            corner = runs[i].end
            pieces.append((run.end, _share(run.end, corner), _share(after, corner), after))
    return pieces


def _share(spot: Point, corner: Point) -> Point:
    return Point(spot.x + (corner.x - spot.x) * QUARTER, spot.y + (corner.y - spot.y) * QUARTER)


# Areas that lines enclose


def enclosed(*strokes: Stroke, ease: float | Sequence[float] = 0.0) -> Shape:
    """The shape that the lines bound in turn, each cut where it meets the one before and after.

    The lines may run either way and past each other; where two meet more than once, the first
    meeting along the earlier line counts. ``ease`` is as in ``outline``, without bridges.
    """
    count = len(strokes)
    meetings = [meet(strokes[i], strokes[(i + 1) % count]) for i in range(count)]
    runs = [
        piece(segments(stroke), meetings[i - 1][1], meetings[i][0])
        for i, stroke in enumerate(strokes)
    ]
    return outline(*_snapped(runs), ease=ease)


def _snapped(runs: list[Stroke]) -> list[Stroke]:
    """The runs with each start moved onto the end of the run before: they are hairs apart."""
    return [Stroke(runs[i - 1].end, run.edges) for i, run in enumerate(runs)]


def meet(a: Stroke, b: Stroke) -> tuple[Place, Place]:
    """Where ``a`` first meets ``b``, as a place on each.

    Raises:
        ValueError: they don't meet: the body's proportions and its lines don't fit.
    """
    chords_b = _chords(b)
    for start, end, place, step in _chords(a):
        for start_b, end_b, place_b, step_b in chords_b:
            shares = _crossing(start, end, start_b, end_b)
            if shares is not None:
                return (
                    (place[0], place[1] + shares[0] * step),
                    (place_b[0], place_b[1] + shares[1] * step_b),
                )
    raise ValueError(f"Lines from {a.start} to {a.end} and {b.start} to {b.end} don't meet.")


def meeting(a: Stroke, b: Stroke) -> Point:
    """The spot where ``a`` first meets ``b``."""
    place, _ = meet(a, b)
    return piece(segments(a), place, place).start


_CHORDS = 24


def _chords(stroke: Stroke) -> list[tuple[Point, Point, Place, float]]:
    chords = []
    for i, segment in enumerate(segments(stroke)):
        if len(segment) == 2:
            chords.append((segment[0], segment[1], (i, 0.0), 1.0))
            continue
        curve = Curve(segment[1], segment[2], segment[3])
        spots = [on_curve(segment[0], curve, n / _CHORDS) for n in range(_CHORDS + 1)]
        chords.extend(
            (a, b, (i, n / _CHORDS), 1 / _CHORDS) for n, (a, b) in enumerate(pairwise(spots))
        )
    return chords


def _crossing(a: Point, b: Point, c: Point, d: Point) -> tuple[float, float] | None:
    """How far along a-b and c-d they cross, each 0 to 1; touching at the ends counts."""
    ux, uy, vx, vy = b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y
    cross = ux * vy - uy * vx
    if abs(cross) < 1e-9:
        return None
    s = ((c.x - a.x) * vy - (c.y - a.y) * vx) / cross
    t = ((c.x - a.x) * uy - (c.y - a.y) * ux) / cross
    slack = 1e-6
    if -slack <= s <= 1 + slack and -slack <= t <= 1 + slack:
        return min(max(s, 0.0), 1.0), min(max(t, 0.0), 1.0)
    return None


def through(a: Point, b: Point) -> Stroke:
    """A straight line through two spots, drawn on past both by as much as lies between them."""
    dx, dy = b.x - a.x, b.y - a.y
    return straight((a.x - dx, a.y - dy), (b.x + dx, b.y + dy))
