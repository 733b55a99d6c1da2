"""The lines of the left side that its panels share: drawn once, so that neighbours meet."""

import math
from dataclasses import dataclass

from journal.domain.shapes import Point, Stroke
from journal.domain.starters.joins import chain, meeting
from journal.domain.starters.lines import arc, between_x, reverse, shifted, spline, straight
from journal.domain.starters.proportions import Proportions


@dataclass(frozen=True, slots=True)
class SideLines:
    """The shared lines of a body, each running rearwards or downwards.

    Attributes:
        nose, tail: the body's front and rear edge.
        hood: the bonnet's crown, from the nose to the windscreen.
        shoulder: the wings' upper edge and the waist, from the nose to the tail.
        deck: the crown of the boot lid, from the rear window to the tail.
        upper: windscreen, roof and rear window.
        opening: the edge of roof and posts round the side windows.
        front_arch, rear_arch: the wheel openings.
        sill_top, sill_low, valance_front, valance_rear: level edges below.
        door_front, door_rear: the outer shut lines of the doors.
    """

    nose: Stroke
    tail: Stroke
    hood: Stroke
    shoulder: Stroke
    deck: Stroke
    upper: Stroke
    opening: Stroke
    front_arch: Stroke
    rear_arch: Stroke
    sill_top: Stroke
    sill_low: Stroke
    valance_front: Stroke
    valance_rear: Stroke
    door_front: Stroke
    door_rear: Stroke

    def upright(self, x: float) -> Stroke:
        """A line straight down through the whole side at ``x`` of the view."""
        top = min(self.upper.start.y, self.opening.start.y) - 3000
        return straight((x, top), (x, self.sill_low.start.y + 3000))


def side_lines(p: Proportions) -> SideLines:
    """The lines of a car's left side, on its view."""
    st, at = p.style, p.at
    shoulder, opening = _shoulder(p), _opening(p)
    hatch = st.rear == "hatch"
    tail_top = 1.93 if hatch else 1.945
    deck = spline(
        at(st.deck, st.deck_height),
        at(st.deck + (tail_top - st.deck) * 0.5, st.deck_height * 0.6 + st.tail * 0.4 + 14),
        at(tail_top, st.tail + 8),
    )
    return SideLines(
        nose=spline(
            at(-0.9, st.nose + 14),
            at(-0.928, st.nose - 40),
            at(-0.938, 600),
            at(-0.93, 420),
            at(-0.87, 250),
        ),
        tail=spline(
            at(tail_top, st.tail + 8),
            at(tail_top + 0.022, st.tail - 90),
            at(tail_top + 0.016, 560),
            at(tail_top - 0.004, 420),
            at(tail_top - 0.06, 282),
        ),
        hood=_hood(p),
        shoulder=shoulder,
        deck=deck,
        upper=_upper(p),
        opening=opening,
        front_arch=_arch(p, 0.0),
        rear_arch=_arch(p, 1.0),
        sill_top=straight(at(0, 300), at(1, 300)),
        sill_low=straight(at(0, 205), at(1, 205)),
        valance_front=straight(at(-1, 392), at(0, 392)),
        valance_rear=straight(at(1, 400), at(2, 400)),
        door_front=_door_front(p),
        door_rear=_door_rear(p, opening, shoulder),
    )


def _hood(p: Proportions) -> Stroke:
    st, at = p.style, p.at
    rise = st.bonnet - st.nose - 14
    return spline(
        at(-0.9, st.nose + 14),
        at(-0.6, st.nose + 14 + rise * 0.42),
        at(-0.05, st.nose + 14 + rise * 0.84),
        at(st.cowl, st.bonnet),
    )


def _shoulder(p: Proportions) -> Stroke:
    st, at = p.style, p.at
    kick = 14 if st.rear == "boot" else 8
    return spline(
        at(-0.9, st.nose + 14),
        at(-0.45, st.nose + 70 + (st.waist - 885) * 0.3),
        at(0.0, st.waist - 13),
        at(st.door_front, st.waist),
        at(0.6, st.waist + 4),
        at(1.0, st.waist + kick),
        at(1.45, st.waist * 0.6 + st.tail * 0.4 + kick),
        at(1.96, st.tail - 6),
    )


def _roof(p: Proportions) -> Stroke:
    st, at = p.style, p.at
    return spline(
        at(st.screen_top, st.screen_height),
        at(st.peak, st.height),
        at(st.roof_end, st.roof_end_height),
    )


def _upper(p: Proportions) -> Stroke:
    """Windscreen, roof and rear window in one line, eased where they meet."""
    st, at = p.style, p.at
    screen = spline(
        at(st.cowl, st.bonnet),
        at(
            st.cowl + (st.screen_top - st.cowl) * 0.48,
            st.bonnet + (st.screen_height - st.bonnet) * 0.52,
        ),
        at(st.screen_top, st.screen_height),
    )
    if not st.roof:
        return screen
    bulge = 8
    rear = spline(
        at(st.roof_end, st.roof_end_height),
        at((st.roof_end + st.deck) / 2, (st.roof_end_height + st.deck_height) / 2 + bulge),
        at(st.deck, st.deck_height),
    )
    # On a short car a long ease would eat the roof.
    ease = min(p.s(150), 0.06 * p.wheelbase, 0.16 * p.rear)
    return chain(screen, _roof(p), rear, ease=ease)


def _opening(p: Proportions) -> Stroke:
    """The edge round the side windows, from its foot behind the windscreen to its rear foot."""
    st, at = p.style, p.at
    foot = at(st.door_front, st.waist)
    front = st.screen_top + 0.02
    if not st.roof:
        return straight(foot, at(front, st.screen_height - 50))
    whole = between_x(_roof(p), at(front, 0).x, at(opening_end(p), 0).x)
    roof = shifted(whole, 0, p.s(58))
    # The foot lies a little below the waist, so that the two lines surely cross.
    end = at(st.side_end, st.waist - 40)
    return chain(straight(foot, roof.start), roof, straight(roof.end, end), ease=p.s(60))


def opening_end(p: Proportions) -> float:
    """The station where the roof's edge over the side windows bends down."""
    st = p.style
    if st.rear == "boot":
        return st.roof_end - 0.055
    return min(st.roof_end * 0.99, st.side_end + 0.02) - 0.02


def _arch(p: Proportions, station: float) -> Stroke:
    centre = p.at(station, 0).x, p.y(p.wheel)
    dip = math.degrees(math.asin(min(0.9, (p.wheel - p.low) / p.arch + 0.12)))
    return arc(*centre, p.arch, 180 - dip, 360 + dip)


def _door_front(p: Proportions) -> Stroke:
    st, at = p.style, p.at
    foot = at(st.door_front, st.waist)
    behind_arch = at(0, 0).x + p.arch + p.s(60)
    knee = Point(max(foot.x - p.s(6), behind_arch), p.y(p.z(620)))
    low = Point(max(foot.x - p.s(4), behind_arch), p.y(p.z(150)))
    return spline(foot, knee, low)


def _door_rear(p: Proportions, opening: Stroke, shoulder: Stroke) -> Stroke:
    """The rear door's shut line: down from the waist, then forward round the wheel opening."""
    st, at = p.style, p.at
    if st.doors == 2:
        x = at(st.b_post, 0).x
        return straight((x, p.y(p.height + 100)), (x, p.y(0)))
    axle = Point(at(1, 0).x, p.y(p.wheel))
    radius = p.arch + p.s(52)
    if st.rear == "boot":
        foot = meeting(reverse(opening), shoulder)
        start = straight((foot.x + 25, foot.y - 25), foot)
    else:
        foot = Point(at(st.door_rear, 0).x, at(0, st.waist).y)
        start = straight((foot.x, p.y(p.height + 100)), foot)
    if axle.x - foot.x > radius * 0.97:
        return chain(start, straight(foot, (foot.x, p.y(0))))
    x = min(foot.x, axle.x - radius * 0.35)
    angle = 180 + math.degrees(math.acos((axle.x - x) / radius))
    bow = arc(axle.x, axle.y, radius, angle, 180 - 50)
    return chain(start, chain(straight(foot, bow.start), bow, ease=p.s(70)))
