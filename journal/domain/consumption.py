"""Wire and gas that welding takes: estimates from stated assumptions, which the owner can change.

They are rules of thumb, to buy by and not to judge by.
"""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields
from types import MappingProxyType

from journal.domain.errors import JournalError
from journal.domain.guidance import (
    COMMON_PRACTICE,
    PLUG_HOLE_MM,
    guidance,
    mig_current,
    wire,
    wire_feed,
)
from journal.domain.seams import Joint
from journal.domain.sheet import STEEL_DENSITY, check_thickness


@dataclass(frozen=True, slots=True)
class Assumptions:
    """What the estimate rests on; ``ABOUT`` says of each what it is and where it comes from.

    Attributes:
        sheet_mm: thickness where no patch says it.
        wire_mm: diameter of the wire: 0.6, 0.8 or 0.9.
        bead_width_mm: width of a weld bead.
        bead_height_mm: height of the bead over the sheet.
        butt_gap_mm: gap between the sheets of a butt joint, filled by the weld.
        plug_hole_mm: diameter of the hole of a plug weld.
        wire_share: share of the wire that ends in the weld, the rest being spatter and ends.
        gas_flow: litres of gas a minute while the arc burns.
        gas_share: gas for each litre under the arc: more than 1 for what flows before and after.
    """

    sheet_mm: float = 1.0
    wire_mm: float = 0.6
    bead_width_mm: float = 4.0
    bead_height_mm: float = 0.8
    butt_gap_mm: float = 0.8
    plug_hole_mm: float = PLUG_HOLE_MM
    wire_share: float = 0.9
    gas_flow: float = 10.0
    gas_share: float = 1.25


@dataclass(frozen=True, slots=True)
class About:
    """What one assumption is called, its unit, the bounds it is refused beyond, its source."""

    label: str
    unit: str
    least: float
    most: float
    basis: str = COMMON_PRACTICE


#: What every field of ``Assumptions`` is, in the order a screen shows them.
ABOUT: Mapping[str, About] = MappingProxyType(
    {
        "sheet_mm": About("Sheet thickness where none is recorded", "mm", 0.3, 10.0),
        "wire_mm": About("Wire diameter", "mm", 0.6, 0.9),
        "bead_width_mm": About("Width of the bead", "mm", 1.0, 20.0),
        "bead_height_mm": About("Height of the bead over the sheet", "mm", 0.1, 10.0),
        "butt_gap_mm": About("Gap of a butt joint", "mm", 0.0, 5.0),
        "plug_hole_mm": About("Hole of a plug weld", "mm", 3.0, 20.0, guidance("plugs").source),
        "wire_share": About("Share of the wire that ends in the weld", "", 0.3, 1.0),
        "gas_flow": About("Gas while the arc burns", "l/min", 1.0, 40.0),
        "gas_share": About("Gas drawn for each litre under the arc", "", 1.0, 5.0),
    }
)


@dataclass(frozen=True, slots=True)
class Welded:
    """What was welded of one seam: millimetres of it, its plugs, and the sheet's thickness.

    ``thickness_mm`` is None where no patch says it.
    """

    joint: Joint
    length_mm: float
    welds: int = 0
    thickness_mm: float | None = None


@dataclass(frozen=True, slots=True)
class Consumption:
    """An estimate: wire in metres and grams, gas in litres, minutes of arc."""

    wire_m: float = 0.0
    wire_g: float = 0.0
    gas_l: float = 0.0
    arc_minutes: float = 0.0

    def __add__(self, other: "Consumption") -> "Consumption":
        return Consumption(
            self.wire_m + other.wire_m,
            self.wire_g + other.wire_g,
            self.gas_l + other.gas_l,
            self.arc_minutes + other.arc_minutes,
        )


def check_assumptions(assumptions: Assumptions) -> None:
    """Refuse assumptions beyond all reason.

    Raises:
        JournalError: naming the assumption and its bounds.
    """
    for field in fields(assumptions):
        value, about = getattr(assumptions, field.name), ABOUT[field.name]
        if not about.least <= value <= about.most:
            raise JournalError(
                f"{about.label} must be from {about.least:g} to {about.most:g}"
                f" {about.unit}".rstrip()
                + f", not {value:g}."
            )
    wire(assumptions.wire_mm)


def estimate(welded: Iterable[Welded], assumptions: Assumptions | None = None) -> Consumption:
    """The wire and gas that welded seams took, or that planned ones will take.

    A bead is taken as a low arch over the joint: two thirds of its width times its height, and
    under it the gap of a butt joint or the corner of a lap. A plug fills its hole and stands half
    as much over it as its height would. The arc burns for as long as the wire takes to run through
    at the current that the thickness asks for. Spot welds take neither wire nor gas.

    Raises:
        JournalError: an assumption, a thickness or a length is beyond all reason.
    """
    chosen = assumptions or Assumptions()
    check_assumptions(chosen)
    return sum((_of_one(seam, chosen) for seam in welded), Consumption())


def _of_one(seam: Welded, assumptions: Assumptions) -> Consumption:
    thickness = assumptions.sheet_mm if seam.thickness_mm is None else seam.thickness_mm
    check_thickness(thickness)
    if not 0 <= seam.length_mm < math.inf or seam.welds < 0:
        raise JournalError("The welded length and the number of welds can't be less than nothing.")
    metal = _metal_mm3(seam, thickness, assumptions) / assumptions.wire_share
    wire_m = metal / (math.pi / 4 * assumptions.wire_mm**2) / 1000
    minutes = wire_m / wire_feed(assumptions.wire_mm, _current(thickness, assumptions))
    return Consumption(
        wire_m=wire_m,
        wire_g=metal * STEEL_DENSITY / 1_000_000,
        gas_l=minutes * assumptions.gas_flow * assumptions.gas_share,
        arc_minutes=minutes,
    )


def _current(thickness: float, assumptions: Assumptions) -> float:
    """Amperes for a thickness, kept within what the wire is for."""
    known = wire(assumptions.wire_mm)
    return min(max(mig_current(thickness), known.least_amperes), known.most_amperes)


def _metal_mm3(seam: Welded, thickness: float, assumptions: Assumptions) -> float:
    """Weld metal of one seam in cubic millimetres."""
    if seam.joint is Joint.SPOTS:
        return 0.0
    if seam.joint is Joint.PLUGS:
        hole = math.pi / 4 * assumptions.plug_hole_mm**2
        return seam.welds * hole * (thickness + assumptions.bead_height_mm / 2)
    arch = 2 / 3 * assumptions.bead_width_mm * assumptions.bead_height_mm
    # A joggled lap brings the sheets flush, so that it is filled like a butt joint.
    flush = seam.joint in (Joint.BUTT, Joint.JOGGLED)
    under = assumptions.butt_gap_mm * thickness if flush else thickness**2 / 2
    return seam.length_mm * (arch + under)
