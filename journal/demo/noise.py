"""Textures of noise that repeat without a seam, made once and read by every picture."""

from functools import cache

import numpy as np
import numpy.typing as npt

#: One number a pixel.
Plane = npt.NDArray[np.float32]

#: Side of a texture in texels; a power of two, so that wrapping round is a mask.
SIZE = 1024


def _spectrum(stretch: float) -> Plane:
    """Distance from the origin of each frequency, the x axis stretched by ``stretch``."""
    across = np.fft.rfftfreq(SIZE).astype(np.float32) * np.float32(stretch)
    down = np.fft.fftfreq(SIZE).astype(np.float32)
    radius: Plane = np.hypot(across[None, :], down[:, None]).astype(np.float32)
    radius[0, 0] = 1.0
    return radius


@cache
def texture(seed: int, roughness: float, stretch: float = 1.0) -> Plane:
    """Noise of mean 0 and deviation 1; ``roughness`` 0 is fine grain, 2 is soft clouds.

    A ``stretch`` over 1 draws it out along x, as brushing and rolling draw out marks in steel.
    """
    rng = np.random.default_rng(seed)
    spectrum = np.fft.rfft2(rng.standard_normal((SIZE, SIZE), dtype=np.float32))
    spectrum *= _spectrum(stretch) ** np.float32(-roughness)
    spectrum[0, 0] = 0
    field = np.fft.irfft2(spectrum, s=(SIZE, SIZE)).astype(np.float32)
    result: Plane = field / field.std()
    result.setflags(write=False)
    return result


def clouds() -> Plane:
    """Soft noise: stains, fading, the run of rust."""
    return texture(11, 1.9)


def crumbs() -> Plane:
    """Rough noise with detail of every size: rust, underseal, ragged edges."""
    return texture(12, 1.15)


def grain() -> Plane:
    """Fine noise: sand, orange peel, dust."""
    return texture(13, 0.35)


def brushed() -> Plane:
    """Noise drawn out along x: grinding marks and rolled steel."""
    return texture(14, 0.75, 70.0)


def sample(field: Plane, x: Plane, y: Plane, shift: tuple[float, float] = (0, 0)) -> Plane:
    """The texture at texels ``x``, ``y``, moved by ``shift`` and wrapped round."""
    mask = SIZE - 1
    column = (x + np.float32(shift[0] % SIZE + SIZE * 8)).astype(np.int32) & mask
    row = (y + np.float32(shift[1] % SIZE + SIZE * 8)).astype(np.int32) & mask
    # Machine-sized numbers and a mode that needs no check: four times as quick.
    result: Plane = np.take(field, (row * SIZE + column).astype(np.intp), mode="wrap")
    return result


def lookup(table: Plane, position: Plane) -> Plane:
    """The table at fractional ``position``, straight between its steps, held at its ends."""
    last = len(table) - 1
    held = np.clip(position, 0, last - 0.001)
    step = held.astype(np.intp)
    part = held - step.astype(np.float32)
    result: Plane = np.take(table, step, mode="clip")
    result += np.take(np.diff(table), step, mode="clip") * part
    return result


def ramp(low: float, high: float, value: Plane) -> Plane:
    """0 below ``low``, 1 above ``high``, smooth between; falls where ``low`` is the greater."""
    part = np.clip((value - np.float32(low)) * np.float32(1 / (high - low)), 0, 1)
    result: Plane = part * part * (3 - 2 * part)
    return result
