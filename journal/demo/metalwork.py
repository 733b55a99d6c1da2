"""The metal let into the Rook, drawn on its drawing: patches, seams, anchor points, readings.

Everything lies where the drawing has the panel it belongs to, so that the story fits a drawing of
any size.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from journal.demo.story import AreaStory
from journal.domain.anchors import AnchorKind, AnchorPoint
from journal.domain.drawing import Drawing, Panel
from journal.domain.ids import AnchorId, AreaId, MeasureId, PatchId, SeamId, ViewId
from journal.domain.patches import Patch
from journal.domain.readings import Measure, MeasureKind, Moment
from journal.domain.seams import Joint, Seam, SeamState
from journal.domain.shapes import Bounds, Line, Point, Shape, Stroke, bounds, rectangle
from journal.domain.when import When, parse_edtf

#: The day a stage of an area came is the day its seams came to a state.
_STATES = {
    "cut back": SeamState.PLANNED,
    "new metal in": SeamState.TACKED,
    "welded": SeamState.WELDED,
    "dressed": SeamState.DRESSED,
}
_PLUG_SPACING = 40.0
#: A patch keeps this far from the edge of its panel, in millimetres.
_EDGE = 8.0
#: The thickness of new metal, by what it is let into; the rest is outer sheet.
_THICKNESS = {"Inner sill": 1.2, "Jacking point": 1.5, "Chassis leg": 1.5, "Outrigger": 1.5}
_SHEET = 1.0
_ANCHORED = {
    "Seat-belt mount": AnchorKind.SEAT_BELT,
    "Suspension mount": AnchorKind.SUSPENSION,
    "Jacking point": AnchorKind.JACKING,
}


@dataclass(frozen=True, slots=True)
class SeamStory:
    """A seam and the days on which all of it, or the part up to a share, came to a state."""

    seam: Seam
    days: tuple[tuple[SeamState, When, float], ...]


@dataclass(frozen=True, slots=True)
class ReadingStory:
    """Numbers read at a measure on one day, one for each of its places."""

    when: When
    moment: Moment
    values: tuple[Decimal, ...]
    instrument: str


def patch_of(story: AreaStory, area_id: AreaId, drawing: Drawing) -> Patch | None:
    """The piece of new metal of a repair area; None where none went in."""
    went_in = next((s.when for s in story.stages if s.stage == "new metal in"), None)
    if went_in is None:
        return None
    view_id, room = _room(drawing, story.panels[0])
    width = min(story.spot[0], room.right - room.left - 2 * _EDGE)
    height = min(story.spot[1], room.bottom - room.top - 2 * _EDGE)
    left = (room.left + room.right - width) / 2
    top = (room.top + room.bottom - height) / 2
    thickness = next((t for name, t in _THICKNESS.items() if name in story.panels[0]), _SHEET)
    shape = rectangle(round(left, 1), round(top, 1), round(width, 1), round(height, 1))
    when = parse_edtf(went_in)
    return Patch(
        PatchId(0), area_id, view_id, shape, thickness, "mild steel, cold rolled", "", when
    )


def seams_of(story: AreaStory, patch: Patch) -> Iterator[SeamStory]:
    """The seams round a patch: butt along three sides, plugs along the foot."""
    box = bounds(patch.shape)
    corners = [
        Point(box.left, box.bottom),
        Point(box.left, box.top),
        Point(box.right, box.top),
        Point(box.right, box.bottom),
    ]
    round_it = Stroke(corners[0], tuple(Line(corner) for corner in corners[1:]))
    foot = Stroke(corners[0], (Line(corners[3]),))
    days = tuple(_days(story))
    area_id, view_id = patch.area_id, patch.view_id
    yield SeamStory(Seam(SeamId(0), area_id, view_id, round_it, Joint.BUTT), days)
    plugs = Seam(
        SeamId(0), area_id, view_id, foot, Joint.PLUGS, _PLUG_SPACING, "plugs along the foot"
    )
    yield SeamStory(plugs, tuple(day for day in days if day[0] is not SeamState.DRESSED))


def _days(story: AreaStory) -> Iterator[tuple[SeamState, When, float]]:
    """The days of the states; of the welding, half of it was done on the day of the tacks."""
    for stage in story.stages:
        state = _STATES.get(stage.stage)
        if state is None:
            continue
        when = parse_edtf(stage.when)
        yield state, when, 1.0
        if state is SeamState.TACKED:
            yield SeamState.WELDED, when, 0.3


def anchors_of(drawing: Drawing) -> tuple[AnchorPoint, ...]:
    """The load-bearing mountings that the drawing has panels for."""
    return tuple(_anchors(drawing))


def _anchors(drawing: Drawing) -> Iterator[AnchorPoint]:
    for panel in drawing.panels:
        kind = next((k for name, k in _ANCHORED.items() if panel.name.startswith(name)), None)
        if kind is None:
            continue
        view_id, shape = _largest(drawing, panel)
        box = bounds(shape)
        x, y = (box.left + box.right) / 2, (box.top + box.bottom) / 2
        yield AnchorPoint(AnchorId(0), view_id, round(x, 1), round(y, 1), kind, panel.label)


def measures_of(drawing: Drawing) -> Iterator[tuple[Measure, tuple[ReadingStory, ...]]]:
    """What was measured: the left door aperture corner to corner, its gap, the paint."""
    door = _panel(drawing, "Front door, left")
    view_id, box = _room(drawing, door.label)
    low, high = box.bottom - 60.0, box.top + 60.0
    ends = (
        ((box.left + 140, high), (box.right - 30, low)),
        ((box.left + 20, low), (box.right - 60, high)),
    )
    names = ("Front door aperture, left, upper front", "Front door aperture, left, lower front")
    for name, points, values in zip(names, ends, _DIAGONALS, strict=True):
        places = tuple(Point(round(x, 1), round(y, 1)) for x, y in points)
        yield _measure(name, MeasureKind.DIAGONAL, view_id, places, door), _rounds(values)
    rear = box.right - 4.0
    gap = tuple(Point(rear, round(box.bottom - 560 + 180 * n, 1)) for n in range(3))
    measure = _measure("Front door to rear door, left", MeasureKind.GAP, view_id, gap, door)
    set_to = replace(measure, target=Decimal("4.5"), tolerance=Decimal("0.7"))
    yield set_to, _gap_rounds()
    film = tuple(
        Point(round(box.left + 160 + 200 * n, 1), round(box.bottom - 330, 1)) for n in range(4)
    )
    yield _measure("Paint of the front door, left", MeasureKind.FILM, view_id, film, door), (
        ReadingStory(_on("2018-03-18"), Moment.BEFORE, _numbers("182 1240 1410 205"), _GAUGE),
        ReadingStory(_on("2021-07-24"), Moment.AFTER, _numbers("148 156 151 162"), _GAUGE),
    )  # fmt: skip


_GAUGE = "magnetic film gauge"
_TAPE = "steel tape, braced aperture"
#: Before cutting, with the sill out, and after welding, in millimetres.
_DIAGONALS = (("1212.0", "1213.5", "1212.5"), ("1188.0", "1186.5", "1187.5"))


def _rounds(values: Sequence[str]) -> tuple[ReadingStory, ...]:
    days = ("2018-10-06", "2018-10-21", "2018-12-09")
    rows = zip(days, (Moment.BEFORE, Moment.DURING, Moment.AFTER), values, strict=True)
    return tuple(ReadingStory(_on(day), moment, _numbers(v), _TAPE) for day, moment, v in rows)


def _gap_rounds() -> tuple[ReadingStory, ...]:
    feeler = "gap gauge"
    return (
        ReadingStory(_on("2018-10-06"), Moment.BEFORE, _numbers("4.6 5.1 6.2"), feeler),
        ReadingStory(_on("2018-11-17"), Moment.DURING, _numbers("4.5 4.5 4.6"), feeler),
        ReadingStory(_on("2018-12-09"), Moment.AFTER, _numbers("4.5 4.6 4.8"), feeler),
    )


def _measure(
    name: str, kind: MeasureKind, view_id: ViewId, points: tuple[Point, ...], panel: Panel
) -> Measure:
    return Measure(MeasureId(0), name, kind, view_id, points, kind.unit, panel_id=panel.id)


def _numbers(text: str) -> tuple[Decimal, ...]:
    return tuple(Decimal(word) for word in text.split())


def _on(day: str) -> When:
    return parse_edtf(day)


def _panel(drawing: Drawing, label: str) -> Panel:
    return next(panel for panel in drawing.panels if panel.label == label)


def _largest(drawing: Drawing, panel: Panel) -> tuple[ViewId, Shape]:
    """The view a panel shows largest on, and its outline there."""
    drawn = [s for s in drawing.shapes if s.panel_id == panel.id]
    best = max(drawn, key=lambda s: _size(bounds(s.shape)))
    return best.view_id, best.shape


def _size(box: Bounds) -> float:
    return (box.right - box.left) * (box.bottom - box.top)


def _room(drawing: Drawing, label: str) -> tuple[ViewId, Bounds]:
    view_id, shape = _largest(drawing, _panel(drawing, label))
    return view_id, bounds(shape)
