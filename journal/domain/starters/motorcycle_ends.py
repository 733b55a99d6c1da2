"""The motorcycle from in front and from behind."""

from journal.domain.drawing import Side
from journal.domain.shapes import circle, ellipse, rounded
from journal.domain.starters.joins import outline
from journal.domain.starters.lines import straight
from journal.domain.starters.machine import EndPen, Machine
from journal.domain.starters.sheet import Sheet

_CENTRE = Side.CENTRE


def draw_motorcycle_front(sheet: Sheet, m: Machine) -> None:
    """Draw all that is seen of the motorcycle from in front; its left is on the right."""
    pen = EndPen(sheet, m, out=1)
    pen.ground()
    pen.centre_line()
    _engine(pen)
    tank = outline(
        pen.along(
            (-120, 800), (-146, 870), (-90, 940), (0, 954), (90, 940), (146, 870), (120, 800)
        ),
    )
    sheet.put("Fuel tank", _CENTRE, tank)
    _tyre(pen, "Front", 48)
    _mudguard(pen, "Front mudguard", 300, 58)
    sheet.across("Fork slider", pen.box(74, 130, 300, 580, ease=14))
    sheet.across("Fork tube", pen.box(84, 122, 566, 890, ease=4))
    sheet.put("Bottom yoke", _CENTRE, pen.box(-134, 134, 706, 752, ease=14))
    sheet.put("Top yoke", _CENTRE, pen.box(-134, 134, 862, 902, ease=14))
    _bars(pen)
    sheet.put("Instruments", _CENTRE, pen.box(-88, 88, 926, 992, ease=28))
    sheet.put("Headlamp", _CENTRE, circle(*pen.at(0, 866), pen.s(96)))
    for radius in (84, 30):
        sheet.outline_of(circle(*pen.at(0, 866), pen.s(radius)))
    sheet.across("Front indicator", circle(*pen.at(176, 806), pen.s(30)))


def draw_motorcycle_rear(sheet: Sheet, m: Machine) -> None:
    """Draw all that is seen of the motorcycle from behind; its left is on the left."""
    pen = EndPen(sheet, m, out=-1)
    pen.ground()
    pen.centre_line()
    _bars(pen)
    _engine(pen)
    sheet.across(
        "Side panel", pen.ring((90, 742), (132, 738), (158, 640), (150, 556), (90, 540), ease=16)
    )
    sheet.put("Swinging arm", _CENTRE, pen.box(-140, 140, 300, 356, ease=10))
    _tyre(pen, "Rear", 58)
    sheet.across(
        "Rear shock absorber", pen.ring((124, 760), (172, 760), (184, 340), (136, 340), ease=14)
    )
    for n in range(9):
        z = 720 - n * 38
        for way in (-1, 1):
            pen.line((way * 128, z), (way * 178, z - 16))
    _mudguard(pen, "Rear mudguard", 300, 72)
    seat = pen.ring(
        (-124, 800), (-112, 872), (-60, 890), (60, 890), (112, 872), (124, 800), ease=16
    )
    sheet.across("Seat rail", pen.box(60, 112, 716, 806, ease=8))
    sheet.put("Seat", _CENTRE, seat)
    sheet.across("Rear indicator", circle(*pen.at(170, 762), pen.s(30)))
    sheet.put("Tail lamp", _CENTRE, pen.box(-52, 52, 556, 640, ease=18))
    pen.line((-48, 598), (48, 598))
    sheet.put("Rear number plate", _CENTRE, pen.box(-110, 110, 384, 540, ease=10))
    for z in (436, 488):
        pen.line((-84, z), (84, z))


def _tyre(pen: EndPen, name: str, half: float) -> None:
    """A tyre, with the grooves of its tread where the mudguard doesn't cover them."""
    sheet, m = pen.sheet, pen.m
    low, x, wide = pen.at(0, 0).y, sheet.middle_x, half * m.scale
    top = low - 660 * m.round
    ring = [(x - wide, top), (x + wide, top), (x + wide, low), (x - wide, low)]
    sheet.put(f"{name} tyre", _CENTRE, rounded(ring, wide * 0.8))
    for share in (-0.4, 0.4):
        x_line = x + wide * share
        sheet.line(straight((x_line, low - 290 * m.round), (x_line, low - 30 * m.round)))


def _mudguard(pen: EndPen, name: str, low: float, half: float) -> None:
    """The mudguard over a tyre, ending so far above the ground."""
    sheet, m = pen.sheet, pen.m
    ground, x, wide = pen.at(0, 0).y, sheet.middle_x, half * m.scale
    top = ground - 696 * m.round
    foot = ground - (low + 60) * m.round
    ring = [(x - wide, top), (x + wide, top), (x + wide, foot), (x - wide, foot)]
    sheet.put(name, _CENTRE, rounded(ring, wide * 0.55))


def _engine(pen: EndPen) -> None:
    sheet = pen.sheet
    sheet.put("Crankcase", _CENTRE, pen.box(-180, 180, 226, 470, ease=40))
    sheet.across(
        "Engine side cover", pen.ring((166, 414), (206, 396), (212, 290), (166, 254), ease=18)
    )
    sheet.across("Footrest", pen.box(212, 330, 300, 328, ease=12))
    sheet.across("Silencer", circle(*pen.at(184, 226), pen.s(46)))
    sheet.put("Cylinder", _CENTRE, pen.box(-130, 130, 452, 640, ease=10))
    sheet.put("Cylinder head", _CENTRE, pen.box(-140, 140, 626, 716, ease=18))
    sheet.across("Exhaust pipe", pen.tube((76, 664), (118, 560), (162, 380), (180, 230), width=44))


def _bars(pen: EndPen) -> None:
    sheet = pen.sheet
    bar = pen.tube(
        (-330, 1020), (-236, 1034), (-150, 980), (-60, 914), (60, 914), (150, 980), (236, 1034),
        (330, 1020), width=24,
    )  # fmt: skip
    sheet.put("Handlebar", _CENTRE, bar)
    sheet.across("Handlebar grip", pen.tube((262, 1034), (320, 1022), (374, 1010), width=38))
    sheet.across("Mirror", ellipse(*pen.at(318, 1122), pen.s(48), pen.s(40)))
    for way in (-1, 1):
        pen.line((way * 292, 1086), (way * 270, 1040))
