"""The drawing as SVG that other programs can show and change, and that comes back whole.

Names, sides, systems, stacks and millimetres are carried in ``title`` elements and in attributes
that begin with ``data-``, as SVG 2 allows; ``data-look`` marks what is there for the eye alone.
"""

import math
from collections.abc import Iterator, Mapping, Sequence

from journal.domain.drawing import Decor, Drawing, Panel, View, Weight
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import stroke_to_path_data, to_path_data
from journal.domain.svg_legend import Surround
from journal.domain.svg_marks import (
    PLAIN,
    Look,
    Row,
    attribute,
    content,
    number,
    pattern_id,
    patterns,
)

#: Paper between the views of a sheet, and room above each for its name, in millimetres.
_GAP, _ROOM = 150.0, 150.0

#: The letters of a view's name are this part of the sheet's width, as far as there is room.
_LETTERS = 130

#: How large a unit of a pattern is against a line, on a sheet and on a view by itself.
_TILES, _TILES_ALONE = 2.2, 1.5

#: A place on the sheet: left and top.
_Spot = tuple[float, float]


def drawing_svg(
    drawing: Drawing,
    view_id: ViewId | None = None,
    looks: Mapping[PanelId, Look] | None = None,
    *,
    heading: Sequence[str] = (),
    legend: Sequence[Row] = (),
    named: bool = True,
) -> str:
    """One view, or with None the sheet of all views, as an SVG document of true size.

    Panels without a look are plain. A heading (its first line is larger) stands above, a legend
    below; without either, one view is the whole document. ``named`` writes the names of views over
    them on a sheet.

    Raises:
        JournalError: the drawing has no such view.
    """
    views = drawing.views if view_id is None else (drawing.view(view_id),)
    spots, width, height = _layout(views) if view_id is None else _alone(views[0])
    line = max(1.0, max((max(v.width, v.height) for v in views), default=0) / 900)
    chosen = dict(looks or {})
    tile = line * (_TILES if view_id is None else _TILES_ALONE)
    round_it = Surround(width, height, tuple(heading), tuple(legend), line)
    moved = [(x + round_it.left, y + round_it.top) for x, y in spots]
    wide, high = number(round_it.whole_width), number(round_it.whole_height)
    size = f'width="{wide}mm" height="{high}mm" viewBox="0 0 {wide} {high}"'
    parts = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" version="1.1" {size} data-drawing="1">',
        _title(views[0].name if view_id is not None else "Drawing"),
        *patterns([*chosen.values(), *(look for look, _ in legend)], tile),
        *round_it.drawn(),
    ]
    with_names = named and view_id is None
    for view, spot in zip(views, moved, strict=True):
        letter = min(_ROOM * 0.9, max(_ROOM * 0.5, width / _LETTERS)) if with_names else 0.0
        parts.extend(_view(drawing, view, spot, chosen, line, letter))
    if view_id is None:
        parts.extend(_undrawn(drawing))
    return "\n".join([*parts, "</svg>", ""])


def _alone(view: View) -> tuple[list[_Spot], float, float]:
    return [(0.0, 0.0)], view.width, view.height


def _layout(views: tuple[View, ...]) -> tuple[list[_Spot], float, float]:
    """Views in rows, as many side by side as make the sheet most like paper; with its size."""
    widths = sorted((view.width + _GAP for view in views), reverse=True)
    tried = [_rows(views, sum(widths[:count]) + _GAP) for count in range(1, len(views) + 1)]
    return min(tried, key=_unlike_paper, default=([], 2 * _GAP, 2 * _GAP))


def _unlike_paper(laid: tuple[list[_Spot], float, float]) -> float:
    return abs(math.log(laid[1] / laid[2] / math.sqrt(2)))


def _rows(views: tuple[View, ...], most: float) -> tuple[list[_Spot], float, float]:
    """Rows of at most a width, each view under room for its name."""
    spots: list[_Spot] = []
    left, top, high, width = _GAP, _GAP, 0.0, 0.0
    for view in views:
        if left > _GAP and left + view.width + _GAP > most:
            left, top, high = _GAP, top + _ROOM + high + _GAP, 0.0
        spots.append((left, top + _ROOM))
        left, high = left + view.width + _GAP, max(high, view.height)
        width = max(width, left)
    return spots, width, top + _ROOM + high + _GAP


def _view(
    drawing: Drawing,
    view: View,
    spot: _Spot,
    looks: Mapping[PanelId, Look],
    line: float,
    letter: float,
) -> Iterator[str]:
    """A view, its name above it in letters of that height, or none."""
    panels = {p.id: p for p in drawing.panels}
    place = f' transform="translate({number(spot[0])} {number(spot[1])})"' if any(spot) else ""
    known = f'data-view="{attribute(view.name)}" data-number="{view.id}"'
    size = f'width="{number(view.width)}" height="{number(view.height)}"'
    yield f'<g id="view-{view.id}" {known}{place}>'
    yield _title(view.name)
    yield f'<rect data-look="frame" x="0" y="0" {size} fill="none" stroke="none"/>'
    if letter:
        font = f'font-family="Cabin, sans-serif" font-size="{number(letter)}" fill="#35312b"'
        place = f'x="0" y="{number(-_ROOM * 0.2)}"'
        yield f'<text data-look="name" {place} {font}>{content(view.name)}</text>'
    decor = drawing.decor_on(view.id)
    yield from (_decor(one, line) for one in decor if one.weight is Weight.GROUND)
    for placed in drawing.shapes_on(view.id):
        panel = panels[placed.panel_id]
        path = to_path_data(placed.shape)
        yield from _panel(panel, view, path, looks.get(panel.id, PLAIN), line)
    yield from (_decor(one, line) for one in decor if one.weight is not Weight.GROUND)
    yield "</g>"


def _panel(panel: Panel, view: View, path: str, look: Look, line: float) -> Iterator[str]:
    ink = f'fill="{attribute(look.fill)}" stroke="#35312b" stroke-width="{number(line)}"'
    form = f'd="{path}" fill-rule="evenodd" stroke-linejoin="round"'
    yield (
        f'<path id="panel-{panel.id}-view-{view.id}" {_known(panel)} {ink} {form}>'
        f"{_title(panel.label)}</path>"
    )
    if look.pattern:
        fill = f'fill="url(#{pattern_id(look)})" stroke="none"'
        yield f'<path data-look="pattern" {fill} d="{path}" fill-rule="evenodd"/>'


def _known(panel: Panel) -> str:
    return (
        f'data-panel="{attribute(panel.name)}" data-side="{panel.side.value}" '
        f'data-system="{panel.system.value}" data-number="{panel.id}"'
    )


def _decor(decor: Decor, line: float) -> str:
    ink, share = {
        Weight.GROUND: ("#8a8378", 1.6),
        Weight.DETAIL: ("#6b655c", 0.6),
        Weight.CENTRE: ("#6b655c", 0.6),
    }[decor.weight]
    dashes = f' stroke-dasharray="{number(line * 12)} {number(line * 5)}"'
    dashed = dashes if decor.weight is Weight.CENTRE else ""
    look = f'fill="none" stroke="{ink}" stroke-width="{number(line * share)}"{dashed}'
    return (
        f'<path data-line="{decor.weight.value}" {look} d="{stroke_to_path_data(decor.stroke)}"/>'
    )


def _undrawn(drawing: Drawing) -> Iterator[str]:
    """The panels that are on no view."""
    shown = {s.panel_id for s in drawing.shapes}
    for panel in drawing.panels:
        if panel.id not in shown:
            yield f"<g {_known(panel)}>{_title(panel.label)}</g>"


def _title(text: str) -> str:
    return f"<title>{content(text)}</title>"
