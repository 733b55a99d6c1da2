"""Simple solids lying on a canvas: bars, discs, blocks and hoses, lit like all the rest."""

import math
from collections.abc import Sequence

import numpy as np

from journal.demo.canvas import Canvas, Colour
from journal.demo.noise import Plane, clouds, crumbs, ramp
from journal.demo.outlines import Box, box_distance, ring_distance

#: What a solid is of: its colour, its gloss and how much it is bare metal.
Stuff = tuple[Colour, float, float]

CHROME: Colour = (0.66, 0.66, 0.67)
IRON: Colour = (0.13, 0.125, 0.12)
ALUMINIUM: Colour = (0.48, 0.48, 0.47)
BLACK: Colour = (0.02, 0.02, 0.021)
RED: Colour = (0.34, 0.025, 0.02)
YELLOW: Colour = (0.62, 0.42, 0.03)
WOOD: Colour = (0.26, 0.15, 0.07)


def _lay(canvas: Canvas, mask: Plane, height: Plane | float, stuff: Stuff) -> None:
    colour, gloss, metal = stuff
    canvas.paint(mask, colour, gloss=gloss, metal=metal)
    canvas.sink(mask, height)
    canvas.body *= 1 - mask
    canvas.shade += mask * (1 - canvas.shade)


def bar(
    canvas: Canvas,
    ends: tuple[float, float, float, float],
    radius: float,
    stuff: Stuff,
    lift: float = 6.0,
) -> None:
    """A round bar between two spots; ``stuff`` is its colour, gloss and metal."""
    x1, y1, x2, y2 = (np.float32(v) for v in ends)
    if float(canvas.y.min()) > max(y1, y2) + radius or float(canvas.y.max()) < min(y1, y2) - radius:
        return
    dx, dy = x2 - x1, y2 - y1
    along = np.clip(
        ((canvas.x - x1) * dx + (canvas.y - y1) * dy) / max(dx * dx + dy * dy, np.float32(1)), 0, 1
    )
    away = np.hypot(canvas.x - x1 - along * dx, canvas.y - y1 - along * dy)
    mask = ramp(radius, radius - 0.8, away)
    round_top = np.sqrt(np.clip(radius * radius - away * away, 0, None))
    height: Plane = (lift + round_top).astype(np.float32)
    _lay(canvas, mask, height, stuff)


def disc(
    canvas: Canvas,
    spot: tuple[float, float],
    radius: float,
    height: float,
    stuff: Stuff,
    bevel: float = 5.0,
) -> None:
    """A flat disc ``height`` mm high with a bevelled edge."""
    away = ring_distance(canvas, *spot, radius)
    _lay(canvas, ramp(0.5, -0.5, away), ramp(0, -bevel, away) * height, stuff)


def block(canvas: Canvas, box: Box, height: float, stuff: Stuff, bevel: float = 6.0) -> None:
    """A flat block ``height`` mm high with a bevelled edge."""
    away = box_distance(canvas, box)
    _lay(canvas, ramp(0.5, -0.5, away), ramp(0, -bevel, away) * height, stuff)


def hose(
    canvas: Canvas,
    spots: Sequence[tuple[float, float]],
    radius: float,
    stuff: Stuff,
    lift: float = 10.0,
) -> None:
    """A hose or cable through the spots, in smooth bends."""
    points = np.array(spots, float)
    steps = np.linspace(0, len(points) - 1, 9 * (len(points) - 1) + 1)
    base = np.clip(steps.astype(int), 0, len(points) - 2)
    part = steps - base
    before, after = np.clip(base - 1, 0, None), np.clip(base + 2, None, len(points) - 1)
    p0, p1, p2, p3 = points[before], points[base], points[base + 1], points[after]
    t = part[:, None]
    curve = 0.5 * (
        2 * p1
        + (p2 - p0) * t
        + (2 * p0 - 5 * p1 + 4 * p2 - p3) * t**2
        + (3 * p1 - p0 - 3 * p2 + p3) * t**3
    )
    away = np.full_like(canvas.z, 1e6)
    low, high = float(canvas.y.min()) - radius, float(canvas.y.max()) + radius
    for (x1, y1), (x2, y2) in zip(curve[:-1].tolist(), curve[1:].tolist(), strict=True):
        if max(y1, y2) < low or min(y1, y2) > high:
            continue
        dx, dy = np.float32(x2 - x1), np.float32(y2 - y1)
        left, top = canvas.x - np.float32(x1), canvas.y - np.float32(y1)
        along = np.clip((left * dx + top * dy) / (dx * dx + dy * dy + np.float32(1e-6)), 0, 1)
        away = np.minimum(away, np.hypot(left - along * dx, top - along * dy))
    mask = ramp(radius, radius - 0.8, away)
    _lay(canvas, mask, lift + np.sqrt(np.clip(radius * radius - away * away, 0, None)), stuff)


def bench(canvas: Canvas) -> None:
    """A workbench of old planks."""
    plank = np.float32(118)
    row = np.floor(canvas.y / plank)
    streak = canvas.noise(crumbs(), 0.12, 40) * 0.5 + np.sin(
        canvas.y * 0.5 + 5 * canvas.noise(clouds(), 0.25, 41) + row * 9
    )
    stain = canvas.noise(clouds(), 1.1, 42)
    tone = np.clip(0.8 + 0.08 * streak - 0.16 * stain + 0.1 * np.sin(row * 5.1), 0.2, 1.6)
    canvas.paint(np.ones_like(tone), WOOD, tone=tone, gloss=0.12)
    edge = np.abs(canvas.y - (row + 0.5) * plank) - plank / 2
    canvas.z += ramp(-4, 0, edge) * -3 + streak * 0.12
    canvas.shade *= 1 - 0.8 * ramp(-1.8, -0.6, edge)


# --- things found beside the work


def grip(canvas: Canvas, x: float, y: float, turn: float) -> None:
    """Locking pliers that hold new metal to old: the jaws at (x, y), the handles away from it."""

    def at(forward: float, aside: float) -> tuple[float, float]:
        cosine, sine = math.cos(math.radians(turn)), math.sin(math.radians(turn))
        return x + forward * cosine - aside * sine, y + forward * sine + aside * cosine

    steel = (CHROME, 0.95, 1.0)
    bar(canvas, (*at(-16, 0), *at(22, -2)), 6, steel, 10)
    bar(canvas, (*at(20, -2), *at(74, -4)), 9.5, steel, 16)
    bar(canvas, (*at(70, -7), *at(170, -17)), 7.5, steel, 18)
    bar(canvas, (*at(76, 4), *at(160, 22)), 6.5, steel, 15)
    bar(canvas, (*at(168, -17), *at(184, -18)), 5, steel, 18)
    bar(canvas, (*at(60, -2), *at(61, -2)), 4, (IRON, 0.6, 1.0), 26)


def magnet(canvas: Canvas, x: float, y: float, turn: float) -> None:
    """A magnet that holds a patch flush."""
    block(canvas, Box(x, y, 46, 34, 4, turn), 18, (RED, 0.4, 0.0), 3)
    block(canvas, Box(x, y, 38, 12, 2, turn), 20, (CHROME, 0.8, 1.0), 2)


def rule(canvas: Canvas, x: float, y: float, turn: float) -> None:
    """A steel rule with its marks, laid on for scale."""
    box = Box(x, y, 310, 26, 3, turn)
    away = box_distance(canvas, box)
    if float(away.min()) > 2:
        return
    cosine, sine = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    along = (canvas.x - x) * cosine + (canvas.y - y) * sine
    across = (canvas.y - y) * cosine - (canvas.x - x) * sine
    block(canvas, box, 2.5, (CHROME, 0.7, 0.9), 1.5)
    within = ramp(-1, -2, away)
    fine = np.abs((along + 1000) % 10 - 5) > 4.4
    long = np.abs((along + 1000) % 50 - 25) > 24.2
    marks = (fine & (across < -5)) | (long & (across < 4))
    canvas.paint(within * marks, BLACK, gloss=0.1, metal=0.0)


def screwdriver(canvas: Canvas, x: float, y: float, turn: float) -> None:
    """The screwdriver that finds rust: its tip at (x, y)."""
    cosine, sine = math.cos(math.radians(turn)), math.sin(math.radians(turn))

    def at(forward: float) -> tuple[float, float]:
        return x + forward * cosine, y + forward * sine

    bar(canvas, (*at(0), *at(130)), 3.6, (CHROME, 0.95, 1.0), 14)
    bar(canvas, (*at(135), *at(225)), 13, (YELLOW, 0.8, 0.0), 18)
    bar(canvas, (*at(128), *at(140)), 8, (BLACK, 0.6, 0.0), 20)


def brush(canvas: Canvas, x: float, y: float, turn: float) -> None:
    """A paint brush laid down beside the work."""
    cosine, sine = math.cos(math.radians(turn)), math.sin(math.radians(turn))

    def at(forward: float) -> tuple[float, float]:
        return x + forward * cosine, y + forward * sine

    for aside in range(-16, 17, 4):
        px, py = at(0)
        qx, qy = at(48)
        ox, oy = -sine * aside, cosine * aside
        bar(
            canvas,
            (px + ox * 1.1, py + oy * 1.1, qx + ox, qy + oy),
            3.2,
            ((0.05, 0.04, 0.03), 0.2, 0.0),
        )
    block(canvas, Box(*at(60), 30, 44, 3, turn), 12, (CHROME, 0.8, 1.0), 4)
    bar(canvas, (*at(78), *at(190)), 9, ((0.40, 0.20, 0.07), 0.6, 0.0), 6)


def label(canvas: Canvas, x: float, y: float, turn: float) -> None:
    """A paper tag with a few words in felt pen, its string round the part."""
    box = Box(x, y, 92, 50, 3, turn)
    away = box_distance(canvas, box)
    if float(away.min()) > 2:
        return
    block(canvas, box, 2, ((0.72, 0.66, 0.48), 0.1, 0.0), 1)
    cosine, sine = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    along = (canvas.x - x) * cosine + (canvas.y - y) * sine
    across = (canvas.y - y) * cosine - (canvas.x - x) * sine
    ink = np.zeros_like(along)
    for line in (-12, 2, 16):
        wave = across - line - 3 * np.sin(along * 0.9 + line) * np.sin(along * 0.31)
        ink = np.maximum(ink, ramp(1.5, 0.7, np.abs(wave)) * (np.abs(along) < 36 - line * 0.4))
    canvas.paint(ink * ramp(-2, -3, away), (0.03, 0.03, 0.08), gloss=0.0)


def cable(canvas: Canvas, x: float, y: float) -> None:
    """The welder's cable across a corner of the picture."""
    spots = [(x - 420, y - 40), (x - 200, y + 10), (x, y - 6), (x + 210, y + 34), (x + 460, y - 30)]
    hose(canvas, spots, 9, (BLACK, 0.35, 0.0), 8)
