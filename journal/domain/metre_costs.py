"""What a welded metre of seam cost."""

from dataclasses import dataclass

from journal.domain.ids import AreaId


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
    """Half a unit is rounded away from zero."""
    if welded_mm <= 0:
        return None
    units = (abs(amount) * 2000 + welded_mm) // (2 * welded_mm)
    return -units if amount < 0 else units
