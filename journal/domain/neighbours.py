"""Dates for undated photos from the numbers that cameras give their files.

A camera counts its files (DCF, CIPA DC-009: four characters, then four digits). A photo without a
date whose number lies between those of two dated photos was taken between them.
"""

import re
from bisect import bisect_left, bisect_right
from collections import defaultdict
from collections.abc import Iterable, Sequence
from datetime import timedelta
from operator import attrgetter
from typing import NamedTuple

from journal.domain.ids import PhotoId
from journal.domain.photos import Basis, DateCandidate
from journal.domain.when import When

#: Further apart than this, two dated photos say little of what lies between, and the counter may
#: have started again.
WIDEST = timedelta(days=31)

_DCF = re.compile(r"([0-9A-Z_]{4})([0-9]{4})\.[0-9A-Z]+", re.IGNORECASE)


class Numbered(NamedTuple):
    """A photo with its number. ``group`` is shared by photos of one folder and one prefix."""

    id: PhotoId
    name: str
    group: str
    number: int
    camera: str
    when: When | None
    basis: Basis


def counter(name: str) -> tuple[str, int] | None:
    """The prefix and the number of a DCF file name, None for any other name."""
    found = _DCF.fullmatch(name)
    return (found[1].upper(), int(found[2])) if found and int(found[2]) else None


def from_neighbours(photos: Iterable[Numbered]) -> dict[PhotoId, DateCandidate]:
    """A date for every photo that lacks a trusted one and lies between two that have it.

    The neighbours must be dated by one camera, in the order of their numbers, at most ``WIDEST``
    apart. A weaker date of the photo's own that lies between theirs is more exact and stays.
    """
    groups: dict[str, list[Numbered]] = defaultdict(list)
    for photo in photos:
        groups[photo.group].append(photo)
    found: dict[PhotoId, DateCandidate] = {}
    for group in groups.values():
        dated = [p for p in group if p.basis is Basis.CAMERA and p.when]
        dated.sort(key=attrgetter("number"))
        numbers = [p.number for p in dated]
        for photo in group:
            if photo.basis.trust > Basis.NEIGHBOURS.trust:
                candidate = _between(photo, dated, numbers)
                if candidate:
                    found[photo.id] = candidate
    return found


def _between(
    photo: Numbered, dated: Sequence[Numbered], numbers: Sequence[int]
) -> DateCandidate | None:
    above = bisect_right(numbers, photo.number)
    below = bisect_left(numbers, photo.number) - 1
    if below < 0 or above >= len(dated):
        return None
    first, last = dated[below], dated[above]
    if first.camera != last.camera or photo.camera not in ("", first.camera):
        return None
    when = _interval(first.when, last.when)
    if when is None or (photo.when and _inside(photo.when, when)):
        return None
    return DateCandidate(Basis.NEIGHBOURS, f"between {first.name} and {last.name}", when.edtf, when)


def _interval(first: When | None, last: When | None) -> When | None:
    """From one photo to the next, to the second; its EDTF names the days, as intervals must."""
    if first is None or last is None:
        return None
    start, end = first.earliest, last.latest
    if not timedelta(0) <= end - start <= WIDEST:
        return None
    days = (start.date().isoformat(), end.date().isoformat())
    return When(start, end, days[0] if days[0] == days[1] else "/".join(days))


def _inside(inner: When, outer: When) -> bool:
    return outer.earliest <= inner.earliest and inner.latest <= outer.latest
