"""One picture in the making: where each pixel lies on the metal, how high, and of what."""

import math
from collections.abc import Iterator
from copy import copy
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from journal.demo.noise import Plane, sample

#: Red, green and blue as shares of full light.
Colour = tuple[float, float, float]

#: How far the camera is from the middle of the picture, against the width it sees.
_FOCAL = 1.25


@dataclass(frozen=True, slots=True)
class Framing:
    """Where the camera stood: the spot in the middle and the width it saw in millimetres.

    ``yaw`` turns round the upright, ``pitch`` looks up from below, ``roll`` tilts; degrees.
    ``portrait`` is a camera held upright.
    """

    x: float = 0.0
    y: float = 0.0
    width: float = 560.0
    yaw: float = 0.0
    pitch: float = 0.0
    roll: float = 0.0
    portrait: bool = False


def _turning(framing: Framing) -> npt.NDArray[np.float64]:
    yaw, pitch, roll = (math.radians(a) for a in (framing.yaw, framing.pitch, framing.roll))
    about_y = np.array(
        [[math.cos(yaw), 0, math.sin(yaw)], [0, 1, 0], [-math.sin(yaw), 0, math.cos(yaw)]]
    )
    about_x = np.array(
        [[1, 0, 0], [0, math.cos(pitch), -math.sin(pitch)], [0, math.sin(pitch), math.cos(pitch)]]
    )
    about_z = np.array(
        [[math.cos(roll), -math.sin(roll), 0], [math.sin(roll), math.cos(roll), 0], [0, 0, 1]]
    )
    result: npt.NDArray[np.float64] = about_y @ about_x @ about_z
    return result


def _picture_to_plane(framing: Framing) -> npt.NDArray[np.float64]:
    """What leads from the picture (its middle 0, its long side 1) to millimetres on the metal."""
    turn = _turning(framing)
    distance = framing.width * _FOCAL
    eye = np.array([framing.x, framing.y, 0]) + turn @ np.array([0, 0, distance])
    ray = turn @ np.diag([1.0, 1.0, -1.0])
    found: npt.NDArray[np.float64] = np.array(
        [eye[0] * ray[2] - eye[2] * ray[0], eye[1] * ray[2] - eye[2] * ray[1], ray[2]]
    ) @ np.diag([1.0, 1.0, _FOCAL])
    return found


def plane_to_picture(framing: Framing) -> npt.NDArray[np.float64]:
    """The way back: from millimetres on the metal to the picture."""
    return np.asarray(np.linalg.inv(_picture_to_plane(framing)), np.float64)


class Canvas:
    """Planes of one size: place, height, colour, gloss, metal and shade of every pixel.

    ``x`` and ``y`` are millimetres on the metal, y down; ``z`` is the height towards the camera.
    ``metal`` is 1 where bare metal shows, ``shade`` multiplies all light. ``body`` is the panel the
    picture is about: 1 on it, 0 on what lies behind or beside it.
    """

    def __init__(self, size: tuple[int, int], framing: Framing, seed: int) -> None:
        width, height = size
        self.size = size
        self.seed = seed
        self.framing = framing
        # The long side of a picture always sees ``width`` millimetres, however it is held.
        longest = max(width, height)
        across = ((np.arange(width, dtype=np.float32) + 0.5 - width / 2) / longest)[None, :]
        down = ((np.arange(height, dtype=np.float32) + 0.5 - height / 2) / longest)[:, None]
        self.across, self.down = across, down
        homography = _picture_to_plane(framing)
        self._to_plane = homography
        self._to_picture = np.linalg.inv(homography)
        h = homography.astype(np.float32)
        scale = h[2, 0] * across + h[2, 1] * down + h[2, 2]
        self.x: Plane = (h[0, 0] * across + h[0, 1] * down + h[0, 2]) / scale
        self.y: Plane = (h[1, 0] * across + h[1, 1] * down + h[1, 2]) / scale
        #: Distance from the camera against that of the middle: 1 there, less where nearer.
        self.depth: Plane = (h[2, 2] / scale).astype(np.float32)
        self.pixel = framing.width / longest
        shape = (height, width)
        self.z: Plane = np.zeros(shape, np.float32)
        self.colour: Plane = np.zeros((3, *shape), np.float32)
        self.gloss: Plane = np.zeros(shape, np.float32)
        self.metal: Plane = np.zeros(shape, np.float32)
        self.shade: Plane = np.ones(shape, np.float32)
        self.body: Plane = np.ones(shape, np.float32)

    def strips(self, rows: int = 96) -> Iterator["Canvas"]:
        """The canvas in strips that share its planes, small enough to stay in the cache."""
        for first in range(0, self.size[1], rows):
            part = slice(first, first + rows)
            strip = copy(self)
            strip.down = self.down[part]
            for name in ("x", "y", "depth", "z", "gloss", "metal", "shade", "body"):
                setattr(strip, name, getattr(self, name)[part])
            strip.colour = self.colour[:, part]
            yield strip

    def noise(self, field: Plane, scale: float = 1.5, salt: int = 0, turn: float = 0.0) -> Plane:
        """Noise that sticks to the metal, ``scale`` texels a millimetre, turned by degrees."""
        spread = (self.seed * 7919 + salt * 104729) & 0xFFFFF
        shift = (spread % 1021, spread // 1021 % 1021)
        if not turn:
            return sample(field, self.x * np.float32(scale), self.y * np.float32(scale), shift)
        cosine = np.float32(math.cos(math.radians(turn)) * scale)
        sine = np.float32(math.sin(math.radians(turn)) * scale)
        return sample(
            field, self.x * cosine + self.y * sine, self.y * cosine - self.x * sine, shift
        )

    def paint(
        self,
        mask: Plane,
        colour: Colour,
        *,
        tone: Plane | None = None,
        gloss: float | None = None,
        metal: float | None = None,
    ) -> None:
        """Lay a colour, lighter or darker by ``tone``, over all that ``mask`` covers."""
        if not mask.any():
            return
        for plane, share in zip(self.colour, colour, strict=True):
            laid = np.float32(share) if tone is None else tone * np.float32(share)
            plane += mask * (laid - plane)
        if gloss is not None:
            self.gloss += mask * (np.float32(gloss) - self.gloss)
        if metal is not None:
            self.metal += mask * (np.float32(metal) - self.metal)

    def blend(self, mask: Plane, colours: Plane) -> None:
        """Lay three planes of colour, dull and no metal, over all that ``mask`` covers."""
        for plane, laid in zip(self.colour, colours, strict=True):
            plane += mask * (laid - plane)
        self.gloss += mask * (np.float32(0.03) - self.gloss)
        self.metal -= mask * self.metal

    def tint(self, mask: Plane, factor: Colour) -> None:
        """Multiply the colour by ``factor`` as far as ``mask`` says."""
        for plane, tone in zip(self.colour, factor, strict=True):
            if tone != 1:
                plane *= 1 + mask * np.float32(tone - 1)

    def sink(self, mask: Plane, height: float | Plane) -> None:
        """Bring the surface to ``height`` as far as ``mask`` says."""
        if not mask.any():
            return
        self.z += mask * (height - self.z)

    def spot(self, x: float, y: float) -> tuple[float, float]:
        """Where on the picture, as shares of its width and height, a spot on the metal lies."""
        a, b, c = self._to_picture @ np.array([x, y, 1.0])
        longest = max(self.size)
        return (
            float(a / c * longest / self.size[0] + 0.5),
            float(b / c * longest / self.size[1] + 0.5),
        )
