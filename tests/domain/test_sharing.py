import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.domain.sharing import share

# The census of 1790: people of the fifteen states, in order of their number.
PEOPLE = {
    "VA": 630560,
    "MA": 475327,
    "PA": 432879,
    "NC": 353523,
    "NY": 331589,
    "MD": 278514,
    "CT": 236841,
    "SC": 206236,
    "NJ": 179570,
    "NH": 141822,
    "VT": 85533,
    "GA": 70835,
    "KY": 68705,
    "RI": 68446,
    "DE": 55540,
}


def test_the_1790_census_has_the_published_total() -> None:
    assert sum(PEOPLE.values()) == 3_615_920


@pytest.mark.parametrize(
    ("seats", "published"),
    [
        # Electowiki, "Hamilton method".
        (60, (11, 8, 7, 6, 6, 5, 4, 3, 3, 2, 1, 1, 1, 1, 1)),
        # COMAP, "For All Practical Purposes", chapter 14, exercise 6.
        (120, (21, 16, 14, 12, 11, 9, 8, 7, 6, 5, 3, 2, 2, 2, 2)),
    ],
)
def test_seats_of_1790_come_out_as_published(seats: int, published: tuple[int, ...]) -> None:
    assert share(seats, tuple(PEOPLE.values())) == published


def test_a_cent_left_over_goes_to_the_first_of_equals() -> None:
    assert share(100, (1, 1, 1)) == (34, 33, 33)
    assert share(200, (1, 1, 1)) == (67, 67, 66)


def test_the_largest_fraction_wins_over_the_first() -> None:
    assert share(10, (1, 2)) == (3, 7)


def test_a_refund_is_shared_as_the_purchase_was() -> None:
    assert share(-100, (1, 1, 1)) == (-34, -33, -33)


def test_weights_of_nothing_share_equally() -> None:
    assert share(101, (0, 0)) == (51, 50)


def test_a_weight_of_nothing_beside_others_gets_nothing() -> None:
    assert share(99, (0, 1, 1)) == (0, 50, 49)


def test_nothing_among_nobody_is_nothing() -> None:
    assert share(0, ()) == ()


def test_something_among_nobody_is_refused() -> None:
    with pytest.raises(JournalError, match="nothing to share"):
        share(1, ())


def test_a_negative_weight_is_refused() -> None:
    with pytest.raises(JournalError, match="less than nothing"):
        share(10, (2, -1))


totals = st.integers(-(10**12), 10**12)
weights = st.lists(st.integers(0, 10**7), min_size=1, max_size=12)


@given(totals, weights)
def test_parts_always_add_up_to_the_whole(total: int, weights: list[int]) -> None:
    assert sum(share(total, weights)) == total


@given(totals, weights.filter(any))
def test_no_part_is_a_unit_away_from_its_quota(total: int, weights: list[int]) -> None:
    whole = sum(weights)
    for part, weight in zip(share(total, weights), weights, strict=True):
        assert abs(part * whole - total * weight) < whole


@given(totals, weights)
def test_more_weight_never_gets_less(total: int, weights: list[int]) -> None:
    parts = [abs(part) for part in share(total, weights)]
    for weight, part in zip(weights, parts, strict=True):
        for other, other_part in zip(weights, parts, strict=True):
            if weight > other:
                assert part >= other_part


@given(totals, weights, st.integers(1, 1000))
def test_only_the_ratio_of_the_weights_counts(total: int, weights: list[int], factor: int) -> None:
    assert share(total, [factor * weight for weight in weights]) == share(total, weights)
