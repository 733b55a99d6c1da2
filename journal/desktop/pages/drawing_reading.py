"""What the Drawing page reads in a reader's thread."""

from dataclasses import dataclass

from journal.actions import drawings, timeline
from journal.actions.pins import pins
from journal.actions.session import Session
from journal.desktop.widgets.pin_places import PinPlaces, sort_pins
from journal.desktop.widgets.tray import ToPlace, to_place
from journal.domain.drawing import Drawing
from journal.domain.hits import PanelMap


@dataclass(frozen=True, slots=True)
class Found:
    """What was read; ``places`` is None where pins and photos were not asked for."""

    drawing: Drawing
    places: PinPlaces | None
    rows: tuple[ToPlace, ...]


def read_all(session: Session, kinds: frozenset[str], shown: Drawing) -> Found:
    """Read what ``kinds`` of change touched; ``shown`` is the drawing on screen."""
    drawing = drawings.drawing(session) if "drawing" in kinds else shown
    if kinds == {"drawing"}:
        return Found(drawing, None, ())
    placed = {moment.photo_id for moment in timeline.moments(session) if moment.placed}
    rows = to_place(timeline.sittings(session), placed)
    return Found(drawing, sort_pins(pins(session)), rows)


def prepared_map(drawing: Drawing) -> PanelMap:
    """The geometry of a drawing, worked out for every view."""
    made = PanelMap(drawing)
    made.prepare()
    return made
