"""What would come in from a sheet: every item with what becomes of it, and the rows that don't."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QAbstractItemView, QTabWidget, QWidget

from journal.actions.bring_in import Plan
from journal.desktop.widgets.parts import button, column, label, row
from journal.desktop.widgets.rows import Column, RowsTable
from journal.domain.hours import spoken_hours
from journal.domain.money import format_money
from journal.domain.sheet_items import Fate, Item
from journal.domain.sheet_rows import Told
from journal.domain.when import spoken

#: More sentences than this are told by their number.
_REMARKS = 4


@dataclass(frozen=True, slots=True)
class _Row:
    """An item as a row of the table; ``place`` is its number among the items."""

    place: int
    item: Item
    fate: Fate


def _numbers(item: Item) -> str:
    first, *rest = item.rows
    return f"{first} +{len(rest)}" if rest else str(first)


def _when(found: _Row) -> str:
    dated = found.item.receipt or found.item.work
    return spoken(dated.when) if dated else ""


def _earliest(found: _Row) -> datetime:
    dated = found.item.receipt or found.item.work
    return dated.when.earliest if dated else datetime.max


def _who(item: Item) -> str:
    if item.receipt is not None:
        return item.receipt.supplier
    return item.work.person if item.work else ""


def _what(item: Item) -> str:
    if item.receipt is not None:
        texts = [line.text for line in item.receipt.lines]
        return texts[0] if len(texts) == 1 else f"{texts[0]} and {len(texts) - 1} more"
    return item.work.note if item.work else ""


def _much(item: Item) -> str:
    if item.receipt is not None:
        return format_money(item.receipt.lines_total, item.receipt.currency)
    return spoken_hours(item.work.minutes) if item.work else ""


def _sum(found: _Row) -> int:
    if found.item.receipt is not None:
        return found.item.receipt.lines_total
    return found.item.work.minutes if found.item.work else 0


def _becomes(found: _Row) -> str:
    match = found.item.match
    if found.fate is Fate.STANDS_IN:
        return f"stands in for receipt {match}"
    said = found.fate.value
    why = found.item.why
    if why and found.fate is found.item.fate:
        at = f" (receipt {match})" if match is not None else ""
        said += f": {why}{at}"
    return said


_ITEMS = (
    Column("Row", lambda r: _numbers(r.item), lambda r: r.item.rows, number=True),
    Column("Date", _when, _earliest),
    Column("Who", lambda r: _who(r.item)),
    Column("What", lambda r: _what(r.item), wide=True),
    Column("Amount", lambda r: _much(r.item), _sum, number=True),
    Column("What becomes of it", _becomes),
)
_TOLD = (
    Column("Row", lambda t: str(t.row), lambda t: t.row, number=True),
    Column("Why", lambda t: t.reason, wide=True),
    Column("What stands there", lambda t: t.text, wide=True),
)


class PreviewPane(QWidget):
    """The items, the rows that can't be read and those that are no record, on three tabs."""

    #: What becomes of an item is another now.
    changed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._plan: Plan | None = None
        self._fates: dict[int, Fate] = {}
        self.summary = label("", "subheading")
        self.remarks = label("", "muted")
        self.items = RowsTable("What comes in", _ITEMS)
        self.items.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.refused = RowsTable("Rows that can't be read", _TOLD)
        self.left_out = RowsTable("Rows that are no record", _TOLD)
        self.come_in = button("Comes &in", lambda: self._set(Fate.NEW))
        self.stand_in = button("&Stands in for its receipt", lambda: self._set(Fate.STANDS_IN))
        self.leave = button("&Leave out", lambda: self._set(Fate.LEAVE))
        acts = row(
            label("The rows picked:", "muted"), self.come_in, self.stand_in, self.leave, None
        )
        holder = QWidget()
        items = column(self.items)
        items.addLayout(acts)
        holder.setLayout(items)
        self.tabs = QTabWidget()
        self.tabs.setDocumentMode(True)
        self.tabs.addTab(holder, "")
        self.tabs.addTab(self.refused, "")
        self.tabs.addTab(self.left_out, "")
        whole = column(self.summary, self.remarks, self.tabs)
        whole.setStretch(2, 1)
        self.setLayout(whole)

    @property
    def fates(self) -> dict[int, Fate]:
        """By an item's place, what the person wants to become of it."""
        return dict(self._fates)

    def show_plan(self, found: Plan) -> None:
        """Show what would come in."""
        self._plan, self._fates = found, {}
        self.refused.set_rows(found.refused)
        self.left_out.set_rows(found.left_out)
        names = ("Receipts and hours", "Can't be read", "No record")
        if found.source.is_bank:
            names = ("Bank lines", *names[1:])
        rows: tuple[Sequence[Item] | Sequence[Told], ...] = (
            found.items, found.refused, found.left_out,
        )  # fmt: skip
        for place, (name, of) in enumerate(zip(names, rows, strict=True)):
            self.tabs.setTabText(place, f"{name} ({len(of):,})")
            self.tabs.setTabEnabled(place, bool(of) or not place)
        self.tabs.setCurrentIndex(0)
        said = list(found.remarks[:_REMARKS])
        if more := found.remarks[_REMARKS:]:
            said.append(f"And {len(more)} more remarks.")
            self.remarks.setToolTip("\n".join(more))
        self.remarks.setText("\n".join(said))
        self.remarks.setVisible(bool(said))
        self.stand_in.setVisible(found.source.is_bank)
        self._show_items()

    def _show_items(self) -> None:
        if self._plan is None:
            return
        rows = [
            _Row(place, item, self._fates.get(place, item.fate))
            for place, item in enumerate(self._plan.items)
        ]
        self.items.set_rows(rows)
        coming = self._plan.coming_in(self._fates)
        money = [format_money(minor, code) for code, minor in sorted(coming.money.items())]
        said = f"{_capital(coming.words())} would come in"
        if coming.minutes:
            money.append(spoken_hours(coming.minutes))
        said += f", {' and '.join(money)} in all." if money else "."
        if refused := len(self._plan.refused):
            said += f" {_rows(refused)} can't be read."
        self.summary.setText(said)
        self.changed.emit()

    def _set(self, fate: Fate) -> None:
        """Have another thing become of the rows picked, where it can."""
        picked_rows = self.items.selectionModel().selection()
        for number in range(picked_rows.size()):
            picked = picked_rows.at(number)
            for place in range(picked.top(), picked.bottom() + 1):
                found = self.items.rows_model.row_at(place)
                if isinstance(found, _Row) and fate in found.item.fates:
                    self._fates[found.place] = fate
        self._show_items()


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _rows(count: int) -> str:
    return "1 row" if count == 1 else f"{count:,} rows"
