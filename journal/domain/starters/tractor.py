"""A farm tractor of the plain old kind: engine, gearbox and axle are its frame. Our own design."""

import math

from journal.domain.drawing import Side
from journal.domain.shapes import Point, circle, ellipse, with_hole
from journal.domain.starters.joins import outline
from journal.domain.starters.lines import straight
from journal.domain.starters.machine import Kind, SidePen, guard, machine
from journal.domain.starters.proportions import MARGIN
from journal.domain.starters.sheet import Draft
from journal.domain.starters.tractor_ends import draw_tractor_front, draw_tractor_rear
from journal.domain.starters.tractor_top import draw_tractor_top

TRACTOR = Kind(
    title="Tractor",
    noun="tractor",
    wheelbase=1950,
    front=500,
    rear=850,
    width=1720,
    height=1960,
    wheelbases=(900, 3500),
    ratios=(1.35, 2.3),
)

#: Radii of the tyres, and the rear axle's place along.
FRONT_TYRE, REAR_TYRE, _REAR = 375.0, 680.0, 1950.0

_LEFT, _CENTRE = Side.LEFT, Side.CENTRE


def draw_tractor(draft: Draft, wheelbase_mm: int, length_mm: int) -> None:
    """Draw all views of a tractor.

    Raises:
        JournalError: the dimensions are not those of a tractor.
    """
    m = machine(TRACTOR, wheelbase_mm, length_mm)
    along, across = m.length + 2 * MARGIN, m.width + 2 * MARGIN
    high = m.height + 2 * MARGIN
    left = draft.sheet("Left side", along, high)
    _draw_left(SidePen(left, m))
    left.mirrored("Right side")
    draw_tractor_top(draft.sheet("Top", along, across), m)
    draw_tractor_front(draft.sheet("Front", across, high), m)
    draw_tractor_rear(draft.sheet("Rear", across, high), m)


def _draw_left(pen: SidePen) -> None:
    pen.ground()
    _linkage(pen)
    _backbone(pen)
    _engine(pen)
    _bonnet(pen)
    _driver(pen)
    _wheels(pen)


def _hub(pen: SidePen, along: float, radius: float) -> Point:
    """A wheel's centre: it stands on the ground."""
    return Point(pen.at(along, 0).x, pen.at(along, 0).y - radius * pen.m.round)


def _backbone(pen: SidePen) -> None:
    sheet = pen.sheet
    support = pen.ring(
        (-330, 700), (160, 720), (160, 600), (60, 540), (-250, 540), (-330, 600), ease=20
    )
    sheet.put("Front axle support", _CENTRE, support)
    clutch = pen.ring((760, 940), (1130, 980), (1130, 600), (1010, 560), (760, 560), ease=16)
    sheet.put("Clutch housing", _CENTRE, clutch)
    gearbox = pen.ring((1120, 980), (1640, 960), (1640, 520), (1120, 580), ease=16)
    sheet.put("Gearbox housing", _CENTRE, gearbox)
    step = pen.ring((1010, 560), (1330, 560), (1330, 520), (1010, 520), ease=8)
    sheet.put("Footplate", _LEFT, step)
    battery = pen.box(840, 1080, 600, 780, ease=10)
    sheet.put("Battery box", _LEFT, battery)
    pen.line((840, 744), (1080, 744))
    pen.line((960, 744), (960, 610))


def _engine(pen: SidePen) -> None:
    sheet = pen.sheet
    sheet.put("Engine block", _CENTRE, pen.box(100, 770, 640, 960, ease=14))
    sump = pen.ring((130, 650), (770, 650), (770, 580), (700, 520), (240, 520), ease=22)
    sheet.put("Sump", _CENTRE, sump)
    sheet.put("Cylinder head", _CENTRE, pen.box(130, 750, 950, 1040, ease=10))
    sheet.put("Radiator", _CENTRE, pen.box(-190, -90, 690, 1200, ease=12))
    sheet.put("Fan", _CENTRE, pen.box(-70, -10, 740, 1120, ease=24))
    sheet.put("Fuel pump", _LEFT, pen.box(300, 520, 720, 830, ease=14))
    sheet.put(
        "Fuel filter", _LEFT, pen.ring((570, 900), (650, 900), (642, 740), (578, 740), ease=18)
    )
    sheet.put("Dynamo", _LEFT, pen.box(120, 262, 800, 910, ease=30))
    for n in range(4):
        along = 190 + n * 150
        sheet.outline_of(circle(*pen.at(along + 10, 690), pen.s(24)))
    manifold = pen.ring((170, 1010), (700, 1010), (700, 960), (170, 960), ease=16)
    sheet.put("Exhaust manifold", _CENTRE, manifold)


def _bonnet(pen: SidePen) -> None:
    sheet = pen.sheet
    hood = outline(
        pen.along((-330, 1300), (-240, 1352), (0, 1376), (500, 1388), (1030, 1396)),
        pen.edges((1030, 1396), (1030, 1100)),
        pen.edges((1030, 1100), (-330, 1060)),
        pen.edges((-330, 1060), (-330, 1300)),
    )
    sheet.put("Bonnet", _CENTRE, hood)
    sheet.line(pen.along((-320, 1240), (200, 1272), (1020, 1286)))
    for n in range(9):
        along = 250 + n * 44
        pen.line((along, 1220), (along + 26, 1120))
    tank = pen.ring((700, 1372), (1020, 1380), (1020, 1240), (700, 1226), ease=26)
    sheet.put("Fuel tank", _CENTRE, tank)
    cap = pen.ring((826, 1390), (826, 1424), (904, 1424), (904, 1392), ease=10)
    sheet.put("Filler cap", _CENTRE, cap)
    grille = outline(
        pen.along((-330, 1316), (-392, 1240), (-410, 1000), (-392, 720)),
        pen.edges((-392, 720), (-260, 690)),
        pen.edges((-260, 690), (-300, 1332)),
    )
    sheet.put("Grille", _CENTRE, grille)
    for n in range(9):
        z = 770 + n * 58
        pen.line((-396, z), (-306, z - 4))
    sheet.put(
        "Headlamp",
        _LEFT,
        pen.ring(
            (-470, 1130),
            (-490, 1060),
            (-470, 990),
            (-390, 1010),
            (-370, 1060),
            (-390, 1110),
            ease=22,
        ),
    )
    pipe = pen.ring(
        (402, 1378), (402, 1780), (440, 1880), (478, 1874), (458, 1780), (458, 1382), ease=8
    )
    sheet.put("Exhaust stack", _CENTRE, pipe)
    sheet.put("Exhaust silencer", _CENTRE, pen.box(384, 476, 1440, 1700, ease=34))
    cleaner = pen.ring((126, 1370), (126, 1500), (230, 1500), (230, 1374), ease=10)
    sheet.put("Air cleaner", _CENTRE, cleaner)
    sheet.put("Air cleaner cap", _CENTRE, pen.box(104, 252, 1486, 1566, ease=30))


def _driver(pen: SidePen) -> None:
    sheet = pen.sheet
    dash = pen.ring((1020, 1400), (1104, 1392), (1150, 1270), (1150, 970), (1020, 950), ease=14)
    sheet.put("Instrument panel", _CENTRE, dash)
    sheet.put(
        "Steering column", _CENTRE, pen.tube((1090, 1300), (1190, 1392), (1310, 1500), width=40)
    )
    sheet.put(
        "Steering wheel", _CENTRE, pen.tube((1226, 1650), (1300, 1506), (1372, 1372), width=34)
    )
    sheet.put("Gear lever", _CENTRE, pen.tube((1340, 972), (1370, 1100), (1350, 1230), width=26))
    sheet.put(
        "Pedal",
        _LEFT,
        pen.ring(
            (1170, 900), (1210, 900), (1236, 700), (1150, 640), (1138, 668), (1196, 716), ease=10
        ),
    )
    pan = outline(
        pen.along((1600, 1330), (1690, 1272), (1900, 1262), (2010, 1340), (2080, 1560)),
        pen.edges((2080, 1560), (2040, 1580)),
        pen.along((2040, 1580), (1960, 1390), (1880, 1326), (1700, 1330), (1612, 1366)),
    )
    sheet.put("Seat", _CENTRE, pan)


def _linkage(pen: SidePen) -> None:
    sheet = pen.sheet
    sheet.put(
        "Drawbar", _CENTRE, pen.ring((1900, 420), (2760, 420), (2760, 376), (1900, 376), ease=8)
    )
    pen.line((2700, 420), (2700, 376))
    sheet.put("Top link", _CENTRE, pen.tube((2180, 860), (2440, 830), (2720, 800), width=42))
    sheet.put("Lower link", _LEFT, pen.tube((1990, 500), (2380, 540), (2780, 560), width=54))
    for along, z in ((2762, 560), (2706, 801)):
        sheet.outline_of(circle(*pen.at(along, z), pen.s(15)))


def _wheels(pen: SidePen) -> None:
    sheet, r = pen.sheet, pen.m.round
    hub = _hub(pen, 0, FRONT_TYRE)
    sheet.put("Front tyre", _LEFT, with_hole(circle(*hub, 375 * r), circle(*hub, 232 * r)))
    sheet.put("Front wheel", _LEFT, circle(*hub, 232 * r))
    for radius in (330, 205, 150, 60):
        sheet.outline_of(circle(*hub, radius * r))
    _bolts(pen, hub, 100 * r, 5)
    hub = _hub(pen, _REAR, REAR_TYRE)
    sheet.put("Rear tyre", _LEFT, with_hole(circle(*hub, 680 * r), circle(*hub, 400 * r)))
    sheet.put("Rear wheel", _LEFT, circle(*hub, 400 * r))
    for radius in (600, 372, 290, 120):
        sheet.outline_of(circle(*hub, radius * r))
    _bolts(pen, hub, 200 * r, 8)
    _lugs(pen, hub)
    sheet.put("Rear mudguard", _LEFT, guard(hub, 696 * r, 740 * r, -158, -28))
    sheet.put("Tail lamp", _LEFT, pen.box(2540, 2600, 1000, 1070, ease=12))


def _bolts(pen: SidePen, hub: Point, radius: float, count: int) -> None:
    for n in range(count):
        angle = math.tau * n / count
        spot = hub.x + radius * math.cos(angle), hub.y + radius * math.sin(angle)
        pen.sheet.outline_of(ellipse(*spot, pen.s(17), pen.s(17)))


def _lugs(pen: SidePen, hub: Point) -> None:
    """The bars of the tread, as far as they reach down the wall."""
    r = pen.m.round
    for n in range(28):
        angle = math.tau * n / 28
        inner = Point(hub.x + 604 * r * math.cos(angle), hub.y + 604 * r * math.sin(angle))
        far = angle + 0.07
        outer = Point(hub.x + 672 * r * math.cos(far), hub.y + 672 * r * math.sin(far))
        pen.sheet.line(straight(inner, outer))
