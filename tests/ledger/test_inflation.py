"""Costs in the money of another time."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from journal.domain.costs import COSTS_BY, CostsBy
from journal.domain.errors import JournalError
from journal.domain.ids import PriceIndexId
from journal.domain.price_index import NotRevalued, PriceIndex, period_of, ratio, spoken_apart
from journal.domain.receipts import Condition
from journal.domain.sharing import nearest, rounded, scaled
from journal.domain.when import parse_edtf
from journal.ledger.books import Books
from journal.ledger.costs import cost_summary, cost_table
from journal.ledger.inflation import revalued
from journal.ledger.making import made_of_row
from journal.ledger.pieces import Account, taken_apart
from tests.ledger.books import ARCH, SILL, any_books, books, line, receipt

INDEX = PriceIndex(
    PriceIndexId(1),
    "Made-up",
    "EUR",
    "made up",
    {p: Decimal(v) for p, v in {"2018": "97.3", "2019-03": "100", "2019-Q2": "101.7",
     "2021": "111.1", "2022-05": "123.4", "2024-01": "140", "2024-02": "142"}.items()},
)  # fmt: skip


def total(account: Account) -> int:
    return cost_table("year", account).total.money


def test_a_sum_is_multiplied_by_the_new_level_and_divided_by_the_old() -> None:
    journal = books(receipt(line(10000, (SILL.id, 1)), when=parse_edtf("2019-03-02")))
    found = revalued(taken_apart(journal), INDEX, "2024")
    assert (total(found.account), found.level.by, found.apart) == (14100, "mean of 2 months", ())


def test_what_the_index_doesnt_reach_stands_apart_and_is_said() -> None:
    old = receipt(line(124_000), when=parse_edtf("2009"))
    undated = receipt(line(500), when=parse_edtf("../2012"))
    found = revalued(taken_apart(books(old, undated, receipt(line(100)))), INDEX, "2024-01")
    assert total(found.account) == 140
    assert [(one.period, one.money) for one in found.apart] == [("", 500), ("2009", 124_000)]
    assert spoken_apart(found.apart[1], "€1,240.00") == (
        "€1,240.00 can't be revalued: no index for 2009."
    )
    assert "no date" in spoken_apart(found.apart[0], "€5.00")


def test_an_index_in_another_currency_or_without_the_year_is_refused() -> None:
    account = taken_apart(books(receipt(line(100))))
    with pytest.raises(JournalError, match="is for USD"):
        revalued(account, replace(INDEX, currency="USD"), "2024")
    with pytest.raises(JournalError, match="says nothing of 1999"):
        revalued(account, INDEX, "1999")


def test_what_was_saved_is_in_the_same_money_as_what_was_paid() -> None:
    used = line(1000, condition=Condition.USED, new_price=5000)
    found = revalued(taken_apart(books(receipt(used))), INDEX, "2024-01")
    summary = cost_summary(found.account)
    assert (summary.saved_against_new, summary.saved_on) == (7000 - 1400, 1400)


@settings(max_examples=40)
@given(any_books, st.sampled_from(COSTS_BY), st.sampled_from(["2018", "2019-03", "2024"]))
def test_revalued_tables_add_up_and_open_their_lines(
    journal: Books, by: CostsBy, period: str
) -> None:
    found = revalued(taken_apart(journal), INDEX, period)
    table = cost_table(by, found.account)
    for column in ("restoration", "upkeep", "unproven", "minutes"):
        assert sum(getattr(row, column) for row in table.rows) == getattr(table.total, column)
    assert table.total == cost_table("category", found.account).total
    for row in table.rows:
        made = made_of_row(by, row.key, found.account)
        assert (made.total, made.minutes) == (row.money, row.minutes)


@settings(max_examples=40)
@given(any_books, st.sampled_from(["2018", "2019-03", "2024"]))
def test_no_piece_is_a_unit_away_from_its_worth_nor_the_total_half_a_one(
    journal: Books, period: str
) -> None:
    account = taken_apart(journal)
    found = revalued(account, INDEX, period)
    before = {id(paid.receipt): paid for paid in account.paid}
    exact = Fraction()
    for paid in found.account.paid:
        old = before[id(paid.receipt)]
        factor = ratio(INDEX, period_of(paid.receipt.when), period)
        assert factor is not None
        for line_now, line_then in zip(paid.lines, old.lines, strict=True):
            for (_, now), (_, then) in zip(line_now.parts, line_then.parts, strict=True):
                assert abs(now - then * factor) < 1
                exact += then * factor
    assert total(found.account) == nearest(exact)


@settings(max_examples=40)
@given(any_books)
def test_nothing_is_lost_between_what_is_revalued_and_what_stands_apart(journal: Books) -> None:
    account = taken_apart(journal)
    found = revalued(account, INDEX, "2024")
    apart = [one for kind in found.apart for one in kind.receipt_ids]
    there = [paid.receipt.id for paid in found.account.paid]
    assert sorted([*apart, *there]) == sorted(paid.receipt.id for paid in account.paid)
    kept = {id(paid.receipt) for paid in found.account.paid}
    left = [paid for paid in account.paid if id(paid.receipt) not in kept]
    paid_apart = sum(paid.money + (paid.difference or 0) for paid in left)
    assert sum(one.money for one in found.apart) == paid_apart


@settings(max_examples=40)
@given(any_books, any_books)
def test_what_was_revalued_before_changes_nothing(journal: Books, other: Books) -> None:
    fresh = revalued(taken_apart(journal), INDEX, "2024")
    earlier = taken_apart(replace(journal, receipts=(*other.receipts, *journal.receipts[1:])))
    account = taken_apart(journal, earlier)
    for before in (fresh, revalued(earlier, INDEX, "2024"), revalued(earlier, INDEX, "2018")):
        again = revalued(account, INDEX, "2024", before)
        assert again.account.paid == fresh.account.paid
        assert again.apart == fresh.apart


def test_the_money_of_its_own_time_is_itself() -> None:
    journal = books(receipt(line(333, (ARCH.id, 1), (SILL.id, 2)), line(-11)))
    found = revalued(taken_apart(journal), INDEX, "2019-03")
    assert cost_table("area", found.account) == cost_table("area", journal)


@given(
    st.lists(st.integers(-(10**9), 10**9), max_size=20),
    st.fractions(Fraction(1, 1000), 1000, max_denominator=10**6),
)
def test_scaled_values_add_up_and_are_within_a_unit(values: list[int], factor: Fraction) -> None:
    whole = nearest(sum(values) * factor)
    parts = scaled(values, factor, whole)
    assert sum(parts) == whole
    assert all(abs(p - v * factor) < 1 for p, v in zip(parts, values, strict=True))
    assert sum(rounded([v * factor for v in values])) == whole


def test_a_sum_that_stands_apart_knows_its_receipts() -> None:
    found = revalued(taken_apart(books(receipt(line(5), when=parse_edtf("2009")))), INDEX, "2024")
    assert found.apart == (NotRevalued("2009", 5, (receipt().id,)),)
