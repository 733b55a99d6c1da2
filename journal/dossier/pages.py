"""The dossier as the templates read it: one JSON value and the files it names.

Texts travel as JSON strings and are printed as they are; none of them is ever read as markup.
"""

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, field
from typing import Any

from journal.dossier import diagram
from journal.dossier.document import AreaStory, Dossier, Lack, Shown, Warned
from journal.dossier.printing import Print, Unprinted
from journal.dossier.rows import GUTTER, Placed, in_rows, placed
from journal.dossier.words import excerpt, listed

#: The longest caption under a picture, in characters; what is longer is printed below in full.
CAPTION_ROOM = 240

#: The longest name in a heading or the contents list.
_HEADING_ROOM = 140

#: The longest title in the head of a page.
_RUNNING_ROOM = 70

#: From this many gaps of one kind on, those that say the same are one paragraph.
_MOST_LINES = 6

#: Width and greatest height of the cover's picture, in millimetres.
COVER_WIDTH, COVER_HEIGHT = 210.0, 158.0


@dataclass(slots=True)
class Sheet:
    """What the templates need: the JSON value, and the drawings it names, as SVG."""

    data: dict[str, Any]
    files: dict[str, bytes] = field(default_factory=dict)


def sheet(dossier: Dossier, prints: Mapping[int, Print | Unprinted]) -> Sheet:
    """The dossier laid out for the templates; ``prints`` are its pictures by number."""
    files: dict[str, bytes] = {}
    views, legend = _drawing(dossier, files)
    title = dossier.car.title.strip() or "The car"
    data: dict[str, Any] = {
        "title": title,
        "short_title": excerpt(title, _HEADING_ROOM),
        "running_title": excerpt(title, _RUNNING_ROOM),
        "author": dossier.car.owner.strip(),
        "subtitle": dossier.subtitle,
        "period": dossier.period,
        "owner": dossier.car.owner.strip(),
        "story": _paragraphs(dossier.car.story),
        "year": dossier.made_on.year,
        "month": dossier.made_on.month,
        "day": dossier.made_on.day,
        "made_on": f"{dossier.made_on.day} {dossier.made_on:%B %Y}",
        "version": dossier.program_version,
        "cover": _cover(dossier, prints, files),
        "figures": [asdict(row) for row in dossier.figures],
        "identity": [asdict(row) for row in dossier.identity],
        "milestones": [asdict(row) for row in dossier.milestones],
        "views": views,
        "legend": legend,
        "areas": [_area(area, prints) for area in dossier.areas],
        "notes": [asdict(row) for row in dossier.notes],
        "costs": _costs(dossier),
        "lacks": [_lack(row) for row in dossier.lacks],
        "cautions": [_caution(row) for row in dossier.cautions],
        "method": [asdict(row) for row in dossier.method],
        "photos": [_index_row(shown) for shown in dossier.shown],
    }
    return Sheet(data, files)


def _paragraphs(text: str) -> list[str]:
    return [part.strip() for part in text.splitlines() if part.strip()]


def _cover(
    dossier: Dossier, prints: Mapping[int, Print | Unprinted], files: dict[str, bytes]
) -> dict[str, Any] | None:
    """The picture of the cover: the photo, else the drawing, else none."""
    if dossier.cover is not None:
        printed = prints.get(dossier.cover.number)
        if isinstance(printed, Print):
            fitted = _fit(printed.name, printed.width / printed.height, dossier.cover.alt)
            return fitted | {"mark": f"photo-{dossier.cover.number}"}
    line = diagram.outline(dossier.drawing)
    if line is None:
        return None
    files["outline.svg"] = line.svg
    fitted = _fit("outline.svg", line.width / line.height, f"Drawing of the car, {line.name}.")
    return fitted | {"drawn": True}


def _fit(name: str, ratio: float, alt: str) -> dict[str, Any]:
    height = min(COVER_WIDTH / ratio, COVER_HEIGHT)
    return {"file": name, "width": height * ratio, "height": height, "alt": alt}


def _drawing(
    dossier: Dossier, files: dict[str, bytes]
) -> tuple[list[dict[str, Any]], list[dict[str, Any]]]:
    views = []
    pictures = diagram.pictures(dossier.drawing, dossier.marks, dossier.car.stages)
    for number, picture in enumerate(pictures, 1):
        files[f"view-{number}.svg"] = picture.svg
        views.append(
            {
                "file": f"view-{number}.svg",
                "name": picture.name,
                "alt": picture.alt,
                "ratio": picture.width / picture.height,
                "labels": [asdict(label) for label in picture.labels],
            }
        )
    return views, _legend(dossier, files) if views else []


def _legend(dossier: Dossier, files: dict[str, bytes]) -> list[dict[str, Any]]:
    """Each stage found on the drawing, with its swatch and its repair areas."""
    rows = []
    order = {stage: place for place, stage in enumerate(dossier.car.stages)}
    stages = sorted({mark.stage for mark in dossier.marks}, key=lambda s: order.get(s, -1))
    for stage in stages:
        look = diagram.look_of(stage, dossier.car.stages)
        files[f"look-{look}.svg"] = diagram.swatch(look)
        panels = sum(mark.stage == stage for mark in dossier.marks)
        rows.append(
            {"file": f"look-{look}.svg", "stage": stage or "no stage recorded", "panels": panels}
        )
    return rows


def _area(area: AreaStory, prints: Mapping[int, Print | Unprinted]) -> dict[str, Any]:
    shapes = {n: p.width / p.height for n, p in prints.items() if isinstance(p, Print)}
    rows = [placed(row, shapes) for row in in_rows(area.shown)]
    return {
        "number": area.number,
        "name": area.name,
        "short_name": excerpt(area.name, _HEADING_ROOM),
        "panels": area.panels,
        "standing": area.standing,
        "found": _paragraphs(area.found),
        "done": _paragraphs(area.done),
        "steps": [asdict(step) for step in area.steps],
        "entries": [asdict(entry) for entry in area.entries],
        "rows": [[_placed(cell, prints) for cell in row] for row in rows],
        "gutter": GUTTER,
        "long": _long_captions(area.shown),
        "bought": [asdict(row) for row in area.bought],
        "figures": [asdict(row) for row in area.figures],
        "evidence": list(area.evidence),
        "lacking": list(area.lacking),
        "cautions": [row.title for row in area.cautions],
        "metal": asdict(area.metal),
    }


def _placed(cell: Placed, prints: Mapping[int, Print | Unprinted]) -> dict[str, Any]:
    shown = cell.shown
    printed = prints.get(shown.number)
    reason = printed.reason if isinstance(printed, Unprinted) else ""
    return {
        "number": shown.number,
        "file": printed.name if isinstance(printed, Print) else "",
        "reason": reason,
        "width": cell.width,
        "height": cell.height,
        "alt": shown.alt,
        "role": shown.role.value if shown.role else "",
        "caption": excerpt(shown.photo.caption.strip(), CAPTION_ROOM),
        "date": shown.date,
        "known": shown.known,
        "damage": shown.photo.damage,
    }


def _long_captions(shown: Sequence[Shown]) -> list[dict[str, Any]]:
    return [
        {"number": row.number, "text": _paragraphs(row.photo.caption)}
        for row in shown
        if len(row.photo.caption.strip()) > CAPTION_ROOM
    ]


def _costs(dossier: Dossier) -> dict[str, Any]:
    made = asdict(dossier.costs)
    for row in made["receipts"]:
        row["papers"] = [grouped(sha) for sha in row["papers"]]
    return made


def _lack(lack: Lack) -> dict[str, Any]:
    """Gaps of one kind; many that differ in nothing but the thing are run into one paragraph."""
    details = {item.value for item in lack.items}
    if len(lack.items) <= _MOST_LINES or len(details) > 1:
        return asdict(lack)
    things = [item.label.rpartition(": ")[0] or item.label for item in lack.items]
    return {
        "heading": lack.heading,
        "items": [{"label": "; ".join(things) + ".", "value": lack.items[0].value}],
    }


def _caution(row: Warned) -> dict[str, Any]:
    areas = [str(number) for number in row.areas]
    where = f"Repair area{'' if len(areas) == 1 else 's'} {listed(areas)}"
    return {"title": row.title, "text": row.text, "where": where}


def _index_row(shown: Shown) -> dict[str, Any]:
    return {
        "number": shown.number,
        "date": shown.date,
        "known": shown.known,
        "name": shown.photo.name,
        "sha256": grouped(shown.photo.sha256),
        "damage": shown.photo.damage,
    }


def grouped(sha256: str) -> str:
    """A hash value in groups of eight digits, as people read long numbers."""
    return " ".join(sha256[start : start + 8] for start in range(0, len(sha256), 8))
