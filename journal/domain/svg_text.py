"""The drawing as SVG that other programs can show and change, and that comes back whole.

Names, sides, systems, stacks and millimetres are carried in ``title`` elements and in attributes
that begin with ``data-``, as SVG 2 allows; ``data-look`` marks what is there for the eye alone.
"""

import html
import re
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from journal.domain.drawing import Decor, Drawing, Panel, View, Weight
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import stroke_to_path_data, to_path_data

#: Paper between the views of a sheet, and room above each for its name, in millimetres.
_GAP, _ROOM = 150.0, 150.0

#: Edge of the tile that a pattern is drawn in, in the pattern's own units.
TILE = 8.0

#: What XML can't hold.
_UNWRITABLE = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


class Look(NamedTuple):
    """How a panel is filled.

    Attributes:
        fill: a colour as SVG writes it: "#f7dcc9".
        pattern: path data of lines drawn over the fill, in a tile of 8 by 8; empty for none.
        ink: the colour of the pattern's lines.
    """

    fill: str
    pattern: str = ""
    ink: str = "#35312b"


#: A panel nothing is said of.
PLAIN = Look("#f4f1ea")

#: A place on the sheet: left and top.
_Spot = tuple[float, float]


def drawing_svg(
    drawing: Drawing,
    view_id: ViewId | None = None,
    looks: Mapping[PanelId, Look] | None = None,
) -> str:
    """One view, or with None the sheet of all views, as an SVG document of true size.

    Panels without a look are plain.

    Raises:
        JournalError: the drawing has no such view.
    """
    views = drawing.views if view_id is None else (drawing.view(view_id),)
    spots, width, height = _layout(views) if view_id is None else _alone(views[0])
    line = max(1.0, max((max(v.width, v.height) for v in views), default=0) / 900)
    chosen = dict(looks or {})
    size = f'width="{_n(width)}mm" height="{_n(height)}mm" viewBox="0 0 {_n(width)} {_n(height)}"'
    parts = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" version="1.1" {size} data-drawing="1">',
        _title(views[0].name if view_id is not None else "Drawing"),
        *_patterns(chosen, line),
    ]
    for view, spot in zip(views, spots, strict=True):
        parts.extend(_view(drawing, view, spot, chosen, line, named=view_id is None))
    if view_id is None:
        parts.extend(_undrawn(drawing))
    return "\n".join([*parts, "</svg>", ""])


def _alone(view: View) -> tuple[list[_Spot], float, float]:
    return [(0.0, 0.0)], view.width, view.height


def _layout(views: tuple[View, ...]) -> tuple[list[_Spot], float, float]:
    """Two views a row, each under room for its name; with the size of the sheet."""
    spots: list[_Spot] = []
    top, width = _GAP, 0.0
    for first in range(0, len(views), 2):
        left = _GAP
        for view in views[first : first + 2]:
            spots.append((left, top + _ROOM))
            left += view.width + _GAP
        width = max(width, left)
        top += _ROOM + max(v.height for v in views[first : first + 2]) + _GAP
    return spots, max(width, 2 * _GAP), max(top, 2 * _GAP)


def _view(
    drawing: Drawing,
    view: View,
    spot: _Spot,
    looks: Mapping[PanelId, Look],
    line: float,
    *,
    named: bool,
) -> Iterator[str]:
    panels = {p.id: p for p in drawing.panels}
    place = f' transform="translate({_n(spot[0])} {_n(spot[1])})"' if any(spot) else ""
    known = f'data-view="{_a(view.name)}" data-number="{view.id}"'
    size = f'width="{_n(view.width)}" height="{_n(view.height)}"'
    yield f'<g id="view-{view.id}" {known}{place}>'
    yield _title(view.name)
    yield f'<rect data-look="frame" x="0" y="0" {size} fill="none" stroke="none"/>'
    if named:
        text = f'font-family="sans-serif" font-size="{_n(_ROOM * 0.5)}" fill="#35312b"'
        yield f'<text data-look="name" x="0" y="{_n(-_ROOM * 0.2)}" {text}>{_t(view.name)}</text>'
    decor = drawing.decor_on(view.id)
    yield from (_decor(one, line) for one in decor if one.weight is Weight.GROUND)
    for placed in drawing.shapes_on(view.id):
        panel = panels[placed.panel_id]
        path = to_path_data(placed.shape)
        yield from _panel(panel, view, path, looks.get(panel.id, PLAIN), line)
    yield from (_decor(one, line) for one in decor if one.weight is not Weight.GROUND)
    yield "</g>"


def _panel(panel: Panel, view: View, path: str, look: Look, line: float) -> Iterator[str]:
    ink = f'fill="{_a(look.fill)}" stroke="#35312b" stroke-width="{_n(line)}"'
    form = f'd="{path}" fill-rule="evenodd" stroke-linejoin="round"'
    yield (
        f'<path id="panel-{panel.id}-view-{view.id}" {_known(panel)} {ink} {form}>'
        f"{_title(panel.label)}</path>"
    )
    if look.pattern:
        fill = f'fill="url(#{_pattern_id(look)})" stroke="none"'
        yield f'<path data-look="pattern" {fill} d="{path}" fill-rule="evenodd"/>'


def _known(panel: Panel) -> str:
    return (
        f'data-panel="{_a(panel.name)}" data-side="{panel.side.value}" '
        f'data-system="{panel.system.value}" data-number="{panel.id}"'
    )


def _decor(decor: Decor, line: float) -> str:
    ink, share = {
        Weight.GROUND: ("#8a8378", 1.6),
        Weight.DETAIL: ("#6b655c", 0.6),
        Weight.CENTRE: ("#6b655c", 0.6),
    }[decor.weight]
    dashes = f' stroke-dasharray="{_n(line * 12)} {_n(line * 5)}"'
    dashed = dashes if decor.weight is Weight.CENTRE else ""
    look = f'fill="none" stroke="{ink}" stroke-width="{_n(line * share)}"{dashed}'
    return (
        f'<path data-line="{decor.weight.value}" {look} d="{stroke_to_path_data(decor.stroke)}"/>'
    )


def _undrawn(drawing: Drawing) -> Iterator[str]:
    """The panels that are on no view."""
    shown = {s.panel_id for s in drawing.shapes}
    for panel in drawing.panels:
        if panel.id not in shown:
            yield f"<g {_known(panel)}>{_title(panel.label)}</g>"


def _patterns(looks: Mapping[PanelId, Look], line: float) -> Iterator[str]:
    drawn = {_pattern_id(look): look for look in looks.values() if look.pattern}
    if not drawn:
        return
    yield "<defs>"
    for name, look in drawn.items():
        edge = f'width="{_n(TILE)}" height="{_n(TILE)}" patternUnits="userSpaceOnUse"'
        ink = f'fill="none" stroke="{_a(look.ink)}" stroke-width="1"'
        yield f'<pattern id="{name}" {edge} patternTransform="scale({_n(line * 2.2)})">'
        yield f'<path data-look="tile" d="{_a(look.pattern)}" {ink}/></pattern>'
    yield "</defs>"


def _pattern_id(look: Look) -> str:
    letters = "".join(c if c.isalnum() else "-" for c in f"{look.ink} {look.pattern}")
    return f"pattern-{letters}"


def _title(text: str) -> str:
    return f"<title>{_t(text)}</title>"


def _t(text: str) -> str:
    """Text as an element holds it."""
    return html.escape(_UNWRITABLE.sub(" ", text), quote=False)


def _a(text: str) -> str:
    """Text as an attribute holds it: line ends and tabs too, which XML would make spaces."""
    escaped = html.escape(_UNWRITABLE.sub(" ", text))
    return escaped.replace("\n", "&#10;").replace("\t", "&#9;").replace("\r", "&#13;")


def _n(value: float) -> str:
    """A number without idle zeros, to a thousandth of a millimetre."""
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
