"""Squaring up a picture: by four corners or more, and its scale by two points.

The homography is found by the direct linear transformation on normalised points, in double
precision (OpenCV's own solver takes single precision points).
"""

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from journal.domain.errors import JournalError
from journal.domain.homographies import Matrix, depth, inverse, mapped, product, scaled_about, unit
from journal.domain.shapes import Point

if TYPE_CHECKING:
    from numpy import float64
    from numpy.typing import NDArray

#: Points nearer to each other than this, in pixels or millimetres, count as one.
_APART = 1e-6

#: Three points count as on one line where the sine of the angle they span is smaller.
_STRAIGHT = 1e-3

_Pair = tuple[tuple[float, float], tuple[float, float]]


@dataclass(frozen=True, slots=True)
class Squared:
    """A homography from pixels to millimetres.

    ``residual`` is how far, in pixels, the millimetres given for the points lie from them when led
    back into the picture: the root of the mean of the squares. Four pairs always fit exactly.
    """

    matrix: Matrix
    residual: float


def homography(pairs: Sequence[_Pair]) -> Squared:
    """The homography that leads each first point to its second, best in all where there are many.

    Raises:
        JournalError: fewer than four pairs, two points are one, or three of four lie in line.
    """
    if len(pairs) < 4:
        raise JournalError(f"Squaring up needs four points or more, not {len(pairs)}.")
    sources, targets = [p for p, _ in pairs], [p for _, p in pairs]
    for points in (sources, targets):
        _refuse_degenerate(points)
    matrix = _solved(sources, targets)
    back = inverse(matrix)
    misses = [math.dist(mapped(back, to), at) ** 2 for at, to in pairs]
    return Squared(matrix, math.sqrt(sum(misses) / len(misses)))


def square_up(
    corners: Sequence[tuple[float, float]],
    width_mm: float,
    height_mm: float,
    at: tuple[float, float] = (0.0, 0.0),
) -> Matrix:
    """The homography that makes four corners in the picture a rectangle of a known size.

    ``corners`` go round: top left, top right, bottom right, bottom left of what is to be the
    rectangle. ``at`` is where on the view its top left corner comes to lie, in millimetres.

    Raises:
        JournalError: not four corners, they are no convex outline, or the size is nothing.
    """
    if len(corners) != 4:
        raise JournalError(f"A rectangle has four corners, not {len(corners)}.")
    if not (_is_size(width_mm) and _is_size(height_mm)):
        raise JournalError("The width and height of the rectangle are more than nothing.")
    refuse_unsound(corners)
    x, y = at
    right, low = x + width_mm, y + height_mm
    targets = [(x, y), (right, y), (right, low), (x, low)]
    return homography(list(zip(corners, targets, strict=True))).matrix


def scale_by(
    matrix: Matrix,
    one: tuple[float, float],
    other: tuple[float, float],
    distance_mm: float,
) -> Matrix:
    """The same placing, made larger or smaller until two points of the picture lie so far apart.

    The first point stays where it is on the view.

    Raises:
        JournalError: the points are one, or the distance is nothing.
    """
    if not _is_size(distance_mm):
        raise JournalError("The distance between the two points is more than nothing.")
    if math.dist(one, other) < _APART:
        raise JournalError("The two points are one and the same; choose them further apart.")
    fixed = mapped(matrix, one)
    now = math.dist(fixed, mapped(matrix, other))
    if now < _APART:
        raise JournalError("The two points lie on each other on the view; choose others.")
    return product(scaled_about(fixed, distance_mm / now), matrix)


def refuse_unsound(corners: Sequence[tuple[float, float]]) -> None:
    """Refuse four corners that are no convex outline in their order.

    Raises:
        JournalError: two are one, three lie in line, the sides cross, or one corner points inward.
    """
    if not all(math.isfinite(number) for corner in corners for number in corner):
        raise JournalError("A corner has no sound place.")
    _refuse_degenerate(corners)
    turns = [_turn(corners[n - 2], corners[n - 1], corners[n]) for n in range(4)]
    left = sum(turn > 0 for turn in turns)
    if left == 2:
        raise JournalError("The sides between the four corners cross: go round them in order.")
    if left not in (0, 4):
        raise JournalError("One of the four corners points inward; a rectangle never looks so.")
    if left == 0:
        raise JournalError(
            "The four corners go round the wrong way: begin at the top left, then the top right."
        )


def _is_size(value: float) -> bool:
    return math.isfinite(value) and value > _APART


def _refuse_degenerate(points: Sequence[tuple[float, float]]) -> None:
    for one, other in itertools.combinations(points, 2):
        if math.dist(one, other) < _APART:
            raise JournalError("Two of the points are one and the same.")
    if len(points) == 4:
        for three in itertools.combinations(points, 3):
            if _in_line(*three):
                raise JournalError("Three of the four points lie in one line.")
    elif all(_in_line(points[0], points[1], point) for point in points[2:]):
        raise JournalError("All the points lie in one line.")


def _turn(a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]) -> float:
    """Twice the area of a triangle, more than 0 where it goes round clockwise on a screen."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _in_line(a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]) -> bool:
    """Whether the flattest corner of a triangle is next to none: its height over its base."""
    longest = max(math.dist(a, b), math.dist(b, c), math.dist(a, c))
    return abs(_turn(a, b, c)) <= _STRAIGHT * longest**2


def _solved(
    sources: Sequence[tuple[float, float]], targets: Sequence[tuple[float, float]]
) -> Matrix:
    import numpy as np

    first, moved = _normalised(sources)
    second, goals = _normalised(targets)
    rows: list[tuple[float, ...]] = []
    for (x, y), (u, v) in zip(moved, goals, strict=True):
        rows.append((x, y, 1, 0, 0, 0, -x * u, -y * u, -u))
        rows.append((0, 0, 0, x, y, 1, -x * v, -y * v, -v))
    *_, directions = np.linalg.svd(np.array(rows, dtype=np.float64))
    found: NDArray[float64] = directions[-1].reshape(3, 3)
    whole = tuple(float(n) for n in (np.linalg.inv(second) @ found @ first).ravel())
    side = math.copysign(1, depth(whole, sources[0]))
    return unit(tuple(number * side for number in whole))


def _normalised(
    points: Sequence[tuple[float, float]],
) -> tuple["NDArray[float64]", list[Point]]:
    """Points about 0, their mean distance from it the root of 2, and the matrix that does it."""
    import numpy as np

    x = sum(p[0] for p in points) / len(points)
    y = sum(p[1] for p in points) / len(points)
    mean = sum(math.dist(p, (x, y)) for p in points) / len(points)
    scale = math.sqrt(2) / mean
    matrix = np.array([[scale, 0, -scale * x], [0, scale, -scale * y], [0, 0, 1]])
    return matrix, [Point((p[0] - x) * scale, (p[1] - y) * scale) for p in points]
