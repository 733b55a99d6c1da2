"""Guidance of the trade on welding: numbers with their sources, shown and never judged by.

The data sheet of the product and the instructions of the car's maker go before all of it.
"""

from dataclasses import dataclass

from journal.domain.errors import JournalError

#: What stands in place of a source where there is none.
COMMON_PRACTICE = "rule of thumb, common practice, no source"

_SERVICE_MANUAL = "a car maker's service manual of 2003, p. 3-106"
_REPAIR_MANUAL = "a maker's body repair manual of 2011, general welding precautions"
_WELDER_MANUALS = "welder owner's manuals OM-228 042, section 12-2, and OM-194 199, section 6-2"

#: Plug welds where the original positions are unknown, in millimetres.
PLUG_HOLE_MM = 8.0
PLUG_EDGE_MM = 13.0
PLUG_SPACING_MM = 40.0

#: New spots, from one to the next, in millimetres.
SPOT_SPACING_MM = 30.0

#: A stitch of a long seam and the gap left after it, to be filled later; in millimetres.
STITCH_MM = 25.0
STITCH_GAP_MM = 25.0

#: Millimetres in an inch.
INCH_MM = 25.4

#: MIG current for steel: amperes for each thousandth of an inch.
AMPERES_PER_THOU = 1.0


@dataclass(frozen=True, slots=True)
class Guidance:
    """One piece of guidance: its key, its text for people, and whose it is."""

    key: str
    text: str
    source: str


#: All guidance on welds, in the order it is shown in.
GUIDANCE = (
    Guidance(
        "plugs",
        "Plug welds: 8 mm holes, 13 mm from the edge and 40 mm apart where the original positions"
        " aren't known.",
        _SERVICE_MANUAL,
    ),
    Guidance(
        "plug count",
        "Where spots were removed: one plug of about 8 mm for each, and the same number of them.",
        _REPAIR_MANUAL,
    ),
    Guidance("spots", "New spots: 30 mm apart.", _REPAIR_MANUAL),
    Guidance(
        "more spots",
        "One maker asks for 1.3 times the original number of spots in a repair.",
        "a collision repair institute's bulletin, crn-1287",
    ),
    Guidance(
        "stitches",
        "Against heat: 25 mm stitches with 25 mm gaps, then go back and fill them.",
        _SERVICE_MANUAL,
    ),
    Guidance(
        "current",
        "MIG current: about 1 ampere for each thousandth of an inch of thickness (0.0254 mm).",
        _WELDER_MANUALS,
    ),
    Guidance(
        "braces",
        "Brace the door apertures before sills or floors are cut, with the doors hung as gauges.",
        "common practice; a trade article",
    ),
)


@dataclass(frozen=True, slots=True)
class Wire:
    """A MIG wire: its diameter, the currents it is for, and its feed for each ampere.

    ``feed`` is in millimetres a minute for one ampere.
    """

    diameter_mm: float
    least_amperes: float
    most_amperes: float
    feed: float
    source: str = _WELDER_MANUALS


#: Wires for sheet steel, the thinnest first.
WIRES = (
    Wire(0.6, 30, 90, 3.5 * INCH_MM),
    Wire(0.8, 40, 145, 2.0 * INCH_MM),
    Wire(0.9, 50, 180, 1.6 * INCH_MM),
)


def guidance(key: str) -> Guidance:
    """The guidance of that key.

    Raises:
        JournalError: there is none.
    """
    for piece in GUIDANCE:
        if piece.key == key:
            return piece
    raise JournalError(f"There is no guidance called “{key}”.")


def mig_current(thickness_mm: float) -> float:
    """Amperes that the rule of 1 A per 0.001 in gives for a thickness in millimetres."""
    return thickness_mm / INCH_MM * 1000 * AMPERES_PER_THOU


def wire(diameter_mm: float) -> Wire:
    """The wire of a diameter in millimetres.

    Raises:
        JournalError: it is none that the table holds.
    """
    for known in WIRES:
        if abs(known.diameter_mm - diameter_mm) < 0.005:
            return known
    sizes = ", ".join(f"{known.diameter_mm:g}" for known in WIRES)
    raise JournalError(f"There is no wire of {diameter_mm:g} mm in the table; it has {sizes} mm.")


def wire_feed(diameter_mm: float, amperes: float) -> float:
    """Metres of wire a minute at that current, for a wire of that diameter in millimetres."""
    return wire(diameter_mm).feed * amperes / 1000
