"""What a welded metre of seam cost."""

from dataclasses import dataclass
from fractions import Fraction

from journal.domain.ids import AreaId
from journal.domain.sharing import nearest


@dataclass(frozen=True, slots=True)
class MetreCost:
    """What the welding of one repair area, or of all with a welded seam, came to.

    ``money`` is all that was spent on the area, in minor units, not the welding alone: sheet, gas,
    paint and whatever else was shared to it. ``minutes`` likewise. ``area_id`` is None for all.
    """

    area_id: AreaId | None
    label: str
    welded_mm: int
    money: int
    minutes: int

    @property
    def per_metre(self) -> int | None:
        """Minor units for a welded metre; None where nothing is welded."""
        return _per_metre(self.money, self.welded_mm)

    @property
    def minutes_per_metre(self) -> int | None:
        """Minutes for a welded metre; None where nothing is welded."""
        return _per_metre(self.minutes, self.welded_mm)


@dataclass(frozen=True, slots=True)
class MetreCosts:
    """By repair area, and for all areas that have a welded seam; those without one are left out.

    ``elsewhere`` is the money that the figures don't rest on: that of areas without a welded seam
    and what belongs to no area.
    """

    currency: str
    rows: tuple[MetreCost, ...]
    total: MetreCost
    elsewhere: int


def _per_metre(amount: int, welded_mm: int) -> int | None:
    return nearest(Fraction(1000 * amount, welded_mm)) if welded_mm > 0 else None
