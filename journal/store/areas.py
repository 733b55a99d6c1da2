"""Repair areas, their stages and photos, and the owner's entries."""

import json
from collections import defaultdict
from collections.abc import Sequence
from datetime import datetime
from typing import Any

from journal.domain.areas import Area, Entry, StageChange
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, EntryId, PanelId, PhotoId, StageChangeId
from journal.domain.photos import AreaPhoto, Role
from journal.domain.when import When
from journal.store.opened import Subject
from journal.store.rows import dated, delete, insert, replace_children, update, when_columns

#: Tables that point at an area, emptied of it before it goes.
_BELOW = (
    "area_panels", "stage_changes", "area_photos", "line_shares", "work_shares", "claim_words",
    "pairs",
)  # fmt: skip


class Areas(Subject):
    """Every repair area of the car."""

    def add(self, name: str, panel_ids: Sequence[PanelId], found: str) -> AreaId:
        """Record a repair area."""
        values = {"name": name, "found": found, "done": "", "cautions": "[]"}
        area_id = AreaId(insert(self._db, "areas", values))
        self._set_panels(area_id, panel_ids)
        return area_id

    def change(self, area: Area) -> None:
        """Record an area's name, words, cautions and panels anew."""
        words = {"name": area.name, "found": area.found, "done": area.done}
        update(self._db, "areas", area.id, {**words, "cautions": json.dumps(area.cautions)})
        self._set_panels(area.id, area.panel_ids)

    def _set_panels(self, area_id: AreaId, panel_ids: Sequence[PanelId]) -> None:
        rows = [{"panel_id": panel} for panel in dict.fromkeys(panel_ids)]
        replace_children(self._db, "area_panels", ("area_id", area_id), "panel_id", rows)

    def remove(self, area_id: AreaId) -> None:
        """Take an area out, with its stages, shares and welds; photos, lines and entries stay."""
        from journal.store.dossier_cuts import DossierCuts

        db = self._db
        self._remove_welds(area_id)
        for table in _BELOW:
            found = db.execute(f"SELECT id FROM {table} WHERE area_id = ?", (area_id,)).fetchall()
            for (row,) in found:
                delete(db, table, row)
        for table in ("entries", "measures", "wanted", "findings"):
            found = db.execute(f"SELECT id FROM {table} WHERE area_id = ?", (area_id,)).fetchall()
            for (row,) in found:
                update(db, table, row, {"area_id": None})
        self._remove_from_clocks(area_id)
        DossierCuts(self._journal).forget_area(area_id)
        delete(db, "areas", area_id)

    def _remove_from_clocks(self, area_id: AreaId) -> None:
        # The next area may be given the same number, and would get the time of this one.
        for row, shares in self._db.execute("SELECT id, shares FROM clockings").fetchall():
            left = [share for share in json.loads(shares) if share[0] != area_id]
            update(self._db, "clockings", row, {"shares": json.dumps(left)})

    def _remove_welds(self, area_id: AreaId) -> None:
        db = self._db
        of_seam = "seam_id IN (SELECT id FROM seams WHERE area_id = ?)"
        for table, condition in (
            ("seam_changes", of_seam),
            ("seams", "area_id = ?"),
            ("patches", "area_id = ?"),
        ):
            found = db.execute(f"SELECT id FROM {table} WHERE {condition}", (area_id,)).fetchall()
            for (row,) in found:
                delete(db, table, row)

    def all(self) -> tuple[Area, ...]:
        """Every area, in order of its first date, undated ones last."""
        areas = self._where("1")
        return tuple(sorted(areas, key=_by_first_date))

    def get(self, area_id: AreaId) -> Area:
        """One area.

        Raises:
            JournalError: there is none of that number.
        """
        found = self._where("id = ?", area_id)
        if not found:
            raise JournalError(f"There is no repair area number {area_id}.")
        return found[0]

    def on_panel(self, panel_id: PanelId) -> tuple[Area, ...]:
        """The areas that touch a panel."""
        return self._where("id IN (SELECT area_id FROM area_panels WHERE panel_id = ?)", panel_id)

    def _where(self, condition: str, *values: int) -> tuple[Area, ...]:
        rows = self._db.execute(
            f"SELECT id, name, found, done, cautions FROM areas WHERE {condition} ORDER BY id",
            values,
        ).fetchall()
        inside = f"area_id IN (SELECT id FROM areas WHERE {condition})"
        panels: dict[int, list[PanelId]] = defaultdict(list)
        for area, panel in self._db.execute(
            f"SELECT area_id, panel_id FROM area_panels WHERE {inside} ORDER BY id", values
        ):
            panels[area].append(PanelId(panel))
        changes: dict[int, list[StageChange]] = defaultdict(list)
        for i, area, stage, note, *when in self._db.execute(
            "SELECT id, area_id, stage, note, edtf, earliest, latest FROM stage_changes "
            f"WHERE {inside} ORDER BY earliest, latest, id",
            values,
        ):
            changes[area].append(
                StageChange(StageChangeId(i), AreaId(area), stage, dated(*when), note)
            )
        return tuple(
            Area(
                AreaId(i),
                name,
                tuple(panels[i]),
                found,
                done,
                tuple(json.loads(cautions)),
                tuple(changes[i]),
            )
            for i, name, found, done, cautions in rows
        )

    def add_stage_change(self, area_id: AreaId, stage: str, when: When, note: str) -> StageChangeId:
        """Record the day an area came to a stage."""
        values = {"area_id": area_id, "stage": stage, **when_columns(when), "note": note}
        return StageChangeId(insert(self._db, "stage_changes", values))

    def change_stage_change(self, change: StageChange) -> None:
        """Record a change of stage anew."""
        values = {"stage": change.stage, **when_columns(change.when), "note": change.note}
        update(self._db, "stage_changes", change.id, values)

    def remove_stage_change(self, change_id: StageChangeId) -> None:
        """Take a stage's date out."""
        delete(self._db, "stage_changes", change_id)

    def photos(self) -> tuple[AreaPhoto, ...]:
        """Every photo chosen for an area, in the owner's order."""
        return self._photos("1")

    def photos_of(self, area_id: AreaId) -> tuple[AreaPhoto, ...]:
        """The photos chosen for one area, in the owner's order."""
        return self._photos("a.area_id = ?", area_id)

    def photo_areas(self, photo_id: PhotoId) -> tuple[AreaPhoto, ...]:
        """The areas that one photo was chosen for."""
        return self._photos("a.photo_id = ?", photo_id)

    def _photos(self, condition: str, *values: int) -> tuple[AreaPhoto, ...]:
        found = self._db.execute(
            "SELECT a.area_id, a.photo_id, a.role, a.rank FROM area_photos a "
            f"JOIN photos ON photos.id = a.photo_id WHERE photos.removed = 0 AND {condition} "
            "ORDER BY a.area_id, a.rank, a.id",
            values,
        )
        return tuple(
            AreaPhoto(AreaId(a), PhotoId(p), Role(role), rank) for a, p, role, rank in found
        )

    def choose_photo(self, area_id: AreaId, photo_id: PhotoId, role: Role) -> None:
        """Choose a photo for an area, or give a chosen one another role."""
        found = self._db.execute(
            "SELECT id FROM area_photos WHERE area_id = ? AND photo_id = ?", (area_id, photo_id)
        ).fetchone()
        if found:
            update(self._db, "area_photos", found[0], {"role": role.value})
            return
        (last,) = self._db.execute(
            "SELECT coalesce(max(rank), 0) FROM area_photos WHERE area_id = ?", (area_id,)
        ).fetchone()
        values = {"area_id": area_id, "photo_id": photo_id, "role": role.value, "rank": last + 1}
        insert(self._db, "area_photos", values)

    def drop_photo(self, area_id: AreaId, photo_id: PhotoId) -> None:
        """Take a photo out of an area's choice."""
        for (row,) in self._db.execute(
            "SELECT id FROM area_photos WHERE area_id = ? AND photo_id = ?", (area_id, photo_id)
        ).fetchall():
            delete(self._db, "area_photos", row)

    def add_entry(self, entry: Entry) -> EntryId:
        """Record a note in the owner's words."""
        return EntryId(insert(self._db, "entries", _entry_values(entry)))

    def change_entry(self, entry: Entry) -> None:
        """Record a note anew."""
        update(self._db, "entries", entry.id, _entry_values(entry))

    def remove_entry(self, entry_id: EntryId) -> None:
        """Take a note out."""
        delete(self._db, "entries", entry_id)

    def entries(self) -> tuple[Entry, ...]:
        """Every note, in order of date."""
        return self._entries("1")

    def entries_of(self, area_id: AreaId) -> tuple[Entry, ...]:
        """The notes on a repair area."""
        return self._entries("area_id = ?", area_id)

    def entries_on_panel(self, panel_id: PanelId) -> tuple[Entry, ...]:
        """The notes on a panel or on an area that touches it."""
        return self._entries(
            "panel_id = ?1 OR area_id IN (SELECT area_id FROM area_panels WHERE panel_id = ?1)",
            panel_id,
        )

    def _entries(self, condition: str, *values: int) -> tuple[Entry, ...]:
        found = self._db.execute(
            "SELECT id, text, area_id, panel_id, edtf, earliest, latest FROM entries "
            f"WHERE {condition} ORDER BY earliest, latest, id",
            values,
        )
        return tuple(
            Entry(
                EntryId(i),
                dated(*when),
                text,
                None if a is None else AreaId(a),
                None if p is None else PanelId(p),
            )
            for i, text, a, p, *when in found
        )


def _by_first_date(area: Area) -> tuple[datetime, int]:
    return (area.changes[0].when.earliest if area.changes else datetime.max, area.id)


def _entry_values(entry: Entry) -> dict[str, Any]:
    place = {"area_id": entry.area_id, "panel_id": entry.panel_id}
    return {**when_columns(entry.when), "text": entry.text, **place}
