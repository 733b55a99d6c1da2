"""The car seen from in front, and what both ends have in common."""

from dataclasses import dataclass

from journal.domain.drawing import Side, Weight
from journal.domain.shapes import Point, Shape, Stroke, circle, rounded
from journal.domain.starters.joins import outline
from journal.domain.starters.lines import reverse, shifted, spline, straight
from journal.domain.starters.proportions import MARGIN, Proportions
from journal.domain.starters.sheet import Sheet

_CENTRE = Side.CENTRE

#: A share of half the car's width, and a height on the typical car.
Spot = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Face:
    """A sheet that shows one end of the car; ``out`` is 1 where the car's left is on the right."""

    sheet: Sheet
    p: Proportions
    out: int

    def at(self, share: float, height: float) -> Point:
        """The point of a share of half the width towards the left, and a height."""
        x = self.sheet.middle_x + self.out * share * self.p.width / 2
        return Point(x, self.p.y(self.p.z(height)))

    def along(self, *spots: Spot) -> Stroke:
        """A fair curve through spots."""
        return spline(*(self.at(*s) for s in spots))

    def edges(self, *spots: Spot) -> Stroke:
        """Straight edges through spots."""
        return straight(*(self.at(*s) for s in spots))

    def across(self, *spots: Spot) -> Stroke:
        """A fair curve over the whole width, from spots of the left half, edge to middle."""
        fellows = [(-share, height) for share, height in reversed(spots) if share > 0]
        return self.along(*spots, *fellows)

    def band(self, top: Stroke, low: Stroke, ease: float = 0.0) -> Shape:
        """What lies between two lines over the whole width."""
        return outline(top, reverse(low), ease=ease)

    def box(self, inner: float, outer: float, low: float, high: float, ease: float = 0) -> Shape:
        """An upright rectangle between two shares and two heights."""
        ring = [
            self.at(inner, high),
            self.at(outer, high),
            self.at(outer, low),
            self.at(inner, low),
        ]
        return rounded(ring, ease) if ease else outline(straight(*ring))


def draw_wheels(face: Face, name: str) -> None:
    """The tyres under the body, and the ground they stand on."""
    p, sheet = face.p, face.sheet
    outer, wide = p.width / 2 * 0.93, p.s(168)
    x = sheet.middle_x + face.out * outer
    inner = x - face.out * wide
    top, low = p.y(2 * p.wheel), p.y(0)
    sheet.across(name, rounded([(inner, top), (x, top), (x, low), (inner, low)], p.s(40)))
    ground = straight((MARGIN * 0.3, low), (sheet.view.width - MARGIN * 0.3, low))
    sheet.line(ground, Weight.GROUND)


def draw_front(sheet: Sheet, p: Proportions) -> None:
    """Draw all that is seen of the car from in front; its left is on the right."""
    face = Face(sheet, p, out=1)
    draw_wheels(face, "Front wheel")
    _upper(face)
    _wings_and_bonnet(face)
    _nose(face)
    _lamps(face)


def _upper(face: Face) -> None:
    st, sheet, s = face.p.style, face.sheet, face.p.s
    top, low = st.screen_height, st.bonnet
    head = face.across((0.6, top - 22), (0.3, top - 4), (0.0, top))
    foot = face.across((0.77, low - 50), (0.4, low - 26), (0.0, low - 18))
    if st.roof:
        rise = st.height - top + 26
        crown = face.across((0.672, top - 26), (0.42, top - 26 + rise * 0.78), (0.0, st.height))
        # The roof and the posts reach a little under the glass, whose corners are round.
        sheet.put("Roof", _CENTRE, outline(crown, reverse(shifted(head, 0, s(26)))))
    else:
        sheet.line(shifted(head, 0, s(14)))
    post = outline(
        face.edges((0.55, top - 22), (0.672, top - 26)),
        face.along((0.672, top - 26), (0.775, (top + st.waist) / 2 + 20), (0.872, st.waist - 30)),
        face.edges((0.86, st.waist - 70), (0.79, low - 90), (0.72, low - 40)),
    )
    sheet.across("A-post", post)
    sheet.put("Windscreen", _CENTRE, outline(head, reverse(foot), ease=s(34)))
    wiper = face.edges((0.1, low + 6), (-0.42, low + 52))
    sheet.line(wiper)
    sheet.line(face.edges((0.6, low - 10), (0.08, low + 50)))


def _wings_and_bonnet(face: Face) -> None:
    st, sheet = face.p.style, face.sheet
    seam = face.along((0.64, st.nose - 6), (0.7, st.nose + 70), (0.79, st.bonnet - 42))
    crown = face.across((0.79, st.bonnet - 42), (0.4, st.bonnet), (0.0, st.bonnet + 8))
    lip = face.across((0.64, st.nose - 6), (0.3, st.nose + 2), (0.0, st.nose + 4))
    other = face.along((-0.79, st.bonnet - 42), (-0.7, st.nose + 70), (-0.64, st.nose - 6))
    sheet.put("Bonnet", _CENTRE, outline(crown, other, reverse(lip), seam))
    crease = face.along((0.26, st.nose + 8), (0.31, st.nose + 90), (0.36, st.bonnet - 8))
    sheet.line_across(crease)
    outer = face.along(
        (0.8, st.bonnet - 44),
        (0.885, st.waist - 22),
        (0.958, st.waist - (st.waist - 630) * 0.36),
        (1.0, 630),
        (0.985, 420),
        (0.945, 250),
    )
    arch = face.edges((0.945, 250), (0.9, 250), (0.88, 392), (0.62, 392))
    inner = face.edges((0.62, 392), (0.64, st.nose - 6))
    wing = outline(outer, arch, inner, seam)
    sheet.across("Front wing", wing)
    box = face.box(0.865, 1.03, st.waist - 42, st.waist + 48, ease=face.p.s(26))
    sheet.across("Door mirror", box)


def _nose(face: Face) -> None:
    st, sheet, p = face.p.style, face.sheet, face.p
    lip = face.across((0.64, st.nose - 6), (0.3, st.nose + 2), (0.0, st.nose + 4))
    sides = face.edges((-0.62, 392), (0.62, 392))
    sheet.put("Front panel", _CENTRE, outline(lip, sides))
    low, high = 545.0, st.nose - 34
    ring = [face.at(*s) for s in ((0.36, high), (0.34, low), (-0.34, low), (-0.36, high))]
    sheet.put("Grille", _CENTRE, rounded(ring, p.s(30)))
    for n in range(1, 6):
        height = low + (high - low) * n / 6
        sheet.line(face.edges((0.325, height), (-0.325, height)))
    sheet.line(face.edges((0, low), (0, high)))
    valance = outline(
        face.edges((-0.88, 392), (0.88, 392)),
        face.along((0.88, 392), (0.845, 300), (0.74, 258)),
        face.along((-0.74, 258), (-0.845, 300), (-0.88, 392)),
    )
    sheet.put("Front valance", _CENTRE, valance)
    sheet.line_across(face.edges((0.52, 330), (0.3, 330)))
    bar = outline(
        face.across((0.97, 498), (0.6, 514), (0.0, 520)),
        reverse(face.across((0.97, 412), (0.6, 420), (0.0, 424))),
        ease=p.s(40),
    )
    sheet.put("Front bumper", _CENTRE, bar)
    sheet.put("Front number plate", _CENTRE, face.box(-0.32, 0.32, 322, 430, ease=p.s(8)))


def _lamps(face: Face) -> None:
    st, sheet, p = face.p.style, face.sheet, face.p
    spot = face.at(0.66, st.nose - 86)
    radius = p.s(min(92, (st.nose - 530) * 0.5))
    sheet.across("Headlamp", circle(*spot, radius))
    for share in (0.84, 0.3):
        other = circle(2 * sheet.middle_x - spot.x, spot.y, radius * share)
        sheet.outline_of(circle(*spot, radius * share))
        sheet.outline_of(other)
    sheet.across("Front indicator", face.box(0.58, 0.79, *indicator_heights(st.nose), ease=p.s(15)))


def indicator_heights(nose: float) -> tuple[float, float]:
    """The heights of the indicator's edges: under the headlamp, or the bumper on a low nose."""
    return (536, 572) if nose > 740 else (340, 374)
