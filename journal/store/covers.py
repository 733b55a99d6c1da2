"""Boxes drawn on photos."""

from journal.domain.covers import CoverBox
from journal.domain.ids import CoverBoxId, PhotoId
from journal.domain.private_words import Private
from journal.store.opened import Subject
from journal.store.rows import delete, insert, update


class Covers(Subject):
    """Every box that covers something on a photo."""

    def all(self) -> tuple[CoverBox, ...]:
        """Every box, in order of number."""
        return self._where("1")

    def on(self, photo_id: PhotoId) -> tuple[CoverBox, ...]:
        """The boxes on one photo, in order of number."""
        return self._where("photo_id = ?", photo_id)

    def add(self, box: CoverBox) -> CoverBoxId:
        """Record a box."""
        row = insert(self._db, "cover_boxes", {"photo_id": box.photo_id, **_values(box)})
        return CoverBoxId(row)

    def change(self, box: CoverBox) -> None:
        """Record a box anew."""
        update(self._db, "cover_boxes", box.id, _values(box))

    def remove(self, box_id: CoverBoxId) -> None:
        """Take a box out."""
        delete(self._db, "cover_boxes", box_id)

    def _where(self, condition: str, *values: int) -> tuple[CoverBox, ...]:
        found = self._db.execute(
            "SELECT id, photo_id, x, y, width, height, hides FROM cover_boxes "
            f"WHERE {condition} ORDER BY id",
            values,
        )
        return tuple(
            CoverBox(CoverBoxId(i), PhotoId(photo), x, y, wide, high, Private(hides))
            for i, photo, x, y, wide, high, hides in found
        )


def _values(box: CoverBox) -> dict[str, object]:
    return {
        "x": box.x,
        "y": box.y,
        "width": box.width,
        "height": box.height,
        "hides": box.hides.value,
    }
