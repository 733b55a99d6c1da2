"""The record as tables: whole, exact, and harmless to open."""

import csv
import io
import json
from dataclasses import replace
from decimal import Decimal

import openpyxl
import pytest

from journal.domain.car import Car
from journal.domain.drawing import Drawing
from journal.domain.ids import ComparableId, PriceIndexId, ValuationId
from journal.domain.price_index import PriceIndex
from journal.domain.privacy import redact
from journal.domain.private_words import Private
from journal.domain.receipts import Receipt
from journal.domain.record import Record
from journal.domain.valuations import Comparable, Valuation
from journal.ledger.sheets import Sheet, as_csv, as_json, as_xlsx, sheets
from tests.dossier.records import finished_record
from tests.ledger.books import ARCH, ON_THE_ROAD, RESTORING, SILL, line, receipt, work


def record(*receipts: Receipt) -> Record:
    return Record(
        Car("Rook"), (ON_THE_ROAD,), Drawing((), (), ()), (), (), (), (SILL, ARCH), (), (),
        receipts, (work(90, (SILL.id, 1)),),
    )  # fmt: skip


def table(name: str, *receipts: Receipt) -> Sheet:
    return next(sheet for sheet in sheets(record(*receipts)) if sheet.name == name)


def test_money_has_the_places_of_its_currency() -> None:
    yen = receipt(line(1250), currency="JPY")
    dinar = receipt(line(1250), currency="KWD")
    amounts = [row[6] for row in table("lines", receipt(line(1250)), yen, dinar).rows]
    assert amounts == [Decimal("12.50"), Decimal(1250), Decimal("1.250")]


def test_shares_are_named_with_their_weights() -> None:
    rows = table("lines", receipt(line(100, (SILL.id, 1), (ARCH.id, 3)))).rows
    assert rows[0][-1] == f"{SILL.name}; {ARCH.name} × 3"


@pytest.mark.parametrize("text", ["=1+1", "+49 30 1234", "-x", "@cmd", "\tx", "\r=1"])
def test_a_formula_in_a_csv_is_disarmed_and_a_number_is_not(text: str) -> None:
    data = as_csv(Sheet("x", ("a", "b"), ((text, Decimal("-5.00")),)))
    rows = list(csv.reader(io.StringIO(data.decode("utf-8-sig"), newline="")))
    assert rows[1] == ["'" + text, "-5.00"]


def test_a_workbook_opens_with_texts_as_texts() -> None:
    evil = receipt(line(-500, text='=HYPERLINK("http://example.invalid")'), supplier="A\x00B")
    book = openpyxl.load_workbook(io.BytesIO(as_xlsx(sheets(record(evil)))))
    assert book.sheetnames == [sheet.name for sheet in sheets(record())]
    page = book["lines"]
    assert page["E2"].value == '=HYPERLINK("http://example.invalid")'
    assert page["E2"].data_type == "s"
    assert page["G2"].value == -5
    assert book["receipts"]["C2"].value == "A\ufffdB"


def test_json_is_exact() -> None:
    tables = sheets(record(receipt(line(1250), rate=Decimal("1.0850"), currency="GBP")))
    document = json.loads(as_json(tables))
    assert document["receipts"][0]["rate"] == "1.0850"
    assert document["lines"][0]["amount"] == "12.50"
    assert document["work"][0]["minutes"] == 90
    assert document["milestones"][0]["kind"] == "on the road"


def test_every_row_is_as_long_as_its_headings() -> None:
    for sheet in sheets(record(receipt(line(1)), replace(receipt(line(2)), tax=3))):
        assert all(len(row) == len(sheet.headings) for row in sheet.rows)


def test_valuations_comparables_and_price_indices_go_out_too() -> None:
    worth = Valuation(ValuationId(1), RESTORING, 1_850_000, "M. Sandvik")
    other = Comparable(ComparableId(1), RESTORING, "A saloon", 1500, "JPY")
    values = {"2016": Decimal("100.0"), "2016-07": Decimal("101.25")}
    index = PriceIndex(PriceIndexId(1), "Made-up", "EUR", "made up", values, chosen=True)
    whole = replace(record(), valuations=(worth,), comparables=(other,), price_indices=(index,))
    document = json.loads(as_json(sheets(whole)))
    assert document["valuations"][0]["amount"] == "18500.00"
    assert document["comparables"][0]["price"] == "1500"
    assert [(row["period"], row["value"]) for row in document["price indices"]] == [
        ("2016", "100.0"), ("2016-07", "101.25"),
    ]  # fmt: skip


def test_without_prices_no_cell_is_a_sum_and_claims_are_a_table() -> None:
    whole = finished_record()
    given = redact(whole, {Private.PRICES}, ()).record
    tables = {sheet.name: sheet for sheet in sheets(given)}
    for name in ("receipts", "lines"):
        for row in tables[name].rows:
            cells = dict(zip(tables[name].headings, row, strict=True))
            assert not {cells.get("amount"), cells.get("lines total")} - {None}
            assert cells["currency"] == "EUR"
    claims = tables["claims"]
    assert [row[claims.headings.index("claim")] for row in claims.rows] == [
        "found", "welded", "finished",
    ]  # fmt: skip
    camera = claims.headings.index("photo dated by its camera")
    assert [row[camera] for row in claims.rows] == [1, 1, 0]
