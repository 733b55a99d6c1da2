"""Patches: pieces of new metal drawn on a view, their area and mass."""

from dataclasses import dataclass

from journal.domain.ids import AreaId, PatchId, ViewId
from journal.domain.shapes import Shape
from journal.domain.when import When


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
