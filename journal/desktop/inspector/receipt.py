"""A receipt as recorded: who was paid, for what, what proves it, and where the money belongs."""

from datetime import date
from decimal import Decimal

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from journal.actions import areas as area_actions
from journal.actions import cars
from journal.actions import receipts as actions
from journal.desktop.desk import Desk, Nothing, ReceiptSelected, Selection
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.dialogs.receipt import ReceiptDialog
from journal.desktop.inspector import Pane
from journal.desktop.widgets.flow import FlowLayout
from journal.desktop.widgets.papers_edit import paper_button
from journal.desktop.widgets.parts import button, clear_layout, column, label, scrolled
from journal.desktop.widgets.share_edit import shares_in_words
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId
from journal.domain.money import format_money, to_currency
from journal.domain.quantities import write_quantity
from journal.domain.receipts import Condition, Line, Paper, Receipt
from journal.domain.when import spoken

_KINDS = frozenset({"receipts", "areas"})


class ReceiptPane(Pane):
    """What the inspector says of one receipt."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, parent)
        self._receipt: Receipt | None = None
        self.supplier = label("", "heading")
        self.when = label("", "muted")
        self.paper = label("")
        self._papers = QWidget()
        self._papers_flow = FlowLayout(self._papers)
        self._lines = QGridLayout()
        self._lines.setHorizontalSpacing(12)
        self._lines.setVerticalSpacing(2)
        self._lines.setColumnStretch(0, 1)
        self.total = label("")
        self.note = label("", "muted")
        self._taken_back = QVBoxLayout()
        self._edit = button("Edit", self.edit, icon="edit")
        self.take_back = button("Take &back", self._on_take_back, icon="undo")
        self.take_back.setToolTip("Record what was returned or refunded, as a receipt of its own")
        self._remove = button("Remove", self._on_remove, icon="remove", role="quiet")
        layout = column(self.supplier, self.when, self.paper, self._papers, spacing=8, margin=16)
        layout.addLayout(self._lines)
        for piece in (self.total, self.note):
            layout.addWidget(piece)
        layout.addLayout(self._taken_back)
        acts = FlowLayout()
        for act in (self._edit, self.take_back, self._remove):
            acts.addWidget(act)
        layout.addLayout(acts)
        layout.addStretch(1)
        content = QWidget()
        content.setLayout(layout)
        self.setLayout(column(scrolled(content)))

    def show_selection(self, selection: Selection) -> None:
        """Show the receipt selected."""
        if isinstance(selection, ReceiptSelected):
            self._show(selection)

    def refresh(self, changes: Changes | None) -> None:
        """Read the receipt again where it may have changed."""
        if self._receipt is not None and (changes is None or changes.kinds & _KINDS):
            self._show(ReceiptSelected(self._receipt.id))

    def edit(self) -> None:
        """Ask for the receipt anew."""
        if self._receipt is not None:
            open_dialog(ReceiptDialog(self.desk, self.window(), receipt=self._receipt))

    def _show(self, selection: ReceiptSelected) -> None:
        try:
            receipt = self._receipt = actions.receipt(self.desk.session, selection.id)
        except JournalError:
            # It was taken out.
            self._receipt = None
            self.desk.select(Nothing())
            return
        self.supplier.setText(receipt.supplier or "No supplier")
        self.when.setText(spoken(receipt.when))
        self.paper.setText(paper_words(receipt))
        self._show_papers(receipt)
        self._show_lines(receipt)
        car = self.desk.ask(cars.car)
        own = car.currency if car else receipt.currency
        self.total.setText(f"{total_words(receipt)}{rate_words(receipt, own)}")
        self.note.setText(receipt.note)
        self.note.setVisible(bool(receipt.note))
        self._show_taken_back(receipt)
        self.take_back.setVisible(receipt.refund_of is None)
        for act in (self._edit, self.take_back, self._remove):
            act.setEnabled(not self.desk.read_only)

    def _show_taken_back(self, receipt: Receipt) -> None:
        """Ways from a receipt to those that take it back, and from such a one to what it was."""
        clear_layout(self._taken_back)
        if receipt.refund_of is not None:
            bought = self.desk.ask(actions.receipt, receipt.refund_of)
            if bought is not None:
                self._add_way(f"Takes back: {_named(bought)}", bought)
        for refund in self.desk.ask(actions.refunds_of, receipt.id) or ():
            self._add_way(f"Taken back: {_named(refund)}", refund)

    def _add_way(self, words: str, receipt: Receipt) -> None:
        shown = button(
            words.replace("&", "&&"),
            lambda: self.desk.select(ReceiptSelected(receipt.id)),
            icon="receipt",
            role="quiet",
        )
        self._taken_back.addWidget(shown, 0, Qt.AlignmentFlag.AlignLeft)

    def _on_take_back(self) -> None:
        if self._receipt is None:
            return
        draft = self.desk.ask(actions.refund_for, self._receipt.id, date.today())
        if draft is not None:
            open_dialog(ReceiptDialog(self.desk, self.window(), draft=draft))

    def _show_papers(self, receipt: Receipt) -> None:
        self._papers_flow.clear()
        for number, paper in enumerate(receipt.papers, start=1):
            path = self.desk.ask(actions.paper_path, paper)
            if path is not None:
                kind = path.suffix.lstrip(".").upper()
                self._papers_flow.addWidget(paper_button(self.desk, path, f"{kind} {number}"))
        self._papers.setVisible(bool(receipt.papers))
        self._papers.updateGeometry()

    def _show_lines(self, receipt: Receipt) -> None:
        while (item := self._lines.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        names = {area.id: area.name for area in self.desk.ask(area_actions.areas) or ()}
        for place, line in enumerate(receipt.lines):
            amount = label(format_money(line.amount, receipt.currency), wrap=False)
            amount.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop)
            self._lines.addWidget(label(_line_title(line)), 2 * place, 0)
            self._lines.addWidget(amount, 2 * place, 1)
            self._lines.addWidget(
                label(_line_detail(line, names, receipt.currency), "muted"), 2 * place + 1, 0
            )

    def _on_remove(self) -> None:
        if self._receipt is not None:
            self.desk.act(actions.remove_receipt, self._receipt.id)


def _named(receipt: Receipt) -> str:
    money = format_money(receipt.lines_total, receipt.currency)
    return f"{spoken(receipt.when)}, {money}"


def paper_words(receipt: Receipt) -> str:
    """What proves a receipt, in a sentence."""
    if receipt.paper is Paper.HELD:
        scans = len(receipt.papers)
        if not scans:
            return "Paper held, no scan here."
        return "Paper held, 1 file here." if scans == 1 else f"Paper held, {scans} files here."
    state = "Paper lost" if receipt.paper is Paper.LOST else "There never was a paper"
    return f"{state}; instead: {receipt.stands_in}." if receipt.stands_in else f"{state}."


def total_words(receipt: Receipt) -> str:
    """The total, and the difference where lines and paper don't agree."""
    lines = format_money(receipt.lines_total, receipt.currency)
    printed = receipt.printed_total
    if printed is None or printed == receipt.lines_total:
        return f"Together {lines}."
    more = "more" if receipt.lines_total > printed else "less"
    difference = format_money(abs(receipt.lines_total - printed), receipt.currency)
    said = format_money(printed, receipt.currency)
    return f"The paper says {said}; the lines make {lines}, {difference} {more}."


def rate_words(receipt: Receipt, own: str) -> str:
    """What a receipt in another currency is counted as; "" for one that needs no rate."""
    if receipt.currency == own or receipt.rate in (0, 1):
        return ""
    counted = to_currency(receipt.lines_total, receipt.currency, receipt.rate, own)
    money = format_money(counted, own)
    return f" At {receipt.rate.normalize():f} {own} for 1 {receipt.currency} that is {money}."


def _line_title(line: Line) -> str:
    return (
        line.text
        if line.quantity == Decimal(1)
        else (f"{write_quantity(line.quantity)} × {line.text}")
    )


def _line_detail(line: Line, names: dict[AreaId, str], currency: str) -> str:
    said = [line.category.value]
    if line.condition is not Condition.NONE:
        said.append(line.condition.value)
    if line.new_price is not None:
        said.append(f"{format_money(line.new_price, currency)} new")
    shared = shares_in_words(line.shares, names)
    said.append(f"for {shared}" if shared else "not shared")
    return ", ".join(said)
