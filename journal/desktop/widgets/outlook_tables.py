"""Tables of an estimate: what to look at first, estimated and actual, against another survey."""

from collections.abc import Iterable

from PySide6.QtWidgets import QWidget

from journal.actions.surveys import Compared
from journal.desktop.widgets.bars import BarDelegate
from journal.desktop.widgets.rows import Column, RowsTable
from journal.domain.estimates import Weight
from journal.domain.findings import Finding
from journal.domain.ids import FindingId
from journal.domain.money import format_whole
from journal.domain.outcomes import AreaOutcome

_NONE = "\N{EN DASH}"


class WeightsTable(RowsTable):
    """What would change the answer most, the heaviest first."""

    def __init__(self, parent: QWidget | None = None) -> None:
        self._findings: dict[FindingId, Finding] = {}
        self._currency: str = ""
        self._most = 1.0
        columns = (
            Column("", lambda w: str(self._of(w).rank), lambda w: self._of(w).rank, number=True),
            Column("Finding", lambda w: self._of(w).text, wide=True),
            Column("How bad", lambda w: self._of(w).severity.value),
            Column("Part of the doubt", _part, lambda w: w.part, wide=True, bar=self._bar),
            Column("At its best", lambda w: self._change(w.at_best), lambda w: w.at_best, True),
            Column("At its worst", lambda w: self._change(w.at_worst), lambda w: w.at_worst, True),
        )
        super().__init__("What would change the answer most", columns, parent)
        self.setItemDelegateForColumn(3, BarDelegate(self))

    def show_weights(
        self, weights: Iterable[Weight], findings: Iterable[Finding], currency: str
    ) -> None:
        """Show weights of money, or of time where ``currency`` is ""."""
        self._findings = {one.id: one for one in findings}
        self._currency = currency
        rows = tuple(weight for weight in weights if weight.finding_id in self._findings)
        self._most = max((weight.part for weight in rows), default=0.0) or 1.0
        self.set_rows(rows)

    def _of(self, weight: Weight) -> Finding:
        return self._findings[weight.finding_id]

    def _bar(self, weight: Weight) -> tuple[float, float]:
        return max(0.0, weight.part) / self._most, 1.0

    def _change(self, amount: float) -> str:
        if not amount:
            return _NONE
        return f"{'+' if amount > 0 else '−'}{_amount(abs(amount), self._currency)}"


class OutcomeTable(RowsTable):
    """Estimated and actual, by repair area."""

    def __init__(self, parent: QWidget | None = None) -> None:
        self._currency = ""
        super().__init__(
            "Estimated and actual by repair area",
            (
                Column("Repair area", lambda a: a.name, wide=True),
                Column("Money expected", lambda a: self._money(a.expected), _expected, True),
                Column("Came to", lambda a: self._money(a.money), lambda a: a.money, True),
                Column("Times", lambda a: _times(a.money, a.expected), _money_times, True),
                Column("Hours expected", lambda a: _hours(a.expected_minutes), _minutes, True),
                Column("Came to", lambda a: _hours(a.minutes), lambda a: a.minutes, True),
                Column("Times", lambda a: _times(a.minutes, a.expected_minutes), _time_times, True),
                Column("", lambda a: "finished" if a.finished else "not yet"),
            ),
            parent,
        )

    def show_areas(self, areas: Iterable[AreaOutcome], currency: str) -> None:
        """Show repair areas."""
        self._currency = currency
        self.set_rows(tuple(areas))

    def _money(self, minor: float) -> str:
        return _amount(minor, self._currency)


class ComparedTable(RowsTable):
    """Two surveys, panel by panel."""

    def __init__(self, parent: QWidget | None = None) -> None:
        self._currency = ""
        super().__init__(
            "Two surveys by panel",
            (
                Column("Panel", lambda c: c.label, wide=True),
                Column("Findings then", lambda c: str(c.counts[0]), number=True),
                Column("here", lambda c: str(c.counts[1]), number=True),
                Column("Money then", lambda c: self._money(c.money[0]), _then, True),
                Column("here", lambda c: self._money(c.money[1]), _now, True),
                Column("Hours then", lambda c: _hours(c.minutes[0]), lambda c: c.minutes[0], True),
                Column("here", lambda c: _hours(c.minutes[1]), lambda c: c.minutes[1], True),
            ),
            parent,
        )

    def show_compared(self, rows: Iterable[Compared], currency: str) -> None:
        """Show panels of two surveys."""
        self._currency = currency
        self.set_rows(tuple(rows))

    def _money(self, minor: float) -> str:
        return _amount(minor, self._currency)


def _amount(amount: float, currency: str) -> str:
    return format_whole(round(amount), currency) if currency else _hours(amount)


def _hours(minutes: float) -> str:
    return f"{minutes / 60:,.1f} h" if 0 < minutes < 600 else f"{minutes / 60:,.0f} h"


def _part(weight: Weight) -> str:
    return f"{100 * weight.part:.0f} %" if weight.part >= 0.01 else "< 1 %"


def _times(came: float, hoped: float) -> str:
    return f"{came / hoped:.2f}" if hoped else _NONE


def _expected(area: AreaOutcome) -> float:
    return area.expected


def _minutes(area: AreaOutcome) -> float:
    return area.expected_minutes


def _money_times(area: AreaOutcome) -> float:
    return area.money / area.expected if area.expected else 0.0


def _time_times(area: AreaOutcome) -> float:
    return area.minutes / area.expected_minutes if area.expected_minutes else 0.0


def _then(row: Compared) -> float:
    return row.money[0]


def _now(row: Compared) -> float:
    return row.money[1]
