"""The lists of receipts and of hours, with what is done to them."""

from collections.abc import Callable, Sequence
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QLineEdit, QPushButton, QWidget

from journal.actions import hours as hour_actions
from journal.actions import receipts as receipt_actions
from journal.desktop.desk import Desk, ReceiptSelected
from journal.desktop.dialogs.hours import HoursDialog
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.dialogs.receipt import ReceiptDialog
from journal.desktop.pages.ledger_filters import ReceiptFilter, WorkFilter
from journal.desktop.pages.ledger_papers import choose_papers
from journal.desktop.widgets.parts import EmptyState, button, column, label, row
from journal.desktop.widgets.rows import Column, RowsTable
from journal.desktop.widgets.share_edit import shares_in_words
from journal.domain.areas import Area
from journal.domain.hours import spoken_hours
from journal.domain.ids import AreaId, ReceiptId
from journal.domain.money import format_money
from journal.domain.receipts import Paper, Receipt
from journal.domain.when import spoken
from journal.domain.work import Work

_NOT_SHARED = "not shared"


class LedgerList(QWidget):
    """A table with acts above it, words to filter by, and a filter set by a figure.

    Attributes:
        nouns: what one row and what several are called.
    """

    nouns = ("row", "rows")

    def __init__(
        self, desk: Desk, table: RowsTable, acts: Sequence[QPushButton], empty: EmptyState
    ) -> None:
        super().__init__()
        self.desk = desk
        self.table = table
        self.empty = empty
        self._rows: tuple[Any, ...] = ()
        self._passes: Callable[[Any], bool] | None = None
        self.filter = QLineEdit()
        self.filter.setPlaceholderText("Filter by words")
        self.filter.setAccessibleName("Filter by words")
        self.filter.setClearButtonEnabled(True)
        self.filter.textChanged.connect(self.show_rows)
        self.only = button("", self.show_all, icon="close", hint="Show all again")
        self.only.hide()
        self.count = label("", "muted", wrap=False)
        self._bar = QWidget()
        bar = row(*acts, self.only, None, self.filter)
        bar.setStretch(bar.count() - 1, 1)
        self._bar.setLayout(bar)
        self.filter.setMaximumWidth(320)
        for act in acts:
            act.setEnabled(not desk.read_only)
        layout = column(self._bar, table, empty, self.count, spacing=8)
        layout.setContentsMargins(0, 8, 0, 0)
        self.setLayout(layout)

    @property
    def is_empty(self) -> bool:
        """Whether there is nothing to list, whatever the filters."""
        return not self._rows

    def words(self, shown: Any) -> str:
        """What the filter looks for words in."""
        raise NotImplementedError

    def set_rows(self, rows: Sequence[Any]) -> None:
        """Show these, as far as they pass."""
        self._rows = tuple(rows)
        self.show_rows()

    def set_only(self, words: str, passes: Callable[[Any], bool]) -> None:
        """Show only what a figure is made of."""
        self.only.setText(f"Only: {words}".replace("&", "&&"))
        self.only.setAccessibleName(f"Only {words} is shown; press to show all")
        self.only.show()
        self._passes = passes
        self.filter.clear()
        self.show_rows()
        self.table.setFocus()

    def show_all(self) -> None:
        """Forget the filter of a figure."""
        self.only.hide()
        self._passes = None
        self.show_rows()

    def show_rows(self) -> None:
        """Show what passes."""
        wanted = self.filter.text().casefold().split()
        shown = [
            found
            for found in self._rows
            if (self._passes is None or self._passes(found))
            and all(word in self.words(found).casefold() for word in wanted)
        ]
        self.table.set_rows(shown)
        has_any = bool(self._rows)
        for piece in (self._bar, self.table, self.count):
            piece.setVisible(has_any)
        self.empty.setVisible(not has_any)
        number = len(self._rows)
        all_of_them = f"{number:,} {self.nouns[number != 1]}"
        self.count.setText(
            all_of_them if len(shown) == number else f"{len(shown):,} of {all_of_them}"
        )

    def _on_delete(self, act: Callable[[], object]) -> None:
        keys = QShortcut(QKeySequence(Qt.Key.Key_Delete), self.table)
        keys.setContext(Qt.ShortcutContext.WidgetShortcut)
        keys.activated.connect(act)


class ReceiptList(LedgerList):
    """All receipts, the latest first."""

    nouns = ("receipt", "receipts")

    def __init__(self, desk: Desk) -> None:
        self._names: dict[AreaId, str] = {}
        table = RowsTable(
            "Receipts",
            (
                Column("Date", lambda r: spoken(r.when), lambda r: r.when),
                Column("Supplier", lambda r: r.supplier or "no supplier"),
                Column("What", _what, wide=True),
                Column("Total", _total, lambda r: (r.currency, _paid(r)), number=True),
                Column("Paper", _paper),
                Column("For", self._shared_to, wide=True),
            ),
        )
        acts = (
            button("New re&ceipt", self.new, icon="receipt", role="primary"),
            button(
                "Read &papers", self.read, icon="file", hint="Photos, scans or PDFs of receipts"
            ),
            button("E&dit", self.edit, icon="edit"),
            button("Re&move", self.remove, icon="remove"),
        )
        first = button("New re&ceipt", self.new, icon="receipt", role="primary")
        first.setEnabled(not desk.read_only)
        empty = EmptyState(
            "receipt",
            "No receipt yet",
            "A receipt is what was paid to one supplier on one day, in lines. Its paper may be "
            "held, lost, or never have existed; each is worth recording.",
            first,
        )
        super().__init__(desk, table, acts, empty)
        table.on_opened(lambda _receipt: self.edit())
        table.selectionModel().currentRowChanged.connect(self._on_current)
        self._on_delete(self.remove)

    def show_receipts(self, receipts: Sequence[Receipt], areas: Sequence[Area]) -> None:
        """Show receipts given in order of date."""
        self._names = {area.id: area.name for area in areas}
        self.set_rows(tuple(reversed(receipts)))

    def keep_only(self, wanted: ReceiptFilter) -> None:
        """Show the receipts that a figure is made of."""
        self.set_only(wanted.words, wanted.passes)

    def pick(self, receipt_id: ReceiptId) -> None:
        """Pick a receipt, even where a filter hides it."""
        found = [shown for shown in self._rows if shown.id == receipt_id]
        if found and found[0] not in self.table.rows_model.rows():
            self.filter.clear()
            self.show_all()
        if found and self.table.picked() != found[0]:
            self.table.pick(found[0])

    def words(self, shown: Receipt) -> str:
        """Supplier, date, lines, note and areas."""
        lines = " ".join(f"{line.text} {line.category.value}" for line in shown.lines)
        parts = (shown.supplier, spoken(shown.when), lines, shown.note, shown.stands_in)
        return " ".join((*parts, _paper(shown), self._shared_to(shown)))

    def new(self) -> None:
        """Ask for a new receipt."""
        open_dialog(ReceiptDialog(self.desk, self.window()))

    def read(self) -> None:
        """Ask which papers of receipts to read."""
        choose_papers(self.desk, self.window())

    def edit(self) -> None:
        """Ask for the picked receipt anew."""
        picked = self.table.picked()
        if picked is not None and not self.desk.read_only:
            open_dialog(ReceiptDialog(self.desk, self.window(), receipt=picked))

    def remove(self) -> None:
        """Take the picked receipt out; undo brings it back."""
        picked = self.table.picked()
        if picked is not None and not self.desk.read_only:
            self.desk.act(receipt_actions.remove_receipt, picked.id)

    def _shared_to(self, receipt: Receipt) -> str:
        names = dict.fromkeys(
            self._names.get(part.area_id, "") for line in receipt.lines for part in line.shares
        )
        said = "; ".join(name for name in names if name)
        if not said:
            return _NOT_SHARED
        whole = all(line.shares for line in receipt.lines)
        return said if whole else f"{said}; some {_NOT_SHARED}"

    def _on_current(self) -> None:
        picked = self.table.picked()
        if picked is not None and self.table.hasFocus():
            self.desk.select(ReceiptSelected(picked.id))


class WorkList(LedgerList):
    """All hours, the latest first."""

    nouns = ("day", "days")

    def __init__(self, desk: Desk) -> None:
        self._names: dict[AreaId, str] = {}
        table = RowsTable(
            "Hours",
            (
                Column("Date", lambda w: spoken(w.when), lambda w: w.when),
                Column("Person", lambda w: w.person or "nobody named"),
                Column(
                    "Hours", lambda w: spoken_hours(w.minutes), lambda w: w.minutes, number=True
                ),
                Column("For", self._shared_to, wide=True),
                Column("Note", lambda w: w.note, wide=True),
            ),
        )
        acts = (
            button("New h&ours", self.new, icon="hours", role="primary"),
            button("E&dit", self.edit, icon="edit"),
            button("Re&move", self.remove, icon="remove"),
        )
        first = button("New h&ours", self.new, icon="hours", role="primary")
        first.setEnabled(not desk.read_only)
        empty = EmptyState(
            "hours",
            "No hours yet",
            "Hours are worked by one person on one day, and shared over the repair areas they "
            "went into. They never become money here.",
            first,
        )
        super().__init__(desk, table, acts, empty)
        table.on_opened(lambda _work: self.edit())
        self._on_delete(self.remove)

    def show_work(self, work: Sequence[Work], areas: Sequence[Area]) -> None:
        """Show hours given in order of date."""
        self._names = {area.id: area.name for area in areas}
        self.set_rows(tuple(reversed(work)))

    def keep_only(self, wanted: WorkFilter) -> None:
        """Show the hours that a figure is made of."""
        self.set_only(wanted.words, wanted.passes)

    def words(self, shown: Work) -> str:
        """Person, date, note and areas."""
        return " ".join((shown.person, spoken(shown.when), shown.note, self._shared_to(shown)))

    def new(self) -> None:
        """Ask for new hours."""
        open_dialog(HoursDialog(self.desk, self.window()))

    def edit(self) -> None:
        """Ask for the picked hours anew."""
        picked = self.table.picked()
        if picked is not None and not self.desk.read_only:
            open_dialog(HoursDialog(self.desk, self.window(), work=picked))

    def remove(self) -> None:
        """Take the picked hours out; undo brings them back."""
        picked = self.table.picked()
        if picked is not None and not self.desk.read_only:
            self.desk.act(hour_actions.remove_work, picked.id)

    def _shared_to(self, work: Work) -> str:
        return shares_in_words(work.shares, self._names) or _NOT_SHARED


def _what(receipt: Receipt) -> str:
    return "; ".join(line.text for line in receipt.lines)


def _paid(receipt: Receipt) -> int:
    return receipt.lines_total if receipt.printed_total is None else receipt.printed_total


def _total(receipt: Receipt) -> str:
    differs = receipt.printed_total not in (None, receipt.lines_total)
    return format_money(_paid(receipt), receipt.currency) + (" ≠ lines" if differs else "")


def _paper(receipt: Receipt) -> str:
    if receipt.paper is not Paper.HELD:
        return receipt.paper.value
    return f"held, {len(receipt.papers)} here" if receipt.papers else "held, no scan"
