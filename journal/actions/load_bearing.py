"""What lies near load-bearing mountings; it is said, and never passed or failed."""

from collections.abc import Iterable

from journal.actions.metalwork import Metal, metal
from journal.actions.session import Session
from journal.domain.bearings import Bearing, bearings
from journal.domain.ids import AreaId


def area_bearings(
    session: Session, area_ids: Iterable[AreaId], found: Metal | None = None
) -> tuple[Bearing, ...]:
    """What was found, cut or welded in repair areas near anchor points, the nearest first.

    Seams and patches of the areas count, and the pins of the photos chosen for them. ``found`` is
    the metalwork where it was read already.
    """
    ids = frozenset(area_ids)
    known = found or metal(session)
    if not known.anchors or not ids:
        return ()
    photos = {row.photo_id for row in session.journal.areas.photos() if row.area_id in ids}
    return bearings(
        known.anchors,
        seams=(seam for seam in known.seams if seam.area_id in ids),
        patches=(patch for patch in known.patches if patch.area_id in ids),
        pins=(pin for pin in session.journal.pins.all() if pin.photo_id in photos),
    )
