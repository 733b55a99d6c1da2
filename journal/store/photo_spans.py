"""Hours taken from photos: which photos they reach from and to."""

from collections import defaultdict
from datetime import datetime

from journal.domain.ids import AreaId, CameraId, PhotoId, WorkId
from journal.domain.photo_spans import Shot
from journal.domain.photos import Basis
from journal.store.opened import Subject
from journal.store.rows import delete, insert, update

#: What hours say once both of their photos are gone for good.
_FROM_PHOTOS = "(at least; from photos that were cleared out)"


class PhotoSpans(Subject):
    """What ties hours to the first and the last photo that show them."""

    def add(self, work_id: WorkId, first: PhotoId, last: PhotoId) -> None:
        """Record that hours reach at least from one photo to another."""
        values = {"work_id": work_id, "first_photo": first, "last_photo": last}
        insert(self._db, "photo_spans", values)

    def of_work(self, work_id: WorkId) -> tuple[PhotoId, PhotoId] | None:
        """The first and the last photo that hours were taken from."""
        found = self._db.execute(
            "SELECT first_photo, last_photo FROM photo_spans WHERE work_id = ?", (work_id,)
        ).fetchone()
        return None if found is None else (PhotoId(found[0]), PhotoId(found[1]))

    def forget(self, photo_id: PhotoId) -> None:
        """Tie hours to the other of their two photos, since this one goes for good.

        Where it was the last of them, the hours say in their note where they are from.
        """
        rows = self._db.execute(
            "SELECT id, work_id, first_photo, last_photo FROM photo_spans "
            "WHERE ? IN (first_photo, last_photo)",
            (photo_id,),
        ).fetchall()
        for number, work_id, first, last in rows:
            other = last if first == photo_id else first
            if other != photo_id:
                update(self._db, "photo_spans", number, {"first_photo": other, "last_photo": other})
                continue
            delete(self._db, "photo_spans", number)
            (note,) = self._db.execute("SELECT note FROM work WHERE id = ?", (work_id,)).fetchone()
            update(self._db, "work", work_id, {"note": f"{note} {_FROM_PHOTOS}".strip()})

    def shots(self) -> list[Shot]:
        """The photos not removed that a camera dated to the second, in order of time."""
        found = self._db.execute(
            "SELECT id, earliest, camera_id FROM photos WHERE removed = 0 AND basis = ? "
            "AND edtf <> '' AND earliest = latest ORDER BY earliest, id",
            (Basis.CAMERA.value,),
        )
        return [
            Shot(PhotoId(i), datetime.fromisoformat(taken), camera and CameraId(camera))
            for i, taken, camera in found
        ]

    def areas(self) -> dict[PhotoId, list[AreaId]]:
        """The repair areas that each photo was chosen for."""
        chosen: dict[PhotoId, list[AreaId]] = defaultdict(list)
        for photo, area in self._db.execute("SELECT photo_id, area_id FROM area_photos"):
            chosen[PhotoId(photo)].append(AreaId(area))
        return chosen
