"""Shapes in millimetres: outlines of lines and cubic curves, with holes.

Their written form is SVG path data (absolute M, L, C and Z only), filled even-odd.
"""

from dataclasses import dataclass
from typing import NamedTuple


class Point(NamedTuple):
    """A spot on a view, in millimetres from its top left corner."""

    x: float
    y: float


@dataclass(frozen=True, slots=True)
class Line:
    """A straight edge to ``to``."""

    to: Point


@dataclass(frozen=True, slots=True)
class Curve:
    """A cubic Bezier edge to ``to`` with two handles."""

    handle1: Point
    handle2: Point
    to: Point


@dataclass(frozen=True, slots=True)
class Contour:
    """A closed outline: a start and the edges from it; the last edge leads back to the start."""

    start: Point
    edges: tuple[Line | Curve, ...]


@dataclass(frozen=True, slots=True)
class Shape:
    """One or more closed outlines, filled even-odd: an outline inside another is a hole."""

    contours: tuple[Contour, ...]
