"""Panels and views: made, named, ordered, taken away."""

from collections.abc import Iterable
from dataclasses import replace
from enum import StrEnum

from journal.domain.drawing import Drawing, Panel, PanelShape, Side, System, View
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Point, Shape, Stroke, bounds, moved_edges, tidy, translate
from journal.domain.shaping.placed import check_placed, check_shape, index_of

#: The smallest and the largest edge of a view, in millimetres.
LEAST_SIZE, MOST_SIZE = 10.0, 100_000.0

#: The longest name of a panel or a view, in characters.
LONGEST_NAME = 120


class Step(StrEnum):
    """Where a shape goes in the stack of its view."""

    UP = "up"
    DOWN = "down"
    TOP = "top"
    BOTTOM = "bottom"


# Panels


def add_panel(
    drawing: Drawing, name: str, side: Side, system: System, view_id: ViewId, shape: Shape
) -> Drawing:
    """Draw a new panel on top of a view; it is the last of ``Drawing.panels``.

    Raises:
        JournalError: the name is empty or taken on that side, or the outline is unsound.
    """
    made, panel = with_new_panel(drawing, name, side, system)
    return put_shape(made, panel.id, view_id, shape)


def with_new_panel(
    drawing: Drawing, name: str, side: Side, system: System
) -> tuple[Drawing, Panel]:
    """The drawing with a new panel that has no shape yet, and that panel.

    Raises:
        JournalError: the name is empty or taken on that side.
    """
    number = max((p.id for p in drawing.panels), default=0) + 1
    panel = Panel(PanelId(number), checked_name(drawing, name, side), side, system)
    return replace(drawing, panels=(*drawing.panels, panel)), panel


def put_shape(drawing: Drawing, panel_id: PanelId, view_id: ViewId, shape: Shape) -> Drawing:
    """Give a panel a shape on a view: in place of the one it has there, else on top.

    Raises:
        JournalError: the panel or view doesn't exist, or the outline is unsound.
    """
    panel, shape = drawing.panel(panel_id), tidy(shape)
    check_shape(drawing, view_id, shape, panel.label)
    for index, placed in enumerate(drawing.shapes):
        if placed.panel_id == panel_id and placed.view_id == view_id:
            shapes = list(drawing.shapes)
            shapes[index] = replace(placed, shape=shape)
            return replace(drawing, shapes=tuple(shapes))
    on_top = PanelShape(panel_id, view_id, shape, top_order(drawing, view_id))
    return replace(drawing, shapes=(*drawing.shapes, on_top))


def top_order(drawing: Drawing, view_id: ViewId) -> int:
    """The order of a new shape on top of a view."""
    return max((s.order for s in drawing.shapes if s.view_id == view_id), default=-1) + 1


def take_shape_off(drawing: Drawing, panel_id: PanelId, view_id: ViewId) -> Drawing:
    """Take a panel off one view; it stays on the others.

    Raises:
        JournalError: it isn't drawn there, or it is drawn nowhere else.
    """
    index = index_of(drawing, panel_id, view_id)
    if len(drawing.views_of(panel_id)) < 2:
        raise JournalError(
            f"{drawing.panel(panel_id).label} is drawn on no other view: remove the panel instead."
        )
    return replace(drawing, shapes=drawing.shapes[:index] + drawing.shapes[index + 1 :])


def remove_panel(drawing: Drawing, panel_id: PanelId) -> Drawing:
    """Take a panel out of the drawing, with its shapes on all views.

    Raises:
        JournalError: there is no such panel.
    """
    drawing.panel(panel_id)
    panels = tuple(p for p in drawing.panels if p.id != panel_id)
    shapes = tuple(s for s in drawing.shapes if s.panel_id != panel_id)
    return replace(drawing, panels=panels, shapes=shapes)


def rename_panel(
    drawing: Drawing,
    panel_id: PanelId,
    *,
    name: str | None = None,
    side: Side | None = None,
    system: System | None = None,
) -> Drawing:
    """Change a panel's name, side or system; what isn't given stays.

    Raises:
        JournalError: there is no such panel, or the name is empty or taken on that side.
    """
    old = drawing.panel(panel_id)
    new_side = old.side if side is None else side
    new = Panel(
        panel_id,
        checked_name(drawing, old.name if name is None else name, new_side, but_for=panel_id),
        new_side,
        old.system if system is None else system,
    )
    return replace(drawing, panels=tuple(new if p.id == panel_id else p for p in drawing.panels))


def checked_name(drawing: Drawing, name: str, side: Side, but_for: PanelId | None = None) -> str:
    """The name without spare spaces, once no other panel of that side has it.

    Raises:
        JournalError: it is empty, too long, or taken on that side.
    """
    name = _clean(name, "panel")
    for panel in drawing.panels:
        same = panel.name.casefold() == name.casefold() and panel.side == side
        if same and panel.id != but_for:
            raise JournalError(f"The drawing has a panel “{panel.label}” already.")
    return name


def _clean(name: str, what: str) -> str:
    name = " ".join(name.split())
    if not name:
        raise JournalError(f"A {what} needs a name.")
    if len(name) > LONGEST_NAME:
        raise JournalError(
            f"The name of a {what} can have {LONGEST_NAME} characters at most, not {len(name)}."
        )
    if not name.isprintable():
        raise JournalError(f"The name of the {what} holds a sign that can't be printed.")
    return name


def reorder(drawing: Drawing, panel_id: PanelId, view_id: ViewId, step: Step | str) -> Drawing:
    """Move a panel in the stack of a view: one up or down, to the top or to the bottom.

    At the end of the stack it stays where it is.

    Raises:
        JournalError: the panel isn't drawn on the view.
    """
    index_of(drawing, panel_id, view_id)
    stack = [s.panel_id for s in drawing.shapes_on(view_id)]
    at = stack.index(panel_id)
    goal = {Step.UP: at + 1, Step.DOWN: at - 1, Step.TOP: len(stack) - 1, Step.BOTTOM: 0}
    stack.pop(at)
    stack.insert(max(0, goal[Step(step)]), panel_id)
    orders = {panel: order for order, panel in enumerate(stack)}
    return _with_orders(drawing, view_id, orders)


def _with_orders(drawing: Drawing, view_id: ViewId, orders: dict[PanelId, int]) -> Drawing:
    shapes = tuple(
        replace(s, order=orders[s.panel_id]) if s.view_id == view_id else s for s in drawing.shapes
    )
    return replace(drawing, shapes=shapes)


# Views


def add_view(drawing: Drawing, name: str, width: float, height: float) -> Drawing:
    """Add an empty view of so many millimetres; it is the last of ``Drawing.views``.

    Raises:
        JournalError: the name is empty or taken, or the size isn't that of a sheet.
    """
    number = max((v.id for v in drawing.views), default=0) + 1
    checked = _view_name(drawing, name)
    view = View(ViewId(number), checked, *_size(checked, width, height))
    return replace(drawing, views=(*drawing.views, view))


def rename_view(drawing: Drawing, view_id: ViewId, name: str) -> Drawing:
    """Give a view another name.

    Raises:
        JournalError: there is no such view, or the name is empty or taken.
    """
    new = replace(drawing.view(view_id), name=_view_name(drawing, name, but_for=view_id))
    return replace(drawing, views=tuple(new if v.id == view_id else v for v in drawing.views))


def resize_view(
    drawing: Drawing,
    view_id: ViewId,
    width: float,
    height: float,
    *,
    dx: float = 0.0,
    dy: float = 0.0,
) -> Drawing:
    """Change the size of a view's sheet; what is drawn on it moves by (dx, dy) and keeps its size.

    Raises:
        JournalError: the size isn't that of a sheet, or a panel would reach over its edge.
    """
    old = drawing.view(view_id)
    wide, high = _size(old.name, width, height)
    new = replace(old, width=wide, height=high)

    def moved(point: Point) -> Point:
        return Point(round(point.x + dx, 2), round(point.y + dy, 2))

    shapes = tuple(
        replace(s, shape=tidy(translate(s.shape, dx, dy))) if s.view_id == view_id else s
        for s in drawing.shapes
    )
    decor = tuple(
        replace(d, stroke=Stroke(moved(d.stroke.start), moved_edges(d.stroke.edges, moved)))
        if d.view_id == view_id
        else d
        for d in drawing.decor
    )
    views = tuple(new if v.id == view_id else v for v in drawing.views)
    made = replace(drawing, views=views, shapes=shapes, decor=decor)
    for placed in made.shapes_on(view_id):
        _check_fits(made, placed)
    return made


def _check_fits(drawing: Drawing, placed: PanelShape) -> None:
    box, view = bounds(placed.shape), drawing.view(placed.view_id)
    if box.left < 0 or box.top < 0 or box.right > view.width or box.bottom > view.height:
        check_placed(drawing, placed)


def remove_view(drawing: Drawing, view_id: ViewId) -> Drawing:
    """Take an empty view away, with its lines that are no panels.

    Raises:
        JournalError: there is no such view, panels are drawn on it, or it is the only one.
    """
    view = drawing.view(view_id)
    drawn = len(drawing.shapes_on(view_id))
    if drawn:
        raise JournalError(f"The view {view.name} has panels on it ({drawn}): remove them first.")
    if len(drawing.views) == 1:
        raise JournalError(f"{view.name} is the only view: a drawing has one at least.")
    views = tuple(v for v in drawing.views if v.id != view_id)
    return replace(
        drawing, views=views, decor=tuple(d for d in drawing.decor if d.view_id != view_id)
    )


def blank_sheet(sizes: Iterable[tuple[str, float, float]]) -> Drawing:
    """A drawing of empty views, from their names, widths and heights in millimetres.

    Raises:
        JournalError: a name is empty or given twice, or a size isn't that of a sheet.
    """
    drawing = Drawing((), (), ())
    for name, width, height in sizes:
        drawing = add_view(drawing, name, width, height)
    return drawing


def _view_name(drawing: Drawing, name: str, but_for: ViewId | None = None) -> str:
    name = _clean(name, "view")
    for view in drawing.views:
        if view.name.casefold() == name.casefold() and view.id != but_for:
            raise JournalError(f"The drawing has a view “{view.name}” already.")
    return name


def _size(name: str, width: float, height: float) -> tuple[float, float]:
    for what, value in (("width", width), ("height", height)):
        if not LEAST_SIZE <= value <= MOST_SIZE:
            raise JournalError(
                f"The view {name} can't have a {what} of {value:.0f} mm: "
                f"{LEAST_SIZE:.0f} to {MOST_SIZE:.0f} mm are possible."
            )
    return round(width, 2), round(height, 2)
