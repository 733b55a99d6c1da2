"""The tractor from in front and from behind."""

from journal.domain.drawing import Side
from journal.domain.shapes import Shape, circle, rounded, with_hole
from journal.domain.starters.joins import outline
from journal.domain.starters.lines import straight
from journal.domain.starters.machine import EndPen, Machine
from journal.domain.starters.sheet import Sheet

_CENTRE = Side.CENTRE


def draw_tractor_front(sheet: Sheet, m: Machine) -> None:
    """Draw all that is seen of the tractor from in front; its left is on the right."""
    pen = EndPen(sheet, m, out=1)
    pen.ground()
    pen.centre_line()
    _tyres(pen, "Rear", (520, 850), 680, (820, 1260))
    _mudguards(pen)
    _stack(pen)
    sheet.put("Air cleaner", _CENTRE, pen.box(58, 162, 1320, 1500, ease=10))
    sheet.put("Steering wheel", _CENTRE, _wheel_rim(pen))
    sheet.put("Instrument panel", _CENTRE, pen.box(-240, 240, 1300, 1402, ease=26))
    sheet.put(
        "Front axle",
        _CENTRE,
        pen.ring(
            (-560, 330),
            (-560, 420),
            (-90, 560),
            (90, 560),
            (560, 420),
            (560, 330),
            (90, 440),
            (-90, 440),
            ease=18,
        ),
    )
    sheet.put("Sump", _CENTRE, pen.ring((-150, 540), (-110, 460), (110, 460), (150, 540), ease=16))
    sheet.put("Front axle support", _CENTRE, pen.box(-190, 190, 520, 720, ease=22))
    _tyres(pen, "Front", (560, 720), 375, (60, 700))
    _nose(pen)


def _nose(pen: EndPen) -> None:
    sheet = pen.sheet
    hood = outline(
        pen.along(
            (-258, 1060),
            (-264, 1220),
            (-200, 1346),
            (0, 1390),
            (200, 1346),
            (264, 1220),
            (258, 1060),
        ),
        pen.edges((258, 1060), (258, 700), (-258, 700), (-258, 1060)),
    )
    sheet.put("Bonnet", _CENTRE, hood)
    grille = outline(
        pen.along(
            (-206, 760), (-212, 1160), (-150, 1280), (0, 1312), (150, 1280), (212, 1160), (206, 760)
        ),
        pen.edges((206, 760), (160, 716), (-160, 716), (-206, 760)),
    )
    sheet.put("Grille", _CENTRE, grille)
    for n in range(1, 10):
        z = 730 + n * 50
        pen.line((-200, z), (200, z))
    pen.line((0, 720), (0, 1308))
    sheet.across("Headlamp", circle(*pen.at(320, 1060), pen.s(74)))
    for radius in (62, 22):
        for way in (-1, 1):
            sheet.outline_of(circle(*pen.at(320 * way, 1060), pen.s(radius)))


def draw_tractor_rear(sheet: Sheet, m: Machine) -> None:
    """Draw all that is seen of the tractor from behind; its left is on the left."""
    pen = EndPen(sheet, m, out=-1)
    pen.ground()
    pen.centre_line()
    _stack(pen)
    hood = outline(
        pen.along(
            (-262, 1100),
            (-266, 1240),
            (-200, 1360),
            (0, 1396),
            (200, 1360),
            (266, 1240),
            (262, 1100),
        ),
    )
    sheet.put("Bonnet", _CENTRE, hood)
    sheet.put("Instrument panel", _CENTRE, pen.box(-240, 240, 1000, 1390, ease=30))
    sheet.across("Footplate", pen.box(200, 470, 520, 566, ease=8))
    sheet.across(
        "Half-shaft housing", pen.ring((200, 790), (520, 750), (520, 610), (200, 570), ease=14)
    )
    sheet.put(
        "Rear axle housing",
        _CENTRE,
        pen.ring(
            (-230, 900),
            (-160, 1010),
            (160, 1010),
            (230, 900),
            (230, 560),
            (130, 470),
            (-130, 470),
            (-230, 560),
            ease=26,
        ),
    )
    sheet.put("Steering wheel", _CENTRE, _wheel_rim(pen))
    _tyres(pen, "Rear", (520, 850), 680, (60, 980))
    _mudguards(pen)
    _seat(pen)
    _linkage(pen)


def _seat(pen: EndPen) -> None:
    sheet = pen.sheet
    rim = (-236, 1340), (-226, 1470), (-140, 1562), (0, 1580), (140, 1562), (226, 1470), (236, 1340)
    front = pen.along((236, 1340), (140, 1276), (0, 1262), (-140, 1276), (-236, 1340))
    sheet.put("Seat", _CENTRE, outline(pen.along(*rim), front))
    for out in (-110, 0, 110):
        pen.line((out, 1340), (out * 0.9, 1530))
    sheet.put("Seat bracket", _CENTRE, pen.box(-60, 60, 1010, 1272, ease=8))


def _linkage(pen: EndPen) -> None:
    sheet = pen.sheet
    sheet.across(
        "Lift arm", pen.ring((120, 1000), (180, 1000), (330, 950), (330, 896), (120, 950), ease=14)
    )
    sheet.across("Lift rod", pen.ring((300, 930), (336, 930), (400, 560), (364, 560), ease=8))
    sheet.across("Lower link", pen.ring((350, 590), (440, 590), (440, 520), (350, 520), ease=20))
    sheet.put("Top link", _CENTRE, circle(*pen.at(0, 830), pen.s(44)))
    sheet.put("Power take-off", _CENTRE, circle(*pen.at(0, 680), pen.s(56)))
    for radius in (44, 18):
        sheet.outline_of(circle(*pen.at(0, 680), pen.s(radius)))
    sheet.put("Drawbar", _CENTRE, pen.box(-62, 62, 372, 424, ease=8))
    sheet.across("Tail lamp", pen.box(560, 640, 1000, 1076, ease=14))


def _wheel_rim(pen: EndPen) -> Shape:
    hub = pen.at(0, 1506)
    return with_hole(circle(*hub, pen.s(196)), circle(*hub, pen.s(166)))


def _stack(pen: EndPen) -> None:
    sheet = pen.sheet
    sheet.put("Exhaust stack", _CENTRE, pen.box(-148, -92, 1300, 1880, ease=10))
    sheet.put("Exhaust silencer", _CENTRE, pen.box(-168, -72, 1440, 1700, ease=34))
    sheet.put("Air cleaner cap", _CENTRE, pen.box(36, 184, 1486, 1566, ease=30))


def _tyres(
    pen: EndPen, name: str, span: tuple[float, float], radius: float, bars: tuple[float, float]
) -> None:
    """A pair of tyres, from so far out to so far out, and where the bars of their tread show.

    The radius and the heights of the bars keep to the wheels' measure.
    """
    sheet, m = pen.sheet, pen.m
    low, x = pen.at(0, 0).y, sheet.middle_x
    top = low - 2 * radius * m.round
    a, b = (x + pen.out * out * m.scale for out in span)
    ring = [(a, top), (b, top), (b, low), (a, low)]
    sheet.across(f"{name} tyre", rounded(ring, abs(b - a) * 0.24))
    middle, edge = (a + b) / 2, (b - a) * 0.07
    for height in range(round(bars[0]), round(bars[1]), 84):
        y = low - height * m.round
        peak = y + 44 * m.round
        sheet.line_across(straight((a + edge, y), (middle, peak), (b - edge, y)))


def _mudguards(pen: EndPen) -> None:
    sheet, m = pen.sheet, pen.m
    top = pen.at(0, 0).y - (680 + 740) * m.round
    x, scale = sheet.middle_x, m.scale * pen.out
    low, lip = pen.at(0, 0).y - 900 * m.round, top + 120 * m.round
    ring = [
        (x + 480 * scale, low), (x + 480 * scale, top), (x + 872 * scale, top),
        (x + 872 * scale, lip), (x + 500 * scale, lip), (x + 500 * scale, low),
    ]  # fmt: skip
    sheet.across("Rear mudguard", rounded(ring, 22 * m.scale))
