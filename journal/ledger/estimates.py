"""The closed three-point formula: the sum of uncertain things by mean and spread alone.

Mean (O + 4M + P) / 6 and deviation (P - O) / 6 of each, as textbooks of management science give
them; variances add up, and what shares a cause of strength r adds twice r times both deviations.
The figures are those of a normal curve.
"""

import math
from collections import defaultdict
from collections.abc import Iterable, Sequence

from journal.domain.estimates import LEVELS, Spread, normal_figure, normal_under
from journal.domain.findings import Three

#: Three figures with the cause they share and its strength.
Shared = tuple[Three, str, float]


def deviation(three: Three) -> float:
    """The standard deviation by the three-point formula."""
    return (three.worst - three.best) / 6


def formula(things: Sequence[Shared], ceiling: int | None = None) -> Spread:
    """The sum by the closed formula."""
    mean = sum(three.expected for three, _, _ in things)
    spread = math.sqrt(variance((deviation(three), cause, r) for three, cause, r in things))
    figures = tuple(normal_figure(mean, spread, level) for level in LEVELS)
    under = None if ceiling is None else normal_under(mean, spread, ceiling)
    return Spread(mean, spread, figures, under)


def variance(parts: Iterable[tuple[float, str, float]]) -> float:
    """The variance of a sum of things with these deviations, causes and strengths."""
    whole = 0.0
    by_cause: dict[tuple[str, float], list[float]] = defaultdict(list)
    for spread, cause, strength in parts:
        whole += spread**2
        if cause:
            by_cause[cause, strength].append(spread)
    for (_, strength), spreads in by_cause.items():
        whole += strength * (sum(spreads) ** 2 - sum(spread**2 for spread in spreads))
    return whole
