"""restoration-journal album: the web album, a folder of pages that any browser opens."""

from pathlib import Path

import click

from journal.actions.albums import make_album
from journal.actions.journals import open_journal
from journal.cli.cut_options import CutAsked, cut_options
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, progress, tell
from journal.domain.albums import START_PAGE
from journal.domain.cuts import Cut


@click.command("album")
@journal_argument
@cut_options(Cut.BUYER)
@click.option(
    "--out",
    type=click.Path(readable=False, path_type=Path),
    required=True,
    help="The folder to make; an album made before is replaced.",
)
@json_option
def command(journal: Path, asked: CutAsked, out: Path, as_json: bool) -> None:
    """Make a web album of JOURNAL: a folder of pages that opens from disk in any browser.

    It holds and withholds what the dossier for the same reader does; a buyer's has no private data
    unless it is told otherwise. An album made before in the same folder is replaced, and other
    files in it stay.

    With --json: an object with path, start (the page to open first), pages, photos, notes (what
    could not be shown, and why) and withheld (what is not in it by choice).
    """
    with open_journal(journal, read_only=True) as session, progress() as bar:
        report = make_album(session, out, bar, asked.choices(session))
    if as_json:
        answer(
            {
                "path": str(report.path),
                "start": str(report.path / START_PAGE),
                "pages": report.pages,
                "photos": report.photos,
                "notes": list(report.notes),
                "withheld": list(report.withheld),
            }
        )
    for note in (*report.notes, *report.withheld):
        tell(note)
    tell(f"{report.path}: {report.pages} pages, {report.photos} photos. Open {START_PAGE} in it.")
