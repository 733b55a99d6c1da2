"""How the dimensions of one car stretch the lines of its body style."""

from dataclasses import dataclass

from journal.domain.errors import JournalError
from journal.domain.shapes import Point
from journal.domain.starters.bodies import BODIES, STYLES, Style

#: Paper left free round the car, in millimetres.
MARGIN = 160.0

#: Height of the sill's lower edge of every style at its typical size.
SILL = 205.0


@dataclass(frozen=True, slots=True)
class Proportions:
    """One car's measures in millimetres, and its body style.

    Attributes:
        front, rear: the overhangs in front of the front axle and behind the rear axle.
        scale: how much larger than typical its height, width and fittings are.
        wheel, arch: radius of a tyre, and of the opening in the wing round it.
        low: height of the sill's lower edge.
    """

    style: Style
    wheelbase: float
    length: float
    front: float
    rear: float
    scale: float
    wheel: float
    arch: float
    low: float

    @property
    def width(self) -> float:
        """The widest of the body."""
        return self.style.width * self.scale

    @property
    def height(self) -> float:
        """From the ground to the highest spot."""
        return self.style.height * self.scale

    def s(self, size: float) -> float:
        """The size of a fitting, from its size on the typical car."""
        return size * self.scale

    def x(self, station: float) -> float:
        """Millimetres from the front bumper to a station."""
        if station < 0:
            return self.front * (1 + station)
        if station <= 1:
            return self.front + self.wheelbase * station
        return self.front + self.wheelbase + self.rear * (station - 1)

    def z(self, height: float) -> float:
        """Millimetres above the ground, from the height on the typical car."""
        if height <= SILL:
            return height / SILL * self.low
        rise = (self.height - self.low) / (self.style.height - SILL)
        return self.low + (height - SILL) * rise

    def at(self, station: float, height: float) -> Point:
        """The spot on the left side's view at a station and a height of the typical car."""
        return Point(MARGIN + self.x(station), MARGIN + self.height - self.z(height))

    def y(self, above_ground: float) -> float:
        """The y on an upright view of so many true millimetres above the ground."""
        return MARGIN + self.height - above_ground


def proportions(body: str, wheelbase_mm: int, length_mm: int) -> Proportions:
    """The measures of a car of that body; 0 stands for a typical one.

    Raises:
        JournalError: the body is unknown, or the dimensions are not those of a car.
    """
    if body not in STYLES:
        known = ", ".join(BODIES)
        raise JournalError(f"There is no starter drawing for the body “{body}”; known: {known}.")
    style = STYLES[body]
    wheelbase, length = _dimensions(style, wheelbase_mm, length_mm)
    front = (length - wheelbase) * style.front_share
    rear = length - wheelbase - front
    scale = min(1.4, max(0.55, (length / style.length) ** 0.5))
    arch = min((style.wheel + 38) * scale, 0.16 * wheelbase, 0.72 * front, 0.72 * rear)
    wheel = arch * style.wheel / (style.wheel + 38)
    return Proportions(
        style=style,
        wheelbase=wheelbase,
        length=length,
        front=front,
        rear=rear,
        scale=scale,
        wheel=wheel,
        arch=arch,
        low=min(SILL * scale, 0.68 * wheel),
    )


def _dimensions(style: Style, wheelbase_mm: int, length_mm: int) -> tuple[float, float]:
    """Wheelbase and length, each guessed from the other where it isn't known."""
    if wheelbase_mm and not 1000 <= wheelbase_mm <= 6000:
        raise JournalError(
            f"A wheelbase of {wheelbase_mm} mm is not that of a car: 1000 to 6000 mm are."
        )
    if length_mm and not 1300 <= length_mm <= 9000:
        raise JournalError(f"A length of {length_mm} mm is not that of a car: 1300 to 9000 mm are.")
    ratio = style.length / style.wheelbase
    wheelbase = wheelbase_mm or (length_mm / ratio if length_mm else style.wheelbase)
    length = length_mm or wheelbase_mm * ratio or style.length
    beyond = max(300.0, wheelbase * 0.2)
    if length < wheelbase + beyond:
        raise JournalError(
            f"A car {length:.0f} mm long can't have a wheelbase of {wheelbase:.0f} mm: "
            f"it needs at least {beyond:.0f} mm beyond its axles."
        )
    if length > wheelbase * 2.5:
        raise JournalError(
            f"A car {length:.0f} mm long can't have a wheelbase of only {wheelbase:.0f} mm."
        )
    return float(wheelbase), float(length)
