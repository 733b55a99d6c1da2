"""Finding shapes in a drawing, replacing them, and the checks every changed shape must pass."""

import math
import re
from collections.abc import Iterator, Mapping
from dataclasses import replace

from journal.domain.drawing import Drawing, PanelShape
from journal.domain.errors import JournalError
from journal.domain.ids import PanelId, ViewId
from journal.domain.shapes import Curve, Line, Point, Shape, bounds, flatten, tidy

#: The least area of a panel, in square millimetres.
LEAST_AREA = 1.0

#: How far, in millimetres, a shape may reach over the edge of its sheet: rounding.
_OVER = 0.01


def shape_of(drawing: Drawing, panel_id: PanelId, view_id: ViewId) -> Shape:
    """A panel's shape on a view.

    Raises:
        JournalError: the panel or the view doesn't exist, or the one isn't drawn on the other.
    """
    return drawing.shapes[index_of(drawing, panel_id, view_id)].shape


def index_of(drawing: Drawing, panel_id: PanelId, view_id: ViewId) -> int:
    """Where in ``drawing.shapes`` a panel's shape on a view is.

    Raises:
        JournalError: the panel or the view doesn't exist, or the one isn't drawn on the other.
    """
    for index, placed in enumerate(drawing.shapes):
        if placed.panel_id == panel_id and placed.view_id == view_id:
            return index
    panel, view = drawing.panel(panel_id), drawing.view(view_id)
    raise JournalError(f"{panel.label} isn't drawn on the view {view.name}.")


def on_view(drawing: Drawing, view_id: ViewId) -> Iterator[tuple[int, PanelShape]]:
    """The shapes of a view with where in ``drawing.shapes`` each is."""
    return ((i, s) for i, s in enumerate(drawing.shapes) if s.view_id == view_id)


def with_shapes(drawing: Drawing, changed: Mapping[int, Shape]) -> Drawing:
    """The drawing with some shapes replaced, by where in ``drawing.shapes`` they are; unchecked."""
    shapes = tuple(
        replace(placed, shape=tidy(changed[i])) if i in changed else placed
        for i, placed in enumerate(drawing.shapes)
    )
    return replace(drawing, shapes=shapes)


def with_checked(drawing: Drawing, changed: Mapping[int, Shape]) -> Drawing:
    """The drawing with some shapes replaced, once each of them is sound.

    Raises:
        JournalError: a shape crosses itself, has no area or leaves its sheet.
    """
    made = with_shapes(drawing, changed)
    for index in changed:
        check_placed(made, made.shapes[index])
    return made


def check_placed(drawing: Drawing, placed: PanelShape) -> None:
    """Refuse a shape that can't stand on its view, named by its panel.

    Raises:
        JournalError: it crosses itself, has no area, or leaves the sheet.
    """
    check_shape(drawing, placed.view_id, placed.shape, drawing.panel(placed.panel_id).label)


def check_shape(drawing: Drawing, view_id: ViewId, shape: Shape, name: str) -> None:
    """Refuse a shape that can't stand on a view; ``name`` is what the sentence calls it.

    Raises:
        JournalError: it has fewer than three corners, crosses itself, has no area, or leaves the
            sheet.
    """
    import shapely

    from journal.domain.hits import to_polygon

    view = drawing.view(view_id)
    if not shape.contours:
        raise JournalError(f"{name} has no outline.")
    if not all(map(math.isfinite, _numbers(shape))):
        raise JournalError(f"{name} has a corner or a handle at no place: its number is too large.")
    for outline in flatten(shape):
        if len(set(outline)) < 3:
            raise JournalError(f"{name} needs an outline of at least three corners.")
        ring = shapely.Polygon(outline)
        if ring.convex_hull.area < LEAST_AREA:
            raise JournalError(f"{name} has an outline without any area.")
        if not ring.is_valid:
            raise JournalError(f"{name} crosses its own outline{_where(ring)}.")
        if ring.area < LEAST_AREA:
            raise JournalError(f"{name} has an outline without any area.")
    if to_polygon(shape).area < LEAST_AREA:
        raise JournalError(f"{name} has no area: its outlines cover each other.")
    box = bounds(shape)
    over = (-box.left, -box.top, box.right - view.width, box.bottom - view.height)
    if max(over) > _OVER:
        edge = ("left", "top", "right", "bottom")[over.index(max(over))]
        raise JournalError(
            f"{name} reaches {max(over):.0f} mm over the {edge} edge of the view {view.name}."
            if max(over) >= 1
            else f"{name} reaches over the {edge} edge of the view {view.name}."
        )


def _numbers(shape: Shape) -> Iterator[float]:
    for contour in shape.contours:
        yield from contour.start
        for edge in contour.edges:
            for point in (edge.to,) if isinstance(edge, Line) else _points(edge):
                yield from point


def _points(curve: Curve) -> tuple[Point, ...]:
    return curve.handle1, curve.handle2, curve.to


def _where(ring: object) -> str:
    """Where an outline crosses itself, as words; empty where that isn't known."""
    from shapely.validation import explain_validity

    found = re.search(r"\[(\S+) (\S+)\]", explain_validity(ring))
    return f" at {float(found[1]):.0f}, {float(found[2]):.0f} mm" if found else ""
