"""What the metal panes show, read at once in a reader's thread."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from journal.actions import areas as area_actions
from journal.actions import drawings, metalwork
from journal.actions import readings as reading_actions
from journal.actions.session import Session
from journal.desktop.widgets.metal_layer import Laid
from journal.domain.ids import AreaId, PanelId, SeamId, ViewId
from journal.domain.seam_sums import SumsOn, panel_under, series

#: What must be read again when something changed.
KINDS = frozenset({"metalwork", "anchors", "readings", "areas", "drawing"})


@dataclass(frozen=True, slots=True)
class MetalFound:
    """All metalwork and measures, the names of what they hang on, and their sums by day."""

    laid: Laid
    areas: Mapping[AreaId, str] = field(default_factory=dict)
    panels: Mapping[PanelId, str] = field(default_factory=dict)
    views: Mapping[ViewId, str] = field(default_factory=dict)
    panel_of: Mapping[SeamId, PanelId | None] = field(default_factory=dict)
    days: tuple[SumsOn, ...] = ()


def read_metal(session: Session) -> MetalFound:
    """Everything the metal panes show."""
    from journal.domain.hits import PanelMap

    metal = metalwork.metal(session)
    panels = PanelMap(drawings.drawing(session)) if metal.seams else None
    return MetalFound(
        Laid(metal, reading_actions.measures(session), reading_actions.readings(session)),
        {area.id: area.name for area in area_actions.areas(session)},
        {panel.id: panel.label for panel in drawings.panels(session)},
        {view.id: view.name for view in drawings.views(session)},
        {seam.id: panel_under(seam, panels) for seam in metal.seams} if panels else {},
        series(metal.seams, metal.changes),
    )
