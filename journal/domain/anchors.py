"""Anchor points: load-bearing mountings, and what lies within their radius.

Nothing here passes or fails a car: it says what lies near a mounting, and who should look at it.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from journal.domain.errors import JournalError
from journal.domain.hits import to_polygon
from journal.domain.ids import AnchorId, ViewId
from journal.domain.patches import Patch
from journal.domain.photos import Pin
from journal.domain.seams import Seam
from journal.domain.shapes import TOLERANCE, Point, Shape, Stroke, flatten_edges

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

#: The radius round a mounting that counts with it, in millimetres.
#: DVSA, MOT inspection manual, Appendix A, section 2: within 30 cm of the mounting location.
RADIUS_MM = 300.0

#: The largest radius taken for meant, in millimetres: half the width of a wide car.
_WIDEST_MM = 1000.0

#: Whose rule the radius is.
RADIUS_SOURCE = (
    "DVSA, MOT inspection manual, Appendix A, section 2: the load-bearing part a mounting is on,"
    " and structure or panelling within 30 cm of it"
)


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


#: What can lie near an anchor point: a spot, an open line, an area, or what is drawn as one.
Place = Point | Stroke | Shape | Seam | Patch


@dataclass(frozen=True, slots=True)
class Near:
    """An anchor point, and how far from it something lies, in millimetres along the drawing."""

    anchor: AnchorPoint
    distance_mm: float


@dataclass(frozen=True, slots=True)
class Mark:
    """What is said of something within an anchor point's radius.

    ``caution`` is a key of ``journal.domain.cautions``.
    """

    anchor: AnchorPoint
    distance_mm: float
    title: str
    text: str
    caution: str
    source: str


def check_anchor(anchor: AnchorPoint) -> None:
    """Refuse an anchor point without a name, a place or a sensible radius.

    Raises:
        JournalError: naming what is wrong.
    """
    if not anchor.name.strip():
        raise JournalError("An anchor point needs a name: say what is mounted there.")
    if not (math.isfinite(anchor.x) and math.isfinite(anchor.y)):
        raise JournalError(f"The anchor point {anchor.name} has no place on the drawing.")
    if not 0 < anchor.radius_mm <= _WIDEST_MM:
        raise JournalError(
            f"The radius of the anchor point {anchor.name} must be more than nothing and no more"
            f" than {_WIDEST_MM:g} mm, not {anchor.radius_mm:g}."
        )


def distance(anchor: AnchorPoint, place: Place) -> float:
    """Millimetres along the drawing from an anchor point to the nearest spot of a place.

    0 where the point lies on it; curves are flattened to 0.5 mm. The place must be on the same
    view: for seams and patches ``near`` sees to it.
    """
    if isinstance(place, Point):
        return math.dist((anchor.x, anchor.y), place)
    return _away(anchor, _geometry(place))


def near(anchors: Iterable[AnchorPoint], view_id: ViewId | None, place: Place) -> tuple[Near, ...]:
    """The anchor points whose radius reaches a place of that view, the nearest first.

    A place exactly on the radius counts. A seam or patch on another view is near none, and so is
    whatever has no view.
    """
    if isinstance(place, Seam | Patch) and place.view_id != view_id:
        return ()
    here = [anchor for anchor in anchors if anchor.view_id == view_id]
    if isinstance(place, Point):
        found = [Near(a, math.dist((a.x, a.y), place)) for a in here]
    else:
        drawn = _geometry(place) if here else None
        found = [Near(a, _away(a, drawn)) for a in here if drawn is not None]
    within = (one for one in found if one.distance_mm <= one.anchor.radius_mm)
    return tuple(sorted(within, key=lambda one: (one.distance_mm, one.anchor.id)))


def near_seam(anchors: Iterable[AnchorPoint], seam: Seam) -> tuple[Near, ...]:
    """The anchor points whose radius reaches a seam, the nearest first."""
    return near(anchors, seam.view_id, seam)


def near_patch(anchors: Iterable[AnchorPoint], patch: Patch) -> tuple[Near, ...]:
    """The anchor points whose radius reaches a patch, the nearest first."""
    return near(anchors, patch.view_id, patch)


def near_pin(anchors: Iterable[AnchorPoint], pin: Pin) -> tuple[Near, ...]:
    """The anchor points whose radius reaches a pin; none for a pin without a spot on a view."""
    if pin.x is None or pin.y is None:
        return ()
    return near(anchors, pin.view_id, Point(pin.x, pin.y))


def marks(found: Iterable[Near]) -> tuple[Mark, ...]:
    """What to say of a thing near those anchor points; it never says pass or fail."""
    return tuple(_mark(one) for one in found)


def _mark(found: Near) -> Mark:
    anchor = found.anchor
    belt = anchor.kind is AnchorKind.SEAT_BELT
    return Mark(
        anchor=anchor,
        distance_mm=found.distance_mm,
        title="Load-bearing: have it inspected",
        text=f"{_spoken_distance(found)} the {anchor.kind} anchor point “{anchor.name}”. Have the"
        " work here inspected by a person competent to do so under your local rules.",
        caution="belt anchorages" if belt else "load-bearing",
        source=RADIUS_SOURCE,
    )


def _spoken_distance(found: Near) -> str:
    return f"{found.distance_mm:.0f} mm from" if found.distance_mm >= 0.5 else "On"


def _away(anchor: AnchorPoint, drawn: BaseGeometry) -> float:
    import shapely

    return float(drawn.distance(shapely.Point(anchor.x, anchor.y)))


def _geometry(place: Stroke | Shape | Seam | Patch) -> BaseGeometry:
    import shapely

    if isinstance(place, Patch):
        place = place.shape
    if isinstance(place, Shape):
        return to_polygon(place, TOLERANCE)
    stroke = place.stroke if isinstance(place, Seam) else place
    points = flatten_edges(stroke.start, stroke.edges, TOLERANCE)
    return shapely.LineString(points) if len(points) > 1 else shapely.Point(points[0])
