"""How each panel stands on a date: the least advanced stage of its repair areas."""

from bisect import bisect_right
from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime
from types import MappingProxyType

from journal.domain.areas import Area
from journal.domain.ids import AreaId, PanelId
from journal.domain.sharing import share
from journal.domain.when import When


def panel_states(
    areas: Iterable[Area], stages: Sequence[str], on: When | None = None
) -> dict[PanelId, str]:
    """The stage of every panel that has repair areas: the least advanced of them.

    ``stages`` is the journal's own list in order; a stage that isn't in it counts as the least
    advanced. With ``on``, as it stood by the end of that date: panels without trouble known then
    are left out.
    """
    order = {stage: rank for rank, stage in enumerate(stages)}
    found: dict[PanelId, str] = {}
    for area in areas:
        stage = area.stage if on is None else area.stage_on(on)
        if stage:
            _note(found, area, stage, order)
    return found


def _note(found: dict[PanelId, str], area: Area, stage: str, order: Mapping[str, int]) -> None:
    for panel_id in area.panel_ids:
        before = found.get(panel_id, stage)
        found[panel_id] = min(before, stage, key=lambda s: order.get(s, -1))


class PanelYears:
    """The states of all panels through the years, worked out once and looked up by day.

    It is what a handle dragged along the years asks: days between two changes share one answer.
    """

    def __init__(self, areas: Iterable[Area], stages: Sequence[str]) -> None:
        self._areas = tuple(areas)
        self._stages = tuple(stages)
        self._moments = sorted({c.when.earliest for a in self._areas for c in a.changes})
        self._known: dict[int, Mapping[PanelId, str]] = {}
        self._now: Mapping[PanelId, str] | None = None

    @property
    def days(self) -> tuple[date, ...]:
        """The days on which something changed, in order; open beginnings left out."""
        days = {m.date() for m in self._moments if m != datetime.min}
        return tuple(sorted(days))

    @property
    def now(self) -> Mapping[PanelId, str]:
        """The state of every panel with all that is recorded, dated or not."""
        if self._now is None:
            self._now = MappingProxyType(panel_states(self._areas, self._stages))
        return self._now

    def on(self, when: When) -> Mapping[PanelId, str]:
        """The state of every panel by the end of a date, as ``panel_states`` gives it."""
        place = bisect_right(self._moments, when.latest)
        if place not in self._known:
            states = panel_states(self._areas, self._stages, when)
            self._known[place] = MappingProxyType(states)
        return self._known[place]


def over_panels(by_area: Mapping[AreaId, int], areas: Iterable[Area]) -> dict[PanelId, int]:
    """What belongs to repair areas (minutes, minor units of money) on the panels they touch.

    An area on several panels is shared equally among them, to the last unit; what belongs to an
    area without panels is on none.
    """
    found: dict[PanelId, int] = {}
    for area in areas:
        parts = share(by_area.get(area.id, 0), [1] * len(area.panel_ids)) if area.panel_ids else ()
        for panel_id, part in zip(area.panel_ids, parts, strict=True):
            found[panel_id] = found.get(panel_id, 0) + part
    return found


def days_since(touched: Mapping[PanelId, Iterable[When]], on: date) -> dict[PanelId, int]:
    """Whole days from when each panel was last touched to ``on``; never negative.

    Dates after ``on`` don't count, nor do dates with an open end; a date less sure than a day
    counts from its last day, or from ``on`` where that is earlier. Panels never touched by then
    are left out.
    """
    found: dict[PanelId, int] = {}
    for panel_id, dates in touched.items():
        past = [w.latest.date() for w in dates if w.earliest.date() <= on and _ends(w)]
        if past:
            found[panel_id] = max((on - max(past)).days, 0)
    return found


def _ends(when: When) -> bool:
    return when.latest != datetime.max
