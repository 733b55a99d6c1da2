"""The car seen from behind; its left is on the left."""

from journal.domain.drawing import Side
from journal.domain.shapes import Stroke, circle, rounded
from journal.domain.starters.ends import Face, draw_wheels
from journal.domain.starters.joins import outline
from journal.domain.starters.lines import mirrored, reverse, shifted, straight
from journal.domain.starters.proportions import Proportions
from journal.domain.starters.sheet import Sheet

_CENTRE = Side.CENTRE


def draw_rear(sheet: Sheet, p: Proportions) -> None:
    """Draw all that is seen of the car from behind."""
    face = Face(sheet, p, out=-1)
    draw_wheels(face, "Rear wheel")
    if p.style.rear == "boot":
        _top_of_saloon(face)
        _wings(face)
        _boot(face)
    elif p.style.rear == "bed":
        _cab(face)
        _wings(face)
        _tailboard(face)
    else:
        _wings(face)
        _shell(face)
        if p.style.doors == 4:
            _tailgate(face)
        else:
            _back_doors(face)
    _low(face)


def _waist(face: Face) -> float:
    st = face.p.style
    return st.tail if st.rear == "boot" else st.waist


def _wings(face: Face) -> None:
    """The sides of the body up to the waist, with the panel between them."""
    st, sheet = face.p.style, face.sheet
    top = _waist(face)
    outer = face.along(
        (0.7, top + 2),
        (0.86, top - 22),
        (0.96, top - (top - 600) * 0.34),
        (1.0, 600),
        (0.985, 420),
        (0.95, 270),
    )
    ring = face.edges((0.95, 270), (0.9, 270), (0.88, 400), (0.7, 400))
    name = {"boot": "Rear wing", "bed": "Bed side"}.get(st.rear, "Rear wing")
    if st.rear == "hatch" and st.doors == 2:
        name = "Side panel"
    sheet.across(name, outline(outer, ring), side=Side.LEFT)
    panel = outline(face.edges((-0.7, top + 2), (0.7, top + 2), (0.7, 400), (-0.7, 400)))
    sheet.put("Rear panel", _CENTRE, panel)
    sheet.across(
        "Door mirror", face.box(0.865, 1.03, st.waist - 42, st.waist + 48, ease=face.p.s(26))
    )


def _head(face: Face) -> Stroke:
    top = face.p.style.roof_end_height
    return face.across((0.585, top - 22), (0.3, top - 6), (0.0, top))


def _crown(face: Face, share: float, height: float) -> Stroke:
    """The roof's upper edge, from where it leaves the post."""
    top = face.p.style.height
    return face.across((share, height), (share * 0.62, height + (top - height) * 0.78), (0.0, top))


def _top_of_saloon(face: Face) -> None:
    st, sheet, s = face.p.style, face.sheet, face.p.s
    if not st.roof:
        _hood(face)
        return
    low = st.deck_height
    head = _head(face)
    crown = _crown(face, 0.665, st.roof_end_height - 30)
    sheet.put("Roof", _CENTRE, outline(crown, reverse(shifted(head, 0, face.p.s(30)))))
    foot = face.across((0.74, low - 8), (0.4, low + 4), (0.0, low + 8))
    edge = face.along(
        (0.665, st.roof_end_height - 30),
        (0.78, (st.roof_end_height + low) / 2 + 10),
        (0.87, st.waist + 2),
        (0.9, st.tail - 40),
    )
    # The post reaches a little under the glass, whose corners are round.
    post = outline(
        face.edges((0.535, st.roof_end_height - 22), (0.665, st.roof_end_height - 30)),
        edge,
        face.edges((0.74, st.tail - 40), (0.69, low - 8)),
    )
    sheet.across("C-post", post)
    window = outline(head, reverse(foot), ease=s(40))
    deck = outline(foot, face.edges((-0.74, st.tail - 30), (0.74, st.tail - 30)))
    sheet.put("Rear deck panel", _CENTRE, deck)
    sheet.put("Rear window", _CENTRE, window)


def _hood(face: Face) -> None:
    st, sheet = face.p.style, face.sheet
    top = st.screen_height
    head = face.across((0.6, top - 22), (0.3, top - 4), (0.0, top))
    foot = face.across((0.72, st.waist), (0.4, st.waist), (0.0, st.waist))
    post = outline(
        straight(head.start, face.at(0.655, top - 16)),
        face.edges(
            (0.655, top - 16), (0.83, st.waist - 40), (0.68, st.waist - 40), (0.56, top - 30)
        ),
    )
    sheet.across("A-post", post)
    sheet.put("Windscreen", _CENTRE, outline(head, reverse(foot), ease=face.p.s(30)))
    fold = face.across(
        (0.86, st.waist - 60), (0.78, st.waist + 36), (0.45, st.waist + 84), (0.0, st.waist + 96)
    )
    sheet.put("Hood", _CENTRE, outline(fold))


def _boot(face: Face) -> None:
    st, sheet, s = face.p.style, face.sheet, face.p.s
    top = face.across((0.7, st.tail + 2), (0.4, st.deck_height - 24), (0.0, st.deck_height - 16))
    side = face.along((-0.7, st.tail + 2), (-0.665, 700), (-0.64, 575))
    low = face.across((0.64, 575), (0.3, 566), (0.0, 564))
    back = face.along((0.64, 575), (0.665, 700), (0.7, st.tail + 2))
    lid = outline(top, side, reverse(low), back, ease=s(24))
    sheet.put("Boot lid", _CENTRE, lid)
    sheet.line(face.across((0.66, st.tail - 14), (0.3, st.tail - 2), (0.0, st.tail)))
    handle = rounded(
        [face.at(*q) for q in ((0.1, 640), (-0.1, 640), (-0.1, 616), (0.1, 616))], s(10)
    )
    sheet.outline_of(handle)


def _shell(face: Face) -> None:
    """Roof and rear posts of a body that ends upright."""
    st, sheet = face.p.style, face.sheet
    wide = 0.76 if st.doors == 2 else 0.665
    end = st.roof_end_height
    crown = _crown(face, wide, end - 20)
    head = face.across((wide - 0.08, end - 30), (0.3, end - 12), (0.0, end - 6))
    sheet.put("Roof", _CENTRE, outline(crown, reverse(shifted(head, 0, face.p.s(30)))))
    top = _waist(face)
    edge = face.along(
        (wide, end - 20), ((wide + 0.89) / 2 + 0.015, (end + top) / 2), (0.86, top - 22)
    )
    post = outline(straight(head.start, edge.start), edge, face.edges((0.7, top + 2), (0.7, top)))
    sheet.across("D-post", post)


def _tailgate(face: Face) -> None:
    st, sheet, s = face.p.style, face.sheet, face.p.s
    end = st.roof_end_height
    head = face.across((0.585, end - 30), (0.3, end - 12), (0.0, end - 6))
    side = face.along((-0.585, end - 30), (-0.7, st.waist), (-0.665, 470))
    gate = outline(
        head,
        side,
        reverse(face.across((0.665, 470), (0.3, 464), (0.0, 462))),
        reverse(mirrored(side, sheet.middle_x)),
        ease=s(20),
    )
    sheet.put("Tailgate", _CENTRE, gate)
    glass = outline(
        face.across((0.53, end - 80), (0.3, end - 64), (0.0, end - 60)),
        reverse(face.across((0.62, st.waist + 42), (0.3, st.waist + 36), (0.0, st.waist + 34))),
        ease=s(40),
    )
    sheet.put("Rear window", _CENTRE, glass)


def _back_doors(face: Face) -> None:
    st, sheet, s = face.p.style, face.sheet, face.p.s
    end = st.roof_end_height
    head = face.along((0.0, end - 6), (0.3, end - 12), (0.68, end - 30))
    side = face.along((0.68, end - 30), (0.75, st.waist + 200), (0.72, 470))
    door = outline(head, side, face.edges((0.72, 470), (0.0, 470)), ease=s(10))
    sheet.across("Back door", door)
    glass = face.box(0.1, 0.58, st.waist + 190, end - 150, ease=s(40))
    sheet.across("Back door glass", glass)
    sheet.line_across(face.edges((0.05, st.waist - 60), (0.05, st.waist - 190)))


def _cab(face: Face) -> None:
    st, sheet, s = face.p.style, face.sheet, face.p.s
    top, low = st.roof_end_height, st.waist
    crown = _crown(face, 0.665, top - 30)
    head = _head(face)
    sheet.put("Roof", _CENTRE, outline(crown, reverse(shifted(head, 0, face.p.s(30)))))
    edge = face.along((0.665, top - 30), (0.78, (top + low) / 2 + 10), (0.87, low - 20))
    back = outline(
        head,
        face.along((-0.585, top - 22), (-0.7, (top + low) / 2), (-0.78, low - 20)),
        face.along((0.78, low - 20), (0.7, (top + low) / 2), (0.585, top - 22)),
    )
    sheet.put("Cab back panel", _CENTRE, back)
    post = outline(
        straight(head.start, edge.start),
        edge,
        face.edges((0.88, low - 70), (0.78, low - 70)),
        face.along((0.78, low - 20), (0.7, (top + low) / 2), (0.585, top - 22)),
    )
    sheet.across("B-post", post)
    glass = outline(
        face.across((0.54, top - 70), (0.3, top - 60), (0.0, top - 56)),
        reverse(face.across((0.62, low + 70), (0.3, low + 66), (0.0, low + 64))),
        ease=s(36),
    )
    sheet.put("Rear window", _CENTRE, glass)


def _tailboard(face: Face) -> None:
    st, sheet, s = face.p.style, face.sheet, face.p.s
    board = face.box(-0.76, 0.76, 560, st.waist - 2, ease=s(12))
    sheet.put("Tailboard", _CENTRE, board)
    sheet.outline_of(face.box(-0.68, 0.68, 620, st.waist - 70, ease=s(20)))


def _low(face: Face) -> None:
    sheet, s = face.sheet, face.p.s
    valance = outline(
        face.edges((-0.88, 400), (0.88, 400)),
        face.along((0.88, 400), (0.84, 320), (0.72, 286)),
        face.along((-0.72, 286), (-0.84, 320), (-0.88, 400)),
    )
    sheet.put("Rear valance", _CENTRE, valance)
    pipe = face.at(0.5, 262)
    sheet.put("Exhaust, tailpipe", _CENTRE, circle(*pipe, s(26)))
    bar = outline(
        face.across((0.97, 505), (0.6, 520), (0.0, 525)),
        reverse(face.across((0.97, 420), (0.6, 428), (0.0, 430))),
        ease=s(40),
    )
    sheet.put("Rear bumper", _CENTRE, bar)
    lamp = min(_waist(face) - 70, 790)
    sheet.across("Tail lamp", face.box(0.775, 0.93, max(lamp - 175, 535), lamp, ease=s(26)))
    sheet.line_across(face.edges((0.775, lamp - 60), (0.93, lamp - 60)))
    sheet.line_across(face.edges((0.775, lamp - 120), (0.93, lamp - 120)))
    sheet.put("Rear number plate", _CENTRE, face.box(-0.32, 0.32, 300, 408, ease=s(8)))
    sheet.put("Number-plate lamp", _CENTRE, face.box(-0.1, 0.1, 530, 552, ease=s(8)))
