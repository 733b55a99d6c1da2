"""What the Ledger page shows, from one reading."""

from dataclasses import dataclass

from journal.actions.costs import costs, costs_in_money_of, laid_out_books, summary, three_figures
from journal.actions.price_indices import chosen_index
from journal.actions.session import Session
from journal.domain.areas import Area
from journal.domain.costs import CostsBy, CostSummary, CostTable
from journal.domain.errors import JournalError
from journal.domain.price_index import InMoneyOf, NotRevalued, PriceIndex, in_order
from journal.domain.receipts import Receipt
from journal.domain.valuations import ThreeFigures
from journal.domain.work import Work


@dataclass(frozen=True, slots=True)
class LedgerRead:
    """The figures and lists of the Ledger.

    Attributes:
        summary: the figures, in the money of ``wish``.
        paid: the same as it was paid; the one and the same where there is no wish.
        figures: money spent as it was paid, own hours, valuation.
        receipts: in order of date.
        work: in order of date.
        areas: the repair areas.
        index: the price index in use, None for none.
        years: the years that money can be shown in, by that index.
        wish: what the money is shown in; None for as it was paid.
        apart: money that could not be revalued.
        problem: why the wish could not be met, "" where it was.
    """

    summary: CostSummary
    paid: CostSummary
    figures: ThreeFigures
    receipts: tuple[Receipt, ...]
    work: tuple[Work, ...]
    areas: tuple[Area, ...]
    index: PriceIndex | None = None
    years: tuple[str, ...] = ()
    wish: InMoneyOf | None = None
    apart: tuple[NotRevalued, ...] = ()
    problem: str = ""


def add_up_ahead(session: Session) -> bool:
    """Have at hand what the Ledger shows first; whether it could be added up.

    What stands in the way is told when somebody asks for the sums.
    """
    try:
        read_ledger(session)
        ledger_table(session, "category")
    except JournalError:
        return False
    return True


def read_ledger(session: Session, wish: InMoneyOf | None = None) -> LedgerRead:
    """Everything the Ledger page shows at once; a wish that can't be met is told, not raised."""
    books = laid_out_books(session)
    paid, figures = summary(session), three_figures(session)
    index = chosen_index(session)
    years = _years(index)
    apart: tuple[NotRevalued, ...] = ()
    shown, problem = paid, ""
    if wish is not None:
        try:
            apart = costs_in_money_of(session, "year", wish).apart
            shown = summary(session, wish)
        except JournalError as error:
            wish, problem = None, str(error)
    return LedgerRead(
        shown, paid, figures, books.receipts, books.work, books.areas, index, years, wish, apart,
        problem,
    )  # fmt: skip


def ledger_table(session: Session, by: CostsBy, wish: InMoneyOf | None = None) -> CostTable:
    """One table of costs, as paid or in the money of a year.

    Raises:
        JournalError: the wish can't be met.
    """
    return costs(session, by) if wish is None else costs_in_money_of(session, by, wish).table


def _years(index: PriceIndex | None) -> tuple[str, ...]:
    """The years an index has anything of, the latest first."""
    if index is None:
        return ()
    years = dict.fromkeys(period[:4] for period in in_order(index.values))
    return tuple(reversed(years))
