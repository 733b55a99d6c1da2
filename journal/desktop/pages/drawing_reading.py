"""What the Drawing page reads in a reader's thread."""

from dataclasses import dataclass

from journal.actions import drawings, timeline
from journal.actions.pins import pins
from journal.actions.session import Session
from journal.desktop.widgets.pin_years import PinYears
from journal.desktop.widgets.tray import ToPlace, to_place
from journal.domain.drawing import Drawing
from journal.domain.hits import PanelMap


@dataclass(frozen=True, slots=True)
class Found:
    """What was read; ``pins`` is None where pins and photos were not asked for."""

    drawing: Drawing
    pins: PinYears | None
    rows: tuple[ToPlace, ...]


def read_all(session: Session, kinds: frozenset[str], shown: Drawing) -> Found:
    """Read what ``kinds`` of change touched; ``shown`` is the drawing on screen."""
    drawing = drawings.drawing(session) if "drawing" in kinds else shown
    if kinds == {"drawing"}:
        return Found(drawing, None, ())
    moments = timeline.moments(session)
    placed = {moment.photo_id for moment in moments if moment.placed}
    taken = {moment.photo_id: moment.earliest for moment in moments if moment.placed}
    rows = to_place(timeline.sittings(session), placed)
    return Found(drawing, PinYears(pins(session), taken), rows)


def prepared_map(drawing: Drawing) -> PanelMap:
    """The geometry of a drawing, worked out for every view."""
    made = PanelMap(drawing)
    made.prepare()
    return made
