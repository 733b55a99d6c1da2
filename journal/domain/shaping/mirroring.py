"""Mirroring a panel or a whole side to the other side of the car."""

from collections.abc import Callable
from dataclasses import replace
from enum import StrEnum

from journal.domain.drawing import Decor, Drawing, Panel, PanelShape, Side, View
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Point, Shape, Stroke, moved_edges, tidy, transformed
from journal.domain.shaping.making import add_view, put_shape, top_order, with_new_panel
from journal.domain.shaping.placed import check_placed, index_of

_OTHER = {Side.LEFT: Side.RIGHT, Side.RIGHT: Side.LEFT, Side.CENTRE: Side.CENTRE}


class Axis(StrEnum):
    """How the centre line of a view that shows both sides of the car runs."""

    UPRIGHT = "upright"
    LEVEL = "level"


#: Views that lie along the car as our own drawings have them: nose left, centre line level.
_LEVEL_VIEWS = ("top", "roof", "underside", "below", "floor", "cabin", "chassis", "load")


def axis_of(view: View) -> Axis:
    """The centre line of a view that shows both sides, as its name tells.

    Level for top, underside, cabin and their like, upright for front, rear, engine bay and all
    others.
    """
    words = view.name.casefold()
    return Axis.LEVEL if any(word in words for word in _LEVEL_VIEWS) else Axis.UPRIGHT


def other_side_name(name: str) -> str:
    """The name of the view of the other side of the car; empty where the name is of no side."""
    words = name.split(" ")
    swap = {"left": "right", "right": "left", "Left": "Right", "Right": "Left"}
    if not any(word in swap for word in words):
        return ""
    return " ".join(swap.get(word, word) for word in words)


def mirror_panel(
    drawing: Drawing, panel_id: PanelId, view_id: ViewId, axis: Axis | None = None
) -> Drawing:
    """Mirror a panel's shape on a view to the other side of the car.

    On a view of one side (Left side, Right side) the mirrored shape goes to the view of the other
    side, which is made where it is missing; on all others to the other side of the view's centre
    line. The panel of the same name and the other side is made where it is missing, and its shape
    there is replaced.

    Raises:
        JournalError: the panel isn't on the view, it is on the centre line of a view of both
            sides, or the mirrored shape would leave the sheet.
    """
    placed = drawing.shapes[index_of(drawing, panel_id, view_id)]
    panel, view = drawing.panel(panel_id), drawing.view(view_id)
    made, target, move = _target(drawing, view, axis)
    if target.id == view_id and panel.side is Side.CENTRE:
        raise JournalError(f"{panel.label} is on the centre line of {view.name}: it has no fellow.")
    made, fellow = _fellow(made, panel)
    return put_shape(made, fellow.id, target.id, transformed(placed.shape, move))


def mirror_view(
    drawing: Drawing, view_id: ViewId, side: Side = Side.LEFT, axis: Axis | None = None
) -> Drawing:
    """Mirror all panels of a view to the other side of the car.

    A view of one side is mirrored whole to the view of the other side, with its lines that are no
    panels and its stack. On a view of both sides the panels of ``side`` are mirrored to the other
    side of the centre line. Panels of the other side that have no fellow stay as they are.

    Raises:
        JournalError: there is nothing to mirror, or a mirrored shape would leave the sheet.
    """
    view = drawing.view(view_id)
    made, target, move = _target(drawing, view, axis)
    if target.id != view_id:
        if not drawing.shapes_on(view_id):
            raise JournalError(f"The view {view.name} has no panels to mirror.")
        return _whole(made, view, target, move)
    chosen = [s for s in drawing.shapes_on(view_id) if drawing.panel(s.panel_id).side == side]
    if side is Side.CENTRE or not chosen:
        named = side.value or "centre"
        raise JournalError(f"The view {view.name} has no panels of the {named} side to mirror.")
    for placed in chosen:
        made = mirror_panel(made, placed.panel_id, view_id, axis)
    return made


def _target(
    drawing: Drawing, view: View, axis: Axis | None
) -> tuple[Drawing, View, Callable[[Point], Point]]:
    """The view that mirrored shapes go to, made where it is missing, and how spots move."""
    name = other_side_name(view.name) if axis is None else ""
    if not name:
        return drawing, view, _mirror_at(view, axis or axis_of(view))
    found = next((v for v in drawing.views if v.name.casefold() == name.casefold()), None)
    if found is None:
        drawing = add_view(drawing, name, view.width, view.height)
        found = drawing.views[-1]
    return drawing, found, _mirror_at(found, Axis.UPRIGHT)


def _mirror_at(view: View, axis: Axis) -> Callable[[Point], Point]:
    """The mirror at a view's centre line; twice gives the same number, rounded as stored."""
    if axis is Axis.UPRIGHT:
        width = round(view.width, 2)
        return lambda p: Point(width - p.x, p.y)
    height = round(view.height, 2)
    return lambda p: Point(p.x, height - p.y)


def _fellow(drawing: Drawing, panel: Panel) -> tuple[Drawing, Panel]:
    """The panel of the same name on the other side, new where there is none."""
    side = _OTHER[panel.side]
    for other in drawing.panels:
        if other.name == panel.name and other.side == side:
            return drawing, other
    return with_new_panel(drawing, panel.name, side, panel.system)


def _whole(drawing: Drawing, view: View, target: View, move: Callable[[Point], Point]) -> Drawing:
    """The target view with the mirrored shapes in their stack, and what it had alone on top."""
    made, new = drawing, []
    for placed in drawing.shapes_on(view.id):
        made, fellow = _fellow(made, made.panel(placed.panel_id))
        shape: Shape = tidy(transformed(placed.shape, move))
        new.append(PanelShape(fellow.id, target.id, shape, placed.order))
    fellows = {s.panel_id for s in new}
    alone = [s for s in made.shapes_on(target.id) if s.panel_id not in fellows]
    top = top_order(made, view.id)
    kept = [replace(s, order=top + n) for n, s in enumerate(alone)]
    shapes = _in_place(made.shapes, target.id, {s.panel_id: s for s in (*new, *kept)})
    lines = [
        replace(line, view_id=target.id, stroke=_moved(line.stroke, move))
        for line in made.decor_on(view.id)
    ]
    decor = _lines_in_place(made.decor, target.id, lines)
    made = replace(made, shapes=shapes, decor=decor)
    for placed in new:
        check_placed(made, placed)
    return made


def _in_place(
    shapes: tuple[PanelShape, ...], view_id: ViewId, new: dict[PanelId, PanelShape]
) -> tuple[PanelShape, ...]:
    """The shapes with those of a view replaced where they stood, and new ones at the end."""
    rest = dict(new)
    made = [
        rest.pop(s.panel_id) if s.view_id == view_id and s.panel_id in rest else s for s in shapes
    ]
    return (*made, *rest.values())


def _lines_in_place(
    decor: tuple[Decor, ...], view_id: ViewId, new: list[Decor]
) -> tuple[Decor, ...]:
    """The lines with those of a view replaced by new ones, where the first of them stood."""
    at = next((i for i, line in enumerate(decor) if line.view_id == view_id), len(decor))
    before = decor[:at]
    after = tuple(line for line in decor[at:] if line.view_id != view_id)
    return (*before, *new, *after)


def _moved(stroke: Stroke, move: Callable[[Point], Point]) -> Stroke:
    def rounded(point: Point) -> Point:
        there = move(point)
        return Point(round(there.x, 2) + 0.0, round(there.y, 2) + 0.0)

    return Stroke(rounded(stroke.start), moved_edges(stroke.edges, rounded))
