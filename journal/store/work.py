"""Hours worked."""

from collections import defaultdict
from typing import Any

from journal.domain.ids import AreaId, WorkId
from journal.domain.receipts import Share
from journal.domain.work import Work, WorkBasis
from journal.store.opened import Subject
from journal.store.receipts import share_rows
from journal.store.rows import dated, delete, insert, replace_children, update, when_columns


class WorkStore(Subject):
    """Every person's hours."""

    def add(self, work: Work) -> WorkId:
        """Record hours with their shares."""
        work_id = WorkId(insert(self._db, "work", _values(work)))
        self._set_shares(work_id, work)
        return work_id

    def change(self, work: Work) -> None:
        """Record hours anew; they are the owner's word now where ``basis`` says so."""
        update(self._db, "work", work.id, _values(work))
        self._set_shares(work.id, work)
        if work.basis is WorkBasis.STATED:
            self._loosen(work.id)

    def _set_shares(self, work_id: WorkId, work: Work) -> None:
        rows = share_rows(work.shares)
        replace_children(self._db, "work_shares", ("work_id", work_id), "area_id", rows)

    def remove(self, work_id: WorkId) -> None:
        """Take hours out."""
        replace_children(self._db, "work_shares", ("work_id", work_id), "area_id", [])
        self._loosen(work_id)
        # A row of a sheet stays known, so that bringing the sheet in again doubles nothing.
        for (number,) in self._db.execute(
            "SELECT id FROM imported_rows WHERE work_id = ?", (work_id,)
        ).fetchall():
            update(self._db, "imported_rows", number, {"work_id": None})
        delete(self._db, "work", work_id)

    def _loosen(self, work_id: WorkId) -> None:
        """Part hours from the clock or the photos they were known by; those stay as they are."""
        for (number,) in self._db.execute(
            "SELECT id FROM clockings WHERE work_id = ?", (work_id,)
        ).fetchall():
            update(self._db, "clockings", number, {"work_id": None})
        replace_children(self._db, "photo_spans", ("work_id", work_id), "id", [])

    def all(self) -> tuple[Work, ...]:
        """All hours, in order of date."""
        return self._where("1")

    def for_panel(self, panel_id: int) -> tuple[Work, ...]:
        """The hours shared to an area that touches a panel."""
        return self._where(
            """id IN (SELECT s.work_id FROM work_shares s
                 JOIN area_panels p ON p.area_id = s.area_id WHERE p.panel_id = ?)""",
            panel_id,
        )

    def for_area(self, area_id: AreaId) -> tuple[Work, ...]:
        """The hours shared to a repair area."""
        return self._where("id IN (SELECT work_id FROM work_shares WHERE area_id = ?)", area_id)

    def people(self) -> tuple[str, ...]:
        """Everybody who worked, the one with the most days first."""
        found = self._db.execute(
            "SELECT person FROM work GROUP BY person ORDER BY count(*) DESC, person"
        )
        return tuple(name for (name,) in found)

    def _where(self, condition: str, *values: int) -> tuple[Work, ...]:
        shares: dict[int, list[Share]] = defaultdict(list)
        for work, area, weight in self._db.execute(
            "SELECT work_id, area_id, weight FROM work_shares WHERE work_id IN "
            f"(SELECT id FROM work WHERE {condition}) ORDER BY rank, id",
            values,
        ):
            shares[work].append(Share(AreaId(area), weight))
        known = self._bases()
        found = self._db.execute(
            "SELECT id, minutes, person, note, edtf, earliest, latest FROM work "
            f"WHERE {condition} ORDER BY earliest, latest, id",
            values,
        )
        return tuple(
            Work(
                WorkId(i), dated(*when), minutes, person, note, tuple(shares[i]),
                known.get(i, WorkBasis.STATED),
            )
            for i, minutes, person, note, *when in found
        )  # fmt: skip

    def _bases(self) -> dict[int, WorkBasis]:
        """How the hours are known that are more than the owner's word."""
        clocked = self._db.execute("SELECT work_id FROM clockings WHERE work_id IS NOT NULL")
        seen = self._db.execute("SELECT work_id FROM photo_spans")
        return dict.fromkeys((i for (i,) in clocked), WorkBasis.CLOCKED) | dict.fromkeys(
            (i for (i,) in seen), WorkBasis.PHOTOS
        )


def _values(work: Work) -> dict[str, Any]:
    words = {"person": work.person, "note": work.note}
    return {**when_columns(work.when), "minutes": work.minutes, **words}
