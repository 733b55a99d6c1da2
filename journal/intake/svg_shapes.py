"""From the figures of SVG to shapes of lines and cubics, in the drawing's own measure."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from typing import Any

from journal.domain.shapes import Contour, Curve, Line, Point, Stroke

#: How far, in millimetres, the cubics may lie from the elliptical arcs they stand for.
ARC_TOLERANCE = 0.1

#: How far a quarter of a unit circle strays from the cubic that stands for it.
_QUARTER_ERROR = 2.73e-4

#: How near, in millimetres, the end of a figure must come to its start to close it.
_CLOSED = 0.01

_Edges = list[Line | Curve]
_Place = Callable[[Point], Point]


def outlines(element: Any, place: _Place, scale: float) -> tuple[list[Contour], list[Stroke]]:
    """The closed outlines of a figure and the lines of it that aren't closed.

    ``element`` is a figure of svgelements, ``place`` puts a spot of its picture into the drawing,
    where one unit of the picture is ``scale`` millimetres. Lines and cubics are exact, quadratics
    are raised to the cubics that are the same curve, arcs are true to ``ARC_TOLERANCE``.
    """
    import svgelements

    path = svgelements.Path(element)
    matrix = path.transform
    stretch = _stretch(matrix.a, matrix.b, matrix.c, matrix.d) * scale

    def put(point: Any) -> Point:
        return place(
            Point(
                matrix.a * point.x + matrix.c * point.y + matrix.e,
                matrix.b * point.x + matrix.d * point.y + matrix.f,
            )
        )

    closed, left = [], []
    for start, edges, is_closed in _runs(path, put, stretch):
        if is_closed or math.dist(start, edges[-1].to) <= _CLOSED:
            closed.append(_closing(start, edges))
        else:
            left.append(Stroke(start, tuple(edges)))
    return closed, left


def _stretch(a: float, b: float, c: float, d: float) -> float:
    """How much an affine map lengthens at most."""
    squares, area = a * a + b * b + c * c + d * d, a * d - b * c
    return math.sqrt((squares + math.sqrt(max(0.0, squares**2 - 4 * area**2))) / 2)


def _closing(start: Point, edges: _Edges) -> Contour:
    """The outline without a last edge too short to be seen."""
    last = edges[-1]
    if math.dist(last.to, start) <= _CLOSED:
        end: Line | Curve = (
            Line(start) if isinstance(last, Line) else Curve(last.handle1, last.handle2, start)
        )
        edges = [*edges[:-1], end]
    return Contour(start, tuple(edges))


def _runs(
    path: Any, put: Callable[[Any], Point], stretch: float
) -> Iterator[tuple[Point, _Edges, bool]]:
    """Each piece of a path that is drawn in one go: its start, its edges, whether it closes."""
    import svgelements

    start: Point | None = None
    begin: Any = None
    edges: _Edges = []
    for segment in path:
        if isinstance(segment, svgelements.Move):
            if start is not None and edges:
                yield start, edges, False
            begin, start, edges = segment.end, put(segment.end), []
        elif isinstance(segment, svgelements.Close):
            if start is not None and edges:
                yield start, edges, True
            # What is drawn on after closing begins where the closed piece began.
            edges = []
        else:
            if start is None:
                begin, start = segment.start, put(segment.start)
            edges.extend(_edges(segment, put, stretch))
    if start is not None and begin is not None and edges:
        yield start, edges, False


def _edges(segment: Any, put: Callable[[Any], Point], stretch: float) -> Iterator[Line | Curve]:
    import svgelements

    if isinstance(segment, svgelements.CubicBezier):
        yield Curve(put(segment.control1), put(segment.control2), put(segment.end))
    elif isinstance(segment, svgelements.QuadraticBezier):
        yield _raised(put(segment.start), put(segment.control), put(segment.end))
    elif isinstance(segment, svgelements.Arc):
        yield from _arc(segment, put, _pieces(segment, stretch))
    elif segment.start != segment.end:
        yield Line(put(segment.end))


def _raised(start: Point, control: Point, end: Point) -> Curve:
    """The quadratic as a cubic: its handles lie two thirds of the way to the control point."""
    one = Point(start.x + (control.x - start.x) * 2 / 3, start.y + (control.y - start.y) * 2 / 3)
    two = Point(end.x + (control.x - end.x) * 2 / 3, end.y + (control.y - end.y) * 2 / 3)
    return Curve(one, two, end)


def _arc(arc: Any, put: Callable[[Any], Point], count: int) -> Iterator[Curve]:
    """The arc as so many cubics, each true to it in ends, directions and middle."""
    step, begin = float(arc.sweep) / count, float(arc.get_start_t())
    lean = float(arc.get_rotation())
    cos, sin = math.cos(lean), math.sin(lean)
    # For a piece of a unit circle, the handles that put the cubic's middle on the circle.
    reach = 4 / 3 * math.tan(step / 4)

    def spot(angle: float, along: float) -> Point:
        """The spot at an angle, moved so far along the direction there."""
        x = arc.rx * (math.cos(angle) - along * math.sin(angle))
        y = arc.ry * (math.sin(angle) + along * math.cos(angle))
        return Point(arc.center.x + cos * x - sin * y, arc.center.y + sin * x + cos * y)

    for n in range(count):
        start, end = begin + n * step, begin + (n + 1) * step
        last = arc.end if n == count - 1 else spot(end, 0)
        yield Curve(put(spot(start, reach)), put(spot(end, -reach)), put(last))


def _pieces(arc: Any, stretch: float) -> int:
    """How many cubics an arc needs; the error falls with the sixth power of their number."""
    quarters = abs(float(arc.sweep)) / (math.pi / 2)
    error = _QUARTER_ERROR * float(max(abs(arc.rx), abs(arc.ry))) * stretch
    finer = max(1.0, (error / ARC_TOLERANCE) ** (1 / 6))
    return int(max(1, math.ceil(quarters * finer - 1e-6)))
