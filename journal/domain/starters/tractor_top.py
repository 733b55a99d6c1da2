"""The tractor from above; its left is low on the sheet."""

from journal.domain.drawing import Side
from journal.domain.shapes import circle, rounded, with_hole
from journal.domain.starters.joins import outline
from journal.domain.starters.lines import straight
from journal.domain.starters.machine import Machine, PlanPen
from journal.domain.starters.sheet import Sheet

_CENTRE = Side.CENTRE


def draw_tractor_top(sheet: Sheet, m: Machine) -> None:
    """Draw all that is seen of the tractor from above."""
    pen = PlanPen(sheet, m)
    pen.centre_line()
    _backbone(pen)
    _linkage(pen)
    _wheels(pen)
    _bonnet(pen)
    _driver(pen)


def _backbone(pen: PlanPen) -> None:
    sheet = pen.sheet
    beam = pen.ring((-64, -560), (64, -560), (80, 0), (64, 560), (-64, 560), (-80, 0), ease=16)
    sheet.put("Front axle", _CENTRE, beam)
    sheet.over("Track rod", pen.ring((90, 60), (116, 60), (150, 560), (124, 560), ease=8))
    sheet.put("Gearbox housing", _CENTRE, pen.box(1120, 1650, -170, 170, ease=20))
    housing = pen.ring((1640, -220), (2200, -220), (2200, 220), (1640, 220), ease=30)
    sheet.put("Rear axle housing", _CENTRE, housing)
    sheet.over(
        "Half-shaft housing", pen.ring((1850, 216), (2050, 216), (2020, 520), (1880, 520), ease=12)
    )
    sheet.over("Footplate", pen.box(1010, 1330, 200, 470, ease=12))
    for n in range(5):
        along = 1060 + n * 54
        pen.line((along, 226), (along, 444))
        pen.line((along, -226), (along, -444))
    sheet.over("Pedal", pen.box(1130, 1200, 226, 300, ease=10))


def _linkage(pen: PlanPen) -> None:
    sheet = pen.sheet
    sheet.put("Drawbar", _CENTRE, pen.box(2180, 2760, -50, 50, ease=14))
    sheet.outline_of(circle(*pen.at(2720, 0), pen.s(18)))
    sheet.over("Lower link", pen.ring((2060, 240), (2120, 240), (2780, 380), (2780, 430), ease=14))
    sheet.put("Top link", _CENTRE, pen.box(2160, 2720, -24, 24, ease=10))
    sheet.over("Lift arm", pen.ring((2040, 120), (2460, 280), (2460, 334), (2040, 180), ease=14))


def _wheels(pen: PlanPen) -> None:
    sheet, r, scale = pen.sheet, pen.m.round, pen.m.scale
    for name, along, radius, inner, outer in (
        ("Front", 0.0, 375.0, 560.0, 720.0),
        ("Rear", 1950.0, 680.0, 520.0, 850.0),
    ):
        x, low, high = pen.at(along, 0).x, inner * scale, outer * scale
        y, reach = sheet.middle_y, radius * r
        ring = [
            (x - reach, y + low), (x + reach, y + low), (x + reach, y + high),
            (x - reach, y + high),
        ]  # fmt: skip
        sheet.over(f"{name} tyre", rounded(ring, (high - low) * 0.24))
        for n in range(2, 11):
            mark = x - reach + 2 * reach * n / 12
            lean = (high - low) * 0.3
            middle = y + (low + high) / 2
            sheet.line_over(straight((mark, y + low + 14), (mark + lean, middle)))
            sheet.line_over(straight((mark + lean, middle), (mark, y + high - 14)))
    wing = pen.ring((1300, 500), (2560, 500), (2560, 870), (1300, 870), ease=60)
    cut = pen.ring((1340, 620), (2520, 620), (2520, 856), (1340, 856), ease=40)
    sheet.over("Rear mudguard", with_hole(wing, cut))
    sheet.over("Tail lamp", pen.box(2540, 2600, 540, 610, ease=12))


def _bonnet(pen: PlanPen) -> None:
    sheet = pen.sheet
    sheet.over(
        "Headlamp",
        pen.ring((-490, 270), (-490, 370), (-400, 360), (-370, 320), (-400, 280), ease=20),
    )
    front = outline(
        pen.along((-330, -250), (-396, -160), (-410, 0), (-396, 160), (-330, 250)),
        pen.edges((-330, 250), (-280, 258), (-280, -258), (-330, -250)),
    )
    sheet.put("Grille", _CENTRE, front)
    hood = outline(
        pen.along((-300, 256), (200, 272), (700, 272), (1040, 262)),
        pen.along((1040, -262), (700, -272), (200, -272), (-300, -256)),
        ease=pen.s(16),
    )
    sheet.put("Bonnet", _CENTRE, hood)
    for out in (-180, 180):
        sheet.line(pen.along((-270, out * 0.9), (300, out), (1000, out * 0.96)))
    pen.line((-290, 0), (110, 0))
    sheet.put("Fuel tank", _CENTRE, pen.box(700, 1020, -170, 170, ease=50))
    sheet.put("Filler cap", _CENTRE, circle(*pen.at(864, 0), pen.s(40)))
    sheet.put("Exhaust silencer", _CENTRE, circle(*pen.at(430, 120), pen.s(48)))
    sheet.put("Exhaust stack", _CENTRE, circle(*pen.at(430, 120), pen.s(28)))
    sheet.put("Air cleaner cap", _CENTRE, circle(*pen.at(178, -110), pen.s(74)))
    sheet.outline_of(circle(*pen.at(178, -110), pen.s(54)))
    sheet.put("Instrument panel", _CENTRE, pen.box(1020, 1150, -240, 240, ease=24))
    for out in (-110, 0, 110):
        sheet.outline_of(circle(*pen.at(1092, out), pen.s(36)))


def _driver(pen: PlanPen) -> None:
    sheet = pen.sheet
    sheet.put("Gear lever", _CENTRE, circle(*pen.at(1540, 110), pen.s(34)))
    seat = outline(
        pen.along((1640, 0), (1660, 150), (1760, 236), (1900, 240), (2010, 200), (2080, 110)),
        pen.along((2080, 110), (2092, 0), (2080, -110)),
        pen.along((2080, -110), (2010, -200), (1900, -240), (1760, -236), (1660, -150), (1640, 0)),
    )
    sheet.put("Seat", _CENTRE, seat)
    for slot in (-120, -60, 0, 60, 120):
        pen.line((1760, slot), (1960, slot))
    hub = pen.at(1300, 0)
    rim = with_hole(circle(*hub, pen.s(220)), circle(*hub, pen.s(188)))
    sheet.put("Steering wheel", _CENTRE, rim)
    sheet.put("Steering column", _CENTRE, circle(*hub, pen.s(46)))
    for way, out in ((-1.0, 0.0), (0.5, 0.85), (0.5, -0.85)):
        pen.line((1300 + way * 50, out * 50), (1300 + way * 186, out * 186))
