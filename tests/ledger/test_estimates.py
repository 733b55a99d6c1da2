"""What a survey comes to: the closed formula, and the simulation against it and against scipy."""

import math
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from journal.domain.estimates import DRAWS, LEVELS, Item, ways_in_words
from journal.domain.findings import Three
from journal.domain.ids import FindingId
from journal.ledger.estimates import formula
from journal.ledger.simulation import estimate, normals

# The critical path of the network of a textbook of management science (activities 1, 3, 5, 7;
# weeks), with its published answers: 24 weeks expected, variance 5, P(x <= 28) = .9633 by tables.
NETWORK = (Three(5, 8, 17), Three(3, 5, 7), Three(4, 6, 8), Three(3, 4, 5))


def items(*threes: Three, cause: str = "", strength: float = 0.0) -> list[Item]:
    return [Item(FindingId(n), n, three, three, cause, strength) for n, three in enumerate(threes)]


def three_figures(most: int = 10**7) -> st.SearchStrategy[Three]:
    return st.lists(st.integers(0, most), min_size=3, max_size=3).map(lambda n: Three(*sorted(n)))


def test_the_textbook_network_comes_out_as_published() -> None:
    found = formula([(three, "", 0.0) for three in NETWORK], 28)
    assert found.mean == 24
    assert found.deviation**2 == pytest.approx(5)
    assert found.under == pytest.approx(0.9633, abs=2e-4)


def test_each_curve_has_the_moments_of_the_beta_curve_it_is() -> None:
    # scipy.stats.beta with shapes 1 + 4(M-O)/(P-O) and 1 + 4(P-M)/(P-O): the PERT curve.
    stats = pytest.importorskip("scipy.stats")
    for three in (*NETWORK, Three(0, 0, 100_000), Three(0, 100_000, 100_000), Three(10, 11, 9000)):
        reach = three.worst - three.best
        first = 1 + 4 * (three.likely - three.best) / reach
        true = stats.beta(first, 6 - first, loc=three.best, scale=reach)
        found = estimate(items(three), seed=3).money.drawn
        slack = 5 * true.std() / math.sqrt(DRAWS)
        assert found.mean == pytest.approx(true.mean(), abs=slack)
        assert true.mean() == pytest.approx(three.expected)
        assert found.deviation == pytest.approx(true.std(), rel=0.03)
        for level, figure in zip(LEVELS, found.figures, strict=True):
            assert figure == pytest.approx(true.ppf(level), abs=0.02 * reach)


def test_the_normal_numbers_are_normal() -> None:
    stats = pytest.importorskip("scipy.stats")
    assert stats.kstest(normals(11, (0, 4), 50_000), "norm").pvalue > 0.01
    together = stats.pearsonr(normals(11, (0, 4), 50_000), normals(11, (0, 5), 50_000))
    assert abs(together.statistic) < 0.02


def test_independent_things_agree_with_the_formula_but_for_the_width_of_their_curve() -> None:
    # Of a symmetric PERT curve the variance is the range squared by 28, not by 36 as the formula
    # takes it: (mean - O)(P - mean) / 7.
    sums = estimate(items(*[Three(100_000, 200_000, 300_000)] * 40), seed=5).money
    assert sums.drawn.mean == pytest.approx(sums.formula.mean, rel=0.002)
    assert sums.drawn.deviation == pytest.approx(
        sums.formula.deviation * math.sqrt(36 / 28), rel=0.03
    )
    spread = sums.drawn.deviation
    for level, figure in zip(LEVELS, sums.drawn.figures, strict=True):
        normal = sums.drawn.mean + {0.5: 0.0, 0.8: 0.8416, 0.9: 1.2816}[level] * spread
        assert figure == pytest.approx(normal, abs=0.03 * spread)


@pytest.mark.parametrize("strength", [0.0, 0.3, 0.7, 1.0])
def test_shared_causes_widen_the_sum_as_the_formula_says(strength: float) -> None:
    shared = estimate(
        items(*[Three(100, 200, 300)] * 25, cause="inside", strength=strength), seed=8
    ).money
    assert shared.drawn.deviation / math.sqrt(36 / 28) == pytest.approx(
        shared.formula.deviation, rel=0.03
    )
    assert shared.formula.deviation == pytest.approx(
        100 / 3 * math.sqrt(25 + strength * 25 * 24), rel=1e-9
    )


def test_wholly_shared_things_go_up_and_down_as_one() -> None:
    one = estimate(items(Three(100, 150, 900), cause="inside", strength=1.0), seed=2).money.drawn
    ten = estimate(
        items(*[Three(100, 150, 900)] * 10, cause="inside", strength=1.0), seed=2
    ).money.drawn
    assert ten.figures == pytest.approx([10 * figure for figure in one.figures])
    assert ten.deviation == pytest.approx(10 * one.deviation)


@settings(max_examples=40, deadline=None)
@given(
    st.lists(three_figures(), max_size=8),
    st.sampled_from([0.0, 0.5, 1.0]),
    st.integers(1, 2**31),
    st.integers(1, 10**8),
)
def test_what_holds_of_every_estimate(
    threes: list[Three], strength: float, seed: int, ceiling: int
) -> None:
    things = items(*threes, cause="rot" if strength else "", strength=strength)
    found = estimate(things, seed, ceiling, draws=500)
    assert found == estimate(things, seed, ceiling, draws=500)
    money = found.money
    least, most = sum(t.best for t in threes), sum(t.worst for t in threes)
    slack = 1e-6 * (1 + most)
    assert least - slack <= money.drawn.mean <= most + slack
    assert all(a <= b for a, b in pairwise(money.drawn.figures))
    assert all(least - slack <= figure <= most + slack for figure in money.drawn.figures)
    assert sum(money.counts) == 500
    assert money.drawn.under is not None
    assert 0 <= money.drawn.under <= 1
    assert [w.swing for w in money.weights if w.swing < 0] == []
    if most > least:
        assert sum(w.part for w in money.weights) == pytest.approx(1)
    else:
        assert money.drawn.deviation == money.formula.deviation == 0


def test_another_finding_leaves_the_draws_of_the_others_as_they_are() -> None:
    few = estimate(items(*NETWORK[:3]), seed=4).money.drawn.mean
    more = estimate(items(*NETWORK[:3], Three(7, 7, 7)), seed=4).money.drawn.mean
    assert more == pytest.approx(few + 7)


def test_the_widest_finding_weighs_most_and_a_certain_one_nothing() -> None:
    found = estimate(
        items(Three(0, 10, 20), Three(500, 500, 500), Three(0, 400, 2000)), seed=9
    ).money.weights
    assert [weight.finding_id for weight in found] == [2, 0, 1]
    assert found[0].part > 0.99
    assert found[0].at_worst == pytest.approx(2000 - 600)
    assert found[-1].part == found[-1].swing == 0


def test_no_findings_come_to_nothing() -> None:
    found = estimate([], 1, ceiling=100, ceiling_minutes=60)
    assert found.money.drawn.mean == found.minutes.formula.deviation == 0
    assert found.under_both == 1


def test_absurd_sums_stay_finite() -> None:
    found = estimate(items(*[Three(0, 10**13, 10**13)] * 200), seed=1, draws=200).money
    assert math.isfinite(found.drawn.deviation)
    assert found.drawn.mean < 2 * 10**15


def test_it_is_said_where_both_ways_differ() -> None:
    apart = estimate(items(*[Three(0, 10, 900)] * 6, cause="rot", strength=1.0), seed=1)
    words = ways_in_words(apart.money, has_causes=apart.has_causes)
    assert "the formula says" in words
    assert "shares a cause" in words
    close = estimate(items(*[Three(1000, 1010, 1020)] * 6), seed=1)
    assert "agree within 1 %" in ways_in_words(close.money, has_causes=False)
