"""What a survey estimated against what it came to, and what is still to come.

Money is in minor units of the journal's currency, time in minutes.
"""

from dataclasses import dataclass

from journal.domain.ids import AreaId

#: An owner's own ratio rests on so many finished repair areas, or isn't said.
LEAST_FINISHED = 3

#: The present pace is that of so many days, looked at in three parts.
PACE_DAYS = 90


@dataclass(frozen=True, slots=True)
class AreaOutcome:
    """One repair area: what the survey expected of it, and what it came to so far.

    ``expected`` and ``expected_minutes`` are means by the three-point formula.
    """

    area_id: AreaId
    name: str
    expected: float
    expected_minutes: float
    money: int
    minutes: int
    finished: bool


@dataclass(frozen=True, slots=True)
class OwnRatio:
    """What finished areas came to for each one of what was expected, and how many they are."""

    ratio: float
    count: int


@dataclass(frozen=True, slots=True)
class Pace:
    """Hours lately, in minutes a week: the slowest and the fastest of the last three months.

    Weeks left are by the fastest and by the slowest; the latter None where nothing was done in it.
    """

    slowest: float
    fastest: float
    weeks_least: float
    weeks_most: float | None


@dataclass(frozen=True, slots=True)
class Outcome:
    """A survey against the books.

    Attributes:
        areas: the repair areas that findings belong to, in the order of the findings.
        ratio: money over finished areas, None with fewer than ``LEAST_FINISHED``.
        ratio_minutes: time over finished areas, likewise.
        to_come: money the unfinished areas still need by the owner's own ratio; None without it.
        to_come_minutes: the same for time.
        loose: how many findings belong to no repair area, so that nothing can be held against them.
        loose_money: what the survey expected of those.
        loose_minutes: the same for time.
        pace: hours lately; None without recent hours or without a ratio of hours.
    """

    areas: tuple[AreaOutcome, ...]
    ratio: OwnRatio | None
    ratio_minutes: OwnRatio | None
    to_come: float | None
    to_come_minutes: float | None
    loose: int
    loose_money: float
    loose_minutes: float
    pace: Pace | None

    @property
    def finished(self) -> int:
        """How many of the areas are finished."""
        return sum(area.finished for area in self.areas)
