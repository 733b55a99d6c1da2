"""restoration-journal photos: list the photos."""

from collections import defaultdict
from pathlib import Path
from typing import Any

import click

from journal.actions.drawings import panels
from journal.actions.journals import open_journal
from journal.actions.photos import all_photos
from journal.actions.pins import pins
from journal.actions.session import Session
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, plain, table
from journal.domain.photos import Photo
from journal.domain.when import spoken


@click.command("photos")
@journal_argument
@json_option
def command(journal: Path, as_json: bool) -> None:
    """List the photos of JOURNAL in order of time.

    With --json: a list of objects with id, sha256, name, taken (EDTF, local time, with the offset
    where the camera gave one), earliest and latest (ISO 8601), basis (owner's word, camera, file
    name, neighbours, scan or edit, file time or unknown), camera, offset, width and height
    (as shown, upright), orientation (Exif), panels, caption and damage.
    """
    with open_journal(journal, read_only=True) as session:
        photos, places = all_photos(session), _places(session)
    if as_json:
        answer([_row(photo, places[photo.id]) for photo in photos])
        return
    table(
        ("id", "taken", "known by", "panels", "name"),
        (
            (
                str(photo.id),
                spoken(photo.when) if photo.when else "undated",
                photo.basis.value,
                "; ".join(places[photo.id]),
                photo.name,
            )
            for photo in photos
        ),
        right=frozenset({0}),
    )


def _places(session: Session) -> dict[int, list[str]]:
    labels = {panel.id: panel.label for panel in panels(session)}
    places: dict[int, list[str]] = defaultdict(list)
    for pin in pins(session):
        places[pin.photo_id].append(labels[pin.panel_id])
    return places


def _row(photo: Photo, places: list[str]) -> dict[str, Any]:
    when = photo.when
    return plain(
        {
            "id": photo.id,
            "sha256": photo.sha256,
            "name": photo.name,
            "taken": when.edtf if when else None,
            "earliest": when.earliest.isoformat() if when else None,
            "latest": when.latest.isoformat() if when else None,
            "basis": photo.basis.value,
            "camera": photo.camera,
            "offset": photo.offset,
            "width": photo.width or None,
            "height": photo.height or None,
            "orientation": photo.orientation,
            "panels": places,
            "caption": photo.caption,
            "damage": photo.damage,
        }
    )
