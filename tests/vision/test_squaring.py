"""Squaring up, against published figures and against its own inverse."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.domain.homographies import inverse, mapped, product
from journal.domain.underlays import UNMOVED
from journal.vision.squaring import homography, scale_by, square_up

#: The worked example in the README of the JavaScript library perspective-transform (J. Louthan).
_SOURCE = ((158, 64), (494, 69), (495, 404), (158, 404))
_TARGET = ((100, 500), (152, 564), (148, 604), (100, 560))
_MATRIX = (
    *(0.3869749384, 0.0426817448, 59.2427947969),
    *(0.9589610618, 0.4562821238, 434.8644299345),
    *(0.0012901794, 0.0004268174, 1),
)

#: Homographies of the Oxford affine series "graffiti" (Mikolajczyk and others): image 1 to 2, 3, 6.
_GRAFFITI = {
    2: (
        *(8.7976964e-01, 3.1245438e-01, -3.9430589e01),
        *(-1.8389418e-01, 9.3847198e-01, 1.5315784e02),
        *(1.9641425e-04, -1.6015275e-05, 1),
    ),
    3: (
        *(7.6285898e-01, -2.9922929e-01, 2.2567123e02),
        *(3.3443473e-01, 1.0143901e00, -7.6999973e01),
        *(3.4663091e-04, -1.4364524e-05, 1),
    ),
    6: (
        *(4.2714590e-01, -6.7181765e-01, 4.5361534e02),
        *(4.4106579e-01, 1.0133230e00, -4.6534569e01),
        *(5.1887712e-04, -7.8853731e-05, 1),
    ),
}
_CORNERS = ((0, 0), (799, 0), (799, 639), (0, 639))


def fitted(sources, targets):
    return homography(list(zip(sources, targets, strict=True)))


def test_the_published_example_comes_out():
    found = fitted(_SOURCE, _TARGET)
    assert found.matrix == pytest.approx(_MATRIX, abs=1e-4)
    assert mapped(found.matrix, (250, 120)) == pytest.approx((117.27521, 530.92024), abs=1e-4)
    assert found.residual < 1e-9


def test_the_published_example_leads_back():
    back = inverse(fitted(_SOURCE, _TARGET).matrix)
    assert mapped(back, (130, 570)) == pytest.approx((338.99465, 278.6451), abs=1e-4)
    assert fitted(_TARGET, _SOURCE).matrix == pytest.approx(back, abs=1e-7)


@pytest.mark.parametrize("number", _GRAFFITI)
def test_a_photographed_wall_is_found_again_from_its_corners(number):
    known = _GRAFFITI[number]
    found = fitted(_CORNERS, [mapped(known, corner) for corner in _CORNERS])
    assert found.matrix == pytest.approx(known, rel=0, abs=1e-9)


def test_points_of_the_photographed_wall():
    assert mapped(_GRAFFITI[3], (400, 320)) == pytest.approx((383.633223, 336.296308), abs=1e-6)
    assert mapped(_GRAFFITI[3], (799, 639)) == pytest.approx((507.965469, 661.320735), abs=1e-6)
    assert mapped(_GRAFFITI[2], (400, 320)) == pytest.approx((384.243513, 353.919096), abs=1e-6)


def test_more_than_four_pairs_leave_the_misfit_in_pixels():
    known = _GRAFFITI[3]
    places = [(x, y) for x in (0, 400, 799) for y in (0, 320, 639)]
    exact = [(place, mapped(known, place)) for place in places]
    assert homography(exact).residual < 1e-9
    off = [((x + (-1) ** n * 0.5, y), to) for n, ((x, y), to) in enumerate(exact)]
    assert 0.2 < homography(off).residual < 0.6


def test_a_rectangle_has_its_size_and_its_place():
    corners = [(102, 80), (903, 131), (880, 610), (95, 655)]
    matrix = square_up(corners, 2400, 1300, at=(500, 250))
    there = [mapped(matrix, corner) for corner in corners]
    wanted = [(500, 250), (2900, 250), (2900, 1550), (500, 1550)]
    for found, expected in zip(there, wanted, strict=True):
        assert found == pytest.approx(expected, abs=1e-6)


#: Corners of a picture pulled about, each within its own quarter: convex whatever they are.
_pulled = st.tuples(*[st.floats(0, 150) for _ in range(8)])


@given(_pulled, st.floats(10, 9000), st.floats(10, 9000))
def test_squaring_up_leads_there_and_back(pull, width, height):
    a, b, c, d, e, f, g, h = pull
    corners = [(a, b), (1000 - c, d), (1000 - e, 1000 - f), (g, 1000 - h)]
    matrix = square_up(corners, width, height)
    same = product(inverse(matrix), matrix)
    assert same == pytest.approx(UNMOVED, abs=1e-6)
    for corner in corners:
        assert mapped(inverse(matrix), mapped(matrix, corner)) == pytest.approx(corner, abs=1e-5)


@pytest.mark.parametrize(
    ("corners", "says"),
    [
        ([(0, 0), (50, 50), (100, 100), (0, 100)], "one line"),
        ([(0, 0), (100, 0), (200, 0.01), (0, 100)], "one line"),
        ([(0, 0), (100, 100), (100, 0), (0, 100)], "cross"),
        ([(0, 0), (100, 0), (30, 30), (0, 100)], "inward"),
        ([(0, 0), (0, 100), (100, 100), (100, 0)], "wrong way"),
        ([(0, 0), (0, 0), (100, 100), (0, 100)], "one and the same"),
        ([(0, 0), (100, 0), (100, 100)], "four corners"),
        ([(0, 0), (math.nan, 0), (100, 100), (0, 100)], "sound"),
    ],
)
def test_corners_that_are_no_rectangle_seen_aslant_are_refused(corners, says):
    with pytest.raises(JournalError, match=says) as refusal:
        square_up(corners, 1000, 500)
    assert str(refusal.value).endswith(".")


@pytest.mark.parametrize("size", [(0, 500), (1000, 0), (-3, 500), (math.inf, 500)])
def test_a_rectangle_without_size_is_refused(size):
    with pytest.raises(JournalError, match="more than nothing"):
        square_up(_CORNERS, *size)


@given(st.floats(0.5, 20000))
def test_two_points_come_to_lie_the_distance_given(distance):
    matrix = square_up([(102, 80), (903, 131), (880, 610), (95, 655)], 2400, 1300, at=(500, 250))
    one, other = (200, 300), (700, 450)
    made = scale_by(matrix, one, other, distance)
    found = math.dist(mapped(made, one), mapped(made, other))
    assert found == pytest.approx(distance, rel=1e-9)
    assert mapped(made, one) == pytest.approx(mapped(matrix, one), abs=1e-6)


@pytest.mark.parametrize("distance", [0, -1, math.nan, math.inf])
def test_a_scale_of_nothing_is_refused(distance):
    with pytest.raises(JournalError, match="more than nothing"):
        scale_by(UNMOVED, (0, 0), (10, 0), distance)


def test_one_point_gives_no_scale():
    with pytest.raises(JournalError, match="one and the same"):
        scale_by(UNMOVED, (10, 10), (10, 10), 100)


def test_a_map_that_flattens_has_no_way_back():
    with pytest.raises(JournalError, match="flattened"):
        inverse((1, 2, 3, 2, 4, 6, 0, 0, 1))
