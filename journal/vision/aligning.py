"""Laying one photo over another of the same place: which point of it is which of the other.

Features are found and matched as by Lowe, "Distinctive Image Features from Scale-Invariant
Keypoints" (2004), compared by the roots of their numbers (Arandjelović and Zisserman, 2012), and
a homography is drawn through the matches by MAGSAC++ (Barath et al., 2020). What a repair changes
has no match; a fit that rests on too little is not told from none.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from journal.domain.errors import JournalError
from journal.domain.homographies import Matrix, depth, mapped, product, scaled_about, unit
from journal.domain.shapes import Point

if TYPE_CHECKING:
    from numpy.typing import NDArray

#: The longer side that pictures are brought to before they are compared, in pixels.
SIDE = 1600

#: Fewer points in agreement than these are chance: unrelated pictures reached 18.
FEWEST = 20

#: How far a match may lie from its place and still agree, in pixels at ``SIDE``.
_NEAR = 3.0

_FEATURES = 4000
_RATIO = 0.85
#: A nearest feature needs a next nearest to be told from.
_NEXT = 2

#: The part of each picture that the points in agreement must spread over.
_LEAST_SPREAD = 0.02

#: The part of all matches that must agree: among chance matches few do.
_LEAST_AGREEING = 0.12

#: How many times smaller or larger one picture may show the place than the other, by area.
_MOST_SCALING = 12.0


@dataclass(frozen=True, slots=True)
class Features:
    """What one picture can be known by.

    ``scale`` is how many pixels of the picture one pixel of the grey one stands for.
    """

    width: int
    height: int
    scale: float
    points: "NDArray[Any]"
    numbers: "NDArray[Any]"


@dataclass(frozen=True, slots=True)
class Laid:
    """How one picture lies on another.

    ``matrix`` leads a point of the second picture to its place in the first, both in pixels of the
    pictures as they were given. ``inliers`` of ``matches`` points agree with it; ``error_px`` is
    how far these lie from their places, the root of the mean of the squares, in pixels at ``SIDE``.
    """

    matrix: Matrix
    inliers: int
    matches: int
    error_px: float


def grey_of(picture: "NDArray[Any]") -> "tuple[NDArray[Any], float]":
    """A picture in grey at ``SIDE`` with its contrast evened out, and by how much it was reduced.

    Args:
        picture: rows x columns, or rows x columns x 3 in RGB, 8 bits.
    """
    import cv2

    grey = picture if picture.ndim == 2 else cv2.cvtColor(picture, cv2.COLOR_RGB2GRAY)
    scale = max(grey.shape) / SIDE
    if scale > 1:
        size = (round(grey.shape[1] / scale), round(grey.shape[0] / scale))
        grey = cv2.resize(grey, size, interpolation=cv2.INTER_AREA)
    else:
        scale = 1.0
    return cv2.createCLAHE(2.0, (8, 8)).apply(grey), scale


def features(picture: "NDArray[Any]") -> Features:
    """What a picture can be known by; it may be used for many pairs."""
    import cv2
    import numpy as np

    grey, scale = grey_of(picture)
    # Without a single feature it gives None, which its types don't say.
    found: Any = cv2.SIFT.create(nfeatures=_FEATURES).detectAndCompute(grey, None)
    points, numbers = found
    places = np.array([point.pt for point in points], np.float32).reshape(-1, 2)
    if numbers is None:
        numbers = np.zeros((0, 128), np.float32)
    numbers = np.sqrt(numbers / np.maximum(numbers.sum(axis=1, keepdims=True), 1e-7))
    height, width = picture.shape[:2]
    return Features(width, height, scale, places, numbers)


def lay(before: Features, after: Features) -> Laid | None:
    """How the second picture lies on the first, by itself; None where that can't be told."""
    first, second = _matches(before, after)
    if len(first) < FEWEST:
        return None
    at, to = before.points[first], after.points[second]
    matrix, agreeing = _fitted(to, at)
    if matrix is None or agreeing.sum() < FEWEST:
        return None
    at, to = at[agreeing], to[agreeing]
    if agreeing.mean() < _LEAST_AGREEING or not _is_spread(before, at, after, to):
        return None
    whole = _in_full(matrix, before.scale, after.scale)
    if not is_plausible(whole, (before.width, before.height), (after.width, after.height)):
        return None
    return Laid(whole, len(at), len(first), _miss(matrix, to, at))


def lay_by_hand(pairs: Sequence[tuple[tuple[float, float], tuple[float, float]]]) -> Laid:
    """How the second picture lies on the first by points shown on both: (first, second) each.

    Four pairs always fit exactly, so that their error says nothing; six or more show it.

    Raises:
        JournalError: fewer than four pairs, or they determine nothing.
    """
    from journal.vision.squaring import homography

    found = homography([(second, first) for first, second in pairs])
    misses = [math.dist(mapped(found.matrix, second), first) ** 2 for first, second in pairs]
    error = math.sqrt(sum(misses) / len(misses))
    return Laid(found.matrix, len(pairs), len(pairs), error)


def is_plausible(matrix: Matrix, before: tuple[int, int], after: tuple[int, int]) -> bool:
    """Whether a camera can have seen it so: the frame stays convex, and of a likely size.

    Args:
        matrix: leads a point of the second picture to the first.
        before: width and height of the first picture.
        after: width and height of the second.
    """
    width, height = after
    corners = [(0.0, 0.0), (width, 0.0), (float(width), float(height)), (0.0, float(height))]
    if any(depth(matrix, corner) <= 0 for corner in corners):
        return False
    try:
        places = [mapped(matrix, corner) for corner in corners]
    except JournalError:
        return False
    turns = [_turn(places[n - 2], places[n - 1], places[n]) for n in range(4)]
    if not all(turn > 0 for turn in turns):
        return False
    area = sum(a.x * b.y - b.x * a.y for a, b in zip(places, [*places[1:], places[0]], strict=True))
    scaling = area / 2 / (before[0] * before[1])
    if not 1 / _MOST_SCALING < scaling < _MOST_SCALING:
        return False
    # A quadrilateral whose one corner is drawn out far is no photo of a car in a garage.
    return max(turns) < _MOST_SCALING * min(turns)


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)


def _matches(before: Features, after: Features) -> "tuple[NDArray[Any], NDArray[Any]]":
    """Features that are each other's nearest, and from both sides much nearer than the next.

    The numbers are of length 1, so that one product of matrices gives every distance.
    """
    import numpy as np

    none = np.zeros(0, np.intp)
    if min(len(before.numbers), len(after.numbers)) < _NEXT:
        return none, none
    alike = before.numbers @ after.numbers.T
    there, is_clear = _nearest(alike)
    back, is_clear_back = _nearest(alike.T)
    first = np.arange(len(there))
    mutual = is_clear & is_clear_back[there] & (back[there] == first)
    return first[mutual], there[mutual]


def _nearest(alike: "NDArray[Any]") -> "tuple[NDArray[Any], NDArray[Any]]":
    """For each row the column most alike, and whether the next is far enough behind it."""
    import numpy as np

    rows = np.arange(len(alike))
    best = alike.argmax(axis=1)
    first = alike[rows, best]
    alike[rows, best] = -1.0
    second = alike.max(axis=1)
    alike[rows, best] = first
    # Between numbers of length 1 the square of the distance is 2 - 2 alike.
    return best, (1.0 - first) < _RATIO**2 * (1.0 - second)


def _fitted(
    sources: "NDArray[Any]", targets: "NDArray[Any]"
) -> "tuple[Matrix | None, NDArray[Any]]":
    import cv2
    import numpy as np

    # It gives None where there is none, which its types don't say.
    found: Any = cv2.findHomography(
        sources, targets, cv2.USAC_MAGSAC, _NEAR, maxIters=10_000, confidence=0.999
    )
    matrix, mask = found
    if matrix is None or mask is None:
        return None, np.zeros(len(sources), bool)
    return tuple(float(number) for number in matrix.ravel()), mask.ravel().astype(bool)


def _is_spread(before: Features, at: "NDArray[Any]", after: Features, to: "NDArray[Any]") -> bool:
    """Whether the points lie over enough of both pictures to say how the rest lies."""
    import cv2

    for picture, places in ((before, at), (after, to)):
        whole = picture.width * picture.height / picture.scale**2
        if cv2.contourArea(cv2.convexHull(places)) < _LEAST_SPREAD * whole:
            return False
    return True


def _in_full(matrix: Matrix, before: float, after: float) -> Matrix:
    """A matrix between the reduced pictures as one between the pictures themselves."""
    enlarged = scaled_about((0.0, 0.0), before)
    reduced = scaled_about((0.0, 0.0), 1 / after)
    return unit(product(product(enlarged, matrix), reduced))


def _miss(matrix: Matrix, sources: "NDArray[Any]", targets: "NDArray[Any]") -> float:
    import cv2
    import numpy as np

    square = np.array(matrix).reshape(3, 3)
    led = cv2.perspectiveTransform(sources.reshape(-1, 1, 2), square).reshape(-1, 2)
    return float(np.sqrt(((led - targets) ** 2).sum(axis=1).mean()))
