"""Rows made into receipts, hours and bank lines; known again, and matched with what is there."""

from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from journal.domain.ids import AreaId, LineId, ReceiptId, WorkId
from journal.domain.receipts import Category, Condition, Line, Paper, Receipt, Share
from journal.domain.sheet_items import Fate, Item, Source, fingerprints, receipt_items, work_items
from journal.domain.sheet_matches import (
    already_there,
    hours_already_there,
    standing_in,
    without_known,
)
from journal.domain.sheet_rows import BroughtBefore, SheetRow
from journal.domain.when import parse

OWN = Source("old list.xlsx", "Costs", is_bank=False)
BANK = Source("bank.csv", "bank", is_bank=True)


def row(at: int, amount: int | None = 500, day: str = "2016-03-05", **said: object) -> SheetRow:
    values: dict[str, object] = {"supplier": "Brandt", "currency": "EUR", **said}
    return SheetRow(at, parse(day), amount=amount, **values)  # type: ignore[arg-type]


def receipt(number: int, amount: int, day: str = "2016-03-05", **said: object) -> Receipt:
    line = Line(LineId(1), "x", Decimal(1), amount, Category.OTHER, Condition.NEW)
    values: dict[str, object] = {
        "supplier": "Brandt",
        "currency": "EUR",
        "paper": Paper.LOST,
        **said,
    }
    return Receipt(
        ReceiptId(number),
        when=parse(day),
        printed_total=None,
        lines=(line,),
        **values,  # type: ignore[arg-type]
    )


def own(*rows: SheetRow) -> tuple[Item, ...]:
    return receipt_items(rows, OWN, {})


def bank(*rows: SheetRow) -> tuple[Item, ...]:
    return receipt_items(rows, BANK, {})


# Grouping


def test_rows_of_one_number_supplier_and_day_are_one_receipt() -> None:
    rows = (
        row(2, number="12"), row(3, number="12"), row(4, number="12", day="2016-03-06"),
        row(5, number="12", supplier="Fenwright"), row(6), row(7),
    )  # fmt: skip
    items = own(*rows)
    assert [item.rows for item in items] == [(2, 3), (4,), (5,), (6,), (7,)]
    made = items[0].receipt
    assert made is not None
    assert made.lines_total == 1_000
    assert "rows 2, 3" in made.note
    assert made.paper is Paper.LOST


@given(st.lists(st.tuples(st.integers(-999, 9999), st.sampled_from(["", "1", "2"])), max_size=20))
def test_no_cent_is_lost_or_counted_twice(rows: list[tuple[int, str]]) -> None:
    items = own(*(row(i, amount, number=no) for i, (amount, no) in enumerate(rows, 2)))
    assert sum(item.receipt.lines_total for item in items if item.receipt) == sum(
        a for a, _ in rows
    )
    assert sorted(n for item in items for n in item.rows) == list(range(2, len(rows) + 2))


def test_areas_are_shared_by_their_weights() -> None:
    areas = {"sill, left": AreaId(3), "arch": AreaId(4)}
    item = receipt_items(
        [row(2, areas=(("Sill,  LEFT", 2), ("Arch", 1), ("Moon", 1)))], OWN, areas
    )[0]
    assert item.receipt is not None
    assert item.receipt.lines[0].shares == (Share(AreaId(3), 2), Share(AreaId(4), 1))


def test_a_row_of_money_and_time_becomes_both() -> None:
    one = row(2, 500, minutes=90, person="Nils", what="sill")
    assert own(one)[0].receipt is not None
    work = work_items([one, row(3, None, minutes=60, person="Edo", what="arch", note="hot")], {})
    assert [(item.work.minutes, item.work.note) for item in work if item.work] == [
        (90, ""), (60, "arch. hot"),
    ]  # fmt: skip


# Known again


def test_equal_rows_are_told_apart_by_their_number_among_equals() -> None:
    marks = fingerprints([row(2), row(3), row(9, 501)], "receipt")
    assert len(set(marks)) == 3
    assert fingerprints([row(7), row(8), row(2)], "receipt")[:2] == marks[:2]


def test_what_is_filled_in_later_does_not_make_a_row_new() -> None:
    later = row(2, category=Category.TOOLS, note="found the paper", paper=Paper.HELD)
    assert fingerprints([later], "receipt") == fingerprints([row(5)], "receipt")
    assert fingerprints([row(2)], "work") != fingerprints([row(2)], "receipt")


def test_of_a_longer_list_only_what_is_new_comes_in() -> None:
    first = own(row(2), row(3, number="12"))
    before = {
        mark: BroughtBefore(ReceiptId(8), None) for item in first for mark in item.fingerprints
    }
    items = without_known(
        own(row(2), row(3, number="12"), row(4, 700, number="12"), row(5)), before
    )
    assert [(item.rows, item.fate) for item in items] == [
        ((2,), Fate.LEAVE), ((4,), Fate.NEW), ((5,), Fate.NEW),
    ]  # fmt: skip
    assert items[1].receipt is not None
    assert items[1].receipt.lines_total == 700


def test_what_was_taken_out_since_stays_out_and_says_so() -> None:
    (item,) = own(row(2))
    before = {item.fingerprints[0]: BroughtBefore(None, None)}
    (found,) = without_known([item], before)
    assert (found.fate, found.why) == (Fate.LEAVE, "brought in before, and taken out since")
    assert found.fates == (Fate.NEW, Fate.LEAVE)


def test_a_receipt_that_is_there_answers_for_one_row() -> None:
    items = already_there(own(row(2), row(3), row(4, 900)), [receipt(7, 500, supplier="BRANDT ")])
    assert [(item.fate, item.match) for item in items] == [
        (Fate.LEAVE, 7), (Fate.NEW, None), (Fate.NEW, None),
    ]  # fmt: skip


def test_hours_that_are_there_stay_out() -> None:
    items = work_items([row(2, None, minutes=60, person="nils")] * 2, {})
    made = items[0].work
    assert made is not None
    there = hours_already_there(items, [made])
    assert [item.fate for item in there] == [Fate.LEAVE, Fate.NEW]
    assert made.id == WorkId(0)


def test_hours_taken_out_since_answer_for_none_that_are_there() -> None:
    rows = [row(at, None, minutes=180, person="Nils") for at in (2, 3)]
    items = work_items(rows, {})
    known = without_known(items, {items[0].fingerprints[0]: BroughtBefore(None, None)})
    typed = items[0].work
    assert typed is not None
    found = hours_already_there(known, [typed])
    assert [item.why for item in found] == [
        "brought in before, and taken out since",
        "already there",
    ]


# Bank lines


def one(line: SheetRow, *receipts: Receipt) -> Item:
    return standing_in(bank(line), receipts, "EUR")[0]


def test_a_bank_line_stands_in_for_a_receipt_without_paper_within_a_week() -> None:
    for day, fits in (("2016-03-12", True), ("2016-02-27", True), ("2016-03-13", False)):
        found = one(row(5, 500, day, supplier="CARD 12"), receipt(7, 500))
        assert (found.fate is Fate.STANDS_IN) is fits
        assert found.match == (7 if fits else None)
    assert one(row(5, 500, supplier="x"), receipt(7, 500, "2016-03")).fate is Fate.STANDS_IN
    assert one(row(5, 501, supplier="x"), receipt(7, 500)).fate is Fate.LEAVE


def test_each_receipt_is_stood_in_for_once_by_the_likeliest_line() -> None:
    lines = bank(
        row(2, 500, "2016-03-05", supplier="card"),
        row(3, 500, "2016-03-08", supplier="brandt gmbh"),
    )
    found = standing_in(lines, [receipt(7, 500)], "EUR")
    assert [(item.fate, item.match) for item in found] == [(Fate.LEAVE, None), (Fate.STANDS_IN, 7)]


def test_what_has_paper_or_something_already_is_left_alone() -> None:
    held = one(row(2), receipt(7, 500, paper=Paper.HELD))
    assert (held.fate, held.why) == (Fate.LEAVE, "its receipt has its paper")
    message = one(row(2), receipt(7, 500, stands_in="a message"))
    assert message.fate is Fate.LEAVE
    assert Fate.STANDS_IN in message.fates


def test_a_line_comes_in_by_itself_only_from_a_supplier_of_the_journal() -> None:
    assert one(row(2, 700, supplier="BRANDT GMBH 12"), receipt(7, 500)).fate is Fate.NEW
    assert one(row(2, 700, supplier="Grocer"), receipt(7, 500)).fate is Fate.LEAVE
    assert one(row(2, -700), receipt(7, 500)).why == "money that came in"
    made = one(row(2, 700), receipt(7, 500)).receipt
    assert made is not None
    assert made.stands_in == "bank line of 5 March 2016, “Brandt”, row 2 of “bank.csv”"
    assert made.paper is Paper.LOST


def test_a_foreign_receipt_is_matched_by_what_it_came_to() -> None:
    pounds = receipt(7, 1_000, currency="GBP", rate=Decimal("1.2"))
    assert one(row(2, 1_200), pounds).fate is Fate.STANDS_IN
    assert one(row(2, 1_000, currency="GBP"), pounds).fate is Fate.STANDS_IN
