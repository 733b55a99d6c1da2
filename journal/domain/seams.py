"""Seams: lines of welding drawn on a view, and how far each part of one is."""

from dataclasses import dataclass
from enum import StrEnum

from journal.domain.ids import AreaId, PhotoId, SeamChangeId, SeamId, ViewId
from journal.domain.shapes import Stroke
from journal.domain.when import When


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
