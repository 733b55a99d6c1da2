"""Price indices, picked or brought in by the owner."""

from collections import defaultdict
from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from journal.domain.errors import JournalError
from journal.domain.ids import PriceIndexId
from journal.domain.price_index import PriceIndex, in_order
from journal.store.opened import Subject
from journal.store.rows import delete, insert, replace_children, update


class PriceIndices(Subject):
    """Every price index of the journal; at most one is chosen."""

    def all(self) -> tuple[PriceIndex, ...]:
        """All of them, by name."""
        values: dict[int, dict[str, Decimal]] = defaultdict(dict)
        for index, period, value in self._db.execute(
            "SELECT index_id, period, value FROM index_values"
        ):
            values[index][period] = Decimal(value)
        found = self._db.execute(
            "SELECT id, name, currency, source, chosen FROM price_indices ORDER BY name, id"
        )
        return tuple(
            PriceIndex(PriceIndexId(i), name, currency, source, _ordered(values[i]), bool(chosen))
            for i, name, currency, source, chosen in found
        )

    def get(self, index_id: PriceIndexId) -> PriceIndex:
        """One index.

        Raises:
            JournalError: there is none of that number.
        """
        for index in self.all():
            if index.id == index_id:
                return index
        raise JournalError(f"There is no price index number {index_id}.")

    def add(self, index: PriceIndex) -> PriceIndexId:
        """Record an index with its values."""
        index_id = PriceIndexId(insert(self._db, "price_indices", _columns(index)))
        self._set_values(index_id, index.values)
        return index_id

    def change(self, index: PriceIndex) -> None:
        """Record an index and its values anew."""
        update(self._db, "price_indices", index.id, _columns(index))
        self._set_values(index.id, index.values)

    def choose(self, index_id: PriceIndexId | None) -> None:
        """Make one index the chosen one, or none."""
        for (other,) in self._db.execute("SELECT id FROM price_indices").fetchall():
            update(self._db, "price_indices", other, {"chosen": int(other == index_id)})

    def remove(self, index_id: PriceIndexId) -> None:
        """Take an index out, with its values."""
        self._set_values(index_id, {})
        delete(self._db, "price_indices", index_id)

    def _set_values(self, index_id: PriceIndexId, values: Mapping[str, Decimal]) -> None:
        rows = [{"period": period, "value": str(values[period])} for period in in_order(values)]
        replace_children(self._db, "index_values", ("index_id", index_id), "period", rows)


def _ordered(values: Mapping[str, Decimal]) -> dict[str, Decimal]:
    return {period: values[period] for period in in_order(values)}


def _columns(index: PriceIndex) -> dict[str, Any]:
    words = {"name": index.name, "currency": index.currency, "source": index.source}
    return {**words, "chosen": int(index.chosen)}
