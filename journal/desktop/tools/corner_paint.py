"""How corners, handles and their measures show over the drawing."""

import math

from PySide6.QtCore import QPointF
from PySide6.QtGui import QFont, QPainter, QTransform

from journal.desktop.theme import Colours
from journal.desktop.tools.overlay import (
    on_screen,
    paint_corner,
    paint_handle,
    paint_length,
    paint_line,
    paint_snap,
    paint_words,
    segment_points,
)
from journal.domain.shapes import Point, Shape
from journal.domain.shaping.corners import Node, Part
from journal.domain.shaping.segments import Segment, ring
from journal.domain.shaping.snapping import Snap


def paint_nodes(
    painter: QPainter, shape: Shape, chosen: Node | None, to_screen: QTransform, colours: Colours
) -> None:
    """Paint every corner and handle of a shape; the edge that the chosen one is of stands out."""
    for number, contour in enumerate(shape.contours):
        pieces = ring(contour)
        for edge, segment in enumerate(pieces):
            if chosen is not None and (chosen.contour, chosen.edge) == (number, edge):
                paint_line(painter, segment_points(segment, to_screen), colours, width=4)
            if len(segment) == 4:
                ends = ((Part.HANDLE1, 1, 0), (Part.HANDLE2, 2, 3))
                for part, at, corner in ends:
                    paint_handle(
                        painter,
                        on_screen(segment[at], to_screen),
                        on_screen(segment[corner], to_screen),
                        colours,
                        chosen=chosen == Node(number, edge, part),
                    )
        for edge, segment in enumerate(pieces):
            is_chosen = chosen == Node(number, edge, Part.TO)
            paint_corner(painter, on_screen(segment[-1], to_screen), colours, chosen=is_chosen)


def paint_sizes(
    painter: QPainter,
    around: tuple[Segment | None, Segment | None],
    snap: Snap | None,
    to_screen: QTransform,
    colours: Colours,
    font: QFont,
) -> None:
    """Paint the lengths of the edges at a corner, its angle, and what has caught it."""
    before, after = around
    for segment in around:
        if segment is not None:
            paint_length(painter, (segment[0], segment[-1]), to_screen, colours, font)
    if snap is None or before is None or after is None:
        return
    corner = on_screen(before[-1], to_screen)
    angle = _angle(before[0], before[-1], after[-1])
    words = f"{angle:.0f}\N{DEGREE SIGN}"
    paint_words(painter, corner + QPointF(-34, -26), words, colours, font)
    paint_snap(painter, snap, to_screen, colours, font)


def paint_bend(
    painter: QPainter, segment: Segment, through: Point, to_screen: QTransform, colours: Colours
) -> None:
    """Paint the curve that an edge would become, its middle at a spot."""
    start, end = segment[0], segment[-1]
    dx = (through.x - (start.x + end.x) / 2) * 4 / 3
    dy = (through.y - (start.y + end.y) / 2) * 4 / 3
    one = Point(start.x + (end.x - start.x) / 3 + dx, start.y + (end.y - start.y) / 3 + dy)
    two = Point(end.x + (start.x - end.x) / 3 + dx, end.y + (start.y - end.y) / 3 + dy)
    points = segment_points((start, one, two, end), to_screen)
    paint_line(painter, points, colours, dashed=True, width=3)


def _angle(before: Point, corner: Point, after: Point) -> float:
    """The angle at a corner in degrees, 0 to 180."""
    one = math.atan2(before.y - corner.y, before.x - corner.x)
    two = math.atan2(after.y - corner.y, after.x - corner.x)
    apart = math.degrees(abs(one - two)) % 360
    return min(apart, 360 - apart)
