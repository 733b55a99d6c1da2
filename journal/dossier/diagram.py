"""The drawing of the car as it is, as SVG: panels tinted and patterned by stage, never tint alone.

Lengths are the drawing's millimetres. SVG is as in SVG 1.1; no text is drawn in it, labels are
placed by the page.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from journal.domain.drawing import Decor, Drawing, View, Weight
from journal.domain.ids import PanelId
from journal.domain.looks import STAGE_LOOKS
from journal.domain.shapes import Point, Shape, flatten, stroke_to_path_data, to_path_data
from journal.domain.svg_marks import TILE
from journal.dossier.document import PanelMark

#: How many repair areas a label on a panel names; of more it says how many more.
_MOST_NUMBERS = 4


@dataclass(frozen=True, slots=True)
class Label:
    """The numbers of a panel's repair areas, at a spot of the view in shares of its size."""

    x: float
    y: float
    text: str


@dataclass(frozen=True, slots=True)
class Picture:
    """A view drawn: SVG, what a screen reader says for it, and its labels."""

    name: str
    width: float
    height: float
    svg: bytes
    alt: str
    labels: tuple[Label, ...]


def look_of(stage: str, stages: Sequence[str]) -> int:
    """Which tint and pattern a stage has: the first stage the first, the last stage the last."""
    if stage not in stages:
        return 0
    place = stages.index(stage)
    last = len(STAGE_LOOKS) - 1
    return last if place == len(stages) - 1 else place % last


def pictures(
    drawing: Drawing, marks: Sequence[PanelMark], stages: Sequence[str]
) -> tuple[Picture, ...]:
    """Every view that has a shape on it, drawn, in the drawing's order."""
    by_panel = {mark.panel_id: mark for mark in marks}
    shown = {shape.view_id for shape in drawing.shapes}
    return tuple(
        _picture(drawing, view, by_panel, stages) for view in drawing.views if view.id in shown
    )


def outline(drawing: Drawing) -> Picture | None:
    """The first view as a plain line drawing, for a cover without a photo."""
    shown = {shape.view_id for shape in drawing.shapes}
    view = next((view for view in drawing.views if view.id in shown), None)
    return _picture(drawing, view, {}, ()) if view else None


def swatch(look: int) -> bytes:
    """A small field of a look's tint and pattern, for the legend."""
    body = panel_path("M1 1L59 1L59 29L1 29Z", look, 1.2)
    return svg(60, 30, patterns(1.0, (look,)) + body)


def _picture(
    drawing: Drawing, view: View, marks: Mapping[PanelId, PanelMark], stages: Sequence[str]
) -> Picture:
    line = max(view.width, view.height) / 900
    shapes = drawing.shapes_on(view.id)
    looks: dict[PanelId, int] = {
        shape.panel_id: look_of(marks[shape.panel_id].stage, stages)
        for shape in shapes
        if shape.panel_id in marks
    }
    parts = [patterns(line * 2.2, sorted(set(looks.values())))]
    decor = drawing.decor_on(view.id)
    parts += [decor_path(one, line) for one in decor if one.weight is Weight.GROUND]
    parts += [panel_path(to_path_data(s.shape), looks.get(s.panel_id), line) for s in shapes]
    parts += [decor_path(one, line) for one in decor if one.weight is not Weight.GROUND]
    largest = label_spots(drawing, view, marks)
    labels = tuple(
        Label(spot.x / view.width, spot.y / view.height, numbers_on(marks[panel].areas))
        for panel, spot in largest.items()
    )
    drawn = svg(view.width, view.height, "".join(parts))
    return Picture(view.name, view.width, view.height, drawn, _alt(drawing, view, marks), labels)


def numbers_on(areas: Sequence[int]) -> str:
    """The numbers of repair areas as a label has room for them."""
    text = ", ".join(str(number) for number in areas[:_MOST_NUMBERS])
    return f"{text} +{len(areas) - _MOST_NUMBERS}" if len(areas) > _MOST_NUMBERS else text


def label_spots(
    drawing: Drawing, view: View, marks: Mapping[PanelId, PanelMark]
) -> dict[PanelId, Point]:
    """Where each marked panel's label goes: in the widest part of its largest shape."""
    spots: dict[PanelId, tuple[float, Point]] = {}
    for shape in drawing.shapes_on(view.id):
        if shape.panel_id in marks:
            width, spot = _widest(shape.shape)
            if width > spots.get(shape.panel_id, (0.0, spot))[0]:
                spots[shape.panel_id] = (width, spot)
    return {panel: spot for panel, (_, spot) in spots.items()}


def _widest(shape: Shape) -> tuple[float, Point]:
    """The width and middle of the widest stretch inside a shape, at about half its height."""
    rings = flatten(shape, 5.0)
    heights = [point.y for ring in rings for point in ring]
    low, high = min(heights), max(heights)
    best = (0.0, Point(0.0, 0.0))
    for share in (0.5, 0.4, 0.6, 0.3, 0.7):
        y = low + (high - low) * share + 0.01
        crossings = sorted(_crossings(rings, y))
        for left, right in zip(crossings[::2], crossings[1::2], strict=False):
            if right - left > best[0] * 1.2:
                best = (right - left, Point((left + right) / 2, y))
    return best


def _crossings(rings: Sequence[Sequence[Point]], y: float) -> list[float]:
    found = []
    for ring in rings:
        for a, b in zip(ring, (*ring[1:], ring[0]), strict=True):
            if (a.y > y) != (b.y > y):
                found.append(a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x))
    return found


def panel_path(path: str, look: int | None, line: float, prefix: str = "") -> str:
    """A panel's outline filled as its look has it; ``prefix`` is that of the patterns' names."""
    if look is None:
        return (
            f'<path d="{path}" fill="#FFFFFF" fill-rule="evenodd" stroke="#6B665E"'
            f' stroke-width="{line:.2f}" stroke-linejoin="round"/>'
        )
    tint, _, ink = STAGE_LOOKS[look]
    shape = f'<path d="{path}" fill-rule="evenodd" stroke-linejoin="round"'
    return (
        f'{shape} fill="{tint}" stroke="none"/>'
        f'{shape} fill="url(#{prefix}look{look})" stroke="{ink}" stroke-width="{line * 1.6:.2f}"/>'
    )


def decor_path(one: Decor, line: float) -> str:
    """A line of the drawing that belongs to no panel."""
    dashes = f' stroke-dasharray="{line * 8:.1f} {line * 4:.1f}"'
    return (
        f'<path d="{stroke_to_path_data(one.stroke)}" fill="none" stroke="#8A857C"'
        f' stroke-width="{line * 0.7:.2f}" stroke-linecap="round"'
        f"{dashes if one.weight is Weight.CENTRE else ''}/>"
    )


def patterns(scale: float, looks: Sequence[int], prefix: str = "") -> str:
    """The definitions of the looks' patterns; ``prefix`` keeps those of several drawings apart."""
    rows = []
    for look in looks:
        _, path, ink = STAGE_LOOKS[look]
        paint = f'fill="none" stroke="{ink}" stroke-width="0.7"'
        rows.append(
            f'<pattern id="{prefix}look{look}" width="{TILE}" height="{TILE}"'
            f' patternUnits="userSpaceOnUse" patternTransform="scale({scale:.3f})">'
            f'<path d="{path or "M0 0"}" {paint}/></pattern>'
        )
    return f"<defs>{''.join(rows)}</defs>"


def plain(drawing: Drawing, view: View, line: float) -> Iterator[str]:
    """A view's ground, panels and lines with no stage on them, one element each."""
    decor = drawing.decor_on(view.id)
    yield from (decor_path(one, line) for one in decor if one.weight is Weight.GROUND)
    yield from (panel_path(to_path_data(s.shape), None, line) for s in drawing.shapes_on(view.id))
    yield from (decor_path(one, line) for one in decor if one.weight is not Weight.GROUND)


def svg(width: float, height: float, body: str) -> bytes:
    """A document of SVG with a little white round it."""
    margin = max(width, height) / 300
    box = f"{-margin:.1f} {-margin:.1f} {width + 2 * margin:.1f} {height + 2 * margin:.1f}"
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{box}"'
        f' width="{width:.1f}" height="{height:.1f}">{body}</svg>'
    ).encode()


def _alt(drawing: Drawing, view: View, marks: Mapping[PanelId, PanelMark]) -> str:
    labels = {panel.id: panel.label for panel in drawing.panels}
    on_view = {shape.panel_id for shape in drawing.shapes_on(view.id)}
    told = [
        f"{labels[panel]}: {marks[panel].stage or 'no stage'}"
        for panel in labels
        if panel in on_view and panel in marks
    ]
    return f"Drawing, {view.name}. {'; '.join(told) or 'No repair area on this view'}."
