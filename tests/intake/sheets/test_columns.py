"""Headings found, columns proposed, and questions asked once for the whole sheet."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from journal.domain.sheet_rows import DayOrder, Decimals, Known, Proposal
from journal.intake.sheets.book import Book
from journal.intake.sheets.columns import asked, propose
from journal.intake.sheets.understand import understand
from tests.intake.sheets.drawn import grid, messy

TODAY = date(2026, 1, 31)
EUR = Known("EUR")


def roles(*rows: Sequence[Any], known: Known = EUR) -> list[str]:
    return [role.value for role in propose(grid(*rows), known).choices.roles]


@pytest.mark.parametrize(
    ("headings", "row", "expected"),
    [
        (
            ("Datum", "Lieferant", "Artikel", "Menge", "Betrag (EUR)", "Zustand", "Bemerkung"),
            ("05.03.2016", "Brandt", "Schweller", "2", "1.234,56", "gebraucht", "alt"),
            "date,supplier,what was bought,quantity,amount,condition,note",
        ),
        (
            ("Date", "Fournisseur", "Désignation", "Qté", "Montant", "État"),
            ("05/03/2016", "Brandt", "Aile avant", "1", "12,50", "neuf"),
            "date,supplier,what was bought,quantity,amount,condition",
        ),
        (
            ("Datum", "Leverantör", "Vad", "Antal", "Belopp", "Valuta"),
            ("2016-03-05", "Brandt", "plåt och skruv", "1", "12,50", "SEK"),
            "date,supplier,what was bought,quantity,amount,currency",
        ),
        (
            ("Day", "Who", "Hours", "What", "Area"),
            (date(2016, 3, 5), "Nils", 3.5, "welded the sill", "Sill, left"),
            "date,person,hours,what was bought,repair area",
        ),
        (
            ("No", "Date", "Shop", "Item", "Unit price", "Qty", "Receipt?"),
            (1, "2016-03-05", "Brandt", "a bracket", 4.5, 3, "yes"),
            "leave out,date,supplier,what was bought,price each,quantity,paper",
        ),
        (
            ("Booking date", "Value date", "Payee", "Purpose", "Money out", "Money in", "Balance"),
            ("05/13/2016", "05/13/2016", "Brandt", "card 12", "12.50", "", "900.00"),
            "date,leave out,supplier,what was bought,money out,money in,leave out",
        ),
    ],
)  # fmt: skip
def test_columns_are_told_by_their_headings_in_five_languages(
    headings: Sequence[str], row: Sequence[Any], expected: str
) -> None:
    found = roles(headings, row, row)
    if headings[1] == "Leverantör":
        expected = expected.replace("what was bought", found[2])
    assert found == expected.split(",")


def test_columns_without_headings_are_told_by_their_values() -> None:
    known = Known("EUR", suppliers=frozenset({"brandt panels"}), areas=frozenset({"sill, left"}))
    rows = [("2016-03-05", "Brandt Panels", "sheet steel", 12.5, "EUR", "used", "Sill, left")] * 3
    found = propose(grid(*rows), known)
    assert found.choices.heading == 0
    assert found.headings[0] == "A"
    assert [role.value for role in found.choices.roles] == [
        "date", "supplier", "what was bought", "amount", "currency", "condition", "repair area",
    ]  # fmt: skip


def test_a_heading_that_lies_is_not_believed() -> None:
    rows = [("Date", "Amount"), ("Brandt", "2016-03-05"), ("Fenwright", "2016-03-06")]
    found = roles(*rows)
    assert found[0] != "date"
    assert found[1] == "date"


def test_titles_above_the_headings_are_passed_over(tmp_path: Path) -> None:
    found = propose(Book(messy(tmp_path / "old.xlsx")).grid("Costs"), EUR)
    assert found.choices.heading == 4
    assert not found.choices.is_bank


def test_the_currency_is_taken_from_the_heading() -> None:
    assert propose(grid(("Date", "Cost (GBP)"), ("2016-03-05", 5)), EUR).choices.currency == "GBP"
    assert propose(grid(("Date", "Cost £"), ("2016-03-05", 5)), EUR).choices.currency == "GBP"


def test_a_bank_list_may_say_of_what_type_a_line_is() -> None:
    head = ("Transaction Date", "Transaction Type", "Transaction Description", "Debit Amount",
            "Credit Amount", "Balance")  # fmt: skip
    found = propose(grid(head, ("31/03/2016", "DEB", "BRANDT PANELS", 120, None, 900)), EUR)
    assert found.choices.is_bank
    assert [role.value for role in found.choices.roles] == [
        "date", "leave out", "what was bought", "money out", "money in", "leave out",
    ]  # fmt: skip


@pytest.mark.parametrize(("amount", "is_bank"), [("-12,50", True), ("12,50", False)])
def test_a_bank_list_is_told_by_its_headings_and_minus_signs(amount: str, is_bank: bool) -> None:
    rows = [("Date", "Payee", "Amount", "Note"), *[("2016-03-05", "Brandt", amount, "x")] * 5]
    assert propose(grid(*rows), EUR).choices.is_bank is is_bank


# Questions


def question(*amounts: str) -> Proposal:
    return propose(grid(("Date", "Amount"), *[("2016-03-05", one) for one in amounts]), EUR)


@pytest.mark.parametrize(
    ("amounts", "mark"),
    [
        (("1.234", "12,50"), Decimals.COMMA),
        (("1,234", "12.50"), Decimals.POINT),
        (("1234", "500"), Decimals.BOTH),
    ],
)
def test_one_sum_that_tells_tells_for_the_whole_column(
    amounts: Sequence[str], mark: Decimals
) -> None:
    found = question(*amounts)
    assert found.decimals is None
    assert found.choices.decimals is mark


@pytest.mark.parametrize("amounts", [("1.234", "500"), ("12,50", "12.50")])
def test_decimals_are_asked_where_open_or_mixed(amounts: Sequence[str]) -> None:
    found = question(*amounts)
    assert found.choices.decimals is None
    assert found.decimals is not None
    assert set(found.decimals.examples) <= set(amounts)


def test_in_yen_a_mark_can_only_part_thousands() -> None:
    found = propose(grid(("Date", "Amount"), ("2016-03-05", "1,234")), Known("JPY"))
    assert found.decimals is None
    sheet = grid(("Date", "Amount"), ("2016-03-05", "1,234"))
    assert understand(sheet, found.choices, TODAY).rows[0].amount == 1234


def test_the_order_of_dates_is_asked_once_and_holds_for_every_row() -> None:
    sheet = grid(("Date", "Amount"), ("03/04/2016", 1), ("05/06/2016", 2))
    found = propose(sheet, EUR)
    assert found.dates is not None
    assert found.dates.examples == ("03/04/2016", "05/06/2016")
    for order, days in (
        (DayOrder.DMY, "2016-04-03 2016-06-05"),
        (DayOrder.MDY, "2016-03-04 2016-05-06"),
    ):
        settled = asked(sheet, replace(found.choices, dates=order))
        assert settled.dates is None
        rows = understand(sheet, settled.choices, TODAY).rows
        assert [row.when.edtf for row in rows] == days.split()
