"""Which panel lies next to another, for the arrow keys."""

from collections.abc import Mapping

from PySide6.QtCore import QPointF

from journal.domain.ids import PanelId

#: How much a step aside counts against a step ahead.
_ASIDE = 2.0


def next_panel(
    middles: Mapping[PanelId, QPointF], start: PanelId | None, dx: int, dy: int
) -> PanelId | None:
    """The nearest panel in a direction (one of dx, dy is -1 or 1); the first where none is on.

    None where nothing lies that way.
    """
    if start is None or start not in middles:
        return next(iter(middles), None)
    here = middles[start]
    best: tuple[float, PanelId] | None = None
    for panel_id, there in middles.items():
        across, along = there.x() - here.x(), there.y() - here.y()
        ahead, aside = across * dx + along * dy, abs(across * dy) + abs(along * dx)
        if panel_id != start and ahead > 1 and aside <= 3 * ahead:
            cost = ahead + _ASIDE * aside
            if best is None or cost < best[0]:
                best = (cost, panel_id)
    return best[1] if best else None
