"""The rules of pairs: turns, common parts, points, promise."""

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.domain.homographies import mapped
from journal.domain.ids import PhotoId
from journal.domain.pairs import (
    WHOLE,
    Candidate,
    Frame,
    PointPair,
    as_kept,
    as_shown,
    check_points,
    common_part,
    in_pixels,
    in_shares,
    promise,
    turn_map,
)
from journal.domain.shapes import Point

_MATRIX = (0.9, 0.05, 0.02, -0.04, 1.1, -0.03, 0.1, -0.05, 1.0)
turns = st.sampled_from([0, 90, 180, 270])
shares = st.floats(0.05, 0.95)


def close(one, other) -> bool:
    return math.dist(one, other) < 1e-9


@pytest.mark.parametrize(
    ("degrees", "at"), [(0, (0.2, 0.1)), (90, (0.9, 0.2)), (180, (0.8, 0.9)), (270, (0.1, 0.8))]
)
def test_a_turn_clockwise_moves_a_spot_with_the_picture(degrees, at):
    assert close(mapped(turn_map(degrees), (0.2, 0.1)), at)


@given(turns, turns, shares, shares)
def test_a_fit_stays_true_when_either_photo_is_turned(before, after, x, y):
    """Where a spot of the after photo lies on the before is the same spot of the car."""
    there = mapped(_MATRIX, (x, y))
    shown = as_shown(_MATRIX, before, after)
    on_shown = mapped(shown, mapped(turn_map(after), (x, y)))
    assert close(on_shown, mapped(turn_map(before), there))
    back = as_kept(shown, before, after)
    assert close(mapped(back, (x, y)), there)


@given(st.tuples(*[st.integers(50, 4000)] * 4), shares, shares)
def test_shares_and_pixels_tell_the_same(sizes, x, y):
    before, after = sizes[:2], sizes[2:]
    pixels = in_pixels(_MATRIX, before, after)
    there = mapped(pixels, (x * after[0], y * after[1]))
    at = mapped(_MATRIX, (x, y))
    assert math.dist((there.x / before[0], there.y / before[1]), at) < 1e-9
    assert close(mapped(in_shares(pixels, before, after), (x, y)), at)


def test_photos_that_lie_on_each_other_wholly_have_all_in_common():
    same = (1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0)
    found = common_part(same)
    assert (found.left, found.top, found.right, found.bottom) == pytest.approx((0, 0, 1, 1))
    assert WHOLE.area == 1
    half = (0.5, 0.0, 0.25, 0.0, 0.5, 0.25, 0.0, 0.0, 1.0)
    assert common_part(half) == Frame(0.25, 0.25, 0.75, 0.75)


def test_photos_of_two_places_are_refused():
    for matrix in (
        (1.0, 0.0, 2.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0),
        (0.05, 0.0, 0.4, 0.0, 0.05, 0.4, 0.0, 0.0, 1.0),
    ):
        with pytest.raises(JournalError, match="next to nothing in common"):
            common_part(matrix)


@settings(deadline=None)
@given(st.tuples(*[st.floats(-0.25, 0.25)] * 8))
def test_the_common_part_lies_on_both_photos(jitter):
    a, b, c, d, e, f, g, h = jitter
    matrix = (1 + a, b, c, d, 1 + e, f, g, h, 1.0)
    try:
        part = common_part(matrix)
    except JournalError:
        assume(False)
        return
    assert 0 <= part.left < part.right <= 1
    assert 0 <= part.top < part.bottom <= 1
    from journal.domain.homographies import inverse

    back = inverse(matrix)
    for x in (part.left, part.right):
        for y in (part.top, part.bottom):
            there = mapped(back, (x, y))
            assert all(-1e-6 <= share <= 1 + 1e-6 for share in there)


def test_points_are_checked_in_words():
    spot = Point(0.5, 0.5)
    with pytest.raises(JournalError, match="needs 4 points on both, better 6"):
        check_points([PointPair(spot, spot)] * 3)
    with pytest.raises(JournalError, match="Point 2 lies beside the photo"):
        check_points(
            [PointPair(spot, spot), PointPair(spot, Point(1.2, 0)), *[PointPair(spot, spot)] * 4]
        )
    with pytest.raises(JournalError, match="60 points are the most"):
        check_points([PointPair(spot, spot)] * 61)


def test_a_view_the_other_way_promises_less_than_one_the_same_way():
    north = Candidate(PhotoId(1), 0, ((1, 350.0),))
    same, across = (
        Candidate(PhotoId(n), 0, ((1, facing),)) for n, facing in ((2, 20.0), (3, 170.0))
    )
    unknown = Candidate(PhotoId(4), 0)
    assert promise(north, same, 0.7) > promise(north, unknown, 0.7) > promise(north, across, 0.7)
    later = Candidate(PhotoId(5), 3)
    assert promise(north, unknown, 0.7) > promise(north, later, 0.7)
    assert promise(north, later, 0.9) > promise(north, unknown, 0.7)
