"""Every figure opens the lines it is made of, and they add up to it again."""

from dataclasses import replace
from typing import Any, cast

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.costs import (
    COSTS_BY,
    HOURS,
    MONEY,
    NO_PANEL,
    NOT_SHARED,
    CostsBy,
)
from journal.domain.errors import JournalError
from journal.domain.ids import LineId, ReceiptId
from journal.domain.made_of import FIGURES
from journal.domain.receipts import Condition
from journal.ledger.books import Books
from journal.ledger.costs import cost_summary, cost_table
from journal.ledger.hour_sums import sum_hours
from journal.ledger.making import made_of_figure, made_of_row
from journal.ledger.pieces import taken_apart
from tests.ledger.books import (
    ARCH,
    DRIVING,
    FLOOR,
    RESTORING,
    SILL,
    any_books,
    books,
    line,
    receipt,
    work,
)


@given(any_books, st.sampled_from(COSTS_BY))
def test_what_a_row_is_made_of_adds_up_to_it(journal: Books, by: CostsBy) -> None:
    account = taken_apart(journal)
    for row in cost_table(by, account).rows:
        made = made_of_row(by, row.key, account)
        assert (made.total, made.minutes) == (row.money, row.minutes)
        assert sum(p.money for p in made.money if p.upkeep) == row.upkeep
        assert sum(p.money for p in made.money if p.unproven) == row.unproven


@given(any_books, st.sampled_from(COSTS_BY))
def test_rows_together_are_made_of_everything(journal: Books, by: CostsBy) -> None:
    account = taken_apart(journal)
    made = [made_of_row(by, row.key, account) for row in cost_table(by, account).rows]
    everything = made_of_figure("money", account).total
    assert sum(one.total for one in made) == everything
    assert sum(one.minutes for one in made) == made_of_figure("hours", account).minutes


@given(any_books)
def test_what_a_figure_is_made_of_adds_up_to_it(journal: Books) -> None:
    account, summary = taken_apart(journal), cost_summary(journal)
    figures = {
        "money": summary.money,
        "restoration": summary.restoration,
        "upkeep": summary.upkeep,
        "proven": summary.money - summary.unproven,
        "unproven": summary.unproven,
        "not shared": summary.not_shared,
        "difference": summary.difference,
        "saved": summary.saved_against_new,
        "saved on": summary.saved_on,
        "hours": summary.minutes,
        "restoration hours": summary.restoration_minutes,
        "upkeep hours": summary.upkeep_minutes,
        "not shared hours": summary.not_shared_minutes,
    }
    assert set(figures) == set(FIGURES)
    for figure in FIGURES:
        made = made_of_figure(figure, account)
        assert made.total + made.minutes == figures[figure]


def test_a_piece_names_its_line() -> None:
    bought = line(101, (ARCH.id, 1), id=LineId(7), text="Arch, pressed")
    account = taken_apart(books(receipt(bought, id=ReceiptId(3))))
    made = made_of_row("area", str(ARCH.id), account)
    assert [(p.receipt_id, p.line_id, p.text, p.money) for p in made.money] == [
        (3, 7, "Arch, pressed", 101)
    ]


def test_an_areas_money_goes_to_its_panels_to_the_last_cent_and_the_rest_stays_apart() -> None:
    journal = books(
        receipt(line(100, (ARCH.id, 1)), line(7, (SILL.id, 1)), line(5, (FLOOR.id, 1)), line(3)),
        work=(work(100, (ARCH.id, 1)),),
    )
    table = cost_table("panel", journal)
    assert [(row.key, row.label, row.money, row.minutes) for row in table.rows] == [
        ("1", "Sill, left", 34 + 7, 34),
        ("2", "Wheel arch, left", 33, 33),
        ("3", "Rear wing, left", 33, 33),
        (NO_PANEL, "repair areas on no panel", 5, 0),
        (NOT_SHARED, "not shared over repair areas", 3, 0),
    ]


def test_many_small_lines_favour_no_panel() -> None:
    # Each cent by itself would go to the first panel.
    account = taken_apart(books(receipt(*(line(1, (ARCH.id, 1)) for _ in range(30)))))
    assert [row.money for row in cost_table("panel", account).rows] == [10, 10, 10]
    assert made_of_row("panel", "3", account).total == 10


@given(any_books)
def test_a_panel_has_the_same_hours_whatever_table_tells_them(journal: Books) -> None:
    of_costs = {row.key: row.minutes for row in cost_table("panel", journal).rows}
    of_hours = {row.key: row.minutes for row in sum_hours("panel", journal).rows}
    for key in ("1", "2", "3"):
        assert of_costs.get(key, 0) == of_hours.get(key, 0)


def test_by_person_there_are_hours_and_the_money_is_nobodys() -> None:
    journal = books(receipt(line(100)), work=(work(90), work(30, person="Bo")))
    rows = cost_table("person", journal).rows
    assert [(r.key, r.money, r.minutes) for r in rows] == [
        ("Ada", 0, 90), ("Bo", 0, 30), (MONEY, 100, 0),
    ]  # fmt: skip


def test_by_condition_hours_stand_by_themselves() -> None:
    journal = books(
        receipt(line(70, condition=Condition.USED), line(30, condition=Condition.NEW)),
        work=(work(90),),
    )
    rows = cost_table("condition", journal).rows
    assert [(r.key, r.money) for r in rows] == [("new", 30), ("used", 70), (HOURS, 0)]


def test_a_refund_takes_its_money_back_from_where_it_went() -> None:
    bought = receipt(line(5000, (SILL.id, 1), (ARCH.id, 2)), id=ReceiptId(1))
    back = receipt(line(-5000, (SILL.id, 1), (ARCH.id, 2)), id=ReceiptId(2), refund_of=ReceiptId(1))
    journal = books(bought, back)
    for by in COSTS_BY:
        table = cost_table(by, journal)
        assert table.total.money == 0
        assert all(row.money == 0 for row in table.rows)
    made = made_of_row("area", str(SILL.id), taken_apart(journal))
    assert [piece.money for piece in made.money] == [1667, -1667]


def test_a_refund_after_the_road_takes_back_from_the_restoration() -> None:
    bought = receipt(line(5000), id=ReceiptId(1), when=RESTORING)
    back = receipt(line(-2000), id=ReceiptId(2), refund_of=ReceiptId(1), when=DRIVING)
    total = cost_table("phase", books(bought, back)).total
    assert (total.restoration, total.upkeep) == (3000, 0)
    assert [row.money for row in cost_table("phase", books(bought, back)).rows] == [3000]
    assert [row.money for row in cost_table("year", books(bought, back)).rows] == [5000, -2000]
    # Of a purchase that isn't in the journal nothing is known but the refund's own day.
    assert cost_table("phase", books(back)).total.upkeep == -2000


def test_what_was_saved_on_a_part_given_back_is_saved_no_more() -> None:
    bought = receipt(line(3000, condition=Condition.USED, new_price=12000), id=ReceiptId(1))
    back = receipt(line(-3000, condition=Condition.USED, new_price=12000), refund_of=ReceiptId(1))
    summary = cost_summary(books(bought, back))
    assert (summary.saved_against_new, summary.saved_on) == (0, 0)


def test_a_refund_in_another_currency_comes_to_what_the_purchase_came_to() -> None:
    from decimal import Decimal

    bought = receipt(line(333, (ARCH.id, 1)), currency="GBP", rate=Decimal("1.15"))
    back = replace(bought, lines=(line(-333, (ARCH.id, 1)),), id=ReceiptId(2), refund_of=bought.id)
    assert cost_table("panel", books(bought, back)).total.money == 0


def test_what_is_no_figure_is_refused_in_words() -> None:
    account = taken_apart(books())
    with pytest.raises(JournalError, match="no figure “moon”"):
        made_of_figure(cast(Any, "moon"), account)
    with pytest.raises(JournalError, match="by “moon”"):
        made_of_row(cast(Any, "moon"), "1", account)
    assert made_of_row("area", "12345", account).total == 0
