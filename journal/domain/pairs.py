"""Pairs: a before and an after photo of one repair area, and how one lies on the other.

Places on a photo are shares of its width and height, 0 to 1, as it stands upright before the
owner's own turn: turning a photo later leaves every pair as it was.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from journal.domain.errors import JournalError
from journal.domain.homographies import Matrix, inverse, outline, product
from journal.domain.ids import AreaId, PairId, PhotoId
from journal.domain.shapes import Point

#: So many points clicked on both photos are the fewest that tell how one lies on the other.
FEWEST_POINTS = 4
#: So many are asked for: with four the error is always nothing, so that it tells nothing.
WANTED_POINTS = 6
#: More than these help nobody.
MOST_POINTS = 60
#: The longer side of a photo that errors are told for, in pixels.
SIDE = 1600
#: The common part of two photos is at least this share of the first, or they are of two places.
_LEAST_COMMON = 0.02
#: Captions longer than this are no captions.
_MOST_WORDS = 20_000
#: The common part is looked for in so many steps across.
_STEPS = 64

#: Cameras that faced within so many degrees looked the same way.
_SAME_WAY = 40.0
#: Each photo that is nearer to the work than another counts so much less.
_LATE = 0.015

#: Width and height of a picture, in pixels.
Size = tuple[float, float]

_QUARTER: Matrix = (0.0, -1.0, 1.0, 1.0, 0.0, 0.0, 0.0, 0.0, 1.0)
_SAME: Matrix = (1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0)


class How(StrEnum):
    """How it is known how the after photo lies on the before."""

    FOUND = "found"
    BY_HAND = "by hand"
    SIDE_BY_SIDE = "side by side"


@dataclass(frozen=True, slots=True)
class PointPair:
    """One and the same spot of the car on both photos."""

    before: Point
    after: Point


@dataclass(frozen=True, slots=True)
class Fit:
    """How the after photo lies on the before.

    ``matrix`` leads a place on the after photo to its place on the before; None where the two are
    shown side by side alone. ``error_px`` is how far the points it rests on lie from their places,
    the root of the mean of the squares, in pixels of a picture whose longer side is ``SIDE``; it
    is None where nobody can say. ``inliers`` are the spots in agreement where it was found.
    """

    how: How
    matrix: Matrix | None = None
    points: tuple[PointPair, ...] = ()
    error_px: float | None = None
    inliers: int | None = None

    @property
    def is_laid(self) -> bool:
        """Whether one can be laid over the other."""
        return self.matrix is not None


#: The fit of photos that are shown side by side alone.
SIDE_BY_SIDE = Fit(How.SIDE_BY_SIDE)


@dataclass(frozen=True, slots=True)
class Pair:
    """A before and an after photo of one repair area, kept by the owner."""

    id: PairId
    area_id: AreaId
    before_id: PhotoId
    after_id: PhotoId
    fit: Fit
    caption: str = ""
    rank: int = 0


@dataclass(frozen=True, slots=True)
class PairProposal:
    """Two photos that may show one view of a repair area; nothing is kept of it unasked.

    ``likeness`` is how alike they look, 0 to 1. ``fit`` is how one lies on the other, None where
    that could not be found.
    """

    area_id: AreaId
    before_id: PhotoId
    after_id: PhotoId
    likeness: float
    fit: Fit | None


@dataclass(frozen=True, slots=True)
class Candidate:
    """A photo that may be one half of a pair: ``rank`` 0 is the earliest before, or latest after.

    ``facings`` are the ways the camera looked by its pins, in degrees, by view.
    """

    photo_id: PhotoId
    rank: int
    facings: tuple[tuple[int, float], ...] = ()


def promise(before: Candidate, after: Candidate, likeness: float) -> float:
    """How much two photos promise to show one view, before any closer look; more is more.

    Likeness counts most; the way the camera faced where both pins tell it; then the span of time.
    """
    views = dict(after.facings)
    turns = [abs((f - views[v] + 180) % 360 - 180) for v, f in before.facings if v in views]
    facing = 0.0 if not turns else 0.15 if min(turns) <= _SAME_WAY else -0.3
    return likeness + facing - _LATE * (before.rank + after.rank)


@dataclass(frozen=True, slots=True)
class Frame:
    """An upright part of a photo, in shares of its width and height."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def area(self) -> float:
        """Its share of the whole."""
        return (self.right - self.left) * (self.bottom - self.top)


#: The whole of a photo.
WHOLE = Frame(0.0, 0.0, 1.0, 1.0)


def turn_map(degrees: int) -> Matrix:
    """What a turn clockwise by quarters does to the places on a photo."""
    made = _SAME
    for _ in range(degrees // 90 % 4):
        made = product(_QUARTER, made)
    return made


def as_shown(matrix: Matrix, before_turn: int, after_turn: int) -> Matrix:
    """The same fit between the photos as the owner turned them."""
    return product(turn_map(before_turn), product(matrix, inverse(turn_map(after_turn))))


def as_kept(matrix: Matrix, before_turn: int, after_turn: int) -> Matrix:
    """A fit between photos as they are shown, as one between the photos before their turns."""
    return product(inverse(turn_map(before_turn)), product(matrix, turn_map(after_turn)))


def in_pixels(matrix: Matrix, before: Size, after: Size) -> Matrix:
    """A fit in shares as one in pixels of pictures of these widths and heights."""
    return product(_scaled(*before), product(matrix, _scaled(1 / after[0], 1 / after[1])))


def in_shares(matrix: Matrix, before: Size, after: Size) -> Matrix:
    """A fit in pixels of pictures of these widths and heights as one in shares."""
    return product(_scaled(1 / before[0], 1 / before[1]), product(matrix, _scaled(*after)))


def _scaled(x: float, y: float) -> Matrix:
    return (float(x), 0.0, 0.0, 0.0, float(y), 0.0, 0.0, 0.0, 1.0)


def check_points(points: Sequence[PointPair]) -> None:
    """Refuse points that tell nothing.

    Raises:
        JournalError: too few, too many, or one that lies on no photo.
    """
    if len(points) < FEWEST_POINTS:
        raise JournalError(
            f"Laying one photo over the other needs {FEWEST_POINTS} points on both, "
            f"better {WANTED_POINTS} or more; there are {len(points)}."
        )
    if len(points) > MOST_POINTS:
        raise JournalError(f"{MOST_POINTS} points are the most; there are {len(points):,}.")
    for number, pair in enumerate(points, 1):
        for point in (pair.before, pair.after):
            if not all(math.isfinite(n) and 0 <= n <= 1 for n in point):
                raise JournalError(f"Point {number} lies beside the photo.")


def check_caption(caption: str) -> str:
    """A caption without blanks round it.

    Raises:
        JournalError: it is too long.
    """
    kept = caption.strip()
    if len(kept) > _MOST_WORDS:
        raise JournalError(f"The caption is too long: {len(kept):,} signs of {_MOST_WORDS:,}.")
    return kept


def common_part(matrix: Matrix) -> Frame:
    """The largest upright part of the before photo that the after photo covers too.

    Args:
        matrix: leads a place on the after photo to the before, in shares.

    Raises:
        JournalError: they have next to nothing in common.
    """
    shared = _on_photo(outline(matrix, 1.0, 1.0))
    found = _largest_within(shared) if len(shared) > 2 else None
    if found is None or found.area < _LEAST_COMMON:
        raise JournalError("Laid so, the two photos have next to nothing in common.")
    # Where it reaches an edge, rounding must not lead beside the photo.
    left, top = max(found.left, 0.0), max(found.top, 0.0)
    return Frame(left, top, min(found.right, 1.0), min(found.bottom, 1.0))


def _on_photo(polygon: Sequence[Point]) -> list[Point]:
    """What of a convex outline lies on the photo: cut off at each of its four sides."""
    kept = list(polygon)
    for axis in (0, 1):
        for bound, sign in ((0.0, 1.0), (1.0, -1.0)):
            kept = _cut(kept, axis, bound, sign)
    return kept


def _cut(polygon: Sequence[Point], axis: int, bound: float, sign: float) -> list[Point]:
    made = []
    for n, here in enumerate(polygon):
        before = polygon[n - 1]
        far, was = (here[axis] - bound) * sign, (before[axis] - bound) * sign
        if (far >= 0) != (was >= 0):
            share = was / (was - far)
            x, y = (a + (b - a) * share for a, b in zip(before, here, strict=True))
            made.append(Point(x, y))
        if far >= 0:
            made.append(here)
    return made


def _largest_within(polygon: Sequence[Point]) -> Frame | None:
    """The largest upright rectangle in a convex outline, to one part in 64 of its width."""
    xs = [point.x for point in polygon]
    left, wide = min(xs), max(xs) - min(xs)
    if wide <= 0:
        return None
    places = [left + wide * n / _STEPS for n in range(_STEPS + 1)]
    spans = [_span_at(polygon, x) for x in places]
    best, most = None, 0.0
    for a, (top_a, low_a) in enumerate(spans):
        for b in range(a + 1, _STEPS + 1):
            # A convex outline holds whatever both of a rectangle's upright sides hold.
            top, low = max(top_a, spans[b][0]), min(low_a, spans[b][1])
            area = (low - top) * (places[b] - places[a])
            if low > top and area > most:
                best, most = Frame(places[a], top, places[b], low), area
    return best


def _span_at(polygon: Sequence[Point], x: float) -> tuple[float, float]:
    """The highest and the lowest place of a convex outline at a distance from the left."""
    heights = []
    for n, here in enumerate(polygon):
        before = polygon[n - 1]
        low, high = sorted((before.x, here.x))
        if low <= x <= high:
            if high == low:
                heights += [before.y, here.y]
            else:
                heights.append(
                    before.y + (here.y - before.y) * (x - before.x) / (here.x - before.x)
                )
    return (min(heights), max(heights)) if heights else (1.0, 0.0)
