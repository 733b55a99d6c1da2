"""Charts drawn: one figure for the screen, a picture, a drawing file and the dossier.

Matplotlib draws it without a window and without anything of the person's own settings, so that
the same chart gives the same SVG, byte for byte. Letters are drawn as outlines: they look the same
wherever the file is shown, and need no font there.
"""

import io
import threading
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Any

from journal.domain.charts import Chart, ChartLook, ChartMark, DrawnChart
from journal.domain.money import minor_units
from journal.ledger.chart_text import fitting, fonts, shortened, tick_words

if TYPE_CHECKING:
    from matplotlib.figure import Figure

#: Points to an inch as the sizes below count; a picture's pixels are these times its density.
_INCH = 96
_SMALL, _PLAIN, _LARGE = 8.0, 9.0, 11.0
#: Beside colour, what tells parts apart; the first is plain.
HATCHES = ("", "///", "..", "\\\\\\", "xxx", "---", "|||", "+++")
#: Bars are as thick as this share of their place; below how many pixels a place they touch.
_THICK = 0.78
_NARROW = 6
#: A lying bar lies under its name, by this share of its place.
_LYING_THICK, _BELOW = 0.42, 0.2
#: How wide letters are on the whole, in pixels.
_LETTER = 5.9
#: How many lines a remark takes at the most; the words for the chart have all of it.
_MOST_LINES = 3
#: What a field of the legend takes beside its words, in pixels.
_SWATCH = 72
#: Fewer standing bars than these leave room beside them.
_FEW = 7
#: Matplotlib keeps fonts and settings for the whole program: one chart is drawn at a time.
DRAWING = threading.Lock()


@dataclass(frozen=True, slots=True)
class Size:
    """How large a chart is drawn: in pixels of a plain screen, and how many times as dense."""

    width: int = 900
    height: int = 440
    density: float = 1.0


def draw(chart: Chart, look: ChartLook, size: Size) -> DrawnChart:
    """The chart as pixels, with the places of its marks."""
    from matplotlib.backends.backend_agg import FigureCanvasAgg

    with DRAWING:
        figure, patches = _figure(chart, look, size)
        canvas: Any = FigureCanvasAgg(figure)
        canvas.draw()
        wide, high = canvas.get_width_height()
        pixels = bytes(canvas.buffer_rgba())
        marks = tuple(_mark(chart, *found, wide, high) for found in patches)
    return DrawnChart(wide, high, pixels, marks)


def svg(chart: Chart, look: ChartLook, size: Size) -> bytes:
    """The chart as SVG, its letters as outlines, the same bytes every time."""
    return _saved(chart, look, size, "svg", _about(chart))


def png(chart: Chart, look: ChartLook, size: Size) -> bytes:
    """The chart as PNG."""
    about = {"Title": chart.title, "Description": chart.words, "Software": None}
    return _saved(chart, look, size, "png", about)


def _about(chart: Chart) -> dict[str, Any]:
    """What an SVG says of itself; the day and the program it was made with are left out."""
    return {"Title": chart.title, "Description": chart.words, "Date": None, "Creator": None}


def _saved(chart: Chart, look: ChartLook, size: Size, kind: str, about: dict[str, Any]) -> bytes:
    out = io.BytesIO()
    with DRAWING:
        figure, _ = _figure(chart, look, size)
        figure.savefig(
            out, format=kind, metadata=about, dpi=figure.dpi, facecolor=look.ground or "none"
        )
    return out.getvalue()


@cache
def _prepare() -> None:
    """Have matplotlib forget the person's settings, and take letters as they stand."""
    import matplotlib

    matplotlib.rcdefaults()
    matplotlib.rcParams.update(
        {
            "svg.hashsalt": "restoration-journal",
            "svg.fonttype": "path",
            "text.parse_math": False,
            "axes.unicode_minus": False,
            "font.family": list(fonts()),
            "hatch.linewidth": 0.6,
        }
    )


def blank(look: ChartLook, size: Size) -> "Figure":
    """A figure with nothing on it yet; one is made at a time, with ``DRAWING`` held."""
    _prepare()
    from matplotlib.figure import Figure

    figure = Figure(
        figsize=(size.width / _INCH, size.height / _INCH),
        dpi=_INCH * size.density,
        layout="constrained",
    )
    if look.ground:
        figure.set_facecolor(look.ground)
    figure.patch.set_alpha(1 if look.ground else 0)
    return figure


_Found = tuple[int, int, Any]


def _figure(chart: Chart, look: ChartLook, size: Size) -> "tuple[Figure, list[_Found]]":
    """The figure, and its patches with the bar and part each stands for."""
    figure = blank(look, size)
    axes = figure.add_subplot()
    axes.patch.set_alpha(0)
    _head(figure, axes, chart, look, size)
    patches = _bars(axes, chart, look, size)
    _dress(axes, chart, look)
    _ends(axes, chart, look, size)
    _legend(figure, chart, look, size)
    return figure, patches


def _head(figure: "Figure", axes: Any, chart: Chart, look: ChartLook, size: Size) -> None:
    """Title above, from the left edge; the remark right below the bars."""
    figure.suptitle(fitting(chart.title), x=0.008, ha="left", fontsize=_LARGE, color=look.text)
    if chart.subtitle:
        axes.set_title(fitting(chart.subtitle), loc="left", fontsize=_PLAIN, color=look.muted)
    if chart.remark:
        words = _wrapped(fitting(chart.remark), size.width)
        axes.set_xlabel(words, loc="left", fontsize=_SMALL, color=look.muted, labelpad=6)


def _wrapped(words: str, width: int) -> str:
    import textwrap

    letters = max(24, round(width / _LETTER))
    return "\n".join(textwrap.wrap(words, letters, max_lines=_MOST_LINES, placeholder=" ..."))


def _bars(axes: Any, chart: Chart, look: ChartLook, size: Size) -> list[_Found]:
    """Draw the bars: what is above zero outward from it, what is below it the other way."""
    patches: list[_Found] = []
    count = max(1, len(chart.bars))
    room = (size.height if chart.lying else size.width) * 0.8 / count
    thick = _LYING_THICK if chart.lying else _THICK if room >= _NARROW else 1.0
    above, below = [0] * count, [0] * count
    draw_bars = axes.barh if chart.lying else axes.bar
    for place, _part in enumerate(chart.parts):
        look_of = {
            "color": look.fills[place % len(look.fills)],
            "edgecolor": look.outline,
            "linewidth": 0.8 if room >= _NARROW else 0.3,
            "hatch": HATCHES[place % len(HATCHES)],
        }
        for at, bar in enumerate(chart.bars):
            value = bar.values[place]
            if not value:
                continue
            stack = above if value > 0 else below
            start = {"left" if chart.lying else "bottom": stack[at]}
            made = draw_bars([at + _BELOW * chart.lying], [value], thick, **start, **look_of)
            stack[at] += value
            patches.append((at, place, made.patches[0]))
    return patches


def _dress(axes: Any, chart: Chart, look: ChartLook) -> None:
    """Axes: quiet lines across, money or hours along them, names or times at the bars."""
    from matplotlib.ticker import FuncFormatter

    values, names = (axes.xaxis, axes.yaxis) if chart.lying else (axes.yaxis, axes.xaxis)
    step: int = 10 ** minor_units(chart.currency) if chart.currency else 60
    values.set_major_locator(steps_of(step))
    values.set_major_formatter(
        FuncFormatter(
            lambda value, _place: fitting(tick_words(value, chart.currency, chart.locale))
        )
    )
    places = [n for n, bar in enumerate(chart.bars) if bar.tick and not chart.lying]
    names.set_ticks(places, [fitting(chart.bars[n].tick) for n in places])
    axes.set_axisbelow(True)
    axes.grid(axis="x" if chart.lying else "y", color=look.rule, linewidth=0.7)
    axes.tick_params(colors=look.muted, labelsize=_SMALL, length=0)
    names.set_tick_params(labelcolor=look.text, labelsize=_SMALL)
    for side, spine in axes.spines.items():
        spine.set_visible(side == ("left" if chart.lying else "bottom"))
        spine.set_color(look.muted)
    # A few bars are no thicker than many would be, and begin where the eye does.
    limits = (-0.6, max(len(chart.bars), 1 if chart.lying else _FEW) - 0.4)
    if chart.lying:
        axes.set_ylim(*reversed(limits))
    else:
        axes.set_xlim(*limits)


def steps_of(step: int) -> Any:
    """A few ticks, at whole hours or whole units of money."""
    from matplotlib.ticker import MaxNLocator

    class Whole(MaxNLocator):
        def tick_values(self, vmin: float, vmax: float) -> Any:
            ticks: Any = super().tick_values(vmin / step, vmax / step)
            return ticks * step

    return Whole(6, integer=True)


def _ends(axes: Any, chart: Chart, look: ChartLook, size: Size) -> None:
    """What each bar is and comes to: above a lying one; at the end of a standing one with room."""
    if chart.lying:
        _names(axes, chart, look, size)
    elif _have_room(chart, size):
        _values(axes, chart, look)
    else:
        axes.margins(y=0.05)


def _have_room(chart: Chart, size: Size) -> bool:
    """Whether every standing bar's value fits above it without touching its neighbours'."""
    longest = max((len(bar.said) for bar in chart.bars), default=0)
    return longest * _LETTER < size.width * 0.88 / max(_FEW, len(chart.bars))


def _names(axes: Any, chart: Chart, look: ChartLook, size: Size) -> None:
    letters = round((size.width - 40) / _LETTER)
    for at, bar in enumerate(chart.bars):
        said = fitting(bar.said)
        name = fitting(shortened(bar.label, max(12, letters - len(said) - 3)))
        axes.text(
            0.004, at - 0.06, f"{name}:  {said}", transform=axes.get_yaxis_transform(),
            va="bottom", fontsize=_PLAIN, color=look.text, in_layout=False,
        )  # fmt: skip


def _values(axes: Any, chart: Chart, look: ChartLook) -> None:
    for at, bar in enumerate(chart.bars):
        top = sum(value for value in bar.values if value > 0)
        if any(bar.values):
            axes.annotate(
                fitting(bar.said), (at, top), xytext=(0, 3), textcoords="offset points",
                ha="center", va="bottom", fontsize=_SMALL, color=look.text,
            )  # fmt: skip
    axes.margins(y=0.12)


def _legend(figure: "Figure", chart: Chart, look: ChartLook, size: Size) -> None:
    """The parts by colour and hatching, below the bars; none where the title says it all."""
    from matplotlib.patches import Patch

    used = [n for n in range(len(chart.parts)) if any(bar.values[n] for bar in chart.bars)]
    if not used or (chart.lying and len(chart.parts) == 1):
        return
    handles = [
        Patch(
            facecolor=look.fills[n % len(look.fills)],
            edgecolor=look.outline,
            linewidth=0.8,
            hatch=HATCHES[n % len(HATCHES)],
        )
        for n in used
    ]
    labels = [fitting(chart.parts[n].label) for n in used]
    widest = max(len(label) for label in labels) * _LETTER + _SWATCH
    figure.legend(
        handles,
        labels,
        loc="outside lower left",
        ncols=max(1, min(len(used), int(size.width / widest))),
        frameon=False,
        fontsize=_PLAIN,
        labelcolor=look.text,
        handlelength=2.2,
        handleheight=1.1,
        borderaxespad=0.2,
    )


def _mark(chart: Chart, bar: int, part: int, patch: Any, wide: int, high: int) -> ChartMark:
    """Where a part of a bar lies, and what it says."""
    box = patch.get_window_extent()
    of_bar, of_part = chart.bars[bar], chart.parts[part]
    words = of_bar.label
    if len(chart.parts) > 1:
        words += f", {of_part.label}"
    return ChartMark(
        float(box.x0 / wide), float(1 - box.y1 / high),
        float(box.x1 / wide), float(1 - box.y0 / high),
        of_bar.key, of_part.key, words,
    )  # fmt: skip
