"""restoration-journal photos: list the photos."""

from collections import defaultdict
from pathlib import Path
from typing import Any

import click

from journal.actions.bursts import bursts, near_copies, sharpest
from journal.actions.drawings import panels
from journal.actions.journals import open_journal
from journal.actions.photos import all_photos
from journal.actions.photos import photos as photos_of
from journal.actions.pins import pins
from journal.actions.session import Session
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, plain, progress, table, tell
from journal.domain.ids import PhotoId
from journal.domain.photos import Photo
from journal.domain.when import spoken


@click.command("photos")
@journal_argument
@click.option("--bursts", "in_bursts", is_flag=True, help="List bursts, the sharpest of each.")
@click.option("--alike", is_flag=True, help="List photos anywhere that look the same.")
@json_option
def command(journal: Path, in_bursts: bool, alike: bool, as_json: bool) -> None:
    """List the photos of JOURNAL in order of time.

    With --bursts those taken within seconds that look alike, the sharpest of each first; with
    --alike those that look the same, wherever in time. Nothing is ever taken out for it. With
    --json these are a list of lists of ids.

    With --json: a list of objects with id, sha256, name, taken (EDTF, local time, with the offset
    where the camera gave one), earliest and latest (ISO 8601), basis (owner's word, camera, file
    name, neighbours, scan or edit, file time or unknown), camera, offset, width and height
    (as shown, upright), orientation (Exif), panels, caption and damage.
    """
    with open_journal(journal, read_only=True) as session:
        if in_bursts or alike:
            _tell_groups(session, _bursts(session) if in_bursts else _alike(session), as_json)
            return
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


def _bursts(session: Session) -> list[tuple[PhotoId, ...]]:
    with progress() as context:
        found = sharpest(session, bursts(session, context), context)
    return [(b.best, *(one for one in b.photo_ids if one != b.best)) for b in found]


def _alike(session: Session) -> list[tuple[PhotoId, ...]]:
    with progress() as context:
        return list(near_copies(session, context))


def _tell_groups(session: Session, groups: list[tuple[PhotoId, ...]], as_json: bool) -> None:
    if as_json:
        answer([list(group) for group in groups])
        return
    if not groups:
        tell("None.")
    for group in groups:
        names = [f"{photo.id} {photo.name}" for photo in photos_of(session, group)]
        click.echo(", ".join(names))


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
