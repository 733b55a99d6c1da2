"""Patches: pieces of new metal drawn on a view, their area and mass."""

from __future__ import annotations

import math
from collections.abc import Callable, Hashable, Iterable
from dataclasses import dataclass
from itertools import combinations
from typing import TYPE_CHECKING, TypeVar

from journal.domain.errors import JournalError
from journal.domain.hits import to_polygon
from journal.domain.ids import AreaId, PatchId, ViewId
from journal.domain.shapes import TOLERANCE, Point, Shape, flatten
from journal.domain.sheet import check_thickness, steel_mass
from journal.domain.when import When

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

Key = TypeVar("Key", bound=Hashable)

#: The smallest patch, in square millimetres.
_SMALLEST_MM2 = 1.0


@dataclass(frozen=True, slots=True)
class Patch:
    """A piece of new metal on a view, part of a repair area.

    ``thickness_mm`` is the sheet's thickness; ``steel`` names it in the owner's words; ``when`` is
    the day it went in, None where that isn't known or it isn't in yet.
    """

    id: PatchId
    area_id: AreaId
    view_id: ViewId
    shape: Shape
    thickness_mm: float
    steel: str = ""
    note: str = ""
    when: When | None = None


@dataclass(frozen=True, slots=True)
class PatchSums:
    """New metal together: how many patches, their area in cm², their steel in grams."""

    count: int = 0
    area_cm2: float = 0.0
    mass_g: float = 0.0

    def __add__(self, other: PatchSums) -> PatchSums:
        return PatchSums(
            self.count + other.count,
            self.area_cm2 + other.area_cm2,
            self.mass_g + other.mass_g,
        )


def check_patch(patch: Patch) -> None:
    """Refuse a patch that can't be: an outline that crosses itself, no area, absurd thickness.

    Raises:
        JournalError: naming what is wrong.
    """
    check_thickness(patch.thickness_mm)
    check_outline(patch.shape, "The patch")


def check_outline(shape: Shape, named: str) -> None:
    """Refuse a shape whose outlines cross themselves or each other, or that has no area.

    ``named`` begins the sentence: "The patch".

    Raises:
        JournalError: naming what is wrong.
    """
    rings = flatten(shape, TOLERANCE)
    if not all(math.isfinite(number) for ring in rings for point in ring for number in point):
        raise JournalError(f"{named} has a corner that is no place on the drawing.")
    whole = [_without_repeats(ring) for ring in rings]
    if any(len(ring) < 3 for ring in whole) or _area_mm2(shape) < _SMALLEST_MM2:
        raise JournalError(f"{named} has no area: its corners lie on one line or one spot.")
    _check_crossings(whole, named)


def _check_crossings(rings: list[list[Point]], named: str) -> None:
    import shapely

    outlines = [shapely.LinearRing(ring) for ring in rings]
    if not all(outline.is_simple for outline in outlines):
        raise JournalError(f"{named} has an outline that crosses itself.")
    if any(one.crosses(other) or one.overlaps(other) for one, other in combinations(outlines, 2)):
        raise JournalError(f"{named} has outlines that cross each other.")


def _without_repeats(ring: tuple[Point, ...]) -> list[Point]:
    return [
        point for point, before in zip(ring, ring[-1:] + ring[:-1], strict=True) if point != before
    ]


def _area_mm2(shape: Shape) -> float:
    area: BaseGeometry = to_polygon(shape, TOLERANCE)
    return float(area.area)


def patch_area(patch: Patch) -> float:
    """The area of a patch in cm², holes left out, its curves flattened to 0.5 mm."""
    return _area_mm2(patch.shape) / 100


def patch_mass(patch: Patch) -> float:
    """The mass of a patch in grams, as flat steel sheet of 7,850 kg/m³."""
    return steel_mass(_area_mm2(patch.shape), patch.thickness_mm)


def patch_sums(patches: Iterable[Patch], on: When | None = None) -> PatchSums:
    """The new metal of many patches; with ``on``, of those that were in by the end of it."""
    return sum((_own(p) for p in patches if _in_by(p, on)), PatchSums())


def patch_sums_by(
    patches: Iterable[Patch], key: Callable[[Patch], Key | None], on: When | None = None
) -> dict[Key, PatchSums]:
    """The new metal by what ``key`` says of each patch; those it says None of are left out."""
    found: dict[Key, PatchSums] = {}
    for patch in patches:
        group = key(patch)
        if group is not None and _in_by(patch, on):
            found[group] = found.get(group, PatchSums()) + _own(patch)
    return found


def _own(patch: Patch) -> PatchSums:
    area = _area_mm2(patch.shape)
    return PatchSums(1, area / 100, steel_mass(area, patch.thickness_mm))


def _in_by(patch: Patch, on: When | None) -> bool:
    return on is None or (patch.when is not None and patch.when.earliest <= on.latest)
