"""What the estimate of wire and gas is made for: what is welded, and what still has to be."""

from collections.abc import Iterable

from journal.domain.consumption import Welded
from journal.domain.patches import Patch
from journal.domain.seams import Seam, SeamChange, SeamState, count_welds, stretches
from journal.domain.when import When


def welded(
    seams: Iterable[Seam],
    changes: Iterable[SeamChange],
    patches: Iterable[Patch],
    on: When | None = None,
    *,
    still_to_do: bool = False,
) -> tuple[Welded, ...]:
    """What was welded by a date, or what is still to be welded, for an estimate of wire and gas.

    The thickness of a seam is that of the thinnest patch of its repair area, None without one.
    """
    by_area: dict[int, float] = {}
    for patch in patches:
        known = by_area.get(patch.area_id, patch.thickness_mm)
        by_area[patch.area_id] = min(known, patch.thickness_mm)
    known_changes = tuple(changes)
    found = []
    for seam in seams:
        own = [change for change in known_changes if change.seam_id == seam.id]
        parts = stretches(seam, own, on)
        done = sum(s.length_mm for s in parts if s.state.rank >= SeamState.WELDED.rank)
        welds = count_welds(seam, own, on, SeamState.WELDED)
        if still_to_do:
            done = sum(s.length_mm for s in parts) - done
            welds = count_welds(seam, own, on) - welds
        found.append(Welded(seam.joint, max(done, 0.0), max(welds, 0), by_area.get(seam.area_id)))
    return tuple(found)
