"""Hours summed: whose they are, what the owner values them at, and how they are known.

All time is in whole minutes. A value is in minor units of the journal's currency; it is no money
spent and is never added to any.
"""

from dataclasses import dataclass
from typing import Literal

#: What hours can be summed by.
SumsBy = Literal["area", "panel", "person", "year", "month"]
SUMS_BY: tuple[SumsBy, ...] = ("area", "panel", "person", "year", "month")

#: The key of the row for hours on no panel, and for those dated worse than to a month.
NO_PANEL = "(no panel)"
NO_MONTH = "(no month)"


@dataclass(frozen=True, slots=True)
class HourSum:
    """Hours of one repair area, panel, person, year or month.

    Attributes:
        key: number, name, "2019" or "2019-03", or one of the keys for what belongs to none.
        label: what people read.
        own: minutes of the owner and friends.
        paid: minutes of people who are paid; what was paid stands on receipts.
        valued: how many of the own minutes the owner gave a rate for.
        value: what those come to, None where there are none.
        clocked: how many of all minutes a clock told.
        at_least: how many of all minutes are lower bounds from photos.
    """

    key: str
    label: str
    own: int = 0
    paid: int = 0
    valued: int = 0
    value: int | None = None
    clocked: int = 0
    at_least: int = 0

    @property
    def minutes(self) -> int:
        """Own and paid together."""
        return self.own + self.paid

    @property
    def stated(self) -> int:
        """How many of all minutes are the owner's word."""
        return self.minutes - self.clocked - self.at_least


@dataclass(frozen=True, slots=True)
class HourTable:
    """Hours by one thing; the rows always add up to ``total``, column by column.

    The total is the same whatever the hours are summed by.
    """

    by: SumsBy
    currency: str
    rows: tuple[HourSum, ...]
    total: HourSum
