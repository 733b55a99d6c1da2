"""The engine bay as somebody sees it who stands before the car and looks in: bulkhead on top."""

from dataclasses import dataclass

from journal.domain.drawing import Side
from journal.domain.shapes import Point, Shape, Stroke, circle, rounded
from journal.domain.starters.joins import outline
from journal.domain.starters.lines import between_y, mirrored, reverse, shifted, spline, straight
from journal.domain.starters.proportions import MARGIN, Proportions
from journal.domain.starters.sheet import Draft, Sheet

_LEFT, _RIGHT, _CENTRE = Side.LEFT, Side.RIGHT, Side.CENTRE


@dataclass(frozen=True, slots=True)
class Bay:
    """The sheet; a share of half the width counts to the car's left, which is on the right."""

    sheet: Sheet
    p: Proportions
    depth: float

    def at(self, share: float, deep: float) -> Point:
        """The point of a share of half the width and of the depth from the nose backwards."""
        x = self.sheet.middle_x + share * self.p.width / 2
        return Point(x, MARGIN + self.depth * (1 - deep))

    def box(self, s0: float, s1: float, d0: float, d1: float, ease: float = 8) -> Shape:
        """An upright rectangle between two shares and two depths."""
        ring = [self.at(s0, d1), self.at(s1, d1), self.at(s1, d0), self.at(s0, d0)]
        return rounded(ring, self.p.s(ease))

    def along(self, *spots: tuple[float, float]) -> Stroke:
        """A fair curve through spots."""
        return spline(*(self.at(*s) for s in spots))

    def across(self, left: Stroke) -> Shape:
        """What lies between a line of the left half, drawn rearwards, and its mirror."""
        return outline(left, reverse(mirrored(left, self.sheet.middle_x)))

    def round(self, share: float, deep: float, radius: float) -> Shape:
        """A circle of so many millimetres on the typical car."""
        return circle(*self.at(share, deep), self.p.s(radius))


def draw_engine_bay(draft: Draft, p: Proportions) -> None:
    """Draw the engine bay on a new view of its own."""
    depth = p.x(p.style.cowl + 0.06) - p.x(-0.93)
    sheet = draft.sheet("Engine bay", p.width + 2 * MARGIN, depth + 2 * MARGIN)
    bay = Bay(sheet, p, depth)
    axle = (p.front - p.x(-0.93)) / depth
    _walls(bay, axle)
    _engine(bay)
    _left_of_engine(bay, axle)
    _right_of_engine(bay, axle)
    _wiring(bay)


def _walls(bay: Bay, axle: float) -> None:
    sheet = bay.sheet
    outer = bay.along((0.8, 0.03), (0.92, 0.2), (0.985, 0.55), (1.0, 1.0))
    rim = bay.along((0.72, 0.06), (0.8, 0.3), (0.85, 0.6), (0.87, 1.0))
    leg_out = bay.along((0.43, 0.115), (0.44, 0.4), (0.44, 0.885))
    leg_in = bay.along((0.34, 0.115), (0.35, 0.4), (0.36, 0.885))
    low, high = bay.at(0, 0.115).y, bay.at(0, 0.885).y
    sheet.across("Front wing", outline(outer, reverse(rim)))
    sheet.across("Inner wing", outline(between_y(rim, low, high), reverse(leg_out)))
    floor = outline(leg_out, reverse(leg_in))
    sheet.put("Front crossmember", _CENTRE, bay.box(-0.36, 0.36, axle - 0.08, axle + 0.08))
    sheet.across("Chassis leg, front", floor)
    sheet.across("Suspension mount, front", bay.round(0.63, axle, 112))
    for share in (0.63, -0.63):
        sheet.outline_of(bay.round(share, axle, 70))
        for dx, dy in ((0.105, 0), (-0.052, 0.062), (-0.052, -0.062)):
            sheet.outline_of(bay.round(share + dx, axle + dy, 9))
    sheet.put("Bulkhead", _CENTRE, bay.across(between_y(rim, high, bay.at(0, 0.965).y)))
    sheet.put("Scuttle panel", _CENTRE, bay.across(between_y(rim, bay.at(0, 0.965).y, -1e6)))
    nose = outline(
        spline(
            *(
                bay.at(s, d)
                for s, d in ((-0.8, 0.03), (-0.4, 0.005), (0, 0.0), (0.4, 0.005), (0.8, 0.03))
            )
        ),
        straight(bay.at(0.72, 0.06), bay.at(-0.72, 0.06)),
    )
    sheet.put("Front panel", _CENTRE, nose)
    slam = bay.across(between_y(rim, 1e6, low))
    sheet.put("Slam panel", _CENTRE, slam)
    sheet.outline_of(bay.round(0, 0.0875, 20))


def _engine(bay: Bay) -> None:
    sheet = bay.sheet
    sheet.put("Radiator", _CENTRE, bay.box(-0.33, 0.33, 0.135, 0.195))
    for n in range(1, 10):
        share = -0.33 + 0.066 * n
        sheet.line(straight(bay.at(share, 0.148), bay.at(share, 0.182)))
    sheet.put("Fan", _CENTRE, bay.box(-0.2, 0.2, 0.215, 0.24, ease=14))
    sheet.put("Gearbox", _CENTRE, bay.box(-0.13, 0.13, 0.76, 0.885, ease=20))
    sheet.put("Engine", _CENTRE, bay.box(-0.21, 0.21, 0.26, 0.78, ease=26))
    sheet.put("Rocker cover", _CENTRE, bay.box(-0.105, 0.06, 0.3, 0.74, ease=26))
    sheet.outline_of(bay.round(-0.022, 0.38, 24))
    for deep in (0.33, 0.71):
        sheet.outline_of(bay.round(-0.022, deep, 8))
    for n in range(4):
        deep = 0.37 + n * 0.105
        sheet.outline_of(bay.round(-0.16, deep, 13))
    pulley = bay.box(-0.07, 0.05, 0.245, 0.262, ease=4)
    sheet.outline_of(pulley)


def _left_of_engine(bay: Bay, axle: float) -> None:
    """The inlet side."""
    sheet = bay.sheet
    manifold = outline(
        straight(bay.at(0.21, 0.7), bay.at(0.33, 0.66), bay.at(0.33, 0.4), bay.at(0.21, 0.36)),
        ease=bay.p.s(16),
    )
    sheet.put("Inlet manifold", _CENTRE, manifold)
    sheet.put("Carburettor", _CENTRE, bay.box(0.2, 0.385, 0.46, 0.6, ease=18))
    sheet.put("Air filter", _CENTRE, bay.round(0.17, 0.53, 104))
    sheet.outline_of(bay.round(0.17, 0.53, 80))
    sheet.outline_of(bay.round(0.17, 0.53, 14))
    sheet.put("Washer bottle", _CENTRE, bay.box(0.5, 0.64, 0.17, 0.26, ease=24))
    sheet.put("Horn", _CENTRE, bay.round(0.56, 0.142, 34))
    low = 0.7 if axle < 0.57 else axle - 0.32
    tray = bay.box(0.47, 0.79, low, low + 0.17, ease=10)
    sheet.put("Battery tray", _CENTRE, tray)
    sheet.put("Battery", _CENTRE, bay.box(0.5, 0.76, low + 0.018, low + 0.152, ease=8))
    for share in (0.55, 0.71):
        sheet.outline_of(bay.round(share, low + 0.085, 15))


def _right_of_engine(bay: Bay, axle: float) -> None:
    """The exhaust side, and the driver's controls."""
    sheet = bay.sheet
    manifold = outline(
        straight(
            bay.at(-0.21, 0.36),
            bay.at(-0.285, 0.39),
            bay.at(-0.3, 0.6),
            bay.at(-0.285, 0.73),
            bay.at(-0.21, 0.69),
        ),
        ease=bay.p.s(18),
    )
    sheet.put("Exhaust manifold", _CENTRE, manifold)
    sheet.put("Dynamo", _CENTRE, bay.box(-0.32, -0.215, 0.25, 0.35, ease=20))
    sheet.put("Distributor", _CENTRE, bay.round(0.13, 0.33, 34))
    sheet.put("Oil filter", _CENTRE, bay.round(-0.255, 0.8, 36))
    sheet.put("Ignition coil", _CENTRE, bay.box(-0.58, -0.5, 0.2, 0.3, ease=18))
    low = max(0.7, min(axle + 0.2, 0.76))
    sheet.put("Steering column", _CENTRE, _rod(bay, (-0.5, 0.885), (-0.4, 0.5), 26))
    sheet.put("Brake servo", _CENTRE, bay.round(-0.63, low + 0.075, 84))
    sheet.put(
        "Brake master cylinder", _CENTRE, bay.box(-0.675, -0.585, low - 0.07, low + 0.06, ease=14)
    )
    sheet.put(
        "Clutch master cylinder", _CENTRE, bay.box(-0.79, -0.745, low + 0.03, low + 0.15, ease=12)
    )
    sheet.put("Wiper motor", _CENTRE, bay.box(-0.36, -0.24, 0.895, 0.95, ease=16))
    sheet.put("Heater", _CENTRE, bay.box(-0.16, 0.16, 0.86, 0.952, ease=16))
    sheet.put(
        "Fuse box",
        _CENTRE,
        bay.box(-0.8, -0.7, min(low - 0.16, 0.56), min(low - 0.07, 0.65), ease=6),
    )


def _rod(bay: Bay, a: tuple[float, float], b: tuple[float, float], width: float) -> Shape:
    half = bay.p.s(width) / 2
    line = straight(bay.at(*a), bay.at(*b))
    return outline(shifted(line, -half, 0), reverse(shifted(line, half, 0)), ease=bay.p.s(6))


def _wiring(bay: Bay) -> None:
    half = bay.p.s(11)
    run = bay.along((-0.81, 0.13), (-0.845, 0.4), (-0.85, 0.6), (-0.84, 0.84))
    loom = outline(shifted(run, 0, 0), reverse(shifted(run, 2 * half, 0)))
    bay.sheet.put("Wiring loom, engine bay", _CENTRE, loom)
    pipes = bay.box(-0.58, 0.3, 0.868, 0.88, ease=3)
    bay.sheet.put("Brake lines", _CENTRE, pipes)
