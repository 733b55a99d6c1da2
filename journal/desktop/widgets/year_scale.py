"""Where each month lies on a strip of years: years with nothing in them are drawn short."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

#: An empty year takes as much room as this part of a month of a full one.
_EMPTY_YEAR = 0.6


@dataclass(frozen=True, slots=True, order=True)
class Month:
    """One month of one year."""

    year: int
    month: int

    def moved(self, months: int) -> "Month":
        """The month so many months later (earlier if negative)."""
        year, month = divmod(self.year * 12 + self.month - 1 + months, 12)
        return Month(year, month + 1)


class YearScale:
    """Months against pixels, from the first year with something in it to the last."""

    def __init__(self, months: Iterable[Month], left: float, width: float) -> None:
        full = {month.year for month in months}
        self.years = tuple(range(min(full), max(full) + 1)) if full else ()
        self.full_years = frozenset(full)
        weights = [12.0 if year in full else _EMPTY_YEAR for year in self.years]
        unit = width / sum(weights) if weights else 0.0
        self._starts: dict[int, float] = {}
        self._widths: dict[int, float] = {}
        x = left
        for year, weight in zip(self.years, weights, strict=True):
            self._starts[year], self._widths[year] = x, weight * unit
            x += weight * unit

    def year_span(self, year: int) -> tuple[float, float]:
        """Where a year begins and how wide it is, in pixels."""
        return self._starts[year], self._widths[year]

    def month_span(self, month: Month) -> tuple[float, float]:
        """Where a month begins and how wide it is, in pixels; held within the strip."""
        if not self.years:
            return 0.0, 0.0
        year = min(self.years[-1], max(self.years[0], month.year))
        wide = self._widths[year] / 12
        place = month.month - 1 if year == month.year else (0 if month.year < year else 11)
        return self._starts[year] + place * wide, wide

    def month_at(self, x: float) -> Month | None:
        """The month at a place; the nearest one beyond the ends. None on an empty strip."""
        if not self.years:
            return None
        year = next((y for y in reversed(self.years) if self._starts[y] <= x), self.years[0])
        part = (x - self._starts[year]) / self._widths[year]
        return Month(year, max(1, min(12, int(part * 12) + 1)))

    def day_at(self, x: float) -> date | None:
        """The day at a place; the nearest one beyond the ends. None on an empty strip."""
        month = self.month_at(x)
        if month is None:
            return None
        start, wide = self.month_span(month)
        days = _days_in(month.year, month.month)
        day = int((x - start) / wide * days) + 1 if wide else 1
        return date(month.year, month.month, max(1, min(days, day)))

    def day_x(self, day: date) -> float:
        """The middle of a day, in pixels; held within the strip."""
        start, wide = self.month_span(Month(day.year, day.month))
        days = _days_in(day.year, day.month)
        return start + wide * (day.day - 0.5) / days


def _days_in(year: int, month: int) -> int:
    import calendar

    return calendar.monthrange(year, month)[1]
