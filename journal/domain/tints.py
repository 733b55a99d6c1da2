"""Tints: what each panel is worth by a measure, in six levels whose bounds are stated."""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import StrEnum

from journal.domain.errors import JournalError
from journal.domain.ids import PanelId

#: The highest level; level 0 is nothing at all.
HIGHEST = 5


class TintBy(StrEnum):
    """What the drawing can be tinted by, besides the stages of its repair areas."""

    HOURS = "hours"
    MONEY = "money"
    PHOTOS = "photos"
    UNTOUCHED = "days since last touched"
    MISSING = "what is missing"


#: Bounds that don't follow the values: a week, a month, a quarter, a year; and few by few.
_FIXED: Mapping[TintBy, tuple[float, ...]] = {
    TintBy.UNTOUCHED: (7, 30, 91, 365),
    TintBy.MISSING: (1, 2, 3, 5),
}


@dataclass(frozen=True, slots=True)
class Scale:
    """The bounds of the levels: level n reaches from the bound before to ``bounds[n - 1]``.

    There are four bounds, rising; level 5 is everything above the last. Level 0 is nothing (0 or
    less), unless ``zero_is_least``, where 0 belongs to level 1 already. ``top`` is the largest
    value the scale was made for, in the same unit as the bounds.
    """

    bounds: tuple[float, ...]
    top: float
    zero_is_least: bool = False

    def level(self, value: float) -> int:
        """The level of a value, 0 to 5.

        Raises:
            JournalError: it is no number.
        """
        if math.isnan(value):
            raise JournalError("A panel can't be tinted by something that is no number.")
        if value <= 0 and not self.zero_is_least:
            return 0
        return 1 + sum(value > bound for bound in self.bounds)


@dataclass(frozen=True, slots=True)
class LegendRow:
    """One row of a tint's legend: the level, and which values it is for."""

    level: int
    text: str


def scale_for(values: Mapping[PanelId, float], by: TintBy, unit: float = 1.0) -> Scale:
    """The scale for the values of all panels.

    Days and missing things have bounds of their own. For the rest, the levels follow the series 1,
    2, 5, 10, 20, 50 … up to the largest value, so that each level is about twice the one before:
    few panels take most of the work. The first bound is never below 1, so that the darkest levels
    are only for what is much. ``unit`` is how many of the values make one of what the legend shows
    (60 for minutes shown as hours), so that its bounds are round numbers.

    Raises:
        JournalError: a value is no finite number, or the unit is none.
    """
    if not all(math.isfinite(value) for value in values.values()) or not unit > 0:
        raise JournalError("A panel can't be tinted by something that is no number.")
    top = max(values.values(), default=0)
    if by in _FIXED:
        return Scale(_FIXED[by], top, zero_is_least=by is TintBy.UNTOUCHED)
    return Scale(tuple(bound * unit for bound in _below(top / unit)), top)


def _below(top: float) -> tuple[float, ...]:
    """The four numbers of the series 1, 2, 5 … before the first to reach ``top``, from 1 on."""
    place = 4
    while _series(place) < top:
        place += 1
    return tuple(_series(place - back) for back in (4, 3, 2, 1))


def _series(place: int) -> float:
    power, step = divmod(place, 3)
    return float((1, 2, 5)[step] * 10**power)


def tint(
    values: Mapping[PanelId, float], by: TintBy, scale: Scale | None = None
) -> dict[PanelId, int]:
    """The level of every panel that has a value, 0 to 5; by its own scale unless one is given."""
    chosen = scale or scale_for(values, by)
    return {panel_id: chosen.level(value) for panel_id, value in values.items()}


def legend(scale: Scale, write: Callable[[float], str]) -> tuple[LegendRow, ...]:
    """The rows of a legend, level 0 first; ``write`` gives a value as people read it.

    Levels that no value reaches are left out at the upper end, level 0 where it has no meaning.
    """
    rows = [] if scale.zero_is_least else [LegendRow(0, "none")]
    rows.append(LegendRow(1, f"up to {write(scale.bounds[0])}"))
    for level in range(2, HIGHEST + 1):
        lower = scale.bounds[level - 2]
        if scale.top <= lower:
            break
        if level == HIGHEST:
            rows.append(LegendRow(level, f"more than {write(lower)}"))
        else:
            upper = scale.bounds[level - 1]
            rows.append(LegendRow(level, f"more than {write(lower)}, up to {write(upper)}"))
    return tuple(rows)
