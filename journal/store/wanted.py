"""Wanted parts, where they were seen, and the days they came to a state."""

from collections import defaultdict
from collections.abc import Sequence
from decimal import Decimal
from typing import Any

from journal.domain.errors import JournalError
from journal.domain.ids import (
    AreaId,
    LineId,
    PanelId,
    ReceiptId,
    SightingId,
    WantedChangeId,
    WantedId,
)
from journal.domain.receipts import Category, Condition
from journal.domain.wanted import Sighting, Wanted, WantedChange, WantedState
from journal.domain.when import When
from journal.store.opened import Subject
from journal.store.rows import dated, delete, insert, update, when_columns


class WantedStore(Subject):
    """Every part that is wanted, or was."""

    def add(self, wanted: Wanted) -> WantedId:
        """Record a part; its states and sightings are recorded by themselves."""
        return WantedId(insert(self._db, "wanted", _values(wanted)))

    def change(self, wanted: Wanted) -> None:
        """Record what is said of a part anew; its tie, states and sightings stay."""
        update(self._db, "wanted", wanted.id, _values(wanted))

    def remove(self, wanted_id: WantedId) -> None:
        """Take a part out, with its states and sightings."""
        for table in ("sightings", "wanted_changes"):
            found = self._db.execute(f"SELECT id FROM {table} WHERE wanted_id = ?", (wanted_id,))
            for (row,) in found.fetchall():
                delete(self._db, table, row)
        delete(self._db, "wanted", wanted_id)

    def tie(self, wanted_id: WantedId, line_id: LineId | None) -> None:
        """Say which line of a receipt a part became, or that it is none."""
        update(self._db, "wanted", wanted_id, {"line_id": line_id})

    def set_state(self, wanted_id: WantedId, state: WantedState, when: When, note: str) -> None:
        """Record the day a part came to a state, in place of another day for the same state."""
        values = {"state": state.value, **when_columns(when), "note": note}
        found = self._state_row(wanted_id, state)
        if found is None:
            insert(self._db, "wanted_changes", {"wanted_id": wanted_id, **values})
        else:
            update(self._db, "wanted_changes", found, values)

    def remove_state(self, wanted_id: WantedId, state: WantedState) -> None:
        """Take the day of a state out.

        Raises:
            JournalError: the part never came to it.
        """
        found = self._state_row(wanted_id, state)
        if found is None:
            raise JournalError(f"The part was never recorded as {state.value}.")
        delete(self._db, "wanted_changes", found)

    def _state_row(self, wanted_id: WantedId, state: WantedState) -> int | None:
        found = self._db.execute(
            "SELECT id FROM wanted_changes WHERE wanted_id = ? AND state = ?",
            (wanted_id, state.value),
        ).fetchone()
        return None if found is None else int(found[0])

    def add_sighting(self, sighting: Sighting) -> SightingId:
        """Record where a part was seen."""
        values = {"wanted_id": sighting.wanted_id, **_sighting_values(sighting)}
        return SightingId(insert(self._db, "sightings", values))

    def change_sighting(self, sighting: Sighting) -> None:
        """Record a sighting anew."""
        update(self._db, "sightings", sighting.id, _sighting_values(sighting))

    def remove_sighting(self, sighting_id: SightingId) -> None:
        """Take a sighting out."""
        delete(self._db, "sightings", sighting_id)

    def all(self) -> tuple[Wanted, ...]:
        """Every part, in the order recorded."""
        return self._where("1")

    def get(self, wanted_id: WantedId) -> Wanted:
        """One part.

        Raises:
            JournalError: there is none of that number.
        """
        found = self._where("id = ?", wanted_id)
        if not found:
            raise JournalError(f"There is no wanted part number {wanted_id}.")
        return found[0]

    def for_area(self, area_id: AreaId) -> tuple[Wanted, ...]:
        """The parts wanted for a repair area."""
        return self._where("area_id = ?", area_id)

    def for_panel(self, panel_id: PanelId) -> tuple[Wanted, ...]:
        """The parts wanted for a panel or for an area that touches it."""
        return self._where(
            "panel_id = ?1 OR area_id IN (SELECT area_id FROM area_panels WHERE panel_id = ?1)",
            panel_id,
        )

    def places(self) -> tuple[str, ...]:
        """Every place where something was seen, the most used first."""
        found = self._db.execute(
            "SELECT place FROM sightings GROUP BY place ORDER BY count(*) DESC, place"
        )
        return tuple(name for (name,) in found)

    def _where(self, condition: str, *values: int) -> tuple[Wanted, ...]:
        below = f"wanted_id IN (SELECT id FROM wanted WHERE {condition})"
        sightings = self._sightings(below, values)
        changes = self._changes(below, values)
        rows = self._db.execute(
            "SELECT id, text, quantity, panel_id, area_id, category, condition, price_limit, "
            "new_price, note, line_id, "
            "(SELECT receipt_id FROM lines WHERE lines.id = wanted.line_id) "
            f"FROM wanted WHERE {condition} ORDER BY id",
            values,
        )
        return tuple(_wanted(row, changes[row[0]], sightings[row[0]]) for row in rows)

    def _sightings(self, below: str, values: Sequence[int]) -> dict[int, list[Sighting]]:
        found: dict[int, list[Sighting]] = defaultdict(list)
        for i, wanted, place, price, currency, note, *when in self._db.execute(
            "SELECT id, wanted_id, place, price, currency, note, edtf, earliest, latest "
            f"FROM sightings WHERE {below} ORDER BY earliest, latest, id",
            values,
        ):
            sighting = Sighting(
                SightingId(i), WantedId(wanted), place, price, currency, dated(*when), note
            )
            found[wanted].append(sighting)
        return found

    def _changes(self, below: str, values: Sequence[int]) -> dict[int, list[WantedChange]]:
        found: dict[int, list[WantedChange]] = defaultdict(list)
        for i, wanted, state, note, *when in self._db.execute(
            "SELECT id, wanted_id, state, note, edtf, earliest, latest "
            f"FROM wanted_changes WHERE {below} ORDER BY id",
            values,
        ):
            change = WantedChange(WantedChangeId(i), WantedState(state), dated(*when), note)
            found[wanted].append(change)
        return found


def _values(wanted: Wanted) -> dict[str, Any]:
    return {
        "text": wanted.text,
        "quantity": str(wanted.quantity),
        "panel_id": wanted.panel_id,
        "area_id": wanted.area_id,
        "category": wanted.category.value,
        "condition": wanted.condition.value if wanted.condition else "",
        "price_limit": wanted.price_limit,
        "new_price": wanted.new_price,
        "note": wanted.note,
    }


def _sighting_values(sighting: Sighting) -> dict[str, Any]:
    return {
        "place": sighting.place,
        "price": sighting.price,
        "currency": sighting.currency,
        **when_columns(sighting.when),
        "note": sighting.note,
    }


def _wanted(row: Sequence[Any], changes: list[WantedChange], sightings: list[Sighting]) -> Wanted:
    i, text, quantity, panel, area, category, condition, limit, new, note, line, receipt = row
    return Wanted(
        id=WantedId(i),
        text=text,
        quantity=Decimal(quantity),
        panel_id=None if panel is None else PanelId(panel),
        area_id=None if area is None else AreaId(area),
        category=Category(category),
        condition=Condition(condition) if condition else None,
        price_limit=limit,
        new_price=new,
        note=note,
        line_id=None if line is None else LineId(line),
        receipt_id=None if receipt is None else ReceiptId(receipt),
        changes=tuple(sorted(changes, key=lambda change: change.state.rank)),
        sightings=tuple(sightings),
    )
