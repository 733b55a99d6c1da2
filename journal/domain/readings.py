"""Readings: numbers taken with an instrument at a place that was defined once.

Nothing here passes or fails a car: a reading can lie outside what its owner set, and no more.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from typing import Literal

from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, MeasureId, PanelId, ReadingId, ViewId
from journal.domain.shapes import Point
from journal.domain.when import When

#: What readings are in: millimetres, or micrometres for films.
Unit = Literal["mm", "µm"]
UNITS: tuple[Unit, ...] = ("mm", "µm")

#: The largest number taken for meant, in millimetres: longer than any car.
_LONGEST_MM = Decimal(20_000)

#: What is said of a reading further from its target than the owner's tolerance.
OUTSIDE = "outside what you set"


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


@dataclass(frozen=True, slots=True)
class Compared:
    """The latest reading before and after at one point of a measure.

    ``difference`` is after less before, in the measure's unit; None where one of them is missing.
    """

    point: int
    before: Reading | None
    after: Reading | None

    @property
    def difference(self) -> Decimal | None:
        """After less before."""
        if self.before is None or self.after is None:
            return None
        return self.after.value - self.before.value


# What is refused


def check_measure(measure: Measure) -> None:
    """Refuse a measure without a name or points, or whose target can't be.

    Raises:
        JournalError: naming what is wrong.
    """
    name = measure.name.strip()
    if not name:
        raise JournalError("A measure needs a name: say what is measured.")
    if measure.unit not in UNITS:
        raise JournalError(f"{name} can be read in mm or µm, not in “{measure.unit}”.")
    if not measure.points:
        raise JournalError(f"{name} needs a point on the drawing.")
    if not all(math.isfinite(number) for point in measure.points for number in point):
        raise JournalError(f"{name} has a point that is no place on the drawing.")
    if measure.kind is MeasureKind.DIAGONAL:
        _check_diagonal(name, measure.points)
    _check_target(name, measure)


def _check_diagonal(name: str, points: tuple[Point, ...]) -> None:
    if len(points) != 2:
        raise JournalError(f"{name} is a diagonal: it needs two points, not {len(points)}.")
    if points[0] == points[1]:
        raise JournalError(f"{name} is a diagonal: its two points can't be one and the same.")


def _check_target(name: str, measure: Measure) -> None:
    target, tolerance = measure.target, measure.tolerance
    if target is not None:
        _check_number(f"The target of {name}", measure, target)
    if tolerance is None:
        return
    if target is None:
        raise JournalError(f"{name} has a tolerance but no target to be measured from.")
    if not tolerance.is_finite() or tolerance < 0:
        raise JournalError(f"The tolerance of {name} must be a number, nothing or more.")


def _check_number(named: str, measure: Measure, value: Decimal) -> None:
    most = _LONGEST_MM * (1000 if measure.unit == "µm" else 1)
    if not value.is_finite():
        raise JournalError(f"{named} must be a number.")
    if value < 0 and measure.kind is not MeasureKind.HEIGHT:
        raise JournalError(f"{named} can't be less than nothing.")
    if abs(value) > most:
        raise JournalError(f"{named} is {value:f} {measure.unit}, which is longer than any car.")


def check_reading(measure: Measure, reading: Reading) -> None:
    """Refuse a reading of another measure, at a point it doesn't have, or of no sensible number.

    Raises:
        JournalError: naming what is wrong.
    """
    if reading.measure_id != measure.id:
        raise JournalError(f"The reading belongs to another measure than {measure.name}.")
    if not 0 <= reading.point < measure.places:
        raise JournalError(
            f"{measure.name} is read at {measure.places} "
            f"{'place' if measure.places == 1 else 'places'};"
            f" it has no place number {reading.point + 1}."
        )
    _check_number(f"A reading of {measure.name}", measure, reading.value)


# What readings tell


def series(
    measure: Measure, readings: Iterable[Reading], point: int | None = None
) -> tuple[Reading, ...]:
    """The readings of a measure in order of date, all or those of one point.

    Of readings of one date the moment decides, then the order they were recorded in.
    """
    own = [r for r in readings if r.measure_id == measure.id and point in (None, r.point)]
    return tuple(sorted(own, key=_order))


def _order(reading: Reading) -> tuple[When, int, int]:
    return reading.when, list(Moment).index(reading.moment), reading.id


def latest(
    measure: Measure, readings: Iterable[Reading], point: int = 0, moment: Moment | None = None
) -> Reading | None:
    """The latest reading at a point, of any moment or of one; None where there is none."""
    own = [r for r in series(measure, readings, point) if moment in (None, r.moment)]
    return own[-1] if own else None


def compare(measure: Measure, readings: Iterable[Reading]) -> tuple[Compared, ...]:
    """The latest reading before against the latest after, at each place of a measure."""
    own = series(measure, readings)
    return tuple(
        Compared(
            place,
            latest(measure, own, place, Moment.BEFORE),
            latest(measure, own, place, Moment.AFTER),
        )
        for place in range(measure.places)
    )


def off_target(measure: Measure, value: Decimal) -> Decimal | None:
    """How much more than the target a number is, in the measure's unit; None without a target."""
    return None if measure.target is None else value - measure.target


def is_outside(measure: Measure, value: Decimal) -> bool:
    """Whether a number is further from the owner's target than the owner's tolerance."""
    off = off_target(measure, value)
    return off is not None and measure.tolerance is not None and abs(off) > measure.tolerance


def remark(measure: Measure, value: Decimal) -> str:
    """What is said beside a number: that it is outside what the owner set, or ""."""
    return OUTSIDE if is_outside(measure, value) else ""


def spread(values: Iterable[Decimal]) -> Decimal | None:
    """The largest less the smallest of the numbers along a row; None where there are none."""
    numbers = tuple(values)
    return max(numbers) - min(numbers) if numbers else None


def as_micrometres(measure: Measure, value: Decimal) -> Decimal:
    """A number of a measure in micrometres."""
    return value if measure.unit == "µm" else value * 1000
