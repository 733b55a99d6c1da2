"""What it came to.

Receipts and work are taken apart once and kept until something they rest on changes: every table,
figure and chart is added up from the same pieces.
"""

from collections.abc import Callable, Hashable
from dataclasses import dataclass
from typing import TypeVar

from journal.actions.kept import Since
from journal.actions.price_indices import chosen_index
from journal.actions.session import Session
from journal.domain.areas import Area
from journal.domain.costs import (
    COSTS_BY,
    CostsBy,
    CostSummary,
    CostTable,
    HoursBy,
    HoursTable,
)
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId
from journal.domain.made_of import FigureName, MadeOf
from journal.domain.metre_costs import MetreCosts
from journal.domain.price_index import InMoneyOf, PriceIndex, RevaluedTable, as_period
from journal.domain.receipts import Receipt
from journal.domain.series import Series, Step
from journal.domain.valuations import ThreeFigures
from journal.domain.work import Work
from journal.ledger.books import Books
from journal.ledger.costs import cost_summary, cost_table
from journal.ledger.hour_sums import sum_hours
from journal.ledger.hours import hours_table
from journal.ledger.inflation import Revalued, revalued
from journal.ledger.making import made_of_figure, made_of_row
from journal.ledger.metres import metre_costs as costs_by_metre
from journal.ledger.pieces import Account, taken_apart
from journal.ledger.spans import cost_series as series_of_costs
from journal.ledger.spans import hours_series as series_of_hours

Value = TypeVar("Value")

#: What the sums rest on, as ``Changes.kinds`` names it.
_RESTS_ON = frozenset({"receipts", "work", "areas", "milestones", "car", "drawing"})
_RESTS_ON_INDEX = _RESTS_ON | {"price_indices"}
_RESTS_ON_HOURS = frozenset({"work", "people"})
_RESTS_ON_METAL = frozenset({"metalwork", "areas"})


def costs(session: Session, by: CostsBy) -> CostTable:
    """Money and hours by one thing, restoration against upkeep, proven against not."""
    return _kept(session, ("costs", by), None, lambda account: cost_table(by, account))


def costs_in_money_of(session: Session, by: CostsBy, wish: InMoneyOf) -> RevaluedTable:
    """The same with all money in the money of another time.

    Raises:
        JournalError: no index is chosen, it is in another currency, or it doesn't say.
    """
    found = _revalued(session, wish)
    table = _kept(session, ("costs", by), wish, lambda account: cost_table(by, account))
    return RevaluedTable(found.index, found.level, table, found.apart)


def summary(session: Session, wish: InMoneyOf | None = None) -> CostSummary:
    """The few figures that say what the car cost; with a ``wish`` in the money of that time."""
    return _kept(session, "summary", wish, cost_summary)


def three_figures(session: Session) -> ThreeFigures:
    """Money spent, own hours and what the car is valued at: three figures, never added up."""
    journal = session.journal
    time = session.kept.get(
        "own hours",
        _RESTS_ON_HOURS,
        lambda: sum_hours("person", _account(session).books, journal.people.all()).total,
    )
    valuations = journal.valuations.all()
    return ThreeFigures(
        currency=journal.car.get().currency,
        spent=summary(session).money,
        own_minutes=time.own,
        own_value=time.value,
        valued_minutes=time.valued,
        paid_minutes=time.paid,
        valuation=valuations[-1] if valuations else None,
        valuations=valuations,
    )


def lines_of_row(session: Session, by: CostsBy, key: str, wish: InMoneyOf | None = None) -> MadeOf:
    """The lines and the work that a row of a cost table is made of; they add up to it exactly.

    With a ``wish``: of the row of the table in the money of that time.
    """
    return made_of_row(by, key, _account(session, wish))


def lines_of_figure(session: Session, figure: FigureName, wish: InMoneyOf | None = None) -> MadeOf:
    """The lines or the work that a figure of the summary is made of; they add up to it exactly.

    With a ``wish``: of the figure in the money of that time.
    """
    return made_of_figure(figure, _account(session, wish))


def metre_costs(session: Session, wish: InMoneyOf | None = None) -> MetreCosts:
    """What a welded metre cost, by repair area and in all."""
    welded = session.kept.get("welded", _RESTS_ON_METAL, lambda: _welded_mm(session))
    return costs_by_metre(_account(session, wish), welded)


def cost_series(session: Session, step: Step, wish: InMoneyOf | None = None) -> Series:
    """Money spent over time, stacked by category."""
    return _kept(session, ("series", step), wish, lambda account: series_of_costs(step, account))


def hours_series(session: Session, step: Step) -> Series:
    """Minutes worked over time, stacked by person."""
    return series_of_hours(step, _account(session))


@dataclass(frozen=True, slots=True)
class LaidOut:
    """What the car cost, and what that is made of.

    ``tables`` are in the order of ``COSTS_BY``; receipts and work in order of date.
    """

    summary: CostSummary
    tables: tuple[CostTable, ...]
    receipts: tuple[Receipt, ...]
    work: tuple[Work, ...]
    areas: tuple[Area, ...]


def laid_out(session: Session) -> LaidOut:
    """The figures, every cost table and the books behind them, from one reading."""
    books = _account(session).books
    tables = tuple(costs(session, by) for by in COSTS_BY)
    return LaidOut(summary(session), tables, books.receipts, books.work, books.areas)


def laid_out_books(session: Session) -> Books:
    """The receipts, work and areas that all sums are made of, in order of date."""
    return _account(session).books


def hours(session: Session, by: HoursBy) -> HoursTable:
    """Hours by repair area, person or year."""
    return hours_table(by, _account(session))


def _kept(
    session: Session, name: Hashable, wish: InMoneyOf | None, make: Callable[[Account], Value]
) -> Value:
    """What is worked out of the account, kept as long as that holds."""
    rests_on = _RESTS_ON if wish is None else _RESTS_ON_INDEX
    return session.kept.get(name, rests_on, lambda: make(_account(session, wish)), of=wish)


def _account(session: Session, wish: InMoneyOf | None = None) -> Account:
    if wish is not None:
        return _revalued(session, wish).account
    return session.kept.get(
        "account",
        _RESTS_ON,
        lambda: taken_apart(_books(session)),
        lambda old, since: taken_apart(_renewed(session, old.books, since), old),
    )


def _revalued(session: Session, wish: InMoneyOf) -> Revalued:
    period = as_period(wish.period)
    return session.kept.get(
        "revalued",
        _RESTS_ON_INDEX,
        lambda: revalued(_account(session), _index(session, wish), period),
        lambda old, _: revalued(_account(session), _index(session, wish), period, old),
        of=wish,
    )


def _index(session: Session, wish: InMoneyOf) -> PriceIndex:
    if wish.index_id is not None:
        return session.journal.price_indices.get(wish.index_id)
    chosen = chosen_index(session)
    if chosen is None:
        raise JournalError(
            "No price index is chosen. Bring one in that fits the journal's currency, and choose"
            " it."
        )
    return chosen


def _welded_mm(session: Session) -> dict[AreaId, float]:
    from journal.domain.seam_sums import sums_by
    from journal.domain.seams import SeamState

    metal = session.journal.metalwork
    found = sums_by(metal.seams(), metal.changes(), lambda seam: seam.area_id)
    return {area_id: sums.at_least(SeamState.WELDED) for area_id, sums in found.items()}


def _books(session: Session) -> Books:
    journal = session.journal
    return Books(
        currency=journal.car.get().currency,
        receipts=journal.receipts.all(),
        work=journal.work.all(),
        areas=journal.areas.all(),
        milestones=journal.car.milestones(),
        panels=journal.drawing.panels(),
    )


def _renewed(session: Session, old: Books, since: Since) -> Books:
    """The books as they are now, of which only what was touched is read again."""
    journal, touched = session.journal, since.kinds
    return Books(
        currency=journal.car.get().currency,
        receipts=(
            journal.receipts.renewed(old.receipts, since.edit_id)
            if "receipts" in touched
            else old.receipts
        ),
        work=journal.work.all() if "work" in touched else old.work,
        areas=journal.areas.all() if touched & {"areas", "drawing"} else old.areas,
        milestones=journal.car.milestones(),
        panels=journal.drawing.panels() if "drawing" in touched else old.panels,
    )
