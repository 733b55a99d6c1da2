"""restoration-journal dossier: the dossier as a PDF."""

from pathlib import Path

import click

from journal.actions.dossiers import make_dossier
from journal.actions.journals import open_journal
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, progress, tell


@click.command("dossier")
@journal_argument
@click.option(
    "--out",
    type=click.Path(readable=False, path_type=Path),
    required=True,
    help="The PDF to write.",
)
@json_option
def command(journal: Path, out: Path, as_json: bool) -> None:
    """Make the dossier of JOURNAL: the car, its story by repair area, costs, gaps, index.

    With --json: an object with path, pages, photos and notes (what could not be shown, and why).
    """
    with open_journal(journal, read_only=True) as session, progress() as bar:
        report = make_dossier(session, out, bar)
    if as_json:
        answer(
            {
                "path": str(report.path),
                "pages": report.pages,
                "photos": report.photos,
                "notes": list(report.notes),
            }
        )
    for note in report.notes:
        tell(note)
    tell(f"{report.path}: {report.pages} pages, {report.photos} photos.")
