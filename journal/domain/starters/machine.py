"""Measures and pens for machines that are no cars: what a motorcycle and a tractor share.

Spots are told in millimetres of the typical machine: along it from the front axle rearwards, above
the ground, and out from the centre line. The measures of one machine stretch them.
"""

import math
from dataclasses import dataclass
from itertools import pairwise

from journal.domain.drawing import Weight
from journal.domain.errors import JournalError
from journal.domain.shapes import Point, Shape, Stroke, rounded
from journal.domain.starters.joins import outline
from journal.domain.starters.lines import arc, reverse, spline, straight
from journal.domain.starters.proportions import MARGIN
from journal.domain.starters.sheet import Sheet

#: Two numbers of a spot in millimetres of the typical machine; which two depends on the view.
Spot = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Kind:
    """The typical machine of a kind, and which sizes are its kind's.

    Attributes:
        title: the kind as people read it; ``noun`` as a sentence has it.
        front, rear: what reaches beyond the axles.
        wheelbases: the least and the most a wheelbase can be.
        ratios: the least and the most a length can be, in wheelbases.
    """

    title: str
    noun: str
    wheelbase: float
    front: float
    rear: float
    width: float
    height: float
    wheelbases: tuple[int, int]
    ratios: tuple[float, float]

    @property
    def length(self) -> float:
        """Of the typical machine."""
        return self.front + self.wheelbase + self.rear


@dataclass(frozen=True, slots=True)
class Machine:
    """One machine's measures in millimetres.

    Attributes:
        scale: how much larger than typical its heights, widths and fittings are.
        round: the same of its wheels, which must keep within the machine's length.
    """

    kind: Kind
    wheelbase: float
    front: float
    rear: float
    scale: float
    round: float

    @property
    def length(self) -> float:
        """From the foremost spot to the rearmost."""
        return self.front + self.wheelbase + self.rear

    @property
    def width(self) -> float:
        """The widest of the machine."""
        return self.kind.width * self.scale

    @property
    def height(self) -> float:
        """From the ground to the highest spot."""
        return self.kind.height * self.scale

    def x(self, along: float) -> float:
        """Millimetres from the foremost spot to a place along the typical machine."""
        kind = self.kind
        if along < 0:
            return self.front + along * self.front / kind.front
        if along <= kind.wheelbase:
            return self.front + along * self.wheelbase / kind.wheelbase
        beyond = (along - kind.wheelbase) * self.rear / kind.rear
        return self.front + self.wheelbase + beyond


def machine(kind: Kind, wheelbase_mm: int, length_mm: int) -> Machine:
    """The measures of one machine of a kind; 0 stands for a typical one.

    Raises:
        JournalError: the dimensions are not those of such a machine.
    """
    low, high = kind.wheelbases
    if wheelbase_mm and not low <= wheelbase_mm <= high:
        raise JournalError(
            f"A wheelbase of {wheelbase_mm} mm is not that of a {kind.noun}: "
            f"{low} to {high} mm are."
        )
    wheelbase = wheelbase_mm or (length_mm or kind.length) * kind.wheelbase / kind.length
    length = length_mm or wheelbase * kind.length / kind.wheelbase
    least, most = (wheelbase * ratio for ratio in kind.ratios)
    if not (least <= length <= most and low <= wheelbase <= high):
        raise JournalError(
            f"A {kind.noun} {length:.0f} mm long can't have a wheelbase of {wheelbase:.0f} mm."
        )
    share = (length - wheelbase) / (kind.front + kind.rear)
    scale = wheelbase / kind.wheelbase
    return Machine(
        kind=kind,
        wheelbase=float(wheelbase),
        front=kind.front * share,
        rear=kind.rear * share,
        scale=scale,
        round=min(scale, share),
    )


@dataclass(frozen=True, slots=True)
class Pen:
    """Draws on one sheet in millimetres of the typical machine."""

    sheet: Sheet
    m: Machine

    def at(self, a: float, b: float) -> Point:
        """The spot of two numbers."""
        raise NotImplementedError

    def s(self, size: float) -> float:
        """The size of a fitting."""
        return size * self.m.scale

    def along(self, *spots: Spot) -> Stroke:
        """A fair curve through spots."""
        return spline(*(self.at(*s) for s in spots))

    def edges(self, *spots: Spot) -> Stroke:
        """Straight edges through spots."""
        return straight(*(self.at(*s) for s in spots))

    def ring(self, *spots: Spot, ease: float = 0.0) -> Shape:
        """The shape of straight edges through spots, its corners eased."""
        if ease:
            return rounded([self.at(*s) for s in spots], self.s(ease))
        return outline(self.edges(*spots))

    def box(self, a: float, b: float, c: float, d: float, ease: float = 0.0) -> Shape:
        """An upright rectangle: first numbers from ``a`` to ``b``, second ones ``c`` to ``d``."""
        return self.ring((a, c), (b, c), (b, d), (a, d), ease=ease)

    def tube(self, *spots: Spot, width: float) -> Shape:
        """A tube of some width along a fair curve through spots."""
        return tube([self.at(*s) for s in spots], self.s(width) / 2)

    def line(self, *spots: Spot) -> None:
        """A straight line of the background."""
        self.sheet.line(self.edges(*spots))


def tube(spots: list[Point], half: float) -> Shape:
    """What lies within ``half`` on either side of a fair curve through spots."""
    ways = [_way(spots, i) for i in range(len(spots))]
    sides = [
        spline(
            *(Point(p.x - w[1] * off, p.y + w[0] * off) for p, w in zip(spots, ways, strict=True))
        )
        for off in (half, -half)
    ]
    return outline(sides[0], reverse(sides[1]))


def _way(spots: list[Point], at: int) -> Spot:
    """The direction of a line through spots at one of them."""
    parts = [
        ((b.x - a.x) / math.dist(a, b), (b.y - a.y) / math.dist(a, b))
        for a, b in pairwise(spots[max(0, at - 1) : at + 2])
    ]
    dx, dy = sum(p[0] for p in parts), sum(p[1] for p in parts)
    # Lengthened at a bend, so that the tube keeps its width there.
    size = math.hypot(dx, dy) ** 2 / len(parts)
    return dx / size, dy / size


def guard(centre: Point, inner: float, outer: float, start: float, end: float) -> Shape:
    """A mudguard: what lies between two radii from one angle to another; 0 right, 90 down."""
    return outline(
        arc(centre.x, centre.y, outer, start, end),
        reverse(arc(centre.x, centre.y, inner, start, end)),
    )


@dataclass(frozen=True, slots=True)
class SidePen(Pen):
    """The machine from its left: along it, and above the ground.

    ``dx`` and ``dy`` move it on a sheet that shows a part of it only.
    """

    dx: float = 0.0
    dy: float = 0.0

    def at(self, a: float, b: float) -> Point:
        """The spot so far behind the front axle and so far above the ground."""
        m = self.m
        return Point(MARGIN + m.x(a) + self.dx, MARGIN + m.height - b * m.scale + self.dy)

    def ground(self) -> None:
        """The line it stands on, which wheels touch."""
        self.sheet.line(_ground(self.sheet, self.at(0, 0).y), Weight.GROUND)


@dataclass(frozen=True, slots=True)
class PlanPen(Pen):
    """The machine from above, its left low: along it, and out from the centre line."""

    def at(self, a: float, b: float) -> Point:
        """The spot so far behind the front axle and so far out to the left."""
        return Point(MARGIN + self.m.x(a), self.sheet.middle_y + b * self.m.scale)

    def centre_line(self) -> None:
        """The line along the middle."""
        y, wide = self.sheet.middle_y, self.sheet.view.width
        self.sheet.line(straight((MARGIN * 0.4, y), (wide - MARGIN * 0.4, y)), Weight.CENTRE)


@dataclass(frozen=True, slots=True)
class EndPen(Pen):
    """The machine from an end; ``out`` is 1 where its left is on the right of the sheet."""

    out: int

    def at(self, a: float, b: float) -> Point:
        """The spot so far out to the left and so far above the ground."""
        m = self.m
        x = self.sheet.middle_x + self.out * a * m.scale
        return Point(x, MARGIN + m.height - b * m.scale)

    def ground(self) -> None:
        """The line it stands on."""
        self.sheet.line(_ground(self.sheet, self.at(0, 0).y), Weight.GROUND)

    def centre_line(self) -> None:
        """The upright line in the middle."""
        x, high = self.sheet.middle_x, self.sheet.view.height
        self.sheet.line(straight((x, MARGIN * 0.4), (x, high - MARGIN * 0.4)), Weight.CENTRE)


def _ground(sheet: Sheet, y: float) -> Stroke:
    return straight((MARGIN * 0.3, y), (sheet.view.width - MARGIN * 0.3, y))
