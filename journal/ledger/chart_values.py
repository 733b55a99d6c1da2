"""What each chart shows, worked out from the ledger's own sums: plain values, nothing drawn."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date

from journal.domain.charts import CHART_TITLES, REST, Bar, Chart, ChartKind, Part, in_words
from journal.domain.costs import CostTable
from journal.domain.hours import spoken_hours
from journal.domain.metre_costs import MetreCost, MetreCosts
from journal.domain.money import format_money
from journal.domain.series import Series, Stack

#: More layers than these can't be told apart; the smaller ones stand together.
MOST_PARTS = 8
#: More lying bars than these make a list, not a picture; the smaller ones stand together.
MOST_LYING = 16
_EACH_MONTH, _EACH_QUARTER = 18, 48
_MOST_YEARS = 20


@dataclass(frozen=True, slots=True)
class Saying:
    """How a chart speaks: the words under its title, and the locale its money is written for."""

    subtitle: str = ""
    locale: str = "en"


def spend_chart(series: Series, saying: Saying) -> Chart:
    """Money spent by month or year, its categories stacked, the largest lowest."""
    stacks = sorted(series.stacks, key=lambda stack: -sum(map(abs, stack.values)))
    if len(stacks) > MOST_PARTS:
        rest = stacks[MOST_PARTS - 1 :]
        values = tuple(sum(column) for column in zip(*(s.values for s in rest), strict=True))
        stacks = [*stacks[: MOST_PARTS - 1], Stack(REST, "everything else", values)]
    return _over_time(ChartKind.SPEND, series, stacks, saying)


def hours_chart(series: Series, saying: Saying) -> Chart:
    """Hours by month or year, own and paid ones stacked."""
    return _over_time(ChartKind.HOURS, series, series.stacks, saying)


def gathered(series: Series, kinds: Mapping[str, str], kind_of: Callable[[Stack], str]) -> Series:
    """A series with its stacks added up by kind; ``kinds`` are their labels by key, in order."""
    sums = {key: [0] * len(series.periods) for key in kinds}
    for stack in series.stacks:
        for at, value in enumerate(stack.values):
            sums[kind_of(stack)][at] += value
    stacks = tuple(
        Stack(key, label, tuple(sums[key])) for key, label in kinds.items() if any(sums[key])
    )
    return replace(series, stacks=stacks)


def with_remark(chart: Chart, more: str) -> Chart:
    """A chart with one more thing said of what it leaves out."""
    remark = " ".join(words for words in (chart.remark, more) if words)
    return replace(chart, remark=remark, words=f"{chart.words} {more}".strip())


def metre_chart(costs: MetreCosts, saying: Saying) -> Chart:
    """What a welded metre cost in each repair area, the dearest first, and in all of them."""
    rows = [row for row in costs.rows if row.per_metre is not None]
    rows.sort(key=lambda row: -(row.per_metre or 0))
    shown = rows[:MOST_LYING]
    if costs.total.per_metre is not None and len(rows) > 1:
        shown.append(replace(costs.total, label="all areas with a welded seam"))
    bars = tuple(_metre_bar(row, costs.currency, saying.locale) for row in shown)
    remarks = ["All money of an area is counted, not the welding alone."]
    if len(rows) > MOST_LYING:
        remarks.append(f"{len(rows) - MOST_LYING} more areas cost less a metre.")
    if costs.elsewhere:
        elsewhere = format_money(costs.elsewhere, costs.currency, saying.locale)
        remarks.append(f"{elsewhere} went where no seam is welded, and is in no bar.")
    remark = " ".join(remarks)
    total = bars[-1].said if bars else "nothing"
    title = CHART_TITLES[ChartKind.METRE]
    words = in_words(title, total, bars, (), remark)
    part = Part("money", "money for each metre")
    kind = ChartKind.METRE
    return Chart(
        kind, title, saying.subtitle, costs.currency, (part,), bars, True,
        remark, words, saying.locale,
    )  # fmt: skip


def _metre_bar(row: MetreCost, currency: str, locale: str) -> Bar:
    money = row.per_metre or 0
    said = f"{format_money(money, currency, locale)} a metre, {row.welded_mm / 1000:.2f} m welded"
    if row.minutes_per_metre:
        said += f", {spoken_hours(row.minutes_per_metre)} a metre"
    key = "" if row.area_id is None else str(row.area_id)
    return Bar(key, row.label, (money,), said)


def proven_chart(table: CostTable, saying: Saying) -> Chart:
    """Money whose paper is held beside money whose paper is lost or never was."""
    rows = [row for row in table.rows if row.money or row.unproven]
    rows.sort(key=lambda row: -abs(row.money))

    def money(minor: int) -> str:
        return format_money(minor, table.currency, saying.locale)

    bars = []
    for row in rows[:MOST_LYING]:
        said = money(row.money) + (f", {money(row.unproven)} not proven" if row.unproven else "")
        bars.append(Bar(row.key, row.label, (row.proven, row.unproven), said))
    remark = f"{len(rows) - MOST_LYING} more rows are smaller." if len(rows) > MOST_LYING else ""
    parts = (
        Part("proven", "proven: the paper is held"),
        Part("unproven", "not proven: the paper is lost or never was"),
    )
    total = table.total
    pieces = (f"proven {money(total.proven)}", f"not proven {money(total.unproven)}")
    title = CHART_TITLES[ChartKind.PROVEN]
    words = in_words(title, money(total.money), tuple(bars), pieces, remark)
    return Chart(
        ChartKind.PROVEN, title, saying.subtitle, table.currency, parts, tuple(bars), True,
        remark, words, saying.locale,
    )  # fmt: skip


def _over_time(kind: ChartKind, series: Series, stacks: Sequence[Stack], saying: Saying) -> Chart:
    def said(value: int) -> str:
        if series.currency:
            return format_money(value, series.currency, saying.locale)
        return spoken_hours(value)

    ticks = _ticks(series.periods, saying.locale)
    bars = []
    for at, period in enumerate(series.periods):
        values = tuple(stack.values[at] for stack in stacks)
        label = period_words(period, saying.locale)
        bars.append(Bar(period, label, values, said(sum(values)), ticks[at]))
    parts = tuple(Part(stack.key, stack.label) for stack in stacks)
    remark = ""
    if series.apart:
        why = "known to the year only or undated" if series.step == "month" else "undated"
        remark = f"{said(series.apart)} is {why}, and stands in no bar."
    pieces = tuple(f"{stack.label} {said(sum(stack.values))}" for stack in stacks)
    title = CHART_TITLES[kind]
    words = in_words(title, said(sum(series.totals)), tuple(bars), pieces, remark)
    return Chart(
        kind, title, saying.subtitle, series.currency, parts, tuple(bars), False,
        remark, words, saying.locale,
    )  # fmt: skip


def period_words(period: str, locale: str) -> str:
    """A month or a year as ``locale`` writes it: "Jul 2016", "2016"."""
    if len(period) == 4:
        return period
    from babel.dates import format_skeleton

    written: str = format_skeleton("yMMM", _day(period), locale=locale)
    return written


def _ticks(periods: Sequence[str], locale: str) -> list[str]:
    """What stands at the foot of each bar, so that neighbours never touch."""
    if not periods or len(periods[0]) == 4:
        every = 1 + len(periods) // _MOST_YEARS
        return [period if at % every == 0 else "" for at, period in enumerate(periods)]
    if len(periods) > _EACH_QUARTER:
        every = 1 + len(periods) // 12 // _MOST_YEARS
        return [p[:4] if p.endswith("-01") and int(p[:4]) % every == 0 else "" for p in periods]
    months = 3 if len(periods) > _EACH_MONTH else 1
    return [_month_tick(period, at, months, locale) for at, period in enumerate(periods)]


def _month_tick(period: str, at: int, months: int, locale: str) -> str:
    from babel.dates import format_skeleton

    number = int(period[5:7])
    if (number - 1) % months:
        return ""
    month: str = format_skeleton("MMM", _day(period), locale=locale)
    return f"{month}\n{period[:4]}" if number == 1 or at < months else month


def _day(period: str) -> date:
    return date(int(period[:4]), int(period[5:7]), 1)
