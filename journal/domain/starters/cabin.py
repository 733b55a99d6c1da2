"""The cabin from above without its roof: door cards folded out, the headlining laid beside."""

from journal.domain.drawing import Side
from journal.domain.shapes import Point, Shape, circle, rounded, with_hole
from journal.domain.starters.cabin_doors import draw_door_cards, draw_headlining
from journal.domain.starters.floor_plan import FloorPlan
from journal.domain.starters.joins import outline
from journal.domain.starters.lines import spline, straight
from journal.domain.starters.proportions import Proportions
from journal.domain.starters.sheet import Draft

_LEFT, _RIGHT, _CENTRE = Side.LEFT, Side.RIGHT, Side.CENTRE


def draw_cabin(draft: Draft, p: Proportions) -> None:
    """Draw the cabin on a new view of its own."""
    plan = FloorPlan.on_new_sheet(draft, p)
    _shell(plan)
    _front_floor(plan)
    _rear_floor(plan)
    _dashboard(plan)
    _seats(plan)
    _controls(plan)
    _belts_and_wires(plan)
    draw_door_cards(plan)
    draw_headlining(plan)


def _shell(plan: FloorPlan) -> None:
    """Posts, sill treads and bulkhead: the edge of the floor."""
    sheet, st = plan.sheet, plan.p.style
    front, post = st.door_front + 0.01, st.b_post
    sheet.put("Bulkhead", _CENTRE, plan.box(st.cowl, st.cowl + 0.03, -0.93, 0.93))
    sheet.over("A-post", plan.box(st.cowl + 0.0, front, 0.82, 0.96, ease=10))
    sheet.over("B-post", plan.box(post - 0.016, post + 0.03, 0.82, 0.96, ease=10))
    if st.doors == 4:
        rear = st.door_rear - 0.09
        sheet.over("Sill tread, rear", plan.box(post + 0.03, rear, 0.84, 0.95))
        sheet.over("C-post", plan.box(rear, rear + 0.06, 0.8, 0.96, ease=10))
    sheet.over("Sill tread, front", plan.box(front, post - 0.016, 0.84, 0.95))


def _front_floor(plan: FloorPlan) -> None:
    sheet, st = plan.sheet, plan.p.style
    start, end = st.cowl + 0.03, plan.front_end
    sheet.over("Carpet, front", plan.box(start, end, 0.12, 0.84))
    tunnel_end = plan.rear_end if plan.has_rear_seat else end
    sheet.put("Tunnel carpet", _CENTRE, plan.box(start, tunnel_end, -0.12, 0.12))


def _rear_floor(plan: FloorPlan) -> None:
    sheet, st = plan.sheet, plan.p.style
    end = plan.front_end
    if plan.has_rear_seat:
        sheet.over("Carpet, rear", plan.box(end, plan.rear_end, 0.12, 0.84))
        start = st.door_rear - 0.03 if st.doors == 4 else st.b_post + 0.03
        sheet.over("Side trim, rear", plan.box(start, plan.cabin_end, 0.8, 0.95))
    if st.rear == "hatch":
        start = plan.seat_back_end if plan.has_rear_seat else end
        floor = plan.box(start, plan.cabin_end, -0.8, 0.8)
        sheet.put("Load floor", _CENTRE, floor)
        for share in (0.15, 0.3, 0.45, 0.6):
            sheet.line_over(plan.edges((start + 0.03, share), (plan.cabin_end - 0.03, share)))
        axle = min(0.16, (plan.p.arch + plan.p.s(20)) / plan.p.wheelbase)
        sheet.over("Rear inner arch", plan.box(1 - axle, plan.after_axle(axle), 0.6, 0.82, ease=60))
        if not plan.has_rear_seat:
            trim = plan.box(st.b_post + 0.03, plan.cabin_end, 0.8, 0.95)
            sheet.over("Side trim, rear", trim)
    elif st.rear == "bed" or not st.roof:
        sheet.put("Cab back panel", _CENTRE, plan.box(plan.front_end, plan.cabin_end, -0.95, 0.95))
    else:
        sheet.put(
            "Parcel shelf",
            _CENTRE,
            plan.box(plan.seat_back_end, plan.cabin_end, -0.8, 0.8, ease=20),
        )
        speaker = plan.at((plan.seat_back_end + plan.cabin_end) / 2, 0.55)
        sheet.outline_over(circle(*speaker, plan.p.s(50)))


def _dashboard(plan: FloorPlan) -> None:
    sheet, st, p = plan.sheet, plan.p.style, plan.p
    start = st.cowl + 0.03
    edge = spline(
        plan.at(start + 0.085, 0.82),
        plan.at(start + 0.1, 0.4),
        plan.at(start + 0.1, 0.0),
        plan.at(start + 0.1, -0.4),
        plan.at(start + 0.085, -0.82),
    )
    top = straight(plan.at(start, -0.82), plan.at(start, 0.82))
    sheet.put("Dashboard", _CENTRE, outline(edge, top, ease=p.s(20)))
    sheet.put("Instruments", _CENTRE, plan.box(start + 0.04, start + 0.094, -0.56, -0.22, ease=20))
    for share in (-0.47, -0.31):
        sheet.outline_of(circle(*plan.at(start + 0.067, share), p.s(48)))
    sheet.put("Glove box", _CENTRE, plan.box(start + 0.045, start + 0.088, 0.24, 0.7, ease=14))
    sheet.put("Heater", _CENTRE, plan.box(start + 0.1, start + 0.14, -0.1, 0.1, ease=10))


def _seats(plan: FloorPlan) -> None:
    sheet = plan.sheet
    end = plan.front_end - 0.015
    start = end - plan.seat
    squab = end - plan.seat * 0.26
    sheet.over("Front seat", plan.box(start, end, 0.17, 0.77, ease=60))
    sheet.line_over(plan.edges((squab, 0.19), (squab, 0.75)))
    for share in (0.3, 0.39, 0.47, 0.55, 0.64):
        sheet.line_over(plan.edges((start + 0.025, share), (squab - 0.012, share)))
    if not plan.has_rear_seat:
        return
    cushion, back, rear = plan.seat_start, plan.seat_back, plan.seat_back_end
    sheet.put("Rear seat", _CENTRE, plan.box(cushion, back, -0.78, 0.78, ease=50))
    sheet.put("Rear seat back", _CENTRE, plan.box(back, rear, -0.78, 0.78, ease=40))
    for share in (0.12, 0.25, 0.38, 0.51, 0.64):
        sheet.line_over(plan.edges((cushion + 0.02, share), (back - 0.012, share)))


def _controls(plan: FloorPlan) -> None:
    sheet, st, p = plan.sheet, plan.p.style, plan.p
    start = st.cowl + 0.03
    column = straight(
        plan.at(start + 0.1, -0.365),
        plan.at(start + 0.15, -0.365),
        plan.at(start + 0.15, -0.415),
        plan.at(start + 0.1, -0.415),
    )
    sheet.put("Steering column", _CENTRE, outline(column))
    hub = plan.at(start + 0.17, -0.39)
    sheet.put("Pedals", _CENTRE, plan.box(start + 0.004, start + 0.028, -0.5, -0.2, ease=8))
    sheet.put("Steering wheel", _CENTRE, _steering_wheel(hub, p))
    lever = plan.at(start + 0.19, 0.0)
    sheet.put("Gear lever", _CENTRE, circle(*lever, p.s(34)))
    sheet.outline_of(circle(*lever, p.s(60)))
    brake = plan.front_end - 0.13
    sheet.put("Handbrake", _CENTRE, plan.box(brake - 0.05, brake + 0.05, -0.035, 0.035, ease=12))


def _steering_wheel(hub: Point, p: Proportions) -> Shape:
    """Rim and two spokes: the two openings between them are holes."""
    outer, inner, spoke = p.s(190), p.s(164), p.s(26)
    boss = p.s(46)
    holes = []
    for way in (-1, 1):
        ring = [
            (hub.x + way * spoke, hub.y - inner * 0.97),
            (hub.x + way * inner * 0.72, hub.y - inner * 0.66),
            (hub.x + way * inner * 0.98, hub.y),
            (hub.x + way * inner * 0.72, hub.y + inner * 0.66),
            (hub.x + way * spoke, hub.y + inner * 0.97),
            (hub.x + way * boss, hub.y),
        ]
        holes.append(rounded(ring, p.s(40)))
    return with_hole(circle(*hub, outer), *holes)


def _belts_and_wires(plan: FloorPlan) -> None:
    sheet, st, p = plan.sheet, plan.p.style, plan.p
    spot = plan.at(st.b_post + 0.007, 0.89)
    sheet.over("Seat-belt mount, front", circle(*spot, p.s(24)))
    sheet.over("Seat-belt mount, sill", circle(*plan.at(plan.front_end - 0.045, 0.81), p.s(22)))
    sheet.over("Seat-belt mount, tunnel", circle(*plan.at(plan.front_end - 0.045, 0.085), p.s(22)))
    if plan.has_rear_seat:
        back = (plan.seat_back + plan.seat_back_end) / 2
        sheet.over("Seat-belt mount, rear", circle(*plan.at(back, 0.7), p.s(24)))
    loom = plan.box(st.cowl + 0.14, plan.front_end - 0.06, -0.845, -0.825, ease=2)
    sheet.put("Wiring loom, cabin", _CENTRE, loom)
