"""The whole car from any side: a hull, a cabin, wheels and trim, in perspective and in light."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from PIL import Image, ImageDraw, ImageFilter

from journal.demo.canvas import Colour
from journal.demo.car_shape import (
    LENGTH,
    WHEEL_FRONT,
    WHEEL_RADIUS,
    WHEEL_REAR,
    Points,
    Spot,
    cabin,
    cabin_spot,
    hull,
    hull_spot,
)
from journal.demo.easel import Easel, Stand
from journal.demo.light import LIGHTS, tones
from journal.demo.noise import Plane, clouds, crumbs, grain

_DEEP: Colour = (0.012, 0.012, 0.012)
_CHROME: Colour = (0.62, 0.63, 0.65)


@dataclass(frozen=True, slots=True)
class State:
    """How the car stood: its colour and what was on it."""

    colour: Colour
    gloss: float = 1.0
    rust: float = 0.0
    doors: bool = True
    glass: bool = True
    trim: bool = True
    wheels: bool = True
    lids: bool = True
    patches: bool = False


def _circle(
    x: float, y: float, z: float, radius: float, first: float = 0, last: float = 360
) -> list[Spot]:
    return [
        (x + radius * math.cos(math.radians(t)), y, z + radius * math.sin(math.radians(t)))
        for t in np.linspace(first, last, 40)
    ]


# --- the parts of the picture, from the back to the front


def _backdrop(
    place: str, small: tuple[int, int], horizon: float, back: Plane
) -> tuple[Colour, Points]:
    """The colour of the ground, and what stands behind it: hedge and sky, or a brick wall."""
    down = np.arange(small[1], dtype=np.float32)[:, None]
    across = np.arange(small[0], dtype=np.float32)[None, :]
    if place == "yard":
        top = horizon * 0.52 + back[:1] * 5
        sky = np.array([0.62, 0.70, 0.80]) + (down[..., None] / small[1]) * 0.25
        hedge = np.clip(1 + 0.35 * back, 0.2, 2)[..., None] * np.array([0.045, 0.075, 0.03])
        return (0.25, 0.235, 0.21), np.where((down > top)[..., None], hedge, sky)
    row = np.floor(down / 11)
    mortar = ((down % 11) < 1.2) | (((across + (row % 2) * 14) % 28) < 1.2)
    tone = np.clip(1 + 0.08 * back - 0.25 * mortar, 0.3, 1.4)
    fall = np.clip(0.35 + 0.65 * down / max(horizon, 1), 0, 1)
    wall: Points = (tone * fall)[..., None] * np.array([0.21, 0.20, 0.18])
    return (0.17, 0.165, 0.155), wall


def _ground(easel: Easel, place: str, seed: int) -> None:
    """Wall or hedge and sky, the ground, and the car's shadow on it."""
    width, height = easel.size
    small = (width // 4, height // 4)
    down = np.arange(small[1], dtype=np.float32)[:, None]
    across = np.arange(small[0], dtype=np.float32)[None, :]
    far = easel.project(np.array([[LENGTH / 2, 0, 0]]) + (easel.axes[2] * [1, 1, 0]) * 2600)
    horizon = float(far[0, 1]) / 4
    near = np.clip(down - horizon, 0, None) + across * 0
    scale = 60.0 / (near + 14)
    x = ((across - small[0] / 2) * scale * 1.6 + 600 + seed * 37) % 1024
    y = (scale * 240 + seed * 91) % 1024
    stones = grain()[y.astype(np.intp) % 1024, x.astype(np.intp) % 1024]
    soft = clouds()[y.astype(np.intp) % 1024, x.astype(np.intp) % 1024]
    back = crumbs()[
        ((down * 3 + across * 0 + seed * 13) % 1024).astype(np.intp),
        ((across * 3 + down * 0) % 1024).astype(np.intp),
    ]
    ground, wall = _backdrop(place, small, horizon, back)
    tone = np.clip(1 + 0.16 * stones * (near > 0) + 0.12 * soft, 0.4, 1.6)
    floor = tone[..., None] * np.array(ground)
    scene = np.where((down > horizon)[..., None] & (across >= 0)[..., None], floor, wall)
    light = np.array(easel.light.key) * 0.8 + np.array(easel.light.fill)
    picture = Image.fromarray(tones(scene * light).astype(np.uint8))
    shade = Image.new("L", easel.size)
    brush = ImageDraw.Draw(shade)
    foot = [(-60, -820), (-60, 820), (LENGTH + 60, 820), (LENGTH + 60, -820)]
    corners = easel.project(np.array([(x, y, 0.0) for x, y in foot]))
    brush.polygon(corners.reshape(-1).tolist(), fill=235)
    shade = shade.resize(small).filter(ImageFilter.GaussianBlur(small[0] / 90))
    dark = Image.new("RGB", small, (9, 9, 9))
    easel.image.paste(Image.composite(dark, picture, shade).resize(easel.size))


def _treads(easel: Easel, state: State) -> None:
    """The tyres' width, of which the hull leaves only the foot to be seen."""
    if state.wheels:
        for side in (-1, 1):
            for x in (WHEEL_FRONT, WHEEL_REAR):
                for y in range(580, 761, 20):
                    circle = _circle(x, side * float(y), WHEEL_RADIUS, WHEEL_RADIUS)
                    easel.shape(circle, (0.014, 0.014, 0.015))


def _wheel(easel: Easel, x: float, side: int, state: State) -> None:
    y = side * 760.0
    if not state.wheels:
        for lean in (-150, 150):
            easel.line(
                [(x + 200 + lean, side * 600.0, 0), (x + 200, side * 600.0, 320)],
                (0.25, 0.03, 0.02),
                60,
            )
        return
    z = WHEEL_RADIUS
    easel.shape(_circle(x, y, z, WHEEL_RADIUS), (0.026, 0.026, 0.028))
    easel.shape(_circle(x, y + side, z, WHEEL_RADIUS * 0.66), (0.05, 0.05, 0.05))
    easel.shape(_circle(x, y + side * 2, z, WHEEL_RADIUS * 0.62), (0.2, 0.2, 0.2))
    if state.trim:
        easel.shape(_circle(x, y + side * 3, z, WHEEL_RADIUS * 0.44), _CHROME)
        easel.shape(_circle(x, y + side * 4, z + 8, WHEEL_RADIUS * 0.30), (0.20, 0.21, 0.23))
        easel.shape(_circle(x, y + side * 5, z + 20, WHEEL_RADIUS * 0.14), (0.9, 0.9, 0.92))


def _body_colours(state: State, grid: Points, seed: int) -> Points:
    middle = (grid[:-1, :-1] + grid[1:, 1:]) / 2
    field = clouds()
    rows = ((middle[..., 2] + np.abs(middle[..., 1])) * 0.25 + seed * 17).astype(np.intp) % 1024
    columns = (middle[..., 0] * 0.25 + seed * 5 + (middle[..., 1] > 0) * 300).astype(np.intp) % 1024
    noise = field[rows, columns]
    tone = 1 + noise[..., None] * (0.10 * (1 - min(1.0, state.gloss)) + 0.01)
    colours: Points = np.clip(tone, 0.5, 1.5) * np.array(state.colour)
    if state.patches:
        patched = (noise > 0.7) | ((middle[..., 2] < 430) & (noise > -0.6))
        colours = np.where(patched[..., None], np.array([0.27, 0.275, 0.28]), colours)
    return colours


def _rust(easel: Easel, state: State, side: int, seed: int) -> None:
    """Brown patches low on the hull and round the arches."""
    if not state.rust:
        return
    rng = np.random.default_rng(seed)
    spots = [
        (620, 0.1),
        (1300, 0.07),
        (1700, 0.05),
        (2200, 0.07),
        (2900, 0.06),
        (2960, 0.35),
        (3640, 0.3),
        (3900, 0.2),
    ]
    for x, share in spots:
        reach = float(rng.uniform(40, 110)) * state.rust
        outline = []
        for step in range(26):
            angle = math.tau * step / 26
            away = reach * float(rng.uniform(0.6, 1.25))
            up = share + away * math.sin(angle) * 0.5 / 620
            outline.append(hull_spot(x + away * 1.5 * math.cos(angle), max(0.0, up), side))
        easel.shape(outline, (0.13, 0.055, 0.025))


def _side(easel: Easel, state: State, side: int, seed: int) -> None:
    """Arches, doors, gaps and the swage line of one side."""
    if side * easel.eye[1] < 1100:
        return
    for x in (WHEEL_FRONT, WHEEL_REAR):
        rim = _circle(x, 0, WHEEL_RADIUS, 352, -14, 194)
        easel.shape([(p, side * 792.0, max(q, hull_spot(p, 0)[2])) for p, _, q in rim], _DEEP)
    _rust(easel, state, side, seed)
    gap = (0.01, 0.012, 0.012)
    doors = ((1345.0, 2255.0), (2275.0, 3060.0))
    for first, last in doors:
        outline = [hull_spot(first, s, side) for s in np.linspace(0.1, 0.97, 12)]
        outline += [
            hull_spot(last, s, side) for s in np.linspace(0.97, 0.42 if last > 3000 else 0.1, 12)
        ]
        if last > 3000:
            outline += [hull_spot(x, s, side) for x, s in ((2985, 0.28), (2930, 0.16), (2900, 0.1))]
        if state.doors:
            easel.line([*outline, outline[0]], gap, 9)
        else:
            easel.shape(outline, (0.02, 0.021, 0.02))
            easel.line([*outline, outline[0]], tuple(c * 0.6 for c in state.colour), 16)  # type: ignore[arg-type]
    swage = [hull_spot(x, 0.70, side) for x in np.linspace(180, 4080, 60)]
    easel.line(swage, tuple(c * 0.35 for c in state.colour), 12)  # type: ignore[arg-type]
    easel.line([hull_spot(x, 0.07, side) for x in np.linspace(1160, 2920, 30)], gap, 8)
    if state.trim:
        strip = [hull_spot(x, 0.56, side) for x in np.linspace(160, 4120, 60)]
        easel.line(strip, (0.75, 0.76, 0.78), 15)
    if state.trim and state.doors:
        for x in (2110, 2930):
            easel.line([hull_spot(x, 0.84, side), hull_spot(x + 105, 0.84, side)], _CHROME, 24)


def _pane(easel: Easel, state: State, spots: Sequence[Spot], sky: float) -> None:
    if not state.glass:
        easel.shape(spots, (0.028, 0.029, 0.028))
        return
    easel.shape(spots, (0.035, 0.05, 0.05))
    middle = np.mean(np.array(spots), axis=0)
    upper = [s for s in spots if s[2] >= middle[2]]
    cut = [tuple(middle + (np.array(s) - middle) * 0.9) for s in upper]
    if len(cut) > 2:
        easel.shape(
            [(float(a), float(b), float(c)) for a, b, c in cut], (sky, sky * 1.05, sky * 1.08)
        )
    if state.trim:
        easel.line([*spots, spots[0]], _CHROME, 18)


def _windows(easel: Easel, state: State) -> None:
    sky = 0.16 if easel.light.room[-1] > 0.5 else 0.085
    for side in (-1, 1):
        if easel.facing((2300, side * 700.0, 1100), (0, side, 0.22)):
            for first, last in ((0.085, 0.475), (0.505, 0.865)):
                low, high = 0.10, 0.86
                corners = [
                    (first, low),
                    (last, low),
                    (last - (0.03 if last > 0.8 else 0), high),
                    (first + 0.012, high),
                ]
                spots = [cabin_spot(along, up, side * 1.0) for along, up in corners]
                _pane(easel, state, spots, sky)
    for along, normal in ((0.0, (-1.0, 0.0, 0.9)), (1.0, (1.0, 0.0, 0.8))):
        x, _, z = cabin_spot(along, 0.5, 0)
        if easel.facing((x, 0, z), normal):
            out = -8 if along == 0 else 8
            spots = []
            for share, up in (
                (-0.9, 0.1),
                (-0.5, 0.07),
                (0.5, 0.07),
                (0.9, 0.1),
                (0.87, 0.88),
                (-0.87, 0.88),
            ):
                px, py, pz = cabin_spot(along, up, share)
                spots.append((px + out, py, pz))
            _pane(easel, state, spots, sky)


def _front(easel: Easel, state: State) -> None:
    if not easel.facing((0, 0, 600), (-1, 0, 0)):
        return
    x = -18.0
    grille = [(x, -440, 520), (x, 440, 520), (x, 440, 690), (x, -440, 690)]
    easel.shape(grille, _DEEP)
    if state.trim:
        for y in range(-420, 421, 35):
            easel.line([(x - 4, float(y), 525), (x - 4, float(y), 685)], (0.4, 0.4, 0.42), 10)
        easel.line([*grille, grille[0]], _CHROME, 20)
    for side in (-1, 1):
        spots = [(x - 2, side * 580 + a - 0.0, b) for a, _, b in _circle(0, 0, 608, 98)]
        easel.shape(spots, _CHROME if state.trim else _DEEP)
        if state.trim:
            inner = [(x - 6, side * 580 + a, b) for a, _, b in _circle(0, 0, 608, 80)]
            easel.shape(inner, (0.42, 0.45, 0.47))
            glow = [(x - 8, side * 580 + a, b) for a, _, b in _circle(0, 0, 628, 38)]
            easel.shape(glow, (0.85, 0.88, 0.9))
    if state.lids:
        for side in (-1, 1):
            line = [hull_spot(px, 0.96, side) for px in np.linspace(60, 1200, 20)]
            easel.line([(px, py * 0.87, pz + 18) for px, py, pz in line], (0.012, 0.015, 0.014), 8)
    else:
        bay = [
            hull_spot(px, 1.0, side)
            for side in (-1, 1)
            for px in ((120, 1180) if side < 0 else (1180, 120))
        ]
        easel.shape([(px, py * 1.25, pz + 4) for px, py, pz in bay], (0.02, 0.02, 0.02))


def _rear(easel: Easel, state: State) -> None:
    if not easel.facing((LENGTH, 0, 600), (1, 0, 0)):
        return
    x = LENGTH + 18
    for side in (-1, 1):
        lamp = [
            (x, side * 480.0, 560),
            (x, side * 660.0, 560),
            (x, side * 650.0, 730),
            (x, side * 490.0, 730),
        ]
        easel.shape(lamp, (0.25, 0.02, 0.015) if state.trim else _DEEP)
        if state.trim:
            easel.line([*lamp, lamp[0]], _CHROME, 14)
    gap = [(x, -420.0, 770), (x, -420.0, 520), (x, 420.0, 520), (x, 420.0, 770)]
    easel.line(gap, (0.012, 0.015, 0.014), 8)
    if state.trim:
        plate = [
            (x + 2, -220.0, 560),
            (x + 2, 220.0, 560),
            (x + 2, 220.0, 660),
            (x + 2, -220.0, 660),
        ]
        easel.shape(plate, (0.68, 0.66, 0.58))


def _bumper(easel: Easel, front: bool) -> None:
    end, out, wrap = (0.0, -62.0, 330.0) if front else (LENGTH, 62.0, LENGTH - 330.0)
    near = 1.0 if easel.eye[1] > 0 else -1.0
    path = [(wrap, 812.0), (end + out * 0.2, 800.0), (end + out, 680.0), (end + out * 1.12, 0.0)]
    if easel.facing((end + out, 0, 420), (-1 if front else 1, 0, 0)):
        path += [(px, -py) for px, py in path[-2::-1]]
    else:
        path = path[:2]
    path = [(px, py * near) for px, py in path]
    for z, width, tone in ((420, 92, 0.10), (432, 66, 0.55), (446, 26, 1.1), (406, 18, 0.25)):
        easel.line([(px, py, float(z)) for px, py in path], (tone, tone, tone * 1.03), width)


def paint_car(
    size: tuple[int, int], stand: Stand, state: State, light: str, place: str, seed: int
) -> Image.Image:
    """A picture of the whole car, as it was in ``state``, in the "yard" or the "garage"."""
    # Drawn larger and made smaller, which smooths the edges.
    big = (size[0] * 3 // 2, size[1] * 3 // 2)
    easel = Easel(big, stand, LIGHTS[light])
    _ground(easel, place, seed)
    near = 1 if easel.eye[1] > 0 else -1
    _treads(easel, state)
    if not state.wheels:
        for x in (WHEEL_FRONT, WHEEL_REAR):
            _wheel(easel, x, -near, state)
    gloss = state.gloss * 0.4
    top, lower = cabin(), hull()
    easel.mesh(top, _body_colours(replace(state, patches=False), top, seed), gloss)
    _windows(easel, state)
    easel.mesh(lower, _body_colours(state, lower, seed), gloss)
    for side in (-1, 1):
        _side(easel, state, side, seed)
    for x in (WHEEL_FRONT, WHEEL_REAR):
        _wheel(easel, x, near, state)
    _front(easel, state)
    _rear(easel, state)
    if state.trim:
        _bumper(easel, True)
        _bumper(easel, False)
    return easel.image.resize(size, Image.Resampling.BOX)
