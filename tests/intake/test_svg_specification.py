"""Figures, transforms, units and viewBox against worked examples of the SVG specification.

The examples are those of "Scalable Vector Graphics (SVG) 1.1 (Second Edition)", W3C Recommendation
16 August 2011, under the names of their files there; their figures are given from memory. Areas
are the exact ones of the geometry, in square millimetres: a picture of 12 cm over 1200 units has
a tenth of a millimetre for each unit.
"""

import math

import pytest

from journal.domain.hits import to_polygon
from journal.domain.shapes import Curve, Line, Point, Shape, bounds, on_curve
from journal.domain.shaping.corners import corner_points
from journal.intake.svg_drawing import read_svg

NAMESPACE = 'xmlns="http://www.w3.org/2000/svg"'

#: The size of most examples: 12 cm by 4 cm, 1200 by 400 units.
WIDE = 'width="12cm" height="4cm" viewBox="0 0 1200 400" version="1.1"'


def shapes(body: str, size: str = WIDE) -> list[Shape]:
    data = f"<svg {size} {NAMESPACE}>{body}</svg>".encode()
    return [placed.shape for placed in read_svg(data).drawing.shapes]


def area(shape: Shape) -> float:
    return float(to_polygon(shape, 0.001).area)


def test_rect01_is_a_rectangle() -> None:
    (rect,) = shapes('<rect x="400" y="100" width="400" height="200"/>')
    assert bounds(rect) == (40, 10, 80, 30)
    assert all(isinstance(edge, Line) for edge in rect.contours[0].edges)


def test_rect02_has_rounded_corners_and_turns() -> None:
    upright, turned = shapes(
        """<rect x="100" y="100" width="400" height="200" rx="50"/>
        <g transform="translate(700 210) rotate(-30)">
          <rect x="0" y="0" width="400" height="200" rx="50"/></g>"""
    )
    # Four corners of radius 5 mm each lose r² (1 - π/4).
    exact = 40 * 20 - (4 - math.pi) * 25
    assert area(upright) == pytest.approx(exact, rel=4e-4)
    assert area(turned) == pytest.approx(exact, rel=4e-4)
    # The corner at (0, 50) of the turned one: 700 + 50 sin 30°, 210 + 50 cos 30°.
    spot = Point(round((700 + 25) / 10, 2), round((210 + 50 * math.cos(math.radians(30))) / 10, 2))
    corners = [turned.contours[0].start, *(e.to for e in turned.contours[0].edges)]
    assert min(math.dist(spot, corner) for corner in corners) < 0.011


def test_circle01_and_ellipse01() -> None:
    circle, level, turned = shapes(
        """<circle cx="600" cy="200" r="100"/>
        <g transform="translate(300 200)"><ellipse rx="250" ry="100"/></g>
        <ellipse transform="translate(900 200) rotate(-30)" rx="250" ry="100"/>"""
    )
    assert bounds(circle) == pytest.approx((50, 10, 70, 30), abs=0.02)
    assert area(circle) == pytest.approx(math.pi * 100, rel=1e-3)
    assert area(level) == pytest.approx(math.pi * 250, rel=1e-3)
    assert area(turned) == pytest.approx(math.pi * 250, rel=1e-3)
    # Half the width of an ellipse turned by a: √(rx² cos² a + ry² sin² a).
    half = math.sqrt((25 * math.cos(math.pi / 6)) ** 2 + (10 * math.sin(math.pi / 6)) ** 2)
    box = bounds(turned)
    assert (box.left, box.right) == pytest.approx((90 - half, 90 + half), abs=0.03)


def test_polygon01_is_a_star_and_a_hexagon() -> None:
    star, hexagon = shapes(
        """<polygon points="350,75  379,161 469,161 397,215 423,301 350,250 277,301 303,215
             231,161 321,161"/>
        <polygon points="850,75  958,137.5 958,262.5 850,325 742,262.6 742,137.5"/>"""
    )
    assert len(list(corner_points(star))) == 10
    assert bounds(star) == pytest.approx((23.1, 7.5, 46.9, 30.1))
    # The hexagon's corners are 125 units from (850, 200), given to whole and half units.
    assert area(hexagon) == pytest.approx(1.5 * math.sqrt(3) * 12.5**2, rel=3e-3)


def test_line01_and_polyline01_are_no_panels() -> None:
    data = f"""<svg {WIDE} {NAMESPACE}><line x1="100" y1="300" x2="300" y2="100"/>
        <polyline points="50,375 150,375 150,325 250,325 250,375 350,375"/></svg>"""
    result = read_svg(data.encode())
    assert result.drawing.panels == ()
    assert [left.reason for left in result.left_out] == ["it isn't closed"] * 2


def test_triangle01_is_a_path_of_moves_lines_and_a_close() -> None:
    (triangle,) = shapes(
        '<path d="M 100 100 L 300 100 L 200 300 z"/>',
        'width="4cm" height="4cm" viewBox="0 0 400 400" version="1.1"',
    )
    assert area(triangle) == pytest.approx(200)
    assert triangle.contours[0].start == Point(10, 10)


def test_arcs01_is_a_pie_with_a_piece_taken_out() -> None:
    pie, piece = shapes(
        """<path d="M300,200 h-150 a150,150 0 1,0 150,-150 z"/>
        <path d="M275,175 v-150 a150,150 0 0,0 -150,150 z"/>"""
    )
    assert area(pie) == pytest.approx(0.75 * math.pi * 225, rel=1e-3)
    assert area(piece) == pytest.approx(0.25 * math.pi * 225, rel=1e-3)
    assert bounds(pie) == pytest.approx((15, 5, 45, 35), abs=0.02)


def test_quad01_is_raised_to_the_cubic_that_is_the_same_curve() -> None:
    (shape,) = shapes('<path d="M200,300 Q400,50 600,300 T1000,300 V440 H200 z"/>')
    first, second = shape.contours[0].edges[:2]
    assert isinstance(first, Curve)
    assert isinstance(second, Curve)
    for n in range(1, 10):
        t = n / 10
        s = 1 - t
        x = s * s * 20 + 2 * s * t * 40 + t * t * 60
        y = s * s * 30 + 2 * s * t * 5 + t * t * 30
        assert on_curve(Point(20, 30), first, t) == pytest.approx((x, y), abs=0.01)
        # T reflects the control point to (800, 550).
        y = s * s * 30 + 2 * s * t * 55 + t * t * 30
        assert on_curve(Point(60, 30), second, t) == pytest.approx((x + 40, y), abs=0.01)


def test_cubic01_reflects_its_handle_in_the_smooth_curve() -> None:
    (shape,) = shapes(
        '<path d="M100,200 C100,100 250,100 250,200 S400,300 400,200 V350 H100 z"/>',
        'width="5cm" height="4cm" viewBox="0 0 500 400"',
    )
    assert shape.contours[0].edges[:2] == (
        Curve(Point(10, 10), Point(25, 10), Point(25, 20)),
        Curve(Point(25, 30), Point(40, 30), Point(40, 20)),
    )


def test_relative_and_packed_commands_mean_the_same() -> None:
    """The grammar of path data (8.3.9) lets commas, spaces and repeated letters go."""
    one, two, three = shapes(
        """<path d="M 100 100 L 200 100 L 200 200 L 100 200 Z"/>
        <path d="M100,100,200,100,200,200,100,200z"/>
        <path d="m100 100h100v100h-100z"/>"""
    )
    assert area(one) == area(two) == area(three) == 100
    assert bounds(one) == bounds(two) == bounds(three)


def test_nested_transforms_come_to_the_matrix_of_section_7_5() -> None:
    """translate(50,90), rotate(-45), translate(130,160): .707 .707 255.03 / -.707 .707 111.21."""
    size = 'width="400mm" height="400mm" viewBox="0 0 400 400"'
    nested, plain = shapes(
        """<g transform="translate(50,90)"><g transform="rotate(-45)">
          <g transform="translate(130,160)"><rect width="50" height="20"/></g></g></g>
        <rect transform="matrix(.70710678 -.70710678 .70710678 .70710678 255.0610 111.2132)"
          width="50" height="20"/>""",
        size,
    )
    start = nested.contours[0].start
    assert start == pytest.approx((255.03, 111.21), abs=0.04)
    assert start == plain.contours[0].start
    assert area(nested) == pytest.approx(1000, rel=1e-3)
    assert bounds(nested) == pytest.approx(bounds(plain), abs=0.011)


@pytest.mark.parametrize(
    ("transform", "spot"),
    [
        ("translate(10)", (20, 20)),
        ("scale(2)", (20, 40)),
        ("scale(2 3)", (20, 60)),
        ("rotate(90)", (-20, 10)),
        ("rotate(90 10 0)", (-10, 0)),
        ("skewX(45)", (30, 20)),
        ("skewY(45)", (10, 30)),
        ("matrix(1 2 3 4 5 6)", (75, 106)),
        ("translate(100 0) scale(2)", (120, 40)),
    ],
)
def test_each_transform_of_section_7_6(transform: str, spot: tuple[float, float]) -> None:
    (shape,) = shapes(
        f'<g transform="translate(300 300)"><rect x="10" y="20" width="40" height="30" '
        f'transform="{transform}"/></g>',
        'width="800mm" height="800mm" viewBox="0 0 800 800"',
    )
    assert shape.contours[0].start == pytest.approx((300 + spot[0], 300 + spot[1]), abs=0.01)


@pytest.mark.parametrize(
    ("length", "millimetres"),
    [
        ("100mm", 100.0), ("10cm", 100.0), ("4in", 101.6), ("144pt", 50.8), ("12pc", 50.8),
        ("400Q", 100.0), ("1e2mm", 100.0),
    ],
)  # fmt: skip
def test_units_of_length_are_those_of_css(length: str, millimetres: float) -> None:
    """1 in is 2.54 cm, 1 pt a 72nd of an inch, 1 pc 12 pt (CSS 2.1, 4.3.2); 1 Q is 0.25 mm."""
    (shape,) = shapes(
        '<rect width="500" height="250"/>', f'width="{length}" viewBox="0 0 1000 1000"'
    )
    assert bounds(shape) == pytest.approx((0, 0, millimetres / 2, millimetres / 4), abs=0.01)


def test_a_unit_within_the_picture_is_by_96_pixels_to_the_inch() -> None:
    (shape,) = shapes(
        '<rect width="1in" height="2.54cm"/>', 'width="300mm" height="300mm" viewBox="0 0 300 300"'
    )
    assert bounds(shape) == pytest.approx((0, 0, 96, 96), abs=0.01)


def test_a_viewbox_moves_and_scales() -> None:
    """The example of section 7.7: 1500 by 1000 units on 300 by 200."""
    (shape,) = shapes(
        '<rect x="750" y="500" width="750" height="500"/>',
        'width="300mm" height="200mm" viewBox="0 0 1500 1000"',
    )
    assert bounds(shape) == (150, 100, 300, 200)
    (shape,) = shapes(
        '<rect x="0" y="0" width="50" height="50"/>',
        'width="100mm" height="100mm" viewBox="-50 -50 100 100"',
    )
    assert bounds(shape) == (50, 50, 100, 100)


@pytest.mark.parametrize(
    ("fit", "box"),
    [
        ("", (25, 0, 75, 100)),
        ('preserveAspectRatio="xMinYMid meet"', (0, 0, 50, 100)),
        ('preserveAspectRatio="xMaxYMax meet"', (50, 0, 100, 100)),
        ('preserveAspectRatio="none"', (0, 0, 100, 100)),
    ],
)
def test_the_picture_is_fitted_as_preserve_aspect_ratio_says(
    fit: str, box: tuple[float, ...]
) -> None:
    """Section 7.8: a viewBox of 50 by 100 on a square sheet."""
    (shape,) = shapes(
        '<path d="M0 0h50v100h-50z"/>',
        f'width="100mm" height="100mm" viewBox="0 0 50 100" {fit}',
    )
    assert bounds(shape) == pytest.approx(box, abs=0.01)


def test_an_inner_svg_has_its_own_viewbox() -> None:
    (shape,) = shapes(
        '<svg x="10" y="20" width="50" height="50" viewBox="0 0 10 10">'
        '<rect width="5" height="10"/></svg>',
        'width="100mm" height="100mm" viewBox="0 0 100 100"',
    )
    assert bounds(shape) == pytest.approx((10, 20, 35, 70), abs=0.01)


def test_arcs_keep_to_the_stated_tolerance_however_large() -> None:
    size = 'width="9000mm" height="9000mm" viewBox="0 0 9000 9000"'
    for radius in (50, 366, 1000, 4000):
        (shape,) = shapes(f'<circle cx="4500" cy="4500" r="{radius}"/>', size)
        here = shape.contours[0].start
        for edge in shape.contours[0].edges:
            assert isinstance(edge, Curve)
            for n in range(21):
                away = math.dist(on_curve(here, edge, n / 20), (4500, 4500))
                assert away == pytest.approx(radius, abs=0.105)
            here = edge.to
    # A wheel stays a thing of four corners, which a hand can move.
    (wheel,) = shapes('<circle cx="4500" cy="4500" r="330"/>', size)
    assert len(wheel.contours[0].edges) == 4
