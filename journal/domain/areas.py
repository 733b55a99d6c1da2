"""Repair areas: one stretch of trouble and its cure, by stage."""

import math
from dataclasses import dataclass, replace
from datetime import datetime

from journal.domain.ids import AreaId, EntryId, PanelId, StageChangeId
from journal.domain.when import When

#: How far a repair area can be, in order; the owner may change the list of a journal.
DEFAULT_STAGES = (
    "found",
    "cut back",
    "new metal in",
    "welded",
    "dressed",
    "protected",
    "finished",
)


@dataclass(frozen=True, slots=True)
class StageChange:
    """The day a repair area came to a stage."""

    id: StageChangeId
    area_id: AreaId
    stage: str
    when: When
    note: str = ""


@dataclass(frozen=True, slots=True)
class Area:
    """A repair area.

    ``found`` says what was wrong, ``done`` what was done about it, both in the owner's words.
    ``changes`` are in order of date; ``stage`` is the latest, "" where none is recorded.
    ``cautions`` are keys of ``journal.domain.cautions``.
    """

    id: AreaId
    name: str
    panel_ids: tuple[PanelId, ...]
    found: str
    done: str
    cautions: tuple[str, ...]
    changes: tuple[StageChange, ...] = ()

    @property
    def stage(self) -> str:
        """The stage it is at now."""
        return self.changes[-1].stage if self.changes else ""

    def with_change(self, change: StageChange) -> "Area":
        """It with a change of stage more, or with another in place of the one of that number.

        One that isn't recorded yet, its number 0, comes after others of the same date.
        """
        others = (c for c in self.changes if c.id != change.id)
        return replace(self, changes=tuple(sorted((*others, change), key=_in_order)))

    def stage_on(self, moment: When) -> str:
        """The stage it had reached by the end of ``moment``, "" before the first."""
        reached = [c.stage for c in self.changes if c.when.earliest <= moment.latest]
        return reached[-1] if reached else ""


def _in_order(change: StageChange) -> tuple[datetime, datetime, float]:
    return change.when.earliest, change.when.latest, change.id or math.inf


@dataclass(frozen=True, slots=True)
class Entry:
    """A dated note in the owner's own words, hung on a repair area or a panel where it has one."""

    id: EntryId
    when: When
    text: str
    area_id: AreaId | None
    panel_id: PanelId | None
