"""Which receipts or hours a figure of the Ledger is made of, and how much of each."""

from collections import defaultdict
from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from journal.actions.chart_lines import lines_of_mark
from journal.actions.costs import lines_of_figure, lines_of_row
from journal.domain.charts import Chart
from journal.domain.costs import CostRow, CostsBy
from journal.domain.ids import ReceiptId
from journal.domain.made_of import FigureName, MadeOf
from journal.domain.price_index import InMoneyOf

if TYPE_CHECKING:
    from journal.actions.session import Session


@dataclass(frozen=True, slots=True)
class LinesWanted:
    """A figure whose lines are to be shown.

    Attributes:
        words: which figure it is.
        read: reads what it is made of; done in a reader's thread.
        currency: what the money of the figure is in.
        hours: whether it is hours that were asked for, where it is made of both.
    """

    words: str
    read: "Callable[[Session], MadeOf]"
    currency: str
    hours: bool = False


@dataclass(frozen=True, slots=True)
class Only:
    """What of a list is shown.

    Attributes:
        words: which it is.
        ids: the numbers of the records.
        parts: how much of each lies in the figure, minor units or minutes; none where not told.
        texts: what of each lies in it, in words.
        currency: what ``parts`` are in, "" for minutes.
        beside: in words what else the figure is made of that stands in another list.
    """

    words: str
    ids: Collection[int]
    parts: Mapping[int, int] = field(default_factory=dict)
    texts: Mapping[int, str] = field(default_factory=dict)
    currency: str = ""
    beside: str = ""

    @property
    def total(self) -> int:
        """What the parts add up to: the figure."""
        return sum(self.parts.values())


def of_figure(
    figure: FigureName, words: str, currency: str, wish: InMoneyOf | None = None
) -> LinesWanted:
    """One of the figures above the tabs."""
    hours = figure.endswith("hours")
    return LinesWanted(
        words, lambda session: lines_of_figure(session, figure, wish), currency, hours
    )


def of_row(by: CostsBy, row: CostRow, currency: str, wish: InMoneyOf | None) -> LinesWanted:
    """A row of a table of costs."""
    hours = not row.money and bool(row.minutes)
    return LinesWanted(
        row.label, lambda session: lines_of_row(session, by, row.key, wish), currency, hours
    )


def of_panel(panel_id: int, label: str, currency: str, wish: InMoneyOf | None) -> LinesWanted:
    """A panel's part of what the repair areas on it cost."""
    return LinesWanted(
        label, lambda session: lines_of_row(session, "panel", str(panel_id), wish), currency
    )


def of_mark(
    chart: Chart, bar: str, part: str, words: str, currency: str, wish: InMoneyOf | None
) -> LinesWanted:
    """A part of a bar of a chart."""
    return LinesWanted(
        words, lambda session: lines_of_mark(session, chart, bar, part, wish), currency
    )


def only_receipts(words: str, made_of: MadeOf, currency: str, beside: str = "") -> Only:
    """The receipts that a figure is made of."""
    parts: defaultdict[int, int] = defaultdict(int)
    texts: defaultdict[int, dict[str, None]] = defaultdict(dict)
    for piece in made_of.money:
        parts[piece.receipt_id] += piece.money
        texts[piece.receipt_id][piece.text] = None
    said = {number: "; ".join(found) for number, found in texts.items()}
    return Only(words, parts.keys(), parts, said, currency, beside)


def only_work(words: str, made_of: MadeOf, beside: str = "") -> Only:
    """The hours that a figure is made of."""
    parts: defaultdict[int, int] = defaultdict(int)
    for piece in made_of.time:
        parts[piece.work_id] += piece.minutes
    return Only(words, parts.keys(), parts, beside=beside)


def these(words: str, ids: Collection[ReceiptId]) -> Only:
    """Receipts by number."""
    return Only(words, frozenset(ids))
