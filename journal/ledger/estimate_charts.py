"""The chart of an estimate: how often each sum came, the formula's curve, and the ceiling."""

import io
from itertools import pairwise
from typing import TYPE_CHECKING, Any, NamedTuple

from journal.domain.charts import ChartLook, DrawnChart
from journal.domain.estimates import LEVELS, Outlook, normal_under
from journal.domain.money import minor_units
from journal.ledger.chart_text import fitting, tick_words
from journal.ledger.charts import DRAWING, Size, blank, steps_of

if TYPE_CHECKING:
    from matplotlib.figure import Figure

_SMALL, _PLAIN = 8.0, 9.0


class _Shown(NamedTuple):
    outlook: Outlook
    title: str
    currency: str


def draw_estimate(
    outlook: Outlook, title: str, currency: str, look: ChartLook, size: Size
) -> DrawnChart:
    """The chart as pixels; ``currency`` is "" for a sum of time."""
    from matplotlib.backends.backend_agg import FigureCanvasAgg

    with DRAWING:
        canvas: Any = FigureCanvasAgg(_figure(outlook, title, currency, look, size))
        canvas.draw()
        wide, high = canvas.get_width_height()
        return DrawnChart(wide, high, bytes(canvas.buffer_rgba()), ())


def estimate_svg(outlook: Outlook, title: str, currency: str, look: ChartLook, size: Size) -> bytes:
    """The chart as SVG, its letters as outlines, the same bytes every time."""
    about = {"Title": title, "Date": None, "Creator": None}
    return _saved(_Shown(outlook, title, currency), look, size, "svg", about)


def estimate_png(outlook: Outlook, title: str, currency: str, look: ChartLook, size: Size) -> bytes:
    """The chart as PNG."""
    about = {"Title": title, "Software": None}
    return _saved(_Shown(outlook, title, currency), look, size, "png", about)


def _saved(shown: "_Shown", look: ChartLook, size: Size, kind: str, about: dict[str, Any]) -> bytes:
    out = io.BytesIO()
    with DRAWING:
        figure = _figure(*shown, look, size)
        ground = look.ground or "none"
        figure.savefig(out, format=kind, metadata=about, dpi=figure.dpi, facecolor=ground)
    return out.getvalue()


def _figure(outlook: Outlook, title: str, currency: str, look: ChartLook, size: Size) -> "Figure":
    figure = blank(look, size)
    axes = figure.add_subplot()
    axes.patch.set_alpha(0)
    figure.suptitle(fitting(title), x=0.008, ha="left", fontsize=_PLAIN, color=look.text)
    if outlook.drawn.deviation:
        _bars(axes, outlook, look)
        _curve(axes, outlook, look)
        _levels(axes, outlook, look)
    else:
        axes.axvline(outlook.drawn.mean, color=look.fills[0], linewidth=3)
    if outlook.ceiling is not None:
        _ceiling(axes, outlook.ceiling, look)
    _dress(axes, currency, look)
    return figure


def _bars(axes: Any, outlook: Outlook, look: ChartLook) -> None:
    """How many draws fell in each stretch; those over the ceiling hatched and of another fill."""
    ceiling = outlook.edges[-1] if outlook.ceiling is None else outlook.ceiling
    for count, (left, right) in zip(outlook.counts, pairwise(outlook.edges), strict=True):
        split = min(max(left, ceiling), right)
        for start, end, over in ((left, split, False), (split, right, True)):
            if end > start:
                axes.bar(
                    start, count, end - start, align="edge", color=look.fills[over],
                    hatch="///" if over else "", edgecolor=look.outline, linewidth=0.3,
                )  # fmt: skip


def _curve(axes: Any, outlook: Outlook, look: ChartLook) -> None:
    """The closed formula's normal curve, to the same scale."""
    edges, formula = outlook.edges, outlook.formula
    if not formula.deviation:
        return
    draws = sum(outlook.counts)
    below = [normal_under(formula.mean, formula.deviation, edge) for edge in edges]
    middles = [(a + b) / 2 for a, b in pairwise(edges)]
    heights = [draws * (b - a) for a, b in pairwise(below)]
    axes.plot(middles, heights, color=look.text, linewidth=1.4, linestyle="--")


def _levels(axes: Any, outlook: Outlook, look: ChartLook) -> None:
    """The figures, each named to its own side: they may stand so close that names would overlap."""
    sides = (("right", 0), ("center", _SMALL + 1), ("left", 0))
    for level, figure, (side, up) in zip(LEVELS, outlook.drawn.figures, sides, strict=True):
        axes.axvline(figure, color=look.text, linewidth=0.9, linestyle=":")
        axes.annotate(
            f"{100 * level:.0f} %", (figure, 1.0), xycoords=axes.get_xaxis_transform(),
            xytext=(0, 2 + up), textcoords="offset points", ha=side, va="bottom",
            fontsize=_SMALL, color=look.text,
        )  # fmt: skip


def _ceiling(axes: Any, ceiling: int, look: ChartLook) -> None:
    axes.axvline(ceiling, color=look.text, linewidth=2.4)
    axes.annotate(
        "your ceiling", (ceiling, 0.97), xycoords=axes.get_xaxis_transform(), xytext=(4, 0),
        textcoords="offset points", rotation=90, ha="left", va="top", fontsize=_SMALL,
        color=look.text,
        bbox={"facecolor": look.ground or "none", "edgecolor": "none", "pad": 1.5, "alpha": 0.85},
    )  # fmt: skip


def _dress(axes: Any, currency: str, look: ChartLook) -> None:
    from matplotlib.ticker import FuncFormatter

    axes.xaxis.set_major_locator(steps_of(10 ** minor_units(currency) if currency else 60))
    axes.xaxis.set_major_formatter(
        FuncFormatter(lambda value, _place: fitting(tick_words(value, currency, "en")))
    )
    axes.yaxis.set_visible(False)
    axes.tick_params(colors=look.muted, labelsize=_SMALL, length=2)
    axes.margins(x=0.02, y=0.02)
    for side, spine in axes.spines.items():
        spine.set_visible(side == "bottom")
        spine.set_color(look.muted)
