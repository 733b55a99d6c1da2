"""Phases: the spans between the turning points of a restoration."""

from bisect import bisect_left
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime
from itertools import pairwise

from journal.domain.car import Milestone, MilestoneKind
from journal.domain.milestones import first_day
from journal.domain.when import When

#: What the one phase of a journal without a dated milestone is called.
WHOLE_TIME = "the whole time: no milestone is dated"


@dataclass(frozen=True, slots=True)
class Phases:
    """Every phase by name, in order, and the days that part them.

    ``ends`` are the last days of all phases but the last: the day of a milestone still belongs to
    what it ends, as the day a car goes on the road is still restoration.
    """

    names: tuple[str, ...]
    ends: tuple[date, ...]

    def at(self, when: When) -> int | None:
        """The place of the phase that a date lies in, by its earliest day.

        None for a date with an open start, where there is more than one phase.
        """
        if not self.ends:
            return 0
        if when.earliest == datetime.min:
            return None
        return bisect_left(self.ends, when.earliest.date())


def phases(milestones: Iterable[Milestone]) -> Phases:
    """The phases that dated milestones make: "up to acquired", "acquired to stripped", ...

    Milestones of one day end a phase together. One whose start is open counts by its latest day,
    one without any day not at all.
    """
    by_day: dict[date, list[str]] = {}
    for milestone in milestones:
        day = first_day(milestone.when)
        if day is not None:
            names = by_day.setdefault(day, [])
            if (name := _name(milestone)) not in names:
                names.append(name)
    if not by_day:
        return Phases((WHOLE_TIME,), ())
    ends = tuple(sorted(by_day))
    names = [" and ".join(by_day[day]) for day in ends]
    between = [f"{first} to {second}" for first, second in pairwise(names)]
    return Phases((f"up to {names[0]}", *between, f"after {names[-1]}"), ends)


def _name(milestone: Milestone) -> str:
    if milestone.kind is MilestoneKind.OTHER and milestone.note.strip():
        words = " ".join(milestone.note.split()).rstrip(".")
        return f"“{words if len(words) <= 40 else words[:39] + '…'}”"
    return milestone.kind.value
