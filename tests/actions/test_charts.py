"""Charts of a journal: every bar is made of lines that add up to it, and files are whole."""

from decimal import Decimal

import pytest

from journal.actions import people, price_indices
from journal.actions.chart_lines import lines_of_mark
from journal.actions.charts import (
    chart_svg,
    draw_chart,
    ledger_chart,
    money_on_the_car,
    save_chart,
)
from journal.actions.costs import costs, summary
from journal.actions.ledger_page import ledger_table, read_ledger
from journal.domain.charts import PAPER, ChartKind
from journal.domain.errors import JournalError
from journal.domain.ids import PersonId
from journal.domain.people import Person, PersonKind
from journal.domain.price_index import InMoneyOf
from tests.desktop import workshop


@pytest.fixture(scope="module")
def session(tmp_path_factory):
    """Only read from here on."""
    with workshop.furnished(tmp_path_factory.mktemp("charts")) as made:
        people.save_person(made, Person(PersonId(0), "tom", PersonKind.PAID))
        values = {"2015": Decimal(100), "2016": Decimal(110), "2020": Decimal(125)}
        price_indices.record_index(made, "Consumer prices", "EUR", "Drawn for a test", values)
        yield made


@pytest.mark.parametrize("wish", [None, InMoneyOf("2020")])
@pytest.mark.parametrize("step", ["year", "month"])
@pytest.mark.parametrize("kind", [ChartKind.SPEND, ChartKind.HOURS, ChartKind.PROVEN])
def test_a_part_of_a_bar_is_made_of_what_adds_up_to_it(session, kind, step, wish):
    chart = ledger_chart(session, kind, step=step, wish=wish)
    total = 0
    for bar in chart.bars:
        for part, value in zip(chart.parts, bar.values, strict=True):
            made = lines_of_mark(session, chart, bar.key, part.key, wish)
            assert made.total + made.minutes == value
            total += value
    whole = summary(session, wish)
    assert total == (whole.minutes if kind is ChartKind.HOURS else whole.money)


def test_own_and_paid_hours_are_stacked(session):
    chart = ledger_chart(session, ChartKind.HOURS, step="year")
    assert {part.label: bar for part, bar in zip(chart.parts, chart.bars[0].values, strict=True)} \
        == {"own hours": 510, "hours paid for": 95}  # fmt: skip


def test_the_car_is_tinted_by_the_table_by_panel(session):
    table = {row.label: row.money for row in costs(session, "panel").rows}
    found = money_on_the_car(session)
    sill = workshop.panel(session, "Sill, left")
    assert found.words[sill] == f"€{table['Sill, left'] / 100:.2f}"
    assert found.levels[sill] > 0


def test_the_money_of_a_year_is_said_with_the_index_and_what_is_apart(session):
    chart = ledger_chart(session, ChartKind.SPEND, wish=InMoneyOf("2020"))
    assert chart.subtitle == "Halden Rook, in the money of 2020"
    assert "By the price index “Consumer prices”" in chart.words
    # 187.90 of 2015 times 125/100; 39.90 of 2020 stays: the ratio of two values.
    assert {bar.key: bar.total for bar in chart.bars if bar.total} == {
        "2015": 234_88, "2016": 130_11, "2020": 39_90,
    }  # fmt: skip


def test_a_wish_that_cant_be_met_is_told_and_the_page_shows_what_was_paid(session):
    read = read_ledger(session, InMoneyOf("1955"))
    assert read.problem == "The price index “Consumer prices” says nothing of 1955."
    assert read.wish is None
    assert read.summary == read.paid == summary(session)
    with pytest.raises(JournalError):
        ledger_table(session, "area", InMoneyOf("1955"))
    good = read_ledger(session, InMoneyOf("2020"))
    assert good.years == ("2020", "2016", "2015")
    assert good.summary.money == ledger_table(session, "area", InMoneyOf("2020")).total.money


def test_files_are_whole_or_refused(session, tmp_path):
    chart = ledger_chart(session, ChartKind.SPEND)
    svg = save_chart(session, chart, tmp_path / "spend.svg")
    assert svg.read_bytes() == chart_svg(chart)
    png = save_chart(session, chart, tmp_path / "spend.PNG")
    assert png.read_bytes().startswith(b"\x89PNG")
    for out, why in (
        (tmp_path / "spend.pdf", "has to end"),
        (session.folder / "originals" / "a.svg", "lies among the originals"),
        (tmp_path / "none" / "a.svg", "can't be written"),
    ):
        with pytest.raises(JournalError, match=why):
            save_chart(session, chart, out)
    nothing = ledger_chart(session, ChartKind.METRE)
    assert nothing.is_empty
    with pytest.raises(JournalError, match="nothing to draw yet"):
        save_chart(session, nothing, tmp_path / "metre.svg")
    assert draw_chart(nothing, PAPER, 10, 10).width == 420
