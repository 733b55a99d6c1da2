"""What was welded, let in and measured on a panel, for its story."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from itertools import groupby
from typing import TYPE_CHECKING

from journal.actions.metalwork import Metal, metal
from journal.actions.session import Session
from journal.domain.anchors import marks, near_patch, near_seam
from journal.domain.ids import AreaId, PanelId
from journal.domain.metal_words import number, patch_in_words, seam_in_words
from journal.domain.patches import Patch
from journal.domain.readings import Measure, Reading, remark, series
from journal.domain.seam_sums import panel_under
from journal.domain.seams import Seam
from journal.domain.shapes import bounds
from journal.domain.when import When

if TYPE_CHECKING:
    from journal.domain.hits import PanelMap


@dataclass(frozen=True, slots=True)
class Done:
    """One thing done to the metal of a panel; ``kind`` is seam, patch or reading."""

    when: When | None
    kind: str
    title: str
    detail: str
    id: int


def metal_done(
    session: Session, panel_id: PanelId, area_ids: Collection[AreaId]
) -> tuple[Done, ...]:
    """Seams moved on, patches let in and readings taken on a panel or in its repair areas.

    Of an area on several panels, what lies over another panel is left out. Work near an anchor
    point says so, with its distance and who should look at it.
    """
    from journal.domain.hits import PanelMap

    found, mine = metal(session), frozenset(area_ids)
    seams = [seam for seam in found.seams if seam.area_id in mine]
    patches = [patch for patch in found.patches if patch.area_id in mine]
    events: list[Done] = []
    if seams or patches:
        panels = PanelMap(session.journal.drawing.get())
        here = (None, panel_id)
        for seam in seams:
            if panel_under(seam, panels) in here:
                events += _moved_on(found, seam)
        events += [_let_in(found, patch) for patch in patches if _under(patch, panels) in here]
    events += _read(session, panel_id, mine)
    return tuple(events)


def _under(patch: Patch, panels: "PanelMap") -> PanelId | None:
    """The panel under the middle of a patch."""
    box = bounds(patch.shape)
    x, y = (box.left + box.right) / 2, (box.top + box.bottom) / 2
    return panels.panel_at(patch.view_id, x, y)


def _let_in(found: Metal, patch: Patch) -> Done:
    near = " ".join(mark.text for mark in marks(near_patch(found.anchors, patch)))
    title = f"New metal: {patch_in_words(patch)}"
    return Done(patch.when, "patch", title, _joined(patch.note, near), patch.id)


def _moved_on(found: Metal, seam: Seam) -> Iterator[Done]:
    near = " ".join(mark.text for mark in marks(near_seam(found.anchors, seam)))
    for change in found.changes:
        if change.seam_id == seam.id:
            part = f"{change.start_mm:,.0f} to {change.end_mm:,.0f} mm {change.state.value}"
            title = f"{seam_in_words(seam)}: {part}"
            yield Done(change.when, "seam", title, _joined(change.note, near), seam.id)


def _read(session: Session, panel_id: PanelId, areas: frozenset[AreaId]) -> Iterator[Done]:
    taken = session.journal.readings.all()
    for measure in session.journal.readings.measures():
        if measure.panel_id == panel_id or measure.area_id in areas:
            own = series(measure, taken)
            for (when, moment), readings in groupby(own, lambda r: (r.when, r.moment)):
                title = f"{measure.name} read {moment.value} the work"
                yield Done(when, "reading", title, _numbers(measure, tuple(readings)), measure.id)


def _numbers(measure: Measure, readings: tuple[Reading, ...]) -> str:
    said = [
        f"{number(r.value)} {measure.unit}"
        + (f" ({outside})" if (outside := remark(measure, r.value)) else "")
        for r in readings
    ]
    return ", ".join(said)


def _joined(*parts: str) -> str:
    return " ".join(part for part in parts if part)
