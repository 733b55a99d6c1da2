"""The places on the car that the pictures show close: their pressings, edges and gaps.

Each builder shapes a canvas so that the trouble lies at the origin of the metal. Right-hand places
are the left-hand ones seen in a mirror.
"""

import math
from collections.abc import Callable

import numpy as np

from journal.demo.canvas import Canvas, Colour
from journal.demo.noise import Plane, clouds, grain, lookup, ramp
from journal.demo.outlines import Box, box_distance, ring_distance

RUBBER: Colour = (0.018, 0.018, 0.02)
DARK: Colour = (0.012, 0.011, 0.01)


def profile(position: Plane, points: tuple[tuple[float, float], ...], radius: float = 6) -> Plane:
    """Height along a line through ``points`` (place, height), with bends of ``radius`` mm."""
    first, last = points[0][0], points[-1][0]
    steps = np.arange(first, last + 1, 1.0)
    heights = np.interp(steps, [p[0] for p in points], [p[1] for p in points])
    width = max(1, int(radius))
    kernel = np.hanning(2 * width + 3)
    padded = np.pad(heights, width + 1, mode="edge")
    table = np.convolve(padded, kernel / kernel.sum(), mode="valid").astype(np.float32)
    return lookup(table, position - np.float32(first))


def _bead(distance: Plane, width: float, height: float) -> Plane:
    """A pressed rib of ``width`` round the line where ``distance`` is 0."""
    return ramp(width, width * 0.35, np.abs(distance)) * np.float32(height)


def _gap(canvas: Canvas, distance: Plane, width: float = 5.0) -> None:
    """A gap between two panels where ``distance`` is 0, its edges rolled in."""
    away = np.abs(distance)
    canvas.z -= ramp(width * 2.2, width * 0.4, away) * 7
    canvas.shade *= 1 - 0.93 * ramp(width * 0.62, width * 0.36, away)


def _ground(canvas: Canvas, mask: Plane, colour: Colour = (0.10, 0.098, 0.094)) -> None:
    """Concrete far behind, out of focus."""
    soft = canvas.noise(clouds(), 0.6, 91)
    fine = canvas.noise(grain(), 1.0, 92)
    tone = np.clip(1 + 0.22 * soft + 0.05 * fine, 0.3, 1.8)
    canvas.paint(mask, colour, tone=tone, gloss=0.0, metal=0.0)
    canvas.sink(mask, -60.0)
    canvas.body *= 1 - mask


def _dark(canvas: Canvas, mask: Plane, colour: Colour = DARK, depth: float = -45) -> None:
    canvas.paint(mask, colour, gloss=0.05, metal=0.0)
    canvas.sink(mask, depth)
    canvas.body *= 1 - mask


def _bolt(canvas: Canvas, x: float, y: float, size: float, paint: bool = False) -> None:
    """A hexagon head on its washer."""
    dx, dy = canvas.x - np.float32(x), canvas.y - np.float32(y)
    washer = np.hypot(dx, dy)
    slant = np.float32(0.866)
    head = np.maximum(
        np.abs(dx), np.maximum(np.abs(dx * 0.5 + dy * slant), np.abs(dx * 0.5 - dy * slant))
    )
    canvas.z += ramp(size * 1.05, size * 0.98, washer) * 2
    canvas.z += ramp(size * 0.62, size * 0.52, head) * 6
    if not paint:
        mask = ramp(size * 1.05, size * 0.98, washer)
        canvas.paint(mask, (0.32, 0.30, 0.26), gloss=0.5, metal=0.8)
        canvas.body *= 1 - mask


def sill(canvas: Canvas) -> None:
    """The sill under a shut door, from the door's edge to the flange along its foot."""
    y = canvas.y
    canvas.z += profile(
        y,
        (
            (-420, 26),
            (-170, 30),
            (-112, 24),
            (-106, 14),
            (-82, 22),
            (-70, 26),
            (60, 20),
            (82, 8),
            (92, -14),
            (126, -16),
        ),
        8,
    )
    _gap(canvas, y + 109, 5)
    canvas.z += _bead(y + 190, 11, 2.6)
    _gap(canvas, canvas.x + 305, 4)
    _ground(canvas, ramp(124, 126, y))


def inner_sill(canvas: Canvas) -> None:
    """The inner sill from inside the car: the step up from the floor and its row of spot welds."""
    y = canvas.y
    canvas.z += profile(
        y, ((-420, -40), (-160, -40), (-140, 0), (-120, 2), (95, 0), (112, 40), (420, 46)), 8
    )
    canvas.z += _bead(box_distance(canvas, Box(-210, -20, 120, 60, 28)), 9, -4)
    canvas.z += _bead(box_distance(canvas, Box(250, -20, 120, 60, 28)), 9, -4)
    spacing = np.float32(42)
    along = (canvas.x + 2000) % spacing - spacing / 2
    dimple = np.hypot(along, y - 150)
    canvas.z -= ramp(5.5, 2.5, dimple) * 1.3
    canvas.z += _bead(y - 250, 16, 6)


def arch(canvas: Canvas) -> None:
    """The edge of a wheel arch, its rolled lip, and the tyre inside."""
    away = ring_distance(canvas, 70, 332, 300)
    canvas.z += profile(canvas.y, ((-520, 0), (-60, 26), (420, 8)), 60)
    canvas.z += _bead(canvas.y + 178, 13, 5)
    canvas.z += ramp(30, 12, np.abs(away - 10)) * 6
    canvas.shade *= 1 - 0.3 * ramp(5, 0, np.abs(away))
    _dark(canvas, ramp(0, -1.5, away), (0.03, 0.027, 0.025), -70)
    tyre = ring_distance(canvas, 80, 350, 232)
    wall = ramp(1, -2, tyre)
    canvas.paint(wall, RUBBER, gloss=0.25)
    canvas.sink(wall, -30.0)
    canvas.z += wall * (
        ramp(-70, -10, tyre) * -14 + _bead(tyre + 34, 4, 2) + _bead(tyre + 58, 3, 2)
    )
    angle = np.arctan2(canvas.y - 350, canvas.x - 80)
    tread = ramp(-22, -14, tyre) * wall * (np.sin(angle * 74) > 0.1)
    canvas.z -= tread * 6


def floor(canvas: Canvas) -> None:
    """A floor pan from above: pressed ribs, the tunnel along one side, spot welds."""
    for offset in (-250, -85, 80, 245):
        rib = box_distance(canvas, Box(20, offset, 470, 62, 30))
        canvas.z += ramp(9, -7, rib) * 8
    canvas.z += profile(canvas.x, ((-700, 150), (-420, 120), (-330, 6), (-310, 0), (900, 0)), 10)
    canvas.z += profile(canvas.x, ((-700, 0), (330, 0), (345, -2), (372, 52), (900, 60)), 6)
    spacing = np.float32(45)
    along = (canvas.y + 2000) % spacing - spacing / 2
    canvas.z -= ramp(6, 2.5, np.hypot(along, canvas.x - 320)) * 1.4


def well(canvas: Canvas) -> None:
    """The well for the spare wheel, pressed deep into the boot floor."""
    away = ring_distance(canvas, -95, -120, 300)
    canvas.z += ramp(14, -30, away) * -95
    canvas.z += _bead(away - 26, 9, 5)
    canvas.z += _bead(ring_distance(canvas, -95, -120, 150), 16, 8)
    for offset in (-520, -430, 250, 340):
        canvas.z += ramp(24, 8, np.abs(canvas.x - offset)) * 7 * ramp(30, 45, away)
    _bolt(canvas, -95, -120, 15)


def door_bottom(canvas: Canvas) -> None:
    """The foot of a door: the skin, its folded edge, the gap to the sill and to the next panel."""
    y = canvas.y
    canvas.z += profile(y, ((-420, 8), (-150, 24), (-20, 20), (72, 2), (96, 16), (180, 18)), 22)
    canvas.z += _bead(y + 150, 10, 4)
    edge = box_distance(canvas, Box(-250, -400, 960, 956, 26))
    _gap(canvas, edge, 4.6)
    sill_part = ramp(79, 82, y)
    canvas.z += sill_part * profile(y, ((60, 0), (150, 4), (190, -40), (420, -60)), 14)
    _ground(canvas, ramp(232, 236, y))


def wing_edge(canvas: Canvas) -> None:
    """The rear foot of a front wing, beside the door and above the end of the sill."""
    canvas.z += profile(canvas.y, ((-420, 6), (-150, 24), (20, 22), (150, 8), (260, -20)), 30)
    canvas.z += _bead(canvas.y + 165, 10, 4)
    _gap(canvas, canvas.x - 152, 5)
    _gap(canvas, np.maximum(canvas.y - 118, -900) + ramp(150, 160, canvas.x) * 900, 4)
    away = ring_distance(canvas, -560, 150, 300)
    canvas.z += ramp(28, 10, np.abs(away - 9)) * 6
    _dark(canvas, ramp(0, -1.5, away), (0.03, 0.027, 0.025), -70)
    _ground(canvas, ramp(205, 208, canvas.y + canvas.x * 0.02))


def post(canvas: Canvas) -> None:
    """The foot of a door post: the face that carries the hinges, the aperture beside it."""
    x = canvas.x
    canvas.z += profile(
        x,
        (
            (-500, 34),
            (-150, 34),
            (-128, 30),
            (-112, 0),
            (104, 2),
            (120, -16),
            (150, -40),
            (500, -60),
        ),
        8,
    )
    canvas.z += _bead(x - 96, 9, 3)
    plate = box_distance(canvas, Box(-8, -205, 120, 92, 12))
    canvas.z += ramp(1.5, -1.5, plate) * 5
    for dx, dy in ((-38, -225), (26, -225), (-8, -180)):
        _bolt(canvas, dx, dy, 13)
    hole = ring_distance(canvas, 40, 130, 15)
    _dark(canvas, ramp(0, -1.5, hole), depth=-30)
    _gap(canvas, x + 128, 3)


def box_section(canvas: Canvas) -> None:
    """A box section seen from below: a jacking point, an outrigger or a chassis leg."""
    y = canvas.y + canvas.x * np.float32(0.04)
    canvas.z += profile(
        y,
        (
            (-460, -50),
            (-190, -46),
            (-176, -8),
            (-140, -8),
            (-128, 8),
            (-104, 40),
            (104, 42),
            (128, 8),
            (140, -8),
            (176, -8),
            (190, -46),
            (460, -56),
        ),
        8,
    )
    spacing = np.float32(48)
    along = (canvas.x + 2000) % spacing - spacing / 2
    for row in (-158, 158):
        canvas.z -= ramp(5.5, 2.5, np.hypot(along, y - row)) * 1.4
    tube = ring_distance(canvas, 232, -8, 26)
    canvas.z += ramp(12, 2, np.abs(tube)) * 8
    _dark(canvas, ramp(-4, -6, tube), depth=-20)
    drain = ring_distance(canvas, -236, 20, 12)
    _dark(canvas, ramp(0, -1.5, drain), depth=10)
    canvas.z += _bead(ring_distance(canvas, -236, 20, 20), 7, 3)


def valance(canvas: Canvas) -> None:
    """The valance under a bumper: curved under, with slots and a bumper bracket."""
    y = canvas.y
    canvas.z += profile(
        y, ((-420, 30), (-175, 34), (-165, 18), (-140, 26), (20, 22), (180, -40)), 20
    )
    for offset in (-330, -235, 265, 360):
        slot = box_distance(canvas, Box(offset, -60, 66, 20, 10))
        canvas.z += ramp(9, 0, slot) * 3
        _dark(canvas, ramp(0.5, -1.5, slot), depth=-20)
    _gap(canvas, y + 169, 4)
    bent: Plane = (y + np.square(canvas.x / 40) * 0.35).astype(np.float32)
    _ground(canvas, ramp(150, 153, bent))


def lid_edge(canvas: Canvas) -> None:
    """The edge of the bonnet or boot lid, and the panel beneath it across the gap."""
    y = canvas.y
    canvas.z += profile(
        y, ((-460, 50), (-220, 42), (20, 24), (78, 4), (90, 12), (160, 10), (420, -24)), 26
    )
    canvas.z += _bead(np.abs(canvas.x + 60) - 240 + (y + 200) * 0.12, 16, 6) * ramp(40, -10, y)
    bent: Plane = (y - 84 - np.square(canvas.x / 60) * 0.25).astype(np.float32)
    _gap(canvas, bent, 5)
    bright = box_distance(canvas, Box(40, 214, 900, 44, 18))
    canvas.z += ramp(4, -18, bright) * 22
    canvas.paint(ramp(1, -1, bright), (0.62, 0.62, 0.62), gloss=0.95, metal=1.0)
    canvas.body *= ramp(-1, 1, bright)


def tray(canvas: Canvas) -> None:
    """A battery tray or bulkhead shelf: a pressed frame, drain and fixing."""
    frame = box_distance(canvas, Box(10, 10, 420, 300, 26))
    canvas.z += ramp(10, -12, frame) * -18
    canvas.z += _bead(frame - 22, 10, 4)
    for offset in (-105, 125):
        canvas.z += ramp(7, -7, box_distance(canvas, Box(10, offset, 330, 34, 16))) * 7
    canvas.z += profile(canvas.y, ((-600, 130), (-300, 110), (-226, 8), (-210, 0), (600, 0)), 10)
    hole = ring_distance(canvas, 178, 8, 11)
    _dark(canvas, ramp(0, -1.5, hole), depth=-30)
    _bolt(canvas, 268, -150, 12)
    _bolt(canvas, 268, 160, 12)


def tower(canvas: Canvas) -> None:
    """The damper top: a dome in the inner wing with three studs round a hole."""
    away = ring_distance(canvas, 120, -90, 0)
    canvas.z += profile(away, ((0, 40), (105, 40), (122, 30), (165, 4), (180, 0), (900, 0)), 8)
    canvas.z += profile(canvas.x, ((-700, 90), (-330, 70), (-262, 4), (-245, 0), (700, 0)), 10)
    canvas.z += _bead(canvas.x + 300, 9, 3)
    _dark(canvas, ramp(32, 30, away), depth=10)
    for step in range(3):
        angle = math.radians(step * 120 - 70)
        _bolt(canvas, 120 + 74 * math.cos(angle), -90 + 74 * math.sin(angle), 13)


def surround(canvas: Canvas) -> None:
    """The lower corner of the windscreen surround: glass, rubber, the frame below."""
    glass = box_distance(canvas, Box(330, -330, 760, 560, 90))
    canvas.z += profile(canvas.y, ((-460, 30), (60, 24), (200, 16), (420, -10)), 30)
    canvas.z += ramp(26, 12, glass) * 4
    rubber = ramp(1, -1, np.abs(glass + 2) - 13)
    pane = ramp(-14, -16, glass)
    canvas.paint(pane, (0.03, 0.045, 0.045), gloss=1.6, metal=0.0)
    canvas.sink(pane, canvas.y * np.float32(-0.02))
    canvas.paint(rubber, RUBBER, gloss=0.35)
    canvas.z += ramp(15, 4, np.abs(glass + 2)) * 8
    canvas.paint(ramp(1.6, 0.6, np.abs(glass + 1)), (0.5, 0.5, 0.5), gloss=0.9, metal=1.0)
    canvas.body *= 1 - np.maximum(pane, rubber)
    _gap(canvas, canvas.y - 215 + canvas.x * np.float32(0.05), 5)


PLACES: dict[str, Callable[[Canvas], None]] = {
    "sill": sill,
    "inner sill": inner_sill,
    "arch": arch,
    "floor": floor,
    "well": well,
    "door bottom": door_bottom,
    "wing edge": wing_edge,
    "post": post,
    "box section": box_section,
    "valance": valance,
    "lid edge": lid_edge,
    "tray": tray,
    "tower": tower,
    "surround": surround,
}
