"""restoration-journal worth: what the car is valued at, and cars to compare it with."""

from datetime import date
from pathlib import Path

import click

from journal.actions.cars import car
from journal.actions.journals import open_journal
from journal.actions.session import Session
from journal.actions.valuations import (
    comparables,
    record_comparable,
    record_valuation,
    valuations,
)
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, table, tell
from journal.domain.ids import ComparableId, ValuationId
from journal.domain.money import format_money, parse_money
from journal.domain.valuations import Comparable, PriceKind, Valuation, ValuationBasis
from journal.domain.when import When, parse, spoken


@click.command("worth")
@journal_argument
@click.argument("amount", required=False)
@click.option("--by", "valuer", default="", help="Who valued the car.")
@click.option(
    "--basis",
    type=click.Choice([basis.value for basis in ValuationBasis]),
    default=ValuationBasis.MARKET.value,
    show_default=True,
)
@click.option("--like", help="AMOUNT is the price of this other car, to compare with.")
@click.option("--currency", help="The other car's currency. [default: the journal's]")
@click.option(
    "--kind",
    type=click.Choice([kind.value for kind in PriceKind]),
    default=PriceKind.ASKED.value,
    show_default=True,
    help="How the other car's price is known.",
)
@click.option("--source", default="", help="Where the other car's price was seen.")
@click.option("--date", "day", help="The day, as EDTF or in words. [default: today]")
@click.option("--note", default="", help="Words about it.")
@json_option
def command(
    journal: Path,
    amount: str | None,
    valuer: str,
    basis: str,
    like: str | None,
    currency: str | None,
    kind: str,
    source: str,
    day: str | None,
    note: str,
    as_json: bool,
) -> None:
    """List what the car of JOURNAL is valued at, or record AMOUNT as a valuation.

    A valuation is neither money spent nor hours, and is added to neither.

    With --json: an object of two lists: valuations (date, amount, currency, by, basis, note) and
    comparables (date, car, amount, currency, kind, source, note); amounts are whole minor units,
    dates EDTF.
    """
    if amount is None:
        with open_journal(journal, read_only=True) as session:
            _list(session, as_json)
        return
    when = parse(day) if day else When.on(date.today())
    with open_journal(journal) as session:
        own = car(session).currency
        if like is None:
            worth = parse_money(amount, own)
            changes = record_valuation(
                session,
                Valuation(ValuationId(0), when, worth, valuer, ValuationBasis(basis), note),
            )
        else:
            code = (currency or own).upper()
            price = parse_money(amount, code)
            changes = record_comparable(
                session,
                Comparable(ComparableId(0), when, like, price, code, PriceKind(kind), source, note),
            )
    tell(changes.label + ".")


def _list(session: Session, as_json: bool) -> None:
    own, worth, others = car(session).currency, valuations(session), comparables(session)
    if as_json:
        answer({"valuations": _as_json(worth, own), "comparables": _others_as_json(others)})
        return
    if worth:
        table(
            ("date", "valued at", "by", "basis", "note"),
            (
                (spoken(v.when), format_money(v.amount, own), v.valuer, v.basis.value, v.note)
                for v in worth
            ),
            right=frozenset({1}),
        )
    if others:
        table(
            ("date", "price", "", "car", "source"),
            (
                (spoken(c.when), format_money(c.price, c.currency), c.kind.value, c.text, c.source)
                for c in others
            ),
            right=frozenset({1}),
        )
    if not worth and not others:
        tell("Nobody has valued the car yet.")


def _as_json(worth: tuple[Valuation, ...], currency: str) -> list[dict[str, object]]:
    return [
        {
            "date": v.when.edtf,
            "amount": v.amount,
            "currency": currency,
            "by": v.valuer,
            "basis": v.basis.value,
            "note": v.note,
        }
        for v in worth
    ]


def _others_as_json(others: tuple[Comparable, ...]) -> list[dict[str, object]]:
    return [
        {
            "date": c.when.edtf,
            "car": c.text,
            "amount": c.price,
            "currency": c.currency,
            "kind": c.kind.value,
            "source": c.source,
            "note": c.note,
        }
        for c in others
    ]
