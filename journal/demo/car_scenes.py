"""Pictures of parts where they belong: engine bay, wheel, underside, instruments."""

import math

import numpy as np

from journal.demo.canvas import Canvas, Colour
from journal.demo.noise import clouds, crumbs, ramp
from journal.demo.outlines import Box, box_distance, ring_distance
from journal.demo.solids import ALUMINIUM, BLACK, CHROME, IRON, RED, Stuff, bar, block, disc, hose

BODY_OLD: Colour = (0.115, 0.215, 0.165)
BODY_NEW: Colour = (0.028, 0.125, 0.085)
RUSTY: Colour = (0.13, 0.055, 0.025)


def grime(canvas: Canvas, amount: float) -> None:
    """Oil, dust and rust over everything."""
    soft = canvas.noise(clouds(), 1.6, 60)
    rough = canvas.noise(crumbs(), 1.4, 61)
    oil = ramp(-0.8, 1.4, soft + rough * 0.3) * np.float32(0.72 * amount)
    canvas.paint(oil, (0.05, 0.037, 0.024), gloss=0.15, metal=0.0)
    rust = ramp(0.9, 1.9, canvas.noise(clouds(), 2.0, 62) + rough * 0.3) * np.float32(0.8 * amount)
    canvas.paint(rust, (0.15, 0.065, 0.03), gloss=0.03, metal=0.0)
    canvas.z += rough * np.float32(0.5 * amount)


def iron(clean: bool) -> Stuff:
    """Iron parts: painted black when clean, rusty before."""
    return (BLACK, 0.7, 0.0) if clean else (RUSTY, 0.05, 0.0)


def _inner_wings(canvas: Canvas, paint: Stuff) -> None:
    """The inner wings with their damper tops, left and right of the engine."""
    for side in (-1, 1):
        block(canvas, Box(side * 560, 0, 430, 1200, 60), 40, paint, 40)
        disc(canvas, (side * 470, 40), 95, 75, paint, 30)
        for step in range(3):
            angle = math.radians(120 * step + 20)
            spot = (side * 470 + 55 * math.cos(angle), 40 + 55 * math.sin(angle))
            disc(canvas, spot, 12, 88, (CHROME, 0.7, 1.0), 4)


def engine_bay(canvas: Canvas, clean: bool) -> None:
    """The engine from above: rocker cover, air filter, radiator, battery, hoses and leads."""
    paint = (BODY_NEW, 0.9, 0.0) if clean else (BODY_OLD, 0.25, 0.0)
    everywhere = np.ones_like(canvas.z)
    canvas.paint(everywhere, (0.02, 0.02, 0.02), gloss=0.1)
    canvas.z += -160
    _inner_wings(canvas, paint)
    block(canvas, Box(0, -420, 1400, 150, 20), 60, paint, 16)
    block(canvas, Box(0, 400, 560, 90, 10), 30, (BLACK, 0.5, 0.0), 6)
    fins = np.sin(canvas.x * 1.1) * ramp(2, -2, box_distance(canvas, Box(0, 400, 520, 44, 4)))
    canvas.z += fins * 3
    disc(canvas, (0, 400), 26, 48, (CHROME, 0.9, 1.0), 8)
    block(canvas, Box(0, 30, 300, 560, 30), -40, (IRON, 0.4, 0.6), 30)
    cover = Box(-18, 10, 130, 470, 40)
    block(
        canvas, cover, 38, ((0.30, 0.03, 0.02) if clean else IRON, 0.9 if clean else 0.2, 0.0), 26
    )
    for offset in (-130, 0, 130):
        bar(canvas, (-62, 10 + offset, 26, 10 + offset), 5, (CHROME, 0.8, 1.0), 36)
    disc(canvas, (-18, -150), 34, 66, (CHROME if clean else IRON, 0.9, 1.0), 10)
    disc(canvas, (190, -60), 128, 74, (BLACK if clean else RUSTY, 0.7, 0.0), 22)
    disc(canvas, (190, -60), 96, 82, (BLACK if clean else RUSTY, 0.7, 0.0), 10)
    disc(canvas, (190, -60), 15, 96, (CHROME, 0.9, 1.0), 6)
    block(canvas, Box(-250, 285, 170, 120, 12), 66, (BLACK, 0.45, 0.0), 8)
    for step in range(6):
        disc(canvas, (-312 + step * 25, 285), 9, 74, (RED if clean else IRON, 0.5, 0.0), 4)
    for step in range(4):
        start = (-150 - step * 6, -40 + step * 26)
        middle = (-120, -130 + step * 90)
        hose(canvas, [start, middle, (-72, -150 + step * 105)], 7, (BLACK, 0.5, 0.0), 44)
    disc(canvas, (-158, 0), 44, 52, ((0.10, 0.05, 0.03), 0.7, 0.0), 12)
    hose(canvas, [(60, 330), (110, 270), (60, 210), (20, 240)], 26, (BLACK, 0.5, 0.0), 30)
    hose(canvas, [(-150, 380), (-210, 180), (-190, 60)], 22, (BLACK, 0.45, 0.0), 10)
    hose(canvas, [(230, -350), (160, -260), (60, -260), (20, -190)], 15, (BLACK, 0.45, 0.0), 40)
    disc(canvas, (330, -330), 62, 90, (BLACK if clean else RUSTY, 0.6, 0.0), 24)
    if not clean:
        grime(canvas, 0.95)


def brake(canvas: Canvas, clean: bool) -> None:
    """A front hub with its disc and caliper, the wheel off."""
    canvas.paint(np.ones_like(canvas.z), (0.02, 0.019, 0.018), gloss=0.05)
    canvas.z += canvas.noise(clouds(), 1.0, 63) * 2 - 60
    bar(canvas, (-420, 120, 420, 60), 30, iron(clean), -40)
    bar(canvas, (-60, -420, -30, -60), 34, iron(clean), -30)
    for step in range(9):
        hose(
            canvas,
            [(-150, -400 + step * 34), (-60, -408 + step * 34), (40, -392 + step * 34)],
            12,
            iron(clean),
            0,
        )
    steel = (CHROME, 0.9, 1.0) if clean else ((0.24, 0.13, 0.08), 0.3, 0.5)
    disc(canvas, (0, 0), 238, 10, steel, 3)
    away = ring_distance(canvas, 0, 0, 0)
    canvas.z += np.sin(away * 1.6) * 0.08 * ramp(238, 236, away)
    disc(canvas, (0, 0), 128, 14, (IRON, 0.4, 0.7), 6)
    disc(canvas, (0, 0), 104, 46, (IRON if clean else RUSTY, 0.4, 0.5), 16)
    for step in range(4):
        angle = math.radians(45 + 90 * step)
        x, y = 74 * math.cos(angle), 74 * math.sin(angle)
        bar(canvas, (x, y, x + 0.5, y), 9, (CHROME, 0.8, 1.0), 60)
    disc(canvas, (0, 0), 38, 74, (ALUMINIUM if clean else IRON, 0.7, 0.9), 12)
    caliper = ((0.50, 0.40, 0.16), 0.6, 0.5) if clean else (RUSTY, 0.05, 0.0)
    block(canvas, Box(205, -70, 120, 210, 28, 18), 78, caliper, 30)
    block(canvas, Box(205, -70, 60, 120, 12, 18), 88, caliper, 12)
    hose(canvas, [(240, -150), (300, -260), (200, -340), (120, -420)], 9, (BLACK, 0.5, 0.0), 40)
    if not clean:
        grime(canvas, 0.7)


def _leaf_springs(canvas: Canvas, axle: Stuff, clean: bool) -> None:
    """The leaf springs and the bolts that hold the axle to them."""
    for side in (-1, 1):
        for leaf in range(4):
            length = 420 - leaf * 85
            block(canvas, Box(side * 290, 40, 60 - leaf * 2, length * 2, 8), 60 + leaf * 9, axle, 5)
        for offset in (-46, 46):
            bar(
                canvas,
                (side * 290 - 40, 40 + offset, side * 290 + 40, 40 + offset),
                9,
                (CHROME if clean else IRON, 0.6, 0.9),
                96,
            )


def underside(canvas: Canvas, clean: bool) -> None:
    """The rear axle from below: casing, leaf springs, propshaft, exhaust."""
    tone: Colour = (0.05, 0.052, 0.055) if clean else (0.075, 0.05, 0.035)
    pebble = canvas.noise(crumbs(), 1.8, 64)
    canvas.paint(np.ones_like(canvas.z), tone, gloss=0.3 if clean else 0.05)
    canvas.z += pebble * (0.8 if clean else 2.0) - 80
    for offset in (-360, 360):
        block(canvas, Box(offset, 0, 120, 1400, 10), -30, (tone, 0.3, 0.0), 14)
    axle = iron(clean)
    bar(canvas, (0, -480, 0, -40), 30, axle, -10)
    bar(canvas, (-620, 40, 620, 40), 44, axle, 0)
    disc(canvas, (0, 40), 138, 78, axle, 60)
    for step in range(8):
        angle = math.radians(45 * step)
        disc(
            canvas,
            (112 * math.cos(angle), 40 + 112 * math.sin(angle)),
            10,
            92,
            (CHROME, 0.6, 0.9),
            4,
        )
    _leaf_springs(canvas, axle, clean)
    pipe = (ALUMINIUM, 0.6, 0.9) if clean else (RUSTY, 0.05, 0.0)
    hose(
        canvas,
        [(150, -480), (160, -260), (200, -120), (190, 40), (180, 200), (170, 480)],
        24,
        pipe,
        70,
    )
    hose(
        canvas,
        [(-40, -480), (-60, -200), (-90, 0), (-260, 30), (-600, 20)],
        5,
        ((0.45, 0.22, 0.08) if clean else IRON, 0.7, 0.9),
        60,
    )
    if not clean:
        grime(canvas, 0.9)


def dials(canvas: Canvas, clean: bool) -> None:
    """The instruments in their panel."""
    wood = canvas.noise(crumbs(), 0.3, 69) * 0.3 + np.sin(
        canvas.y * 0.3 + 3 * canvas.noise(clouds(), 0.4, 70)
    )
    tone = np.clip(1 + 0.13 * wood, 0.4, 1.6)
    base = (0.17, 0.075, 0.03) if clean else (0.20, 0.15, 0.11)
    canvas.paint(np.ones_like(tone), base, tone=tone, gloss=0.9 if clean else 0.1)
    for x, radius, turn in ((-190, 130, 200), (110, 130, 250), (330, 72, 300)):
        disc(canvas, (x, 0), radius + 14, 14, (CHROME, 0.95, 1.0), 9)
        disc(canvas, (x, 0), radius, 2, (BLACK, 0.9, 0.0), 2)
        for step in range(21):
            angle = math.radians(135 + step * 13.5)
            inner = radius * (0.78 if step % 2 else 0.70)
            ends = (
                x + inner * math.cos(angle),
                inner * math.sin(angle),
                x + radius * 0.9 * math.cos(angle),
                radius * 0.9 * math.sin(angle),
            )
            bar(canvas, ends, 2.2, ((0.75, 0.75, 0.68), 0.1, 0.0), 1)
        angle = math.radians(turn)
        bar(
            canvas,
            (x, 0, x + radius * 0.75 * math.cos(angle), radius * 0.75 * math.sin(angle)),
            3,
            ((0.75, 0.12, 0.03), 0.2, 0.0),
            4,
        )
        disc(canvas, (x, 0), 12, 10, (BLACK, 0.6, 0.0), 4)
    for step in range(5):
        disc(canvas, (-280 + step * 130, 210), 22, 30, (BLACK, 0.7, 0.0), 10)
    if not clean:
        grime(canvas, 0.3)
