"""Charts as plain values: bars in layers, what they say in words, and the colours they wear.

What is drawn of them is the same on screen, in a file and in the dossier.
"""

from dataclasses import dataclass
from enum import StrEnum


class ChartKind(StrEnum):
    """What a chart shows."""

    SPEND = "spend"
    HOURS = "hours"
    METRE = "metre"
    PROVEN = "proven"


#: What each is called.
CHART_TITLES = {
    ChartKind.SPEND: "Money spent over time, by category",
    ChartKind.HOURS: "Hours over time",
    ChartKind.METRE: "Cost of a welded metre, by repair area",
    ChartKind.PROVEN: "What a paper proves, by category",
}

#: The key of the part that stands for all that has no part of its own.
REST = "(the rest)"

#: How many bars the words for a chart go through one by one.
_MOST_SAID = 24


@dataclass(frozen=True, slots=True)
class Part:
    """A layer of a chart: a category, a kind of hours, proven or not."""

    key: str
    label: str


@dataclass(frozen=True, slots=True)
class Bar:
    """One bar: a value for each part of the chart, and with them what the bar says of itself.

    ``tick`` is what stands at its foot: shorter than ``label``, or "" where its neighbours say it.
    ``said`` is what is written beside it; ``values`` are minor units or minutes.
    """

    key: str
    label: str
    values: tuple[int, ...]
    said: str
    tick: str = ""

    @property
    def total(self) -> int:
        """All its parts together."""
        return sum(self.values)


@dataclass(frozen=True, slots=True)
class Chart:
    """Bars in layers.

    Attributes:
        kind: what it shows.
        title: in words, above it.
        subtitle: the car, and in the money of which year.
        currency: ISO 4217 code; "" where values are minutes.
        parts: the layers, the lowest (or leftmost) first.
        bars: in the order shown.
        lying: whether bars lie, each under its name, or stand in order of time.
        remark: what the bars leave out, below them; "" for nothing.
        words: the whole chart in words, for those who don't see it.
        locale: what its money and months are written for.
    """

    kind: ChartKind
    title: str
    subtitle: str
    currency: str
    parts: tuple[Part, ...]
    bars: tuple[Bar, ...]
    lying: bool
    remark: str
    words: str
    locale: str = "en"

    @property
    def is_empty(self) -> bool:
        """Whether there is nothing to draw."""
        return not any(value for bar in self.bars for value in bar.values)


@dataclass(frozen=True, slots=True)
class ChartLook:
    """The colours of a chart: "#RRGGBB" each.

    Attributes:
        ground: what it lies on; "" for nothing at all.
        text: words.
        muted: words of less weight.
        rule: thin lines that only divide.
        outline: round every bar, and the hatching on it.
        fills: of the parts, in order; each has a hatching of its own beside the colour.
    """

    ground: str
    text: str
    muted: str
    rule: str
    outline: str
    fills: tuple[str, ...]


#: On white paper: Okabe-Ito as the R package khroma lists it, with grey for the last; a dark
#: outline stands in for contrast where a fill is too light for the ground.
PAPER = ChartLook(
    ground="#FFFFFF",
    text="#1E1E1E",
    muted="#555555",
    rule="#D0D0D0",
    outline="#1E1E1E",
    fills=(
        "#0072B2", "#E69F00", "#009E73", "#F0E442", "#D55E00", "#56B4E9", "#CC79A7", "#BBBBBB",
    ),
)  # fmt: skip

#: On a dark ground: the same, lightened until each stands out by itself.
DARK_FILLS = (
    "#4BA3DB", "#E69F00", "#2FBF92", "#F0E442", "#F0783F", "#9AD4F5", "#E3A0C5", "#BDB7AD",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class ChartMark:
    """Where a part of a bar was drawn, in shares of the picture from its top left corner."""

    left: float
    top: float
    right: float
    bottom: float
    bar: str
    part: str
    words: str

    def holds(self, x: float, y: float) -> bool:
        """Tell whether a spot lies in it."""
        return self.left <= x <= self.right and self.top <= y <= self.bottom


@dataclass(frozen=True, slots=True)
class DrawnChart:
    """A chart drawn: rows of red, green, blue and alpha, and where its marks are."""

    width: int
    height: int
    pixels: bytes
    marks: tuple[ChartMark, ...]


def in_words(
    title: str, total: str, bars: tuple[Bar, ...], pieces: tuple[str, ...], remark: str
) -> str:
    """A chart said: its title, what it comes to, its layers, and every bar one by one."""
    said = [f"{title}: {total} in all"]
    if pieces:
        said.append("; ".join(pieces))
    shown = [bar for bar in bars if bar.total]
    said.append("; ".join(f"{bar.label} {bar.said}" for bar in shown[:_MOST_SAID]))
    if len(shown) > _MOST_SAID:
        said.append(f"and {len(shown) - _MOST_SAID} more")
    if remark:
        said.append(remark.rstrip("."))
    return ". ".join(words for words in said if words) + "."
