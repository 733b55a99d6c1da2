"""restoration-journal find: words anywhere."""

from pathlib import Path

import click

from journal.actions.find import find
from journal.actions.journals import open_journal
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, table, tell
from journal.domain.when import spoken


@click.command("find")
@journal_argument
@click.argument("words", nargs=-1, required=True)
@click.option("--limit", type=click.IntRange(1, 1000), default=50, show_default=True)
@json_option
def command(journal: Path, words: tuple[str, ...], limit: int, as_json: bool) -> None:
    """Find photos, repair areas, panels, entries, receipts and work that hold all the WORDS.

    With --json: a list of objects with kind, id, title, snippet (the words between ‹ and ›) and
    date (EDTF).
    """
    with open_journal(journal, read_only=True) as session:
        hits = find(session, " ".join(words), limit)
    if as_json:
        answer(
            [
                {
                    "kind": hit.kind,
                    "id": hit.id,
                    "title": hit.title,
                    "snippet": hit.snippet,
                    "date": hit.when.edtf if hit.when else None,
                }
                for hit in hits
            ]
        )
        return
    if not hits:
        tell("Nothing holds these words.")
        return
    table(
        ("what", "title", "date", "words"),
        (
            (
                f"{hit.kind} {hit.id}",
                hit.title[:60],
                spoken(hit.when) if hit.when else "",
                hit.snippet,
            )
            for hit in hits
        ),
        right=frozenset(),
    )
