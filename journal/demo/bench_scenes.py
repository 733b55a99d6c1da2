"""Pictures of parts on the bench."""

import math

import numpy as np

from journal.demo.canvas import Canvas, Colour
from journal.demo.car_scenes import BODY_NEW, RUSTY, grime, iron
from journal.demo.noise import crumbs, grain, ramp
from journal.demo.outlines import Box, box_distance
from journal.demo.solids import (
    ALUMINIUM,
    BLACK,
    CHROME,
    IRON,
    RED,
    YELLOW,
    bar,
    bench,
    block,
    disc,
    hose,
    label,
)


def _bolts(canvas: Canvas, seed: int) -> None:
    rng = np.random.default_rng(seed)
    for _ in range(22):
        x, y = float(rng.uniform(-330, 330)), float(rng.uniform(-240, 240))
        angle = float(rng.uniform(0, math.tau))
        length = float(rng.uniform(20, 46))
        tip = (x + length * math.cos(angle), y + length * math.sin(angle))
        stuff = (
            ((0.52, 0.46, 0.26), 0.6, 0.8) if rng.random() < 0.5 else ((0.3, 0.3, 0.31), 0.7, 1.0)
        )
        bar(canvas, (x, y, *tip), 4.6, stuff, 2)
        disc(canvas, (x, y), 9, 14, stuff, 3)


def drums(canvas: Canvas, clean: bool) -> None:
    """Brake drums and shoes on the bench."""
    bench(canvas)
    iron = (IRON, 0.5, 0.8) if clean else (RUSTY, 0.04, 0.0)
    for x, y in ((-190, -70), (140, 40)):
        disc(canvas, (x, y), 150, 60, iron, 12)
        disc(canvas, (x, y), 128, 24, (CHROME if clean else RUSTY, 0.7, 0.9 if clean else 0.0), 3)
        disc(canvas, (x, y), 70, 44, iron, 8)
        disc(canvas, (x, y), 30, 20, (BLACK, 0.2, 0.0), 3)
        for step in range(4):
            angle = math.radians(90 * step + 20)
            disc(
                canvas,
                (x + 50 * math.cos(angle), y + 50 * math.sin(angle)),
                8,
                20,
                (BLACK, 0.2, 0.0),
                2,
            )
    arc = [(-60, -240), (40, -290), (160, -270), (230, -190)]
    hose(canvas, arc, 22, ((0.20, 0.15, 0.11), 0.2, 0.0), 4)
    label(canvas, -300, 190, -12)
    if not clean:
        grime(canvas, 0.35)


def dampers(canvas: Canvas, clean: bool) -> None:
    """A coil spring and two dampers side by side."""
    bench(canvas)
    for row, offset in enumerate((-130, 30)):
        tube = (BLACK, 0.8, 0.0) if clean else (RUSTY, 0.06, 0.0)
        bar(canvas, (-280, offset, 40, offset + 10), 32, tube, 4)
        bar(canvas, (40, offset + 10, 230, offset + 16), 11, (CHROME, 0.95, 1.0), 20)
        for x in (-318, 258):
            disc(canvas, (x, offset + 8 + row), 26, 40, tube, 8)
            disc(canvas, (x, offset + 8 + row), 10, 30, (BLACK, 0.1, 0.0), 2)
    spring = (BODY_NEW if clean else RUSTY, 0.6 if clean else 0.05, 0.0)
    for step in range(11):
        x = -260 + step * 46
        bar(canvas, (x + 30, 250, x + 46, 130), 8, spring, 0)
        bar(canvas, (x, 130, x + 30, 250), 10, spring, 12)
    if not clean:
        grime(canvas, 0.4)


def carburettor(canvas: Canvas, clean: bool) -> None:
    """A carburettor in pieces on newspaper, jets laid out in a row."""
    bench(canvas)
    paper = box_distance(canvas, Box(-10, 0, 640, 430, 2, 4))
    canvas.paint(ramp(0.5, -0.5, paper), (0.55, 0.53, 0.47), gloss=0.02)
    lines = (np.sin(canvas.y * 0.9) > 0.2) & (canvas.noise(grain(), 0.5, 66) > -0.3)
    columns = np.sin(canvas.x * 0.045) > -0.86
    canvas.paint(ramp(-16, -18, paper) * (lines & columns) * np.float32(0.5), (0.2, 0.2, 0.2))
    body = (ALUMINIUM, 0.7, 0.95) if clean else ((0.22, 0.19, 0.14), 0.2, 0.2)
    block(canvas, Box(-130, -40, 210, 170, 20, 8), 60, body, 14)
    disc(canvas, (-150, -60), 62, 84, body, 10)
    disc(canvas, (-150, -60), 44, 30, (BLACK, 0.2, 0.0), 3)
    bar(canvas, (-194, -66, -106, -54), 3, (YELLOW, 0.8, 1.0), 40)
    disc(canvas, (-60, 20), 40, 74, body, 8)
    bar(canvas, (-250, 20, -20, 60), 6, (CHROME, 0.8, 1.0), 60)
    disc(canvas, (120, -90), 70, 40, ((0.42, 0.30, 0.10), 0.7, 0.9), 20)
    for step in range(7):
        brass = ((0.50, 0.36, 0.10), 0.9, 1.0)
        x = 20 + step * 40
        bar(canvas, (x, 90 + (step % 3) * 6, x + 2, 120 + (step * 7) % 20), 6 + step % 3, brass, 3)
    for x, y in ((60, 10), (210, 20), (250, -60)):
        disc(canvas, (x, y), 18, 6, ((0.45, 0.30, 0.12), 0.5, 0.6), 3)
    if not clean:
        grime(canvas, 0.35)


def bolts(canvas: Canvas, clean: bool) -> None:
    """Bolts and brackets, sorted or not, with their tag."""
    bench(canvas)
    _bolts(canvas, canvas.seed)
    block(canvas, Box(180, -150, 180, 60, 8, 12), 8, iron(clean), 3)
    disc(canvas, (230, -140), 11, 10, (BLACK, 0.1, 0.0), 2)
    label(canvas, -210, 150, 9)
    if not clean:
        grime(canvas, 0.5)


def trim(canvas: Canvas, clean: bool) -> None:
    """Bright trim strips, a hubcap and a badge without words."""
    bench(canvas)
    blanket = canvas.noise(grain(), 1.2, 67)
    weave = np.clip(1 + 0.12 * blanket, 0, 2)
    canvas.paint(np.ones_like(canvas.z), (0.10, 0.11, 0.16), tone=weave, gloss=0.0)
    canvas.z += blanket * 0.4
    bright = (CHROME, 1.0 if clean else 0.4, 1.0)
    for step in range(4):
        y = -220 + step * 52
        bar(canvas, (-340, y, 330, y + 26), 9, bright, 4)
    disc(canvas, (-130, 120), 140, 30, bright, 40)
    disc(canvas, (-130, 120), 60, 46, bright, 34)
    disc(canvas, (-130, 120), 26, 50, (BODY_NEW, 0.9, 0.0), 10)
    block(canvas, Box(190, 110, 200, 36, 16, -8), 12, bright, 8)
    block(canvas, Box(190, 190, 90, 60, 20, -8), 12, (RED, 0.9, 0.0), 8)
    if not clean:
        pits = ramp(1.6, 2.1, canvas.noise(crumbs(), 2.4, 68))
        canvas.paint(pits * 0.8, (0.14, 0.07, 0.03), gloss=0.05, metal=0.0)


def loom(canvas: Canvas, clean: bool) -> None:
    """The wiring loom laid out, each end with its tag."""
    bench(canvas)
    colours: tuple[Colour, ...] = (
        RED,
        (0.03, 0.05, 0.3),
        (0.03, 0.2, 0.05),
        YELLOW,
        (0.4, 0.4, 0.4),
        (0.12, 0.06, 0.03),
    )
    stuff = (BLACK, 0.4 if clean else 0.1, 0.0)
    hose(canvas, [(-400, -60), (-200, 30), (20, -10), (200, 40), (420, 0)], 17, stuff, 6)
    rng = np.random.default_rng(canvas.seed)
    for step, colour in enumerate(colours):
        start = (-280.0 + step * 105, 0.0)
        down = float(rng.choice([-1, 1]))
        bend = (start[0] + float(rng.uniform(-50, 60)), down * 130)
        end = (start[0] + float(rng.uniform(-90, 90)), down * float(rng.uniform(190, 250)))
        hose(canvas, [start, bend, end], 5.5, (colour, 0.5, 0.0), 6)
        bar(canvas, (*end, end[0] + 6, end[1] + down * 16), 5, (CHROME, 0.8, 1.0), 5)
    label(canvas, -250, -170, 6)
    label(canvas, 190, 190, -10)
    if not clean:
        grime(canvas, 0.3)
