"""Giving two neighbours one edge where they nearly touch."""

import math
from itertools import pairwise

from journal.domain.drawing import Drawing
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Point, Shape
from journal.domain.shaping.corners import corner_points
from journal.domain.shaping.edges import place_near, with_corner
from journal.domain.shaping.placed import index_of, with_checked
from journal.domain.shaping.segments import (
    SAME,
    Segment,
    contour_of,
    nearest,
    point_at,
    ring,
    rounded_point,
    turned,
    turned_all,
)

#: How far apart neighbours may lie and still be given one edge, unless said otherwise.
WITHIN = 5.0


def share_edge(
    drawing: Drawing,
    view_id: ViewId,
    keep: PanelId,
    other: PanelId,
    within_mm: float = WITHIN,
) -> Drawing:
    """Lay ``other``'s edge upon ``keep``'s wherever they are no more than ``within_mm`` apart.

    ``keep`` stays as it is but for corners where the common edge begins and ends. From then on
    the edge moves as one.

    Raises:
        JournalError: they are one panel, aren't both on the view, come nowhere so near, share all
            of that edge already, or ``other`` would cross itself.
    """
    if keep == other:
        raise JournalError(f"{drawing.panel(keep).label} can't share an edge with itself.")
    mine, theirs = index_of(drawing, keep, view_id), index_of(drawing, other, view_id)
    kept, bent = drawing.shapes[mine].shape, drawing.shapes[theirs].shape
    bent = _with_corners_of(bent, kept, within_mm)
    names = f"{drawing.panel(keep).label} and {drawing.panel(other).label}"
    shared = False
    for number in range(len(bent.contours)):
        for run in _runs(bent, number, kept, within_mm):
            kept, chain = _edge_between(kept, run, within_mm)
            if chain is not None:
                bent, shared = _laid(bent, number, run, chain), True
    if not shared:
        raise JournalError(f"{names} have no edges within {within_mm:g} mm of each other.")
    made = with_checked(drawing, {mine: kept, theirs: bent})
    pairs = zip(made.shapes, drawing.shapes, strict=True)
    if all(a == b or _edges(a.shape) == _edges(b.shape) for a, b in pairs):
        raise JournalError(f"{names} share that edge already.")
    return made


def _edges(shape: Shape) -> list[Segment]:
    """The edges, wherever the outlines are said to start and whichever way they are drawn."""
    return sorted(min(s, turned(s)) for contour in shape.contours for s in ring(contour))


def _with_corners_of(shape: Shape, other: Shape, within: float) -> Shape:
    """The shape with a corner beside each corner of the other that lies near one of its edges."""
    for _, corner in corner_points(other):
        place = place_near(shape, corner)
        if place.distance > within:
            continue
        segment = ring(shape.contours[place.contour])[place.edge]
        if min(math.dist(place.point, segment[0]), math.dist(place.point, segment[-1])) > within:
            shape = with_corner(shape, place, rounded_point(place.point))
    return shape


def _runs(shape: Shape, number: int, kept: Shape, within: float) -> list[list[Segment]]:
    """The longest runs of edges of one outline that lie near the other shape all along."""
    pieces = ring(shape.contours[number])
    near = [_lies_near(s, kept, within) for s in pieces]
    if all(near):
        return []
    first = near.index(False)
    runs: list[list[Segment]] = []
    open_run = False
    for step in range(1, len(pieces) + 1):
        at = (first + step) % len(pieces)
        if near[at] and open_run:
            runs[-1].append(pieces[at])
        elif near[at]:
            runs.append([pieces[at]])
        open_run = near[at]
    return runs


def _lies_near(segment: Segment, kept: Shape, within: float) -> bool:
    spots = [point_at(segment, n / 8) for n in range(9)]
    if any(place_near(kept, spot).distance > within for spot in spots):
        return False
    # An edge across the gap is near all along, too; one that is shared runs on beside the other.
    ends = place_near(kept, segment[0]).point, place_near(kept, segment[-1]).point
    return math.dist(*ends) > max(SAME, 0.5 * math.dist(segment[0], segment[-1]))


def _edge_between(
    kept: Shape, run: list[Segment], within: float
) -> tuple[Shape, list[Segment] | None]:
    """``kept`` with corners beside the ends of a run, and its edges from the one to the other."""
    spots = []
    for end in (run[0][0], run[-1][-1]):
        kept, spot = _with_corner_at(kept, end, within)
        spots.append(spot)
    for contour in kept.contours:
        pieces = ring(contour)
        starts = [s[0] for s in pieces]
        if spots[0] in starts and spots[1] in starts and spots[0] != spots[1]:
            a, b = starts.index(spots[0]), starts.index(spots[1])
            forward = _round(pieces, a, b)
            backward = turned_all(_round(pieces, b, a))
            return kept, min((forward, backward), key=lambda chain: _apart(chain, run))
    return kept, None


def _with_corner_at(kept: Shape, end: Point, within: float) -> tuple[Shape, Point]:
    """``kept`` with a corner beside a spot: the one it has there, else a new one."""
    corners = [point for _, point in corner_points(kept)]
    nearest_corner = min(corners, key=lambda corner: math.dist(corner, end))
    if math.dist(nearest_corner, end) <= within:
        return kept, nearest_corner
    place = place_near(kept, end)
    spot = rounded_point(place.point)
    return with_corner(kept, place, spot), spot


def _round(pieces: list[Segment], start: int, end: int) -> list[Segment]:
    """The edges from one corner of a ring onwards to another, by the edges that begin there."""
    count = (end - start) % len(pieces)
    return [pieces[(start + n) % len(pieces)] for n in range(count)]


def _apart(chain: list[Segment], run: list[Segment]) -> float:
    """How far a chain strays from a run at most."""
    spots = [point_at(s, t) for s in chain for t in (0.25, 0.5, 0.75)]
    return max(min(nearest(s, spot).distance for s in run) for spot in spots)


def _laid(shape: Shape, number: int, run: list[Segment], chain: list[Segment]) -> Shape:
    """The shape with a run of its edges replaced by a chain, its neighbours drawn up to it."""
    pieces = ring(shape.contours[number])
    at = pieces.index(run[0])
    rest = [pieces[(at + len(run) + n) % len(pieces)] for n in range(len(pieces) - len(run))]
    first, last = rest[0], rest[-1]
    rest[0] = (chain[-1][-1], *first[1:])
    last = rest[-1]
    rest[-1] = (*last[:-1], chain[0][0])
    made = [s for s in (*chain, *rest) if len(s) == 4 or math.dist(*s) > SAME]
    made = [(a[-1], *b[1:]) for a, b in pairwise([made[-1], *made])]
    contours = list(shape.contours)
    contours[number] = contour_of(made)
    return Shape(tuple(contours))
