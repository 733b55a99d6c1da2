"""Sittings: runs of photos with no long pause between them, one visit to the workshop each."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import pairwise
from typing import NamedTuple

from journal.domain.ids import PhotoId

#: Used where there are too few photos to choose a pause from.
USUAL_PAUSE = 120

#: No pause shorter than the first or longer than the last parts sittings by default, in minutes.
SHORTEST_PAUSE, LONGEST_PAUSE = 20, 720

_STEPS = 14
_FEWEST_GAPS = 20


class Moment(NamedTuple):
    """A photo on the timeline: its earliest time in ISO 8601, and whether it has a place.

    ``earliest`` is "" for an undated photo.
    """

    photo_id: PhotoId
    earliest: str
    placed: bool


@dataclass(frozen=True, slots=True)
class Sitting:
    """A run of photos, in order of time.

    ``first`` and ``last`` are local times, None for the undated photos, which are one sitting of
    their own. ``placed`` is how many of the photos have a place on the car.
    """

    first: datetime | None
    last: datetime | None
    photo_ids: tuple[PhotoId, ...]
    placed: int


def default_pause(moments: Iterable[datetime]) -> int:
    """The pause that parts two sittings, in minutes, chosen from the photos' own times, sorted.

    Within a visit photos come minutes apart, between visits most of a day; the lengths between are
    rare. The range from 20 minutes to 12 hours is cut into 14 steps of equal ratio, the pauses that
    occur are counted in each and smoothed over three steps, and the middle of the longest run of
    emptiest steps is taken, to the nearest five minutes. With under 20 pauses it is two hours.
    """
    ordered = list(moments)
    gaps = [(b - a).total_seconds() / 60 for a, b in pairwise(ordered)]
    if len(gaps) < _FEWEST_GAPS:
        return USUAL_PAUSE
    ratio = math.log(LONGEST_PAUSE / SHORTEST_PAUSE) / _STEPS
    counts = [0] * _STEPS
    for gap in gaps:
        if SHORTEST_PAUSE <= gap < LONGEST_PAUSE:
            counts[min(int(math.log(gap / SHORTEST_PAUSE) / ratio), _STEPS - 1)] += 1
    middle = _middle_of_emptiest(counts)
    return round(SHORTEST_PAUSE * math.exp(middle * ratio) / 5) * 5


def _middle_of_emptiest(counts: Sequence[int]) -> float:
    """The middle, in steps, of the longest run of steps with the lowest smoothed count."""
    last = len(counts) - 1
    smooth = [
        counts[max(i - 1, 0)] + counts[i] + counts[min(i + 1, last)] for i in range(len(counts))
    ]
    lowest = min(smooth)
    best_start = best_length = length = 0
    for index, count in enumerate(smooth):
        length = length + 1 if count == lowest else 0
        if length > best_length:
            best_start, best_length = index - length + 1, length
    return best_start + best_length / 2


def sittings(moments: Sequence[Moment], pause_minutes: int) -> tuple[Sitting, ...]:
    """Group photos, sorted by time with the undated last, wherever the pause is exceeded."""
    times = times_of(moments)
    pause = timedelta(minutes=pause_minutes)
    breaks = [i for i, (a, b) in enumerate(pairwise(times), 1) if b - a > pause]
    edges = [0, *breaks, len(times)]
    if len(times) < len(moments):
        edges.append(len(moments))
    return tuple(_sitting(moments[a:b]) for a, b in pairwise(edges) if b > a)


def times_of(moments: Iterable[Moment]) -> list[datetime]:
    """The local times of the dated photos, in their order."""
    return [datetime.fromisoformat(moment.earliest) for moment in moments if moment.earliest]


def _sitting(run: Sequence[Moment]) -> Sitting:
    ends = times_of((run[0], run[-1])) or (None, None)
    return Sitting(
        first=ends[0],
        last=ends[1],
        photo_ids=tuple(moment.photo_id for moment in run),
        placed=sum(moment.placed for moment in run),
    )
