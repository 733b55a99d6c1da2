"""Charts of what it came to: as values, drawn, as files, and for the dossier."""

from collections.abc import Callable, Container
from pathlib import Path

from journal.actions.costs import cost_series, costs_in_money_of, hours_series, metre_costs
from journal.actions.ledger_page import ledger_table
from journal.actions.people import all_people
from journal.actions.session import Session
from journal.actions.tints import Tinted
from journal.domain.charts import PAPER, Chart, ChartKind, ChartLook, DrawnChart
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, SurveyId
from journal.domain.money import format_money, minor_units
from journal.domain.outcome_words import outlook_title
from journal.domain.people import PersonKind, same_name
from journal.domain.price_index import InMoneyOf, spoken_apart
from journal.domain.series import Series, Step
from journal.domain.tints import TintBy, legend, scale_for, tint

#: What a chart can be saved as, by the file's ending.
KINDS = (".svg", ".png")
#: Up to so many months each has its bar; longer spans go by year, unless asked otherwise.
_MOST_MONTHS = 36
#: How large a chart is in a file and in the dossier, in pixels of a plain screen.
_WIDTH, _HEIGHT, _ROW = 900, 440, 44
#: Smaller than this, words and legend leave no room for bars.
_LEAST = 420, 320
#: How many times as dense a PNG is as a plain screen.
_DENSE = 2.0


def ledger_chart(
    session: Session,
    kind: ChartKind,
    *,
    step: Step | None = None,
    wish: InMoneyOf | None = None,
    locale: str = "en",
) -> Chart:
    """One chart, as paid or in the money of a year, with all it says written for ``locale``.

    ``step`` is how long a bar of a chart over time is; None chooses by how long the time is.

    Raises:
        JournalError: the wish can't be met.
    """
    from journal.ledger import chart_values

    saying = chart_values.Saying(_subtitle(session, kind, wish), locale)
    if kind is ChartKind.SPEND:
        spent = _series(lambda one: cost_series(session, one, wish), step)
        chart = chart_values.spend_chart(spent, saying)
    elif kind is ChartKind.HOURS:
        worked = _series(lambda one: hours_series(session, one), step)
        chart = chart_values.hours_chart(_own_and_paid(worked, paid_names(session)), saying)
    elif kind is ChartKind.METRE:
        chart = chart_values.metre_chart(metre_costs(session, wish), saying)
    else:
        chart = chart_values.proven_chart(ledger_table(session, "category", wish), saying)
    if wish is None or kind is ChartKind.HOURS:
        return chart
    return chart_values.with_remark(chart, _apart(session, wish, locale))


def draw_chart(
    chart: Chart, look: ChartLook, width: int, height: int, density: float = 1.0
) -> DrawnChart:
    """A chart as pixels; ``density`` is how many of them stand on one of a plain screen.

    It is no smaller than what a chart needs: whoever has less room makes the picture smaller.
    """
    from journal.ledger.charts import Size, draw

    return draw(chart, look, Size(max(width, _LEAST[0]), max(height, _LEAST[1]), density))


def chart_svg(chart: Chart, width: int = _WIDTH) -> bytes:
    """A chart as SVG on white paper, its letters as outlines, as the dossier and files have it."""
    from journal.ledger.charts import Size, svg

    return svg(chart, PAPER, Size(width, chart_height(chart)))


def chart_height(chart: Chart) -> int:
    """How high a chart has to be: so that every lying bar has room for its name."""
    return 130 + _ROW * len(chart.bars) if chart.lying else _HEIGHT


def save_chart(session: Session, chart: Chart, out: Path) -> Path:
    """Write a chart as SVG or PNG, by the ending of ``out``; it appears whole or not at all.

    Raises:
        JournalError: the ending is another, there is nothing to draw, or ``out`` can't be written
            or lies in the journal's own place.
    """
    from journal.ledger.charts import Size, png

    size = Size(_WIDTH, chart_height(chart), _DENSE)

    def draw(kind: str) -> bytes:
        if chart.is_empty:
            raise JournalError(f"There is nothing to draw yet: {chart.title.lower()}.")
        return chart_svg(chart) if kind == ".svg" else png(chart, PAPER, size)

    return _save(session, out, draw)


def save_estimate(
    session: Session, survey_id: SurveyId, out: Path, *, of_hours: bool = False
) -> Path:
    """Write the chart of what a survey may come to, as ``save_chart`` does.

    Raises:
        JournalError: as for ``save_chart``, or there is no such survey.
    """
    from journal.actions.surveys import estimate_of, sheet
    from journal.ledger.charts import Size
    from journal.ledger.estimate_charts import estimate_png, estimate_svg

    found, car = sheet(session, survey_id), session.journal.car.get()
    estimate = estimate_of(found)
    outlook = estimate.minutes if of_hours else estimate.money
    currency = "" if of_hours else car.currency
    title = f"{car.title}, {found.survey.name}: {outlook_title(of_hours=of_hours).lower()}"
    size = Size(_WIDTH, _HEIGHT, _DENSE)

    def draw(kind: str) -> bytes:
        if not found.findings:
            raise JournalError(f"Nothing was found in “{found.survey.name}” yet.")
        drawn = estimate_svg if kind == ".svg" else estimate_png
        return drawn(outlook, title, currency, PAPER, size)

    return _save(session, out, draw)


def _save(session: Session, out: Path, draw: Callable[[str], bytes]) -> Path:
    """Write what ``draw`` makes for an ending."""
    from journal.actions.export_drawing import refuse_place, write_out

    kind = out.suffix.lower()
    if kind not in KINDS:
        raise JournalError(f"“{out.name}” has to end in .svg or .png.")
    refuse_place(session, out)
    write_out(out, draw(kind))
    return out


def money_on_the_car(session: Session, wish: InMoneyOf | None = None, locale: str = "en") -> Tinted:
    """The drawing tinted by the money of each panel, the same as in the table by panel.

    Raises:
        JournalError: the wish can't be met.
    """
    table = ledger_table(session, "panel", wish)
    values = {
        PanelId(int(row.key)): float(row.money)
        for row in table.rows
        if row.key.isdigit() and row.money > 0
    }

    def write(value: float) -> str:
        return format_money(round(value), table.currency, locale)

    scale = scale_for(values, TintBy.MONEY, 10.0 ** minor_units(table.currency))
    words = {panel_id: write(value) for panel_id, value in values.items()}
    levels = tint(values, TintBy.MONEY, scale)
    return Tinted(TintBy.MONEY, levels, words, legend(scale, write))


def paid_names(session: Session) -> frozenset[str]:
    """The names of people whose hours are paid for, as ``same_name`` has them."""
    paid = (one.name for one in all_people(session) if one.kind is PersonKind.PAID)
    return frozenset(same_name(name) for name in paid)


def _series(read: Callable[[Step], Series], step: Step | None) -> Series:
    if step is not None:
        return read(step)
    by_month = read("month")
    return by_month if len(by_month.periods) <= _MOST_MONTHS else read("year")


def _own_and_paid(series: Series, paid: Container[str]) -> Series:
    """Hours by person as hours of two kinds."""
    from journal.ledger.chart_values import gathered

    kinds = {"own": "own hours", "paid": "hours paid for"}
    return gathered(series, kinds, lambda one: "paid" if same_name(one.label) in paid else "own")


def _subtitle(session: Session, kind: ChartKind, wish: InMoneyOf | None) -> str:
    title = session.journal.car.get().title
    if wish is None or kind is ChartKind.HOURS:
        return title
    return f"{title}, in the money of {wish.period}"


def _apart(session: Session, wish: InMoneyOf, locale: str) -> str:
    found = costs_in_money_of(session, "year", wish)
    currency = found.table.currency
    said = [spoken_apart(one, format_money(one.money, currency, locale)) for one in found.apart]
    return " ".join([f"By the price index “{found.index.name}”.", *said])
