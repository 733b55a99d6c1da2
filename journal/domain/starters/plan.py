"""Lines of the car seen along the upright: shared by the views from above and from below."""

from dataclasses import dataclass

from journal.domain.shapes import Point, Shape, Stroke, moved_edges
from journal.domain.starters.joins import chain, outline
from journal.domain.starters.lines import between_x, reverse, spline, straight
from journal.domain.starters.proportions import MARGIN, Proportions
from journal.domain.starters.sheet import Sheet

#: A station along the car, and a share of half its width towards the left.
Spot = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Plan:
    """A sheet seen from above (``down`` 1: the left is low) or from below (-1: it is high)."""

    sheet: Sheet
    p: Proportions
    down: int

    @property
    def middle(self) -> float:
        """The y of the centre line."""
        return self.sheet.middle_y

    def x(self, station: float) -> float:
        """The x of a station."""
        return MARGIN + self.p.x(station)

    def at(self, station: float, share: float) -> Point:
        """The point of a station and a share of half the width, left being positive."""
        return Point(self.x(station), self.middle + self.down * share * self.p.width / 2)

    def along(self, *spots: Spot) -> Stroke:
        """A fair curve through spots."""
        return spline(*(self.at(*s) for s in spots))

    def edges(self, *spots: Spot) -> Stroke:
        """Straight edges through spots."""
        return straight(*(self.at(*s) for s in spots))

    def across(self, *spots: Spot) -> Stroke:
        """A fair curve over the whole width: spots from the left edge to the centre line."""
        fellows = [(s, -f) for s, f in reversed(spots) if f > 0]
        return self.along(*spots, *fellows)

    def mirror(self, stroke: Stroke) -> Stroke:
        """A line's fellow on the right, drawn the other way."""
        middle = self.middle
        start = Point(stroke.start.x, 2 * middle - stroke.start.y)
        edges = moved_edges(stroke.edges, lambda q: Point(q.x, 2 * middle - q.y))
        return reverse(Stroke(start, edges))

    def both(self, *left: Stroke, ease: float = 0.0) -> Shape:
        """A shape over the centre line, from the lines of its left half, front to rear."""
        return outline(*left, *(self.mirror(s) for s in reversed(left)), ease=ease)

    def strip(
        self, outer: Stroke, inner: Stroke, start: float, end: float, ease: float = 0
    ) -> Shape:
        """What lies between two lines running rearwards, from one station to another."""
        a, b = self.x(start), self.x(end)
        return outline(between_x(outer, a, b), between_x(inner, b, a), ease=ease)

    def box(self, start: float, end: float, inner: float, outer: float, ease: float = 0) -> Shape:
        """A level rectangle between two stations and two shares of half the width."""
        ring = self.edges((start, inner), (end, inner))
        return outline(ring, self.edges((end, outer), (start, outer)), ease=ease)


def body_edge(plan: Plan) -> Stroke:
    """The widest line of the left side, from the nose to the tail."""
    return plan.along(
        (-0.89, 0.80),
        (-0.6, 0.915),
        (0.0, 0.98),
        (0.5, 1.0),
        (1.0, 0.985),
        (1.55, 0.925),
        (1.92, 0.83),
    )


def inner_edge(plan: Plan) -> Stroke:
    """The line where bonnet, windows and boot lid meet the wings and doors of the left side."""
    st = plan.p.style
    full = 0.1 if st.rear in ("hatch", "bed") else 0.0
    return plan.along(
        (-0.9, 0.64),
        (-0.45, 0.745),
        (st.cowl, 0.815),
        (0.6, 0.865),
        (1.05, 0.848 + full * 0.3),
        (1.45, 0.775 + full * 0.8),
        (1.93, 0.665 + full),
    )


def front_bumper(plan: Plan) -> Shape:
    """The front bumper, which wraps round the corners of the nose."""
    return _bumper(plan, -0.72, -0.962, -1.0)


def rear_bumper(plan: Plan) -> Shape:
    """The rear bumper, which wraps round the corners of the tail."""
    return _bumper(plan, 1.76, 1.968, 2.0)


def _bumper(plan: Plan, end: float, corner: float, middle: float) -> Shape:
    side = plan.edges((end, 0.9), (corner, 0.872))
    bar = plan.across((corner, 0.872), (middle, 0.0))
    return outline(chain(side, bar, plan.mirror(side), ease=plan.p.s(85)))
