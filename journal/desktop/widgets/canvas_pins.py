"""Pins on the drawing: dots that gather into counts where they would lie on each other.

Near enough, a count whose dots have room beside its neighbours spreads: one dot a photo.
"""

import math
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPen, QTransform

from journal.desktop.theme import Colours
from journal.domain.ids import PanelId, PhotoId

#: Dots nearer than this to each other become one with a count, in pixels.
REACH = 24.0

_DOT = 6.0
#: So many photos of one place spread at most; more stay a count.
_SPREAD_MOST = 40
#: Spread dots lie on a spiral of golden angles, which keeps them this far apart (times about 1.7).
_PACE = 9.5
_GOLDEN = math.pi * (3 - math.sqrt(5))

_Placed = tuple[float, float, "Spot"]


@dataclass(frozen=True, slots=True)
class Spot:
    """The place of one or more photos on the view shown, in millimetres.

    ``facing`` as in a Pin, of a single photo. ``panel_id`` is the panel they are pinned to.
    """

    photo_ids: tuple[PhotoId, ...]
    x: float
    y: float
    facing: float | None = None
    panel_id: PanelId | None = None


@dataclass(frozen=True, slots=True)
class Dot:
    """One mark on the screen, in pixels, and the photos it stands for."""

    at: QPointF
    photo_ids: tuple[PhotoId, ...]
    facing: float | None
    spots: tuple[Spot, ...] = ()

    def is_on(self, panel_id: PanelId | None) -> bool:
        """Whether a photo of it is pinned to a panel."""
        return panel_id is not None and any(spot.panel_id == panel_id for spot in self.spots)

    def pins(self) -> tuple[tuple[PhotoId, PanelId], ...]:
        """Each photo of it with the panel it is pinned to."""
        return tuple(
            (photo_id, spot.panel_id)
            for spot in self.spots
            if spot.panel_id is not None
            for photo_id in spot.photo_ids
        )

    @property
    def radius(self) -> float:
        """How large it is drawn: a little more for every ten times as many photos."""
        count = len(self.photo_ids)
        return _DOT if count == 1 else 9.0 + 2.5 * math.log10(count)


def gather(
    spots: Iterable[Spot], to_screen: QTransform, *, spread: bool = False
) -> tuple[Dot, ...]:
    """The dots for these spots at this scale; ``spread`` parts counts where there is room."""
    groups = _groups(spots, to_screen)
    middles = [_middle(group) for group in groups]
    dots = [_dot(group, at) for group, at in zip(groups, middles, strict=True)]
    if not spread:
        return tuple(dots)
    reaches = [_spread_reach(dot) for dot in dots]
    return tuple(
        one
        for number, dot in enumerate(dots)
        for one in (_spread(dot) if _has_room(number, middles, reaches) else (dot,))
    )


def _groups(spots: Iterable[Spot], to_screen: QTransform) -> list[list[_Placed]]:
    """Spots that would lie on each other, together."""
    buckets: dict[tuple[int, int], list[_Placed]] = defaultdict(list)
    scale_x, scale_y = to_screen.m11(), to_screen.m22()
    shift_x, shift_y = to_screen.dx(), to_screen.dy()
    for spot in spots:
        x, y = spot.x * scale_x + shift_x, spot.y * scale_y + shift_y
        buckets[int(x // REACH), int(y // REACH)].append((x, y, spot))
    groups: list[list[_Placed]] = []
    found: dict[tuple[int, int], list[tuple[float, float, int]]] = defaultdict(list)
    for bucket in sorted(buckets.values(), key=len, reverse=True):
        x, y = _middle(bucket)
        cell = int(x // REACH), int(y // REACH)
        near = _near(x, y, cell, found)
        if near is None:
            found[cell].append((x, y, len(groups)))
            groups.append(list(bucket))
        else:
            groups[near].extend(bucket)
    return groups


def _near(
    x: float,
    y: float,
    cell: tuple[int, int],
    found: dict[tuple[int, int], list[tuple[float, float, int]]],
) -> int | None:
    """The group whose middle is within reach; only the cells around can hold one."""
    for across in (cell[0] - 1, cell[0], cell[0] + 1):
        for down in (cell[1] - 1, cell[1], cell[1] + 1):
            for other_x, other_y, number in found.get((across, down), ()):
                if math.hypot(x - other_x, y - other_y) < REACH:
                    return number
    return None


def _dot(group: list[_Placed], at: tuple[float, float]) -> Dot:
    spots = tuple(spot for _, _, spot in group)
    ids = tuple(photo_id for spot in spots for photo_id in spot.photo_ids)
    return Dot(QPointF(*at), ids, spots[0].facing if len(group) == 1 else None, spots)


def _spread_reach(dot: Dot) -> float:
    """How far a dot reaches once it is spread, or as it is where there are too many photos."""
    count = len(dot.photo_ids)
    return _PACE * math.sqrt(count) + _DOT if 1 < count <= _SPREAD_MOST else dot.radius


def _has_room(
    number: int, middles: Sequence[tuple[float, float]], reaches: Sequence[float]
) -> bool:
    x, y = middles[number]
    return all(
        math.hypot(x - other_x, y - other_y) > reaches[number] + reach
        for other, ((other_x, other_y), reach) in enumerate(zip(middles, reaches, strict=True))
        if other != number
    )


def _spread(dot: Dot) -> tuple[Dot, ...]:
    """One dot for each photo, round the middle."""
    if not 1 < len(dot.photo_ids) <= _SPREAD_MOST:
        return (dot,)
    single = [
        replace(spot, photo_ids=(photo_id,)) for spot in dot.spots for photo_id in spot.photo_ids
    ]
    made = []
    for place, spot in enumerate(single):
        away, angle = _PACE * math.sqrt(place + 0.5), place * _GOLDEN
        at = dot.at + QPointF(away * math.cos(angle), away * math.sin(angle))
        made.append(Dot(at, spot.photo_ids, spot.facing, (spot,)))
    return tuple(made)


def paint_dots(
    painter: QPainter,
    dots: Iterable[Dot],
    colours: Colours,
    font: QFont,
    loud: PanelId | None = None,
) -> None:
    """Paint dots in pixels; a single one whose facing is known has a wedge that way.

    Those of the panel ``loud`` lie over the others and have a ring.
    """
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    bold = QFont(font)
    bold.setBold(True)
    bold.setPixelSize(11)
    painter.setFont(bold)
    ground, ink = QColor(colours.pin), QColor(colours.surface)
    for dot in sorted(dots, key=lambda dot: dot.is_on(loud)) if loud is not None else dots:
        if dot.is_on(loud):
            _paint_halo(painter, dot, colours)
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


def _paint_halo(painter: QPainter, dot: Dot, colours: Colours) -> None:
    painter.setBrush(QColor(colours.surface))
    painter.setPen(QPen(QColor(colours.text), 2))
    painter.drawEllipse(dot.at, dot.radius + 4, dot.radius + 4)


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


def _middle(group: list[_Placed]) -> tuple[float, float]:
    count = sum(len(spot.photo_ids) for _, _, spot in group)
    return (
        sum(x * len(spot.photo_ids) for x, _, spot in group) / count,
        sum(y * len(spot.photo_ids) for _, y, spot in group) / count,
    )
