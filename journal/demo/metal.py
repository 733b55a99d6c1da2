"""What happens to metal: rust, cutting, welding, dressing, primer and paint on a canvas."""

from dataclasses import dataclass

import numpy as np

from journal.demo.canvas import Canvas, Colour
from journal.demo.noise import Plane, brushed, clouds, crumbs, grain, lookup, ramp
from journal.demo.outlines import Box, box_distance, box_reach, box_run, ragged

RUST = ((0.030, 0.016, 0.011), (0.085, 0.032, 0.016), (0.20, 0.075, 0.028), (0.36, 0.16, 0.06))
STEEL: Colour = (0.46, 0.46, 0.47)
NEW_STEEL: Colour = (0.33, 0.34, 0.36)
ZINC: Colour = (0.27, 0.275, 0.28)
RED_OXIDE: Colour = (0.20, 0.045, 0.032)
SEALER: Colour = (0.52, 0.49, 0.40)
UNDERSEAL: Colour = (0.022, 0.021, 0.021)


@dataclass(frozen=True, slots=True)
class Trouble:
    """Where the rust of a place is: the box it reaches over, and how the old paint looked."""

    box: Box
    old: Colour
    new: Colour
    coated: bool = False


class Wound:
    """The trouble of one canvas, with the distances every step needs worked out once."""

    def __init__(self, canvas: Canvas, trouble: Trouble) -> None:
        self.canvas = canvas
        self.trouble = trouble
        self.cut = box_distance(canvas, trouble.box)
        self.run = box_run(canvas, trouble.box)
        self.rough = canvas.noise(crumbs(), 1.3, 1)
        self.soft = canvas.noise(clouds(), 1.0, 2)
        self.fine = canvas.noise(grain(), 1.6, 3)
        self.mid = canvas.noise(clouds(), 3.4, 12)
        #: How thick the underseal lies; grinding takes it off.
        self.coat: Plane = np.zeros_like(self.cut)
        #: How deep in the rust: above 0 where it shows, 1 and more where it is worst.
        self.decay: Plane = (
            np.float32(1.75)
            - box_reach(canvas, trouble.box) * np.float32(2.1)
            + self.mid * np.float32(0.36)
            + self.rough * np.float32(0.10)
        )


def rusty(wound: Wound, mask: Plane, bright: float = 0.0) -> None:
    """Turn all under ``mask`` to rust: flaking, pitted, from near black to orange."""
    if not mask.any():
        return
    canvas = wound.canvas
    tone = np.clip(1.35 + bright + wound.rough * 0.55 + wound.soft * 0.35 + wound.fine * 0.14, 0, 3)
    colours = np.stack([lookup(np.array([r[c] for r in RUST], np.float32), tone) for c in range(3)])
    canvas.blend(mask, colours)
    canvas.z += mask * (wound.rough * 1.1 + wound.fine * 0.28)


def old_paint(wound: Wound) -> None:
    """The panel as it came: faded paint with stains, dust and fine scratches."""
    canvas, trouble = wound.canvas, wound.trouble
    stain = canvas.noise(clouds(), 0.5, 4)
    tone = np.clip(1 + 0.10 * stain + 0.035 * wound.fine, 0.4, 1.5)
    colour = UNDERSEAL if trouble.coated else trouble.old
    canvas.paint(canvas.body, colour, tone=tone, gloss=0.32, metal=0.0)
    if trouble.coated:
        wound.coat = canvas.body * (wound.rough * 0.9 + wound.fine * 0.35)
        canvas.z += wound.coat
        canvas.gloss *= 1 - canvas.body * 0.55
    dirt = ramp(0.5, 2.2, stain + wound.rough * 0.3) * canvas.body
    canvas.paint(dirt * 0.5, (0.12, 0.10, 0.075), gloss=0.05)
    canvas.z += canvas.body * wound.fine * np.float32(0.02)


def bubbles(wound: Wound, amount: float) -> None:
    """Paint lifted by the rust under it: blisters, the worst of them burst, stains below."""
    canvas = wound.canvas
    near = ramp(-1.6, 0.3, wound.decay) * canvas.body
    lump = canvas.noise(crumbs(), 1.5, 5) + wound.mid * 0.45
    blister = ramp(0.35, 1.5, lump) * near
    canvas.z += blister * np.float32(3.2 * amount)
    canvas.tint(near * 0.7 * ramp(0.2, 1.4, blister), (1.0, 0.72, 0.5))
    burst = ramp(1.55, 1.8, lump + near * np.float32(0.55 * amount)) * near
    rusty(wound, burst, 0.3)
    runs = ramp(0.6, 2.0, canvas.noise(brushed(), 0.9, 13, 90) + wound.mid * 0.2)
    below = ramp(-20, 60, canvas.y - wound.trouble.box.y) * ramp(-2.4, -0.4, wound.decay)
    canvas.tint(runs * below * canvas.body * 0.55, (0.9, 0.62, 0.38))


def rust_through(wound: Wound, spread: float, holes: float) -> None:
    """Rust that broke through: the paint gone round it, and holes where ``holes`` is over 0."""
    canvas = wound.canvas
    level = wound.decay + np.float32(spread)
    stain = ramp(-0.7, 0.1, level) * canvas.body
    canvas.tint(stain * 0.6, (0.85, 0.62, 0.42))
    edge = ramp(0.10, 0.18, level) * canvas.body
    canvas.z += ramp(-0.3, 0.08, level) * canvas.body * 1.6 - edge * 1.9
    flake = ramp(0.02, 0.08, level) * (1 - edge) * canvas.body
    canvas.paint(flake * 0.6, (0.55, 0.53, 0.47), gloss=0.1)
    rusty(wound, edge)
    if holes > 0:
        gone = ramp(0.0, 0.07, wound.decay - (1.95 - holes) + wound.rough * 0.12) * canvas.body
        canvas.paint(gone, (0.010, 0.008, 0.006), gloss=0.0, metal=0.0)
        canvas.sink(gone, -32.0)
        canvas.shade *= 1 - gone * 0.75


def bare_ring(wound: Wound, reach: float, *, pits: float = 0.3) -> None:
    """Paint ground off round the trouble, as far as ``reach`` mm outside it."""
    canvas = wound.canvas
    edge = wound.cut + wound.mid * np.float32(reach * 0.2) + wound.rough * 1.2
    edge += wound.soft * np.float32(reach * 0.14)
    feather = ramp(reach + 5, reach + 2, edge) * canvas.body
    canvas.paint(feather, (0.34, 0.33, 0.30), gloss=0.15, metal=0.0)
    mask = ramp(reach + 2.5, reach + 0.5, edge) * canvas.body
    canvas.z -= mask * wound.coat
    steel(wound, mask, STEEL)
    if pits:
        pitted = ramp(1.5, 2.3, wound.rough + wound.decay * 0.5) * mask * ramp(0, 3, wound.cut)
        rusty(wound, pitted * np.float32(pits))


def steel(wound: Wound, mask: Plane, colour: Colour, turn: float = 24.0) -> None:
    """Bare steel with the marks of grinding or rolling along ``turn`` degrees."""
    if not mask.any():
        return
    canvas = wound.canvas
    marks = canvas.noise(brushed(), 2.0, 6, turn)
    second = canvas.noise(brushed(), 2.0, 7, turn - 63)
    tone = np.clip(1 + 0.15 * marks + 0.09 * second + 0.07 * wound.mid, 0.4, 1.7)
    canvas.paint(mask, colour, tone=tone, gloss=0.85, metal=1.0)
    canvas.z += mask * (marks * 0.018 + second * 0.012)


def opening(wound: Wound, *, behind: str, jag: float = 0.8) -> None:
    """The trouble cut out: a hole with sharp edges, and what lies ``behind`` it."""
    canvas = wound.canvas
    edge = ragged(canvas, wound.cut, jag, 8)
    hole = ramp(0.6, -0.6, edge) * canvas.body
    lip = ramp(3.2, 1.2, np.abs(edge - 1.5)) * canvas.body
    canvas.paint(hole, (0.05, 0.04, 0.035), gloss=0.05, metal=0.0)
    deep = -46 + 10 * np.sin(canvas.y / 34)
    if behind == "zinc":
        canvas.paint(hole, ZINC, gloss=0.18, metal=0.0)
    elif behind == "steel":
        steel(wound, hole, NEW_STEEL, 4)
    else:
        rusty(wound, hole, -0.15)
    canvas.sink(hole, deep + (wound.rough * 1.4 if behind == "rust" else 0))
    canvas.shade *= 1 - hole * 0.45 * ramp(-70, 0, wound.cut)
    canvas.shade *= 1 - hole * 0.4
    canvas.paint(lip, (0.62, 0.62, 0.63), gloss=0.9, metal=1.0)


def patch(wound: Wound, *, gap: float, proud: float = 0.0) -> None:
    """New metal let into the opening, ``gap`` mm short of its edge all round."""
    canvas = wound.canvas
    slit = ramp(gap + 0.5, gap - 0.3, np.abs(wound.cut)) * canvas.body
    inside = ramp(0.4, -0.4, wound.cut + gap) * canvas.body
    steel(wound, inside, NEW_STEEL, 2)
    canvas.z += inside * np.float32(proud)
    if gap > 0:
        canvas.shade *= 1 - slit * 0.85
        canvas.z -= slit * 3


def marker(wound: Wound, outside: float) -> None:
    """A felt pen's line round where the cut will go."""
    wobble = wound.cut + wound.soft * 1.6 - outside
    line = ramp(1.9, 0.9, np.abs(wobble)) * wound.canvas.body
    wound.canvas.paint(line * 0.9, (0.02, 0.02, 0.03), gloss=0.1)


def _heat(wound: Wound, mask: Plane, reach: float, amount: float) -> None:
    """Heat colours beside a weld: straw, brown, purple, blue, going outward."""
    canvas = wound.canvas
    away = np.abs(wound.cut + wound.rough * 0.8) + wound.mid * np.float32(reach * 0.10)
    away = np.maximum(away, 0)
    share = away / np.float32(reach)
    stops = ((0.25, 0.25, 0.27), (0.30, 0.36, 0.62), (0.52, 0.34, 0.52), (0.72, 0.50, 0.30))
    table = np.array([*stops, (0.92, 0.80, 0.55), (1.0, 1.0, 1.0)], np.float32)
    strength = mask * ramp(1.0, 0.8, share) * np.float32(amount) * canvas.body
    if not strength.any():
        return
    for channel in range(3):
        factor = lookup(table[:, channel].copy(), share * 5)
        canvas.colour[channel] *= 1 + strength * (factor - 1)


def weld(wound: Wound, *, every: float = 0.0, length: float = 12.0, width: float = 5.2) -> None:
    """A run of weld round the patch; tacks ``every`` so many mm where that is over 0."""
    canvas = wound.canvas
    run = wound.run + wound.soft * 2
    on = canvas.body.copy()
    if every:
        place = np.abs((run + 4000) % np.float32(every) - np.float32(every / 2))
        on *= ramp(length / 2 + 1, length / 2 - 1.5, place)
        _heat(wound, ramp(length + 14, length, place), 20, 0.85)
    else:
        _heat(wound, on, 22, 0.75)
    across = (wound.cut + wound.soft * 0.7 + wound.rough * 0.35) / np.float32(width)
    bow = np.clip(1 - across * across, 0, 1)
    phase = run / np.float32(3.6) - across * across * 0.9 + wound.soft * 0.4
    ripple = phase - np.floor(phase)
    bead = np.sqrt(bow) * on
    canvas.z += bead * (1.9 + 1.0 * ripple)
    mask: Plane = (ramp(0.02, 0.2, bow) * on).astype(np.float32)
    tone: Plane = (0.65 + 0.35 * ripple + 0.1 * wound.rough).astype(np.float32)
    canvas.paint(mask, (0.34, 0.33, 0.33), tone=tone, gloss=0.75, metal=0.9)
    soot = ramp(2.4, 1.1, np.abs(across)) * on * (1 - mask)
    canvas.paint(soot * 0.55, (0.06, 0.05, 0.045), gloss=0.1, metal=0.2)
    spatter = ramp(2.6, 2.9, wound.fine) * ramp(26, 8, np.abs(wound.cut)) * canvas.body
    canvas.paint(spatter * 0.8, (0.08, 0.07, 0.07), gloss=0.3)
    canvas.z += spatter * 1.2


def dressed(wound: Wound) -> None:
    """The weld ground flush: a bright band of arcs, a ghost of the seam in it."""
    canvas = wound.canvas
    steel(wound, ramp(0.5, -0.5, wound.cut) * canvas.body, (0.42, 0.42, 0.43), 2)
    _heat(wound, canvas.body, 60, 0.3)
    band = ramp(40, 8, np.abs(wound.cut) + wound.mid * 8 + wound.soft * 5) * canvas.body
    arcs = np.zeros_like(canvas.z)
    rng = np.random.default_rng(canvas.seed)
    table = rng.standard_normal(4096).astype(np.float32)
    box = wound.trouble.box
    for _ in range(4):
        x = box.x + float(rng.uniform(-0.9, 0.9)) * box.width
        y = box.y + float(rng.choice([-1, 1])) * float(rng.uniform(120, 300))
        away = np.hypot(canvas.x - np.float32(x), canvas.y - np.float32(y))
        arcs += lookup(table, away * np.float32(1.3))
    tone = np.clip(1 + arcs * 0.10, 0.5, 1.6)
    canvas.paint(band, (0.54, 0.54, 0.55), tone=tone, gloss=0.9, metal=1.0)
    canvas.z += band * arcs * 0.022
    ghost = ramp(1.5, 0.4, np.abs(wound.cut + wound.mid * 0.8)) * ramp(
        -0.9, 0.4, wound.soft + wound.mid
    )
    canvas.tint(ghost * band, (0.55, 0.52, 0.5))


def primer(wound: Wound, reach: float, colour: Colour) -> None:
    """Primer over the repair, with a soft edge of overspray ``reach`` mm outside it."""
    canvas = wound.canvas
    edge = wound.cut + wound.mid * 7 + wound.soft * 8 + wound.fine * 2.5
    mask = ramp(reach + 26, reach - 6, edge) * canvas.body
    tone = np.clip(1 + 0.035 * wound.soft + 0.02 * wound.fine, 0.7, 1.3)
    canvas.paint(mask, colour, tone=tone, gloss=0.12, metal=0.0)
    canvas.z += mask * wound.fine * 0.035


def seam_ghost(wound: Wound, amount: float) -> None:
    """What is left to see of a dressed seam through primer."""
    canvas = wound.canvas
    canvas.z -= ramp(3.5, 0.5, np.abs(wound.cut + wound.soft)) * np.float32(amount) * canvas.body


def sealer(wound: Wound, inset: float = 0.0) -> None:
    """Seam sealer brushed along the joint."""
    canvas = wound.canvas
    across = (wound.cut + inset + wound.soft * 1.1 + wound.rough * 0.5) / 9.5
    bow = np.clip(1 - across * across, 0, 1)
    mask = ramp(0.0, 0.16, bow) * canvas.body
    lines = np.sin(across * 17 + wound.soft * 2) * 0.35
    canvas.z += np.sqrt(bow) * canvas.body * (2.4 + lines + wound.fine * 0.1)
    tone = np.clip(1 + 0.04 * wound.rough, 0.7, 1.2)
    canvas.paint(mask, SEALER, tone=tone, gloss=0.25, metal=0.0)


def new_paint(wound: Wound, *, gloss: float = 1.0) -> None:
    """Fresh paint over the whole panel."""
    canvas, trouble = wound.canvas, wound.trouble
    tone = np.clip(1 + 0.012 * wound.soft, 0.9, 1.1)
    canvas.paint(canvas.body, trouble.new, tone=tone, gloss=gloss, metal=0.0)
    canvas.z += canvas.body * wound.fine * np.float32(0.011)


def stone_chip(wound: Wound) -> None:
    """Stone-chip coating: an even, pebbled, dark grey skin."""
    canvas = wound.canvas
    pebble = canvas.noise(crumbs(), 2.6, 9)
    tone = np.clip(1 + 0.08 * pebble, 0.6, 1.5)
    canvas.paint(canvas.body, (0.05, 0.052, 0.055), tone=tone, gloss=0.3, metal=0.0)
    canvas.z += canvas.body * pebble * 0.55


def wax(wound: Wound) -> None:
    """Cavity wax that has run out of the seams: amber, wet."""
    canvas = wound.canvas
    box = wound.trouble.box
    below = (canvas.y - np.float32(box.y)) / np.float32(box.height)
    run = canvas.noise(brushed(), 0.7, 10, 90)
    within = ramp(0.62, 0.5, np.abs(canvas.x - np.float32(box.x)) / np.float32(box.width))
    mask = ramp(0.15, 0.35, run + 0.55 - np.abs(below - 0.1) * 1.2) * within * canvas.body
    mask *= ramp(-0.3, -0.2, below)
    canvas.paint(mask * 0.62, (0.30, 0.15, 0.03), gloss=1.1)
    canvas.z += mask * 1.2
