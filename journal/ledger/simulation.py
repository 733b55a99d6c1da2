"""A survey played through many times: each finding drawn between its best and its worst.

Each finding follows a PERT curve: the beta curve from best to worst with its peak at likely and
shape sum 6, whose mean is (O + 4M + P) / 6. Findings that share a cause are drawn by a one-factor
Gaussian copula: the normal variable behind each is made of a common one, with the cause's strength
as its part of the variance, and one of its own. Money and hours of a finding follow the same
variable: what turns out worse costs more of both.

Random bits are those of PCG64, whose stream NumPy promises to keep; each finding and each cause
has a stream of its own, made of the survey's seed and its number or name.
"""

from __future__ import annotations

import math
import zlib
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from journal.domain.estimates import DRAWS, LEVELS, Estimate, Item, Outlook, Spread, Weight
from journal.domain.findings import Three
from journal.ledger.estimates import formula

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
    Singles = NDArray[np.float32]

#: The normal variable is tabulated from -_REACH to +_REACH, so many steps a unit.
_REACH, _STEPS = 6, 200
_BARS = 48
#: What a stream of random bits belongs to.
_OWN, _CAUSE = 0, 1


def estimate(
    items: Sequence[Item],
    seed: int,
    ceiling: int | None = None,
    ceiling_minutes: int | None = None,
    draws: int = DRAWS,
) -> Estimate:
    """The sums of money and of time, simulated with a seed, and the closed formula beside them."""
    money, minutes = _Sums(len(items), draws), _Sums(len(items), draws)
    factors: dict[str, Singles] = {}
    for place, item in enumerate(items):
        behind = _Behind.of(item, seed, draws, factors)
        money.put(place, item.money, behind)
        minutes.put(place, item.minutes, behind)
    return Estimate(
        count=len(items),
        draws=draws,
        seed=seed,
        money=_outlook(items, [item.money for item in items], money, ceiling),
        minutes=_outlook(items, [item.minutes for item in items], minutes, ceiling_minutes),
        under_both=_under_both(money.total, minutes.total, ceiling, ceiling_minutes),
        has_causes=any(item.cause and item.strength > 0 for item in items),
    )


class _Sums:
    """Every draw of every item, and of their sum."""

    def __init__(self, count: int, draws: int) -> None:
        import numpy as np

        self.each = np.zeros((count, draws))
        self.total = np.zeros(draws)

    def put(self, place: int, three: Three, behind: _Behind) -> None:
        """Draw one item and add it."""
        row = self.each[place]
        behind.drawn(three, row)
        self.total += row


@dataclass(frozen=True, slots=True)
class _Behind:
    """The normal variables behind one item, as places in the tables of curves."""

    whole: NDArray[np.intp]
    rest: Floats

    @classmethod
    def of(cls, item: Item, seed: int, draws: int, factors: dict[str, Singles]) -> _Behind:
        """Those of an item; the causes' own are made once and kept in ``factors``."""
        import numpy as np

        normal = normals(seed, (_OWN, item.key), draws)
        if item.cause and item.strength > 0:
            if item.cause not in factors:
                key = zlib.crc32(item.cause.encode())
                factors[item.cause] = normals(seed, (_CAUSE, key), draws)
            normal *= np.float32(math.sqrt(1 - item.strength))
            normal += np.float32(math.sqrt(item.strength)) * factors[item.cause]
        places = normal.astype(np.float64)
        places += _REACH
        places *= _STEPS
        np.clip(places, 0, 2 * _REACH * _STEPS - 1e-6, out=places)
        whole = places.astype(np.intp)
        places -= whole
        return cls(whole, places)

    def drawn(self, three: Three, into: Floats) -> None:
        """The values of three figures for every draw."""
        reach = three.worst - three.best
        if not reach:
            into.fill(three.best)
            return
        values, steps = _curve((three.likely - three.best) / reach)
        steps.take(self.whole, out=into)
        into *= self.rest
        into += values.take(self.whole)
        into *= reach
        into += three.best


def normals(seed: int, key: tuple[int, int], count: int) -> Singles:
    """Standard normal numbers by Box and Muller, from PCG64's bits: the same for the same seed.

    Single precision is plenty: it is a hundredth of a table's step.
    """
    import numpy as np

    bits = np.random.PCG64(np.random.SeedSequence((abs(seed), *key)))
    half = (count + 1) // 2
    even = bits.random_raw(half).astype("<u8").view("<u4").astype(np.float32)
    # Half a step more, so that none is nothing, which has no logarithm.
    even += np.float32(0.5)
    even *= np.float32(2.0**-32)
    far = np.sqrt(np.float32(-2.0) * np.log(even[:half]))
    turn = even[half:] * np.float32(2.0 * math.pi)
    return np.concatenate((far * np.cos(turn), far * np.sin(turn)))[:count]


@lru_cache(maxsize=512)
def _curve(peak: float) -> tuple[Floats, Floats]:
    """A PERT curve from 0 to 1 with its peak there, by the normal variable's table places.

    Gives the value at each place, and the step to the next one.
    """
    import numpy as np

    x = np.linspace(0.0, 1.0, 4001)
    density = x ** (4 * peak) * (1 - x) ** (4 * (1 - peak))
    # Simpson's rule over each pair of steps keeps the sum exact to far below a cent.
    pairs = (density[:-2:2] + 4 * density[1:-1:2] + density[2::2]) / 3
    below = np.concatenate(([0.0], np.cumsum(pairs)))
    values = np.interp(_chances(), below / below[-1], x[::2])
    return values, np.append(np.diff(values), 0.0)


@lru_cache(maxsize=1)
def _chances() -> Floats:
    """The normal distribution function at each place of the tables."""
    import numpy as np

    places = range(2 * _REACH * _STEPS + 1)
    return np.array([math.erfc((_REACH - i / _STEPS) / math.sqrt(2)) / 2 for i in places])


def _outlook(
    items: Sequence[Item], threes: Sequence[Three], sums: _Sums, ceiling: int | None
) -> Outlook:
    import numpy as np

    total = sums.total
    mean, spread = float(total.mean()), float(total.std())
    if not any(three.worst > three.best for three in threes):
        spread = 0.0
    under = None if ceiling is None else float((total <= ceiling).mean())
    figures = tuple(float(one) for one in np.quantile(total, LEVELS))
    shared = [(three, item.cause, item.strength) for item, three in zip(items, threes, strict=True)]
    counts, edges = np.histogram(total, _BARS) if spread else (np.array([len(total)]), [mean, mean])
    return Outlook(
        drawn=Spread(mean, spread, figures, under),
        formula=formula(shared, ceiling),
        ceiling=ceiling,
        weights=_weights(items, threes, sums, spread),
        counts=tuple(int(count) for count in counts),
        edges=tuple(float(edge) for edge in edges),
    )


def _weights(
    items: Sequence[Item], threes: Sequence[Three], sums: _Sums, spread: float
) -> tuple[Weight, ...]:
    """Each item's part of the variance, by its covariance with the sum."""
    if not items:
        return ()
    off = sums.total - sums.total.mean()
    shares = sums.each @ off / len(off)
    scale = spread**2 or 1.0
    found = [
        Weight(
            item.finding_id,
            float(share) / scale if spread and three.worst > three.best else 0.0,
            three.best - three.expected,
            three.worst - three.expected,
        )
        for item, three, share in zip(items, threes, shares, strict=True)
    ]
    return tuple(sorted(found, key=lambda one: (-one.part, -one.swing)))


def _under_both(
    money: Floats, minutes: Floats, ceiling: int | None, ceiling_minutes: int | None
) -> float | None:
    if ceiling is None or ceiling_minutes is None:
        return None
    return float(((money <= ceiling) & (minutes <= ceiling_minutes)).mean())
