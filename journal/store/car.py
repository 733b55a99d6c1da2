"""The car and its milestones."""

import json
from dataclasses import asdict

from journal.domain.car import Car, Milestone, MilestoneKind
from journal.domain.ids import MilestoneId
from journal.domain.when import When
from journal.store.opened import Subject
from journal.store.rows import dated, delete, insert, update, when_columns
from journal.store.schema import columns

_COLUMNS = columns("car")[1:]

#: Sums that have no currency of their own: they are in the journal's.
_OWN_SUMS = (
    ("people", ("rate",)), ("valuations", ("amount",)), ("surveys", ("ceiling",)),
    ("findings", ("best", "likely", "worst")), ("wanted", ("price_limit", "new_price")),
)  # fmt: skip


class CarStore(Subject):
    """What the journal says of the car as a whole."""

    def begin(self, car: Car) -> None:
        """Record the car of a new journal."""
        insert(self._db, "car", {"id": 1, **_values(car)})

    def get(self) -> Car:
        """The car as recorded."""
        row = self._db.execute(f"SELECT {', '.join(_COLUMNS)} FROM car").fetchone()
        values = dict(zip(_COLUMNS, row, strict=True))
        values["stages"] = tuple(json.loads(values["stages"]))
        return Car(**values)

    def change(self, car: Car) -> None:
        """Record the car anew."""
        update(self._db, "car", 1, _values(car))

    def shift_sums(self, places: int) -> None:
        """Keep sums as they were typed where the currency has so many decimal places more.

        Where it has fewer, half a unit is rounded up.
        """
        from fractions import Fraction

        from journal.domain.sharing import nearest

        scale = Fraction(10) ** places
        for table, names in _OWN_SUMS:
            found = self._db.execute(f"SELECT id, {', '.join(names)} FROM {table}").fetchall()
            for row, *sums in found:
                known = [pair for pair in zip(names, sums, strict=True) if pair[1] is not None]
                if known:
                    update(self._db, table, row, {n: nearest(minor * scale) for n, minor in known})

    def milestones(self) -> tuple[Milestone, ...]:
        """The turning points, in order of date."""
        found = self._db.execute(
            "SELECT id, kind, note, edtf, earliest, latest FROM milestones "
            "ORDER BY earliest, latest, id"
        )
        return tuple(
            Milestone(MilestoneId(i), MilestoneKind(kind), dated(*when), note)
            for i, kind, note, *when in found
        )

    def add_milestone(self, kind: MilestoneKind, when: When, note: str) -> MilestoneId:
        """Record a turning point."""
        values = {"kind": kind.value, **when_columns(when), "note": note}
        return MilestoneId(insert(self._db, "milestones", values))

    def change_milestone(self, milestone: Milestone) -> None:
        """Record a turning point anew."""
        values = {"kind": milestone.kind.value, **when_columns(milestone.when)}
        update(self._db, "milestones", milestone.id, {**values, "note": milestone.note})

    def remove_milestone(self, milestone_id: MilestoneId) -> None:
        """Take a turning point out."""
        delete(self._db, "milestones", milestone_id)


def _values(car: Car) -> dict[str, object]:
    values = asdict(car)
    values["stages"] = json.dumps(car.stages, ensure_ascii=False)
    return values
