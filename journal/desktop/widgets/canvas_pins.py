"""Pins on the drawing: dots that gather into counts where they would lie on each other."""

import math
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPen, QTransform

from journal.desktop.theme import Colours
from journal.domain.ids import PhotoId

#: Dots nearer than this to each other become one with a count, in pixels.
REACH = 24.0

_DOT = 6.0


@dataclass(frozen=True, slots=True)
class Spot:
    """The place of one or more photos on the view shown, in millimetres.

    ``facing`` as in a Pin, of a single photo.
    """

    photo_ids: tuple[PhotoId, ...]
    x: float
    y: float
    facing: float | None = None


@dataclass(frozen=True, slots=True)
class Dot:
    """One mark on the screen, in pixels, and the photos it stands for."""

    at: QPointF
    photo_ids: tuple[PhotoId, ...]
    facing: float | None

    @property
    def radius(self) -> float:
        """How large it is drawn: a little more for every ten times as many photos."""
        count = len(self.photo_ids)
        return _DOT if count == 1 else 9.0 + 2.5 * math.log10(count)


def gather(spots: Iterable[Spot], to_screen: QTransform) -> tuple[Dot, ...]:
    """The dots for these spots at this scale."""
    buckets: dict[tuple[int, int], list[tuple[float, float, Spot]]] = defaultdict(list)
    scale_x, scale_y = to_screen.m11(), to_screen.m22()
    shift_x, shift_y = to_screen.dx(), to_screen.dy()
    for spot in spots:
        x, y = spot.x * scale_x + shift_x, spot.y * scale_y + shift_y
        buckets[int(x // REACH), int(y // REACH)].append((x, y, spot))
    groups: list[list[tuple[float, float, Spot]]] = []
    middles: list[tuple[float, float]] = []
    for bucket in sorted(buckets.values(), key=len, reverse=True):
        middle = _middle(bucket)
        near = _near(middle, middles)
        if near is None:
            groups.append(bucket)
            middles.append(middle)
        else:
            groups[near].extend(bucket)
    return tuple(
        Dot(QPointF(*at), tuple(i for _, _, s in group for i in s.photo_ids), _facing(group))
        for group, at in zip(groups, middles, strict=True)
    )


def paint_dots(painter: QPainter, dots: Iterable[Dot], colours: Colours, font: QFont) -> None:
    """Paint dots in pixels; a single one whose facing is known has a wedge that way."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    bold = QFont(font)
    bold.setBold(True)
    bold.setPixelSize(11)
    painter.setFont(bold)
    ground, ink = QColor(colours.pin), QColor(colours.surface)
    for dot in dots:
        painter.setPen(QPen(ink, 1.5))
        painter.setBrush(ground)
        if dot.facing is not None:
            _paint_wedge(painter, dot)
        painter.drawEllipse(dot.at, dot.radius, dot.radius)
        if len(dot.photo_ids) > 1:
            area = QRectF(0, 0, 60, 20)
            area.moveCenter(dot.at)
            painter.setPen(ink)
            painter.drawText(area, Qt.AlignmentFlag.AlignCenter, _count(len(dot.photo_ids)))


def _paint_wedge(painter: QPainter, dot: Dot) -> None:
    """A cone out of the dot, the way the camera looked."""
    painter.save()
    painter.translate(dot.at)
    painter.rotate(dot.facing or 0.0)
    cone = QColor(painter.brush().color())
    cone.setAlpha(150)
    painter.setBrush(cone)
    painter.drawPolygon([QPointF(0, 0), QPointF(-7, -18), QPointF(7, -18)])
    painter.restore()


def _count(number: int) -> str:
    return str(number) if number < 1000 else f"{number / 1000:.0f}k"


def _middle(group: list[tuple[float, float, Spot]]) -> tuple[float, float]:
    count = sum(len(spot.photo_ids) for _, _, spot in group)
    return (
        sum(x * len(spot.photo_ids) for x, _, spot in group) / count,
        sum(y * len(spot.photo_ids) for _, y, spot in group) / count,
    )


def _near(middle: tuple[float, float], others: list[tuple[float, float]]) -> int | None:
    for place, other in enumerate(others):
        if math.hypot(middle[0] - other[0], middle[1] - other[1]) < REACH:
            return place
    return None


def _facing(group: list[tuple[float, float, Spot]]) -> float | None:
    return group[0][2].facing if len(group) == 1 else None
