"""Readings: numbers taken with an instrument at a place that was defined once.

Nothing here passes or fails a car: a reading can lie outside what its owner set, and no more.
"""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from typing import Literal

from journal.domain.ids import AreaId, MeasureId, PanelId, ReadingId, ViewId
from journal.domain.shapes import Point
from journal.domain.when import When

#: What readings are in: millimetres, or micrometres for films.
Unit = Literal["mm", "µm"]
UNITS: tuple[Unit, ...] = ("mm", "µm")


class MeasureKind(StrEnum):
    """What is measured."""

    GAP = "gap"
    DIAGONAL = "diagonal"
    HEIGHT = "height"
    FILM = "film thickness"
    SHEET = "sheet thickness"

    @property
    def unit(self) -> Unit:
        """The unit it is read in unless the owner says otherwise."""
        return "µm" if self is MeasureKind.FILM else "mm"


class Moment(StrEnum):
    """When in the work a reading was taken."""

    BEFORE = "before"
    DURING = "during"
    AFTER = "after"


@dataclass(frozen=True, slots=True)
class Measure:
    """A place to be measured: one point, two points or a row of points on a view.

    ``target`` and ``tolerance`` are the owner's own, in ``unit``; None where none was set.
    """

    id: MeasureId
    name: str
    kind: MeasureKind
    view_id: ViewId
    points: tuple[Point, ...]
    unit: Unit
    target: Decimal | None = None
    tolerance: Decimal | None = None
    area_id: AreaId | None = None
    panel_id: PanelId | None = None

    @property
    def is_distance(self) -> bool:
        """Whether it is one distance between two points, rather than a number at each point."""
        pointwise = self.kind in (MeasureKind.FILM, MeasureKind.SHEET)
        return len(self.points) == 2 and not pointwise

    @property
    def places(self) -> int:
        """How many numbers one round of readings has."""
        return 1 if self.is_distance else len(self.points)


@dataclass(frozen=True, slots=True)
class Reading:
    """One number read at a measure, in the measure's unit.

    ``point`` counts from 0 along the measure's points; it is 0 for a distance between two points.
    """

    id: ReadingId
    measure_id: MeasureId
    point: int
    value: Decimal
    when: When
    moment: Moment
    instrument: str = ""
    note: str = ""
