"""Price indices and valuations: recorded, chosen, undone."""

from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from journal.actions import history, price_indices, valuations
from journal.actions.session import Session
from journal.domain.errors import JournalError
from journal.domain.ids import ComparableId, PriceIndexId, ValuationId
from journal.domain.valuations import Comparable, PriceKind, Valuation, ValuationBasis
from journal.domain.when import When

DAY = When.on(date(2024, 3, 2))
VALUES = {"2019": Decimal("100.0"), "2020-Q3": Decimal("103.3")}
WORTH = Valuation(
    ValuationId(0), DAY, 1_850_000, "M. Sandvik", ValuationBasis.AGREED, "seen on a lift"
)
OTHER = Comparable(ComparableId(0), DAY, "A saloon, 1967", 1_900_000, "GBP", PriceKind.SOLD, "ad")


def test_an_index_comes_back_as_it_went_in(session: Session) -> None:
    made = price_indices.record_index(session, " Made-up  index", "EUR", "made up", VALUES)
    (index,) = price_indices.price_indices(session)
    assert (index.name, index.source, index.chosen) == ("Made-up index", "made up", True)
    assert dict(index.values) == VALUES
    assert str(index.values["2019"]) == "100.0"
    assert (made.kinds, made.made) == (frozenset({"price_indices"}), index.id)
    assert price_indices.find_index(session, "made-up INDEX") == index


def test_the_same_name_again_replaces_the_values(session: Session) -> None:
    price_indices.record_index(session, "Made-up", "EUR", "made up", VALUES)
    price_indices.record_index(session, "made-up", "EUR", "elsewhere", {"2021": Decimal(1)})
    (index,) = price_indices.price_indices(session)
    assert (index.name, index.source, dict(index.values)) == ("Made-up", "elsewhere", {"2021": 1})
    history.undo(session)
    assert dict(price_indices.price_indices(session)[0].values) == VALUES


def test_one_index_at_most_is_chosen_and_none_of_another_currency(session: Session) -> None:
    price_indices.record_index(session, "Foreign", "USD", "made up", VALUES)
    assert price_indices.chosen_index(session) is None
    for name in ("A", "B"):
        price_indices.record_index(session, name, "EUR", "made up", VALUES)
    second = price_indices.find_index(session, "B")
    price_indices.choose_index(session, second.id)
    assert [i.name for i in price_indices.price_indices(session) if i.chosen] == ["B"]
    with pytest.raises(JournalError, match="is for USD"):
        price_indices.choose_index(session, price_indices.find_index(session, "Foreign").id)
    price_indices.choose_index(session, None)
    assert price_indices.chosen_index(session) is None
    price_indices.remove_index(session, second.id)
    with pytest.raises(JournalError, match="no price index"):
        price_indices.remove_index(session, PriceIndexId(second.id))


@pytest.mark.parametrize(
    ("name", "currency", "source", "said"),
    [("", "EUR", "x", "needs a name"), ("x", "EUR", " ", "where"), ("x", "euro", "x", "code")],
)
def test_an_index_says_what_it_is(
    session: Session, name: str, currency: str, source: str, said: str
) -> None:
    with pytest.raises(JournalError, match=said):
        price_indices.record_index(session, name, currency, source, VALUES)


def test_a_file_is_read_or_refused_by_its_name_and_row(tmp_path: Path) -> None:
    file = tmp_path / "index.csv"
    file.write_bytes("Périod;Wert\n2019;100,5\n".encode("cp1252"))
    assert price_indices.read_index_file(file) == {"2019": Decimal("100.5")}
    for data, said in ((b"2019,x", "“index.csv”: Row 1: “x”"), (b"PK\0\0", "is no text")):
        file.write_bytes(data)
        with pytest.raises(JournalError, match=said):
            price_indices.read_index_file(file)
    with pytest.raises(JournalError, match="can't be read"):
        price_indices.read_index_file(tmp_path / "nowhere.csv")


def test_valuations_and_comparables_come_back_as_they_went_in(session: Session) -> None:
    made = valuations.record_valuation(session, WORTH).made
    valuations.record_comparable(session, OTHER)
    (worth,), (other,) = valuations.valuations(session), valuations.comparables(session)
    assert worth == replace(WORTH, id=ValuationId(made or 0))
    assert other == replace(OTHER, id=other.id)
    valuations.change_valuation(session, replace(worth, amount=1))
    valuations.change_comparable(session, replace(other, note="red"))
    assert valuations.valuations(session)[0].amount == 1
    assert valuations.comparables(session)[0].note == "red"
    valuations.remove_valuation(session, worth.id)
    valuations.remove_comparable(session, other.id)
    assert valuations.valuations(session) == valuations.comparables(session) == ()
    history.undo(session)
    assert valuations.comparables(session)[0].note == "red"


def test_a_worth_without_a_name_or_beyond_reason_is_refused(session: Session) -> None:
    for worth in (replace(WORTH, valuer=" "), replace(WORTH, amount=-1)):
        with pytest.raises(JournalError, match="valuation"):
            valuations.record_valuation(session, worth)
    for other in (replace(OTHER, text=""), replace(OTHER, currency="eur")):
        with pytest.raises(JournalError):
            valuations.record_comparable(session, other)
