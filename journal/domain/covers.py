"""Covers: boxes drawn on a photo, burnt opaque into every copy and never into the original."""

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace

from journal.domain.errors import JournalError
from journal.domain.ids import CoverBoxId, PhotoId
from journal.domain.private_words import Private

#: The smallest side of a box, as a share of the picture's.
_LEAST = 0.002


@dataclass(frozen=True, slots=True)
class CoverBox:
    """A box on a photo, as shares of the upright picture's width and height, 0 to 1.

    It is kept as the picture stands before the owner's own turn (``Photo.turn``), so that turning
    the photo never uncovers anything. ``hides`` is what it covers: with it withheld, it is burnt.
    """

    id: CoverBoxId
    photo_id: PhotoId
    x: float
    y: float
    width: float
    height: float
    hides: Private


def check_box(box: CoverBox) -> CoverBox:
    """The box cut to the picture.

    Raises:
        JournalError: nothing of it lies on the picture.
    """
    numbers = (box.x, box.y, box.width, box.height)
    if not all(math.isfinite(number) for number in numbers):
        raise JournalError("The box needs numbers for its place and size.")
    left, top = max(box.x, 0.0), max(box.y, 0.0)
    right, low = min(box.x + box.width, 1.0), min(box.y + box.height, 1.0)
    if right - left < _LEAST or low - top < _LEAST:
        raise JournalError("The box is too small, or lies beside the picture.")
    return replace(box, x=left, y=top, width=right - left, height=low - top)


def turned(box: CoverBox, degrees: int) -> CoverBox:
    """The box on the picture turned clockwise by 0, 90, 180 or 270 degrees."""
    x, y, wide, high = box.x, box.y, box.width, box.height
    for _ in range(degrees // 90 % 4):
        x, y, wide, high = 1.0 - y - high, x, high, wide
    return replace(box, x=x, y=y, width=wide, height=high)


def on_pixels(box: CoverBox, width: int, height: int) -> tuple[int, int, int, int]:
    """Left, top, right, bottom in pixels, the last two outside the box.

    Rounded outwards and a pixel more: what scaling mixed into the neighbours is covered too.
    """
    left, top = math.floor(box.x * width) - 1, math.floor(box.y * height) - 1
    right = math.ceil((box.x + box.width) * width) + 1
    low = math.ceil((box.y + box.height) * height) + 1
    return max(left, 0), max(top, 0), min(right, width), min(low, height)


def boxes_on(boxes: Iterable[CoverBox], photo_id: PhotoId) -> tuple[CoverBox, ...]:
    """The boxes on one photo."""
    return tuple(box for box in boxes if box.photo_id == photo_id)
