"""The motorcycle from above; its left is low on the sheet."""

from journal.domain.drawing import Side
from journal.domain.shapes import Shape, circle, ellipse
from journal.domain.starters.joins import outline
from journal.domain.starters.machine import Machine, PlanPen, Spot
from journal.domain.starters.sheet import Sheet

_CENTRE = Side.CENTRE


def draw_motorcycle_top(sheet: Sheet, m: Machine) -> None:
    """Draw all that is seen of the motorcycle from above."""
    pen = PlanPen(sheet, m)
    pen.centre_line()
    _mudguards(pen)
    _middle(pen)
    _seat_and_tank(pen)
    _bars(pen)


def _both(pen: PlanPen, *half: Spot, ease: float = 0.0) -> Shape:
    """A shape over the centre line, from the fair edge of its left half, front to rear."""
    fellows = [(a, -b) for a, b in reversed(half)]
    return outline(pen.along(*half), pen.along(*fellows), ease=pen.s(ease))


def _mudguards(pen: PlanPen) -> None:
    """The mudguards, which hide the wheels."""
    sheet = pen.sheet
    sheet.put(
        "Front mudguard", _CENTRE, pen.ring((-350, -58), (330, -58), (330, 58), (-350, 58), ease=54)
    )
    sheet.put(
        "Rear mudguard",
        _CENTRE,
        pen.ring((1120, -72), (1760, -72), (1760, 72), (1120, 72), ease=60),
    )
    sheet.put(
        "Tail lamp", _CENTRE, pen.ring((1690, -52), (1804, -44), (1804, 44), (1690, 52), ease=18)
    )
    for out in (-18, 18):
        pen.line((-320, out), (48, out))
        pen.line((1480, out), (1680, out))


def _middle(pen: PlanPen) -> None:
    sheet = pen.sheet
    sheet.over("Exhaust pipe", pen.tube((480, 96), (440, 150), (520, 176), (820, 170), width=44))
    sheet.over(
        "Silencer", pen.ring((800, 134), (1540, 150), (1560, 200), (1470, 222), (800, 206), ease=24)
    )
    sheet.over(
        "Swinging arm, leg", pen.ring((1000, 96), (1440, 104), (1440, 146), (1000, 132), ease=10)
    )
    sheet.put(
        "Crankcase", _CENTRE, pen.ring((500, -176), (900, -176), (900, 176), (500, 176), ease=40)
    )
    sheet.over(
        "Engine side cover", pen.ring((530, 150), (812, 150), (790, 208), (556, 208), ease=26)
    )
    sheet.put(
        "Cylinder head",
        _CENTRE,
        pen.ring((486, -140), (728, -140), (728, 140), (486, 140), ease=20),
    )
    sheet.over("Carburettor", pen.box(736, 800, 52, 112, ease=12))
    sheet.over("Footrest", pen.box(722, 768, 226, 330, ease=14))
    sheet.over("Pillion footrest", pen.box(1018, 1060, 216, 306, ease=12))
    sheet.over(
        "Rear shock absorber", pen.ring((1186, 122), (1320, 134), (1320, 184), (1186, 172), ease=16)
    )
    sheet.over("Side panel", pen.ring((862, 110), (1120, 96), (1090, 158), (884, 158), ease=18))


def _seat_and_tank(pen: PlanPen) -> None:
    sheet = pen.sheet
    half = (1460, 84), (1420, 116), (1200, 124), (980, 112), (800, 78)
    sheet.put("Seat", _CENTRE, _both(pen, *reversed(half), ease=26))
    for along in (960, 1060, 1160, 1260, 1360):
        pen.line((along, -96), (along, 96))
    tank = (338, 48), (420, 124), (540, 148), (660, 132), (780, 78), (822, 52)
    sheet.put("Fuel tank", _CENTRE, _both(pen, *tank, ease=18))
    pads = pen.ring((596, 120), (690, 104), (760, 74), (690, 124), (610, 140), ease=8)
    sheet.over("Knee pad", pads)
    cap = circle(*pen.at(506, 0), pen.s(36))
    sheet.put("Filler cap", _CENTRE, cap)
    sheet.outline_of(circle(*pen.at(506, 0), pen.s(24)))
    pen.line((580, 0), (800, 0))


def _bars(pen: PlanPen) -> None:
    sheet = pen.sheet
    head = pen.ring((226, -104), (318, -104), (340, 0), (318, 104), (226, 104), ease=24)
    sheet.put("Top yoke", _CENTRE, head)
    sheet.over("Fork tube", circle(*pen.at(262, 88), pen.s(24)))
    lamp = outline(
        pen.along((222, -70), (120, -100), (72, -92)),
        pen.along((72, -92), (58, 0), (72, 92)),
        pen.along((72, 92), (120, 100), (222, 70)),
    )
    sheet.put("Headlamp", _CENTRE, lamp)
    pen.line((92, -92), (92, 92))
    dial = pen.ring((196, -86), (262, -86), (262, 86), (196, 86), ease=30)
    sheet.put("Instruments", _CENTRE, dial)
    for out in (-44, 44):
        sheet.outline_of(circle(*pen.at(229, out), pen.s(28)))
    bar = pen.tube(
        (452, 300), (404, 236), (322, 150), (302, 0), (322, -150), (404, -236), (452, -300),
        width=24,
    )  # fmt: skip
    sheet.put("Handlebar", _CENTRE, bar)
    sheet.over("Handlebar grip", pen.tube((424, 262), (462, 316), (500, 372), width=38))
    sheet.over("Mirror", ellipse(*pen.at(392, 322), pen.s(26), pen.s(48)))
    sheet.over("Front indicator", circle(*pen.at(196, 152), pen.s(30)))
    sheet.over("Rear indicator", circle(*pen.at(1500, 150), pen.s(30)))
