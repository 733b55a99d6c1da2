"""restoration-journal pin: pin a photo to a panel."""

from pathlib import Path

import click

from journal.actions.drawings import find_panel, find_view
from journal.actions.journals import open_journal
from journal.actions.pins import pin
from journal.actions.timeline import find_photo
from journal.cli.options import journal_argument
from journal.cli.output import tell
from journal.domain.errors import JournalError


@click.command("pin")
@journal_argument
@click.argument("photo")
@click.argument("panel")
@click.option("--at", help="X,Y on the view, in millimetres from its top left corner.")
@click.option("--view", help="The view that --at is on.")
def command(journal: Path, photo: str, panel: str, at: str | None, view: str | None) -> None:
    """Pin PHOTO (its number, name or SHA-256) to PANEL ("Sill, left")."""
    if (at is None) != (view is None):
        raise JournalError("A spot needs both --at X,Y and --view.")
    with open_journal(journal) as session:
        shown, place = find_photo(session, photo), find_panel(session, panel)
        if at is None or view is None:
            changes = pin(session, [shown.id], place.id)
        else:
            x, y = _spot(at)
            face = find_view(session, view)
            changes = pin(session, [shown.id], place.id, view_id=face.id, x=x, y=y)
    tell(changes.label + ".")


def _spot(text: str) -> tuple[float, float]:
    try:
        x, y = (float(part) for part in text.split(","))
    except ValueError as error:
        raise JournalError(f"“{text}” is no spot; write X,Y in millimetres.") from error
    return x, y
