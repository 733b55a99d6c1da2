"""Outlines on the metal: how far each pixel is from an edge, in millimetres, inside negative."""

import math
from dataclasses import dataclass

import numpy as np

from journal.demo.canvas import Canvas
from journal.demo.noise import Plane, crumbs


@dataclass(frozen=True, slots=True)
class Box:
    """A box with round corners: centre, width, height and corner in mm; turn and lean."""

    x: float = 0.0
    y: float = 0.0
    width: float = 100.0
    height: float = 100.0
    corner: float = 8.0
    turn: float = 0.0
    lean: float = 0.0


def box_axes(canvas: Canvas, box: Box) -> tuple[Plane, Plane]:
    """Millimetres along and across the box from its middle."""
    cosine, sine = math.cos(math.radians(box.turn)), math.sin(math.radians(box.turn))
    dx, dy = canvas.x - np.float32(box.x), canvas.y - np.float32(box.y)
    along = dx * np.float32(cosine) + dy * np.float32(sine)
    across = dy * np.float32(cosine) - dx * np.float32(sine)
    if box.lean:
        along += across * np.float32(box.lean)
    return along, across


def box_distance(canvas: Canvas, box: Box) -> Plane:
    """Distance to the edge of the box."""
    along, across = box_axes(canvas, box)
    qx = np.abs(along) - np.float32(box.width / 2 - box.corner)
    qy = np.abs(across) - np.float32(box.height / 2 - box.corner)
    outside = np.hypot(np.maximum(qx, 0), np.maximum(qy, 0))
    result: Plane = outside + np.minimum(np.maximum(qx, qy), 0) - np.float32(box.corner)
    return result


def box_reach(canvas: Canvas, box: Box) -> Plane:
    """How far out in the oval round the box: 0 in its middle, 1 at the middle of each side."""
    along, across = box_axes(canvas, box)
    result: Plane = np.hypot(along * np.float32(2 / box.width), across * np.float32(2 / box.height))
    return result


def box_run(canvas: Canvas, box: Box) -> Plane:
    """Millimetres along the nearest edge of the box, for what repeats round it."""
    along, across = box_axes(canvas, box)
    flat = np.abs(across) - box.height / 2 > np.abs(along) - box.width / 2
    result: Plane = np.where(flat, along, across + np.float32(box.width / 2))
    return result


def ring_distance(canvas: Canvas, x: float, y: float, radius: float) -> Plane:
    """Distance to a circle."""
    result: Plane = np.hypot(canvas.x - np.float32(x), canvas.y - np.float32(y)) - np.float32(
        radius
    )
    return result


def ragged(canvas: Canvas, distance: Plane, depth: float, salt: int = 0) -> Plane:
    """The distance to the same edge gone ragged by ``depth`` mm."""
    result: Plane = distance + canvas.noise(crumbs(), 1.1, salt) * np.float32(depth)
    return result
