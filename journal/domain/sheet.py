"""Sheet steel: its mass, and its thickness by gauge number."""

from dataclasses import dataclass

from journal.domain.errors import JournalError

#: Kilograms of mild steel in a cubic metre, the figure that trade and engineering tables use.
STEEL_DENSITY = 7850.0

#: Thinnest and thickest steel taken for meant, in millimetres: common practice, no source.
THINNEST_MM, THICKEST_MM = 0.3, 10.0

#: Where the thicknesses of the gauges stand.
GAUGE_SOURCE = "manufacturers' standard gauge for sheet steel, as several gauge charts print it"


@dataclass(frozen=True, slots=True)
class Gauge:
    """A gauge number of sheet steel, its thickness, and whose figure that is."""

    number: int
    thickness_mm: float
    source: str = GAUGE_SOURCE

    @property
    def label(self) -> str:
        """As a screen shows it: "18 gauge, 1.21 mm"."""
        return f"{self.number} gauge, {self.thickness_mm:.2f} mm"


#: The gauges of car bodies, the thickest first.
GAUGES = (
    Gauge(16, 1.52),
    Gauge(18, 1.21),
    Gauge(20, 0.91),
    Gauge(22, 0.76, "from memory, no source read"),
)

#: How far a thickness may be from a gauge's and still be called by its number, in millimetres.
_NEAR_MM = 0.08


def gauge(number: int) -> Gauge:
    """The gauge of a number.

    Raises:
        JournalError: it is none that this table holds.
    """
    for known in GAUGES:
        if known.number == number:
            return known
    numbers = ", ".join(str(known.number) for known in GAUGES)
    raise JournalError(f"There is no {number} gauge in the table of sheet steel; it has {numbers}.")


def nearest_gauge(thickness_mm: float) -> Gauge | None:
    """The gauge that a thickness in millimetres goes by, None where it goes by none."""
    near = min(GAUGES, key=lambda known: abs(known.thickness_mm - thickness_mm))
    return near if abs(near.thickness_mm - thickness_mm) <= _NEAR_MM else None


def check_thickness(thickness_mm: float) -> None:
    """Refuse a thickness in millimetres that no body or chassis is made of.

    Raises:
        JournalError: naming the thickness.
    """
    if not THINNEST_MM <= thickness_mm <= THICKEST_MM:
        raise JournalError(
            f"Steel of {thickness_mm:g} mm can't be meant; write a thickness from"
            f" {THINNEST_MM:g} to {THICKEST_MM:g} mm."
        )


def steel_mass(area_mm2: float, thickness_mm: float) -> float:
    """Grams of a steel sheet of that area (mm²) and thickness (mm)."""
    return area_mm2 * thickness_mm * STEEL_DENSITY / 1_000_000
