"""Money and hours over time, and by the welded metre."""

from datetime import date

from hypothesis import given
from hypothesis import strategies as st

from journal.domain.series import STEPS, Step
from journal.domain.when import When, parse_edtf
from journal.ledger.books import Books
from journal.ledger.costs import cost_table
from journal.ledger.metres import metre_costs
from journal.ledger.pieces import taken_apart
from journal.ledger.spans import cost_series, hours_series
from tests.ledger.books import ARCH, FLOOR, SILL, any_books, books, line, receipt, work


@given(any_books, st.sampled_from(STEPS))
def test_a_series_adds_up_to_the_total(journal: Books, step: Step) -> None:
    account, total = taken_apart(journal), cost_table("category", journal).total
    for series, whole in (
        (cost_series(step, account), total.money),
        (hours_series(step, account), total.minutes),
    ):
        assert sum(series.totals) + series.apart == whole
        assert list(series.periods) == sorted(set(series.periods))
        assert all(len(stack.values) == len(series.periods) for stack in series.stacks)


def test_months_follow_each_other_without_a_hole() -> None:
    journal = books(
        receipt(line(5), when=When.on(date(2019, 11, 3))),
        receipt(line(7), when=When.on(date(2020, 2, 1))),
        receipt(line(9), when=parse_edtf("2020")),
    )
    series = cost_series("month", taken_apart(journal))
    assert series.periods == ("2019-11", "2019-12", "2020-01", "2020-02")
    assert (series.totals, series.apart) == ((5, 0, 0, 7), 9)
    assert cost_series("year", taken_apart(journal)).totals == (5, 16)


def test_a_slip_of_a_date_draws_no_thousand_years() -> None:
    slip = receipt(line(5), when=When.on(date(201, 1, 3))), receipt(line(7))
    series = cost_series("month", taken_apart(books(*slip)))
    assert series.periods == ("0201-01", "2019-03")


def test_hours_are_stacked_with_the_most_first() -> None:
    journal = books(work=(work(30, person="Bo"), work(90), work(60, person="bo ")))
    series = hours_series("year", taken_apart(journal))
    assert [(stack.label, stack.values) for stack in series.stacks] == [
        ("Ada", (90,)), ("Bo", (90,)),
    ]  # fmt: skip


def test_a_welded_metre_costs_what_its_areas_cost() -> None:
    journal = books(
        receipt(line(10000, (SILL.id, 1)), line(2500, (ARCH.id, 1)), line(400, (FLOOR.id, 1))),
        receipt(line(77)),
        work=(work(120, (SILL.id, 1)),),
    )
    found = metre_costs(taken_apart(journal), {SILL.id: 3000.2, ARCH.id: 500.0, FLOOR.id: 0.0})
    assert [(row.label, row.per_metre, row.minutes_per_metre) for row in found.rows] == [
        ("Sill, left", 3333, 40), ("Wheel arch, rear", 5000, 0),
    ]  # fmt: skip
    assert (found.total.welded_mm, found.total.money, found.total.per_metre) == (3500, 12500, 3571)
    assert found.elsewhere == 477


def test_without_a_welded_metre_nothing_is_told_of_one() -> None:
    found = metre_costs(taken_apart(books(receipt(line(10000, (SILL.id, 1))))), {})
    assert (found.rows, found.total.per_metre, found.elsewhere) == ((), None, 10000)
