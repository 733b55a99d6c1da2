"""The drawing for the album: each panel that has a repair area is a link to the page of it."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from journal.domain.drawing import Drawing, PanelShape, View, Weight
from journal.domain.ids import PanelId
from journal.domain.shapes import to_path_data
from journal.domain.svg_marks import attribute, content
from journal.dossier import diagram
from journal.dossier.document import PanelMark
from journal.dossier.glyphs import literal

#: Height of a number on the drawing, as a share of the view's longer side.
_NUMBER = 1 / 62


@dataclass(frozen=True, slots=True)
class Canvas:
    """A view as SVG to stand inside a page; ``marked`` is how many panels on it are links."""

    name: str
    svg: str
    marked: int


def canvases(
    drawing: Drawing,
    marks: Sequence[PanelMark],
    stages: Sequence[str],
    to: Callable[[PanelId], str],
) -> tuple[Canvas, ...]:
    """Every view that has a shape on it, in the drawing's order; ``to`` is where a panel leads."""
    by_panel = {mark.panel_id: mark for mark in marks}
    drawn = {shape.view_id for shape in drawing.shapes}
    return tuple(
        _canvas(drawing, view, by_panel, stages, to) for view in drawing.views if view.id in drawn
    )


def labelled(picture: diagram.Picture) -> bytes:
    """A drawing that is no link, as a file of its own, with its numbers on it."""
    size = max(picture.width, picture.height) * _NUMBER
    words = "".join(
        _number(label.x * picture.width, label.y * picture.height, label.text, size)
        for label in picture.labels
    )
    group = f'<g font-size="{size:.1f}">{words}</g></svg>'
    return picture.svg.replace(b"</svg>", group.encode())


def _canvas(
    drawing: Drawing,
    view: View,
    marks: Mapping[PanelId, PanelMark],
    stages: Sequence[str],
    to: Callable[[PanelId], str],
) -> Canvas:
    line = max(view.width, view.height) / 900
    prefix = f"v{view.id}-"
    shapes = drawing.shapes_on(view.id)
    marked = {shape.panel_id for shape in shapes if shape.panel_id in marks}
    looks = {panel: diagram.look_of(marks[panel].stage, stages) for panel in marked}
    decor = drawing.decor_on(view.id)
    parts = [diagram.patterns(line * 2.2, sorted(set(looks.values())), prefix)]
    parts += [diagram.decor_path(one, line) for one in decor if one.weight is Weight.GROUND]
    parts += _panels(drawing, shapes, marks, looks, line, prefix, to)
    above = [diagram.decor_path(one, line) for one in decor if one.weight is not Weight.GROUND]
    parts.append(f'<g class="above">{"".join(above)}</g>')
    size = max(view.width, view.height) * _NUMBER
    parts.append(f'<g class="numbers" font-size="{size:.1f}" aria-hidden="true">')
    for panel, spot in diagram.label_spots(drawing, view, marks).items():
        parts.append(_number(spot.x, spot.y, diagram.numbers_on(marks[panel].areas), size))
    parts.append("</g>")
    margin = max(view.width, view.height) / 100
    box = (
        f"{-margin:.1f} {-margin:.1f} {view.width + 2 * margin:.1f} {view.height + 2 * margin:.1f}"
    )
    name = attribute(literal(view.name))
    opening = f'<svg class="view" viewBox="{box}" role="group" aria-label="{name}">'
    return Canvas(view.name, f"{opening}{''.join(parts)}</svg>", len(marked))


def _panels(
    drawing: Drawing,
    shapes: Sequence[PanelShape],
    marks: Mapping[PanelId, PanelMark],
    looks: Mapping[PanelId, int],
    line: float,
    prefix: str,
    to: Callable[[PanelId], str],
) -> Iterator[str]:
    """Each shape in its place in the stack; the further shapes of a panel aren't told again."""
    labels = {panel.id: panel.label for panel in drawing.panels}
    told: set[PanelId] = set()
    for shape in shapes:
        panel = shape.panel_id
        path = diagram.panel_path(to_path_data(shape.shape), looks.get(panel), line, prefix)
        if panel not in marks:
            yield path
            continue
        words = content(literal(_said(labels.get(panel, ""), marks[panel])))
        again = ' tabindex="-1" aria-hidden="true"' if panel in told else ""
        told.add(panel)
        # The words are in a title, which is shown under the pointer and read aloud for the link.
        yield f'<a href="{attribute(to(panel))}"{again}><title>{words}</title>{path}</a>'


def _said(label: str, mark: PanelMark) -> str:
    areas = ", ".join(str(number) for number in mark.areas)
    noun = "repair area" if len(mark.areas) == 1 else "repair areas"
    return f"{label}: {mark.stage or 'no stage'}, {noun} {areas}"


def _number(x: float, y: float, text: str, size: float) -> str:
    """A repair area's number at its spot; its size is inherited, so that a phone can enlarge it."""
    ink = (
        'fill="#23211e" stroke="#ffffff" stroke-linejoin="round" paint-order="stroke"'
        f' stroke-width="{size * 0.28:.1f}"'
    )
    face = 'font-family="Cabin, sans-serif" font-weight="700" text-anchor="middle" dy="0.35em"'
    return f'<text x="{x:.1f}" y="{y:.1f}" {face} {ink}>{content(text)}</text>'
