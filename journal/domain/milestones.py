"""Which side of the road a date is on: restoration, or upkeep after it."""

from collections.abc import Iterable
from datetime import date, datetime

from journal.domain.car import Milestone, MilestoneKind
from journal.domain.when import When


def on_the_road(milestones: Iterable[Milestone]) -> date | None:
    """The day the restoration ended, None while the car is still off the road.

    It is the earliest day that the first "on the road" milestone allows; a milestone whose start
    is open counts by its latest day instead.
    """
    days = [
        first_day(milestone.when)
        for milestone in milestones
        if milestone.kind is MilestoneKind.ON_THE_ROAD
    ]
    return min((day for day in days if day is not None), default=None)


def is_upkeep(when: When, milestones: Iterable[Milestone]) -> bool:
    """Tell whether ``when`` lies after the "on the road" milestone.

    Uncertain dates count by their earliest day, and the day of the milestone itself is still
    restoration. So a receipt of "2021" is restoration where the car went on the road in June 2021,
    and a date with an open start is restoration always.
    """
    return lies_after(when, on_the_road(milestones))


def lies_after(when: When, road: date | None) -> bool:
    """``is_upkeep`` for the day the restoration ended, None while the car is off the road."""
    return road is not None and when.earliest.date() > road


def first_day(when: When) -> date | None:
    """The day that a milestone counts from; None where neither end of its date is known."""
    if when.earliest != datetime.min:
        return when.earliest.date()
    return when.latest.date() if when.latest != datetime.max else None
