"""restoration-journal people: who works on the car."""

from pathlib import Path
from typing import Any

import click

from journal.actions.cars import car
from journal.actions.hours import hour_sums
from journal.actions.journals import open_journal
from journal.actions.people import all_people, listed_people, save_person
from journal.actions.session import Session
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, table, tell
from journal.domain.hours import spoken_hours
from journal.domain.ids import PersonId
from journal.domain.money import format_money, parse_money
from journal.domain.people import Person, PersonKind, same_name


@click.command("people")
@journal_argument
@click.argument("name", required=False)
@click.option("--kind", type=click.Choice([kind.value for kind in PersonKind]))
@click.option("--rate", help='What an own hour is valued at; "" for nothing.')
@click.option("--note", help="Words about them.")
@json_option
def command(
    journal: Path,
    name: str | None,
    kind: str | None,
    rate: str | None,
    note: str | None,
    as_json: bool,
) -> None:
    """List who works on the car in JOURNAL, or record NAME as own or paid.

    Own hours are counted, and valued only at a rate given here; that value is never added to the
    money spent. What a paid person cost stands on receipts.

    With --json: a list of objects with name, kind, rate and value (whole minor units of the
    journal's currency, null for none), currency, minutes, clocked and at_least (minutes) and note.
    """
    if name is None:
        with open_journal(journal, read_only=True) as session:
            _list(session, as_json)
        return
    with open_journal(journal) as session:
        tell(save_person(session, _person(session, name, kind, rate, note)).label + ".")


def _person(
    session: Session, name: str, kind: str | None, rate: str | None, note: str | None
) -> Person:
    """Somebody on the list with what was given anew, or somebody new."""
    known = {same_name(one.name): one for one in listed_people(session)}
    before = known.get(same_name(name), Person(PersonId(0), name))
    amount = before.rate
    if rate is not None:
        amount = parse_money(rate, car(session).currency) if rate.strip() else None
    chosen = PersonKind(kind) if kind else before.kind
    if chosen is PersonKind.PAID and rate is None:
        amount = None
    return Person(before.id, before.name, chosen, amount, before.note if note is None else note)


def _list(session: Session, as_json: bool) -> None:
    sums = hour_sums(session, "person")
    by_key = {row.key: row for row in sums.rows}
    rows: list[dict[str, Any]] = []
    for person in all_people(session):
        found = by_key.get(same_name(person.name))
        rows.append(
            {
                "name": person.name,
                "kind": person.kind.value,
                "rate": person.rate,
                "value": found.value if found else None,
                "currency": sums.currency,
                "minutes": found.minutes if found else 0,
                "clocked": found.clocked if found else 0,
                "at_least": found.at_least if found else 0,
                "note": person.note,
            }
        )
    if as_json:
        answer(rows)
        return

    def money(minor: int | None) -> str:
        return "" if minor is None else format_money(minor, sums.currency)

    table(
        ("person", "kind", "hours", "rate an hour", "own hours valued at"),
        (
            (r["name"], r["kind"], spoken_hours(r["minutes"]), money(r["rate"]), money(r["value"]))
            for r in rows
        ),
        right=frozenset({2, 3, 4}),
    )
