"""Charts: what they show, and that the picture shows it, the same every time."""

import re
import xml.etree.ElementTree as ET

import pytest

from journal.domain.charts import DARK_FILLS, PAPER, Bar, Chart, ChartKind, Part
from journal.domain.costs import CostRow, CostTable
from journal.domain.ids import AreaId
from journal.domain.metre_costs import MetreCost, MetreCosts
from journal.domain.series import Series, Stack
from journal.ledger import charts
from journal.ledger.chart_text import fitting, shortened, tick_words
from journal.ledger.chart_values import (
    MOST_PARTS,
    Saying,
    hours_chart,
    metre_chart,
    period_words,
    proven_chart,
    spend_chart,
    with_remark,
)
from journal.ledger.charts import Size

_SVG = "{http://www.w3.org/2000/svg}"


def years(*amounts: tuple[int, ...], apart: int = 0) -> Series:
    """Euro cents from 2014 on, a stack for each."""
    stacks = tuple(Stack(f"k{n}", f"kind {n}", values) for n, values in enumerate(amounts))
    periods = tuple(str(2014 + n) for n in range(len(amounts[0])))
    return Series("year", "EUR", periods, stacks, apart)


def test_spend_says_every_sum_in_words():
    chart = spend_chart(years((100, 0, 30_00), (50, 0, 0), apart=7), Saying("Halden Rook"))
    assert [part.label for part in chart.parts] == ["kind 0", "kind 1"]
    assert [bar.total for bar in chart.bars] == [150, 0, 3000]
    assert chart.words == (
        "Money spent over time, by category: €31.50 in all. kind 0 €31.00; kind 1 €0.50. "
        "2014 €1.50; 2016 €30.00. €0.07 is undated, and stands in no bar."
    )


def test_layers_that_could_not_be_told_apart_stand_together_and_lose_nothing():
    amounts = tuple((n * 100, n) for n in range(1, 13))
    series = years(*amounts)
    chart = spend_chart(series, Saying())
    assert len(chart.parts) == MOST_PARTS
    assert chart.parts[-1].label == "everything else"
    assert tuple(bar.total for bar in chart.bars) == series.totals


def test_hours_are_minutes_said_as_hours():
    months = ("2016-11", "2016-12", "2017-01")
    series = Series("month", "", months, (Stack("own", "own", (90, 0, 30)),), 0)
    chart = hours_chart(series, Saying())
    assert [bar.said for bar in chart.bars] == ["1 h 30 min", "0 min", "30 min"]
    assert [bar.tick for bar in chart.bars] == ["Nov\n2016", "Dec", "Jan\n2017"]


def test_a_metre_is_dearest_first_with_all_of_them_last():
    rows = (
        MetreCost(AreaId(1), "Floor", 2000, 100_00, 120),
        MetreCost(AreaId(2), "Sill", 500, 100_00, 0),
    )
    total = MetreCost(None, "all", 2500, 200_00, 120)
    chart = metre_chart(MetreCosts("EUR", rows, total, 5_00), Saying())
    assert [bar.label for bar in chart.bars] == ["Sill", "Floor", "all areas with a welded seam"]
    assert chart.bars[0].said == "€200.00 a metre, 0.50 m welded"
    assert chart.bars[1].said == "€50.00 a metre, 2.00 m welded, 1 h a metre"
    assert "€5.00 went where no seam is welded" in chart.remark


def test_proven_and_not_proven_make_the_row():
    row = CostRow("tools", "tools", 90_00, 10_00, 0, 25_00)
    table = CostTable("category", "EUR", (row,), row)
    chart = proven_chart(table, Saying())
    assert chart.bars[0].values == (75_00, 25_00)
    assert chart.bars[0].said == "€100.00, €25.00 not proven"


def _many(locale: str = "en") -> Chart:
    amounts = tuple(
        tuple((n * 37 + k * 11) % 90 * 100 for n in range(10)) for k in range(MOST_PARTS)
    )
    return spend_chart(years(*amounts, apart=300), Saying("Halden Rook", locale))


def test_the_drawing_file_is_the_same_every_time_and_says_what_it_shows():
    chart = _many()
    made = charts.svg(chart, PAPER, Size())
    assert made == charts.svg(chart, PAPER, Size())
    tree = ET.fromstring(made)
    assert (tree.get("width"), tree.get("height")) == ("675pt", "330pt")
    said = made.decode()
    assert chart.words.replace("'", "&apos;") in said or chart.words in said
    assert not re.search(r"20[2-9][0-9]-[0-9]{2}-[0-9]{2}T", said), "a date of making"
    assert not list(tree.iter(f"{_SVG}text")), "letters are outlines"
    hatched = list(tree.iter(f"{_SVG}pattern"))
    assert len(hatched) == MOST_PARTS - 1, "each layer but the first has a hatching of its own"


def test_every_value_has_its_mark_as_large_as_it_is():
    chart = _many()
    drawn = charts.draw(chart, PAPER, Size(density=2.0))
    assert (drawn.width, drawn.height) == (1800, 880)
    assert len(drawn.pixels) == 4 * drawn.width * drawn.height
    assert len(drawn.marks) == sum(value != 0 for bar in chart.bars for value in bar.values)
    values = {(bar.key, part.key): v for bar in chart.bars
              for part, v in zip(chart.parts, bar.values, strict=True)}  # fmt: skip
    scale = {
        round((mark.bottom - mark.top) / values[mark.bar, mark.part], 9) for mark in drawn.marks
    }
    assert max(scale) / min(scale) < 1.001
    assert all(0 <= m.left < m.right <= 1 and 0 <= m.top < m.bottom <= 1 for m in drawn.marks)
    middle = drawn.marks[0]
    assert middle.holds((middle.left + middle.right) / 2, (middle.top + middle.bottom) / 2)


@pytest.mark.parametrize("width", [420, 1600])
def test_no_letter_is_cut_off(width):
    """A margin of the ground stays free all round, so nothing reaches past the edge."""
    np = pytest.importorskip("numpy")
    long = "Sill, left, with the jacking point behind it and the lower end of the pillar"
    rows = tuple(MetreCost(AreaId(n), f"{long} {n}", 1000, n * 99_99, 90) for n in range(1, 9))
    lying = metre_chart(
        MetreCosts("EUR", rows, MetreCost(None, "all", 8000, 100_00, 90), 100), Saying("Rook")
    )
    for chart in (lying, _many("de")):
        drawn = charts.draw(chart, PAPER, Size(width, 440))
        pixels = np.frombuffer(drawn.pixels, np.uint8).reshape(drawn.height, drawn.width, 4)
        ink = (pixels[:, :, :3] < 250).any(axis=2)
        edges = (ink[:2].any(), ink[-2:].any(), ink[:, :2].any(), ink[:, -2:].any())
        assert not any(edges), edges


def test_the_smallest_picture_still_has_bars():
    parts = tuple(f"a category with a name as long as {n} others" for n in range(MOST_PARTS))
    stacks = tuple(Stack(name, name, (100_00, 50_00)) for name in parts)
    series = Series("year", "EUR", ("2016", "2017"), stacks, 100)
    chart = with_remark(spend_chart(series, Saying("Rook")), "Not revalued: no index. " * 40)
    drawn = charts.draw(chart, PAPER, Size(420, 320))
    assert len(drawn.marks) == 2 * MOST_PARTS


def test_refunds_hang_below_the_line():
    chart = spend_chart(years((100_00, -40_00), (50_00, 10_00)), Saying())
    drawn = charts.draw(chart, PAPER, Size())
    marks = {(mark.bar, mark.part): mark for mark in drawn.marks}
    zero = marks["2014", "k0"].bottom
    assert marks["2015", "k0"].top == pytest.approx(zero, abs=0.01)
    assert marks["2015", "k1"].bottom == pytest.approx(zero, abs=0.01)


def test_odd_names_are_drawn_as_they_are_or_as_a_square():
    odd = ("$x^2$", "_hidden", "\N{CJK UNIFIED IDEOGRAPH-8ECA}", "a\tb\x07", "50 % & more")
    parts = tuple(Part(name, name) for name in odd)
    bar = Bar("2016", "2016", (100,) * len(odd), "x", "2016")
    chart = Chart(ChartKind.SPEND, "$T$", odd[0], "EUR", parts, (bar,), False, odd[4], "w")
    assert len(charts.draw(chart, PAPER, Size()).marks) == len(odd)
    assert charts.svg(chart, PAPER, Size())
    assert fitting(odd[2]) == "\N{WHITE SQUARE}"
    assert shortened("x" * 60) == "x" * 43 + "\N{HORIZONTAL ELLIPSIS}"


def test_money_and_months_are_written_for_the_owner():
    """As CLDR has them, by Babel."""
    assert period_words("2016-03", "de") == "März 2016"
    assert period_words("2016-03", "en") == "Mar 2016"
    assert tick_words(123_456_00, "EUR", "de") == "123.456\u00a0€"
    assert tick_words(123_456, "JPY", "en") == "¥123,456"
    assert tick_words(90, "", "nl") == "1,5 h"
    assert "3.440,00\u00a0€" in _many("de").words


def _luminance(colour: str) -> float:
    """Relative luminance, WCAG 2.2."""
    channels = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def _contrast(one: str, other: str) -> float:
    high, low = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def test_bars_stand_out_from_the_ground_by_themselves_or_by_their_outline():
    """WCAG 2.2, 1.4.11 (3:1 for needed graphics) and 1.4.3 (4.5:1 for words)."""
    assert _contrast(PAPER.outline, PAPER.ground) >= 3
    assert _contrast(PAPER.text, PAPER.ground) >= 4.5
    assert _contrast(PAPER.muted, PAPER.ground) >= 4.5
    assert len(PAPER.fills) == len(DARK_FILLS) == len(charts.HATCHES) == MOST_PARTS
    assert all(_contrast(PAPER.outline, fill) >= 3 for fill in PAPER.fills), "hatching shows"
    assert len(set(charts.HATCHES)) == MOST_PARTS
