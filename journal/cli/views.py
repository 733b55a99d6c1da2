"""restoration-journal views: the photos of the whole car that a valuer asks for."""

from pathlib import Path

import click

from journal.actions.dossier_cuts import set_standard_view, standard_views
from journal.actions.journals import open_journal
from journal.actions.photos import photos
from journal.actions.timeline import find_photo
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, put, tell
from journal.domain.standard_views import STANDARD_VIEWS


@click.command("views")
@journal_argument
@click.argument("view", required=False, type=click.Choice(list(STANDARD_VIEWS)))
@click.argument("photo", required=False)
@click.option("--clear", is_flag=True, help="Choose no photo for the view.")
@json_option
def command(journal: Path, view: str | None, photo: str | None, clear: bool, as_json: bool) -> None:
    """Read which photo shows each standard view of the car, or choose PHOTO for VIEW.

    With --json: a list of objects with view, photo (its number, null for none) and name.
    """
    changing = view is not None and (photo is not None or clear)
    with open_journal(journal, read_only=not changing) as session:
        if view is not None and changing:
            chosen = None if clear else find_photo(session, photo or "").id
            tell(set_standard_view(session, view, chosen).label + ".")
        found = {row.name: row.photo_id for row in standard_views(session)}
        names = {row.id: row.name for row in photos(session, list(found.values()))}
    rows = [(name, found.get(name)) for name in STANDARD_VIEWS if view in (None, name)]
    if as_json:
        answer([{"view": n, "photo": p, "name": names[p] if p else None} for n, p in rows])
        return
    for name, photo_id in rows:
        put(f"{name}: {names[photo_id] if photo_id else 'no photo'}")
