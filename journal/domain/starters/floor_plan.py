"""Where things stand on the cabin's floor, and the sheet they are drawn on."""

from dataclasses import dataclass

from journal.domain.shapes import Point, Shape, Stroke, rounded
from journal.domain.starters.joins import outline
from journal.domain.starters.lines import straight
from journal.domain.starters.proportions import MARGIN, Proportions
from journal.domain.starters.sheet import Draft, Sheet


@dataclass(frozen=True, slots=True)
class FloorPlan:
    """The cabin's sheet, nose to the left, the car's left low; stations as in ``Style``."""

    sheet: Sheet
    p: Proportions

    @staticmethod
    def on_new_sheet(draft: Draft, p: Proportions) -> "FloorPlan":
        """A plan on a new view that fits the cabin, its doors and its headlining."""
        start = p.style.cowl - 0.03
        length = p.x(cabin_end(p)) - p.x(start)
        lining = headlining_length(p)
        width = length + (lining + MARGIN if lining else 0) + 2 * MARGIN
        height = p.width + 2 * (card_height(p) + MARGIN * 0.5) + 2 * MARGIN
        return FloorPlan(draft.sheet("Cabin", width, height), p)

    def x(self, station: float) -> float:
        """The x of a station."""
        return MARGIN + self.p.x(station) - self.p.x(self.p.style.cowl - 0.03)

    def at(self, station: float, share: float) -> Point:
        """The point of a station and a share of half the width, left being positive."""
        return Point(self.x(station), self.sheet.middle_y + share * self.p.width / 2)

    def edges(self, *spots: tuple[float, float]) -> Stroke:
        """Straight edges through spots."""
        return straight(*(self.at(*s) for s in spots))

    def box(self, start: float, end: float, inner: float, outer: float, ease: float = 0) -> Shape:
        """A rectangle between two stations and two shares; ``ease`` as on the typical car."""
        ring = [
            self.at(start, inner),
            self.at(end, inner),
            self.at(end, outer),
            self.at(start, outer),
        ]
        return rounded(ring, self.p.s(ease)) if ease else outline(straight(*ring))

    @property
    def has_rear_seat(self) -> bool:
        """Whether there is a second row."""
        st = self.p.style
        return st.doors == 4 or (st.rear == "boot" and st.roof)

    @property
    def seat(self) -> float:
        """How long a front seat is, in stations."""
        return min(0.3, self.p.s(640) / self.p.wheelbase)

    @property
    def front_end(self) -> float:
        """Where the front floor ends."""
        return self.p.style.b_post + (0.06 if self.has_rear_seat else 0.03)

    @property
    def seat_start(self) -> float:
        """The front edge of the rear seat."""
        return self.seat_back - 0.17

    @property
    def rear_end(self) -> float:
        """Where the rear floor ends, at the rear seat."""
        return self.seat_start + 0.03

    @property
    def seat_back(self) -> float:
        """Where the rear seat's back begins."""
        return 0.95

    @property
    def seat_back_end(self) -> float:
        """Where the rear seat's back ends."""
        return 0.999 if self.p.style.rear == "hatch" else 1.02

    @property
    def cabin_end(self) -> float:
        """Where the cabin ends."""
        return cabin_end(self.p)

    def after_axle(self, part: float) -> float:
        """The station as far behind the rear axle as ``part`` of the wheelbase."""
        return min(1.8, 1 + part * self.p.wheelbase / self.p.rear)


def cabin_end(p: Proportions) -> float:
    """The station where the cabin ends."""
    st = p.style
    if st.rear == "hatch":
        return 1.88
    if st.rear == "bed" or not st.roof:
        return st.b_post + 0.06
    return st.deck + 0.03


def card_height(p: Proportions) -> float:
    """How high a door card is."""
    return p.z(p.style.waist) - p.z(330)


def headlining_length(p: Proportions) -> float:
    """How long the headlining is; 0 on an open car."""
    st = p.style
    if not st.roof:
        return 0.0
    return p.x(st.roof_end) - p.x(st.screen_top)
