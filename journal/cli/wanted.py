"""restoration-journal wanted: plan the buying."""

from datetime import date
from pathlib import Path
from typing import Any

import click

from journal.actions import wanted as actions
from journal.actions.areas import areas, find_area
from journal.actions.cars import car
from journal.actions.drawings import find_panel, panels
from journal.actions.journals import open_journal
from journal.actions.session import Session
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, plain, table, tell
from journal.domain.ids import SightingId, WantedId
from journal.domain.money import format_money, parse_money
from journal.domain.quantities import parse_quantity, write_quantity
from journal.domain.receipts import Category, Condition
from journal.domain.wanted import (
    Sighting,
    Wanted,
    WantedState,
    best_sighting,
    buying_sums,
    over_limit,
)
from journal.domain.wanted_words import seen_in_words, sums_in_words
from journal.domain.when import When, parse

_CONDITIONS = click.Choice([c.value for c in Condition if c is not Condition.NONE])
_DATE = click.option("--date", "day", help="The day, today where left out: EDTF, or words.")


@click.group("wanted", invoke_without_command=True)
@journal_argument
@click.pass_context
def command(context: click.Context, journal: Path) -> None:
    """Plan the buying: the parts wanted in JOURNAL, where they were seen, how far they have come.

    Without a further word the parts are listed. PART is a part's number or words that only it
    holds.
    """
    context.obj = journal
    if context.invoked_subcommand is None:
        _list(journal, everything=False, as_json=False)


@command.command("list")
@click.option("--all", "everything", is_flag=True, help="Those fitted too.")
@json_option
@click.pass_obj
def list_parts(journal: Path, everything: bool, as_json: bool) -> None:
    """List the parts that are not fitted yet, and what is still to be bought.

    With --json: an object with currency, to_buy, on_order, unfitted, at_limits, with_limit,
    likely, with_likely, ordered_likely (counts, and sums in minor units) and parts, objects with
    id, text, quantity, panel, area, category, condition, price_limit, new_price, note, state,
    since, receipt, changes (state, date, note) and sightings (id, place, price, currency, date,
    note, best, over).
    """
    _list(journal, everything=everything, as_json=as_json)


@command.command("add")
@click.argument("text")
@click.option("--quantity", default="1", show_default=True)
@click.option("--panel", help="The panel it is for.")
@click.option("--area", help="The repair area it is for.")
@click.option("--category", type=click.Choice([c.value for c in Category]), default="other")
@click.option("--condition", type=_CONDITIONS, help="Any where left out.")
@click.option("--limit", help="The most to be paid for all of it.")
@click.option("--new-price", help="What all of it would cost new.")
@click.option("--note", default="")
@_DATE
@click.pass_obj
def add(journal: Path, /, text: str, **given: Any) -> None:
    """Record that TEXT is wanted."""
    with open_journal(journal) as session:
        currency = car(session).currency
        wanted = Wanted(
            id=WantedId(0),
            text=text,
            quantity=parse_quantity(given["quantity"]),
            panel_id=find_panel(session, given["panel"]).id if given["panel"] else None,
            area_id=find_area(session, given["area"]).id if given["area"] else None,
            category=Category(given["category"]),
            condition=Condition(given["condition"]) if given["condition"] else None,
            price_limit=_money(given["limit"], currency),
            new_price=_money(given["new_price"], currency),
            note=given["note"],
        )
        changes = actions.add_wanted(session, wanted, _day(given["day"]))
    tell(f"{changes.label}: number {changes.made}.")


@command.command("seen")
@click.argument("part")
@click.argument("place")
@click.option("--price", help="For all that is wanted; left out where none was said.")
@click.option("--currency", help="ISO 4217 code; the journal's own where left out.")
@click.option("--note", default="")
@_DATE
@click.pass_obj
def seen(journal: Path, /, part: str, place: str, **given: Any) -> None:
    """Record that PART was seen at PLACE."""
    with open_journal(journal) as session:
        found = actions.find_wanted(session, part)
        own = car(session).currency
        currency = (given["currency"] or own).upper()
        price = _money(given["price"], currency)
        sighting = Sighting(
            SightingId(0), found.id, place, price, currency, _day(given["day"]), given["note"]
        )
        changes = actions.add_sighting(session, sighting)
        over = over_limit(found, sighting, own)
    tell(f"{changes.label}.")
    if over:
        tell(f"That is {format_money(over, own)} over the limit.")


@command.command("state")
@click.argument("state", type=click.Choice([s.value for s in WantedState]))
@click.argument("parts", nargs=-1, required=True)
@click.option("--note", default="")
@_DATE
@click.pass_obj
def state(journal: Path, state: str, parts: tuple[str, ...], note: str, day: str | None) -> None:
    """Record that PARTS came to STATE: wanted, seen, ordered, arrived or fitted."""
    with open_journal(journal) as session:
        ids = [actions.find_wanted(session, part).id for part in parts]
        changes = actions.move_wanted(session, ids, WantedState(state), _day(day), note)
    tell(f"{changes.label}.")


def _day(text: str | None) -> When:
    return parse(text) if text else When.on(date.today())


def _money(text: str | None, currency: str) -> int | None:
    return None if text is None else parse_money(text, currency)


def _list(journal: Path, *, everything: bool, as_json: bool) -> None:
    with open_journal(journal, read_only=True) as session:
        currency = car(session).currency
        known = actions.wanted_parts(session)
        names = _Names(session)
    parts = [part for part in known if everything or part.is_open]
    sums = buying_sums(known, currency)
    if as_json:
        answer({
            "currency": currency,
            **{name: getattr(sums, name) for name in sums.__slots__},
            "parts": [_document(part, currency, names) for part in parts],
        })  # fmt: skip
        return
    headings = ("number", "what", "for", "state", "limit", "seen")
    table(headings, [_row(part, currency, names) for part in parts], right=frozenset({0, 4}))
    tell(sums_in_words(sums, currency))


class _Names:
    """What panels and repair areas are called."""

    def __init__(self, session: Session) -> None:
        self.panels = {panel.id: panel.label for panel in panels(session)}
        self.areas = {area.id: area.name for area in areas(session)}

    def panel(self, part: Wanted) -> str:
        return self.panels.get(part.panel_id, "") if part.panel_id is not None else ""

    def area(self, part: Wanted) -> str:
        return self.areas.get(part.area_id, "") if part.area_id is not None else ""


def _row(part: Wanted, currency: str, names: _Names) -> tuple[str, ...]:
    many = "" if part.quantity == 1 else f"{write_quantity(part.quantity)} × "
    limit = "" if part.price_limit is None else format_money(part.price_limit, currency)
    place = names.area(part) or names.panel(part)
    seen_at = seen_in_words(part, currency)
    return str(part.id), many + part.text, place, part.state.value, limit, seen_at


def _document(part: Wanted, currency: str, names: _Names) -> dict[str, Any]:
    best = best_sighting(part, currency)
    return plain({
        "id": part.id,
        "text": part.text,
        "quantity": str(part.quantity),
        "panel": names.panel(part),
        "area": names.area(part),
        "category": part.category.value,
        "condition": part.condition.value if part.condition else "any",
        "price_limit": part.price_limit,
        "new_price": part.new_price,
        "note": part.note,
        "state": part.state.value,
        "since": part.since.edtf if part.since else None,
        "receipt": part.receipt_id,
        "changes": [
            {"state": c.state.value, "date": c.when.edtf, "note": c.note} for c in part.changes
        ],
        "sightings": [
            {
                "id": one.id, "place": one.place, "price": one.price, "currency": one.currency,
                "date": one.when.edtf, "note": one.note, "best": one is best,
                "over": over_limit(part, one, currency),
            }
            for one in part.sightings
        ],
    })  # fmt: skip
