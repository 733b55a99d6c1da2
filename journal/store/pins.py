"""Pins: where on the car a photo was taken."""

from journal.domain.ids import PanelId, PhotoId, PinId, ViewId
from journal.domain.photos import Pin
from journal.store.opened import Subject
from journal.store.rows import UNDATED, delete, insert, update


class Pins(Subject):
    """Every photo's places on the drawing."""

    def put(
        self,
        photo_id: PhotoId,
        panel_id: PanelId,
        view_id: ViewId | None,
        spot: tuple[float, float] | None,
        facing: float | None,
    ) -> PinId:
        """Pin a photo to a panel, or move its pin on that panel."""
        x, y = spot or (None, None)
        values = {
            "photo_id": photo_id,
            "panel_id": panel_id,
            "view_id": view_id,
            "x": None if x is None else round(x, 1),
            "y": None if y is None else round(y, 1),
            "facing": None if facing is None else round(facing, 1),
        }
        found = self._db.execute(
            "SELECT id FROM pins WHERE photo_id = ? AND panel_id = ?", (photo_id, panel_id)
        ).fetchone()
        if found is None:
            return PinId(insert(self._db, "pins", values))
        update(self._db, "pins", found[0], values)
        return PinId(found[0])

    def take(self, photo_id: PhotoId, panel_id: PanelId | None) -> None:
        """Take a photo's pin from a panel, or all its pins."""
        query, values = "SELECT id FROM pins WHERE photo_id = ?", [int(photo_id)]
        if panel_id is not None:
            query, values = query + " AND panel_id = ?", [*values, int(panel_id)]
        for (pin_id,) in self._db.execute(query, values).fetchall():
            delete(self._db, "pins", pin_id)

    def all(self) -> tuple[Pin, ...]:
        """Every pin of photos that aren't removed."""
        return self._where("1")

    def of_photo(self, photo_id: PhotoId) -> tuple[Pin, ...]:
        """A photo's pins."""
        return self._where("p.photo_id = ?", photo_id)

    def dated(self) -> list[tuple[int, int, float | None, float | None]]:
        """Of every pin: photo, panel, and the photo's earliest and latest time.

        The times are minutes since the beginning of 1970, in local time; None for undated photos.
        """
        minutes = "CASE WHEN earliest <> ?1 THEN (julianday({}) - 2440587.5) * 1440 END"
        return self._db.execute(
            f"SELECT photo_id, panel_id, {minutes.format('earliest')}, {minutes.format('latest')} "
            "FROM pins JOIN photos ON photos.id = pins.photo_id WHERE removed = 0 "
            "ORDER BY pins.id",
            (UNDATED,),
        ).fetchall()

    def _where(self, condition: str, *values: int) -> tuple[Pin, ...]:
        found = self._db.execute(
            "SELECT p.id, p.photo_id, p.panel_id, p.view_id, p.x, p.y, p.facing FROM pins p "
            f"JOIN photos ON photos.id = p.photo_id WHERE photos.removed = 0 AND {condition} "
            "ORDER BY p.id",
            values,
        )
        return tuple(
            Pin(PinId(i), PhotoId(p), PanelId(n), None if v is None else ViewId(v), x, y, f)
            for i, p, n, v, x, y, f in found
        )
