"""What the Rook is valued at, cars to compare it with, and prices over the years; all made up."""

from decimal import Decimal

from journal.demo.life import INSPECTOR, OWNER
from journal.domain.ids import ComparableId, ValuationId
from journal.domain.valuations import Comparable, PriceKind, Valuation, ValuationBasis
from journal.domain.when import parse_edtf

INDEX_NAME = "Made-up workshop price index"
INDEX_SOURCE = "Invented for this demo; no office publishes it"

#: Per mille that prices rose by each month of a year.
_RISES = {2018: 2, 2019: 1, 2020: 1, 2021: 4, 2022: 7, 2023: 4, 2024: 2}

VALUATIONS = (
    Valuation(
        ValuationId(0),
        parse_edtf("2018-04"),
        90_000,
        OWNER,
        ValuationBasis.OWN,
        "What I would have taken for it in the barn.",
    ),
    Valuation(
        ValuationId(0),
        parse_edtf("2022-06-02"),
        1_650_000,
        INSPECTOR,
        ValuationBasis.AGREED,
        "Seen on the lift, with the photos of the shell. For the insurance, to be looked at again "
        "in three years.",
    ),
)

COMPARABLES = (
    Comparable(
        ComparableId(0),
        parse_edtf("2022-04"),
        "Rook 1500 saloon, 1971, repainted, sills unknown",
        1_190_000,
        "EUR",
        PriceKind.ASKED,
        "notice board at the Saltwyke meeting",
    ),
    Comparable(
        ComparableId(0),
        parse_edtf("2022-09-03"),
        "Rook 1500 saloon, 1968, restored with pictures",
        1_725_000,
        "EUR",
        PriceKind.SOLD,
        "its seller, in person",
    ),
    Comparable(
        ComparableId(0),
        parse_edtf("2023"),
        "Rook 1300 estate, 1970, in parts",
        420_000,
        "EUR",
        PriceKind.OFFERED,
        "club newsletter",
    ),
)


def index_values() -> dict[str, Decimal]:
    """The made-up index by month, 100 in January 2018."""
    values, now = {}, Decimal(100)
    for year, rise in _RISES.items():
        for month in range(1, 13):
            values[f"{year}-{month:02d}"] = now.quantize(Decimal("0.1"))
            now += now * rise / 1000
    return values
