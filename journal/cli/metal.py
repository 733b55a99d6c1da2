"""restoration-journal metal: what was welded and let in."""

from collections.abc import Iterable
from pathlib import Path
from typing import Any

import click

from journal.actions import areas as area_actions
from journal.actions import drawings
from journal.actions.journals import open_journal
from journal.actions.load_bearing import area_bearings
from journal.actions.metalwork import MetalSums, metal_sums
from journal.actions.session import Session
from journal.cli.options import journal_argument, json_option
from journal.cli.output import answer, table, tell
from journal.domain.bearings import Bearing
from journal.domain.metal_words import mass, metres
from journal.domain.patches import PatchSums
from journal.domain.seam_sums import SeamSums
from journal.domain.when import When, parse, spoken

_Named = list[tuple[str, int, str]]


@click.command("metal")
@journal_argument
@click.option("--on", "day", help="As it stood by the end of this date.")
@json_option
def command(journal: Path, day: str | None, as_json: bool) -> None:
    """Read what was welded and let in: metres of seam by state, patches, by area, panel and view.

    Each state counts what is further along too. Work within the radius of an anchor point is named
    with its distance; nothing here passes or fails a car.

    With --json: an object with on (EDTF or null), seams and patches (the whole car), by (a list of
    objects with by "area", "panel" or "view", id, name, seams, patches) and bearings (a list of
    objects with area, anchor, kind, distance_mm and text). seams has planned_mm, tacked_mm,
    welded_mm and dressed_mm; patches has count, area_cm2 and mass_g, and is null for panels and
    views.
    """
    on = parse(day) if day else None
    with open_journal(journal, read_only=True) as session:
        found = metal_sums(session, on)
        named = _named(session)
        near = _bearings(session)
    if as_json:
        answer(_document(found, on, named, near))
        return
    _show(found, on, named)
    for area, one in near:
        tell(f"{area}: {one.mark.title}. {one.text}")


def _named(session: Session) -> dict[str, _Named]:
    """What sums can stand by: for each kind its numbers and names, in the journal's order."""
    return {
        "area": [("area", a.id, a.name) for a in area_actions.areas(session)],
        "panel": [("panel", p.id, p.label) for p in drawings.panels(session)],
        "view": [("view", v.id, v.name) for v in drawings.views(session)],
    }


def _bearings(session: Session) -> list[tuple[str, Bearing]]:
    return [
        (area.name, one)
        for area in area_actions.areas(session)
        for one in area_bearings(session, [area.id])
    ]


def _rows(
    found: MetalSums, named: dict[str, _Named]
) -> Iterable[tuple[str, int, str, SeamSums, PatchSums | None]]:
    for by, number, name in named["area"]:
        seams = {int(k): v for k, v in found.seams_by_area.items()}.get(number)
        patches = {int(k): v for k, v in found.patches_by_area.items()}.get(number)
        if seams or patches:
            yield by, number, name, seams or SeamSums(), patches or PatchSums()
    for by, sums in (("panel", found.seams_by_panel), ("view", found.seams_by_view)):
        known = {int(key): value for key, value in sums.items()}
        for _, number, name in named[by]:
            if number in known:
                yield by, number, name, known[number], None


def _document(
    found: MetalSums, on: When | None, named: dict[str, _Named], near: list[tuple[str, Bearing]]
) -> dict[str, Any]:
    return {
        "on": on.edtf if on else None,
        "seams": _seams(found.seams),
        "patches": _patches(found.patches),
        "by": [
            {
                "by": by,
                "id": number,
                "name": name,
                "seams": _seams(seams),
                "patches": None if patches is None else _patches(patches),
            }
            for by, number, name, seams, patches in _rows(found, named)
        ],
        "bearings": [
            {
                "area": area,
                "anchor": one.mark.anchor.name,
                "kind": one.mark.anchor.kind.value,
                "distance_mm": round(one.mark.distance_mm, 1),
                "text": one.text,
            }
            for area, one in near
        ],
    }


def _seams(sums: SeamSums) -> dict[str, float]:
    return {
        "planned_mm": round(sums.planned, 1),
        "tacked_mm": round(sums.tacked, 1),
        "welded_mm": round(sums.welded, 1),
        "dressed_mm": round(sums.dressed, 1),
    }


def _patches(sums: PatchSums) -> dict[str, float]:
    return {
        "count": sums.count,
        "area_cm2": round(sums.area_cm2, 1),
        "mass_g": round(sums.mass_g, 1),
    }


def _show(found: MetalSums, on: When | None, named: dict[str, _Named]) -> None:
    rows = [
        (by, name, *_cells(seams, patches)) for by, _, name, seams, patches in _rows(found, named)
    ]
    rows.append(("whole car", "", *_cells(found.seams, found.patches)))
    headings = ("by", "name", "planned", "tacked", "welded", "dressed", "patches", "steel")
    table(headings, rows, right=frozenset({2, 3, 4, 5, 6, 7}))
    if on is not None:
        tell(f"As it stood by the end of {spoken(on)}.")


def _cells(seams: SeamSums, patches: PatchSums | None) -> tuple[str, ...]:
    lengths = (seams.planned, seams.tacked, seams.welded, seams.dressed)
    metal = ("", "")
    if patches is not None:
        metal = (f"{patches.count}, {patches.area_cm2:,.0f} cm²", mass(patches.mass_g))
    return (*(metres(length) for length in lengths), *metal)
