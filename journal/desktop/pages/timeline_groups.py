"""Sittings as the timeline shows them: in the order and with the filter the person chose."""

from collections import Counter
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from enum import Enum

from journal.desktop.widgets.grid_layout import Group
from journal.desktop.widgets.year_scale import Month
from journal.domain.ids import PhotoId
from journal.domain.sittings import Moment, Sitting
from journal.domain.words import day_in_words


class Shown(Enum):
    """Which photos are shown; the value is what the choice is called."""

    ALL = "All"
    TO_PLACE = "To place"
    UNDATED = "No date"


@dataclass(frozen=True, slots=True)
class Record:
    """What the timeline knows of all photos: sittings in order of time, and who has a place."""

    sittings: tuple[Sitting, ...]
    placed: frozenset[PhotoId]

    @property
    def count(self) -> int:
        """How many photos there are."""
        return sum(len(sitting.photo_ids) for sitting in self.sittings)

    @property
    def to_place(self) -> int:
        """How many photos have no place."""
        return self.count - len(self.placed)

    @property
    def undated(self) -> int:
        """How many photos have no date."""
        return sum(len(s.photo_ids) for s in self.sittings if s.first is None)


def record(sittings: tuple[Sitting, ...], moments: Sequence[Moment]) -> Record:
    """The record of these sittings and moments."""
    return Record(sittings, frozenset(m.photo_id for m in moments if m.placed))


def groups(
    record: Record, shown: Shown, *, newest_first: bool
) -> tuple[tuple[Group, ...], tuple[Month | None, ...]]:
    """The groups to show, and the month of each, None for the undated ones (they stay last)."""
    rows = []
    for sitting in record.sittings:
        ids = _wanted(sitting, shown, record.placed)
        if ids:
            rows.append((_group(sitting, ids), _month(sitting)))
    if newest_first:
        dated = [row for row in rows if row[1] is not None]
        rows = [*reversed(dated), *(row for row in rows if row[1] is None)]
    return tuple(group for group, _ in rows), tuple(month for _, month in rows)


def by_month(groups: Sequence[Group], months: Sequence[Month | None]) -> dict[Month, int]:
    """How many photos each month holds."""
    counts: Counter[Month] = Counter()
    for group, month in zip(groups, months, strict=True):
        if month is not None:
            counts[month] += len(group.ids)
    return dict(counts)


def group_for(months: Sequence[Month | None], wanted: Month) -> int | None:
    """The group to go to for a month: its first one shown, else the nearest in time."""
    dated = [(n, month) for n, month in enumerate(months) if month is not None]
    if not dated:
        return None

    def distance(row: tuple[int, Month]) -> tuple[int, int]:
        number, month = row
        return abs((month.year - wanted.year) * 12 + month.month - wanted.month), number

    return min(dated, key=distance)[0]


def heading(sitting: Sitting) -> str:
    """The day of a sitting, in words."""
    if sitting.first is None or sitting.last is None:
        return "No date"
    day = f"{sitting.first:%A} {day_in_words(sitting.first.date())}"
    if sitting.first.date() == sitting.last.date():
        return day
    return f"{day} to {day_in_words(sitting.last.date())}"


def count_words(number: int, noun: str = "photo") -> str:
    """A number with its noun."""
    return f"{number:,} {noun}" if number == 1 else f"{number:,} {noun}s"


def _wanted(sitting: Sitting, shown: Shown, placed: Collection[PhotoId]) -> tuple[PhotoId, ...]:
    if shown is Shown.UNDATED:
        return sitting.photo_ids if sitting.first is None else ()
    if shown is Shown.TO_PLACE:
        if sitting.placed == len(sitting.photo_ids):
            return ()
        return tuple(photo for photo in sitting.photo_ids if photo not in placed)
    return sitting.photo_ids


def _group(sitting: Sitting, ids: tuple[PhotoId, ...]) -> Group:
    done = sitting.placed if len(ids) == len(sitting.photo_ids) else 0
    words = [count_words(len(ids))]
    if len(ids) == len(sitting.photo_ids):
        words.append("all placed" if done == len(ids) else f"{done:,} placed")
    else:
        words[0] += " to place"
    if sitting.first is not None and sitting.last is not None:
        spans = sitting.first.date() == sitting.last.date() and sitting.first != sitting.last
        time = f"{sitting.first:%H:%M}"
        words.insert(0, f"{time} to {sitting.last:%H:%M}" if spans else time)
    short = f"{sitting.first:%a} {sitting.first.day} {sitting.first:%b %Y}" if sitting.first else ""
    return Group(heading(sitting), " \u00b7 ".join(words), ids, done, short)


def _month(sitting: Sitting) -> Month | None:
    return None if sitting.first is None else Month(sitting.first.year, sitting.first.month)
