"""The drawings of a dossier as the templates read them: as it was, as it is, the metal replaced."""

from collections.abc import Iterable, Sequence
from dataclasses import asdict
from typing import Any

from journal.domain.cuts import Part
from journal.dossier import diagram, metal_map
from journal.dossier.document import Dossier, PanelMark


def drawings(dossier: Dossier, files: dict[str, bytes]) -> dict[str, Any]:
    """The views by their stages on two days, the map of metal, and legends; SVG into ``files``."""
    stages = dossier.car.stages
    made: dict[str, Any] = {"views": [], "was": None, "legend": [], "metal_map": None}
    if dossier.choices.has(Part.DRAWING):
        now = diagram.pictures(dossier.drawing, dossier.marks, stages)
        made["views"] = _views(now, "view", files)
        looks = [*dossier.marks]
        if dossier.was is not None:
            then = diagram.pictures(dossier.drawing, dossier.was.marks, stages)
            views = _views(then, "was", files)
            made["was"] = {"heading": dossier.was.heading, "views": views}
            looks += dossier.was.marks
        made["legend"] = _legend(dossier, looks, files)
    if dossier.metal_map is not None:
        shown = metal_map.pictures(dossier.drawing, dossier.metal_map)
        made["metal_map"] = {
            "views": _views(shown, "metal", files),
            "legend": _swatches(files),
            "grid": asdict(dossier.metal_map.grid),
        }
    return made


def _views(
    pictures: Sequence[diagram.Picture], name: str, files: dict[str, bytes]
) -> list[dict[str, Any]]:
    views = []
    for number, picture in enumerate(pictures, 1):
        file = f"{name}-{number}.svg"
        files[file] = picture.svg
        views.append(
            {
                "file": file,
                "name": picture.name,
                "alt": picture.alt,
                "ratio": picture.width / picture.height,
                "labels": [asdict(label) for label in picture.labels],
            }
        )
    return views


def _legend(
    dossier: Dossier, marks: Iterable[PanelMark], files: dict[str, bytes]
) -> list[dict[str, Any]]:
    """Each stage found on the drawing of either day, with its swatch and its panels now."""
    rows = []
    order = {stage: place for place, stage in enumerate(dossier.car.stages)}
    stages = sorted({mark.stage for mark in marks}, key=lambda stage: order.get(stage, -1))
    for stage in stages:
        look = diagram.look_of(stage, dossier.car.stages)
        files[f"look-{look}.svg"] = diagram.swatch(look)
        panels = sum(mark.stage == stage for mark in dossier.marks)
        rows.append(
            {"file": f"look-{look}.svg", "stage": stage or "no stage recorded", "panels": panels}
        )
    return rows


def _swatches(files: dict[str, bytes]) -> list[dict[str, Any]]:
    rows = []
    for number, (svg, words) in enumerate(metal_map.legend(), 1):
        files[f"metal-look-{number}.svg"] = svg
        rows.append({"file": f"metal-look-{number}.svg", "words": words})
    return rows
