"""Valuations, cars to compare with and price indices as rows of tables."""

from collections.abc import Iterator
from decimal import Decimal
from typing import Any

from journal.domain.money import minor_units
from journal.domain.record import Record

VALUATIONS = ("id", "date", "amount", "currency", "by", "basis", "note", "paper sha256")
COMPARABLES = ("id", "date", "car", "price", "currency", "kind", "source", "note")
INDEX_VALUES = ("price index", "currency", "source", "chosen", "period", "value")


def valuation_rows(record: Record) -> Iterator[tuple[Any, ...]]:
    """One row a valuation; money in whole units with decimals."""
    currency = record.car.currency
    for one in record.valuations:
        amount = _money(one.amount, currency)
        yield (
            one.id, one.when.edtf, amount, currency, one.valuer, one.basis.value, one.note,
            one.sha256,
        )  # fmt: skip


def comparable_rows(record: Record) -> Iterator[tuple[Any, ...]]:
    """One row a car to compare with; money in whole units with decimals."""
    for one in record.comparables:
        price = _money(one.price, one.currency)
        yield (
            one.id, one.when.edtf, one.text, price, one.currency, one.kind.value, one.source,
            one.note,
        )  # fmt: skip


def index_rows(record: Record) -> Iterator[tuple[Any, ...]]:
    """One row a period of a price index."""
    for index in record.price_indices:
        chosen = "yes" if index.chosen else "no"
        for period, value in index.values.items():
            yield index.name, index.currency, index.source, chosen, period, value


def _money(minor: int, currency: str) -> Decimal:
    return Decimal(minor).scaleb(-minor_units(currency))
