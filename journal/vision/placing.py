"""Where a photo belongs: what is pinned near it in time, and what looks like it.

Each panel is judged by the twelve photos pinned to it that are nearest in time. Of each the
closeness in time, on the scale of minutes, hours and days, and the likeness are added; the mean of
the best two is the panel's score.
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from journal.domain.ids import PanelId, PhotoId
from journal.domain.proposals import MOST, Proposal

#: Scales of closeness in time, in minutes, and what each weighs.
TIME_SCALES = (12.0, 120.0, 5760.0)
TIME_WEIGHTS = (1.5, 1.5, 0.8)
LIKENESS_WEIGHT = 20.0

NEAREST, BEST = 12, 2

#: No two dated photos are taken to be further apart, in minutes: two thousand years.
_FURTHEST = 1e9
#: Among photos equally far in time those added together are nearer; too little to outweigh a date.
_BY_NUMBER = 1e-6
#: Dates vaguer than this tell no time between two photos, in minutes.
_VAGUE = 3 * 1440.0

#: The earliest and latest time of a photo without a date, in minutes.
UNDATED = (-2 * _FURTHEST, 2 * _FURTHEST)

Rows = NDArray[np.int64]
Numbers = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Taken:
    """A photo and when it was taken: between two times, in minutes since any one moment."""

    photo_id: PhotoId
    earliest: float
    latest: float


class Pinned:
    """The photos pinned, with their panels and times, as rows in order of panel."""

    def __init__(
        self,
        photo_ids: NDArray[np.int64],
        panel_ids: NDArray[np.int64],
        earliest: Numbers,
        latest: Numbers,
    ) -> None:
        order = np.argsort(panel_ids, kind="stable")
        self.photo_ids = photo_ids[order]
        self.panel_ids = panel_ids[order]
        self.earliest = earliest[order]
        self.latest = latest[order]
        starts = np.flatnonzero(np.diff(self.panel_ids, prepend=np.int64(-1)))
        self._runs = list(pairwise([*starts, len(order)]))

    def nearest(self, photo: Taken) -> Rows:
        """The rows of each panel's twelve photos nearest in time, itself left out."""
        apart = self._order(photo, slice(None))
        apart[self.photo_ids == photo.photo_id] = np.inf
        found = []
        for start, end in self._runs:
            if end - start > NEAREST:
                found.append(start + np.argpartition(apart[start:end], NEAREST)[:NEAREST])
            else:
                found.append(np.arange(start, end))
        rows = np.concatenate(found) if found else np.zeros(0, np.int64)
        return np.asarray(rows[np.isfinite(apart[rows])], np.int64)

    def nearest_of(self, photo: Taken, rows: Rows) -> int:
        """The one of these rows that is nearest in time."""
        return int(rows[np.argmin(self._order(photo, rows))])

    def _order(self, photo: Taken, rows: Rows | slice) -> Numbers:
        by_number = np.abs(self.photo_ids[rows] - photo.photo_id) * _BY_NUMBER
        return np.asarray(self._apart_at_most(photo, rows) + by_number, np.float64)

    def _apart_at_most(self, photo: Taken, rows: Rows | slice) -> Numbers:
        """As far apart as they may be: two photos of one summer are not of one minute."""
        apart = np.maximum(self.latest[rows] - photo.earliest, photo.latest - self.earliest[rows])
        return np.asarray(np.minimum(apart, _FURTHEST), np.float64)

    def closeness(self, photo: Taken, rows: Rows) -> Numbers:
        """How near in time each row is: 3.8 for the same moment, 0 for another year."""
        apart = self._apart_at_most(photo, rows)
        near = np.zeros(len(rows))
        for scale, weight in zip(TIME_SCALES, TIME_WEIGHTS, strict=True):
            near += weight * np.exp(-0.5 * np.minimum(apart / scale, 40.0) ** 2)
        return near

    def between(self, photo: Taken, row: int) -> float | None:
        """By how many minutes a photo is later than a row; None where a date is too vague."""
        vague = max(photo.latest - photo.earliest, self.latest[row] - self.earliest[row])
        if vague > _VAGUE:
            return None
        middle = (self.earliest[row] + self.latest[row]) / 2
        return float((photo.earliest + photo.latest) / 2 - middle)


def propose(
    photo: Taken, pinned: Pinned, rows: Rows, alike: NDArray[np.floating] | None
) -> tuple[Proposal, ...]:
    """The panels a photo may belong to, the likeliest first, at most three.

    ``rows`` are what ``pinned.nearest(photo)`` gave, ``alike`` how alike the photo is to each of
    them, 0 where nothing is known of a row's look; None where the photo itself has none.
    """
    likes = np.zeros(len(rows)) if alike is None else np.asarray(alike, np.float64)
    scores = pinned.closeness(photo, rows) + LIKENESS_WEIGHT * likes
    panels = pinned.panel_ids[rows]
    order = np.lexsort((-scores, panels))
    starts = np.flatnonzero(np.diff(panels[order], prepend=np.int64(-1)))
    found = []
    for start, end in pairwise([*starts, len(order)]):
        best = scores[order[start : min(start + BEST, end)]]
        found.append((-float(best.mean()), int(panels[order[start]]), order[start:end]))
    found.sort(key=lambda panel: panel[:2])
    return tuple(
        _proposal(photo, pinned, rows[here], likes[here], PanelId(panel_id), -score)
        for score, panel_id, here in found[:MOST]
    )


def _proposal(
    photo: Taken,
    pinned: Pinned,
    rows: Rows,
    alike: NDArray[np.floating],
    panel_id: PanelId,
    score: float,
) -> Proposal:
    nearest = pinned.nearest_of(photo, rows)
    look = int(np.argmax(alike))
    return Proposal(
        panel_id=panel_id,
        score=score,
        nearest=PhotoId(int(pinned.photo_ids[nearest])),
        apart=pinned.between(photo, nearest),
        alike=PhotoId(int(pinned.photo_ids[rows[look]])) if alike[look] > 0 else None,
        likeness=float(alike[look]),
    )
