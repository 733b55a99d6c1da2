"""The dossier as the templates read it: one JSON value and the files it names.

Texts travel as JSON strings and are printed as they are; none of them is ever read as markup.
"""

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, field
from typing import Any

from journal.domain.cuts import Part
from journal.domain.standard_views import OUTSIDE
from journal.dossier import diagram
from journal.dossier.document import AreaStory, Dossier, Grid, Labelled, Lack, Shown, Warned
from journal.dossier.drawings import drawings
from journal.dossier.framing import Framed
from journal.dossier.papers import paper_of
from journal.dossier.printing import Print, Unprinted
from journal.dossier.rows import (
    GUTTER,
    HALF_SHAPE,
    THIRD_SHAPE,
    Placed,
    half_width,
    in_rows,
    placed,
    third_width,
)
from journal.dossier.words import excerpt, listed

#: The longest caption under a picture, in characters; what is longer is printed below in full.
CAPTION_ROOM = 240

#: The longest name in a heading or the contents list.
_HEADING_ROOM = 140

#: The longest title in the head of a page.
_RUNNING_ROOM = 70

#: From this many gaps of one kind on, those that say the same are one paragraph.
_MOST_LINES = 6

#: Greatest height of the cover's picture, in millimetres.
COVER_HEIGHT = 162.0

#: The pictures of a document by their number.
Prints = Mapping[int, Print | Unprinted]


@dataclass(slots=True)
class Sheet:
    """What the templates need: the JSON value, and the drawings it names, as SVG."""

    data: dict[str, Any]
    files: dict[str, bytes] = field(default_factory=dict)


def sheet(dossier: Dossier, prints: Prints, framed: Mapping[int, Framed] | None = None) -> Sheet:
    """The dossier laid out for the templates; ``prints`` are its pictures by number.

    ``framed`` are the pictures of pairs laid over each other, by the pair's place.
    """
    files: dict[str, bytes] = {}
    data = {
        **_head(dossier),
        **drawings(dossier, files),
        "cover": _cover(dossier, prints, files),
        "figures": [asdict(row) for row in dossier.figures],
        "identity": [_identity(row) for row in dossier.identity],
        "milestones": [asdict(row) for row in dossier.milestones],
        "standard_views": _standard_views(dossier, prints),
        "condition": _grid(dossier.condition),
        "pairs": _pairs(dossier, prints, framed or {}),
        "remaining": [asdict(row) for row in dossier.remaining],
        "areas": [_area(area, prints, paper_of(dossier).measure) for area in dossier.areas],
        "has_areas": dossier.choices.has(Part.AREAS),
        "notes": [asdict(row) for row in dossier.notes],
        "costs": _costs(dossier),
        "charts": _charts(dossier, files),
        "estimate": _grid(dossier.estimate),
        "values": [asdict(grid) for grid in dossier.values],
        "people": _grid(dossier.people),
        "has_gaps": dossier.choices.has(Part.GAPS),
        "lacks": [_lack(row) for row in dossier.lacks],
        "cautions": [_caution(row) for row in dossier.cautions],
        "method": [asdict(row) for row in dossier.method],
        "withheld": list(dossier.withheld),
        "photos": [_index_row(shown) for shown in dossier.shown],
        "others": [asdict(row) | {"sha256": grouped(row.sha256)} for row in dossier.others],
    }
    _mark_first(data)
    return Sheet(data, files)


def _mark_first(data: dict[str, Any]) -> None:
    """Mark the first place of every photo on the pages, to which links lead."""
    cover = data["cover"] or {}
    seen = {cover["mark"]} if "mark" in cover else set()
    cells = [view["cell"] for view in data["standard_views"] if view["cell"]]
    cells += [cell for pair in data["pairs"] for cell in pair["cells"]]
    cells += [cell for area in data["areas"] for row in area["rows"] for cell in row]
    for cell in cells:
        cell["first"] = cell["number"] not in seen
        seen.add(cell["number"])


def _head(dossier: Dossier) -> dict[str, Any]:
    """What stands on the cover and round every page."""
    title = dossier.car.title.strip() or "The car"
    paper = paper_of(dossier)
    return {
        "title": title,
        "short_title": excerpt(title, _HEADING_ROOM),
        "running_title": excerpt(title, _RUNNING_ROOM),
        "author": dossier.car.owner.strip(),
        "subtitle": dossier.subtitle,
        "period": dossier.period,
        "owner": dossier.car.owner.strip(),
        "cut": dossier.cut.words,
        "story": _paragraphs(dossier.car.story) if dossier.choices.has(Part.STORY) else [],
        "year": dossier.made_on.year,
        "month": dossier.made_on.month,
        "day": dossier.made_on.day,
        "made_on": f"{dossier.made_on.day} {dossier.made_on:%B %Y}",
        "version": dossier.program_version,
        "paper": paper.name,
        "page_width": paper.width,
        "measure": paper.measure,
    }


def _identity(row: Labelled) -> dict[str, Any]:
    """A line of the identity; what follows the first line is said small."""
    value, _, hint = row.value.partition("\n")
    return {"label": row.label, "value": value, "hint": hint}


def _grid(grid: Grid | None) -> dict[str, Any] | None:
    return asdict(grid) if grid else None


def _standard_views(dossier: Dossier, prints: Prints) -> list[dict[str, Any]]:
    made = []
    measure = paper_of(dossier).measure
    for view in dossier.views:
        outside = view.name in OUTSIDE
        wide = half_width(measure) if outside else third_width(measure)
        shape = HALF_SHAPE if outside else THIRD_SHAPE
        cell = _placed(Placed(view.shown, wide, wide / shape), prints) if view.shown else None
        made.append({"name": view.name, "outside": outside, "cell": cell})
    return made


def _pairs(dossier: Dossier, prints: Prints, framed: Mapping[int, Framed]) -> list[dict[str, Any]]:
    made = []
    for place, pair in enumerate(dossier.pairs):
        cells = [_half(shown, prints, dossier) for shown in (pair.before, pair.after)]
        for cell, picture in zip(cells, framed.get(place, ()), strict=False):
            cell["file"] = picture.name
        made.append(
            {
                "area": pair.area,
                "name": excerpt(pair.name, _HEADING_ROOM),
                "caption": excerpt(pair.caption.strip(), CAPTION_ROOM),
                "how": pair.how if place in framed else "",
                "cells": cells,
            }
        )
    return made


def _half(shown: Shown, prints: Prints, dossier: Dossier) -> dict[str, Any]:
    """A photo in half the width of the page, in a box of one shape for all of them."""
    wide = half_width(paper_of(dossier).measure)
    return _placed(Placed(shown, wide, wide / HALF_SHAPE), prints)


def _charts(dossier: Dossier, files: dict[str, bytes]) -> list[dict[str, Any]]:
    made = []
    for number, chart in enumerate(dossier.charts, 1):
        files[f"chart-{number}.svg"] = chart.svg
        made.append({"file": f"chart-{number}.svg", "title": chart.title, "alt": chart.alt})
    return made


def _paragraphs(text: str) -> list[str]:
    return [part.strip() for part in text.splitlines() if part.strip()]


def _cover(dossier: Dossier, prints: Prints, files: dict[str, bytes]) -> dict[str, Any] | None:
    """The picture of the cover: the photo, else the drawing, else none."""
    if dossier.cover is not None:
        printed = prints.get(dossier.cover.number)
        if isinstance(printed, Print):
            ratio = printed.width / printed.height
            fitted = _fit(printed.name, ratio, dossier.cover.alt, paper_of(dossier).width)
            return fitted | {"mark": dossier.cover.number}
    line = diagram.outline(dossier.drawing)
    if line is None:
        return None
    files["outline.svg"] = line.svg
    alt = f"Drawing of the car, {line.name}."
    fitted = _fit("outline.svg", line.width / line.height, alt, paper_of(dossier).width)
    return fitted | {"drawn": True}


def _fit(name: str, ratio: float, alt: str, page: float) -> dict[str, Any]:
    height = min(page / ratio, COVER_HEIGHT)
    return {"file": name, "width": height * ratio, "height": height, "alt": alt}


def _area(area: AreaStory, prints: Prints, measure: float) -> dict[str, Any]:
    shapes = {n: p.width / p.height for n, p in prints.items() if isinstance(p, Print)}
    rows = [placed(row, shapes, measure) for row in in_rows(area.shown)]
    return {
        "number": area.number,
        "name": area.name,
        "short_name": excerpt(area.name, _HEADING_ROOM),
        "panels": area.panels,
        "standing": area.standing,
        "found": _paragraphs(area.found),
        "done": _paragraphs(area.done),
        "steps": [asdict(step) for step in area.steps],
        "claims": [asdict(claim) for claim in area.claims],
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


def _placed(cell: Placed, prints: Prints) -> dict[str, Any]:
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
        "first": False,
    }


def _long_captions(shown: Sequence[Shown]) -> list[dict[str, Any]]:
    return [
        {"number": row.number, "text": _paragraphs(row.photo.caption)}
        for row in shown
        if len(row.photo.caption.strip()) > CAPTION_ROOM
    ]


def _costs(dossier: Dossier) -> dict[str, Any]:
    made = asdict(dossier.costs)
    has_totals = any(row["total"] for row in made["receipts"])
    for row in made["receipts"]:
        row["papers"] = [grouped(sha) for sha in row["papers"]]
    return made | {"has_totals": has_totals, "title": _money_title(dossier)}


def _money_title(dossier: Dossier) -> str:
    """The heading over money and hours: what of them is in this document."""
    if dossier.costs.grids:
        return "What it cost"
    return "Hours and receipts" if dossier.costs.receipts else "Hours"


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
