"""A motorcycle without a fairing: an upright twin in a tubular frame. Our own design."""

import math

from journal.domain.drawing import Side
from journal.domain.shapes import Point, circle, ellipse, with_hole
from journal.domain.starters.joins import outline
from journal.domain.starters.lines import arc, straight
from journal.domain.starters.machine import Kind, Machine, SidePen, guard, machine
from journal.domain.starters.motorcycle_ends import draw_motorcycle_front, draw_motorcycle_rear
from journal.domain.starters.motorcycle_frame import draw_frame
from journal.domain.starters.motorcycle_top import draw_motorcycle_top
from journal.domain.starters.proportions import MARGIN
from journal.domain.starters.sheet import Draft

MOTORCYCLE = Kind(
    title="Motorcycle",
    noun="motorcycle",
    wheelbase=1400,
    front=356,
    rear=404,
    width=760,
    height=1170,
    wheelbases=(800, 2500),
    ratios=(1.3, 1.8),
)

#: Radius of the tyres, and the rear axle's place along.
_TYRE, _REAR = 330.0, 1400.0

_LEFT, _CENTRE = Side.LEFT, Side.CENTRE


def draw_motorcycle(draft: Draft, wheelbase_mm: int, length_mm: int) -> None:
    """Draw all views of a motorcycle.

    Raises:
        JournalError: the dimensions are not those of a motorcycle.
    """
    m = machine(MOTORCYCLE, wheelbase_mm, length_mm)
    along, across = m.length + 2 * MARGIN, m.width + 2 * MARGIN
    high = m.height + 2 * MARGIN
    left = draft.sheet("Left side", along, high)
    _draw_left(SidePen(left, m))
    left.mirrored("Right side")
    draw_motorcycle_top(draft.sheet("Top", along, across), m)
    draw_motorcycle_front(draft.sheet("Front", across, high), m)
    draw_motorcycle_rear(draft.sheet("Rear", across, high), m)
    draw_frame(draft, m)


def _draw_left(pen: SidePen) -> None:
    pen.ground()
    _wheels(pen)
    _rear_end(pen)
    _frame(pen)
    _engine(pen)
    _front_end(pen)
    _seat_and_tank(pen)
    _exhaust(pen)
    _small_parts(pen)


def axle(m: Machine, centre: Point) -> Point:
    """A wheel's centre, so low that the wheel stands on the ground."""
    return Point(centre.x, centre.y + _TYRE * (m.scale - m.round))


def _wheels(pen: SidePen) -> None:
    sheet, r = pen.sheet, pen.m.round
    for name, along, drum, arcs in (
        ("Front", 0.0, 92.0, [(-44, 278, 92)]),
        ("Rear", _REAR, 100.0, [(-90, -12, 100), (46, 128, 140)]),
    ):
        hub = axle(pen.m, pen.at(along, _TYRE))
        tyre = with_hole(circle(*hub, _TYRE * r), circle(*hub, 246 * r))
        sheet.put(f"{name} tyre", _CENTRE, tyre)
        sheet.put(f"{name} wheel", _CENTRE, circle(*hub, 246 * r))
        for start, end, inner in arcs:
            for radius in (300, 226):
                sheet.line(arc(hub.x, hub.y, radius * r, start, end))
            _spokes(pen, hub, (inner, 226), (start, end))
        sheet.put(f"{name} brake drum", _CENTRE, circle(*hub, drum * r))
        sheet.outline_of(circle(*hub, drum * 0.8 * r))
        sheet.outline_of(circle(*hub, 16 * r))


def _spokes(
    pen: SidePen, hub: Point, radii: tuple[float, float], degrees: tuple[float, float]
) -> None:
    """The spokes between two radii, in a piece of a wheel that nothing covers."""
    for n in range(math.ceil((degrees[0] + 4) / 12), math.floor((degrees[1] - 4) / 12) + 1):
        lean = 5 if n % 2 else -5
        ends = []
        for radius, angle in zip(radii, (n * 12 - lean, n * 12 + lean), strict=True):
            reach, turn = radius * pen.m.round, math.radians(angle)
            ends.append((hub.x + reach * math.cos(turn), hub.y + reach * math.sin(turn)))
        pen.sheet.line(straight(*ends))


def _rear_end(pen: SidePen) -> None:
    sheet, r = pen.sheet, pen.m.round
    hub = axle(pen.m, pen.at(_REAR, _TYRE))
    sheet.put("Rear mudguard", _CENTRE, guard(hub, 344 * r, 366 * r, -142, -8))
    lamp = pen.ring(
        (1652, 586), (1690, 648), (1760, 640), (1804, 604), (1792, 548), (1712, 540), ease=16
    )
    sheet.put("Tail lamp", _CENTRE, lamp)
    plate = pen.ring((1752, 540), (1768, 537), (1800, 385), (1784, 382))
    sheet.put("Rear number plate", _CENTRE, plate)
    sheet.put("Swinging arm", _CENTRE, pen.tube((868, 392), (1120, 366), (1425, 330), width=52))
    sheet.put("Chain guard", _CENTRE, pen.tube((950, 424), (1180, 434), (1440, 404), width=34))


def _frame(pen: SidePen) -> None:
    sheet = pen.sheet
    sheet.put("Down tube", _CENTRE, pen.tube((322, 760), (392, 560), (446, 390), width=36))
    rail = pen.tube((446, 390), (478, 258), (580, 214), (760, 206), (872, 216), width=34)
    sheet.put("Cradle tube", _LEFT, rail)
    sheet.put("Seat post", _CENTRE, pen.tube((846, 742), (880, 560), (880, 230), width=36))
    sheet.put("Backbone", _CENTRE, pen.tube((318, 842), (560, 800), (846, 742), width=44))
    loop = pen.tube((850, 738), (1120, 752), (1330, 768), (1450, 790), width=30)
    sheet.put("Seat rail", _LEFT, loop)
    stay = pen.tube((888, 402), (1020, 560), (1196, 756), width=28)
    sheet.put("Rear stay", _LEFT, stay)
    stand = pen.ring((800, 214), (850, 214), (905, 96), (918, 62), (872, 62), ease=10)
    sheet.put("Centre stand", _CENTRE, stand)


def _engine(pen: SidePen) -> None:
    sheet = pen.sheet
    case = pen.ring(
        (470, 440), (500, 250), (600, 226), (880, 240), (905, 330), (890, 455), (760, 480),
        ease=40,
    )  # fmt: skip
    sheet.put("Crankcase", _CENTRE, case)
    box = pen.ring((740, 470), (770, 270), (878, 262), (900, 340), (886, 462), ease=34)
    sheet.put("Gearbox", _CENTRE, box)
    barrel = pen.ring((520, 452), (508, 622), (712, 640), (724, 470), ease=14)
    sheet.put("Cylinder", _CENTRE, barrel)
    for n in range(1, 8):
        z = 452 + n * 22
        pen.line((516 - n * 1.4, z), (722 - n * 1.4, z + 18))
    head = pen.ring((500, 618), (494, 694), (560, 716), (690, 722), (728, 708), (720, 636), ease=16)
    sheet.put("Cylinder head", _CENTRE, head)
    cover = pen.ring((540, 708), (552, 752), (676, 760), (700, 716), ease=18)
    sheet.put("Rocker cover", _CENTRE, cover)
    cover = outline(
        pen.along((522, 330), (560, 400), (650, 414), (760, 400), (818, 340)),
        pen.along((818, 340), (800, 276), (720, 252), (590, 254), (522, 330)),
    )
    sheet.put("Engine side cover", _LEFT, cover)
    sheet.outline_of(ellipse(*pen.at(600, 330), pen.s(46), pen.s(46)))
    sheet.outline_of(ellipse(*pen.at(756, 334), pen.s(30), pen.s(30)))
    carburettor = pen.ring((722, 590), (722, 660), (800, 668), (806, 596), ease=14)
    sheet.put("Carburettor", _LEFT, carburettor)
    sheet.put("Air filter", _CENTRE, pen.box(804, 868, 580, 690, ease=16))


def _front_end(pen: SidePen) -> None:
    sheet, r = pen.sheet, pen.m.round
    hub = axle(pen.m, pen.at(0, _TYRE))
    sheet.put("Front mudguard", _CENTRE, guard(hub, 342 * r, 364 * r, -165, -22))
    sheet.put("Steering head", _CENTRE, pen.tube((276, 724), (306, 790), (338, 860), width=66))
    lower = pen.tube((-8, 312), (78, 488), (122, 578), width=58)
    upper = pen.tube((116, 566), (196, 726), (272, 880), width=40)
    sheet.put("Fork tube", _LEFT, upper)
    sheet.put("Fork slider", _LEFT, lower)
    yoke = pen.ring((170, 740), (296, 700), (310, 730), (186, 772), ease=10)
    sheet.put("Bottom yoke", _CENTRE, yoke)
    yoke = pen.ring((238, 872), (356, 836), (366, 864), (250, 902), ease=10)
    sheet.put("Top yoke", _CENTRE, yoke)
    lamp = outline(
        pen.along((72, 790), (58, 868), (84, 944)),
        pen.along((84, 944), (160, 938), (222, 888), (232, 832), (170, 790), (72, 790)),
    )
    sheet.put("Headlamp", _CENTRE, lamp)
    sheet.line(pen.along((92, 792), (80, 868), (104, 942)))
    sheet.put(
        "Instruments", _CENTRE, pen.ring((222, 908), (210, 968), (284, 984), (294, 922), ease=12)
    )
    sheet.put(
        "Handlebar", _CENTRE, pen.tube((296, 900), (318, 990), (392, 1034), (470, 1020), width=24)
    )
    sheet.put("Handlebar grip", _LEFT, pen.tube((398, 1035), (450, 1026), (506, 1010), width=38))
    sheet.put("Mirror", _LEFT, ellipse(*pen.at(386, 1118), pen.s(46), pen.s(40)))
    sheet.line(pen.along((404, 1080), (410, 1058), (404, 1046)))


def _seat_and_tank(pen: SidePen) -> None:
    sheet = pen.sheet
    tank = outline(
        pen.along((338, 828), (352, 908), (450, 952), (600, 940), (742, 872), (826, 798)),
        pen.along((826, 798), (700, 768), (520, 776), (338, 828)),
    )
    sheet.put("Fuel tank", _CENTRE, tank)
    sheet.line(pen.along((372, 846), (520, 812), (690, 802), (786, 806)))
    knee = pen.ring((590, 888), (690, 868), (762, 812), (640, 806), (590, 830), ease=24)
    sheet.put("Knee pad", _LEFT, knee)
    cap = pen.ring((470, 946), (474, 966), (534, 964), (534, 942), ease=6)
    sheet.put("Filler cap", _CENTRE, cap)
    seat = outline(
        pen.along((776, 812), (850, 822), (980, 836), (1100, 868), (1260, 886), (1424, 880)),
        pen.along((1424, 880), (1462, 844), (1440, 798)),
        pen.along((1440, 798), (1200, 772), (980, 762), (820, 760), (776, 812)),
    )
    sheet.put("Seat", _CENTRE, seat)
    sheet.line(pen.along((800, 786), (980, 790), (1200, 802), (1440, 826)))
    panel = pen.ring((862, 738), (1120, 742), (1024, 590), (916, 532), (872, 560), ease=34)
    sheet.put("Side panel", _LEFT, panel)
    lines = ((906, 700), (1040, 702)), ((900, 672), (1020, 672))
    for line in lines:
        pen.line(*line)
    damper = pen.tube((1190, 742), (1262, 560), (1334, 384), width=50)
    sheet.put("Rear shock absorber", _LEFT, damper)
    for n in range(9):
        along, z = 1204 + n * 12.6, 706 - n * 31.5
        pen.line((along - 20, z - 14), (along + 26, z + 2))


def _exhaust(pen: SidePen) -> None:
    sheet = pen.sheet
    pipe = pen.tube(
        (516, 654), (430, 610), (404, 430), (452, 262), (600, 196), (820, 204), width=44
    )
    sheet.put("Exhaust pipe", _LEFT, pipe)
    silencer = pen.ring(
        (800, 228), (800, 184), (940, 172), (1470, 216), (1560, 252), (1540, 300), (960, 262),
        ease=20,
    )  # fmt: skip
    sheet.put("Silencer", _LEFT, silencer)
    pen.line((970, 218), (1480, 262))


def _small_parts(pen: SidePen) -> None:
    sheet = pen.sheet
    sheet.put("Footrest", _LEFT, pen.box(716, 776, 300, 328, ease=12))
    sheet.put("Pillion footrest", _LEFT, pen.box(1010, 1066, 392, 416, ease=10))
    sheet.put("Front indicator", _LEFT, circle(*pen.at(196, 806), pen.s(30)))
    sheet.put("Rear indicator", _LEFT, circle(*pen.at(1470, 782), pen.s(30)))
