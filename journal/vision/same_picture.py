"""Whether two files show one and the same picture though their bytes differ: a copy, smaller, new.

A difference hash finds candidates; since 64 signs can agree by chance, the greys themselves then
have to run together.
"""

import io
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from journal.vision import difference

#: Copies of one picture differ in at most so many of the 64 signs; other pictures mostly in 32.
MOST_APART = 12
#: How closely the greys of two copies run together, 1 for the very same.
LEAST_ALIKE = 0.93
_SIDE = 48


@dataclass(frozen=True, slots=True)
class Sight:
    """What is kept of a picture to compare it: 64 signs, and 48 by 48 greys of mean 0, length 1."""

    signs: int
    greys: NDArray[np.float32]


def sight(image: Any) -> Sight:
    """What there is to see of a picture (Pillow's), upright."""
    from PIL import Image

    grey = image.convert("L")
    small = np.asarray(grey.resize((_SIDE, _SIDE), Image.Resampling.BOX), np.float32).ravel()
    small = small - small.mean()
    length = float(np.linalg.norm(small))
    return Sight(difference.signs(grey), small / np.float32(length or 1))


def sight_of_jpeg(jpeg: bytes) -> Sight | None:
    """The same of a small JPEG, None if it can't be decoded."""
    from PIL import Image

    try:
        with Image.open(io.BytesIO(jpeg)) as image:
            return sight(image)
    except (OSError, ValueError, SyntaxError):
        return None


def apart(one: Sight, other: Sight) -> int:
    """In how many of the 64 signs two pictures differ."""
    return (one.signs ^ other.signs).bit_count()


def alike(one: Sight, other: Sight) -> float:
    """How closely the greys of two pictures run together, -1 to 1."""
    return float(one.greys @ other.greys)


def is_same(one: Sight, other: Sight) -> bool:
    """Whether two files show one and the same picture."""
    return apart(one, other) <= MOST_APART and alike(one, other) >= LEAST_ALIKE
