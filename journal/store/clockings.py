"""The clock's runs."""

import json
from collections.abc import Sequence
from datetime import datetime
from typing import Any

from journal.domain.clockings import Clocking
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, ClockingId, WorkId
from journal.domain.receipts import Share
from journal.store.opened import Subject
from journal.store.rows import delete, insert, update

_COLUMNS = "id, person, started, note, shares, stopped, work_id"


class Clockings(Subject):
    """Every run of the clock, those still running among them."""

    def all(self) -> tuple[Clocking, ...]:
        """Every run, in order of their start."""
        return self._where("1")

    def running(self) -> tuple[Clocking, ...]:
        """The runs not stopped yet, in order of their start."""
        return self._where("stopped IS NULL")

    def get(self, clocking_id: ClockingId) -> Clocking:
        """One run.

        Raises:
            JournalError: there is none of that number.
        """
        found = self._where("id = ?", clocking_id)
        if not found:
            raise JournalError(f"There is no clock number {clocking_id}.")
        return found[0]

    def latest(self) -> Clocking | None:
        """The run begun last, as it was recorded."""
        found = self._where("id = (SELECT max(id) FROM clockings)")
        return found[0] if found else None

    def of_work(self, work_id: WorkId) -> Clocking | None:
        """The run that hours were clocked by."""
        found = self._where("work_id = ?", work_id)
        return found[0] if found else None

    def add(self, clocking: Clocking) -> ClockingId:
        """Record a run."""
        return ClockingId(insert(self._db, "clockings", _values(clocking)))

    def change(self, clocking: Clocking) -> None:
        """Record a run anew."""
        update(self._db, "clockings", clocking.id, _values(clocking))

    def remove(self, clocking_id: ClockingId) -> None:
        """Throw a run away."""
        delete(self._db, "clockings", clocking_id)

    def _where(self, condition: str, *values: int) -> tuple[Clocking, ...]:
        found = self._db.execute(
            f"SELECT {_COLUMNS} FROM clockings WHERE {condition} ORDER BY id", values
        )
        runs = [_clocking(row) for row in found]
        return tuple(sorted(runs, key=lambda run: run.started))


def _clocking(row: Sequence[Any]) -> Clocking:
    number, person, started, note, shares, stopped, work_id = row
    return Clocking(
        id=ClockingId(number),
        person=person,
        started=datetime.fromisoformat(started),
        note=note,
        shares=tuple(Share(AreaId(area), weight) for area, weight in json.loads(shares)),
        stopped=None if stopped is None else datetime.fromisoformat(stopped),
        work_id=None if work_id is None else WorkId(work_id),
    )


def _values(clocking: Clocking) -> dict[str, Any]:
    return {
        "person": clocking.person,
        "started": clocking.started.isoformat(timespec="seconds"),
        "stopped": clocking.stopped and clocking.stopped.isoformat(timespec="seconds"),
        "note": clocking.note,
        "shares": json.dumps([[share.area_id, share.weight] for share in clocking.shares]),
        "work_id": clocking.work_id,
    }
