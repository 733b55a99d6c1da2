"""Which pages an album has, and what each is given; how it is laid out stands in the templates."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from journal.domain.cuts import Part
from journal.domain.ids import PanelId, PhotoId
from journal.domain.photos import Role
from journal.domain.record import Record
from journal.dossier import diagram, metal_map
from journal.dossier.album import links
from journal.dossier.album.canvas import canvases, labelled
from journal.dossier.album.months import timeline
from journal.dossier.album.plates import Laid, Plates
from journal.dossier.document import AreaStory, Dossier, PairShown, PanelMark, Shown


@dataclass(frozen=True, slots=True)
class Page:
    """A page: its file below the album's folder, its template, and what that is given."""

    file: str
    template: str
    title: str
    values: Mapping[str, Any]

    @property
    def is_start(self) -> bool:
        """Whether it is the page to open first, which lies above the others."""
        return "/" not in self.file


@dataclass(frozen=True, slots=True)
class PanelPage:
    """What is told of a panel: its label, how it stands, its repair areas and photos."""

    number: int
    label: str
    stage: str
    areas: tuple[AreaStory, ...]
    photos: tuple[Shown, ...]


@dataclass(frozen=True, slots=True)
class PhotoPage:
    """What is told of a photo beside its picture: where it is, and what stands next to it."""

    shown: Shown
    panels: tuple[tuple[str, str], ...]
    areas: tuple[AreaStory, ...]
    before: int
    after: int


@dataclass(frozen=True, slots=True)
class PairPage:
    """A pair with its pictures of one shape, None where they are of two."""

    pair: PairShown
    laid: Laid | None


@dataclass(slots=True)
class Site:
    """All pages, what they share, and the drawings that lie beside them, by file."""

    pages: list[Page] = field(default_factory=list)
    shared: dict[str, Any] = field(default_factory=dict)
    files: dict[str, bytes] = field(default_factory=dict)


def site(dossier: Dossier, record: Record, plates: Plates) -> Site:
    """The pages of ``dossier``; ``record`` is what it was told from, without what is withheld."""
    made, dossier = Site(), _only_told(dossier)
    has_drawing = dossier.choices.has(Part.DRAWING) and bool(dossier.drawing.shapes)
    panels = _panels(dossier, record) if has_drawing else ()
    pairs = [PairPage(pair, plates.pairs.get(n)) for n, pair in enumerate(all_pairs(dossier))]
    years = timeline(dossier, record)
    costs = _costs(dossier, made.files)
    made.shared = {
        "dossier": dossier,
        "title": dossier.car.title.strip() or "The car",
        "plates": plates.photos,
        "has_receipts": bool(dossier.costs.receipts),
        "numbers": {area.number for area in dossier.areas},
        "nav": _nav(dossier, has_drawing=has_drawing, has_costs=costs is not None, years=years),
    }
    home = _views(dossier, links.PAGES + "/") if has_drawing else ()
    best = max(home, key=lambda view: view.marked, default=None)
    start = {"view": best, "pairs": pairs, "story": _story(dossier)}
    pages = made.pages
    pages.append(Page("index.html", "start.html", "", start))
    if has_drawing:
        drawn = {"views": _views(dossier, ""), "panels": panels, **_beside(dossier, made.files)}
        pages.append(_page(links.DRAWING, "drawing.html", "The drawing", drawn))
    pages.append(_page(links.TIMELINE, "timeline.html", "Timeline", {"years": years}))
    if dossier.areas:
        pages.append(_page(links.AREAS, "areas.html", "Repair areas", {}))
    pages += (_area_page(area, pairs, dossier) for area in dossier.areas)
    for panel in panels:
        page = {"panel": panel}
        pages.append(_page(links.panel_file(panel.number), "panel.html", panel.label, page))
    pages += _photo_pages(dossier, record, panels)
    pages.append(_page(links.PHOTO_INDEX, "photos.html", "Photos", {}))
    if costs is not None:
        pages.append(_page(links.COSTS, "costs.html", _money_title(dossier), costs))
    pages.append(_page(links.RECORD, "record.html", "How this is known", {}))
    return made


def _only_told(dossier: Dossier) -> Dossier:
    """It with marks on the drawing for those repair areas alone that it tells of, if it does."""
    told = {area.number for area in dossier.areas}
    if not told:
        return dossier
    marks = [
        replace(mark, areas=tuple(number for number in mark.areas if number in told))
        for mark in dossier.marks
    ]
    return replace(dossier, marks=tuple(mark for mark in marks if mark.areas))


def all_pairs(dossier: Dossier) -> tuple[PairShown, ...]:
    """The dossier's pairs, then one for each other repair area that has a before and an after."""
    if not dossier.choices.has(Part.PAIRS):
        return dossier.pairs
    paired = {pair.area for pair in dossier.pairs}
    made = list(dossier.pairs)
    for area in dossier.areas:
        before = [shown for shown in area.shown if shown.role is Role.BEFORE]
        after = [shown for shown in area.shown if shown.role is Role.AFTER]
        if before and after and area.number not in paired:
            made.append(PairShown(area.number, area.name, before[0], after[-1], ""))
    return tuple(made)


def _page(file: str, template: str, title: str, values: Mapping[str, Any]) -> Page:
    return Page(f"{links.PAGES}/{file}", template, title, values)


def _nav(
    dossier: Dossier, *, has_drawing: bool, has_costs: bool, years: Any
) -> list[tuple[str, str]]:
    rows = (
        (has_drawing, links.DRAWING, "Drawing"),
        (bool(years), links.TIMELINE, "Timeline"),
        (bool(dossier.areas), links.AREAS, "Repair areas"),
        (bool(dossier.shown), links.PHOTO_INDEX, "Photos"),
        (has_costs, links.COSTS, "Costs" if dossier.costs.grids else "Hours"),
        (True, links.RECORD, "How it is known"),
    )
    return [(file, words) for is_there, file, words in rows if is_there]


def _story(dossier: Dossier) -> str:
    return dossier.car.story if dossier.choices.has(Part.STORY) else ""


def _views(dossier: Dossier, here: str) -> Any:
    return canvases(
        dossier.drawing,
        dossier.marks,
        dossier.car.stages,
        lambda panel: here + links.panel_file(panel),
    )


def _beside(dossier: Dossier, files: dict[str, bytes]) -> dict[str, Any]:
    """The drawing as it was, the map of the metal, and what the patterns mean."""
    stages = dossier.car.stages
    was = diagram.pictures(dossier.drawing, dossier.was.marks, stages) if dossier.was else ()
    metal = metal_map.pictures(dossier.drawing, dossier.metal_map) if dossier.metal_map else ()
    used = dossier.marks + (dossier.was.marks if dossier.was else ())
    swatches = [(svg, words) for svg, words in metal_map.legend()] if metal else []
    return {
        "legend": [
            (
                _file(
                    files,
                    f"look-{diagram.look_of(stage, stages)}",
                    diagram.swatch(diagram.look_of(stage, stages)),
                ),
                stage or "no stage recorded",
            )
            for stage in _in_order(used, stages)
        ],
        "was": _pictures(was, "was", files),
        "metal": _pictures(metal, "metal", files),
        "metal_legend": [
            (_file(files, f"metal-look-{n}", svg), words)
            for n, (svg, words) in enumerate(swatches, 1)
        ],
    }


def _in_order(marks: tuple[PanelMark, ...], stages: tuple[str, ...]) -> list[str]:
    order = {stage: place for place, stage in enumerate(stages)}
    return sorted({mark.stage for mark in marks}, key=lambda stage: order.get(stage, -1))


def _pictures(found: Any, name: str, files: dict[str, bytes]) -> list[dict[str, Any]]:
    return [
        {
            "file": _file(files, f"{name}-{number}", labelled(picture)),
            "name": picture.name,
            "alt": picture.alt,
            "width": round(picture.width),
            "height": round(picture.height),
        }
        for number, picture in enumerate(found, 1)
    ]


def _file(files: dict[str, bytes], name: str, data: bytes) -> str:
    path = f"{links.DRAWN}/{name}.svg"
    files[path] = data
    return path


def _area_page(area: AreaStory, pairs: list[PairPage], dossier: Dossier) -> Page:
    numbers = [other.number for other in dossier.areas]
    place = numbers.index(area.number)
    values = {
        "area": area,
        "pairs": [row for row in pairs if row.pair.area == area.number],
        "previous": dossier.areas[place - 1] if place else None,
        "next": dossier.areas[place + 1] if place + 1 < len(numbers) else None,
        "panels": [
            (links.panel_file(mark.panel_id), label)
            for mark in dossier.marks
            if area.number in mark.areas
            for label in [
                panel.label for panel in dossier.drawing.panels if panel.id == mark.panel_id
            ]
        ]
        if dossier.drawing.shapes
        else [],
    }
    return _page(links.area_file(area.number), "area.html", area.name, values)


def _panels(dossier: Dossier, record: Record) -> tuple[PanelPage, ...]:
    """The panels that have a repair area, in the drawing's order."""
    labels = {panel.id: panel.label for panel in dossier.drawing.panels}
    areas = {area.number: area for area in dossier.areas}
    pinned: dict[PanelId, set[PhotoId]] = {}
    for pin in record.pins:
        pinned.setdefault(pin.panel_id, set()).add(pin.photo_id)
    return tuple(
        PanelPage(
            mark.panel_id,
            labels[mark.panel_id],
            mark.stage,
            tuple(areas[number] for number in mark.areas if number in areas),
            tuple(s for s in dossier.shown if s.photo.id in pinned.get(mark.panel_id, ())),
        )
        for mark in dossier.marks
    )


def _photo_pages(dossier: Dossier, record: Record, panels: tuple[PanelPage, ...]) -> Iterator[Page]:
    files = {panel.number: links.panel_file(panel.number) for panel in panels}
    labels = {panel.id: panel.label for panel in record.drawing.panels}
    places: dict[PhotoId, dict[PanelId, None]] = {}
    for pin in record.pins:
        places.setdefault(pin.photo_id, {})[pin.panel_id] = None
    areas: dict[PhotoId, list[AreaStory]] = {}
    for area in dossier.areas:
        for shown in area.shown:
            areas.setdefault(shown.photo.id, []).append(area)
    rows = dossier.shown
    for place, shown in enumerate(rows):
        found = places.get(shown.photo.id, {})
        page = PhotoPage(
            shown,
            tuple((files.get(panel, ""), labels[panel]) for panel in found if panel in labels),
            tuple(areas.get(shown.photo.id, ())),
            rows[place - 1].number if place else 0,
            rows[place + 1].number if place + 1 < len(rows) else 0,
        )
        title = f"Photo P{shown.number}"
        yield _page(links.photo_file(shown.number), "photo.html", title, {"page": page})


def _costs(dossier: Dossier, files: dict[str, bytes]) -> dict[str, Any] | None:
    """What the page of money and hours is given; None where there is nothing of either."""
    costs = dossier.costs
    grids = [*costs.grids, *([dossier.estimate] if dossier.estimate else []), *dossier.values]
    if not (costs.figures or costs.receipts or grids or dossier.charts):
        return None
    charts = [
        {"file": _file(files, f"chart-{number}", chart.svg), "title": chart.title, "alt": chart.alt}
        for number, chart in enumerate(dossier.charts, 1)
    ]
    return {"grids": grids, "charts": charts}


def _money_title(dossier: Dossier) -> str:
    if dossier.costs.grids:
        return "Costs and hours"
    return "Hours and receipts" if dossier.costs.receipts else "Hours"
