"""restoration-journal dossier: the dossier as a PDF, in three cuts."""

from dataclasses import replace
from pathlib import Path

import click

from journal.actions.dossier_cuts import choose
from journal.actions.dossiers import make_dossier
from journal.actions.journals import open_journal
from journal.cli.cut_options import CutAsked, cut_options
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, progress, tell
from journal.domain.cuts import PAPERS, PICTURE_SIZES, Choices, Cut


@click.command("dossier")
@journal_argument
@cut_options(Cut.OWN)
@click.option("--paper", type=click.Choice(list(PAPERS)), help="A4 or Letter.")
@click.option(
    "--pictures", type=click.Choice(list(PICTURE_SIZES)), help="As large as print or a screen asks."
)
@click.option("--keep", is_flag=True, help="Keep these choices in the journal.")
@click.option(
    "--out",
    type=click.Path(readable=False, path_type=Path),
    required=True,
    help="The PDF to write.",
)
@json_option
def command(
    journal: Path,
    asked: CutAsked,
    paper: str | None,
    pictures: str | None,
    keep: bool,
    out: Path,
    as_json: bool,
) -> None:
    """Make the dossier of JOURNAL for a buyer, a valuer or the own shelf.

    A buyer's has no private data unless it is told otherwise. Parts and what is withheld are those
    chosen on the Dossier page, changed by the options given.

    With --json: an object with path, for, pages, photos, notes (what could not be shown, and why)
    and withheld (what is not in it by choice, as the dossier says it).
    """
    with open_journal(journal, read_only=not keep) as session, progress() as bar:
        choices = _with_sizes(asked.choices(session), paper, pictures)
        if keep:
            choose(session, choices)
        report = make_dossier(session, out, bar, choices)
    if as_json:
        answer(
            {
                "path": str(report.path),
                "for": asked.cut.value,
                "pages": report.pages,
                "photos": report.photos,
                "notes": list(report.notes),
                "withheld": list(report.withheld),
            }
        )
    for note in (*report.notes, *report.withheld):
        tell(note)
    tell(f"{report.path}: {report.pages} pages, {report.photos} photos.")


def _with_sizes(choices: Choices, paper: str | None, pictures: str | None) -> Choices:
    if paper:
        choices = replace(choices, paper="letter" if paper == "letter" else "a4")
    if pictures:
        choices = replace(choices, pictures="screen" if pictures == "screen" else "print")
    return choices
