"""Measures on the drawing, and the readings taken at them."""

import json
from decimal import Decimal
from typing import Any

from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, MeasureId, PanelId, ReadingId, ViewId
from journal.domain.readings import Measure, MeasureKind, Moment, Reading
from journal.domain.shapes import Point
from journal.store.opened import Subject
from journal.store.rows import dated, delete, insert, update, when_columns


class Readings(Subject):
    """Every measure and every reading."""

    def add_measure(self, measure: Measure) -> MeasureId:
        """Record a place to be measured."""
        return MeasureId(insert(self._db, "measures", _measure_values(measure)))

    def change_measure(self, measure: Measure) -> None:
        """Record a place anew."""
        update(self._db, "measures", measure.id, _measure_values(measure))

    def remove_measure(self, measure_id: MeasureId) -> None:
        """Take a place out, with its readings."""
        db = self._db
        for (row,) in db.execute(
            "SELECT id FROM readings WHERE measure_id = ?", (measure_id,)
        ).fetchall():
            delete(db, "readings", row)
        delete(db, "measures", measure_id)

    def measures(self) -> tuple[Measure, ...]:
        """Every measure, in order of number."""
        found = self._db.execute(
            "SELECT id, name, kind, view_id, points, unit, target, tolerance, area_id, panel_id "
            "FROM measures ORDER BY id"
        )
        return tuple(_measure(row) for row in found)

    def measure(self, measure_id: MeasureId) -> Measure:
        """One measure.

        Raises:
            JournalError: there is none of that number.
        """
        for measure in self.measures():
            if measure.id == measure_id:
                return measure
        raise JournalError(f"There is no measure number {measure_id}.")

    def add(self, reading: Reading) -> ReadingId:
        """Record a number read."""
        return ReadingId(insert(self._db, "readings", _reading_values(reading)))

    def change(self, reading: Reading) -> None:
        """Record a number read anew."""
        update(self._db, "readings", reading.id, _reading_values(reading))

    def remove(self, reading_id: ReadingId) -> None:
        """Take a number read out."""
        delete(self._db, "readings", reading_id)

    def all(self) -> tuple[Reading, ...]:
        """Every reading, in order of date."""
        found = self._db.execute(
            "SELECT id, measure_id, point, value, moment, instrument, note, edtf, earliest, latest "
            "FROM readings ORDER BY earliest, latest, id"
        )
        return tuple(
            Reading(
                ReadingId(i), MeasureId(measure), point, Decimal(value), dated(*when),
                Moment(moment), instrument, note,
            )
            for i, measure, point, value, moment, instrument, note, *when in found
        )  # fmt: skip


def _measure(row: Any) -> Measure:
    i, name, kind, view, points, unit, target, tolerance, area, panel = row
    return Measure(
        id=MeasureId(i),
        name=name,
        kind=MeasureKind(kind),
        view_id=ViewId(view),
        points=tuple(Point(x, y) for x, y in json.loads(points)),
        unit=unit,
        target=None if target is None else Decimal(target),
        tolerance=None if tolerance is None else Decimal(tolerance),
        area_id=None if area is None else AreaId(area),
        panel_id=None if panel is None else PanelId(panel),
    )


def _measure_values(measure: Measure) -> dict[str, Any]:
    points = [[round(point.x, 2), round(point.y, 2)] for point in measure.points]
    return {
        "name": measure.name,
        "kind": measure.kind.value,
        "view_id": measure.view_id,
        "points": json.dumps(points),
        "unit": measure.unit,
        "target": None if measure.target is None else str(measure.target),
        "tolerance": None if measure.tolerance is None else str(measure.tolerance),
        "area_id": measure.area_id,
        "panel_id": measure.panel_id,
    }


def _reading_values(reading: Reading) -> dict[str, Any]:
    return {
        "measure_id": reading.measure_id,
        "point": reading.point,
        "value": str(reading.value),
        **when_columns(reading.when),
        "moment": reading.moment.value,
        "instrument": reading.instrument,
        "note": reading.note,
    }
