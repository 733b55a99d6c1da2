"""Anchor points: load-bearing mountings, and what lies within their radius.

Nothing here passes or fails a car: it says what lies near a mounting, and who should look at it.
"""

from dataclasses import dataclass
from enum import StrEnum

from journal.domain.ids import AnchorId, ViewId

#: The radius round a mounting that counts with it, in millimetres.
#: DVSA, MOT inspection manual, Appendix A, section 2: within 30 cm of the mounting location.
RADIUS_MM = 300.0


class AnchorKind(StrEnum):
    """What is mounted there."""

    SEAT_BELT = "seat belt"
    SEAT = "seat"
    SUSPENSION = "suspension"
    STEERING = "steering"
    BRAKES = "brakes"
    SUBFRAME = "subframe"
    ENGINE = "engine mounting"
    GEARBOX = "gearbox mounting"
    JACKING = "jacking point"
    TOWING = "towing eye"
    HINGE = "door hinge"
    OTHER = "other"


@dataclass(frozen=True, slots=True)
class AnchorPoint:
    """A load-bearing mounting at a spot of a view; all lengths in millimetres."""

    id: AnchorId
    view_id: ViewId
    x: float
    y: float
    kind: AnchorKind
    name: str
    radius_mm: float = RADIUS_MM
