"""How the panels stand: as they do now, and as they did once the trouble was found."""

from collections.abc import Sequence

from journal.domain.areas import Area
from journal.domain.car import Milestone, MilestoneKind
from journal.domain.record import Record
from journal.domain.when import When, spoken
from journal.dossier.document import PanelMark, Then


def marks(record: Record, areas: Sequence[Area], on: When | None = None) -> tuple[PanelMark, ...]:
    """Every panel with a repair area, by the least advanced of its areas; now, or on a day.

    On a day, areas that nothing was recorded of by then are left out.
    """
    stages = record.car.stages
    rank = {stage: place for place, stage in enumerate(stages)}
    rows = [(number, area, _stage(area, on)) for number, area in enumerate(areas, 1)]
    made = []
    for panel in record.drawing.panels:
        own = [
            (number, stage)
            for number, area, stage in rows
            if panel.id in area.panel_ids and (on is None or stage)
        ]
        if own:
            least = min((stage for _, stage in own), key=lambda stage: rank.get(stage, -1))
            made.append(PanelMark(panel.id, least, tuple(number for number, _ in own)))
    return tuple(made)


def _stage(area: Area, on: When | None) -> str:
    return area.stage if on is None else area.stage_on(on)


def was(record: Record, areas: Sequence[Area]) -> Then | None:
    """The drawing as it stood before the work: at the first turning point that shows most of it.

    That is the day the car was stripped, else the day the first repair area came beyond its first
    stage; None where nothing was recorded by then, or it stood as it does now.
    """
    first = record.car.stages[0] if record.car.stages else ""
    stripped = _first(record.milestones, MilestoneKind.STRIPPED)
    begun = min((c.when for a in areas for c in a.changes if c.stage != first), default=None)
    for when, said in ((stripped, "when the car was stripped"), (begun, "when the work began")):
        if when is None:
            continue
        then = marks(record, areas, when)
        if then and then != marks(record, areas):
            return Then(f"{spoken(when)}, {said}", then)
    return None


def _first(milestones: Sequence[Milestone], kind: MilestoneKind) -> When | None:
    return min((m.when for m in milestones if m.kind is kind), default=None)
