"""What a survey comes to, with its uncertainty: the figures of the sum and what they rest on.

All amounts are minor units of the journal's currency, or minutes.
"""

from dataclasses import dataclass
from statistics import NormalDist

from journal.domain.findings import Three
from journal.domain.ids import FindingId

#: The parts of all possible sums that lie at or under the figures given.
LEVELS = (0.5, 0.8, 0.9)

#: How many times the survey is played through.
DRAWS = 20_000

#: Two ways of reckoning that differ by no more than this part are said to agree.
_AGREE = 0.01
_WHY = (
    "It takes a sixth of the range for the spread, and a bell as wide above the mean as below it;"
    " the draws follow each finding's own curve between its best and its worst."
)


@dataclass(frozen=True, slots=True)
class Item:
    """One uncertain thing of a sum: its three figures, and the cause it shares with others.

    ``key`` numbers it within the survey: its draws depend on the seed and on that number alone, so
    that another finding more leaves them as they are. ``cause`` is "" for none.
    """

    finding_id: FindingId
    key: int
    money: Three
    minutes: Three
    cause: str = ""
    strength: float = 0.0


@dataclass(frozen=True, slots=True)
class Spread:
    """A sum with its uncertainty.

    ``figures`` are those that ``LEVELS`` of all outcomes stay at or under; ``under`` is the chance
    of staying at or under the ceiling, None where there is none.
    """

    mean: float
    deviation: float
    figures: tuple[float, ...]
    under: float | None = None


@dataclass(frozen=True, slots=True)
class Weight:
    """How much the answer depends on one finding.

    Attributes:
        part: its part of the variance of the sum, by covariance, so that all parts make 1 and what
            it shares with others is counted with it.
        at_best: how the mean of the sum changes if this one turns out at its best, others as they
            were; nothing or less than nothing.
        at_worst: the same at its worst; nothing or more.
    """

    finding_id: FindingId
    part: float
    at_best: float
    at_worst: float

    @property
    def swing(self) -> float:
        """From best to worst."""
        return self.at_worst - self.at_best


@dataclass(frozen=True, slots=True)
class Outlook:
    """One sum, of money or of time, reckoned both ways.

    Attributes:
        drawn: by simulation.
        formula: by the closed three-point formula with a normal curve.
        weights: of each finding, the heaviest first.
        counts: how many draws fell between the ``edges``, which are one more.
    """

    drawn: Spread
    formula: Spread
    ceiling: int | None
    weights: tuple[Weight, ...]
    counts: tuple[int, ...]
    edges: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Estimate:
    """What a survey comes to; ``under_both`` is the chance of staying under both ceilings."""

    count: int
    draws: int
    seed: int
    money: Outlook
    minutes: Outlook
    under_both: float | None
    has_causes: bool


def normal_figure(mean: float, deviation: float, level: float) -> float:
    """The figure that a part of a normal curve stays under; the mean where nothing is spread."""
    return NormalDist(mean, deviation).inv_cdf(level) if deviation > 0 else mean


def normal_under(mean: float, deviation: float, ceiling: float) -> float:
    """The part of a normal curve at or under a ceiling."""
    if deviation > 0:
        return NormalDist(mean, deviation).cdf(ceiling)
    return 1.0 if mean <= ceiling else 0.0


def ways_in_words(outlook: Outlook, *, has_causes: bool) -> str:
    """Where the simulation and the formula differ, and why, in a sentence or two."""
    pairs = list(zip(LEVELS, outlook.drawn.figures, outlook.formula.figures, strict=True))
    apart = [((formula - drawn) / drawn, level) for level, drawn, formula in pairs if drawn]
    if not apart or max(abs(part) for part, _ in apart) <= _AGREE:
        return "Simulation and formula agree within 1 % at 50, 80 and 90 %."
    part, level = max(apart, key=lambda one: abs(one[0]))
    word = "less" if part < 0 else "more"
    shared = " What shares a cause goes up together, which stretches the dear end." * has_causes
    return f"At {100 * level:.0f} % the formula says {100 * abs(part):.0f} % {word}. {_WHY}{shared}"
