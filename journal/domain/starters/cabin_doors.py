"""Door cards folded out beside the cabin, and the headlining laid behind it."""

from journal.domain.drawing import Side
from journal.domain.shapes import rounded
from journal.domain.starters.floor_plan import FloorPlan, card_height, headlining_length
from journal.domain.starters.lines import spline, straight
from journal.domain.starters.proportions import MARGIN


def draw_door_cards(plan: FloorPlan) -> None:
    """Draw each door from inside, its upper edge away from the car."""
    st = plan.p.style
    _door(plan, "front", st.door_front + 0.015, st.b_post - 0.012)
    if st.doors == 4:
        _door(plan, "rear", st.b_post + 0.012, st.door_rear - 0.035)


def _door(plan: FloorPlan, which: str, start: float, end: float) -> None:
    sheet, p = plan.sheet, plan.p
    near = plan.at(start, 1.0).y + MARGIN * 0.4
    far = near + card_height(p)
    left, right = plan.x(start), plan.x(end)
    frame, inset = p.s(28), p.s(30)
    shell = rounded([(left, near), (right, near), (right, far), (left, far)], frame)
    sheet.over(f"{which.capitalize()} door", shell)
    ring = [
        (left + inset, near + inset),
        (right - inset, near + inset),
        (right - inset, far - inset * 0.7),
        (left + inset, far - inset * 0.7),
    ]
    sheet.over(f"Door card, {which}", rounded(ring, frame))
    wide, high = right - left, far - near
    rest = [
        (left + wide * 0.3, near + high * 0.6),
        (left + wide * 0.78, near + high * 0.6),
        (left + wide * 0.78, near + high * 0.68),
        (left + wide * 0.3, near + high * 0.68),
    ]
    sheet.outline_over(rounded(rest, p.s(16)))
    sheet.outline_over(
        rounded(
            [
                (left + wide * 0.16, near + high * 0.12),
                (left + wide * 0.84, near + high * 0.12),
                (left + wide * 0.84, near + high * 0.34),
                (left + wide * 0.16, near + high * 0.34),
            ],
            p.s(30),
        )
    )
    for share in (0.44, 0.52):
        sheet.line_over(
            straight(
                (left + inset * 1.8, near + high * share),
                (right - inset * 1.8, near + high * share),
            )
        )
    winder = left + wide * 0.2, near + high * 0.64
    sheet.line_over(
        spline(
            winder,
            (winder[0] + p.s(24), winder[1] - p.s(44)),
            (winder[0] + p.s(30), winder[1] - p.s(92)),
        )
    )


def draw_headlining(plan: FloorPlan) -> None:
    """Draw the headlining behind the cabin, seen from below and turned over."""
    sheet, p = plan.sheet, plan.p
    length = headlining_length(p)
    if not length:
        return
    left = plan.x(plan.cabin_end) + MARGIN
    half = p.width / 2 * (0.7 if p.style.rear == "hatch" and p.style.doors == 2 else 0.62)
    middle = sheet.middle_y
    ring = [
        (left, middle - half * 0.93),
        (left + length * 0.5, middle - half),
        (left + length, middle - half * 0.95),
        (left + length, middle + half * 0.95),
        (left + length * 0.5, middle + half),
        (left, middle + half * 0.93),
    ]
    sheet.put("Headlining", Side.CENTRE, rounded(ring, p.s(90)))
    count = max(2, round(length / p.s(420)))
    for n in range(1, count + 1):
        x = left + length * n / (count + 1)
        sheet.line(straight((x, middle - half * 0.9), (x, middle + half * 0.9)))
