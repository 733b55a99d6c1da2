"""Photos and the cameras they were taken with."""

import json
import re
from collections.abc import Iterable, Sequence
from datetime import UTC, datetime
from typing import Any

from journal.domain.arrivals import NewPhoto
from journal.domain.clock import with_shift
from journal.domain.errors import JournalError
from journal.domain.ids import CameraId, PhotoId, Sha256, typed_number
from journal.domain.photos import Basis, Camera, DateCandidate, Kind, Photo
from journal.domain.when import When
from journal.files.names import shown_name
from journal.store.opened import Subject
from journal.store.rows import chunks, insert, kept_text, marks, update, when_columns, when_from

_SELECT = """
SELECT p.id, p.sha256, o.suffix, p.name, p.kind, p.edtf, p.earliest, p.latest, p.basis,
  p.utc_offset, p.camera_id, coalesce(c.make, ''), coalesce(c.model, ''), p.width, p.height,
  p.orientation, p.turn, p.caption, p.damage, EXISTS (SELECT 1 FROM pins WHERE photo_id = p.id)
FROM photos p JOIN originals o ON o.sha256 = p.sha256 LEFT JOIN cameras c ON c.id = p.camera_id
"""
_HASH = re.compile("[0-9a-f]{6,64}")
_IN_TIME = " ORDER BY p.earliest, p.latest, p.sequence, p.id"


class Photos(Subject):
    """Every photo of the journal."""

    def add(self, new: Sequence[NewPhoto]) -> list[PhotoId]:
        """Record arrived photos whose originals are in place already."""
        now = datetime.now(UTC).isoformat(timespec="seconds")
        return [self._add(photo, now) for photo in new]

    def _add(self, new: NewPhoto, now: str) -> PhotoId:
        original = {"sha256": new.sha256, "suffix": new.suffix, "size": new.size, "mime": new.mime}
        if not self._db.execute(
            "SELECT 1 FROM originals WHERE sha256 = ?", (new.sha256,)
        ).fetchone():
            insert(self._db, "originals", {**original, "added": now})
        camera = self._camera(new.make, new.model, new.serial)
        when = with_shift(new.when, new.basis, camera.shift_seconds if camera else 0)
        values = {
            "sha256": new.sha256,
            "name": new.name,
            "kind": new.kind.value,
            **when_columns(when),
            "basis": new.basis.value,
            "utc_offset": new.offset,
            "candidates": candidates_to_json(new.candidates),
            "camera_id": camera.id if camera else None,
            "sequence": new.sequence,
            "width": new.width,
            "height": new.height,
            "orientation": new.orientation,
            "turn": 0,
            "latitude": None if new.latitude is None else round(new.latitude, 7),
            "longitude": None if new.longitude is None else round(new.longitude, 7),
            "caption": "",
            "damage": new.damage,
            "removed": 0,
        }
        return PhotoId(insert(self._db, "photos", values))

    def _camera(self, make: str, model: str, serial: str) -> Camera | None:
        if not (make or model):
            return None
        make, model, serial = map(kept_text, (make, model, serial))
        found = self._db.execute(
            "SELECT id, make, model, serial, shift_seconds FROM cameras "
            "WHERE make = ? AND model = ? AND serial = ?",
            (make, model, serial),
        ).fetchone()
        if found is None:
            values = {"make": make, "model": model, "serial": serial, "shift_seconds": 0}
            found = (insert(self._db, "cameras", values), make, model, serial, 0)
        return Camera(CameraId(found[0]), *found[1:])

    def get(self, ids: Iterable[PhotoId]) -> tuple[Photo, ...]:
        """Photos by number, in the order asked.

        Raises:
            JournalError: a number is no photo's.
        """
        wanted = list(ids)
        found: dict[int, Photo] = {}
        for batch in chunks(wanted):
            query = f"{_SELECT} WHERE p.id IN ({marks(batch)})"
            found.update((row[0], _photo(row)) for row in self._db.execute(query, batch))
        missing = [i for i in wanted if i not in found]
        if missing:
            raise JournalError(f"There is no photo number {missing[0]}.")
        return tuple(found[i] for i in wanted)

    def all(self) -> tuple[Photo, ...]:
        """Every photo that isn't removed, in order of time."""
        return self._where("p.removed = 0")

    def removed(self) -> tuple[Photo, ...]:
        """Every removed photo, in order of time."""
        return self._where("p.removed = 1")

    def on_panel(self, panel_id: int) -> tuple[Photo, ...]:
        """The photos pinned to a panel, in order of time."""
        inside = "p.removed = 0 AND p.id IN (SELECT photo_id FROM pins WHERE panel_id = ?)"
        return self._where(inside, panel_id)

    def of_area(self, area_id: int) -> tuple[Photo, ...]:
        """The photos chosen for a repair area, in order of time."""
        inside = "p.removed = 0 AND p.id IN (SELECT photo_id FROM area_photos WHERE area_id = ?)"
        return self._where(inside, area_id)

    def of_camera(self, camera_id: int) -> tuple[Photo, ...]:
        """Every photo of a camera, removed ones too."""
        return self._where("p.camera_id = ?", camera_id)

    def by_text(self, text: str, limit: int = 3) -> tuple[Photo, ...]:
        """Photos whose number, SHA-256 (its beginning) or file name is ``text``."""
        number = typed_number(text)
        if number is not None and (found := self._where("p.removed = 0 AND p.id = ?", number)):
            return found
        beginning = text.lower() if _HASH.fullmatch(text.lower()) else "-"
        return self._where(
            "p.removed = 0 AND (p.name = ? OR p.sha256 LIKE ?)", shown_name(text), beginning + "%"
        )[:limit]

    def _where(self, condition: str, *values: Any) -> tuple[Photo, ...]:
        query = f"{_SELECT} WHERE {condition}{_IN_TIME}"
        return tuple(_photo(row) for row in self._db.execute(query, values))

    def moments(self) -> list[tuple[int, str, int]]:
        """(number, earliest as ISO text, whether it has a place) of every photo, in time order."""
        return self._db.execute(
            "SELECT p.id, p.earliest, EXISTS (SELECT 1 FROM pins WHERE photo_id = p.id) "
            f"FROM photos p WHERE p.removed = 0{_IN_TIME}"
        ).fetchall()

    def spans(self) -> list[tuple[int, str, str]]:
        """(number, earliest, latest as ISO text) of every photo, in order of time."""
        return self._db.execute(
            f"SELECT p.id, p.earliest, p.latest FROM photos p WHERE p.removed = 0{_IN_TIME}"
        ).fetchall()

    def count(self) -> int:
        """How many photos there are, removed ones left out."""
        return int(self._db.execute("SELECT count(*) FROM photos WHERE removed = 0").fetchone()[0])

    def candidates(self, photo_id: PhotoId) -> tuple[DateCandidate, ...]:
        """Every date that something said of a photo."""
        row = self._db.execute("SELECT candidates FROM photos WHERE id = ?", (photo_id,)).fetchone()
        if row is None:
            raise JournalError(f"There is no photo number {photo_id}.")
        return candidates_from_json(row[0])

    def set_when(
        self, photo_id: PhotoId, when: When | None, basis: Basis, offset: str | None
    ) -> None:
        """Record a photo's date and how it is known."""
        values = {**when_columns(when), "basis": basis.value, "utc_offset": offset}
        update(self._db, "photos", photo_id, values)

    def by_sha256(self, sha256s: Iterable[str]) -> dict[str, tuple[PhotoId, bool]]:
        """The photos of some originals: number, and whether it was removed; others are left out."""
        found: dict[str, tuple[PhotoId, bool]] = {}
        for batch in chunks(list(sha256s)):
            query = f"SELECT sha256, id, removed FROM photos WHERE sha256 IN ({marks(batch)})"
            found.update((s, (PhotoId(i), bool(r))) for s, i, r in self._db.execute(query, batch))
        return found

    def shown_as(self, ids: Iterable[int]) -> dict[int, tuple[str, int]]:
        """What photos look like: the SHA-256 of the original and the turn, by number."""
        found: dict[int, tuple[str, int]] = {}
        for batch in chunks(ids):
            query = f"SELECT id, sha256, turn FROM photos WHERE id IN ({marks(batch)})"
            found.update((i, (sha256, turn)) for i, sha256, turn in self._db.execute(query, batch))
        return found

    def set_candidates(self, photo_id: PhotoId, candidates: Iterable[DateCandidate]) -> None:
        """Record every date that something said of a photo."""
        update(self._db, "photos", photo_id, {"candidates": candidates_to_json(candidates)})

    def set_damage(self, photo_id: PhotoId, damage: str) -> None:
        """Record what of a photo's file can't be read, in words."""
        update(self._db, "photos", photo_id, {"damage": damage})

    def set_caption(self, photo_id: PhotoId, caption: str) -> None:
        """Record what a photo shows, in the owner's words."""
        update(self._db, "photos", photo_id, {"caption": caption})

    def set_turn(self, photo_id: PhotoId, degrees: int) -> None:
        """Record by how many degrees clockwise the owner turned a photo."""
        update(self._db, "photos", photo_id, {"turn": degrees % 360})

    def set_removed(self, photo_id: PhotoId, *, removed: bool) -> None:
        """Take a photo out of the journal, or bring it back; its original stays."""
        update(self._db, "photos", photo_id, {"removed": int(removed)})

    def cameras(self) -> tuple[Camera, ...]:
        """Every camera, in order of number."""
        found = self._db.execute(
            "SELECT id, make, model, serial, shift_seconds FROM cameras ORDER BY id"
        )
        return tuple(Camera(CameraId(row[0]), *row[1:]) for row in found)

    def set_shift(self, camera_id: CameraId, seconds: int) -> None:
        """Record by how many seconds a camera's clock is put right."""
        update(self._db, "cameras", camera_id, {"shift_seconds": seconds})


def _photo(row: Sequence[Any]) -> Photo:
    make, model = row[11], row[12]
    return Photo(
        id=PhotoId(row[0]),
        sha256=Sha256(row[1]),
        suffix=row[2],
        name=row[3],
        kind=Kind(row[4]),
        when=when_from(*row[5:8]),
        basis=Basis(row[8]),
        offset=row[9],
        camera_id=None if row[10] is None else CameraId(row[10]),
        camera=Camera(CameraId(0), make, model, "", 0).label,
        width=row[13],
        height=row[14],
        orientation=row[15],
        turn=row[16],
        caption=row[17],
        damage=row[18],
        placed=bool(row[19]),
    )


def candidates_to_json(candidates: Iterable[DateCandidate]) -> str:
    """Date candidates as the text that the database holds."""
    return json.dumps(
        [
            {
                "basis": c.basis.value,
                "source": c.source,
                "text": c.text,
                "offset": c.offset,
                "doubt": c.doubt,
                **({} if c.when is None else when_columns(c.when)),
            }
            for c in candidates
        ],
        ensure_ascii=False,
    )


def candidates_from_json(text: str) -> tuple[DateCandidate, ...]:
    """Date candidates back from the text that the database holds."""
    return tuple(
        DateCandidate(
            basis=Basis(row["basis"]),
            source=row["source"],
            text=row["text"],
            when=when_from(row.get("edtf", ""), row.get("earliest", ""), row.get("latest", "")),
            offset=row["offset"],
            doubt=row["doubt"],
        )
        for row in json.loads(text)
    )
