"""Metres of seam: planned, tacked, welded and dressed, summed by whatever they are asked by."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Callable, Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, TypeVar

from journal.domain.ids import PanelId, SeamId
from journal.domain.seams import Seam, SeamChange, SeamState, length, stretches
from journal.domain.strokes import point_at
from journal.domain.when import When

if TYPE_CHECKING:
    from journal.domain.hits import PanelMap

Key = TypeVar("Key", bound=Hashable)

#: Spots of a seam that are looked at to find the panel under it.
_LOOKED_AT = 15


@dataclass(frozen=True, slots=True)
class SeamSums:
    """Millimetres of seam that have come to each state or beyond it.

    Each counts what is further along too: ``planned`` is the whole, ``dressed`` the finished part.
    """

    planned: float = 0.0
    tacked: float = 0.0
    welded: float = 0.0
    dressed: float = 0.0

    def __add__(self, other: SeamSums) -> SeamSums:
        return SeamSums(
            self.planned + other.planned,
            self.tacked + other.tacked,
            self.welded + other.welded,
            self.dressed + other.dressed,
        )

    def at_least(self, state: SeamState) -> float:
        """Millimetres that have come to ``state`` or beyond it."""
        return (self.planned, self.tacked, self.welded, self.dressed)[state.rank]


@dataclass(frozen=True, slots=True)
class SumsOn:
    """The sums as they stood at the end of a day."""

    day: date
    sums: SeamSums


def seam_sums(seam: Seam, changes: Iterable[SeamChange], on: When | None = None) -> SeamSums:
    """The sums of one seam by the end of ``on`` (None: by now)."""
    found = stretches(seam, changes, on)
    return SeamSums(
        *(sum(s.length_mm for s in found if s.state.rank >= state.rank) for state in SeamState)
    )


def sums(seams: Iterable[Seam], changes: Iterable[SeamChange], on: When | None = None) -> SeamSums:
    """The sums of many seams together; ``changes`` in any order."""
    by_seam = _by_seam(changes)
    return sum((seam_sums(s, by_seam.get(s.id, ()), on) for s in seams), SeamSums())


def sums_by(
    seams: Iterable[Seam],
    changes: Iterable[SeamChange],
    key: Callable[[Seam], Key | None],
    on: When | None = None,
) -> dict[Key, SeamSums]:
    """The sums by what ``key`` says of each seam: its area, its view, the panel under it.

    Seams that it says None of are left out.
    """
    by_seam = _by_seam(changes)
    found: dict[Key, SeamSums] = {}
    for seam in seams:
        group = key(seam)
        if group is not None:
            own = seam_sums(seam, by_seam.get(seam.id, ()), on)
            found[group] = found.get(group, SeamSums()) + own
    return found


def series(seams: Iterable[Seam], changes: Iterable[SeamChange]) -> tuple[SumsOn, ...]:
    """The sums at the end of each day on which one of the seams changed, in order.

    A change dated less surely than a day counts from the first day it can have happened.
    """
    drawn = tuple(seams)
    by_seam = _by_seam(changes)
    days: dict[date, set[SeamId]] = defaultdict(set)
    for seam in drawn:
        for change in by_seam.get(seam.id, ()):
            days[change.when.earliest.date()].add(seam.id)
    by_id = {seam.id: seam for seam in drawn}
    before = When.on(date.min)
    now = {s.id: seam_sums(s, by_seam.get(s.id, ()), before) for s in drawn}
    found = []
    for day in sorted(days):
        for seam_id in days[day]:
            now[seam_id] = seam_sums(by_id[seam_id], by_seam[seam_id], When.on(day))
        found.append(SumsOn(day, sum(now.values(), SeamSums())))
    return tuple(found)


def panel_under(seam: Seam, panels: PanelMap) -> PanelId | None:
    """The panel that most of a seam lies on, the topmost where several lie over each other.

    None where most of it lies on empty paper.
    """
    whole = length(seam)
    steps = ((n + 0.5) / _LOOKED_AT for n in range(_LOOKED_AT))
    spots = (point_at(seam.stroke, whole * step) for step in steps)
    found = Counter(panels.panel_at(seam.view_id, x, y) for x, y in spots)
    return found.most_common(1)[0][0]


def _by_seam(changes: Iterable[SeamChange]) -> Mapping[SeamId, Sequence[SeamChange]]:
    found: dict[SeamId, list[SeamChange]] = defaultdict(list)
    for change in changes:
        found[change.seam_id].append(change)
    return found
