"""Sittings as the timeline shows them: in the order and with the filter the person chose."""

from collections import Counter
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from enum import Enum

from journal.desktop.widgets.grid_layout import Group
from journal.desktop.widgets.year_scale import Month
from journal.domain.ids import PhotoId
from journal.domain.photos import Photo
from journal.domain.sittings import Moment, Sitting
from journal.domain.words import day_in_words


class Shown(Enum):
    """Which photos are shown; the value is what the choice is called."""

    ALL = "All"
    TO_PLACE = "To place"
    UNDATED = "No date"
    REMOVED = "Removed"


@dataclass(frozen=True, slots=True)
class Row:
    """A sitting with its words: the day, the day in short, the time, and its month if dated."""

    sitting: Sitting
    title: str
    short: str
    time: str
    month: Month | None


@dataclass(frozen=True, slots=True)
class Record:
    """What the timeline knows of all photos: sittings in order of time, and who has a place.

    ``removed`` are the sittings of the removed photos, which ``rows`` leave out.
    """

    rows: tuple[Row, ...]
    placed: frozenset[PhotoId]
    removed: tuple[Row, ...] = ()

    @property
    def count(self) -> int:
        """How many photos there are."""
        return sum(len(row.sitting.photo_ids) for row in self.rows)

    @property
    def to_place(self) -> int:
        """How many photos have no place."""
        return self.count - len(self.placed)

    @property
    def undated(self) -> int:
        """How many photos have no date."""
        return sum(len(row.sitting.photo_ids) for row in self.rows if row.month is None)

    def counts(self) -> dict[Shown, int]:
        """How many photos each choice shows."""
        removed = sum(len(row.sitting.photo_ids) for row in self.removed)
        few = {Shown.TO_PLACE: self.to_place, Shown.UNDATED: self.undated}
        return {Shown.ALL: self.count, **few, Shown.REMOVED: removed}


def record(
    sittings: Sequence[Sitting], moments: Sequence[Moment], removed: Sequence[Sitting] = ()
) -> Record:
    """The record of these sittings and moments, for a reader job: dates take long to write."""
    placed = frozenset(moment.photo_id for moment in moments if moment.placed)
    return Record(tuple(map(_row, sittings)), placed, tuple(map(_row, removed)))


def moments_of(photos: Sequence[Photo]) -> tuple[Moment, ...]:
    """The moments of photos that have no place, in the order given."""
    return tuple(
        Moment(photo.id, photo.when.earliest.isoformat() if photo.when else "", placed=False)
        for photo in photos
    )


def groups(
    record: Record, shown: Shown, *, newest_first: bool
) -> tuple[tuple[Group, ...], tuple[Month | None, ...]]:
    """The groups to show, and the month of each, None for the undated ones (they stay last)."""
    chosen = []
    for row in record.removed if shown is Shown.REMOVED else record.rows:
        ids = _wanted(row.sitting, shown, record.placed)
        if ids:
            chosen.append((_group(row, ids, shown), row.month))
    if newest_first:
        dated = [pair for pair in chosen if pair[1] is not None]
        chosen = [*reversed(dated), *(pair for pair in chosen if pair[1] is None)]
    return tuple(group for group, _ in chosen), tuple(month for _, month in chosen)


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


def _group(row: Row, ids: tuple[PhotoId, ...], shown: Shown) -> Group:
    sitting = row.sitting
    words = [row.time] if row.time else []
    if shown is Shown.REMOVED:
        placed = 0
        words.append(f"{count_words(len(ids))} removed")
    elif len(ids) == len(sitting.photo_ids):
        placed = sitting.placed
        words.append(count_words(len(ids)))
        words.append("all placed" if placed == len(ids) else f"{placed:,} placed")
    else:
        placed = 0
        words.append(f"{count_words(len(ids))} to place")
    return Group(row.title, " \u00b7 ".join(words), ids, placed, row.short)


def _row(sitting: Sitting) -> Row:
    first, last = sitting.first, sitting.last
    if first is None or last is None:
        return Row(sitting, heading(sitting), "", "", None)
    short = f"{first:%a} {first.day} {first:%b %Y}"
    spans = first.date() == last.date() and (first.hour, first.minute) != (last.hour, last.minute)
    time = f"{first:%H:%M} to {last:%H:%M}" if spans else f"{first:%H:%M}"
    return Row(sitting, heading(sitting), short, time, Month(first.year, first.month))
