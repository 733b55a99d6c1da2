"""Shapes in millimetres: outlines of lines and cubic curves, with holes.

Their written form is SVG path data (absolute M, L, C and Z only), filled even-odd.
"""

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from journal.domain.errors import JournalError
from journal.domain.path_data import read_commands

#: Decimals of a millimetre in the written form; a shape whose numbers have no more of them
#: comes back from its written form unchanged.
DECIMALS = 2

#: How far, in millimetres, a flattened curve may lie from the true one.
TOLERANCE = 0.5

#: Handle length of a quarter circle of radius 1, for the least error of a cubic's radius.
QUARTER = 0.5519150244935106


class Point(NamedTuple):
    """A spot on a view, in millimetres from its top left corner."""

    x: float
    y: float


class Bounds(NamedTuple):
    """The smallest upright box round something, in millimetres."""

    left: float
    top: float
    right: float
    bottom: float


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
class Stroke:
    """An open line of straight and curved edges: a swage line, the ground."""

    start: Point
    edges: tuple[Line | Curve, ...]

    @property
    def end(self) -> Point:
        """Where the last edge arrives."""
        return self.edges[-1].to if self.edges else self.start


@dataclass(frozen=True, slots=True)
class Contour:
    """A closed outline: a start and the edges from it; the last edge leads back to the start.

    Where it doesn't arrive there, a straight edge closes it.
    """

    start: Point
    edges: tuple[Line | Curve, ...]


@dataclass(frozen=True, slots=True)
class Shape:
    """One or more closed outlines, filled even-odd: an outline inside another is a hole."""

    contours: tuple[Contour, ...]


# Making shapes


def polygon(points: Sequence[tuple[float, float]]) -> Shape:
    """A shape of straight edges through three or more points, the last joined to the first.

    Raises:
        JournalError: fewer than three points were given.
    """
    if len(points) < 3:
        raise JournalError(f"A shape needs at least three corners, not {len(points)}.")
    first, *rest = (Point(x, y) for x, y in points)
    return Shape((Contour(first, tuple(Line(p) for p in rest)),))


def rectangle(left: float, top: float, width: float, height: float) -> Shape:
    """An upright rectangle from its top left corner."""
    right, bottom = left + width, top + height
    return polygon([(left, top), (right, top), (right, bottom), (left, bottom)])


def ellipse(x: float, y: float, radius_x: float, radius_y: float) -> Shape:
    """An upright ellipse round (x, y), of four cubics."""
    handle_x, handle_y = radius_x * QUARTER, radius_y * QUARTER
    right, left = Point(x + radius_x, y), Point(x - radius_x, y)
    low, high = Point(x, y + radius_y), Point(x, y - radius_y)
    edges = (
        Curve(Point(right.x, y + handle_y), Point(x + handle_x, low.y), low),
        Curve(Point(x - handle_x, low.y), Point(left.x, y + handle_y), left),
        Curve(Point(left.x, y - handle_y), Point(x - handle_x, high.y), high),
        Curve(Point(x + handle_x, high.y), Point(right.x, y - handle_y), right),
    )
    return Shape((Contour(right, edges),))


def circle(x: float, y: float, radius: float) -> Shape:
    """A circle round (x, y), of four cubics."""
    return ellipse(x, y, radius, radius)


def rounded(points: Sequence[tuple[float, float]], radius: float) -> Shape:
    """A polygon whose corners are eased by curves that start ``radius`` before each corner.

    On a short edge the ease takes half the edge at most.
    """
    corners = [Point(x, y) for x, y in points]
    if len(corners) < 3:
        raise JournalError(f"A shape needs at least three corners, not {len(corners)}.")
    edges: list[Line | Curve] = []
    for before, corner, after in zip(
        corners[-1:] + corners[:-1], corners, corners[1:] + corners[:1], strict=True
    ):
        arrive = _towards(corner, before, radius)
        leave = _towards(corner, after, radius)
        edges.append(Line(arrive))
        edges.append(
            Curve(_between(arrive, corner, QUARTER), _between(leave, corner, QUARTER), leave)
        )
    return Shape((Contour(edges[-1].to, tuple(edges)),))


def with_hole(outer: Shape, *holes: Shape) -> Shape:
    """``outer`` with each of ``holes`` cut out of it."""
    return Shape(outer.contours + tuple(c for hole in holes for c in hole.contours))


def _between(start: Point, end: Point, share: float) -> Point:
    return Point(start.x + (end.x - start.x) * share, start.y + (end.y - start.y) * share)


def _towards(start: Point, end: Point, distance: float) -> Point:
    length = math.dist(start, end)
    return _between(start, end, min(0.5, distance / length)) if length else start


# Moving shapes


def transformed(shape: Shape, move: Callable[[Point], Point]) -> Shape:
    """The shape with every point and handle moved; true to the curve for affine moves."""
    return Shape(tuple(Contour(move(c.start), moved_edges(c.edges, move)) for c in shape.contours))


def moved_edges(
    edges: tuple[Line | Curve, ...], move: Callable[[Point], Point]
) -> tuple[Line | Curve, ...]:
    """The edges with every point and handle moved."""
    return tuple(
        Line(move(e.to))
        if isinstance(e, Line)
        else Curve(move(e.handle1), move(e.handle2), move(e.to))
        for e in edges
    )


def translate(shape: Shape, dx: float, dy: float) -> Shape:
    """The shape moved by (dx, dy) millimetres."""
    return transformed(shape, lambda p: Point(p.x + dx, p.y + dy))


def mirror(shape: Shape, axis_x: float) -> Shape:
    """The shape mirrored left to right at the upright line x = ``axis_x``."""
    return transformed(shape, lambda p: Point(2 * axis_x - p.x, p.y))


def mirror_down(shape: Shape, axis_y: float) -> Shape:
    """The shape mirrored top to bottom at the level line y = ``axis_y``."""
    return transformed(shape, lambda p: Point(p.x, 2 * axis_y - p.y))


def tidy(shape: Shape) -> Shape:
    """The shape with its numbers rounded to what the written form keeps."""
    return transformed(shape, _rounded_point)


def _rounded_point(point: Point) -> Point:
    # Adding zero turns a rounded -0.0 into 0.0, which is how it comes back.
    return Point(round(point.x, DECIMALS) + 0.0, round(point.y, DECIMALS) + 0.0)


# Measuring shapes


def flatten(shape: Shape, tolerance: float = TOLERANCE) -> tuple[tuple[Point, ...], ...]:
    """The outlines as corners only, no more than ``tolerance`` millimetres from the curves.

    The last corner of an outline isn't the first one again.
    """
    outlines = []
    for contour in shape.contours:
        points = flatten_edges(contour.start, contour.edges, tolerance)
        if len(points) > 1 and points[-1] == points[0]:
            points.pop()
        outlines.append(tuple(points))
    return tuple(outlines)


def flatten_edges(
    start: Point, edges: Iterable[Line | Curve], tolerance: float = TOLERANCE
) -> list[Point]:
    """The corners of a line of edges, the start first."""
    points = [start]
    for edge in edges:
        if isinstance(edge, Line):
            points.append(edge.to)
        else:
            points.extend(_flatten_curve(points[-1], edge, tolerance))
    return points


def _flatten_curve(start: Point, curve: Curve, tolerance: float) -> Iterator[Point]:
    # A chord over 1/n of the curve is off by at most |second derivative| / (8 n^2), and the
    # second derivative of a cubic is at most 6 times the larger second difference of its points.
    a, b, c, d = start, curve.handle1, curve.handle2, curve.to
    bend = max(
        math.hypot(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y),
        math.hypot(b.x - 2 * c.x + d.x, b.y - 2 * c.y + d.y),
    )
    count = max(1, math.ceil(math.sqrt(0.75 * bend / tolerance)))
    for i in range(1, count):
        yield on_curve(start, curve, i / count)
    yield d


def on_curve(start: Point, curve: Curve, t: float) -> Point:
    """The spot at ``t`` (0 to 1) of the curve that begins at ``start``."""
    a, b, c, d = start, curve.handle1, curve.handle2, curve.to
    s = 1 - t
    wa, wb, wc, wd = s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t
    return Point(
        wa * a.x + wb * b.x + wc * c.x + wd * d.x, wa * a.y + wb * b.y + wc * c.y + wd * d.y
    )


def bounds(shape: Shape) -> Bounds:
    """The smallest upright box round the true curves of a shape.

    Raises:
        JournalError: the shape has no outline.
    """
    xs: list[float] = []
    ys: list[float] = []
    for contour in shape.contours:
        here = contour.start
        xs.append(here.x)
        ys.append(here.y)
        for edge in contour.edges:
            if isinstance(edge, Curve):
                xs.extend(_turns(here.x, edge.handle1.x, edge.handle2.x, edge.to.x))
                ys.extend(_turns(here.y, edge.handle1.y, edge.handle2.y, edge.to.y))
            here = edge.to
            xs.append(here.x)
            ys.append(here.y)
    if not xs:
        raise JournalError("The shape is empty: it has no outline to measure.")
    return Bounds(min(xs), min(ys), max(xs), max(ys))


def _turns(a: float, b: float, c: float, d: float) -> list[float]:
    """The values of a cubic in one coordinate where it turns back."""
    # The derivative is 3 (p t^2 + q t + r).
    p, q, r = d - a + 3 * (b - c), 2 * (a - 2 * b + c), b - a
    if abs(p) < 1e-12:
        roots = [-r / q] if abs(q) > 1e-12 else []
    else:
        under = q * q - 4 * p * r
        roots = [(-q + sign * math.sqrt(under)) / (2 * p) for sign in (1, -1)] if under >= 0 else []
    at = [t for t in roots if 0 < t < 1]
    return [
        (1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t * t * c + t**3 * d for t in at
    ]


# The written form


def to_path_data(shape: Shape) -> str:
    """The shape as SVG path data, rounded to ``DECIMALS``."""
    return " ".join(f"{_written(contour)} Z" for contour in shape.contours)


def stroke_to_path_data(stroke: Stroke) -> str:
    """The open line as SVG path data, rounded to ``DECIMALS``."""
    return _written(stroke)


def _written(line: Contour | Stroke) -> str:
    words = [f"M{_pair(line.start)}"]
    for edge in line.edges:
        if isinstance(edge, Line):
            words.append(f"L{_pair(edge.to)}")
        else:
            words.append(f"C{_pair(edge.handle1)} {_pair(edge.handle2)} {_pair(edge.to)}")
    return " ".join(words)


def _pair(point: Point) -> str:
    return f"{_number(point.x)},{_number(point.y)}"


def _number(value: float) -> str:
    text = f"{value:.{DECIMALS}f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def from_path_data(text: str) -> Shape:
    """The shape that SVG path data of absolute M, L, C and Z describes.

    An outline left open is closed by a straight edge, as filling it would.

    Raises:
        JournalError: the text is malformed, or holds a command other than these.
    """
    contours: list[Contour] = []
    start: Point | None = None
    edges: list[Line | Curve] = []
    for command, numbers in read_commands(text):
        points = [Point(x, y) for x, y in numbers]
        if command in "MZ":
            if start is not None:
                contours.append(_closed(start, edges))
            start, edges = (points[0] if points else None), []
        elif start is None:
            raise JournalError(f"The path data draws with {command} before any M.")
        elif command == "L":
            edges.append(Line(points[0]))
        else:
            edges.append(Curve(points[0], points[1], points[2]))
    if start is not None:
        contours.append(_closed(start, edges))
    if not contours:
        raise JournalError("The path data holds no outline.")
    return Shape(tuple(contours))


def stroke_from_path_data(text: str) -> Stroke:
    """The open line that SVG path data of one M and any L and C describes.

    Raises:
        JournalError: the text is malformed, or is no single open line.
    """
    contours = from_path_data(text).contours
    if len(contours) != 1 or "Z" in text:
        raise JournalError("The path data is no single open line.")
    return Stroke(contours[0].start, contours[0].edges)


def _closed(start: Point, edges: list[Line | Curve]) -> Contour:
    if not edges:
        raise JournalError("The path data holds an outline without an edge.")
    return Contour(start, tuple(edges))
