"""The car seen from above, its nose to the left: its left side lies low on the view."""

from journal.domain.drawing import Side, Weight
from journal.domain.shapes import Stroke
from journal.domain.starters.joins import outline
from journal.domain.starters.lines import at_x, between_x, reverse, straight
from journal.domain.starters.plan import Plan, body_edge, front_bumper, inner_edge, rear_bumper
from journal.domain.starters.proportions import Proportions
from journal.domain.starters.sheet import Sheet

_CENTRE = Side.CENTRE


def draw_top(sheet: Sheet, p: Proportions) -> None:
    """Draw all that is seen of the car from above."""
    plan = Plan(sheet, p, down=1)
    edge, inner = body_edge(plan), inner_edge(plan)
    _bumpers(plan)
    _sides(plan, edge, inner)
    _bonnet(plan, inner)
    _screen(plan, inner)
    if p.style.roof:
        _roof(plan, inner)
    if p.style.rear == "boot":
        _boot(plan, inner)
    elif p.style.rear == "hatch":
        _hatch(plan, inner)
    else:
        _bed(plan, inner)
    if not p.style.roof:
        _cockpit(plan, inner)
    _lamps(plan)
    middle = plan.middle
    sheet.line(straight((40, middle), (sheet.view.width - 40, middle)), Weight.CENTRE)


def _bumpers(plan: Plan) -> None:
    front = front_bumper(plan)
    plan.sheet.put("Front bumper", _CENTRE, front)
    rear = rear_bumper(plan)
    plan.sheet.put("Rear bumper", _CENTRE, rear)


def _sides(plan: Plan, edge: Stroke, inner: Stroke) -> None:
    sheet, st = plan.sheet, plan.p.style
    front = plan.along((-0.925, 0.0), (-0.918, 0.5), (-0.89, 0.80))
    nose = between_x(front, plan.x(-0.9), plan.x(-0.89))
    tip = outline(
        between_x(edge, plan.x(-0.89), plan.x(st.door_front)),
        between_x(inner, plan.x(st.door_front), plan.x(-0.9)),
        nose,
    )
    sheet.over("Front wing", tip)
    sheet.over("Front door", plan.strip(edge, inner, st.door_front, st.b_post))
    behind = st.b_post
    if st.doors == 4:
        sheet.over("Rear door", plan.strip(edge, inner, st.b_post, st.door_rear))
        behind = st.door_rear
    name = {"boot": "Rear wing", "hatch": "Rear wing" if st.doors == 4 else "Side panel"}
    if st.rear == "bed":
        cab = plan.strip(edge, inner, st.b_post, st.deck)
        sheet.over("B-post", cab)
        behind = st.deck + 0.008
    wing = plan.strip(edge, inner, behind, 1.92)
    sheet.over(name.get(st.rear, "Bed side"), wing)


def _bonnet(plan: Plan, inner: Stroke) -> None:
    st = plan.p.style
    rear = st.cowl - 0.055
    nose = plan.along((-0.925, 0.0), (-0.915, 0.4), (-0.9, 0.64))
    side = between_x(inner, plan.x(-0.9), plan.x(rear))
    back = plan.along((rear, _share(plan, inner, rear)), (rear - 0.02, 0.5), (rear - 0.03, 0.0))
    plan.sheet.put("Bonnet", _CENTRE, plan.both(nose, side, back))
    crease = plan.along((-0.88, 0.24), (-0.4, 0.3), (rear - 0.05, 0.375))
    plan.sheet.line_over(crease)
    foot = _screen_foot(plan)
    side = between_x(inner, plan.x(rear), plan.x(st.cowl + 0.02))
    scuttle = plan.both(reverse(back), side, foot)
    plan.sheet.put("Scuttle panel", _CENTRE, scuttle)


def _share(plan: Plan, line: Stroke, station: float) -> float:
    """How far out a line lies at a station, as a share of half the width."""
    y = at_x(line, plan.x(station)).y
    return (y - plan.middle) * plan.down / (plan.p.width / 2)


def _screen_foot(plan: Plan) -> Stroke:
    """The windscreen's foot, from its left corner to the centre line."""
    cowl = plan.p.style.cowl
    return plan.along((cowl + 0.014, 0.755), (cowl - 0.015, 0.45), (cowl - 0.024, 0.0))


def _screen_head(plan: Plan) -> Stroke:
    """The windscreen's head, from the centre line to its left corner."""
    top = plan.p.style.screen_top
    return plan.along((top - 0.02, 0.0), (top - 0.012, 0.35), (top, 0.58))


def _screen(plan: Plan, inner: Stroke) -> None:
    st, sheet = plan.p.style, plan.sheet
    foot, head = _screen_foot(plan), _screen_head(plan)
    post = outline(
        between_x(inner, plan.x(st.cowl + 0.02), plan.x(st.door_front)),
        plan.edges((st.screen_top + 0.02, 0.645), (st.screen_top, 0.58), (st.cowl + 0.014, 0.755)),
    )
    sheet.over("A-post", post)
    glass = plan.both(reverse(foot), straight(foot.start, head.end), reverse(head))
    sheet.put("Windscreen", _CENTRE, glass)


def _roof(plan: Plan, inner: Stroke) -> None:
    st, sheet = plan.p.style, plan.sheet
    start, end = st.screen_top, st.roof_end
    middle = (start + end) / 2
    wide = 0.76 if st.rear == "hatch" and st.doors == 2 else 0.68
    side = plan.along((start + 0.02, 0.645), (middle, wide), (end - 0.02, 0.64 + (wide - 0.68)))
    front = plan.along((start - 0.02, 0.0), (start - 0.012, 0.35), (start, 0.58))
    rear = plan.along((end, 0.58 + (wide - 0.68)), (end + 0.014, 0.35), (end + 0.022, 0.0))
    _side_glass(plan, side, inner)
    sheet.put("Roof", _CENTRE, plan.both(front, side, rear))
    sheet.line_over(plan.along((start + 0.04, 0.6), (middle, wide - 0.045), (end - 0.05, 0.59)))


def _side_glass(plan: Plan, side: Stroke, inner: Stroke) -> None:
    """Windows and posts between the roof's edge and the waist."""
    st, sheet = plan.p.style, plan.sheet
    a, b = plan.x(st.door_front), plan.x(st.b_post - 0.005)
    sheet.over(
        "Front door glass", outline(between_x(inner, a, b), between_x(side, b, side.start.x))
    )
    post = st.b_post + 0.012
    c, last = plan.x(post), side.end
    end_x = plan.x(min(st.side_end, 1.9))
    foot = at_x(inner, end_x)
    if st.rear == "bed":
        _posts_behind_cab(plan, side, inner, b)
        return
    if st.doors == 2 and st.rear == "hatch":
        panel = outline(between_x(inner, b, plan.x(1.93)), reverse(between_x(side, b, last.x)))
        sheet.over("D-post", panel)
        return
    sheet.over("B-post", plan.strip(inner, side, st.b_post - 0.005, post))
    name = "Rear door glass" if st.doors == 4 else "Rear side glass"
    if st.rear == "boot":
        top = last.x - plan.p.s(60)
        glass = outline(between_x(inner, c, foot.x), between_x(side, top, c))
        sheet.over(name, glass)
        _rear_window(plan, side, inner, foot.x, top)
    else:
        sheet.over(name, plan.strip(inner, side, post, st.door_rear - 0.01))
        sheet.over("C-post", plan.strip(inner, side, st.door_rear - 0.01, st.door_rear + 0.03))
        top = last.x - plan.p.s(60)
        d = plan.x(st.door_rear + 0.03)
        glass = outline(between_x(inner, d, foot.x), between_x(side, top, d))
        sheet.over("Rear side glass", glass)
        pillar = outline(
            between_x(inner, foot.x, plan.x(1.92)),
            plan.edges((st.roof_end, 0.58)),
            between_x(side, last.x, top),
        )
        sheet.over("D-post", pillar)


def _rear_window(plan: Plan, side: Stroke, inner: Stroke, foot_x: float, top_x: float) -> None:
    st, sheet = plan.p.style, plan.sheet
    low = plan.x(st.deck)
    edge = between_x(inner, foot_x, low)
    wide = _share(plan, inner, st.deck) - 0.1
    post = outline(
        edge,
        plan.edges((st.deck, wide), (st.roof_end, 0.58)),
        between_x(side, side.end.x, top_x),
    )
    sheet.over("C-post", post)
    head = plan.along((st.roof_end + 0.022, 0.0), (st.roof_end + 0.014, 0.35), (st.roof_end, 0.58))
    foot = plan.along((st.deck, wide), (st.deck + 0.03, wide * 0.6), (st.deck + 0.04, 0.0))
    sheet.put("Rear window", _CENTRE, plan.both(head, foot))


def _posts_behind_cab(plan: Plan, side: Stroke, inner: Stroke, start: float) -> None:
    st, sheet = plan.p.style, plan.sheet
    back = plan.x(st.deck)
    foot = at_x(inner, back)
    window = plan.both(
        plan.along((st.roof_end + 0.022, 0.0), (st.roof_end + 0.014, 0.35), (st.roof_end, 0.58)),
        plan.edges((st.deck, 0.6), (st.deck, 0.0)),
    )
    pillar = outline(
        between_x(inner, start, foot.x),
        plan.edges((st.deck, 0.6), (st.roof_end, 0.58)),
        between_x(side, side.end.x, start),
    )
    sheet.over("C-post", pillar)
    sheet.put("Rear window", _CENTRE, window)


def _boot(plan: Plan, inner: Stroke) -> None:
    st, sheet = plan.p.style, plan.sheet
    wide = _share(plan, inner, st.deck) - 0.1
    foot = plan.along((st.deck + 0.04, 0.0), (st.deck + 0.03, wide * 0.6), (st.deck, wide))
    first = st.deck + 0.085
    lid_front = plan.along(
        (first + 0.02, 0.0), (first + 0.015, 0.4), (first, _share(plan, inner, first))
    )
    side = between_x(inner, plan.x(st.deck), lid_front.end.x)
    deck = plan.both(foot, straight(foot.end, side.start), side, reverse(lid_front))
    sheet.put("Rear deck panel", _CENTRE, deck)
    run = between_x(inner, lid_front.end.x, plan.x(1.895))
    end = plan.along((1.895, _share(plan, inner, 1.895)), (1.91, 0.4), (1.915, 0.0))
    sheet.put("Boot lid", _CENTRE, plan.both(lid_front, run, end))
    tail = plan.along((1.945, 0.0), (1.942, 0.5), (1.92, 0.83))
    corner = between_x(inner, plan.x(1.92), plan.x(1.895))
    panel = plan.both(
        reverse(end),
        reverse(corner),
        straight(corner.start, tail.end),
        reverse(tail),
    )
    sheet.put("Rear panel", _CENTRE, panel)
    middle = (first + 1.92) / 2
    sheet.line_over(plan.along((first + 0.06, 0.45), (middle, 0.43), (1.86, 0.38)))


def _hatch(plan: Plan, inner: Stroke) -> None:
    st, sheet = plan.p.style, plan.sheet
    wide = 0.66 if st.doors == 2 else 0.58
    head = plan.along((st.roof_end + 0.022, 0.0), (st.roof_end + 0.014, 0.35), (st.roof_end, wide))
    foot = plan.along((1.92, _share(plan, inner, 1.92)), (1.94, 0.4), (1.945, 0.0))
    if st.doors == 4:
        sheet.put("Tailgate", _CENTRE, plan.both(head, foot))
        glass = plan.both(
            plan.along((st.roof_end + 0.06, 0.0), (st.roof_end + 0.05, 0.5)),
            plan.along((1.89, 0.58), (1.905, 0.3), (1.908, 0.0)),
            ease=plan.p.s(20),
        )
        sheet.put("Rear window", _CENTRE, glass)
    else:
        half = outline(head, foot)
        sheet.over("Back door", half)


def _bed(plan: Plan, inner: Stroke) -> None:
    st, sheet = plan.p.style, plan.sheet
    start = st.deck + 0.008
    front = plan.edges((start, 0.0), (start, _share(plan, inner, start)))
    side = between_x(inner, plan.x(start), plan.x(1.9))
    end = plan.edges((1.9, _share(plan, inner, 1.9)), (1.9, 0.0))
    sheet.put("Load floor", _CENTRE, plan.both(front, side, end))
    sheet.over("Rear inner arch", plan.box(0.87, 1.13, 0.6, 0.84, ease=plan.p.s(60)))
    for share in (0.1, 0.25, 0.4, 0.55):
        sheet.line_over(plan.edges((start + 0.02, share), (1.88, share)))
    tail = plan.along((1.925, _share(plan, inner, 1.9)), (1.94, 0.4), (1.945, 0.0))
    sheet.put("Tailboard", _CENTRE, plan.both(reverse(end), straight(end.start, tail.start), tail))


def _cockpit(plan: Plan, inner: Stroke) -> None:
    st, sheet, p = plan.p.style, plan.sheet, plan.p
    end = st.side_end
    back = plan.edges((end, 0.0), (end, _share(plan, inner, end)))
    side = between_x(inner, plan.x(end), plan.x(st.door_front))
    dash = plan.edges((st.screen_top + 0.02, 0.645), (st.screen_top + 0.02, 0.0))
    sheet.put("Tunnel carpet", _CENTRE, plan.both(back, side, dash))
    edge = plan.edges((0, 0.1), (1, 0.1))
    sheet.over("Carpet, front", plan.strip(inner, edge, st.screen_top + 0.02, end))
    board = plan.both(
        plan.along(
            (st.screen_top - 0.02, 0.0), (st.screen_top - 0.012, 0.35), (st.screen_top, 0.58)
        ),
        plan.edges((st.screen_top + 0.02, 0.645), (st.screen_top + 0.05, 0.64)),
        plan.along(
            (st.screen_top + 0.05, 0.64), (st.screen_top + 0.045, 0.3), (st.screen_top + 0.04, 0.0)
        ),
    )
    sheet.put("Dashboard", _CENTRE, board)
    sheet.over("Front seat", plan.box(end - 0.26, end - 0.015, 0.12, 0.72, ease=p.s(70)))
    hood = plan.both(
        plan.edges((end, 0.0), (end, _share(plan, inner, end))),
        between_x(inner, plan.x(end), plan.x(st.deck)),
        plan.along(
            (st.deck, _share(plan, inner, st.deck)), (st.deck + 0.075, 0.4), (st.deck + 0.105, 0)
        ),
    )
    sheet.put("Hood", _CENTRE, hood)


def _lamps(plan: Plan) -> None:
    st, sheet, s = plan.p.style, plan.sheet, plan.p.s
    box = plan.at(st.door_front + 0.05, 0.93)
    mirror = straight(
        box,
        (box.x + s(90), box.y),
        (box.x + s(80), box.y + s(112)),
        (box.x + s(15), box.y + s(108)),
    )
    sheet.over("Door mirror", outline(mirror, ease=s(24)))
    plan.sheet.over("Headlamp", plan.box(-0.925, -0.885, 0.56, 0.78, ease=plan.p.s(16)))
    plan.sheet.over("Tail lamp", plan.box(1.905, 1.95, 0.6, 0.8, ease=plan.p.s(12)))
