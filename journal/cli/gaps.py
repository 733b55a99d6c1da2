"""restoration-journal gaps: what the record lacks."""

from itertools import groupby
from pathlib import Path

import click

from journal.actions.gaps import gaps
from journal.actions.journals import open_journal
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, put, tell
from journal.domain.gaps import Reader


@click.command("gaps")
@journal_argument
@click.option(
    "--for",
    "reader",
    type=click.Choice([reader.value for reader in Reader]),
    help="Sort by what a buyer or a valuer asks for first.",
)
@json_option
def command(journal: Path, reader: str | None, as_json: bool) -> None:
    """Read what the record of JOURNAL still lacks, what matters most to a reader first.

    With --json: a list of objects with kind, title, detail, weight (100 matters most), target (what
    it is about), id, photos (ids, where it is about several) and claim (the statement it would make
    stronger, "" for none in particular).
    """
    with open_journal(journal, read_only=True) as session:
        found = gaps(session, Reader(reader) if reader else None)
    if as_json:
        answer(
            [
                {
                    "kind": gap.kind.value,
                    "title": gap.title,
                    "detail": gap.detail,
                    "weight": gap.weight,
                    "target": gap.target_kind,
                    "id": gap.target_id,
                    "photos": list(gap.photo_ids),
                    "claim": gap.claim,
                }
                for gap in found
            ]
        )
        return
    if not found:
        tell("The record lacks nothing that this program looks for.")
    for kind, group in groupby(found, key=lambda gap: gap.kind):
        put(f"{kind.value[0].upper()}{kind.value[1:]}:")
        for gap in group:
            put(f"  {gap.title}. {gap.detail}")
            if gap.claim:
                put(f"    Would make stronger: {gap.claim}")
