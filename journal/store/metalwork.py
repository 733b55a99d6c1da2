"""What was welded: seams with their states, patches, and the anchor points round them."""

import json
from typing import Any

from journal.domain.anchors import AnchorKind, AnchorPoint
from journal.domain.errors import JournalError
from journal.domain.ids import (
    AnchorId,
    AreaId,
    PatchId,
    PhotoId,
    SeamChangeId,
    SeamId,
    ViewId,
)
from journal.domain.patches import Patch
from journal.domain.seams import Joint, Seam, SeamChange, SeamState
from journal.domain.shapes import (
    from_path_data,
    stroke_from_path_data,
    stroke_to_path_data,
    to_path_data,
)
from journal.store.opened import Subject
from journal.store.rows import dated, delete, insert, update, when_columns, when_from


class Metalwork(Subject):
    """Every seam, patch and anchor point of the drawing."""

    # Anchor points

    def add_anchor(self, anchor: AnchorPoint) -> AnchorId:
        """Record a load-bearing mounting."""
        return AnchorId(insert(self._db, "anchors", _anchor_values(anchor)))

    def change_anchor(self, anchor: AnchorPoint) -> None:
        """Record a mounting anew."""
        update(self._db, "anchors", anchor.id, _anchor_values(anchor))

    def remove_anchor(self, anchor_id: AnchorId) -> None:
        """Take a mounting out."""
        delete(self._db, "anchors", anchor_id)

    def anchors(self) -> tuple[AnchorPoint, ...]:
        """Every anchor point, in order of number."""
        found = self._db.execute(
            "SELECT id, view_id, x, y, kind, name, radius_mm FROM anchors ORDER BY id"
        )
        return tuple(
            AnchorPoint(AnchorId(i), ViewId(view), x, y, AnchorKind(kind), name, radius)
            for i, view, x, y, kind, name, radius in found
        )

    # Seams

    def add_seam(self, seam: Seam) -> SeamId:
        """Record a line of welding."""
        return SeamId(insert(self._db, "seams", _seam_values(seam)))

    def change_seam(self, seam: Seam) -> None:
        """Record a line of welding anew."""
        update(self._db, "seams", seam.id, _seam_values(seam))

    def remove_seam(self, seam_id: SeamId) -> None:
        """Take a line of welding out, with its states."""
        db = self._db
        for (row,) in db.execute(
            "SELECT id FROM seam_changes WHERE seam_id = ?", (seam_id,)
        ).fetchall():
            delete(db, "seam_changes", row)
        delete(db, "seams", seam_id)

    def seams(self) -> tuple[Seam, ...]:
        """Every seam, in order of number."""
        found = self._db.execute(
            "SELECT id, area_id, view_id, path, joint, spacing_mm, note FROM seams ORDER BY id"
        )
        return tuple(
            Seam(
                SeamId(i), AreaId(area), ViewId(view), stroke_from_path_data(path), Joint(joint),
                spacing, note,
            )
            for i, area, view, path, joint, spacing, note in found
        )  # fmt: skip

    def seam(self, seam_id: SeamId) -> Seam:
        """One seam.

        Raises:
            JournalError: there is none of that number.
        """
        for seam in self.seams():
            if seam.id == seam_id:
                return seam
        raise JournalError(f"There is no seam number {seam_id}.")

    def add_change(self, change: SeamChange) -> SeamChangeId:
        """Record the day a part of a seam came to a state."""
        values = {
            "seam_id": change.seam_id,
            "state": change.state.value,
            "start_mm": round(change.start_mm, 2),
            "end_mm": round(change.end_mm, 2),
            **when_columns(change.when),
            "note": change.note,
            "photos": json.dumps(change.photo_ids),
        }
        return SeamChangeId(insert(self._db, "seam_changes", values))

    def change_part(self, change: SeamChange) -> None:
        """Record from where to where the part of a state runs."""
        part = {"start_mm": round(change.start_mm, 2), "end_mm": round(change.end_mm, 2)}
        update(self._db, "seam_changes", change.id, part)

    def remove_change(self, change_id: SeamChangeId) -> None:
        """Take the day of a state out."""
        delete(self._db, "seam_changes", change_id)

    def forget_photo(self, photo_id: PhotoId) -> None:
        """Show welds by their other photos, since this one goes and another may get its number."""
        found = self._db.execute("SELECT id, photos FROM seam_changes WHERE photos <> '[]'")
        for row, photos in found.fetchall():
            left = [photo for photo in json.loads(photos) if photo != photo_id]
            update(self._db, "seam_changes", row, {"photos": json.dumps(left)})

    def changes(self) -> tuple[SeamChange, ...]:
        """Every state that a part of a seam came to, in order of date."""
        found = self._db.execute(
            "SELECT id, seam_id, state, start_mm, end_mm, note, photos, edtf, earliest, latest "
            "FROM seam_changes ORDER BY earliest, latest, id"
        )
        return tuple(
            SeamChange(
                SeamChangeId(i), SeamId(seam), SeamState(state), start, end, dated(*when), note,
                tuple(PhotoId(photo) for photo in json.loads(photos)),
            )
            for i, seam, state, start, end, note, photos, *when in found
        )  # fmt: skip

    # Patches

    def add_patch(self, patch: Patch) -> PatchId:
        """Record a piece of new metal."""
        return PatchId(insert(self._db, "patches", _patch_values(patch)))

    def change_patch(self, patch: Patch) -> None:
        """Record a piece of new metal anew."""
        update(self._db, "patches", patch.id, _patch_values(patch))

    def remove_patch(self, patch_id: PatchId) -> None:
        """Take a piece of new metal out."""
        delete(self._db, "patches", patch_id)

    def patches(self) -> tuple[Patch, ...]:
        """Every patch, in order of number."""
        found = self._db.execute(
            "SELECT id, area_id, view_id, path, thickness_mm, steel, note, edtf, earliest, latest "
            "FROM patches ORDER BY id"
        )
        return tuple(
            Patch(
                PatchId(i), AreaId(area), ViewId(view), from_path_data(path), thickness, steel,
                note, when_from(*when),
            )
            for i, area, view, path, thickness, steel, note, *when in found
        )  # fmt: skip


def _anchor_values(anchor: AnchorPoint) -> dict[str, Any]:
    return {
        "view_id": anchor.view_id,
        "x": round(anchor.x, 2),
        "y": round(anchor.y, 2),
        "kind": anchor.kind.value,
        "name": anchor.name,
        "radius_mm": round(anchor.radius_mm, 2),
    }


def _seam_values(seam: Seam) -> dict[str, Any]:
    return {
        "area_id": seam.area_id,
        "view_id": seam.view_id,
        "path": stroke_to_path_data(seam.stroke),
        "joint": seam.joint.value,
        "spacing_mm": None if seam.spacing_mm is None else round(seam.spacing_mm, 2),
        "note": seam.note,
    }


def _patch_values(patch: Patch) -> dict[str, Any]:
    return {
        "area_id": patch.area_id,
        "view_id": patch.view_id,
        "path": to_path_data(patch.shape),
        "thickness_mm": round(patch.thickness_mm, 3),
        "steel": patch.steel,
        "note": patch.note,
        **when_columns(patch.when),
    }
