"""Drawing one planned picture."""

import zlib
from collections.abc import Callable
from dataclasses import replace
from functools import cache

import numpy as np
from PIL import Image, ImageChops, ImageOps

from journal.demo import bench_scenes, car_scenes
from journal.demo.canvas import Canvas, Framing
from journal.demo.car_scenes import BODY_NEW, BODY_OLD
from journal.demo.easel import Stand
from journal.demo.light import LIGHTS, shine
from journal.demo.looks import LOOKS, TOOLS
from journal.demo.metal import Trouble, Wound
from journal.demo.outlines import Box
from journal.demo.places import PLACES
from journal.demo.plan import Planned
from journal.demo.story import AreaShot, AreaStory, OtherShot
from journal.demo.whole_car import State, paint_car

#: Pictures are worked out at this share of their size and enlarged: softness of a small lens.
_SHARE = 0.5

#: The pictures of parts: what draws each, and the width it shows in mm.
SCENES: dict[str, tuple[Callable[[Canvas, bool], None], float]] = {
    "engine bay": (car_scenes.engine_bay, 1150),
    "brake": (car_scenes.brake, 720),
    "underside": (car_scenes.underside, 1000),
    "drums": (bench_scenes.drums, 760),
    "dampers": (bench_scenes.dampers, 760),
    "carburettor": (bench_scenes.carburettor, 660),
    "bolts": (bench_scenes.bolts, 640),
    "trim": (bench_scenes.trim, 760),
    "loom": (bench_scenes.loom, 760),
    "dials": (car_scenes.dials, 820),
}

#: Side of the square of noise that pictures are given a part of.
_GRAIN = 1700

#: The car's states, from the album's pictures to the finished car.
STATES = {
    "new": State(BODY_NEW, 0.9),
    "bought": State(BODY_OLD, 0.5, rust=0.8),
    "undressed": State(BODY_OLD, 0.3, rust=1.0, trim=False, glass=False),
    "shell": State(
        BODY_OLD, 0.2, rust=1.0, doors=False, glass=False, trim=False, wheels=False, lids=False
    ),
    "half welded": State(
        BODY_OLD, 0.2, doors=False, glass=False, trim=False, wheels=False, lids=False, patches=True
    ),
    "welded": State((0.20, 0.05, 0.035), 0.06, glass=False, trim=False, wheels=False),
    "rolling": State((0.20, 0.05, 0.035), 0.06, glass=False, trim=False),
    "primer": State((0.30, 0.30, 0.30), 0.05, glass=False, trim=False),
    "painted": State(BODY_NEW, 1.0, glass=False, trim=False),
    "finished": State(BODY_NEW, 1.0),
}


def _jitter(seed: int, salt: int, reach: float) -> float:
    """A number between -reach and reach that belongs to the seed."""
    part = zlib.crc32(f"{seed}/{salt}".encode()) / 0xFFFFFFFF
    return (2 * part - 1) * reach


def framing_of(planned: Planned, area: AreaStory, shot: AreaShot) -> Framing:
    """Where the camera stood for a close view of a repair area."""
    home = zlib.crc32(area.key.encode())
    seed = planned.subject.seed
    width, height, _ = area.spot
    near = 0.74 if shot.look in ("tacked", "welded") and seed % 2 else 1.0
    return Framing(
        x=_jitter(home, 1, 20) + _jitter(seed, 1, 26),
        y=_jitter(home, 2, 16) + _jitter(seed, 2, 20),
        width=(max(width, 1.4 * height) * 1.55 + 190) * near * (1 + _jitter(seed, 3, 0.07)),
        yaw=_jitter(home, 4, 15) + _jitter(seed, 4, 5),
        pitch=-7 + _jitter(home, 5, 6) + _jitter(seed, 5, 4),
        roll=_jitter(seed, 6, 3),
    )


def _close(planned: Planned, area: AreaStory, shot: AreaShot) -> Image.Image:
    """A close view of a repair area."""
    home = zlib.crc32(area.key.encode())
    seed = planned.subject.seed
    width, height, turn = area.spot
    framing = framing_of(planned, area, shot)
    canvas = Canvas(_working_size(planned), framing, home % 9973)
    box = Box(_jitter(home, 7, 12), 6, width, height, 10, turn, _jitter(home, 8, 0.14))
    trouble = Trouble(box, BODY_OLD, BODY_NEW, area.coated)
    for strip in canvas.strips():
        PLACES[area.place](strip)
        wound = Wound(strip, trouble)
        LOOKS[shot.look](wound)
        for tool in TOOLS.get(shot.look, ()):
            tool(strip, box, seed)
    picture = shine(canvas, LIGHTS[shot.light])
    return ImageOps.mirror(picture) if area.mirrored else picture


def _scene(planned: Planned, shot: OtherShot) -> Image.Image:
    """Parts on the bench, in the engine bay or under the car."""
    seed = planned.subject.seed
    draw, width = SCENES[shot.name]
    framing = Framing(
        x=_jitter(seed, 1, 30),
        y=_jitter(seed, 2, 24),
        width=width * (1 + _jitter(seed, 3, 0.08)),
        yaw=_jitter(seed, 4, 10),
        pitch=-5 + _jitter(seed, 5, 6),
        roll=_jitter(seed, 6, 6),
    )
    canvas = Canvas(_working_size(planned), framing, seed % 9973)
    for strip in canvas.strips():
        draw(strip, shot.clean)
    return shine(canvas, LIGHTS[shot.light])


def _car(planned: Planned, shot: OtherShot) -> Image.Image:
    """The whole car."""
    seed = planned.subject.seed
    stand = Stand(
        shot.azimuth + _jitter(seed, 1, 3),
        1450 + _jitter(seed, 2, 250),
        6900 + _jitter(seed, 3, 500),
        640 + _jitter(seed, 4, 60),
    )
    place = "yard" if shot.light == "yard" else "garage"
    return paint_car(
        _working_size(planned), stand, STATES[shot.name], shot.light, place, seed % 997
    )


def _print(planned: Planned, shot: OtherShot) -> Image.Image:
    """An old print on the scanner: faded, with a white border, not quite straight."""
    seed = planned.subject.seed
    picture = _car(planned, replace(shot, subject="car"))
    faded = np.asarray(picture).astype(np.float32) / 255
    grey = faded.mean(axis=2, keepdims=True)
    faded = grey + (faded - grey) * 0.55
    faded = 0.16 + 0.74 * faded * np.array([1.06, 0.97, 0.78], np.float32)
    inner = Image.fromarray((np.clip(faded, 0, 1) * 255).astype(np.uint8))
    border = picture.width // 22
    paper = ImageOps.expand(inner, border, (236, 230, 214))
    bed = Image.new("RGB", (paper.width + 70, paper.height + 60), (222, 222, 220))
    turned = paper.convert("RGBA").rotate(
        _jitter(seed, 1, 1.6), Image.Resampling.BICUBIC, expand=True
    )
    bed.paste(turned, (round(32 + _jitter(seed, 2, 12)), round(26 + _jitter(seed, 3, 10))), turned)
    return bed.resize(_working_size(planned), Image.Resampling.BILINEAR)


def _working_size(planned: Planned) -> tuple[int, int]:
    width, height = (round(side * _SHARE) for side in planned.camera.size)
    return (height, width) if planned.portrait else (width, height)


@cache
def _grain(amount: int) -> Image.Image:
    """A camera's noise round middle grey, in quarter levels of deviation."""
    rng = np.random.default_rng(5)
    noise = rng.standard_normal((_GRAIN, _GRAIN), dtype=np.float32)
    smooth = (noise + np.roll(noise, 1, 0) + np.roll(noise, 1, 1)) * np.float32(amount / 4 / 1.73)
    return Image.fromarray(np.clip(np.rint(smooth) + 128, 0, 255).astype(np.uint8))


def _developed(planned: Planned, picture: Image.Image, light: str) -> Image.Image:
    """The picture at the camera's size, with its noise."""
    width, height = planned.camera.size
    if planned.portrait:
        width, height = height, width
    large = picture.resize((width, height), Image.Resampling.BICUBIC)
    amount = LIGHTS[light].grain * (1.5 if planned.camera.key == "P4" else 1.0)
    left, top = planned.subject.seed % 97, planned.subject.seed // 97 % 97
    noise = _grain(round(amount * 2)).crop((left, top, left + width, top + height))
    return ImageChops.add(large, Image.merge("RGB", (noise, noise, noise)), 1, -128)


def draw(planned: Planned) -> Image.Image:
    """The picture, upright, at the size its camera takes."""
    shot = planned.subject.shot
    if isinstance(shot, AreaShot):
        if planned.subject.area is None:
            raise ValueError("a picture of a look needs its repair area")
        picture = _close(planned, planned.subject.area, shot)
    elif shot.subject == "car":
        picture = _car(planned, shot)
    elif shot.subject == "print":
        picture = _print(planned, shot)
    else:
        picture = _scene(planned, shot)
    return _developed(planned, picture, shot.light)
