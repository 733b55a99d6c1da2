"""Two pictures of one place brought to one frame, so that the later lies over the earlier."""

from typing import TYPE_CHECKING, Any

from journal.domain.homographies import Matrix, product
from journal.domain.pictures import Picture

if TYPE_CHECKING:
    from numpy.typing import NDArray


def equally_framed(
    before: Picture,
    after: Picture,
    matrix: Matrix,
    part: tuple[float, float, float, float],
    longest: int,
) -> tuple[Picture, Picture]:
    """The same part of both pictures, pixel for pixel; its longer side has ``longest`` pixels.

    Args:
        before: the picture whose part is shown.
        after: the one that is laid on it.
        matrix: leads from the pixels of ``after`` to those of ``before``.
        part: left, top, right and bottom of the part, in pixels of ``before``.
        longest: the longer side of both results, in pixels.
    """
    left, top, right, low = part
    wide, high = right - left, low - top
    scale = longest / max(wide, high)
    size = max(1, round(wide * scale)), max(1, round(high * scale))
    moved: Matrix = (scale, 0.0, -left * scale, 0.0, scale, -top * scale, 0.0, 0.0, 1.0)
    return _drawn(before, moved, size), _drawn(after, product(moved, matrix), size)


def of_one_height(before: Picture, after: Picture, longest: int) -> tuple[Picture, Picture]:
    """Both pictures whole, of one height; the wider of them has at most ``longest`` pixels."""
    high = min(longest, before.height, after.height)
    for one in (before, after):
        high = min(high, longest * one.height // one.width)
    high = max(1, high)
    made = [_resized(one, max(1, round(one.width * high / one.height)), high) for one in
            (before, after)]  # fmt: skip
    return made[0], made[1]


def pixels_of(picture: Picture) -> "NDArray[Any]":
    """A picture's pixels: rows x columns x 3, RGB."""
    import numpy as np

    return np.frombuffer(picture.rgb, np.uint8).reshape(picture.height, picture.width, 3)


def _resized(picture: Picture, wide: int, high: int) -> Picture:
    import cv2

    made = cv2.resize(pixels_of(picture), (wide, high), interpolation=cv2.INTER_AREA)
    return Picture(wide, high, made.tobytes())


def _drawn(picture: Picture, matrix: Matrix, size: tuple[int, int]) -> Picture:
    import cv2
    import numpy as np

    # Pixels are squares with their middle at a half; OpenCV counts from the middle of the first.
    whole = product((1, 0, -0.5, 0, 1, -0.5, 0, 0, 1), matrix)
    whole = product(whole, (1, 0, 0.5, 0, 1, 0.5, 0, 0, 1))
    drawn = cv2.warpPerspective(
        pixels_of(picture),
        np.array(whole, dtype=np.float64).reshape(3, 3),
        size,
        flags=cv2.INTER_LINEAR,
        borderMode=cv2.BORDER_REPLICATE,
    )
    return Picture(size[0], size[1], drawn.tobytes())
