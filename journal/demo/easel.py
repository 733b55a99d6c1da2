"""A picture of the whole car under the brush: spots projected, shapes filled with lit colours."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from PIL import Image, ImageDraw

from journal.demo.canvas import Colour
from journal.demo.car_shape import LENGTH, Points, Spot
from journal.demo.light import Light, tones


@dataclass(frozen=True, slots=True)
class Stand:
    """Where the camera stood: degrees round the car from its front, its height, its distance."""

    azimuth: float
    height: float = 1500.0
    distance: float = 6900.0
    aim: float = 640.0


class Easel:
    """A picture under the brush: projects spots of the car and fills shapes with lit colours."""

    def __init__(self, size: tuple[int, int], stand: Stand, light: Light) -> None:
        self.size = size
        self.light = light
        angle = math.radians(stand.azimuth)
        aim = np.array([LENGTH / 2, 0, stand.aim])
        flat = math.sqrt(max(1.0, stand.distance**2 - (stand.height - stand.aim) ** 2))
        self.eye = aim + np.array([-flat * math.cos(angle), flat * math.sin(angle), 0])
        self.eye[2] = stand.height
        forward = (aim - self.eye) / np.linalg.norm(aim - self.eye)
        right = np.cross(forward, [0, 0, 1])
        right /= np.linalg.norm(right)
        self.axes = np.stack([right, -np.cross(right, forward), forward])
        self.focal = size[0] * 1.35
        self.image = Image.new("RGB", size)
        self.draw = ImageDraw.Draw(self.image)
        toward = light.toward
        lamp = toward[0] * right + np.array([0, 0, -toward[1]]) - forward * toward[2] * 0.6
        self.lamp = lamp / np.linalg.norm(lamp)

    def project(self, spots: Points) -> Points:
        """Pixels of spots of the car."""
        seen = (spots - self.eye) @ self.axes.T
        depth = np.maximum(seen[..., 2], 1.0)
        flat: Points = seen[..., :2] / depth[..., None] * self.focal
        result: Points = flat + np.array(self.size) / 2
        return result

    def facing(self, spot: Sequence[float], normal: Sequence[float]) -> bool:
        """Whether a surface at ``spot`` shows its outer side."""
        return bool(np.dot(self.eye - np.asarray(spot), normal) > 0)

    def lit(self, normals: Points, spots: Points, colour: Points, gloss: float) -> Points:
        """Levels of surfaces of a colour under the light."""
        view = self.eye - spots
        view /= np.linalg.norm(view, axis=-1, keepdims=True)
        facing = np.sum(normals * view, axis=-1)
        mirror_z = 2 * facing * normals[..., 2] - view[..., 2]
        room = np.array(self.light.room)
        place = (0.5 + 0.5 * np.clip(mirror_z * 1.05, -1, 1)) * (len(room) - 1)
        mirrored = np.minimum(np.interp(place, np.arange(len(room)), room), 1.3)
        fresnel = 0.16 + 0.84 * (1 - np.clip(facing, 0, 1)) ** 4
        lamp = np.clip(normals @ self.lamp, 0, None)
        sky = 0.65 + 0.35 * normals[..., 2]
        key, fill = np.array(self.light.key), np.array(self.light.fill)
        seen = colour * (lamp[..., None] * key + sky[..., None] * fill)
        seen += (gloss * fresnel * mirrored)[..., None] * (key + fill) * 0.9
        return tones(seen * 0.72)

    def mesh(self, grid: Points, colour: Points, gloss: float) -> None:
        """Fill all quads of a grid that face the camera; ``colour`` has one row for each quad."""
        a, b, c, d = grid[:-1, :-1], grid[1:, :-1], grid[1:, 1:], grid[:-1, 1:]
        middle = (a + b + c + d) / 4
        normal = np.cross(c - a, d - b)
        length = np.linalg.norm(normal, axis=-1, keepdims=True)
        normal = normal / np.maximum(length, 1e-9)
        inside = np.array([LENGTH / 2, 0, 560.0])
        spread = np.array([0.25, 1.0, 1.0])
        outward = np.sign(np.sum(normal * (middle - inside) * spread, axis=-1, keepdims=True))
        normal *= outward
        shows = (np.sum(normal * (self.eye - middle), axis=-1) > 0) & (length[..., 0] > 1e-6)
        levels = self.lit(normal, middle, colour, gloss)
        quads = self.project(np.stack([a, b, c, d], axis=2))
        order = np.argsort(-np.linalg.norm(middle - self.eye, axis=-1)[shows])
        corners = quads[shows][order].reshape(-1, 8).tolist()
        for corner, level in zip(corners, levels[shows][order].tolist(), strict=True):
            self.draw.polygon(corner, fill=tuple(int(v) for v in level))

    def shape(self, spots: Sequence[Spot], colour: Colour) -> None:
        """Fill one flat outline with a colour, as it is."""
        corners = self.project(np.array(spots)).reshape(-1).tolist()
        level = tones(np.array(colour))
        self.draw.polygon(corners, fill=tuple(int(v) for v in level))

    def line(self, spots: Sequence[Spot], colour: Colour, width: float) -> None:
        """A line ``width`` mm wide at the car's middle."""
        points = self.project(np.array(spots)).reshape(-1).tolist()
        far = float(np.linalg.norm(np.array(spots[0]) - self.eye))
        pixels = max(1, round(width * self.focal / far))
        level = tones(np.array(colour))
        self.draw.line(points, fill=tuple(int(v) for v in level), width=pixels, joint="curve")
