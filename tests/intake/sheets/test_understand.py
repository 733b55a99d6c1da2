"""Rows understood, or refused one by one with the reason."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, time, timedelta
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from iso4217 import Currency

from journal.domain.errors import JournalError
from journal.domain.receipts import Category, Condition, Paper
from journal.domain.sheet_rows import (
    BadCell,
    Cell,
    Choices,
    Decimals,
    Grid,
    Known,
    Role,
    Understood,
)
from journal.intake.sheets.book import Book
from journal.intake.sheets.columns import propose
from journal.intake.sheets.understand import understand
from tests.intake.sheets.drawn import grid, messy

TODAY = date(2026, 1, 31)
EUR = Known("EUR")


def read(*rows: Sequence[Any], known: Known = EUR, **said: Any) -> Understood:
    sheet = grid(*rows)
    choices = replace(propose(sheet, known).choices, **said)
    return understand(sheet, choices, TODAY)


def reasons(found: Understood) -> dict[int, str]:
    return {told.row: told.reason for told in found.refused}


# Rows


def test_a_messy_list_comes_in_as_far_as_it_can(tmp_path: Path) -> None:
    sheet = Book(messy(tmp_path / "old.xlsx")).grid("Costs")
    choices = replace(propose(sheet, EUR).choices, decimals=Decimals.BOTH)
    found = understand(sheet, choices, TODAY)
    assert [(row.row, row.amount, row.currency) for row in found.rows] == [
        (5, 14_990, "EUR"), (6, 3_700, "EUR"), (7, 109_050, "EUR"), (10, 2_450, "EUR"),
        (13, -1_200, "EUR"), (15, 1_800, "GBP"),
    ]  # fmt: skip
    assert found.rows[1].supplier == "Brandt Panels"
    assert found.rows[2].condition is Condition.USED
    assert found.rows[0].paper is Paper.HELD
    assert found.rows[3].paper is Paper.LOST
    assert reasons(found) == {
        11: "the amount is “#REF!”",
        12: "“some day in May” is no date",
        14: "the amount: “1.250” can be read in two ways",
    }
    assert {told.row: told.reason for told in found.left_out} == {
        9: "“2017” alone",
        16: "a total (“TOTAL”)",
    }


@pytest.mark.parametrize(
    ("total", "said"),
    [
        (("Total", 15), "the rows above come to it"),
        (("Summe:", 20), "the rows above come to €15.00"),
        ((None, 15), "the sum of the 2 rows above"),
        (("Grand total", None), "a total"),
    ],
)
def test_a_total_is_left_out_and_compared(total: Sequence[Any], said: str) -> None:
    rows = [("Date", "Item", "Cost"), ("2016-03-05", "a b", 5), ("2016-03-06", "c d", 10)]
    found = read(*rows, (None, *total))
    assert len(found.rows) == 2
    assert not found.refused
    assert said in found.left_out[0].reason


def test_subtotals_are_compared_with_their_own_rows() -> None:
    rows = [("Date", "Item", "Cost"), ("Body", None, None), ("2016-03-05", "a b", 5)]
    rows += [("2016-03-06", "c d", 10), ("Subtotal body", None, 15), ("2016-03-07", "e f", 20)]
    rows += [("Subtotal engine", None, 20), ("TOTAL", None, 35)]
    found = read(*rows)
    assert [row.amount for row in found.rows] == [500, 1_000, 2_000]
    assert not found.refused
    agreeing = [told.row for told in found.left_out if "come to it" in told.reason]
    assert agreeing == [5, 7, 8]


def test_a_supplier_called_total_is_no_total() -> None:
    found = read(("Date", "Shop", "Cost"), ("2016-03-05", "Total Garage", 5))
    assert found.rows[0].supplier == "Total Garage"


def test_dates_kept_once_for_several_rows_are_filled_down() -> None:
    rows = [("Date", "Shop", "Item", "Cost")]
    rows += [("2016-03-05", "Brandt", "a b", "5")] + [("", "", "c d", "6")] * 3  # type: ignore[list-item]
    sheet = Grid("x", tuple(tuple(cell or None for cell in row) for row in rows))
    found = propose(sheet, EUR)
    assert found.choices.fill_down
    read_rows = understand(sheet, found.choices, TODAY).rows
    assert {(row.when.edtf, row.supplier) for row in read_rows} == {("2016-03-05", "Brandt")}
    refused = understand(sheet, replace(found.choices, fill_down=False), TODAY).refused
    assert [told.reason for told in refused] == ["there is no date"] * 3


def test_ditto_marks_are_the_row_above() -> None:
    found = read(("Date", "Shop", "Cost"), ("2016-03-05", "Brandt", 5), ('"', "ditto", 6))
    assert found.rows[1].supplier == "Brandt"


@pytest.mark.parametrize(
    ("cells", "words"),
    [
        (("2016-03-05", None), "there is no amount"),
        ((None, 5), "there is no date"),
        (("2016-03-05", "five"), "“five” is no sum of money"),
        (("2016-03-05", 1e20), "too large a sum"),
        (("2016-03-05", "12.345 €"), "more decimal places"),
        (("2016-03-05", "12.50 XYZ"), "code of no currency"),
        (("2016-03-05", "12.50 kr"), "several currencies"),
        (("2016-03-05", BadCell("#N/A")), "#N/A"),
        (("2016-03-05", True), "no sum of money"),
    ],
)
def test_a_row_that_can_not_be_read_says_why_and_the_rest_goes_on(
    cells: Sequence[Any], words: str
) -> None:
    rows = [("Date", "Cost", "Item"), ("2016-03-05", "5.00", "a b")]
    found = read(*rows, (*cells, "c d"), ("2016-03-07", "7.00", "e f"), decimals=Decimals.POINT)
    assert [row.amount for row in found.rows] == [500, 700]
    assert words in found.refused[0].reason
    assert found.refused[0].row == 3


def test_parts_of_a_cent_that_a_formula_left_are_rounded_and_told() -> None:
    found = read(("Date", "Cost"), ("2016-03-05", 12.345), ("2016-03-06", -12.345))
    assert [row.amount for row in found.rows] == [1_235, -1_235]
    assert "2 rows parts of the smallest coin were rounded" in found.remarks[0]


@pytest.mark.parametrize("code", [one.code for one in Currency])
def test_every_currency_of_iso_4217_has_its_own_places(code: str) -> None:
    """ISO 4217 as the package iso4217 carries it; codes that are no money are refused."""
    found = read(("Date", "Cost", "Currency"), ("2016-03-05", 12, code))
    places = Currency(code).exponent
    if found.refused:
        assert "currency" in found.refused[0].reason
        assert places is None or code.startswith("X")
    else:
        assert places is not None
        assert found.rows[0].amount == 12 * 10**places


def test_signs_name_the_currency_of_their_row() -> None:
    rows = [("2016-03-05", text) for text in ("£5.00", "5.00 EUR", "$5.00", "CHF 5.00", "5.00")]
    found = read(("Date", "Cost"), *rows)
    assert [row.currency for row in found.rows] == ["GBP", "EUR", "USD", "CHF", "EUR"]


def test_money_out_and_in_of_a_bank() -> None:
    rows = [("Booking date", "Payee", "Money out", "Money in", "Balance")]
    rows += [("2016-03-05", "Brandt", 12.5, None, 1)]  # type: ignore[list-item]
    rows += [("2016-03-06", "Employer", None, 900, 1)]  # type: ignore[list-item]
    rows += [("2016-03-07", "Odd", 1, 2, 1)]  # type: ignore[list-item]
    found = read(*rows)
    assert [row.amount for row in found.rows] == [1_250, -90_000]
    assert "both filled" in found.refused[0].reason


def test_a_column_of_money_out_with_minus_signs_alone_is_turned_as_a_whole() -> None:
    def debits(*amounts: int) -> list[int | None]:
        rows = [("2016-03-05", f"line {amount}", amount) for amount in amounts]
        return [row.amount for row in read(("Date", "Payee", "Debit"), *rows).rows]

    assert debits(-5, -6) == [500, 600]
    assert debits(5, -6) == [500, -600]


def test_a_price_each_is_multiplied_and_quantities_are_read() -> None:
    rows = [
        ("Date", "Item", "Each", "Qty"),
        ("2016-03-05", "a b", 4.5, "3 pcs"),
        ("2016-03-06", "b c", 2, 0.5),
    ]
    found = read(*rows)
    assert [(row.amount, row.quantity) for row in found.rows] == [
        (1_350, Decimal(3)), (100, Decimal("0.5")),
    ]  # fmt: skip
    odd = read(*rows[:1], ("2016-03-05", "a b", 4.5, "some"), ("2016-03-05", "a b", 4.5, -2))
    assert ["quantity" in told.reason for told in odd.refused] == [True, True]


@pytest.mark.parametrize(
    ("cell", "minutes"),
    [(3.5, 210), ("3:30", 210), ("2h 15", 135), (time(3, 30), 210), (timedelta(hours=5), 300)],
)
def test_times_worked_are_read(cell: Any, minutes: int) -> None:
    rows = [("Date", "Who", "Hours"), ("2016-03-05", "Nils", cell), ("2016-03-06", "Nils", 2)]
    found = read(*rows)
    assert found.rows[0].minutes == minutes
    assert found.rows[0].amount is None


def test_hours_without_a_person_or_beyond_a_day_are_refused() -> None:
    found = read(("Date", "Hours", "Who"), ("2016-03-05", 3, None), ("2016-03-06", 30, "Nils"))
    assert reasons(found)[2] == "nobody is named who worked"
    assert "no time worked on one day" in reasons(found)[3]
    assert read(("Date", "Hours"), ("2016-03-05", 3), person="Edo").rows[0].person == "Edo"


def test_kinds_are_read_and_unknown_ones_told() -> None:
    rows = [("Date", "Cost", "Category"), ("2016-03-05", 1, "Werkzeug"), ("2016-03-05", 1, "paint")]
    found = read(*rows, ("2016-03-05", 1, "surprise"))
    assert [r.category for r in found.rows] == [Category.TOOLS, Category.PAINT, Category.OTHER]
    assert "“surprise”" in found.remarks[0]


def test_texts_disarmed_on_the_way_out_come_in_as_they_were() -> None:
    found = read(
        ("Date", "Shop", "Cost"), ("2016-03-05", "'=cmd", 1), ("2016-03-05", "'s Hertog", 1)
    )
    assert [row.supplier for row in found.rows] == ["=cmd", "'s Hertog"]


@pytest.mark.parametrize(
    ("said", "words"),
    [
        ((Role.LEAVE_OUT, Role.AMOUNT, Role.NOTE), "No column is the date"),
        ((Role.DATE, Role.NOTE, Role.NOTE), "No column is the amount or the hours"),
        ((Role.DATE, Role.AMOUNT, Role.EACH), "one amount"),
    ],
)
def test_a_sheet_without_what_is_needed_is_refused_in_a_sentence(
    said: tuple[Role, ...], words: str
) -> None:
    with pytest.raises(JournalError, match=words):
        understand(grid(("2016-03-05", 1, 2)), Choices(0, said), TODAY)


_CELLS = st.one_of(
    st.none(), st.booleans(), st.text(max_size=20), st.dates(), st.times(),
    st.decimals(allow_nan=False, allow_infinity=False), st.timedeltas(), st.just(BadCell("#REF!")),
    st.sampled_from(["Date", "Amount", "Total", "1.234", "12,50", "03/04/2016", "EUR", "yes"]),
)  # fmt: skip


@settings(deadline=None)
@given(
    st.lists(st.lists(_CELLS, max_size=6).map(tuple), min_size=1, max_size=8),
    st.lists(st.sampled_from(list(Role)), min_size=6, max_size=6),
    st.sampled_from(list(Decimals)),
)
def test_any_cells_are_understood_or_told_row_by_row(
    rows: list[tuple[Cell, ...]], given_roles: list[Role], decimals: Decimals
) -> None:
    sheet = Grid("x", tuple(rows))
    proposed = propose(sheet, EUR).choices
    for choices in (proposed, replace(proposed, roles=tuple(given_roles), decimals=decimals)):
        try:
            found = understand(sheet, choices, TODAY)
        except JournalError:
            continue
        numbers = [told.row for told in (*found.rows, *found.refused, *found.left_out)]
        assert len(numbers) == len(set(numbers))
