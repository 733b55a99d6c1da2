"""Pictures laid under the views, to draw over."""

import json

from journal.domain.ids import Sha256, ViewId
from journal.domain.underlays import Underlay
from journal.store.opened import Subject
from journal.store.rows import delete, insert, update


class Underlays(Subject):
    """At most one picture under each view."""

    def put(self, underlay: Underlay) -> None:
        """Lay a picture under its view, in place of the one there."""
        values = {
            "view_id": underlay.view_id,
            "sha256": underlay.sha256,
            "matrix": json.dumps([round(number, 9) for number in underlay.matrix]),
            "strength": round(underlay.strength, 3),
            "shown": int(underlay.shown),
        }
        row = self._row(underlay.view_id)
        if row is None:
            insert(self._db, "underlays", values)
        else:
            update(self._db, "underlays", row, values)

    def take(self, view_id: ViewId) -> None:
        """Take the picture from under a view; it stays among the originals."""
        row = self._row(view_id)
        if row is not None:
            delete(self._db, "underlays", row)

    def all(self) -> tuple[Underlay, ...]:
        """Every picture under a view."""
        found = self._db.execute(
            "SELECT view_id, sha256, matrix, strength, shown FROM underlays ORDER BY view_id"
        )
        return tuple(
            Underlay(ViewId(view), Sha256(sha), tuple(json.loads(matrix)), strength, bool(shown))
            for view, sha, matrix, strength, shown in found
        )

    def _row(self, view_id: ViewId) -> int | None:
        found = self._db.execute(
            "SELECT id FROM underlays WHERE view_id = ?", (view_id,)
        ).fetchone()
        return None if found is None else int(found[0])
