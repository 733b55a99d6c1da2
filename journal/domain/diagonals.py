"""The two diagonals of an opening, side by side: whether it kept its shape.

An opening whose sides didn't change is as square as it was when the difference between its two
diagonals is what it was before the first cut.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import combinations

from journal.domain.readings import Compared, Measure, MeasureKind, Reading, compare
from journal.domain.shapes import Point


@dataclass(frozen=True, slots=True)
class DiagonalPair:
    """The two diagonals of one opening, with their latest readings before and after."""

    first: Measure
    second: Measure
    first_readings: Compared
    second_readings: Compared

    @property
    def before(self) -> Decimal | None:
        """The first diagonal less the second, before cutting."""
        return _less(self.first_readings.before, self.second_readings.before)

    @property
    def after(self) -> Decimal | None:
        """The first diagonal less the second, after welding."""
        return _less(self.first_readings.after, self.second_readings.after)

    @property
    def change(self) -> Decimal | None:
        """By how much the difference between the diagonals changed."""
        if self.before is None or self.after is None:
            return None
        return self.after - self.before


def _less(one: Reading | None, other: Reading | None) -> Decimal | None:
    return None if one is None or other is None else one.value - other.value


def compare_diagonals(first: Measure, second: Measure, readings: Iterable[Reading]) -> DiagonalPair:
    """Two diagonals of one opening, their latest readings before against after."""
    taken = tuple(readings)
    return DiagonalPair(first, second, compare(first, taken)[0], compare(second, taken)[0])


def pair_diagonals(measures: Iterable[Measure]) -> tuple[tuple[Measure, Measure], ...]:
    """The diagonals that belong together: two that cross on one view, in one unit.

    Where one crosses several, it goes with the one whose middle is nearest to its own.
    """
    found = [m for m in measures if m.kind is MeasureKind.DIAGONAL and len(m.points) == 2]
    crossing = [
        (one, other)
        for one, other in combinations(found, 2)
        if one.view_id == other.view_id
        and one.unit == other.unit
        and _cross(one.points, other.points)
    ]
    crossing.sort(key=lambda pair: _apart(pair[0].points, pair[1].points))
    pairs: list[tuple[Measure, Measure]] = []
    taken: set[int] = set()
    for one, other in crossing:
        if taken.isdisjoint((one.id, other.id)):
            taken.update((one.id, other.id))
            pairs.append((one, other))
    place = {measure.id: rank for rank, measure in enumerate(found)}
    return tuple(sorted(pairs, key=lambda pair: place[pair[0].id]))


def _apart(one: Sequence[Point], other: Sequence[Point]) -> float:
    """The square of twice the distance between the middles of two lines."""
    dx = one[0].x + one[1].x - other[0].x - other[1].x
    dy = one[0].y + one[1].y - other[0].y - other[1].y
    return dx * dx + dy * dy


def _cross(one: Sequence[Point], other: Sequence[Point]) -> bool:
    return _parted(one, other) and _parted(other, one)


def _parted(line: Sequence[Point], ends: Sequence[Point]) -> bool:
    """Whether two ends lie on different sides of the line through two points."""
    (ax, ay), (bx, by) = line
    sides = [(bx - ax) * (y - ay) - (by - ay) * (x - ax) for x, y in ends]
    return sides[0] * sides[1] < 0
