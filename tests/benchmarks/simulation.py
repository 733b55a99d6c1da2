"""How long a survey of 200 findings takes to be played through 20,000 times.

Run it: ``python -m tests.benchmarks.simulation``. The floor beside it is NumPy's own generator
drawing as many standard normal numbers as there are findings and draws, once: what is drawn of
money and hours hangs on the same number. Beside that, as many beta numbers of money and of hours by
NumPy, which know no shared cause.
"""

import statistics
import sys
import time
from collections.abc import Callable

import numpy as np

from journal.domain.estimates import DRAWS, Item
from journal.domain.findings import Three
from journal.domain.ids import FindingId
from journal.ledger import simulation

_FINDINGS, _ROUNDS = 200, 7


def items(count: int = _FINDINGS) -> list[Item]:
    """Findings with figures all of their own; two in three share one of two causes."""
    picked = np.random.default_rng(3)
    made = []
    for number in range(count):
        money = Three(*sorted(int(one) for one in picked.integers(0, 100_000, 3)))
        minutes = Three(*sorted(int(one) for one in picked.integers(0, 6_000, 3)))
        cause, strength = (("", 0.0), ("rot", 0.5), ("inside", 0.8))[number % 3]
        made.append(Item(FindingId(number), number, money, minutes, cause, strength))
    return made


def median(act: Callable[[], object]) -> float:
    """Seconds, the middle of some rounds."""
    taken = []
    for _ in range(_ROUNDS):
        start = time.perf_counter()
        act()
        taken.append(time.perf_counter() - start)
    return statistics.median(taken)


def _first(things: list[Item]) -> None:
    """Play through with nothing tabulated yet, as on the first look."""
    simulation._curve.cache_clear()
    simulation.estimate(things, 7, 9_000_000, 500_000)


def _tell(text: str) -> None:
    sys.stdout.write(f"{text}\n")


def main() -> None:
    """Measure, and print."""
    things, size = items(), (_FINDINGS, DRAWS)
    floor = median(lambda: np.random.default_rng(1).standard_normal(size))
    beta = median(lambda: [np.random.default_rng(1).beta(2, 4, size) for _ in range(2)])
    _tell(f"{_FINDINGS} findings, {DRAWS:,} draws, seconds (median of {_ROUNDS}):")
    _tell(f"  NumPy, standard normal numbers alone   {floor:.3f}")
    _tell(f"  NumPy, beta numbers, money and hours   {beta:.3f}")
    for name, act in (
        ("the estimate, first look", lambda: _first(things)),
        ("the estimate, again", lambda: simulation.estimate(things, 7, 9_000_000, 500_000)),
    ):
        taken = median(act)
        _tell(f"  {name:<38} {taken:.3f}, {taken / floor:.1f} times the floor")


if __name__ == "__main__":
    main()
