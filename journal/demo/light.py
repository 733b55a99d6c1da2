"""The light of a workshop on metal: what the camera sees of a canvas."""

from dataclasses import dataclass
from functools import cache

import numpy as np
import numpy.typing as npt
from PIL import Image

from journal.demo.canvas import Canvas, Colour
from journal.demo.noise import Plane, lookup


@dataclass(frozen=True, slots=True)
class Light:
    """One kind of light.

    ``toward`` points to the lamp (x right, y down, z to the camera); a ``near`` lamp falls off
    from the spot it stands over. ``room`` is the brightness that gloss mirrors, from the floor up
    to the ceiling. ``vignette`` darkens the corners, ``grain`` is the camera's noise in levels.
    """

    toward: Colour
    key: Colour
    fill: Colour
    room: tuple[float, ...]
    near: float = 0.0
    vignette: float = 0.25
    grain: float = 3.0


LIGHTS = {
    "day": Light(
        toward=(-0.45, -0.65, 0.62),
        key=(0.62, 0.67, 0.74),
        fill=(0.34, 0.36, 0.40),
        room=(0.03, 0.05, 0.07, 0.09, 0.11, 0.13, 0.2, 3.4, 4.2, 4.0, 0.5, 0.3, 0.25, 0.2),
        vignette=0.3,
        grain=2.5,
    ),
    "tube": Light(
        toward=(0.15, -0.8, 0.58),
        key=(0.66, 0.70, 0.62),
        fill=(0.30, 0.33, 0.30),
        room=(0.03, 0.04, 0.05, 0.06, 0.07, 0.09, 0.1, 0.16, 5.0, 0.25, 0.25, 5.0, 0.25, 0.15),
        vignette=0.3,
        grain=4.0,
    ),
    "lamp": Light(
        toward=(0.6, -0.35, 0.72),
        key=(1.15, 0.90, 0.60),
        fill=(0.13, 0.115, 0.11),
        room=(0.02, 0.03, 0.05, 0.06, 0.08, 0.1, 1.2, 5.5, 2.0, 0.15, 0.1, 0.08, 0.06, 0.05),
        near=1.0,
        vignette=0.4,
        grain=6.5,
    ),
    "flash": Light(
        toward=(0.05, -0.12, 0.99),
        key=(0.92, 0.92, 0.95),
        fill=(0.10, 0.10, 0.11),
        room=(0.02, 0.03, 0.04, 0.05, 0.07, 0.12, 0.6, 6.0, 0.6, 0.12, 0.07, 0.05, 0.04, 0.03),
        near=0.8,
        vignette=0.45,
        grain=3.5,
    ),
    "yard": Light(
        toward=(0.35, -0.75, 0.56),
        key=(0.86, 0.80, 0.70),
        fill=(0.30, 0.35, 0.43),
        room=(0.18, 0.2, 0.24, 0.28, 0.3, 0.2, 0.4, 2.0, 2.6, 2.3, 1.8, 1.4, 1.1, 1.0),
        vignette=0.2,
        grain=2.0,
    ),
}


def _soften(plane: Plane, factor: int) -> Plane:
    small = Image.fromarray(plane).reduce(factor)
    size = (plane.shape[1], plane.shape[0])
    result: Plane = np.asarray(small.resize(size, Image.Resampling.BILINEAR))
    return result


@cache
def _room_table(room: tuple[float, ...]) -> Plane:
    steps = np.linspace(0, len(room) - 1, 256)
    table: Plane = np.interp(steps, np.arange(len(room)), room).astype(np.float32)
    return table


@cache
def _tone_table() -> npt.NDArray[np.uint8]:
    """Share of light to level: a film-like shoulder over the usual gamma."""
    light = np.linspace(0, 4, 4096)
    shoulder = light * 1.25 * (1 + light / 9.0) / (1 + light * 0.75)
    level = np.clip(shoulder, 0, 1) ** (1 / 2.2)
    level += 0.16 * (level - 0.42) * np.sin(np.pi * level)
    return (255 * np.clip(level, 0, 1)).astype(np.uint8)


def tones(light: npt.NDArray[np.float64]) -> npt.NDArray[np.float64]:
    """Levels, 0 to 255, of shares of full light."""
    level = np.clip(light * 1024, 0, 4095).astype(np.intp)
    return _tone_table()[level].astype(np.float64)


def _lit(canvas: Canvas, light: Light, right: Plane, down: Plane) -> Plane:
    """How much of the lamp's light each spot takes."""
    toward = light.toward
    length = np.sqrt(1 + right * right + down * down)
    facing = (toward[2] - toward[0] * right - toward[1] * down) / length
    lit: Plane = np.clip(facing, 0, None).astype(np.float32)
    if light.near:
        framing = canvas.framing
        reach = framing.width * 0.75
        dx = (canvas.x - (framing.x + toward[0] * 160)) / reach
        dy = (canvas.y - (framing.y + toward[1] * 160)) / reach
        lit *= (1 + 0.5 * light.near) / (1 + light.near * 1.7 * (dx * dx + dy * dy))
    return lit


def _seen(canvas: Canvas, light: Light, slopes: tuple[Plane, Plane], open_sky: Plane) -> Plane:
    """Light that reaches the camera from each spot, three planes."""
    right, down = slopes
    lit = _lit(canvas, light, right, down)
    open_sky = open_sky * canvas.shade
    open_sky *= 1 - light.vignette * (canvas.across**2 + canvas.down**2) * 2.2
    tilt = np.float32(canvas.framing.pitch / 120)
    height = 0.41 + down * 0.42 + tilt - canvas.down * 0.35 + right * 0.08
    mirrored = lookup(_room_table(light.room), height * 255)
    mirrored *= open_sky
    dull = (1 - canvas.metal * 0.72) * open_sky
    # Paint mirrors little but sharply; bare metal mirrors much, and is never brighter than white.
    strength = canvas.gloss * np.where(
        canvas.metal > 0.5, 0.72 * np.minimum(mirrored, 1.5), 0.1 * mirrored
    )
    seen = np.empty((3, *canvas.z.shape), np.float32)
    for channel in range(3):
        tone = canvas.colour[channel]
        sheen = (1 - canvas.metal) + canvas.metal * tone * 1.6
        glow = (light.key[channel] + light.fill[channel]) * 0.95
        seen[channel] = tone * dull * (light.key[channel] * lit + light.fill[channel])
        seen[channel] += strength * sheen * np.float32(glow)
    return seen


def _moved(plane: Plane, across: int, down: int) -> Plane:
    """The plane as seen so many pixels to the right and down, its edges drawn out."""
    height, width = plane.shape
    rows = np.clip(np.arange(height) + down, 0, height - 1)
    columns = np.clip(np.arange(width) + across, 0, width - 1)
    return plane[rows][:, columns]


def shine(canvas: Canvas, light: Light) -> Image.Image:
    """The canvas under a light, as a picture of the canvas's size."""
    z = canvas.z
    step = np.float32(0.5 / canvas.pixel)
    right, down = np.zeros_like(z), np.zeros_like(z)
    right[:, 1:-1] = (z[:, 2:] - z[:, :-2]) * step
    down[1:-1] = (z[2:] - z[:-2]) * step
    wide, close = _soften(z, 16), _soften(z, 4)
    # What stands between a spot and the lamp throws a short soft shadow on it.
    thrown = _moved(close, *(round(light.toward[i] * 14 / canvas.pixel) for i in (0, 1)))
    picture = np.empty((*z.shape, 3), np.uint8)
    table = _tone_table()
    first = 0
    for strip in canvas.strips():
        part = slice(first, first + len(strip.z))
        first = part.stop
        dark = np.clip((wide[part] - strip.z) * 0.022, -0.12, 0.75)
        dark += np.clip((close[part] - strip.z) * 0.03, -0.1, 0.5)
        dark += np.clip((thrown[part] - strip.z - 5) * 0.02, 0, 0.4)
        open_sky = np.clip(1 - dark, 0.06, 1.15)
        seen = _seen(strip, light, (right[part], down[part]), open_sky)
        level = np.clip(seen * 1024, 0, 4095).astype(np.intp)
        picture[part] = np.take(table, level, mode="clip").transpose(1, 2, 0)
    return Image.fromarray(picture)
