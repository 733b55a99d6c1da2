"""restoration-journal demo: a made-up car."""

from pathlib import Path

import click

from journal.actions.demo import make_demo
from journal.cli.output import progress, tell


@click.command("demo")
@click.argument("folder", type=click.Path(readable=False, path_type=Path))
@click.option("--photos", type=click.IntRange(1), help="Draw only so many photos.")
def command(folder: Path, photos: int | None) -> None:
    """Make the journal of the Halden Rook, a made-up car, in FOLDER; its pictures are drawn."""
    with progress() as bar:
        make_demo(folder, bar, photos)
    tell("The demo journal is made.")
