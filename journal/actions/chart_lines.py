"""What a bar of a chart is made of."""

from collections.abc import Callable

from journal.actions.charts import paid_names
from journal.actions.costs import laid_out_books, lines_of_figure, lines_of_row, metre_costs
from journal.actions.session import Session
from journal.domain.charts import REST, Chart, ChartKind
from journal.domain.costs import DIFFERENCE, CostsBy
from journal.domain.ids import LineId
from journal.domain.made_of import MadeOf, MoneyPiece
from journal.domain.people import same_name
from journal.domain.price_index import InMoneyOf, period_of


def lines_of_mark(
    session: Session, chart: Chart, bar: str, part: str, wish: InMoneyOf | None = None
) -> MadeOf:
    """The lines or the work that one part of a bar is made of; they add up to it exactly.

    A bar of the cost of a metre is made of all that its repair area cost.

    Raises:
        JournalError: the wish can't be met.
    """
    if chart.kind is ChartKind.METRE:
        return _of_areas(session, bar, wish)
    if chart.kind is ChartKind.PROVEN:
        found = lines_of_row(session, "category", bar, wish)
        return _money_where(found, lambda piece: piece.unproven == (part == "unproven"))
    by: CostsBy = "year" if len(bar) == 4 else "month"
    if chart.kind is ChartKind.HOURS:
        paid, wanted = paid_names(session), part == "paid"
        time = lines_of_row(session, by, bar).time
        return MadeOf((), tuple(one for one in time if (same_name(one.person) in paid) == wanted))
    return _of_category(session, chart, bar, part, wish)


def own_hours(session: Session) -> MadeOf:
    """The work of those who are not paid for it."""
    paid = paid_names(session)
    time = lines_of_figure(session, "hours").time
    return MadeOf((), tuple(one for one in time if same_name(one.person) not in paid))


def _of_areas(session: Session, bar: str, wish: InMoneyOf | None) -> MadeOf:
    """One repair area, or all that have a welded seam."""
    if bar:
        return lines_of_row(session, "area", bar, wish)
    rows = metre_costs(session, wish).rows
    found = [lines_of_row(session, "area", str(row.area_id), wish) for row in rows]
    money = sorted((one for made in found for one in made.money), key=lambda one: one.when)
    time = sorted((one for made in found for one in made.time), key=lambda one: one.when)
    return MadeOf(tuple(money), tuple(time))


def _of_category(
    session: Session, chart: Chart, bar: str, part: str, wish: InMoneyOf | None
) -> MadeOf:
    """What was spent in one period on one category, or on all that have no part of their own."""
    by: CostsBy = "year" if len(bar) == 4 else "month"
    receipts = laid_out_books(session).receipts
    categories: dict[LineId | None, str] = {
        line.id: line.category.value for receipt in receipts for line in receipt.lines
    }
    categories[None] = DIFFERENCE
    shown = {one.key for one in chart.parts}

    def belongs(piece: MoneyPiece) -> bool:
        category = categories[piece.line_id]
        return category == part or (part == REST and category not in shown)

    lines = lines_of_row(session, by, bar, wish).money
    apart = tuple(
        piece
        for piece in lines_of_figure(session, "difference", wish).money
        if period_of(piece.when)[: len(bar)] == bar
    )
    return _money_where(MadeOf((*lines, *apart), ()), belongs)


def _money_where(found: MadeOf, passes: Callable[[MoneyPiece], bool]) -> MadeOf:
    return MadeOf(tuple(piece for piece in found.money if passes(piece)), ())
