"""Pins on the drawing: dots that gather into counts where they would lie on each other.

Near enough, a count whose dots have room beside its neighbours spreads: one dot a photo.
"""

import math
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from PySide6.QtCore import QPointF
from PySide6.QtGui import QTransform

from journal.domain.ids import PanelId, PhotoId

#: Dots nearer than this to each other become one with a count, in pixels.
REACH = 24.0

_DOT = 6.0
#: So many photos of one place spread at most; more stay a count.
_SPREAD_MOST = 40
#: Spread dots lie on a spiral of golden angles, which keeps them this far apart (times about 1.7).
_PACE = 12.5
_GOLDEN = math.pi * (3 - math.sqrt(5))

#: Cells of the screen are numbered column by column; so many rows fit no screen.
_ROW = 1 << 20
_AROUND = tuple(x * _ROW + y for x in (0, -1, 1) for y in (0, -1, 1))

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


class Gathered:
    """Dots gathered once for a scale: pulling the sheet about moves them and parts none."""

    def __init__(self) -> None:
        self._spots: Sequence[Spot] = ()
        self._scale: tuple[float, float, bool] | None = None
        self._made: tuple[Dot, ...] = ()

    def dots(
        self, spots: Sequence[Spot], to_screen: QTransform, *, spread: bool = False
    ) -> tuple[Dot, ...]:
        """The dots for these spots, gathered anew only for other spots or another scale."""
        scale = to_screen.m11(), to_screen.m22(), spread
        if spots is not self._spots or scale != self._scale:
            self._spots, self._scale = spots, scale
            plain = QTransform.fromScale(scale[0], scale[1])
            self._made = gather(spots, plain, spread=spread)
        shift = QPointF(to_screen.dx(), to_screen.dy())
        return tuple(Dot(d.at + shift, d.photo_ids, d.facing, d.spots) for d in self._made)


def gather(
    spots: Iterable[Spot], to_screen: QTransform, *, spread: bool = False
) -> tuple[Dot, ...]:
    """The dots for these spots at this scale; ``spread`` parts counts where there is room."""
    groups = _groups(spots, to_screen)
    middles = [_middle(group) for group in groups]
    dots = [_dot(group, at) for group, at in zip(groups, middles, strict=True)]
    if not spread:
        return tuple(dots)
    room = _Room(dots)
    return tuple(one for dot in dots for one in (_spread(dot) if room.is_round(dot) else (dot,)))


class _Room:
    """Knows how far every dot reaches, and whether one can spread without touching another."""

    _CELL = 50.0

    def __init__(self, dots: Sequence[Dot]) -> None:
        self._cells: dict[tuple[int, int], list[tuple[float, float, float]]] = defaultdict(list)
        self._furthest = 0.0
        for dot in dots:
            x, y, reach = dot.at.x(), dot.at.y(), _spread_reach(dot)
            self._cells[int(x // self._CELL), int(y // self._CELL)].append((x, y, reach))
            self._furthest = max(self._furthest, reach)

    def is_round(self, dot: Dot) -> bool:
        """Whether there is room round a dot that could spread."""
        if not 1 < len(dot.photo_ids) <= _SPREAD_MOST:
            return False
        x, y, own = dot.at.x(), dot.at.y(), _spread_reach(dot)
        far, found = own + self._furthest, 0
        for across in range(int((x - far) // self._CELL), int((x + far) // self._CELL) + 1):
            for down in range(int((y - far) // self._CELL), int((y + far) // self._CELL) + 1):
                for other_x, other_y, reach in self._cells.get((across, down), ()):
                    if (x - other_x) ** 2 + (y - other_y) ** 2 <= (own + reach) ** 2:
                        # The first is the dot itself.
                        found += 1
                        if found > 1:
                            return False
        return True


def _groups(spots: Iterable[Spot], to_screen: QTransform) -> list[list[_Placed]]:
    """Spots that would lie on each other, together."""
    buckets: dict[int, list[_Placed]] = defaultdict(list)
    scale_x, scale_y = to_screen.m11(), to_screen.m22()
    shift_x, shift_y = to_screen.dx(), to_screen.dy()
    for spot in spots:
        x, y = spot.x * scale_x + shift_x, spot.y * scale_y + shift_y
        buckets[int(x // REACH) * _ROW + int(y // REACH)].append((x, y, spot))
    groups: list[list[_Placed]] = []
    found: dict[int, list[tuple[float, float, int]]] = {}
    for bucket in sorted(buckets.values(), key=len, reverse=True):
        x, y = _middle(bucket)
        cell = int(x // REACH) * _ROW + int(y // REACH)
        near = _near(x, y, cell, found)
        if near is None:
            found.setdefault(cell, []).append((x, y, len(groups)))
            groups.append(bucket)
        else:
            groups[near].extend(bucket)
    return groups


def _near(
    x: float, y: float, cell: int, found: dict[int, list[tuple[float, float, int]]]
) -> int | None:
    """The group whose middle is within reach; only the cells around can hold one."""
    for step in _AROUND:
        if cell + step in found:
            for other_x, other_y, number in found[cell + step]:
                if (x - other_x) ** 2 + (y - other_y) ** 2 < REACH * REACH:
                    return number
    return None


def _dot(group: list[_Placed], at: tuple[float, float]) -> Dot:
    if len(group) == 1:
        spot = group[0][2]
        return Dot(QPointF(*at), spot.photo_ids, spot.facing, (spot,))
    spots = tuple(spot for _, _, spot in group)
    ids = tuple(photo_id for spot in spots for photo_id in spot.photo_ids)
    return Dot(QPointF(*at), ids, None, spots)


def _spread_reach(dot: Dot) -> float:
    """How far a dot reaches once it is spread, or as it is where there are too many photos."""
    count = len(dot.photo_ids)
    return _PACE * math.sqrt(count) + _DOT if 1 < count <= _SPREAD_MOST else dot.radius


def _spread(dot: Dot) -> tuple[Dot, ...]:
    """One dot for each photo, round the middle."""
    single = [
        replace(spot, photo_ids=(photo_id,)) for spot in dot.spots for photo_id in spot.photo_ids
    ]
    made = []
    for place, spot in enumerate(single):
        away, angle = _PACE * math.sqrt(place + 0.5), place * _GOLDEN
        at = dot.at + QPointF(away * math.cos(angle), away * math.sin(angle))
        made.append(Dot(at, spot.photo_ids, spot.facing, (spot,)))
    return tuple(made)


def _middle(group: list[_Placed]) -> tuple[float, float]:
    if len(group) == 1:
        return group[0][0], group[0][1]
    count = sum(len(spot.photo_ids) for _, _, spot in group)
    return (
        sum(x * len(spot.photo_ids) for x, _, spot in group) / count,
        sum(y * len(spot.photo_ids) for _, y, spot in group) / count,
    )
