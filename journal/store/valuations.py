"""Valuations of the car, and cars to compare it with."""

from typing import Any

from journal.domain.ids import ComparableId, Sha256, ValuationId
from journal.domain.valuations import Comparable, PriceKind, Valuation, ValuationBasis
from journal.store.opened import Subject
from journal.store.rows import dated, delete, insert, update, when_columns


class Valuations(Subject):
    """Every valuation and every comparable car."""

    def all(self) -> tuple[Valuation, ...]:
        """Every valuation, in order of date."""
        found = self._db.execute(
            "SELECT id, amount, valuer, basis, note, sha256, edtf, earliest, latest "
            "FROM valuations ORDER BY earliest, latest, id"
        )
        return tuple(
            Valuation(
                ValuationId(i), dated(*when), amount, valuer, ValuationBasis(basis), note,
                None if sha is None else Sha256(sha),
            )
            for i, amount, valuer, basis, note, sha, *when in found
        )  # fmt: skip

    def add(self, valuation: Valuation) -> ValuationId:
        """Record a valuation."""
        return ValuationId(insert(self._db, "valuations", _valuation(valuation)))

    def change(self, valuation: Valuation) -> None:
        """Record a valuation anew."""
        update(self._db, "valuations", valuation.id, _valuation(valuation))

    def remove(self, valuation_id: ValuationId) -> None:
        """Take a valuation out; its paper stays as an original."""
        delete(self._db, "valuations", valuation_id)

    def comparables(self) -> tuple[Comparable, ...]:
        """Every comparable car, in order of date."""
        found = self._db.execute(
            "SELECT id, text, price, currency, kind, source, note, edtf, earliest, latest "
            "FROM comparables ORDER BY earliest, latest, id"
        )
        return tuple(
            Comparable(
                ComparableId(i), dated(*when), text, price, currency, PriceKind(kind), source, note
            )
            for i, text, price, currency, kind, source, note, *when in found
        )

    def add_comparable(self, comparable: Comparable) -> ComparableId:
        """Record a comparable car."""
        return ComparableId(insert(self._db, "comparables", _comparable(comparable)))

    def change_comparable(self, comparable: Comparable) -> None:
        """Record a comparable car anew."""
        update(self._db, "comparables", comparable.id, _comparable(comparable))

    def remove_comparable(self, comparable_id: ComparableId) -> None:
        """Take a comparable car out."""
        delete(self._db, "comparables", comparable_id)


def _valuation(valuation: Valuation) -> dict[str, Any]:
    return {
        **when_columns(valuation.when),
        "amount": valuation.amount,
        "valuer": valuation.valuer,
        "basis": valuation.basis.value,
        "note": valuation.note,
        "sha256": valuation.sha256,
    }


def _comparable(comparable: Comparable) -> dict[str, Any]:
    return {
        **when_columns(comparable.when),
        "text": comparable.text,
        "price": comparable.price,
        "currency": comparable.currency,
        "kind": comparable.kind.value,
        "source": comparable.source,
        "note": comparable.note,
    }
