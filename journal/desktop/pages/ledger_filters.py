"""Which receipts or hours a figure of the Ledger is made of, and how much of each."""

from collections import defaultdict
from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from journal.desktop.locales import money
from journal.domain.charts import Chart
from journal.domain.costs import CostRow, CostsBy
from journal.domain.hours import spoken_hours
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

    def read(session: "Session") -> MadeOf:
        from journal.actions.costs import lines_of_figure

        return lines_of_figure(session, figure, wish)

    return LinesWanted(words, read, currency, hours)


def of_own_hours(currency: str) -> LinesWanted:
    """The hours of those who are not paid for them."""

    def read(session: "Session") -> MadeOf:
        from journal.actions.chart_lines import own_hours

        return own_hours(session)

    return LinesWanted("own hours", read, currency, hours=True)


def of_row(by: CostsBy, row: CostRow, currency: str, wish: InMoneyOf | None) -> LinesWanted:
    """A row of a table of costs."""
    hours = not row.money and bool(row.minutes)
    return LinesWanted(row.label, _row_reader(by, row.key, wish), currency, hours)


def of_panel(panel_id: int, label: str, currency: str, wish: InMoneyOf | None) -> LinesWanted:
    """A panel's part of what the repair areas on it cost."""
    return LinesWanted(label, _row_reader("panel", str(panel_id), wish), currency)


def _row_reader(by: CostsBy, key: str, wish: InMoneyOf | None) -> "Callable[[Session], MadeOf]":
    def read(session: "Session") -> MadeOf:
        from journal.actions.costs import lines_of_row

        return lines_of_row(session, by, key, wish)

    return read


def of_mark(
    chart: Chart, bar: str, part: str, words: str, currency: str, wish: InMoneyOf | None
) -> LinesWanted:
    """A part of a bar of a chart."""

    def read(session: "Session") -> MadeOf:
        from journal.actions.chart_lines import lines_of_mark

        return lines_of_mark(session, chart, bar, part, wish)

    return LinesWanted(words, read, currency)


@dataclass(frozen=True, slots=True)
class Lines:
    """What of the two lists a figure is made of; None where it has nothing of one of them."""

    receipts: Only | None
    work: Only | None


def read_lines(session: "Session", wanted: LinesWanted) -> Lines:
    """What a figure is made of; takes its time with ten thousand receipts."""
    made_of = wanted.read(session)
    receipts = work = None
    if made_of.money or not made_of.time:
        beside = f"and {spoken_hours(made_of.minutes)} of work" if made_of.time else ""
        receipts = _only_receipts(wanted, made_of, beside)
    if made_of.time:
        beside = f"and {money(made_of.total, wanted.currency)} spent" if made_of.money else ""
        work = _only_work(wanted, made_of, beside)
    return Lines(receipts, work)


def _only_receipts(wanted: LinesWanted, made_of: MadeOf, beside: str) -> Only:
    parts: defaultdict[int, int] = defaultdict(int)
    texts: defaultdict[int, dict[str, None]] = defaultdict(dict)
    for piece in made_of.money:
        parts[piece.receipt_id] += piece.money
        texts[piece.receipt_id][piece.text] = None
    said = {number: "; ".join(found) for number, found in texts.items()}
    return Only(wanted.words, parts.keys(), parts, said, wanted.currency, beside)


def _only_work(wanted: LinesWanted, made_of: MadeOf, beside: str) -> Only:
    parts: defaultdict[int, int] = defaultdict(int)
    for piece in made_of.time:
        parts[piece.work_id] += piece.minutes
    return Only(wanted.words, parts.keys(), parts, beside=beside)


def these(words: str, ids: Collection[ReceiptId]) -> Only:
    """Receipts by number."""
    return Only(words, frozenset(ids))
