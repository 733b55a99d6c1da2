"""restoration-journal backup: a copy in a safe place."""

from pathlib import Path

import click

from journal.actions.backups import backup
from journal.actions.journals import open_journal
from journal.cli.options import journal_argument
from journal.cli.output import progress, tell


@click.command("backup")
@journal_argument
@click.argument("destination", type=click.Path(readable=False, path_type=Path))
def command(journal: Path, destination: Path) -> None:
    """Copy JOURNAL into a dated folder below DESTINATION, hashing every original again."""
    with open_journal(journal, read_only=True) as session, progress() as bar:
        made = backup(session, destination, bar)
    tell(f"The backup is in {made}.")
