"""Which photos of a repair area are shown where not all of them are."""

from collections.abc import Sequence

from journal.domain.claims import AreaClaims
from journal.domain.photos import AreaPhoto, Role

_ORDER = {role: place for place, role in enumerate(Role)}


def in_order(chosen: Sequence[AreaPhoto]) -> list[AreaPhoto]:
    """Photos before, during and after, each in the owner's order."""
    return sorted(chosen, key=lambda row: (_ORDER[row.role], row.rank))


def few(chosen: Sequence[AreaPhoto], found: AreaClaims, most: int) -> list[AreaPhoto]:
    """At most ``most`` photos, 0 for all, in order: first those that tell the most.

    The first of before, during and after, then one for each claim that has none yet, then the rest
    as they come.
    """
    rows = in_order(chosen)
    if not most or len(rows) <= most:
        return rows
    by_id = {row.photo_id: row for row in reversed(rows)}
    picked: dict[int, AreaPhoto] = {}
    leads = [next((row for row in rows if row.role is role), None) for role in Role]
    for lead in leads:
        if lead is not None:
            picked.setdefault(lead.photo_id, lead)
    for claim in found.claims:
        own = [photo_id for photo_id in claim.photo_ids if photo_id in by_id]
        if own and not any(photo_id in picked for photo_id in own):
            picked.setdefault(own[0], by_id[own[0]])
    for row in rows:
        picked.setdefault(row.photo_id, row)
    return in_order(list(picked.values())[:most])
