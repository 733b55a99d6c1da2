"""Plane maps in nine numbers, row by row: from one plane to another, straight lines kept.

They are what a picture is squared up with: x' = (a x + b y + c) / (g x + h y + i), and so for y'.
Where g x + h y + i is 0 lies the horizon. A map holds for the side where it is more than 0: every
function here keeps that side.
"""

from collections.abc import Sequence

from journal.domain.errors import JournalError
from journal.domain.shapes import Point

#: Nine numbers: a b c, d e f, g h i.
Matrix = tuple[float, ...]

#: A point this near to the horizon, against the size of the terms, has no place on the other side.
_HORIZON = 1e-12

#: Nearer to the horizon than this, against the nearest corner, nothing of a picture is shown.
_NEAREST = 0.02


def mapped(matrix: Matrix, point: tuple[float, float]) -> Point:
    """Where a point of the first plane lies on the second.

    Raises:
        JournalError: it lies on the horizon.
    """
    x, y = point
    a, b, c, d, e, f, g, h, i = matrix
    w = g * x + h * y + i
    if abs(w) <= _HORIZON * (abs(g * x) + abs(h * y) + abs(i)):
        raise JournalError("That point of the picture lies on its horizon.")
    return Point((a * x + b * y + c) / w, (d * x + e * y + f) / w)


def inverse(matrix: Matrix) -> Matrix:
    """The map back.

    Raises:
        JournalError: the matrix flattens the plane, so nothing leads back.
    """
    a, b, c, d, e, f, g, h, i = matrix
    rows = (
        (e * i - f * h, c * h - b * i, b * f - c * e),
        (f * g - d * i, a * i - c * g, c * d - a * f),
        (d * h - e * g, b * g - a * h, a * e - b * d),
    )
    terms = (a * rows[0][0], b * rows[1][0], c * rows[2][0])
    area = sum(terms)
    if abs(area) <= _HORIZON * sum(map(abs, terms)):
        raise JournalError("The picture would be flattened to a line.")
    return unit(tuple(number / area for row in rows for number in row))


def product(later: Matrix, earlier: Matrix) -> Matrix:
    """The map that does ``earlier`` and then ``later``."""
    columns = [earlier[n::3] for n in range(3)]
    rows = [later[3 * n : 3 * n + 3] for n in range(3)]
    return unit(tuple(_dot(row, column) for row in rows for column in columns))


def unit(matrix: Matrix) -> Matrix:
    """The same map with a last number of 1 or -1, where it can have one."""
    last = abs(matrix[8])
    if last <= _HORIZON * max(map(abs, matrix), default=0.0):
        return matrix
    return tuple(number / last for number in matrix)


def depth(matrix: Matrix, point: tuple[float, float]) -> float:
    """How far a point is from the horizon, in no unit: less than 0 on the side that isn't meant."""
    return matrix[6] * point[0] + matrix[7] * point[1] + matrix[8]


def outline(matrix: Matrix, width: float, height: float) -> tuple[Point, ...]:
    """What a rectangle at the origin becomes: its corners in order, cut off before the horizon.

    Fewer than three points where all of it lies beyond.
    """
    corners = [(0.0, 0.0), (width, 0.0), (width, height), (0.0, height)]
    depths = [depth(matrix, corner) for corner in corners]
    least = max(depths) * _NEAREST
    found = []
    for n, (here, far) in enumerate(zip(corners, depths, strict=True)):
        before, was = corners[n - 1], depths[n - 1]
        if (far > least) != (was > least):
            share = (least - was) / (far - was)
            cut = tuple(a + (b - a) * share for a, b in zip(before, here, strict=True))
            found.append(mapped(matrix, (cut[0], cut[1])))
        if far > least:
            found.append(mapped(matrix, here))
    return tuple(found)


def scaled_about(point: tuple[float, float], factor: float) -> Matrix:
    """Everything ``factor`` times as large, ``point`` staying where it is."""
    x, y = point
    return (factor, 0.0, x * (1 - factor), 0.0, factor, y * (1 - factor), 0.0, 0.0, 1.0)


def moved_by(dx: float, dy: float) -> Matrix:
    """Everything moved."""
    return (1.0, 0.0, dx, 0.0, 1.0, dy, 0.0, 0.0, 1.0)


def _dot(one: Sequence[float], other: Sequence[float]) -> float:
    return sum(x * y for x, y in zip(one, other, strict=True))
