"""The car seen from below, its nose to the left: its left side lies high on the view."""

from journal.domain.drawing import Side, Weight
from journal.domain.shapes import Shape, Stroke, circle, rounded
from journal.domain.starters.joins import outline
from journal.domain.starters.lines import reverse, shifted, straight
from journal.domain.starters.plan import Plan, Spot, body_edge, front_bumper, rear_bumper
from journal.domain.starters.proportions import Proportions
from journal.domain.starters.sheet import Sheet

_LEFT, _RIGHT, _CENTRE = Side.LEFT, Side.RIGHT, Side.CENTRE


def draw_underside(sheet: Sheet, p: Proportions) -> None:
    """Draw all that is seen of the car from below."""
    plan = Plan(sheet, p, down=-1)
    edge = body_edge(plan)
    _rim(plan, edge)
    _floor(plan)
    _frame(plan)
    _front_suspension(plan)
    _rear_suspension(plan)
    _drive(plan)
    _lines_below(plan)
    _wheels(plan)
    middle = plan.middle
    sheet.line(straight((40, middle), (sheet.view.width - 40, middle)), Weight.CENTRE)


def behind_arch(p: Proportions) -> float:
    """The station where the front wheel opening and its splash panel end."""
    return min(0.3, (p.arch + p.s(70)) / p.wheelbase)


def _before_arch(p: Proportions) -> float:
    return 1 - behind_arch(p)


def _rim(plan: Plan, edge: Stroke) -> None:
    """What closes the body all round: valances, wings, sills."""
    sheet, p, st = plan.sheet, plan.p, plan.p.style
    front = front_bumper(plan)
    sheet.put("Front bumper", _CENTRE, front)
    rear = rear_bumper(plan)
    sheet.put("Rear bumper", _CENTRE, rear)
    nose = plan.along((-0.93, 0.0), (-0.918, 0.5), (-0.89, 0.80))
    chin = plan.edges((-0.8, 0.84), (-0.8, 0.0))
    sheet.put("Front valance", _CENTRE, plan.both(nose, chin))
    tail = plan.along((1.945, 0.0), (1.942, 0.5), (1.92, 0.83))
    apron = plan.edges((1.84, 0.86), (1.84, 0.0))
    sheet.put("Rear valance", _CENTRE, plan.both(reverse(apron), reverse(tail)))
    start, end = behind_arch(p), _before_arch(p)
    inner = _rim_line(plan)
    front_end, rear_start = max(start, st.door_front), end
    sheet.over("Front wing", plan.strip(edge, inner, -0.8, front_end))
    names = {"boot": "Rear wing", "bed": "Bed side"}
    name = names.get(st.rear, "Rear wing" if st.doors == 4 else "Side panel")
    sheet.over(name, plan.strip(edge, inner, rear_start, 1.84))
    sheet.over("Sill", plan.strip(edge, inner, front_end, rear_start))


def _rim_line(plan: Plan) -> Stroke:
    """Where the floor of the left side meets wings and sill."""
    return plan.edges((-0.9, 0.70), (-0.62, 0.86), (1.5, 0.86), (1.9, 0.72))


def _floor(plan: Plan) -> None:
    sheet, p, st = plan.sheet, plan.p, plan.p.style
    start, end = behind_arch(p), _before_arch(p)
    middle = (start + end) / 2 + 0.02
    rim, legs = _rim_line(plan), plan.edges((-1, 0.36), (2, 0.36))
    sheet.over("Inner wing", plan.strip(rim, legs, -0.8, start))
    sheet.put("Front panel", _CENTRE, plan.box(-0.8, start, -0.36, 0.36))
    sheet.over("Rear inner arch", plan.box(end, 1 + (1 - _rear_arch(p)), 0.62, 0.86))
    sheet.over("Floor pan, front", plan.box(start, middle, 0.13, 0.79))
    sheet.over("Floor pan, rear", plan.box(middle, end, 0.13, 0.79))
    # Ribs, clear of the chassis legs that run under the pans.
    for low, high in ((start + 0.045, middle - 0.03), (middle + 0.03, end - 0.1)):
        for share in (0.55, 0.63, 0.71):
            sheet.outline_over(plan.box(low, high, share, share + 0.032, ease=p.s(14)))
    sheet.over("Inner sill", plan.box(start, end, 0.79, 0.86))
    name = "Boot floor" if st.rear == "boot" else "Load floor"
    sheet.put(name, _CENTRE, plan.box(end, 1.84, -0.62, 0.62))
    side = plan.edges((-1, 0.62), (2, 0.62))
    corner = plan.strip(rim, side, 2 - _rear_arch(p), 1.84)
    sheet.over("Boot floor side", corner)
    tunnel = plan.both(
        plan.edges((start - 0.02, 0.0), (start - 0.02, 0.2)),
        plan.along((start - 0.02, 0.2), (start + 0.12, 0.15), (middle, 0.13), (end, 0.13)),
        plan.edges((end, 0.13), (end, 0.0)),
    )
    sheet.put("Transmission tunnel", _CENTRE, tunnel)
    sheet.put("Heelboard", _CENTRE, plan.box(end - 0.004, end + 0.028, -0.79, 0.79))


def _rear_arch(p: Proportions) -> float:
    """How far, of the rear overhang, the wheel housing stays clear of the bumper."""
    return 1 - min(0.6, (p.arch + p.s(40)) / p.rear)


def _frame(plan: Plan) -> None:
    sheet, p = plan.sheet, plan.p
    start, end = behind_arch(p), _before_arch(p)
    middle = (start + end) / 2 + 0.02
    leg = plan.along((-0.84, 0.36), (0.0, 0.37), (start, 0.40), (start + 0.22, 0.44))
    fellow = plan.along((-0.84, 0.46), (0.0, 0.47), (start, 0.50), (start + 0.22, 0.51))
    sheet.over("Chassis leg, front", outline(leg, reverse(fellow), ease=p.s(12)))
    leg = plan.along((end - 0.08, 0.58), (end + 0.04, 0.53), (1.1, 0.5), (1.82, 0.5))
    fellow = plan.along((end - 0.08, 0.68), (end + 0.04, 0.62), (1.1, 0.59), (1.82, 0.59))
    sheet.over("Chassis leg, rear", outline(leg, reverse(fellow), ease=p.s(12)))
    sheet.over("Outrigger, front", plan.box(start + 0.006, start + 0.036, 0.5, 0.79, ease=p.s(8)))
    sheet.over("Outrigger, rear", plan.box(end - 0.04, end - 0.01, 0.68, 0.79, ease=p.s(8)))
    sheet.over("Seat crossmember", plan.box(middle - 0.018, middle + 0.018, 0.13, 0.79))
    front = plan.both(
        plan.edges((-0.1, 0.0), (-0.1, 0.3), (-0.06, 0.56), (0.08, 0.56)),
        plan.edges((0.03, 0.3), (0.03, 0.0)),
        ease=p.s(24),
    )
    sheet.put("Front crossmember", _CENTRE, front)
    sheet.put("Rear crossmember", _CENTRE, plan.box(1.36, 1.41, -0.5, 0.5, ease=p.s(8)))
    for name, station in (
        ("Jacking point, front", start + 0.05),
        ("Jacking point, rear", end - 0.075),
    ):
        sheet.over(name, plan.box(station, station + 0.028, 0.8, 0.91, ease=p.s(10)))


def _arm(plan: Plan, station: float) -> Shape:
    """A wishbone from the crossmember to a front wheel."""
    reach = plan.p.s(150) / plan.p.front
    back = plan.p.s(150) / plan.p.wheelbase
    arm = plan.edges(
        (station - reach, 0.42),
        (station - 0.02, 0.72),
        (station + 0.015, 0.72),
        (station + back, 0.42),
    )
    hole = plan.edges(
        (station - reach * 0.5, 0.46), (station - 0.0, 0.62), (station + back * 0.5, 0.46)
    )
    ring = outline(arm, ease=plan.p.s(18))
    cut = outline(hole, ease=plan.p.s(14))
    return Shape(ring.contours + cut.contours)


def _front_suspension(plan: Plan) -> None:
    sheet = plan.sheet
    bar = plan.both(
        plan.along((-0.34, 0.0), (-0.34, 0.5), (-0.3, 0.64), (-0.06, 0.68)),
        plan.along((-0.06, 0.655), (-0.27, 0.61), (-0.305, 0.48), (-0.305, 0.0)),
    )
    sheet.put("Anti-roll bar", _CENTRE, bar)
    sheet.over("Wishbone", _arm(plan, 0.0))
    rack = plan.both(
        plan.edges((-0.205, 0.0), (-0.205, 0.34), (-0.195, 0.34), (-0.185, 0.7)),
        plan.edges((-0.165, 0.7), (-0.155, 0.34), (-0.145, 0.34), (-0.145, 0.0)),
    )
    sheet.put("Steering rack", _CENTRE, rack)
    sheet.line_over(plan.edges((-0.205, 0.32), (-0.145, 0.32)))


def _rear_suspension(plan: Plan) -> None:
    sheet, p = plan.sheet, plan.p
    reach, wide = p.s(560) / p.wheelbase, 0.028
    front, rear = 1 - min(reach, 0.26), 1 + min(0.62, p.s(640) / p.rear)
    spring = plan.box(front, rear, 0.64 - wide, 0.64 + wide, ease=p.s(22))
    sheet.over("Leaf spring", spring)
    sheet.over("Suspension mount, rear", circle(*plan.at(front, 0.64), p.s(34)))
    tube, half = p.s(42) / p.wheelbase, p.s(42) / p.rear
    axle = plan.both(
        plan.edges((1 - tube, 0.0), (1 - tube, 0.78), (1 + half, 0.78)),
        plan.edges((1 + half, 0.78), (1 + half, 0.0)),
    )
    sheet.put("Rear axle", _CENTRE, axle)
    sheet.outline_of(circle(*plan.at(1, 0.0), p.s(125)))
    sheet.outline_of(circle(*plan.at(1, 0.0), p.s(95)))
    damper = plan.box(1 + half, 1 + half + p.s(230) / p.rear, 0.43, 0.48, ease=p.s(16))
    sheet.over("Rear damper", damper)


def _drive(plan: Plan) -> None:
    sheet, p = plan.sheet, plan.p
    start = behind_arch(p)
    sump = plan.both(
        plan.edges((-0.5, 0.0), (-0.5, 0.2), (-0.08, 0.22), (0.06, 0.2), (0.06, 0.0)), ease=p.s(30)
    )
    sheet.put("Engine", _CENTRE, sump)
    sheet.put("Sump", _CENTRE, plan.box(-0.45, -0.13, -0.15, 0.15, ease=p.s(34)))
    box = plan.both(
        plan.edges((0.06, 0.0), (0.06, 0.19)),
        plan.along((0.06, 0.19), (0.12, 0.13), (0.2, 0.095), (start + 0.16, 0.07)),
        plan.edges((start + 0.16, 0.07), (start + 0.16, 0.0)),
    )
    sheet.put("Gearbox", _CENTRE, box)
    sheet.put("Radiator", _CENTRE, plan.box(-0.72, -0.66, -0.3, 0.3, ease=p.s(6)))
    shaft = plan.box(start + 0.16, 1 - p.s(110) / p.wheelbase, -0.035, 0.035, ease=p.s(8))
    sheet.put("Propshaft", _CENTRE, shaft)
    tank = plan.box(1.43, 1.8, 0.06, 0.48, ease=p.s(40))
    sheet.put("Fuel tank", _CENTRE, tank)
    x, y = plan.at(1.62, -0.235)
    radius = min(p.s(250), p.width * 0.13, p.rear * 0.22)
    sheet.put("Spare wheel well", _CENTRE, circle(x, y, radius))
    sheet.outline_of(circle(x, y, radius * 0.8))
    sheet.outline_of(circle(x, y, radius * 0.2))


def pipe(stroke: Stroke, width: float) -> Shape:
    """A pipe of some width along a line that runs more level than upright."""
    half = width / 2
    return outline(shifted(stroke, 0, -half), reverse(shifted(stroke, 0, half)))


def _lines_below(plan: Plan) -> None:
    sheet, p = plan.sheet, plan.p
    start, end = behind_arch(p), _before_arch(p)

    def run(*spots: Spot) -> Stroke:
        return plan.along(*spots)

    down = run((-0.2, -0.25), (0.02, -0.26), (start, -0.24), (start + 0.18, -0.24))
    sheet.put("Exhaust, front pipe", _CENTRE, pipe(down, p.s(52)))
    box = plan.box(start + 0.18, start + 0.4, -0.31, -0.17, ease=p.s(40))
    tail = run(
        (start + 0.4, -0.24), (end, -0.25), (1.0, -0.32), (1.3, -0.46), (1.6, -0.54), (1.97, -0.54)
    )
    sheet.put("Exhaust, tailpipe", _CENTRE, pipe(tail, p.s(46)))
    sheet.put("Exhaust silencer", _CENTRE, box)
    brake = run((0.02, 0.31), (start + 0.1, 0.32), (end, 0.3), (0.97, 0.22))
    sheet.put("Brake lines", _CENTRE, pipe(brake, p.s(22)))
    fuel = run((-0.05, 0.24), (start + 0.05, 0.255), (end, 0.235), (1.2, 0.3), (1.45, 0.3))
    sheet.put("Fuel lines", _CENTRE, pipe(fuel, p.s(22)))
    cable = run((start + 0.3, -0.075), (end, -0.08), (0.96, -0.12))
    sheet.put("Handbrake cable", _CENTRE, pipe(cable, p.s(20)))


def _wheels(plan: Plan) -> None:
    sheet, p = plan.sheet, plan.p
    wide = p.s(168) / (p.width / 2)
    for name, station in (("Front wheel", 0.0), ("Rear wheel", 1.0)):
        x = plan.x(station)
        high = plan.at(station, 0.93).y
        low = plan.at(station, 0.93 - wide).y
        ring = [(x - p.wheel, high), (x + p.wheel, high), (x + p.wheel, low), (x - p.wheel, low)]
        sheet.over(name, rounded(ring, p.s(46)))
        for part in (-0.5, 0.0, 0.5):
            mark = straight((x + p.wheel * part, high + 12), (x + p.wheel * part, low - 12))
            sheet.line_over(mark)
