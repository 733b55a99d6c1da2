"""The left side of the car: its outer panels, glass and lamps."""

from dataclasses import dataclass

from journal.domain.drawing import Side, Weight
from journal.domain.shapes import Point, Shape, Stroke, circle, rounded
from journal.domain.starters.ends import indicator_heights
from journal.domain.starters.joins import enclosed, outline, through
from journal.domain.starters.lines import (
    at_x,
    between_x,
    between_y,
    reverse,
    shifted,
    spline,
    straight,
)
from journal.domain.starters.proportions import MARGIN, Proportions
from journal.domain.starters.sheet import Sheet
from journal.domain.starters.side_lines import SideLines, opening_end, side_lines

_LEFT, _CENTRE = Side.LEFT, Side.CENTRE


@dataclass(frozen=True, slots=True)
class _Side:
    """The sheet being drawn on, the car's measures and its lines."""

    sheet: Sheet
    p: Proportions
    lines: SideLines

    def x(self, station: float) -> float:
        return self.p.at(station, 0).x

    def upright(self, x: float) -> Stroke:
        return straight((x, self.p.y(self.p.height + 400)), (x, self.p.y(-400)))

    @property
    def door_end(self) -> float:
        """The x of the front door's rear edge."""
        return self.x(self.p.style.b_post) - self.p.s(9)

    @property
    def behind_door(self) -> float:
        """The x where the next panel behind the front door begins."""
        gap = 18 if self.p.style.roof else 0
        return self.door_end + self.p.s(gap)

    @property
    def opening_rear(self) -> Stroke:
        """The edge of the roof over the windows from the front door backwards."""
        return between_x(self.lines.opening, self.behind_door - 40, 1e6)


def draw_left_side(sheet: Sheet, p: Proportions) -> None:
    """Draw all that is seen of the car from its left."""
    side = _Side(sheet, p, side_lines(p))
    _arches(side)
    if p.style.roof:
        _roof_and_posts(side)
    else:
        _open_top(side)
    _front_end(side)
    _doors(side)
    _rear_end(side)
    if p.style.roof:
        _glass(side)
    _wheels(side)
    _fittings(side)


def _arches(side: _Side) -> None:
    lines, at = side.lines, side.p.at
    low = straight(at(-1, 236), at(2, 236))
    side.sheet.put("Inner wing", _LEFT, _arch_behind(lines.front_arch, at(0, 0).x, low))
    side.sheet.put("Rear inner arch", _LEFT, _arch_behind(lines.rear_arch, at(1, 0).x, low))


def _arch_behind(arch: Stroke, middle: float, low: Stroke) -> Shape:
    """What is seen through a wheel opening, down to a level line."""
    y = low.start.y
    top = at_x(arch, middle).y
    left = between_y(between_x(arch, -1e6, middle), y, top)
    right = between_y(between_x(arch, middle, 1e6), top, y)
    return outline(left, right)


def _cuts(side: _Side) -> tuple[Stroke, Stroke]:
    """The joints of the roof with the posts before and behind the side windows."""
    p, st, lines = side.p, side.p.style, side.lines
    front = through(
        at_x(lines.upper, side.x(st.screen_top) + p.s(35)),
        at_x(lines.opening, side.x(st.screen_top) + p.s(95)),
    )
    corner = side.x(opening_end(p))
    rear = through(
        at_x(lines.upper, side.x(st.roof_end) - p.s(30)),
        at_x(lines.opening, min(corner, side.x(st.roof_end)) - p.s(70)),
    )
    return front, rear


def _roof_and_posts(side: _Side) -> None:
    sheet, p, st, lines = side.sheet, side.p, side.p.style, side.lines
    cut_front, cut_rear = _cuts(side)
    upper, opening, shoulder = lines.upper, lines.opening, lines.shoulder
    sheet.put("Roof", _CENTRE, enclosed(upper, cut_rear, opening, cut_front))
    cowl = side.upright(side.x(st.cowl) + 0.01)
    sheet.put("A-post", _LEFT, enclosed(upper, cut_front, opening, shoulder, cowl))
    rear = between_x(upper, side.x(st.roof_end) - p.s(200), 1e6)
    deck_x = side.upright(side.x(st.deck) - 0.01)
    leg = between_x(opening, side.x(st.b_post), 1e6)
    if st.rear == "bed":
        behind = side.upright(side.door_end)
        shape = enclosed(rear, deck_x, lines.sill_top, behind, opening, cut_rear)
        sheet.put("B-post", _LEFT, shape)
        return
    if st.rear == "boot":
        sheet.put("C-post", _LEFT, enclosed(rear, deck_x, shoulder, leg, cut_rear))
    else:
        shape = enclosed(rear, lines.deck, lines.tail, shoulder, leg, cut_rear)
        sheet.put("D-post", _LEFT, shape)


def _open_top(side: _Side) -> None:
    sheet, p, st, lines = side.sheet, side.p, side.p.style, side.lines
    base = between_x(lines.shoulder, side.x(st.cowl), side.x(st.door_front))
    top = straight(p.at(st.door_front, st.waist), p.at(st.cowl, st.bonnet))
    sheet.put("Scuttle panel", _CENTRE, outline(base, top))
    post = shifted(lines.upper, p.s(42), p.s(6))
    sheet.put("Windscreen", _CENTRE, outline(shifted(lines.upper, p.s(-16), 0), reverse(post)))
    sheet.put("A-post", _LEFT, outline(lines.upper, reverse(post), ease=p.s(8)))
    at = p.at
    fold = spline(
        at(st.side_end + 0.015, st.waist - 30),
        at(st.side_end + 0.05, st.waist + 52),
        at(st.side_end + 0.16, st.waist + 92),
        at(st.deck - 0.06, st.deck_height + 26),
        at(st.deck + 0.02, st.deck_height - 80),
    )
    sheet.put("Hood", _CENTRE, enclosed(fold, reverse(lines.shoulder)))


def _front_end(side: _Side) -> None:
    sheet, p, st, lines = side.sheet, side.p, side.p.style, side.lines
    before = between_x(lines.shoulder, -1e6, side.x(st.cowl))
    sheet.put(
        "Bonnet",
        _CENTRE,
        outline(lines.hood, straight(lines.hood.end, before.end), reverse(before)),
    )
    wing = enclosed(
        lines.shoulder,
        lines.door_front,
        lines.sill_low,
        lines.front_arch,
        lines.valance_front,
        lines.nose,
    )
    sheet.put("Front wing", _LEFT, wing)
    low = straight(p.at(-1, 270), p.at(0, 270))
    valance = enclosed(lines.valance_front, lines.front_arch, low, lines.nose)
    sheet.put("Front valance", _CENTRE, valance)


def _doors(side: _Side) -> None:
    sheet, st, lines = side.sheet, side.p.style, side.lines
    end = side.upright(side.door_end)
    top = lines.opening if st.roof else lines.shoulder
    sheet.put("Front door", _LEFT, enclosed(top, end, lines.sill_top, lines.door_front))
    if st.doors == 4:
        behind = side.upright(side.behind_door)
        rear = enclosed(side.opening_rear, lines.door_rear, lines.sill_top, behind)
        sheet.put("B-post", _LEFT, enclosed(lines.opening, behind, lines.sill_top, end))
        sheet.put("Rear door", _LEFT, rear)
    sill_end = lines.rear_arch
    if st.rear == "bed":
        sill_end = side.upright(side.x(st.deck))
    sill = enclosed(lines.sill_top, sill_end, lines.sill_low, lines.door_front)
    sheet.put("Sill", _LEFT, sill)


def _rear_end(side: _Side) -> None:
    sheet, p, st, lines = side.sheet, side.p, side.p.style, side.lines
    below = (lines.tail, lines.valance_rear, lines.rear_arch, lines.sill_top)
    shoulder = lines.shoulder
    if st.rear == "bed":
        gap = side.upright(side.x(st.deck) + p.s(22))
        leg = enclosed(
            lines.sill_top, lines.rear_arch, lines.sill_low, side.upright(side.x(st.deck))
        )
        sheet.put("Chassis leg, rear", _LEFT, leg)
        sheet.put("Bed side", _LEFT, enclosed(shoulder, *below, gap))
    elif st.doors == 4 and st.rear == "boot":
        sheet.put("Rear wing", _LEFT, enclosed(shoulder, *below, lines.door_rear))
    elif st.doors == 4:
        over = between_x(lines.opening, side.x(st.door_rear) - 30, 1e6)
        sheet.put("Rear wing", _LEFT, enclosed(over, shoulder, *below, lines.door_rear))
        _c_post_strip(side)
    elif not st.roof:
        start = side.upright(side.door_end)
        sheet.put("Rear wing", _LEFT, enclosed(shoulder, *below, start))
    else:
        _rear_wing_two_door(side, below)
    low = straight(p.at(1, 290), p.at(2, 290))
    valance = enclosed(lines.valance_rear, lines.tail, low, lines.rear_arch)
    sheet.put("Rear valance", _CENTRE, valance)
    if st.rear == "boot":
        behind = between_x(shoulder, side.x(st.deck), 1e6)
        lid = enclosed(lines.deck, lines.tail, behind, side.upright(side.x(st.deck) + 0.01))
        sheet.put("Boot lid", _CENTRE, lid)


def _rear_wing_two_door(side: _Side, below: tuple[Stroke, ...]) -> None:
    p, st, lines = side.p, side.p.style, side.lines
    over = side.opening_rear
    post = p.s(46) if st.roof else 0
    start = side.upright(side.door_end)
    name = "Side panel" if st.rear == "hatch" else "Rear wing"
    shape = enclosed(over, lines.shoulder, *below, start)
    side.sheet.put(name, _LEFT, shape)
    behind = side.upright(side.door_end + post)
    strip = enclosed(lines.opening, behind, lines.shoulder, start)
    side.sheet.put("B-post", _LEFT, strip)


def _c_post_strip(side: _Side) -> None:
    p, st, lines = side.p, side.p.style, side.lines
    over = between_x(lines.opening, side.x(st.door_rear) - 30, 1e6)
    behind = side.upright(side.x(st.door_rear) + p.s(60))
    strip = enclosed(over, behind, lines.shoulder, lines.door_rear)
    side.sheet.put("C-post", _LEFT, strip)


def _glass(side: _Side) -> None:
    sheet, p, st, lines = side.sheet, side.p, side.p.style, side.lines
    waist = shifted(lines.shoulder, 0, -p.s(16))
    inset = p.s(34)
    front = shifted(lines.opening, inset * 1.25, inset)
    end = side.upright(side.door_end - p.s(40))
    ease = p.s(26)
    sheet.put("Front door glass", _LEFT, enclosed(front, end, waist, ease=ease))
    quarter = side.x(st.door_front) + p.s(270)
    light = between_x(front, quarter, quarter).start
    sheet.line(straight(light, (light.x - p.s(18), at_x(waist, light.x - p.s(18)).y)))
    rear = shifted(side.opening_rear, -inset * 1.1, inset)
    if st.doors == 4:
        start = side.upright(side.behind_door + p.s(40))
        if st.rear == "boot":
            sheet.put("Rear door glass", _LEFT, enclosed(rear, waist, start, ease=ease))
        else:
            stop = side.upright(side.x(st.door_rear) - p.s(42))
            sheet.put("Rear door glass", _LEFT, enclosed(rear, stop, waist, start, ease=ease))
            start = side.upright(side.x(st.door_rear) + p.s(95))
            over = between_x(rear, side.x(st.door_rear), 1e6)
            sheet.put("Rear side glass", _LEFT, enclosed(over, waist, start, ease=ease))
    elif st.windows_behind:
        start = side.upright(side.door_end + p.s(78))
        sheet.put("Rear side glass", _LEFT, enclosed(rear, waist, start, ease=ease))
    _screen_edges(side)


def _screen_edges(side: _Side) -> None:
    """Windscreen and rear window, which bulge a little past the posts."""
    p, st, lines = side.p, side.p.style, side.lines
    low, high = side.x(st.cowl), side.x(st.screen_top)
    edge = between_x(lines.upper, low + (high - low) * 0.05, low + (high - low) * 0.86)
    shape = outline(edge, reverse(shifted(edge, p.s(20), p.s(16))), ease=p.s(8))
    side.sheet.put("Windscreen", _CENTRE, shape)
    if st.rear == "bed":
        return
    low, high = side.x(st.roof_end), side.x(st.deck)
    edge = between_x(lines.upper, low + (high - low) * 0.16, low + (high - low) * 0.92)
    shape = outline(edge, reverse(shifted(edge, -p.s(20), p.s(14))), ease=p.s(8))
    side.sheet.put("Rear window" if st.rear == "boot" else "Tailgate", _CENTRE, shape)


def _wheels(side: _Side) -> None:
    sheet, p = side.sheet, side.p
    for name, station in (("Front wheel", 0.0), ("Rear wheel", 1.0)):
        x, y = side.x(station), p.y(p.wheel)
        sheet.put(name, _LEFT, circle(x, y, p.wheel))
        sheet.put(f"{name[:-5]}hub cap", _LEFT, circle(x, y, p.wheel * 0.62))
        for share in (0.68, 0.46, 0.42, 0.16):
            sheet.outline_of(circle(x, y, p.wheel * share))
    ground = p.y(0)
    sheet.line(
        straight((MARGIN * 0.3, ground), (sheet.view.width - MARGIN * 0.3, ground)), Weight.GROUND
    )


def _bar(left: Point, right: Point, ease: float) -> Shape:
    return rounded([left, (right.x, left.y), right, (left.x, right.y)], ease)


def _fittings(side: _Side) -> None:
    sheet, p, st = side.sheet, side.p, side.p.style
    at = p.at
    reach = max(0.30, (p.arch + p.s(40)) / p.front)
    sheet.put("Front bumper", _CENTRE, _bar(at(-1, 512), at(-reach - 0.02, 412), p.s(46)))
    reach = max(0.34, (p.arch + p.s(45)) / p.rear)
    sheet.put("Rear bumper", _CENTRE, _bar(at(1 + reach + 0.02, 520), at(2, 420), p.s(46)))
    _front_lamps(side)
    lamp = st.tail - 70
    sheet.put("Tail lamp", _LEFT, _bar(at(1.9, lamp), at(1.975, max(lamp - 165, 535)), p.s(22)))
    mirror = at(st.door_front, st.waist)
    box = (mirror.x + p.s(70), mirror.y - p.s(70)), (mirror.x + p.s(165), mirror.y + p.s(5))
    sheet.put("Door mirror", _LEFT, _bar(Point(*box[0]), Point(*box[1]), p.s(28)))
    _handles(side)
    swage = spline(
        at(-0.9, st.swage - 60),
        at(0, st.swage),
        at(0.5, st.swage + 6),
        at(1, st.swage + 2),
        at(1.9, st.swage - 62),
    )
    sheet.line(swage)


def _front_lamps(side: _Side) -> None:
    """The headlamp's lens bulging from the wing, and the indicator."""
    at, nose = side.p.at, side.p.style.nose
    head, radius = nose - 86, min(92.0, (nose - 530) * 0.5)
    lens = spline(
        at(-0.9, head + radius),
        at(-0.956, head + radius * 0.55),
        at(-0.972, head),
        at(-0.956, head - radius * 0.55),
        at(-0.9, head - radius),
    )
    rim = straight(at(-0.876, head - radius), at(-0.876, head + radius))
    side.sheet.put("Headlamp", _LEFT, outline(lens, rim, ease=side.p.s(6)))
    low, high = indicator_heights(nose)
    side.sheet.put("Front indicator", _LEFT, _bar(at(-0.925, high), at(-0.83, low), side.p.s(16)))


def _handles(side: _Side) -> None:
    p, st = side.p, side.p.style
    y = p.at(0, st.swage + 62).y
    x = side.door_end - p.s(48)
    handle = _bar(Point(x - p.s(120), y), Point(x, y + p.s(26)), p.s(12))
    side.sheet.put("Front door handle", _LEFT, handle)
    if st.doors == 4:
        x = side.x(st.door_rear) - p.s(60)
        handle = _bar(Point(x - p.s(120), y), Point(x, y + p.s(26)), p.s(12))
        side.sheet.put("Rear door handle", _LEFT, handle)
