"""restoration-journal costs: what it cost."""

from pathlib import Path
from typing import Any

import click

from journal.actions.costs import (
    costs,
    costs_in_money_of,
    lines_of_row,
    metre_costs,
    summary,
    three_figures,
)
from journal.actions.journals import open_journal
from journal.actions.price_indices import find_index
from journal.actions.session import Session
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, table, tell
from journal.domain.costs import COSTS_BY, CostRow, CostsBy, CostSummary, CostTable
from journal.domain.errors import JournalError
from journal.domain.hours import spoken_hours
from journal.domain.made_of import MadeOf
from journal.domain.metre_costs import MetreCosts
from journal.domain.money import format_money
from journal.domain.price_index import InMoneyOf, RevaluedTable, spoken_apart
from journal.domain.valuations import ThreeFigures
from journal.domain.when import spoken


@click.command("costs")
@journal_argument
@click.option("--by", type=click.Choice(COSTS_BY), default="category", show_default=True)
@click.option(
    "--in-money-of",
    "period",
    help="A year, month or quarter (2024, 2024-07, 2024-Q3) by the journal's price index.",
)
@click.option("--index", help="The price index for --in-money-of, in place of the chosen one.")
@click.option("--lines", "row", help="Read the lines and the work that this row is made of.")
@json_option
def command(
    journal: Path,
    by: CostsBy,
    period: str | None,
    index: str | None,
    row: str | None,
    as_json: bool,
) -> None:
    """Read what the car cost, restoration against upkeep, and the hours beside it.

    With --json: a list of objects, one a row and the last the total, with key, label, restoration,
    upkeep and unproven (whole minor units of the journal's currency), currency and minutes. With
    --lines as well: one object a piece, in order of date, with receipt and line (numbers, null for
    a difference to a printed total), date (EDTF), supplier, text, area (number or null), money,
    currency, upkeep and proven; for work its number as work, with date, person, text, area,
    minutes and upkeep. The pieces add up to the row.
    """
    with open_journal(journal, read_only=True) as session:
        wish = _wish(session, period, index)
        found = None if wish is None else costs_in_money_of(session, by, wish)
        laid_out = costs(session, by) if found is None else found.table
        if row is not None:
            _show_lines(lines_of_row(session, by, _key(laid_out, row), wish), laid_out, as_json)
        elif as_json:
            answer([_row(row, laid_out.currency) for row in (*laid_out.rows, laid_out.total)])
        else:
            _show(laid_out)
            _tell_apart(summary(session, wish))
            _tell_metres(metre_costs(session, wish))
            _tell_worth(three_figures(session))
        if found is not None:
            _tell_money_of(found)


def _wish(session: Session, period: str | None, index: str | None) -> InMoneyOf | None:
    if period is None:
        if index is not None:
            raise JournalError("--index goes with --in-money-of.")
        return None
    return InMoneyOf(period, None if index is None else find_index(session, index).id)


def _key(laid_out: CostTable, row: str) -> str:
    """The key of a row, named by key or label."""
    plain = row.strip().casefold()
    for one in laid_out.rows:
        if plain in (one.key.casefold(), one.label.casefold()):
            return one.key
    raise JournalError(f"The table by {laid_out.by} has no row “{row[:60]}”.")


def _row(row: CostRow, currency: str) -> dict[str, Any]:
    return {
        "key": row.key,
        "label": row.label,
        "restoration": row.restoration,
        "upkeep": row.upkeep,
        "unproven": row.unproven,
        "currency": currency,
        "minutes": row.minutes,
    }


def _show_lines(made: MadeOf, laid_out: CostTable, as_json: bool) -> None:
    currency = laid_out.currency
    if as_json:
        money = [
            {
                "receipt": piece.receipt_id,
                "line": piece.line_id,
                "date": piece.when.edtf,
                "supplier": piece.supplier,
                "text": piece.text,
                "area": piece.area_id,
                "money": piece.money,
                "currency": currency,
                "upkeep": piece.upkeep,
                "proven": not piece.unproven,
            }
            for piece in made.money
        ]
        time = [
            {
                "work": piece.work_id,
                "date": piece.when.edtf,
                "person": piece.person,
                "text": piece.note,
                "area": piece.area_id,
                "minutes": piece.minutes,
                "upkeep": piece.upkeep,
            }
            for piece in made.time
        ]
        answer([*money, *time])
        return
    bought = [
        (spoken(p.when), p.supplier, p.text, format_money(p.money, currency)) for p in made.money
    ]
    worked = [(spoken(p.when), p.person, p.note, spoken_hours(p.minutes)) for p in made.time]
    total = ("", "", "total", format_money(made.total, currency))
    hours = ("", "", "total", spoken_hours(made.minutes))
    rows = [*bought, *([total] if bought else ()), *worked, *([hours] if worked else ())]
    table(("date", "from or by", "what", "amount"), rows, right=frozenset({3}))


def _show(laid_out: CostTable) -> None:
    def money(minor: int) -> str:
        return format_money(minor, laid_out.currency)

    table(
        (laid_out.by, "restoration", "upkeep", "not proven", "hours"),
        (
            (
                row.label,
                money(row.restoration),
                money(row.upkeep),
                money(row.unproven),
                spoken_hours(row.minutes),
            )
            for row in (*laid_out.rows, laid_out.total)
        ),
        right=frozenset({1, 2, 3, 4}),
    )


def _tell_apart(figures: CostSummary) -> None:
    for person in figures.people:
        tell(f"{person.label}: {spoken_hours(person.minutes)}.")
    if figures.saved_lines:
        saved, rests = (
            format_money(minor, figures.currency)
            for minor in (figures.saved_against_new, figures.saved_on)
        )
        tell(f"Saved against buying new: {saved}, on {rests} of parts whose price new is known.")
    if figures.not_shared:
        tell(f"Shared to no repair area: {format_money(figures.not_shared, figures.currency)}.")
    if figures.differing:
        apart = format_money(figures.difference, figures.currency)
        tell(f"Printed totals differ from their lines on {len(figures.differing)}: {apart}.")
    for missing in figures.missing_rates:
        amount = format_money(missing.amount, missing.currency)
        tell(f"Left out of every sum for want of a rate: {amount}.")


def _tell_metres(found: MetreCosts) -> None:
    if (per_metre := found.total.per_metre) is None:
        return
    each, rests = (format_money(minor, found.currency) for minor in (per_metre, found.total.money))
    metres = f"{found.total.welded_mm / 1000:,.1f} m"
    tell(f"A welded metre: {each}, on {metres} and all the {rests} of the areas they are in.")


def _tell_worth(figures: ThreeFigures) -> None:
    """What is no money spent, apart from it and from each other."""
    if figures.own_value is None:
        tell(f"Own hours: {spoken_hours(figures.own_minutes)}, not valued in money.")
    else:
        value = format_money(figures.own_value, figures.currency)
        hours = spoken_hours(figures.valued_minutes)
        tell(f"Own hours: {spoken_hours(figures.own_minutes)}; {hours} of them valued at {value}.")
    if figures.valuation is not None:
        worth = format_money(figures.valuation.amount, figures.currency)
        who, when = figures.valuation.valuer, spoken(figures.valuation.when)
        tell(f"Valued at {worth} by {who}, {when} ({figures.valuation.basis.value}).")


def _tell_money_of(found: RevaluedTable) -> None:
    by = f" ({found.level.by})" if found.level.by else ""
    source = found.index.source
    tell(f"In the money of {found.level.period}{by}, by “{found.index.name}”: {source}.")
    for apart in found.apart:
        tell(spoken_apart(apart, format_money(apart.money, found.table.currency)))
