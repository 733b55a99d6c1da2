"""The motorcycle's bare frame and swinging arm from both sides, as they lie on the bench."""

from journal.domain.drawing import Side, Weight
from journal.domain.shapes import circle
from journal.domain.starters.lines import straight
from journal.domain.starters.machine import Machine, SidePen
from journal.domain.starters.proportions import MARGIN
from journal.domain.starters.sheet import Draft

_LEFT, _CENTRE = Side.LEFT, Side.CENTRE

#: What of the motorcycle the sheet shows: from and to along it, and from and to above the ground.
_FROM, _TO, _LOW, _HIGH = 250.0, 1480.0, 150.0, 900.0


def draw_frame(draft: Draft, m: Machine) -> None:
    """Draw the frame with its lugs, on two new views that hold it alone."""
    wide = m.x(_TO) - m.x(_FROM) + 2 * MARGIN
    sheet = draft.sheet("Frame, left side", wide, (_HIGH - _LOW) * m.scale + 2 * MARGIN)
    pen = SidePen(sheet, m, dx=-m.x(_FROM), dy=(_HIGH - m.kind.height) * m.scale)
    bench = pen.at(0, _LOW).y
    sheet.line(straight((MARGIN * 0.3, bench), (wide - MARGIN * 0.3, bench)), Weight.GROUND)
    start, end = pen.at(880, 392), pen.at(1400, 330)
    sheet.line(straight((start.x, start.y), (end.x, end.y)), Weight.CENTRE)
    _tubes(pen)
    _lugs(pen)
    sheet.mirrored("Frame, right side")


def _tubes(pen: SidePen) -> None:
    sheet = pen.sheet
    sheet.put("Swinging arm", _CENTRE, pen.tube((868, 392), (1120, 366), (1425, 330), width=52))
    sheet.put("Down tube", _CENTRE, pen.tube((322, 760), (392, 560), (446, 390), width=36))
    rail = pen.tube((446, 390), (478, 258), (580, 214), (760, 206), (872, 216), width=34)
    sheet.put("Cradle tube", _LEFT, rail)
    sheet.put("Cradle crossmember", _CENTRE, circle(*pen.at(600, 212), pen.s(22)))
    sheet.put("Seat post", _CENTRE, pen.tube((846, 742), (880, 560), (880, 230), width=36))
    sheet.put("Backbone", _CENTRE, pen.tube((318, 842), (560, 800), (846, 742), width=44))
    sheet.put("Steering head", _CENTRE, pen.tube((276, 724), (306, 790), (338, 860), width=66))
    gusset = pen.ring((336, 820), (470, 796), (352, 700), ease=12)
    sheet.put("Steering head gusset", _CENTRE, gusset)
    loop = pen.tube((850, 738), (1120, 752), (1330, 768), (1450, 790), width=30)
    sheet.put("Seat rail", _LEFT, loop)
    sheet.put("Rear stay", _LEFT, pen.tube((888, 402), (1020, 560), (1196, 756), width=28))
    sheet.put("Seat crossmember", _CENTRE, circle(*pen.at(1090, 751), pen.s(21)))
    tray = pen.ring((878, 640), (878, 568), (1010, 568), (1010, 640), ease=6)
    sheet.put("Battery tray", _CENTRE, tray)


def _lugs(pen: SidePen) -> None:
    sheet = pen.sheet
    for name, along, z in (
        ("Engine mount, front", 446, 372),
        ("Engine mount, lower", 690, 226),
        ("Engine mount, rear", 872, 300),
    ):
        sheet.put(name, _LEFT, circle(*pen.at(along, z), pen.s(30)))
        sheet.outline_of(circle(*pen.at(along, z), pen.s(11)))
    sheet.put("Head steady", _CENTRE, pen.ring((600, 792), (680, 776), (640, 722), ease=8))
    sheet.put("Swinging-arm pivot", _CENTRE, circle(*pen.at(880, 392), pen.s(44)))
    sheet.outline_of(circle(*pen.at(880, 392), pen.s(17)))
    sheet.put("Shock absorber mount, upper", _LEFT, circle(*pen.at(1192, 757), pen.s(28)))
    sheet.put("Shock absorber mount, lower", _LEFT, circle(*pen.at(1334, 350), pen.s(28)))
    sheet.outline_of(circle(*pen.at(1192, 757), pen.s(10)))
    sheet.outline_of(circle(*pen.at(1334, 350), pen.s(10)))
    sheet.put(
        "Stand lug", _CENTRE, pen.ring((800, 222), (872, 224), (858, 176), (814, 176), ease=8)
    )
    sheet.put("Footrest lug", _LEFT, pen.box(722, 770, 176, 222, ease=10))
    sheet.put(
        "Axle slot", _CENTRE, pen.ring((1380, 356), (1450, 350), (1450, 308), (1380, 312), ease=10)
    )
    for height in (700.0, 880.0):
        middle = 306 + (height - 790) * 0.45
        pen.line((middle - 34, height + 14), (middle + 34, height - 14))
