"""The metal replaced as a map: patches and seams on the views, as SVG, and a table by area."""

from collections.abc import Iterator, Mapping, Sequence

from journal.domain.areas import Area
from journal.domain.drawing import Drawing, View
from journal.domain.ids import AreaId
from journal.domain.metal_words import mass, metres
from journal.domain.patches import Patch, patch_sums
from journal.domain.record import Record
from journal.domain.seam_sums import sums
from journal.domain.seams import Seam, SeamChange, SeamState, stretches, weld_points
from journal.domain.shapes import Point, flatten, stroke_to_path_data, to_path_data
from journal.domain.strokes import part_of
from journal.dossier import diagram
from journal.dossier.document import Grid, MetalMap

#: Ink of new metal, of what is welded, and of what is only planned or tacked.
_METAL, _EDGE, _WELD, _PLANNED = "#f0b89a", "#8c3b1b", "#5a1f08", "#1f5f8b"


def metal_map(record: Record, areas: Sequence[Area], told: Sequence[AreaId]) -> MetalMap | None:
    """The map of the repair areas ``told``; None where no metal is drawn.

    ``areas`` are all areas in the document's order.
    """
    numbers = {area.id: number for number, area in enumerate(areas, 1)}
    wanted = set(told)
    patches = tuple(patch for patch in record.patches if patch.area_id in wanted)
    seams = tuple(seam for seam in record.seams if seam.area_id in wanted)
    if not patches and not seams:
        return None
    grid = _grid(record, [area for area in areas if area.id in wanted], numbers)
    return MetalMap(patches, seams, record.seam_changes, numbers, grid)


def _grid(record: Record, areas: Sequence[Area], numbers: Mapping[AreaId, int]) -> Grid:
    rows = []
    for area in areas:
        patches = [patch for patch in record.patches if patch.area_id == area.id]
        seams = [seam for seam in record.seams if seam.area_id == area.id]
        if patches or seams:
            rows.append(_row(f"{numbers[area.id]}  {area.name}", patches, seams, record))
    ids = {area.id for area in areas}
    total = _row(
        "Together",
        [patch for patch in record.patches if patch.area_id in ids],
        [seam for seam in record.seams if seam.area_id in ids],
        record,
    )
    return Grid(
        "Metal by repair area",
        ("Repair area", "Patches", "Area", "Steel", "Seam welded", "of drawn"),
        tuple(rows),
        total,
    )


def _row(
    name: str, patches: Sequence[Patch], seams: Sequence[Seam], record: Record
) -> tuple[str, ...]:
    metal = patch_sums(patches)
    drawn = sums(seams, record.seam_changes)
    return (
        name,
        str(metal.count) if patches else "–",
        f"{metal.area_cm2:,.0f} cm²" if patches else "–",
        mass(metal.mass_g) if patches else "–",
        metres(drawn.welded) if seams else "–",
        metres(drawn.planned) if seams else "–",
    )


# --- the pictures ---


def pictures(drawing: Drawing, shown: MetalMap) -> tuple[diagram.Picture, ...]:
    """Every view that has new metal or a seam on it, in the drawing's order."""
    used = {patch.view_id for patch in shown.patches} | {seam.view_id for seam in shown.seams}
    return tuple(_picture(drawing, view, shown) for view in drawing.views if view.id in used)


def legend() -> tuple[tuple[bytes, str], ...]:
    """Swatches with what they mean."""
    patch = f'<path d="M4 4H56V26H4Z" fill="{_METAL}" stroke="{_EDGE}" stroke-width="2"/>'
    weld = f'<path d="M4 15H56" fill="none" stroke="{_WELD}" stroke-width="4"/>'
    planned = (
        f'<path d="M4 15H56" fill="none" stroke="{_PLANNED}" stroke-width="3"'
        ' stroke-dasharray="8 6"/>'
    )
    rows = ((patch, "new metal"), (weld, "seam, welded"), (planned, "seam, not welded yet"))
    return tuple((diagram.svg(60, 30, body), words) for body, words in rows)


def _picture(drawing: Drawing, view: View, shown: MetalMap) -> diagram.Picture:
    line = max(view.width, view.height) / 900
    patches = [patch for patch in shown.patches if patch.view_id == view.id]
    seams = [seam for seam in shown.seams if seam.view_id == view.id]
    parts = list(diagram.plain(drawing, view, line))
    parts += [
        f'<path d="{to_path_data(patch.shape)}" fill="{_METAL}" fill-rule="evenodd"'
        f' stroke="{_EDGE}" stroke-width="{line * 1.2:.2f}"/>'
        for patch in patches
    ]
    for seam in seams:
        parts += _seam(seam, shown.seam_changes, line)
    return diagram.Picture(
        view.name,
        view.width,
        view.height,
        diagram.svg(view.width, view.height, "".join(parts)),
        _alt(view, patches, seams, shown.numbers),
        tuple(_labels(view, patches, seams, shown.numbers)),
    )


def _seam(seam: Seam, changes: Sequence[SeamChange], line: float) -> Iterator[str]:
    own = [change for change in changes if change.seam_id == seam.id]
    if seam.joint.is_row:
        for point in weld_points(seam):
            spot = f'cx="{point.x:.1f}" cy="{point.y:.1f}" r="{line * 2:.2f}"'
            yield f'<circle {spot} fill="{_WELD}"/>'
        return
    found = stretches(seam, own)
    if not found:
        yield _line(stroke_to_path_data(seam.stroke), line, welded=False)
    for stretch in found:
        welded = stretch.state.rank >= SeamState.WELDED.rank
        part = part_of(seam.stroke, stretch.start_mm, stretch.end_mm)
        yield _line(stroke_to_path_data(part), line, welded=welded)


def _line(path: str, line: float, *, welded: bool) -> str:
    ink, dashes = (_WELD, "") if welded else (_PLANNED, f' stroke-dasharray="{line * 6:.1f}"')
    wide = line * (2.2 if welded else 1.6)
    return f'<path d="{path}" fill="none" stroke="{ink}" stroke-width="{wide:.2f}"{dashes}/>'


def _labels(
    view: View, patches: Sequence[Patch], seams: Sequence[Seam], numbers: Mapping[AreaId, int]
) -> Iterator[diagram.Label]:
    """The number of each repair area beside the first metal of it on this view."""
    places: dict[AreaId, Point] = {}
    for patch in patches:
        points = [point for ring in flatten(patch.shape, 5.0) for point in ring]
        top = min(point.y for point in points)
        middle = (min(p.x for p in points) + max(p.x for p in points)) / 2
        places.setdefault(patch.area_id, Point(middle, top))
    for seam in seams:
        places.setdefault(seam.area_id, seam.stroke.start)
    above = view.height * 0.035
    for area_id, point in places.items():
        y = max(point.y - above, above) / view.height
        yield diagram.Label(point.x / view.width, y, str(numbers.get(area_id, "")))


def _alt(
    view: View, patches: Sequence[Patch], seams: Sequence[Seam], numbers: Mapping[AreaId, int]
) -> str:
    ids = dict.fromkeys([*(p.area_id for p in patches), *(s.area_id for s in seams)])
    areas = ", ".join(str(numbers.get(area_id, "")) for area_id in ids)
    return f"Map of new metal and seams, {view.name}: repair areas {areas}."
