"""Costs laid out by one thing: a table with a bar for each row and a total below."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from journal.desktop.locales import money
from journal.desktop.widgets.bars import BarDelegate
from journal.desktop.widgets.parts import column, label
from journal.desktop.widgets.rows import Column, RowsTable
from journal.desktop.widgets.total_row import TotalRow
from journal.domain.costs import CostRow, CostsBy, CostTable
from journal.domain.hours import spoken_hours

#: What the first column of each table is called.
TITLES: dict[CostsBy, str] = {
    "category": "Category",
    "area": "Repair area",
    "panel": "Panel",
    "phase": "Phase",
    "year": "Year",
    "month": "Month",
    "supplier": "Supplier",
    "person": "Person",
    "condition": "Condition",
}
_BY_TIME = frozenset({"year", "month"})
_BAR_COLUMN = 1


class CostsView(QWidget):
    """One table of costs."""

    #: A row is to be shown in the receipts it is made of: a CostRow.
    opened = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._table: CostTable | None = None
        self._most = 0
        columns = self._columns()
        self.table = RowsTable("Costs", columns)
        self.total = TotalRow(self.table, columns)
        self.table.setItemDelegateForColumn(_BAR_COLUMN, BarDelegate(self.table))
        self.table.on_opened(self.opened.emit)
        hint = label(
            "Bars: restoration filled, upkeep hatched. Enter or a double click shows the lines "
            "a row is made of.",
            "muted",
        )
        layout = column(hint)
        layout.insertLayout(0, column(self.table, self.total, spacing=0), 1)
        layout.setSpacing(6)
        layout.setContentsMargins(0, 8, 0, 0)
        self.setLayout(layout)

    def _columns(self) -> tuple[Column, ...]:
        return (
            Column("", lambda row: row.label, self._key, wide=True),
            Column("Share", self._part, lambda row: row.money, wide=True, bar=self._bar),
            Column("Restoration", lambda r: self._money(r.restoration), _restoration, number=True),
            Column("Upkeep", lambda r: self._money(r.upkeep), _upkeep, number=True),
            Column("Together", lambda r: self._money(r.money), _together, number=True),
            Column("Hours", _hours, lambda row: row.minutes, number=True),
            Column("Not proven", lambda r: self._money(r.unproven), _unproven, number=True),
        )

    def show_table(self, table: CostTable) -> None:
        """Show costs."""
        self._table = table
        self.table.rows_model.entitle(0, TITLES[table.by])
        self.table.setAccessibleName(f"Costs by {TITLES[table.by].lower()}")
        self._most = max((abs(row.money) for row in table.rows), default=0)
        self.table.set_rows(table.rows)
        self.total.show_total(table.total)

    def _key(self, row: CostRow) -> object:
        by_time = self._table is not None and self._table.by in _BY_TIME
        return row.key if by_time else row.label.casefold()

    def _money(self, minor: int) -> str:
        if self._table is None or not minor:
            return "\N{EN DASH}"
        return money(minor, self._table.currency)

    def _part(self, row: CostRow) -> str:
        total = self._table.total.money if self._table else 0
        if not total or not row.money or row.key == "":
            return ""
        part = 100 * row.money / total
        return f"{part:.0f} %" if part >= 1 else "< 1 %"

    def _bar(self, row: CostRow) -> tuple[float, float]:
        if not self._most or row.money <= 0:
            return 0.0, 0.0
        return row.money / self._most, max(0.0, min(1.0, row.restoration / row.money))


def _restoration(row: CostRow) -> int:
    return row.restoration


def _upkeep(row: CostRow) -> int:
    return row.upkeep


def _together(row: CostRow) -> int:
    return row.money


def _unproven(row: CostRow) -> int:
    return row.unproven


def _hours(row: CostRow) -> str:
    return spoken_hours(row.minutes) if row.minutes else "\N{EN DASH}"
