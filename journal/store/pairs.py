"""Pairs of photos laid over each other."""

import json
from collections.abc import Sequence
from typing import Any

from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, PairId, PhotoId
from journal.domain.pairs import Fit, How, Pair, PointPair
from journal.domain.shapes import Point
from journal.store.opened import Subject
from journal.store.rows import delete, insert, update

_BOTH_THERE = "(SELECT count(*) FROM photos WHERE id IN (before_id, after_id) AND removed = 0) = 2"


class Pairs(Subject):
    """Every pair; those of which a photo was removed are left out until it is back."""

    def all(self) -> tuple[Pair, ...]:
        """Every pair, area by area, in the owner's order."""
        return self._where("1")

    def of_area(self, area_id: AreaId) -> tuple[Pair, ...]:
        """The pairs of one repair area, in the owner's order."""
        return self._where("area_id = ?", area_id)

    def of_photo(self, photo_id: PhotoId) -> tuple[Pair, ...]:
        """The pairs that a photo is one half of."""
        return self._where("? IN (before_id, after_id)", photo_id)

    def get(self, pair_id: PairId) -> Pair:
        """One pair.

        Raises:
            JournalError: there is none of that number, or one of its photos was removed.
        """
        found = self._where("id = ?", pair_id)
        if not found:
            raise JournalError(f"There is no pair number {pair_id}, or a photo of it was removed.")
        return found[0]

    def keep(self, pair: Pair) -> PairId:
        """Record a pair, in the place of one of the same two photos where there is one."""
        known = self._db.execute(
            "SELECT id FROM pairs WHERE area_id = ? AND before_id = ? AND after_id = ?",
            (pair.area_id, pair.before_id, pair.after_id),
        ).fetchone()
        values = {**_fit_values(pair.fit), "caption": pair.caption}
        if known is not None:
            update(self._db, "pairs", known[0], values)
            return PairId(known[0])
        (rank,) = self._db.execute(
            "SELECT coalesce(max(rank) + 1, 0) FROM pairs WHERE area_id = ?", (pair.area_id,)
        ).fetchone()
        photos = {"before_id": pair.before_id, "after_id": pair.after_id}
        row = {"area_id": pair.area_id, **photos, **values, "rank": rank}
        return PairId(insert(self._db, "pairs", row))

    def set_caption(self, pair_id: PairId, caption: str) -> None:
        """Record a pair's caption anew."""
        update(self._db, "pairs", pair_id, {"caption": caption})

    def set_order(self, pair_ids: Sequence[PairId]) -> None:
        """Record the order of an area's pairs."""
        for rank, pair_id in enumerate(pair_ids):
            update(self._db, "pairs", pair_id, {"rank": rank})

    def remove(self, pair_id: PairId) -> None:
        """Take a pair out; its photos stay."""
        delete(self._db, "pairs", pair_id)

    def _where(self, condition: str, *values: int) -> tuple[Pair, ...]:
        found = self._db.execute(
            "SELECT id, area_id, before_id, after_id, how, matrix, points, error_px, inliers, "
            f"caption, rank FROM pairs WHERE {condition} AND {_BOTH_THERE} "
            "ORDER BY area_id, rank, id",
            values,
        )
        return tuple(_pair(row) for row in found)


def _pair(row: Sequence[Any]) -> Pair:
    pair_id, area, before, after, how, matrix, points, error, inliers, caption, rank = row
    fit = Fit(
        How(how),
        tuple(json.loads(matrix)) if matrix else None,
        tuple(PointPair(Point(a, b), Point(c, d)) for a, b, c, d in json.loads(points or "[]")),
        error,
        inliers,
    )
    photos = PhotoId(before), PhotoId(after)
    return Pair(PairId(pair_id), AreaId(area), *photos, fit, caption, rank)


def _fit_values(fit: Fit) -> dict[str, Any]:
    points = [(*pair.before, *pair.after) for pair in fit.points]
    return {
        "how": fit.how.value,
        "matrix": "" if fit.matrix is None else json.dumps(fit.matrix),
        "points": json.dumps(points) if points else "",
        "error_px": fit.error_px,
        "inliers": fit.inliers,
    }
