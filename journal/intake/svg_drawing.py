"""An SVG file as a drawing: every closed figure a panel, and word of what couldn't be used.

Nothing the file refers to is ever loaded; what could lead there is refused first.
"""

from __future__ import annotations

import io
import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Any
from xml.etree import ElementTree

from journal.domain.drawing import Decor, Drawing, View, Weight
from journal.domain.errors import JournalError
from journal.domain.ids import ViewId
from journal.domain.shapes import (
    Bounds,
    Contour,
    Point,
    Shape,
    Stroke,
    bounds,
    moved_edges,
    tidy,
    transformed,
)
from journal.intake.svg_guard import read_tree
from journal.intake.svg_names import (
    FIGURES,
    NUMBER,
    OTHERS,
    Contents,
    Figure,
    number_figures,
)
from journal.intake.svg_panels import Gathering
from journal.intake.svg_shapes import outlines
from journal.intake.svg_size import Scale, set_size

#: Paper left free round a drawing that doesn't say how large it is, as a share of its size.
_MARGIN = 0.05

#: A rectangle without a name that covers this much of the sheet is the paper.
_PAPER = 0.98

_Place = Callable[[Point], Point]


@dataclass(frozen=True, slots=True)
class LeftOut:
    """Something of the file that is no panel, and why."""

    what: str
    reason: str


@dataclass(frozen=True, slots=True)
class SvgDrawing:
    """What came of an SVG file.

    Attributes:
        drawing: its views and panels; of a file that is none of ours, one view.
        left_out: what couldn't be used or only in part, in the order of the file.
        scaled: whether the file or the caller said how many millimetres a unit is; else a unit
            was taken for a millimetre.
    """

    drawing: Drawing
    left_out: tuple[LeftOut, ...]
    scaled: bool


@dataclass(frozen=True, slots=True)
class _Drawn:
    """A figure as it lies on the picture, in millimetres of the picture."""

    figure: Figure
    closed: tuple[Contour, ...]
    open: tuple[Stroke, ...]


@dataclass(frozen=True, slots=True)
class _Frame:
    """Where a view of ours lies on the picture."""

    view: View
    place: _Place
    scale: float
    box: Bounds


def read_svg(
    data: bytes, *, name: str = "The drawing", mm_per_unit: float | None = None
) -> SvgDrawing:
    """The drawing in an SVG file; ``name`` is what the sentences and its view are called.

    A closed figure becomes a panel named by its title, label or id; ", left" or ", right" at the
    end tells its side. Transforms, units, viewBox and uses are respected. A unit of the picture is
    ``mm_per_unit`` millimetres where that is given; else the file's own width or height tells.

    Raises:
        JournalError: the file is huge, malformed or no SVG, has a document type, entities, scripts
            or links to elsewhere, or comes to a size that no sheet has.
    """
    root = read_tree(data, name)
    contents = number_figures(root)
    scale = set_size(root, mm_per_unit, name)
    drawn = list(_drawn(root, contents, scale, name))
    frames = _frames(drawn, contents)
    left_out = list(_not_drawn(contents, drawn))
    if frames:
        made, more = _our_own(drawn, frames, contents)
        return SvgDrawing(made, (*left_out, *more), scaled=True)
    made, more = _foreign(drawn, scale, name)
    return SvgDrawing(made, (*left_out, *more), scaled=scale.known)


# The figures


def _drawn(
    root: ElementTree.Element, contents: Contents, scale: Scale, name: str
) -> Iterator[_Drawn]:
    """Every figure that is shown, where it is shown."""
    import svgelements

    text = ElementTree.tostring(root)
    try:
        picture = svgelements.SVG.parse(io.BytesIO(text), reify=False)
        shown = list(_walk(picture, contents, None))
    except (ValueError, TypeError, KeyError, IndexError, AttributeError, ArithmeticError) as error:
        raise JournalError(f"{name} holds something that can't be read as SVG.") from error
    except RecursionError as error:
        raise JournalError(f"{name} is nested too deep to be read.") from error
    unit = scale.mm_per_unit

    def place(point: Point) -> Point:
        # A share of a picture without a size stays a length that is no number: refused here.
        return Point(float(point.x) * unit, float(point.y) * unit)

    for figure, element in shown:
        try:
            closed, left = outlines(element, place, unit)
        except (ValueError, TypeError, ArithmeticError, AttributeError) as error:
            what = figure.name or figure.tag
            raise JournalError(f"{name} has a figure that can't be read: {what}.") from error
        yield _Drawn(figure, tuple(closed), tuple(left))


def _walk(element: Any, contents: Contents, use: Figure | None) -> Iterator[tuple[Figure, Any]]:
    """The figures below an element of svgelements, those used under the name of their use."""
    import svgelements

    if isinstance(element, svgelements.Use):
        own = _figure_of(element, contents)
        use = own if own is not None and (use is None or own.name) else use
    if isinstance(element, svgelements.Group | svgelements.Use):
        for child in element:
            yield from _walk(child, contents, use)
    elif isinstance(element, svgelements.Shape):
        figure = _figure_of(element, contents)
        if figure is None or (figure.unseen and use is None):
            return
        yield _under(figure, use), element


def _figure_of(element: Any, contents: Contents) -> Figure | None:
    number = (element.values or {}).get(NUMBER, "")
    return contents.figures[int(number)] if str(number).isdigit() else None


def _under(figure: Figure, use: Figure | None) -> Figure:
    """A figure under the name and in the view of its use."""
    if use is None:
        return figure
    named = use if use.name else figure
    return replace(figure, name=named.name, side=named.side, system=named.system, view=use.view)


def _not_drawn(contents: Contents, drawn: list[_Drawn]) -> Iterator[LeftOut]:
    """What the file holds that is shown as no figure."""
    shown = {id(d.figure) for d in drawn}
    for figure in contents.figures:
        if figure.unseen or figure.look or id(figure) in shown:
            continue
        if figure.tag in OTHERS:
            yield LeftOut(figure.name or figure.tag, OTHERS[figure.tag])
        elif figure.tag in FIGURES:
            yield LeftOut(figure.name or figure.tag, "it is hidden or has no size")


# A sheet of our own


def _frames(drawn: list[_Drawn], contents: Contents) -> dict[int, _Frame]:
    """The views of ours, by their group, with where on the picture each lies."""
    numbers = [group.number for group in contents.views]
    keep = len(set(numbers)) == len(numbers) and all(numbers)
    found: dict[int, _Frame] = {}
    for one in drawn:
        at = one.figure.view
        if one.figure.look != "frame" or at < 0 or at in found or not one.closed:
            continue
        group = contents.views[at]
        corners = [one.closed[0].start, *(edge.to for edge in one.closed[0].edges)]
        if len(corners) < 4 or group.width <= 0 or group.height <= 0:
            continue
        view = View(
            ViewId(group.number if keep else at + 1),
            _unique(group.name or "View", [f.view.name for f in found.values()]),
            group.width,
            group.height,
        )
        frame = _frame(view, corners[0], corners[1], corners[3])
        if frame is not None:
            found[at] = frame
    return found


def _unique(name: str, taken: list[str]) -> str:
    number, tried = 2, name
    while tried.casefold() in {t.casefold() for t in taken}:
        tried, number = f"{name} {number}", number + 1
    return tried


def _frame(view: View, origin: Point, right: Point, low: Point) -> _Frame | None:
    """A frame from its top left, top right and bottom left corners on the picture."""
    ax, ay = right.x - origin.x, right.y - origin.y
    bx, by = low.x - origin.x, low.y - origin.y
    area = ax * by - ay * bx
    if abs(area) < 1e-9:
        return None

    def place(point: Point) -> Point:
        dx, dy = point.x - origin.x, point.y - origin.y
        return Point(
            (dx * by - dy * bx) / area * view.width, (dy * ax - dx * ay) / area * view.height
        )

    scale = max(view.width / math.hypot(ax, ay), view.height / math.hypot(bx, by))
    xs, ys = (origin.x, right.x, low.x), (origin.y, right.y, low.y)
    return _Frame(view, place, scale, Bounds(min(xs), min(ys), max(xs), max(ys)))


def _our_own(
    drawn: list[_Drawn], frames: dict[int, _Frame], contents: Contents
) -> tuple[Drawing, list[LeftOut]]:
    views = tuple(frame.view for frame in frames.values())
    gathering = Gathering(Drawing(views, (), ()))
    decor: list[Decor] = []
    for one in drawn:
        frame = frames.get(one.figure.view) or _frame_round(one, frames)
        if one.figure.look == "line" and frame is not None:
            decor.extend(_lines(one, frame))
        elif one.figure.look:
            continue
        elif frame is None:
            gathering.leave_out(one.figure, "it lies on none of the views")
        else:
            shape = Shape(one.closed)
            gathering.add(
                one.figure,
                frame.view.id,
                tidy(transformed(shape, frame.place)),
                open_lines=len(one.open),
            )
    for figure in contents.undrawn:
        gathering.add_undrawn(figure)
    made = gathering.finish(tuple(decor))
    return made, [LeftOut(*pair) for pair in gathering.left_out]


def _frame_round(one: _Drawn, frames: dict[int, _Frame]) -> _Frame | None:
    """The view that a figure drawn beside our groups lies on."""
    if not one.closed:
        return None
    box = bounds(Shape(one.closed))
    x, y = (box.left + box.right) / 2, (box.top + box.bottom) / 2
    for frame in frames.values():
        inside = frame.box.left <= x <= frame.box.right and frame.box.top <= y <= frame.box.bottom
        if inside:
            return frame
    return None


def _lines(one: _Drawn, frame: _Frame) -> Iterator[Decor]:
    known = {weight.value for weight in Weight}
    weight = Weight(one.figure.weight) if one.figure.weight in known else Weight.DETAIL

    def move(point: Point) -> Point:
        there = frame.place(point)
        return Point(round(there.x, 2) + 0.0, round(there.y, 2) + 0.0)

    lines: tuple[Contour | Stroke, ...] = (*one.closed, *one.open)
    for line in lines:
        stroke = Stroke(move(line.start), moved_edges(line.edges, move))
        yield Decor(frame.view.id, stroke, weight)


# Any other file


def _foreign(drawn: list[_Drawn], scale: Scale, name: str) -> tuple[Drawing, list[LeftOut]]:
    """One view with every closed figure on it."""
    shapes = [Shape(one.closed) for one in drawn if one.closed]
    view, dx, dy = _sheet(shapes, scale, name)
    gathering = Gathering(Drawing((view,), (), ()))
    for one in drawn:
        shape = tidy(transformed(Shape(one.closed), lambda p: Point(p.x + dx, p.y + dy)))
        if len(drawn) > 1 and _is_paper(one.figure, shape, view):
            gathering.leave_out(one.figure, "it covers the whole sheet and was taken for paper")
        else:
            gathering.add(one.figure, view.id, shape, open_lines=len(one.open))
    return gathering.finish(()), [LeftOut(*pair) for pair in gathering.left_out]


def _sheet(shapes: list[Shape], scale: Scale, name: str) -> tuple[View, float, float]:
    """The view and how far all figures move: as the file says, but large enough for them all."""
    from journal.domain.shaping.making import LEAST_SIZE, MOST_SIZE

    width, height = scale.width * scale.mm_per_unit, scale.height * scale.mm_per_unit
    boxes = [bounds(shape) for shape in shapes]
    left, top = min((b.left for b in boxes), default=0), min((b.top for b in boxes), default=0)
    right = max((b.right for b in boxes), default=width)
    low = max((b.bottom for b in boxes), default=height)
    margin = 0.0
    if not width or not height:
        margin = max(right - left, low - top) * _MARGIN
        dx, dy = margin - left, margin - top
    else:
        dx, dy = max(0.0, -left), max(0.0, -top)
        right, low = max(right, width), max(low, height)
    wide, high = round(right + dx + margin, 2), round(low + dy + margin, 2)
    if not (LEAST_SIZE <= wide <= MOST_SIZE and LEAST_SIZE <= high <= MOST_SIZE):
        raise JournalError(
            f"{name} comes to {wide:.5g} by {high:.5g} mm, which no sheet of a drawing has: "
            "give its scale."
        )
    return View(ViewId(1), name, math.ceil(wide * 100) / 100, math.ceil(high * 100) / 100), dx, dy


def _is_paper(figure: Figure, shape: Shape, view: View) -> bool:
    if figure.tag != "rect" or figure.name or not shape.contours:
        return False
    box = bounds(shape)
    covered = (box.right - box.left) * (box.bottom - box.top)
    return covered >= _PAPER * view.width * view.height
