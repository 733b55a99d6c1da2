"""Difference hashes: 64 signs of a picture by which bursts and copies are found quickly.

The picture as 9 by 8 greys, each told to be darker or lighter than its neighbour (after N.
Krawetz, "Kind of Like That", 2013); bit for bit what ``dhash`` of the ``imagehash`` package gives.
"""

import io
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from numpy.typing import NDArray

#: The name under which kept hashes are found again; another way of counting gets another name.
KIND = "dhash-9-8"
_ACROSS, _DOWN = 9, 8
_BANDS = 4
_BAND = 0xFFFF
#: Pairs further apart than this are not found by bands of 16 signs for sure.
FURTHEST = _BANDS - 1


def signs(image: Any) -> int:
    """The 64 signs of a picture (Pillow's), upright, the first in the highest place."""
    import numpy as np
    from PIL import Image

    grey = image.convert("L").resize((_ACROSS, _DOWN), Image.Resampling.LANCZOS)
    few = np.asarray(grey, np.int16)
    return int.from_bytes(np.packbits((few[:, 1:] > few[:, :-1]).ravel()).tobytes(), "big")


def signs_of_jpeg(jpeg: bytes) -> int | None:
    """The same of a small JPEG, None if it can't be decoded."""
    from PIL import Image

    try:
        with Image.open(io.BytesIO(jpeg)) as image:
            return signs(image)
    except (OSError, ValueError, SyntaxError):
        return None


def pack(found: int) -> bytes:
    """Signs as 8 bytes, to be kept."""
    return found.to_bytes(8, "big")


def unpack(kept: bytes) -> int:
    """Signs that were kept."""
    return int.from_bytes(kept, "big")


def pairs_within(hashes: Sequence[int], most: int = FURTHEST) -> list[tuple[int, int]]:
    """The pairs of places whose signs differ in at most ``most`` of 64, 3 or fewer.

    Two that differ in three places agree in at least one of four bands of 16 signs, so that only
    those that share a band are compared.
    """
    import numpy as np

    if not 0 <= most <= FURTHEST:
        raise ValueError(f"bands of 16 signs find what is 0 to {FURTHEST} apart, not {most}")
    values = np.array(hashes, np.uint64)
    found = []
    for band in range(_BANDS):
        part = (values >> np.uint64(16 * band)).astype(np.uint16)
        order = np.argsort(part, kind="stable")
        part, shown = part[order], values[order]
        # Those of one band lie side by side: each is compared with the next, the next but one ...
        at, step = np.arange(len(order)), 1
        while len(at := at[at + step < len(order)]):
            at = at[part[at] == part[at + step]]
            near = at[np.bitwise_count(shown[at] ^ shown[at + step]) <= most]
            found.append(_keys(order[near], order[near + step], len(order)))
            step += 1
    keys = np.unique(np.concatenate(found or [np.zeros(0, np.int64)]))
    return [(int(key) // len(values), int(key) % len(values)) for key in keys]


def _keys(one: "NDArray[Any]", other: "NDArray[Any]", count: int) -> "NDArray[Any]":
    """A number for each pair of places, the lower place first."""
    import numpy as np

    return np.asarray(np.minimum(one, other) * count + np.maximum(one, other))
