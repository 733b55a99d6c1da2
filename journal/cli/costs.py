"""restoration-journal costs: what it cost."""

from pathlib import Path
from typing import Any

import click

from journal.actions.costs import costs, summary
from journal.actions.journals import open_journal
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, table, tell
from journal.domain.costs import COSTS_BY, CostRow, CostsBy, CostSummary, CostTable
from journal.domain.hours import spoken_hours
from journal.domain.money import format_money


@click.command("costs")
@journal_argument
@click.option("--by", type=click.Choice(COSTS_BY), default="category", show_default=True)
@json_option
def command(journal: Path, by: CostsBy, as_json: bool) -> None:
    """Read what the car cost, restoration against upkeep, and the hours beside it.

    With --json: a list of objects, one a row and the last the total, with key, label, restoration,
    upkeep and unproven (whole minor units of the journal's currency), currency and minutes.
    """
    with open_journal(journal, read_only=True) as session:
        laid_out, figures = costs(session, by), summary(session)
    if as_json:
        answer([_row(row, laid_out.currency) for row in (*laid_out.rows, laid_out.total)])
        return
    _show(laid_out)
    _tell_apart(figures)


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
        tell(f"{person.label}: {spoken_hours(person.minutes)}, not valued in money.")
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
