"""Seams: lines of welding drawn on a view, and how far each part of one is.

The furthest state that a part came to by a date is its state; states never go back. A weld that
was cut out again is taken back by removing its change, and welded anew by a change of its own.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import pairwise
from typing import NamedTuple

from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, PhotoId, SeamChangeId, SeamId, ViewId
from journal.domain.shapes import Line, Point, Stroke
from journal.domain.strokes import is_closed, point_at, stroke_length
from journal.domain.when import When

#: What a distance along a seam may be off by, in millimetres, before it is taken for a slip.
SLACK_MM = 0.5

#: The shortest seam, and the least distance that counts, in millimetres: the written form's step.
LEAST_MM = 0.01

#: The widest spacing of a row taken for meant, in millimetres.
_WIDEST_MM = 1000.0


class Joint(StrEnum):
    """How the two sheets of a seam meet."""

    BUTT = "butt"
    LAP = "lap"
    JOGGLED = "joggled lap"
    PLUGS = "plug row"
    SPOTS = "spot row"

    @property
    def is_row(self) -> bool:
        """Whether it is a row of single welds, with a spacing."""
        return self in (Joint.PLUGS, Joint.SPOTS)


class SeamState(StrEnum):
    """How far a part of a seam is, in order; each implies the ones before it."""

    PLANNED = "planned"
    TACKED = "tacked"
    WELDED = "welded"
    DRESSED = "dressed"

    @property
    def rank(self) -> int:
        """Place in the order: 0 is planned."""
        return list(SeamState).index(self)


@dataclass(frozen=True, slots=True)
class Seam:
    """A line of welding on a view, part of a repair area.

    ``spacing_mm`` is the distance from one plug or spot to the next, None for a joint that is no
    row.
    """

    id: SeamId
    area_id: AreaId
    view_id: ViewId
    stroke: Stroke
    joint: Joint
    spacing_mm: float | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class SeamChange:
    """The day a part of a seam came to a state.

    The part runs from ``start_mm`` to ``end_mm`` along the seam, in millimetres from its start.
    """

    id: SeamChangeId
    seam_id: SeamId
    state: SeamState
    start_mm: float
    end_mm: float
    when: When
    note: str = ""
    photo_ids: tuple[PhotoId, ...] = ()


class Stretch(NamedTuple):
    """A part of a seam in one state, in millimetres from the seam's start."""

    start_mm: float
    end_mm: float
    state: SeamState

    @property
    def length_mm(self) -> float:
        """How long it is."""
        return self.end_mm - self.start_mm


# What is refused


def check_seam(seam: Seam) -> None:
    """Refuse a seam that can't be: one point, no length, a row without its spacing.

    Raises:
        JournalError: naming what is wrong.
    """
    if not seam.stroke.edges:
        raise JournalError("A seam needs two points or more, not one.")
    if not all(math.isfinite(number) for point in _points(seam.stroke) for number in point):
        raise JournalError("The seam has a point that is no place on the drawing.")
    if stroke_length(seam.stroke) < LEAST_MM:
        raise JournalError("The seam has no length: all its points lie on one spot.")
    if seam.joint.is_row:
        _check_spacing(seam)
    elif seam.spacing_mm is not None:
        raise JournalError(
            f"A seam with a {seam.joint} joint has no spacing; only a plug row or spot row has one."
        )


def _check_spacing(seam: Seam) -> None:
    spacing = seam.spacing_mm
    if spacing is None:
        raise JournalError(f"A {seam.joint} needs its spacing: the distance from weld to weld.")
    if not 1 <= spacing <= _WIDEST_MM:
        raise JournalError(
            f"The spacing of a {seam.joint} must be from 1 to {_WIDEST_MM:g} mm, not {spacing:g}."
        )


def check_change(seam: Seam, change: SeamChange) -> None:
    """Refuse a change that is of another seam, or of a part that the seam doesn't have.

    Raises:
        JournalError: naming what is wrong.
    """
    if change.seam_id != seam.id:
        raise JournalError("The change belongs to another seam.")
    start, end = change.start_mm, change.end_mm
    if not (math.isfinite(start) and math.isfinite(end)):
        raise JournalError("The part of the seam needs numbers for its start and its end.")
    if not start + LEAST_MM <= end:
        raise JournalError(
            f"The part of the seam must end further along than it starts, not run from {start:g}"
            f" to {end:g} mm."
        )
    whole = length(seam)
    if start < -SLACK_MM or end > whole + SLACK_MM:
        raise JournalError(
            f"The part from {start:g} to {end:g} mm isn't all on the seam, which is"
            f" {whole:.1f} mm long."
        )


def _points(stroke: Stroke) -> list[Point]:
    found = [stroke.start]
    for edge in stroke.edges:
        found += [edge.to] if isinstance(edge, Line) else [edge.handle1, edge.handle2, edge.to]
    return found


def redrawn(change: SeamChange, before: Seam, now: Seam) -> SeamChange:
    """A change of a seam that was drawn anew: the same part of it, in proportion."""
    old, new = length(before), length(now)
    if old < LEAST_MM or abs(old - new) < LEAST_MM:
        return change
    start, end = (min(mm * new / old, new) for mm in (change.start_mm, change.end_mm))
    return replace(change, start_mm=start, end_mm=end)


# Lengths and states


def length(seam: Seam) -> float:
    """How long a seam is, in millimetres along its true curves."""
    return stroke_length(seam.stroke)


def stretches(
    seam: Seam, changes: Iterable[SeamChange], on: When | None = None
) -> tuple[Stretch, ...]:
    """The states of a seam from its start to its end, by the end of ``on`` (None: by now).

    ``changes`` may hold those of other seams, in any order. The stretches are in order, never
    overlap, and neighbours differ. A part counts as planned from the first, unless a change says
    when it was planned: before that date it stands in no stretch.
    """
    return _stretches(length(seam), [c for c in changes if c.seam_id == seam.id], on)


def _stretches(whole: float, changes: Sequence[SeamChange], on: When | None) -> tuple[Stretch, ...]:
    parts = [(_onto(c.start_mm, whole), _onto(c.end_mm, whole), c) for c in changes]
    marks = {0.0, whole}.union(*((start, end) for start, end, _ in parts))
    found: list[Stretch] = []
    for start, end in pairwise(sorted(marks)):
        state = _state([c for low, high, c in parts if low <= start and end <= high], on)
        if state is None:
            continue
        if found and found[-1].end_mm == start and found[-1].state is state:
            start = found.pop().start_mm
        found.append(Stretch(start, end, state))
    return tuple(found)


def _onto(mm: float, whole: float) -> float:
    """A distance brought onto the seam; one that all but reaches an end means the end."""
    if mm <= SLACK_MM:
        return 0.0
    return whole if mm >= whole - SLACK_MM else mm


def _state(covering: list[SeamChange], on: When | None) -> SeamState | None:
    reached = [c.state for c in covering if on is None or c.when.earliest <= on.latest]
    if reached:
        return max(reached, key=lambda state: state.rank)
    planned_later = any(c.state is SeamState.PLANNED for c in covering)
    return None if planned_later else SeamState.PLANNED


# Rows


def weld_places(seam: Seam) -> tuple[float, ...]:
    """Where the plugs or spots of a row sit, in millimetres from its start; () for other joints.

    The first sits at the start, the next one spacing on, and so forth while the row lasts. On a
    row that ends where it starts, the first is not counted again as the last.
    """
    if not seam.joint.is_row or not seam.spacing_mm or seam.spacing_mm < 1:
        return ()
    whole, spacing = length(seam), seam.spacing_mm
    count = math.floor((whole + LEAST_MM) / spacing) + 1
    if is_closed(seam.stroke) and whole - (count - 1) * spacing <= LEAST_MM and count > 1:
        count -= 1
    return tuple(min(n * spacing, whole) for n in range(count))


def weld_points(seam: Seam) -> tuple[Point, ...]:
    """Where the plugs or spots of a row sit on the view."""
    return tuple(point_at(seam.stroke, mm) for mm in weld_places(seam))


def count_welds(
    seam: Seam,
    changes: Iterable[SeamChange] = (),
    on: When | None = None,
    state: SeamState = SeamState.PLANNED,
) -> int:
    """How many plugs or spots of a row have come to ``state`` or beyond by the end of ``on``."""
    done = [s for s in stretches(seam, changes, on) if s.state.rank >= state.rank]
    return sum(
        any(s.start_mm - SLACK_MM <= mm <= s.end_mm + SLACK_MM for s in done)
        for mm in weld_places(seam)
    )
