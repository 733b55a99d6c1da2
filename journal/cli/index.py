"""restoration-journal index: price indices, to see costs in the money of another year."""

from pathlib import Path

import click

from journal.actions.cars import car
from journal.actions.journals import open_journal
from journal.actions.price_indices import (
    choose_index,
    find_index,
    price_indices,
    read_index_file,
    record_index,
    remove_index,
)
from journal.actions.session import Session
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, table, tell
from journal.domain.errors import JournalError
from journal.domain.price_index import span


@click.command("index")
@journal_argument
@click.option(
    "--in",
    "file",
    type=click.Path(path_type=Path),
    help="A file of two columns: period (2016, 2016-07, 2016-Q3) and value.",
)
@click.option("--name", help="What to call it; an index of that name gets the new values.")
@click.option("--currency", help="The currency it is for. [default: the journal's]")
@click.option("--source", help="Who publishes it, and which series it is.")
@click.option("--choose", help="Use this index from now on.")
@click.option("--remove", help="Take this index out.")
@json_option
def command(
    journal: Path,
    file: Path | None,
    name: str | None,
    currency: str | None,
    source: str | None,
    choose: str | None,
    remove: str | None,
    as_json: bool,
) -> None:
    """List the price indices of JOURNAL, or bring one in, choose or remove one.

    None comes with the program: an index fits one currency and country, so bring in one that is
    published for yours.

    With --json: a list of objects with name, currency, source, span, values (how many) and chosen.
    """
    if sum(wanted is not None for wanted in (file, choose, remove)) > 1:
        raise JournalError("Bring in, choose or remove: one at a time.")
    if file is None and choose is None and remove is None:
        with open_journal(journal, read_only=True) as session:
            _list(session, as_json)
        return
    with open_journal(journal) as session:
        if file is not None:
            values = read_index_file(file)
            code = (currency or car(session).currency).upper()
            changes = record_index(session, name or file.stem, code, source or "", values)
        elif choose is not None:
            changes = choose_index(session, find_index(session, choose).id)
        else:
            changes = remove_index(session, find_index(session, remove or "").id)
    tell(changes.label + ".")


def _list(session: Session, as_json: bool) -> None:
    found = price_indices(session)
    if as_json:
        answer(
            [
                {
                    "name": index.name,
                    "currency": index.currency,
                    "source": index.source,
                    "span": span(index),
                    "values": len(index.values),
                    "chosen": index.chosen,
                }
                for index in found
            ]
        )
        return
    if not found:
        tell("The journal has no price index.")
        return
    table(
        ("", "index", "currency", "from to", "values", "source"),
        (
            (
                "chosen" if index.chosen else "",
                index.name,
                index.currency,
                span(index),
                f"{len(index.values):,}",
                index.source,
            )
            for index in found
        ),
        right=frozenset({4}),
    )
