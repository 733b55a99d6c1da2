"""The shape of the whole car: its hull and its cabin as points in space.

Car coordinates are millimetres: x from the front back, y to the car's left, z up from the ground.
The body is the story's own; it follows no car that was ever built.
"""

import math
from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

Points = npt.NDArray[np.float64]

#: A spot of the car.
Spot = tuple[float, float, float]

LENGTH, WHEEL_FRONT, WHEEL_REAR, WHEEL_RADIUS = 4230.0, 790.0, 3280.0, 305.0

_STATIONS = (0, 60, 200, 500, 1000, 1250, 2000, 3000, 3400, 3900, 4100, 4190, LENGTH)
_TOP = (700, 760, 800, 835, 870, 890, 900, 900, 895, 880, 865, 840, 800)
_WIDE = (690, 730, 762, 782, 790, 792, 795, 795, 792, 780, 765, 740, 700)
_FOOT = (430, 380, 320, 260, 235, 230, 230, 230, 240, 290, 330, 370, 430)
_SECTION = (
    (0.88, 0.0), (0.95, 0.06), (0.985, 0.2), (1.0, 0.42), (0.995, 0.62), (0.985, 0.69),
    (0.985, 0.75), (0.965, 0.88), (0.92, 0.955), (0.84, 0.985), (0.55, 1.0), (0.0, 1.012),
)  # fmt: skip


def _at(x: float | Points, table: Sequence[float]) -> Points:
    return np.asarray(np.interp(x, _STATIONS, table))


def hull_spot(x: float, share: float, side: int = 1) -> Spot:
    """The spot on the hull's side at ``x``, ``share`` of the way up from its foot to its top."""
    low, high = float(_at(x, _FOOT)), float(_at(x, _TOP))
    wide = np.interp(share, [s[1] for s in _SECTION], [s[0] for s in _SECTION])
    return x, side * float(wide) * float(_at(x, _WIDE)), low + share * (high - low)


def hull() -> Points:
    """The hull as a grid of points, stations by section."""
    stations = np.concatenate(
        [np.linspace(0, 200, 8), np.linspace(260, 3960, 56), np.linspace(4000, LENGTH, 10)]
    )
    steps = np.linspace(0, len(_SECTION) - 1, 34)
    wide = np.interp(steps, range(len(_SECTION)), [s[0] for s in _SECTION])
    share = np.interp(steps, range(len(_SECTION)), [s[1] for s in _SECTION])
    wide = np.concatenate([wide, -wide[-2::-1]])
    share = np.concatenate([share, share[-2::-1]])
    low, high, half = _at(stations, _FOOT), _at(stations, _TOP), _at(stations, _WIDE)
    grid = np.empty((len(stations), len(wide), 3))
    grid[..., 0] = stations[:, None]
    grid[..., 1] = half[:, None] * wide
    grid[..., 2] = low[:, None] + (high - low)[:, None] * share
    caps = []
    for end, out in ((0, -14.0), (-1, 14.0)):
        rings = []
        middle = np.array([grid[end, 0, 0], 0, grid[end, :, 2].mean()])
        for scale in (0.97, 0.8, 0.4, 0.0):
            ring = middle + (grid[end] - middle) * scale
            ring[:, 0] += out * (1 - scale * scale)
            rings.append(ring)
        caps.append(np.stack(rings if end else rings[::-1]))
    return np.concatenate([caps[0], grid, caps[1]])


def cabin_spot(along: float, up: float, side: float) -> Spot:
    """The spot of the cabin: ``along`` 0 at the windscreen to 1, ``up`` 0 at the belt to 1."""
    front, rear = 1230 + 470 * up, 3450 - 400 * up**1.15
    half = 735 - 120 * up
    return front + (rear - front) * along, side * half, 885 + 515 * up


def cabin() -> Points:
    """The cabin as rings from the belt up to the middle of the roof."""
    angles = np.linspace(0, math.tau, 97)
    rings = [_ring(angles, up, 1.0, 885 + 515 * up) for up in (*np.linspace(0, 0.96, 14), 1.0)]
    crown = ((0.975, 14), (0.93, 25), (0.85, 33), (0.6, 44), (0.3, 49), (0.0, 50))
    rings += [_ring(angles, 1.0, scale, 1400.0 + rise) for scale, rise in crown]
    return np.stack(rings)


def _ring(angles: Points, up: float, scale: float, z: float) -> Points:
    front, rear = 1230 + 470 * up, 3450 - 400 * up**1.15
    power = 2 / 7.0
    cosine, sine = np.cos(angles), np.sin(angles)
    x = (front + rear) / 2 + scale * (rear - front) / 2 * np.sign(cosine) * np.abs(cosine) ** power
    y = scale * (735 - 120 * up) * np.sign(sine) * np.abs(sine) ** power
    return np.stack([x, y, np.full_like(x, z)], axis=-1)
