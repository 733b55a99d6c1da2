"""Money and hours over time: plain values for a chart."""

from dataclasses import dataclass
from typing import Literal

#: How long one bar is.
Step = Literal["month", "year"]
STEPS: tuple[Step, ...] = ("month", "year")


@dataclass(frozen=True, slots=True)
class Stack:
    """One layer of a stacked chart: as many values as the series has periods."""

    key: str
    label: str
    values: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Series:
    """Sums by period and kind; all stacks with ``apart`` add up to the ledger's total.

    ``periods`` ("2016" or "2016-07") follow each other without a hole, unless they span more than
    a lifetime: then only those that hold something are there. Values are minor units of
    ``currency``, or minutes where ``currency`` is "". ``apart`` is what no period can be told of:
    undated, or by month known to the year only.
    """

    step: Step
    currency: str
    periods: tuple[str, ...]
    stacks: tuple[Stack, ...]
    apart: int

    @property
    def totals(self) -> tuple[int, ...]:
        """Every period's sum over all stacks."""
        if not self.stacks:
            return (0,) * len(self.periods)
        return tuple(sum(column) for column in zip(*(s.values for s in self.stacks), strict=True))
