"""Bursts: photos of one moment and one view, of which one is enough to look at.

Photos belong to one burst where each was taken within ten seconds of the one before and looks much
like it. Without a time to the second they have to look still more alike and follow each other.
Nothing is ever taken out for being one of many.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

from journal.domain.ids import PhotoId

#: Photos of a burst are no further apart than this, in seconds.
LONGEST_GAP = 10.0
#: Of 64 signs so many may differ between neighbours in a burst, with and without times.
MOST_APART, MOST_APART_UNTIMED = 14, 10


#: Photos of one burst in order of time.
Run = tuple[PhotoId, ...]


class Frame(NamedTuple):
    """A photo in order of time: when it was taken, in seconds from any start, None if not known."""

    photo_id: PhotoId
    second: float | None


@dataclass(frozen=True, slots=True)
class Burst:
    """Photos of one burst in order of time, and the one that stands for them."""

    photo_ids: tuple[PhotoId, ...]
    best: PhotoId


def suspects(frames: Sequence[Frame]) -> tuple[PhotoId, ...]:
    """The photos that may be of a burst by their times alone: only they need to be looked at."""
    found: dict[PhotoId, None] = {}
    for one, other in pairwise(frames):
        if _near_in_time(one, other) is not None:
            found[one.photo_id] = found[other.photo_id] = None
    return tuple(found)


def bursts(
    frames: Sequence[Frame], signs: Mapping[PhotoId, int]
) -> tuple[tuple[PhotoId, ...], ...]:
    """The bursts among photos in order of time, each of two photos or more.

    Args:
        frames: the photos, in order.
        signs: what each looks like in 64 signs; photos without are in no burst.
    """
    runs: list[list[PhotoId]] = []
    for one, other in pairwise(frames):
        most = _near_in_time(one, other)
        if most is None or not _alike(signs, one.photo_id, other.photo_id, most):
            continue
        if runs and runs[-1][-1] == one.photo_id:
            runs[-1].append(other.photo_id)
        else:
            runs.append([one.photo_id, other.photo_id])
    return tuple(map(tuple, runs))


def _near_in_time(one: Frame, other: Frame) -> int | None:
    """In how many signs two neighbours may differ; None where their times part them."""
    if one.second is None and other.second is None:
        return MOST_APART_UNTIMED
    if one.second is None or other.second is None:
        return None
    return MOST_APART if abs(other.second - one.second) <= LONGEST_GAP else None


def _alike(signs: Mapping[PhotoId, int], one: PhotoId, other: PhotoId, most: int) -> bool:
    first, second = signs.get(one), signs.get(other)
    # Without any sign there is nothing to see: a lens cap, a blank page.
    return bool(first and second) and ((first or 0) ^ (second or 0)).bit_count() <= most


def with_best(runs: Iterable[Run], sharpness: Mapping[PhotoId, float]) -> tuple[Burst, ...]:
    """Bursts with the sharpest photo to stand for each; the first where nothing is known."""
    return tuple(
        Burst(run, max(run, key=lambda photo: (sharpness.get(photo, -1.0), -run.index(photo))))
        for run in runs
    )
