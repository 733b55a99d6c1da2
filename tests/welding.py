"""A journal of the Halden Rook with two welded areas, made through the actions."""

from decimal import Decimal
from pathlib import Path

from journal.actions import areas, drawings, metalwork, readings
from journal.actions.journals import new_journal
from journal.actions.session import Session
from journal.domain.anchors import AnchorKind, AnchorPoint
from journal.domain.car import Car
from journal.domain.ids import AnchorId, AreaId, MeasureId, PatchId, ReadingId, SeamId, ViewId
from journal.domain.patches import Patch
from journal.domain.readings import Measure, MeasureKind, Moment, Reading
from journal.domain.seams import Joint, Seam, SeamState
from journal.domain.shapes import Bounds, Line, Point, Stroke, bounds, rectangle
from journal.domain.when import When, parse


def line_of(*points: tuple[float, float]) -> Stroke:
    """A line of straight edges."""
    first, *rest = (Point(*point) for point in points)
    return Stroke(first, tuple(Line(point) for point in rest))


def box_of(session: Session, label: str) -> tuple[ViewId, Bounds]:
    """The first view that a panel is on, and its box there."""
    drawing = drawings.drawing(session)
    panel = drawings.find_panel(session, label)
    placed = next(s for s in drawing.shapes if s.panel_id == panel.id)
    return placed.view_id, bounds(placed.shape)


def add_area(session: Session, name: str, label: str) -> AreaId:
    """A repair area on one panel."""
    panel = drawings.find_panel(session, label)
    made = areas.add_area(session, name, (panel.id,), "Rusted through.", parse("2016-03-05")).made
    assert made is not None
    return AreaId(made)


def weld(
    session: Session,
    seam: Seam,
    *days: tuple[SeamState, str, tuple[float, float] | None],
) -> SeamId:
    """A seam and the days on which all or a part of it came to a state."""
    made = SeamId(metalwork.add_seam(session, seam).made or 0)
    for state, day, part in days:
        metalwork.move_seam(session, made, state, parse(day), part=part)
    return made


def read(session: Session, measure: Measure, *rounds: tuple[Moment, str, list[str]]) -> MeasureId:
    """A measure and the numbers read at it."""
    made = MeasureId(readings.add_measure(session, measure).made or 0)
    for moment, day, values in rounds:
        when: When = parse(day)
        taken = [
            Reading(ReadingId(0), made, n, Decimal(value), when, moment, "tram gauge")
            for n, value in enumerate(values)
        ]
        readings.record_readings(session, taken)
    return made


def welded(folder: Path) -> Session:
    """The journal: a sill with seams in every state, a floor, an anchor point, readings."""
    session = new_journal(folder / "Halden Rook", Car(title="Halden Rook"))
    sill = add_area(session, "Sill, left, rear end", "Sill, left")
    door = add_area(session, "Front door, left, lower edge", "Front door, left")
    view, box = box_of(session, "Sill, left")
    middle, wide = (box.top + box.bottom) / 2, box.right - box.left
    left, right = box.left + wide * 0.05, box.left + wide * 0.55
    lower = Seam(SeamId(0), sill, view, line_of((left, middle), (right, middle)), Joint.BUTT)
    weld(
        session,
        lower,
        (SeamState.TACKED, "2016-04-02", None),
        (SeamState.WELDED, "2016-04-09", (0, (right - left) * 0.6)),
        (SeamState.DRESSED, "2016-05-01", (0, (right - left) * 0.3)),
    )
    plugs = line_of((right + 60, middle), (box.right - 40, middle))
    weld(
        session,
        Seam(SeamId(0), sill, view, plugs, Joint.PLUGS, 40),
        (SeamState.WELDED, "2016-04-16", (0, 200)),
    )
    metalwork.add_patch(
        session,
        Patch(
            PatchId(0),
            sill,
            view,
            rectangle(left, box.top + 5, wide * 0.3, (middle - box.top) - 10),
            1.2,
            "zinc-coated sheet",
            when=parse("2016-04-02"),
        ),
    )
    metalwork.add_anchor(
        session,
        AnchorPoint(
            AnchorId(0),
            view,
            right + 120,
            middle - 150,
            AnchorKind.SEAT_BELT,
            "Belt, left, lower",
        ),
    )
    _door(session, door)
    return session


def _door(session: Session, area: AreaId) -> None:
    view, box = box_of(session, "Front door, left")
    low, wide, high = box.bottom - 90, box.right - box.left, box.bottom - box.top
    weld(
        session,
        Seam(
            SeamId(0),
            area,
            view,
            line_of((box.left + 60, low), (box.left + wide / 2, low), (box.right - 60, low - 30)),
            Joint.JOGGLED,
        ),
        (SeamState.PLANNED, "2016-05-07", None),
    )
    corners = {
        "Door, A low to B high": (Point(box.left, box.bottom), Point(box.right, box.top)),
        "Door, A high to B low": (Point(box.left, box.top), Point(box.right, box.bottom)),
    }
    for (name, points), values in zip(
        corners.items(), (("1284", "1286.5"), ("1283.5", "1283")), strict=True
    ):
        measure = Measure(
            MeasureId(0),
            name,
            MeasureKind.DIAGONAL,
            view,
            points,
            "mm",
            Decimal(1284),
            Decimal(2),
            area,
        )
        read(
            session,
            measure,
            (Moment.BEFORE, "2016-03-05", [values[0]]),
            (Moment.AFTER, "2016-05-10", [values[1]]),
        )
    spots = tuple(Point(box.left + wide * n / 5, box.top + high * 0.62) for n in range(1, 5))
    films = Measure(MeasureId(0), "Door skin paint", MeasureKind.FILM, view, spots, "µm")
    read(session, films, (Moment.BEFORE, "2016-03-05", ["95", "140", "420", "1250"]))
