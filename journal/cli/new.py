"""restoration-journal new: make a journal."""

from pathlib import Path

import click

from journal.actions.journals import new_journal
from journal.cli.output import tell
from journal.domain.car import Car


@click.command("new")
@click.argument("folder", type=click.Path(readable=False, path_type=Path))
@click.option("--title", required=True, help="The car's name, as the journal's title.")
@click.option(
    "--body",
    default="saloon",
    show_default=True,
    help="saloon, saloon two-door, estate, coupe, roadster, pickup, van, motorcycle, tractor or "
    "blank (empty sheets).",
)
@click.option("--wheelbase", type=int, default=0, help="Wheelbase in millimetres.")
@click.option("--length", type=int, default=0, help="Length in millimetres.")
@click.option("--currency", default="EUR", show_default=True, help="ISO 4217 code of the totals.")
def command(
    folder: Path, title: str, body: str, wheelbase: int, length: int, currency: str
) -> None:
    """Make a new journal in FOLDER, with a starter drawing of the car."""
    car = Car(
        title=title,
        body=body,
        wheelbase_mm=wheelbase,
        length_mm=length,
        currency=currency.upper(),
    )
    with new_journal(folder, car):
        tell(f"The journal of {title} is in {folder}.")
