"""restoration-journal restore: a journal out of a backup."""

from pathlib import Path

import click

from journal.actions.backups import restore
from journal.cli.output import progress, tell


@click.command("restore")
@click.argument("backup", type=click.Path(readable=False, path_type=Path))
@click.argument("folder", type=click.Path(readable=False, path_type=Path))
def command(backup: Path, folder: Path) -> None:
    """Make a journal in FOLDER out of BACKUP, checking every original on the way."""
    with progress() as bar:
        restore(backup, folder, bar)
    tell(f"The journal is in {folder}.")
