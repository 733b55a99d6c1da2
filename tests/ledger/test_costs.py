from dataclasses import astuple, replace
from decimal import Decimal
from typing import Any, cast

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.costs import (
    COSTS_BY,
    DIFFERENCE,
    HOURS,
    NO_DATE,
    NO_SUPPLIER,
    NOT_SHARED,
    CostRow,
    CostsBy,
    CostTable,
)
from journal.domain.errors import JournalError
from journal.domain.ids import ReceiptId
from journal.domain.money import to_currency
from journal.domain.receipts import Category, Condition, Paper, Receipt, Spread
from journal.ledger.books import Books, line_amounts
from journal.ledger.costs import cost_summary, cost_table
from tests.ledger.books import (
    ARCH,
    DRIVING,
    GONE,
    LONG_AGO,
    RESTORING,
    SILL,
    any_books,
    books,
    line,
    receipt,
    receipts,
    work,
)


def money(table: CostTable) -> dict[str, int]:
    return {row.key: row.money for row in table.rows}


def test_a_line_is_shared_over_repair_areas_to_the_last_cent() -> None:
    shared = books(receipt(line(100, (SILL.id, 1), (ARCH.id, 2))))
    assert money(cost_table("area", shared)) == {"1": 33, "2": 67}


def test_rows_carry_the_names_people_read() -> None:
    table = cost_table("area", books(receipt(line(100, (SILL.id, 1)), line(50))))
    assert [(row.label, row.money) for row in table.rows] == [
        ("Sill, left", 100),
        ("not shared over repair areas", 50),
    ]


def test_what_a_removed_repair_area_had_is_no_longer_shared() -> None:
    table = cost_table("area", books(receipt(line(100, (SILL.id, 1), (GONE, 3)))))
    assert money(table) == {"1": 25, NOT_SHARED: 75}


def test_money_after_the_car_went_on_the_road_is_upkeep() -> None:
    table = cost_table(
        "category", books(receipt(line(100), when=RESTORING), receipt(line(70), when=DRIVING))
    )
    assert (table.total.restoration, table.total.upkeep) == (100, 70)
    assert (table.rows[0].restoration, table.rows[0].upkeep) == (100, 70)


def test_without_a_road_milestone_all_is_restoration() -> None:
    journal = replace(books(receipt(line(70), when=DRIVING)), milestones=())
    assert cost_table("year", journal).total.upkeep == 0


def test_categories_keep_their_own_order() -> None:
    table = cost_table(
        "category",
        books(receipt(line(1, category=Category.OTHER), line(2, category=Category.PANELS))),
    )
    assert [row.key for row in table.rows] == [Category.PANELS, Category.OTHER]


def test_years_are_in_order_and_open_starts_come_last() -> None:
    table = cost_table(
        "year",
        books(
            receipt(line(1), when=LONG_AGO),
            receipt(line(2), when=DRIVING),
            receipt(line(3), when=RESTORING),
        ),
    )
    assert money(table) == {"2019": 3, "2022": 2, NO_DATE: 1}
    assert [row.key for row in table.rows] == ["2019", "2022", NO_DATE]


def test_suppliers_are_one_whatever_their_capitals_with_the_dearest_first() -> None:
    table = cost_table(
        "supplier",
        books(
            receipt(line(10), supplier="Orla's Paints"),
            receipt(line(30), supplier="Fenwick Metal"),
            receipt(line(5), supplier=" fenwick  METAL"),
            receipt(line(90), supplier=" "),
        ),
    )
    assert [(row.key, row.money) for row in table.rows] == [
        ("Fenwick Metal", 35),
        ("Orla's Paints", 10),
        (NO_SUPPLIER, 90),
    ]


@pytest.mark.parametrize("by", COSTS_BY)
def test_a_printed_total_that_differs_stays_visible(by: CostsBy) -> None:
    table = cost_table(by, books(receipt(line(4000), printed_total=4250)))
    assert table.rows[-1].key == DIFFERENCE
    assert table.rows[-1].money == 250
    assert table.total.money == 4250


def test_a_printed_total_below_the_lines_is_a_negative_row() -> None:
    summary = cost_summary(books(receipt(line(4000), printed_total=3900, id=ReceiptId(7))))
    assert (summary.difference, summary.differing) == (-100, (ReceiptId(7),))
    assert summary.restoration == 3900
    assert summary.not_shared == 4000


def test_a_printed_total_that_agrees_makes_no_row() -> None:
    table = cost_table("category", books(receipt(line(4000), printed_total=4000)))
    assert [row.key for row in table.rows] == [Category.PANELS]
    assert cost_summary(books(receipt(line(4000)))).differing == ()


@pytest.mark.parametrize("paper", [Paper.LOST, Paper.NEVER])
def test_what_no_paper_stands_behind_is_told_apart(paper: Paper) -> None:
    table = cost_table("category", books(receipt(line(60), paper=paper), receipt(line(40))))
    assert (table.total.money, table.total.unproven) == (100, 60)
    assert cost_summary(books(receipt(line(60), paper=paper), receipt(line(40)))).unproven == 60


def test_another_currency_goes_through_the_rate_of_the_receipt() -> None:
    table = cost_table(
        "category", books(receipt(line(10000), currency="GBP", rate=Decimal("1.1734")))
    )
    assert table.total.money == 11734


def test_lines_in_another_currency_add_up_to_their_total_in_it() -> None:
    three = receipt(line(1), line(1), line(1), currency="GBP", rate=Decimal("1.5"))
    assert line_amounts(three, "EUR") == (2, 1, 2)
    assert cost_table("category", books(three)).total.money == 5  # 4.5 cents


def test_money_without_a_rate_is_named_and_stands_in_no_sum() -> None:
    yen = receipt(line(120000), currency="JPY", id=ReceiptId(4), printed_total=125000)
    summary = cost_summary(books(receipt(line(100)), yen))
    assert (summary.restoration, summary.differing) == (100, ())
    assert [astuple(missing) for missing in summary.missing_rates] == [("JPY", 125000, (4,))]


def test_used_parts_are_held_against_their_price_new() -> None:
    summary = cost_summary(
        books(
            receipt(
                line(3000, condition=Condition.USED, new_price=12000),
                line(5000, condition=Condition.RECONDITIONED, new_price=4000),
                line(900, condition=Condition.NEW, new_price=1000),
                line(800, condition=Condition.USED),
            )
        )
    )
    assert (summary.saved_against_new, summary.saved_on, summary.saved_lines) == (8000, 8000, 2)


def test_hours_stand_beside_the_money_and_are_never_added_to_it() -> None:
    journal = books(
        receipt(line(100, (SILL.id, 1))), work=(work(90, (SILL.id, 2), (ARCH.id, 1)), work(30))
    )
    by_area = {row.key: (row.money, row.minutes) for row in cost_table("area", journal).rows}
    assert by_area == {"1": (100, 60), "2": (0, 30), NOT_SHARED: (0, 30)}
    by_category = {row.key: row.minutes for row in cost_table("category", journal).rows}
    assert by_category == {Category.PANELS: 0, HOURS: 120}


def test_the_summary_counts_hours_by_person_and_side_of_the_road() -> None:
    summary = cost_summary(
        books(
            work=(
                work(90),
                work(60, (SILL.id, 1), person="Bo"),
                work(45, when=DRIVING, person="ada"),
            )
        )
    )
    assert (summary.restoration_minutes, summary.upkeep_minutes) == (150, 45)
    assert [(row.label, row.minutes) for row in summary.people] == [("Ada", 135), ("Bo", 60)]
    assert (summary.minutes, summary.not_shared_minutes) == (195, 135)


def test_an_empty_journal_costs_nothing() -> None:
    table = cost_table("area", books())
    assert table.rows == ()
    assert table.total == CostRow("", "total", 0, 0, 0, 0)
    assert cost_summary(books()).money == 0


def test_costs_by_anything_else_are_refused_in_words() -> None:
    with pytest.raises(JournalError, match="by “moon”"):
        cost_table(cast(Any, "moon"), books())


@given(any_books, st.sampled_from(COSTS_BY))
def test_every_table_adds_up_to_its_total(journal: Books, by: CostsBy) -> None:
    table = cost_table(by, journal)
    assert sum(row.restoration for row in table.rows) == table.total.restoration
    assert sum(row.upkeep for row in table.rows) == table.total.upkeep
    assert sum(row.minutes for row in table.rows) == table.total.minutes
    assert sum(row.unproven for row in table.rows) == table.total.unproven


@given(any_books)
def test_the_total_is_the_same_whatever_it_is_laid_out_by(journal: Books) -> None:
    assert len({cost_table(by, journal).total for by in COSTS_BY}) == 1


def paid_in_euros(one: Receipt) -> int:
    paid = one.lines_total if one.printed_total is None else one.printed_total
    if one.currency == "EUR":
        return paid
    return 0 if one.rate == 1 else to_currency(paid, one.currency, one.rate, "EUR")


@given(any_books)
def test_the_total_is_what_the_receipts_say_was_paid(journal: Books) -> None:
    paid = sum(paid_in_euros(one) for one in journal.receipts)
    assert cost_table("category", journal).total.money == paid


@given(any_books)
def test_the_summary_agrees_with_the_tables(journal: Books) -> None:
    summary = cost_summary(journal)
    total = cost_table("area", journal).total
    assert (summary.restoration, summary.upkeep) == (total.restoration, total.upkeep)
    assert (summary.minutes, summary.unproven) == (total.minutes, total.unproven)
    by_area = {row.key: row for row in cost_table("area", journal).rows}
    unshared = by_area.get(NOT_SHARED)
    assert summary.not_shared == (unshared.money if unshared else 0)
    assert summary.not_shared_minutes == (unshared.minutes if unshared else 0)
    differences = by_area.get(DIFFERENCE)
    assert summary.difference == (differences.money if differences else 0)


@given(receipts.filter(lambda one: one.currency != "EUR"))
def test_no_line_is_more_than_a_unit_away_from_its_own_worth(one: Receipt) -> None:
    amounts = line_amounts(one, "EUR")
    assert sum(amounts) == to_currency(one.lines_total, one.currency, one.rate, "EUR")
    for amount, each in zip(amounts, one.lines, strict=True):
        assert abs(amount - to_currency(each.amount, one.currency, one.rate, "EUR")) <= 1


def test_postage_goes_where_the_parts_went_to_the_last_cent() -> None:
    parts = line(3000, (SILL.id, 1)), line(6000, (ARCH.id, 1)), line(1000)
    for spread, expected in ((Spread.VALUE, (300, 600, 100)), (Spread.COUNT, (334, 333, 333))):
        postage = line(1000, category=Category.FEES, spread=spread)
        table = cost_table("area", books(receipt(*parts, postage)))
        money = {row.label: row.money for row in table.rows}
        assert (money[SILL.name] - 3000, money[ARCH.name] - 6000) == expected[:2]
        assert table.total.money == 11000
        by_category = cost_table("category", books(receipt(*parts, postage)))
        assert {row.key: row.money for row in by_category.rows}[Category.FEES.value] == 1000


def test_a_discount_on_nothing_else_stays_by_itself() -> None:
    alone = line(-500, (SILL.id, 1), spread=Spread.VALUE)
    assert cost_table("area", books(receipt(alone))).total.money == -500
