"""Hours from photos: from the first shot of a visit to the last somebody was there, at least."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from itertools import groupby, pairwise

from journal.domain.ids import AreaId, CameraId, PhotoId
from journal.domain.photos import Basis, Photo
from journal.domain.work import Work

#: Shorter than this, two photos say nothing of work (our own choice).
SHORTEST = 15
#: A date that spans more days than a month has says nothing of one day.
_VAGUE = timedelta(days=31)


@dataclass(frozen=True, slots=True)
class Shot:
    """A photo whose camera gave the time, in local time, its clock put right."""

    photo_id: PhotoId
    taken: datetime
    camera_id: CameraId | None = None


@dataclass(frozen=True, slots=True)
class Visit:
    """A run of shots with no long pause between them."""

    first: Shot
    last: Shot

    @property
    def seconds(self) -> int:
        """From the first shot to the last."""
        return int((self.last.taken - self.first.taken).total_seconds())


@dataclass(frozen=True, slots=True)
class PhotoDay:
    """A day's visits to the workshop as photos show them.

    ``minutes`` is the time that somebody was there at least: from first to last shot of each
    visit, long pauses left out, in whole minutes. ``area_ids`` are the repair areas that the
    photos were chosen for, the one with most first.
    """

    day: date
    visits: tuple[Visit, ...]
    minutes: int
    photo_ids: tuple[PhotoId, ...]
    cameras: int
    area_ids: tuple[AreaId, ...] = ()

    @property
    def first(self) -> Shot:
        """The first shot of the day."""
        return self.visits[0].first

    @property
    def last(self) -> Shot:
        """The last shot of the day."""
        return self.visits[-1].last


def shots(photos: Iterable[Photo]) -> list[Shot]:
    """The photos that a camera dated to the second, in order of time."""
    found = [
        Shot(photo.id, photo.when.earliest, photo.camera_id)
        for photo in photos
        if photo.basis is Basis.CAMERA
        and photo.when is not None
        and photo.when.earliest == photo.when.latest
    ]
    return sorted(found, key=lambda shot: (shot.taken, shot.photo_id))


def photo_days(
    taken: Sequence[Shot],
    pause_minutes: int,
    areas: Mapping[PhotoId, Sequence[AreaId]] | None = None,
) -> tuple[PhotoDay, ...]:
    """The days whose shots show a visit of a quarter of an hour or more, in order.

    Args:
        taken: shots in order of time.
        pause_minutes: a longer pause parts two visits and is counted to neither.
        areas: the repair areas that photos were chosen for.
    """
    found = []
    for day, of_day in groupby(taken, key=lambda shot: shot.taken.date()):
        made = _day(day, list(of_day), timedelta(minutes=pause_minutes), areas or {})
        if made is not None:
            found.append(made)
    return tuple(found)


def without_hours(days: Iterable[PhotoDay], work: Iterable[Work]) -> tuple[PhotoDay, ...]:
    """The days for which nobody's hours are recorded.

    Hours dated to a month or better stand for every day of it, so that none is counted twice.
    """
    covered: set[date] = set()
    for one in work:
        first, last = one.when.earliest, one.when.latest
        if last - first <= _VAGUE:
            covered |= {
                first.date() + timedelta(days=n)
                for n in range((last.date() - first.date()).days + 1)
            }
    return tuple(day for day in days if day.day not in covered)


def _day(
    day: date,
    of_day: list[Shot],
    pause: timedelta,
    areas: Mapping[PhotoId, Sequence[AreaId]],
) -> PhotoDay | None:
    breaks = [n for n, (a, b) in enumerate(pairwise(of_day), 1) if b.taken - a.taken > pause]
    runs = [of_day[a:b] for a, b in pairwise([0, *breaks, len(of_day)])]
    visits = tuple(Visit(run[0], run[-1]) for run in runs if run[0].taken < run[-1].taken)
    minutes = sum(visit.seconds for visit in visits) // 60
    if minutes < SHORTEST:
        return None
    counts: dict[AreaId, int] = {}
    for shot in of_day:
        for area_id in areas.get(shot.photo_id, ()):
            counts[area_id] = counts.get(area_id, 0) + 1
    return PhotoDay(
        day=day,
        visits=visits,
        minutes=minutes,
        photo_ids=tuple(shot.photo_id for shot in of_day),
        cameras=len({shot.camera_id for shot in of_day}),
        area_ids=tuple(sorted(counts, key=lambda area_id: (-counts[area_id], area_id))),
    )
