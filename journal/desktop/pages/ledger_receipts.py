"""The list of receipts, with what is done to them."""

from collections.abc import Sequence

from journal.actions import receipts as receipt_actions
from journal.actions.ledger_page import LedgerRead
from journal.desktop.desk import Desk, ReceiptSelected
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.locales import money
from journal.desktop.pages.ledger_lists import NOT_SHARED, LedgerList
from journal.desktop.pages.ledger_papers import choose_papers
from journal.desktop.widgets.parts import EmptyState, button
from journal.desktop.widgets.rows import Column, RowsTable
from journal.domain.areas import Area
from journal.domain.ids import AreaId, ReceiptId
from journal.domain.receipts import Paper, Receipt
from journal.domain.when import spoken


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
                Column("What", self._what, wide=True),
                self.part_column(),
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
        self._show_parts(shown=False)
        table.on_opened(lambda _receipt: self.edit())
        table.selectionModel().currentRowChanged.connect(self._on_current)
        self._on_delete(self.remove)

    def show_found(self, found: LedgerRead) -> None:
        """Show the receipts that the page has read."""
        self.show_receipts(found.receipts, found.areas)

    def show_receipts(self, receipts: Sequence[Receipt], areas: Sequence[Area]) -> None:
        """Show receipts given in order of date."""
        self._names = {area.id: area.name for area in areas}
        self.set_rows(tuple(reversed(receipts)))

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
        from journal.desktop.dialogs.receipt import ReceiptDialog

        open_dialog(ReceiptDialog(self.desk, self.window()))

    def read(self) -> None:
        """Ask which papers of receipts to read."""
        choose_papers(self.desk, self.window())

    def edit(self) -> None:
        """Ask for the picked receipt anew."""
        from journal.desktop.dialogs.receipt import ReceiptDialog

        picked = self.table.picked()
        if picked is not None and not self.desk.read_only:
            open_dialog(ReceiptDialog(self.desk, self.window(), receipt=picked))

    def remove(self) -> None:
        """Take the picked receipt out; undo brings it back."""
        picked = self.table.picked()
        if picked is not None and not self.desk.read_only:
            self.desk.act(receipt_actions.remove_receipt, picked.id)

    def _what(self, receipt: Receipt) -> str:
        """What was bought; of a figure looked at, only what lies in it."""
        texts = {} if self._only is None else self._only.texts
        return texts.get(receipt.id) or "; ".join(line.text for line in receipt.lines)

    def _shared_to(self, receipt: Receipt) -> str:
        names = dict.fromkeys(
            self._names.get(part.area_id, "") for line in receipt.lines for part in line.shares
        )
        said = "; ".join(name for name in names if name)
        if not said:
            return NOT_SHARED
        whole = all(line.shares for line in receipt.lines)
        return said if whole else f"{said}; some {NOT_SHARED}"

    def _on_current(self) -> None:
        picked = self.table.picked()
        # A list that only got the keyboard has a place, but nothing was picked in it yet.
        is_picked = self.table.selectionModel().hasSelection()
        if picked is not None and is_picked and self.table.hasFocus():
            self.desk.select(ReceiptSelected(picked.id))


def _paid(receipt: Receipt) -> int:
    return receipt.lines_total if receipt.printed_total is None else receipt.printed_total


def _total(receipt: Receipt) -> str:
    differs = receipt.printed_total not in (None, receipt.lines_total)
    return money(_paid(receipt), receipt.currency) + (" ≠ lines" if differs else "")


def _paper(receipt: Receipt) -> str:
    if receipt.paper is not Paper.HELD:
        return receipt.paper.value
    return f"held, {len(receipt.papers)} here" if receipt.papers else "held, no scan"
