"""How alike two pictures are: histograms of oriented gradients, which paint does not change.

After Dalal and Triggs, "Histograms of Oriented Gradients for Human Detection" (CVPR 2005): the
directions of edges counted in cells, blocks of two by two cells brought to one length, clipped and
brought to one length again. Colour plays no part: a place is photographed rusty, grey and painted.
"""

import io
from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray

Grey = NDArray[np.uint8]
Features = NDArray[np.float32]

#: Pictures are compared in squares of this side, whatever their shape, in pixels.
SIDE = 128
_CELL = 16
_BINS = 9
_CELLS = SIDE // _CELL
_CLIP = 0.2
_EPSILON = 1e-2

#: How many numbers tell what one picture looks like.
LENGTH = (_CELLS - 1) ** 2 * 4 * _BINS

#: The name under which kept features are found again; another way of counting gets another name.
KIND = "hog-128-16-9"


def small_grey(jpeg: bytes, turn: int = 0) -> Grey | None:
    """A picture as a grey square, turned clockwise by degrees; None if it can't be decoded."""
    from PIL import Image

    try:
        with Image.open(io.BytesIO(jpeg)) as image:
            image.draft("L", (SIDE, SIDE))
            small = image.convert("L").resize((SIDE, SIDE), Image.Resampling.BOX)
    except (OSError, ValueError, SyntaxError):
        return None
    grey: Grey = np.rot90(np.asarray(small, np.uint8), -(turn // 90) % 4)
    return grey


def histograms(grey: NDArray[Any]) -> Features:
    """The directions of edges in each cell of a grey square: (8, 8, 9), strongest edges heaviest.

    Directions from 0 to 180 degrees, each edge shared between the two nearest of 9.
    """
    # The root tames lamps and flashes, as the authors found.
    light = np.sqrt(grey.astype(np.float32))
    across, down = np.zeros_like(light), np.zeros_like(light)
    across[:, 1:-1] = light[:, 2:] - light[:, :-2]
    down[1:-1] = light[2:] - light[:-2]
    strength = np.hypot(across, down)
    direction = np.mod(np.arctan2(down, across), np.float32(np.pi)) * np.float32(_BINS / np.pi)
    direction -= np.float32(0.5)
    lower = np.floor(direction).astype(np.int32)
    share = direction - lower
    rows, columns = np.mgrid[:SIDE, :SIDE] // _CELL
    first = (rows * _CELLS + columns) * _BINS
    counts = np.bincount(
        np.concatenate([(first + lower % _BINS).ravel(), (first + (lower + 1) % _BINS).ravel()]),
        np.concatenate([(strength * (1 - share)).ravel(), (strength * share).ravel()]),
        _CELLS * _CELLS * _BINS,
    )
    return counts.reshape(_CELLS, _CELLS, _BINS).astype(np.float32)


def features(grey: NDArray[Any]) -> Features:
    """What a grey square of 128 x 128 looks like: numbers from 0 to 0.2, block by block."""
    cells = histograms(grey)
    blocks = np.concatenate(
        [cells[:-1, :-1], cells[:-1, 1:], cells[1:, :-1], cells[1:, 1:]], axis=2
    )
    blocks = np.minimum(_of_one_length(blocks), np.float32(_CLIP))
    return np.asarray(np.minimum(_of_one_length(blocks), 1.0).ravel(), np.float32)


def _of_one_length(blocks: Features) -> Features:
    length = np.sqrt((blocks * blocks).sum(axis=2, keepdims=True) + np.float32(_EPSILON))
    return np.asarray(blocks / length, np.float32)


def pack(found: Features) -> bytes:
    """Features as one byte a number, to be kept."""
    small: Grey = np.clip(np.rint(found * np.float32(255)), 0, 255).astype(np.uint8)
    return small.tobytes()


def unpack(kept: bytes) -> Features | None:
    """Features that were kept; None if these bytes are none."""
    if len(kept) != LENGTH:
        return None
    return np.frombuffer(kept, np.uint8).astype(np.float32) / np.float32(255)


def unpack_all(kept: Sequence[bytes | None]) -> NDArray[np.float32]:
    """Kept features as rows of length 1; a row of zeros where there are none."""
    blank = bytes(LENGTH)
    whole = b"".join(one if one is not None and len(one) == LENGTH else blank for one in kept)
    rows = np.frombuffer(whole, np.uint8).reshape(len(kept), LENGTH).astype(np.float32)
    lengths = np.sqrt(np.einsum("ij,ij->i", rows, rows))[:, None]
    return np.asarray(rows / np.where(lengths > 0, lengths, 1), np.float32)


def likeness(one: Features, others: NDArray[np.float32]) -> NDArray[np.float32]:
    """How alike a picture is to others, given as rows of length 1: 0 to 1; 0 for zeros."""
    length = float(np.linalg.norm(one))
    return np.asarray(others @ (one / np.float32(length or 1)), np.float32)
