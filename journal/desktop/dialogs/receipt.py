"""Recording a receipt: who was paid, when, for what, and where the paper is."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path

import shiboken6
from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QGridLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QWidget,
)

from journal.actions import areas as area_actions
from journal.actions import cars
from journal.actions import receipts as actions
from journal.desktop.desk import AreaSelected, Desk, ReceiptSelected
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.dialogs.receipt_head import ReceiptHead
from journal.desktop.dialogs.receipt_reading import ReceiptReading
from journal.desktop.theme import TARGET
from journal.desktop.widgets.checked import CheckedField
from journal.desktop.widgets.lines_edit import LinesEdit
from journal.desktop.widgets.money_edit import MoneyEdit
from journal.desktop.widgets.papers_edit import PapersEdit
from journal.desktop.widgets.parts import column, label, row, scrolled
from journal.desktop.widgets.share_edit import ShareEdit, shares_in_words
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, ReceiptId, WantedId
from journal.domain.money import format_money
from journal.domain.receipts import Receipt, Share, Spread

#: Where a line can go, as the dialog says it.
_SPREADS = {
    Spread.NONE: "This line goes to the repair areas below",
    Spread.VALUE: "This line goes over the other lines, by value (postage, discount)",
    Spread.COUNT: "This line goes over the other lines, by count",
}
#: A list that may be narrower than what stands in it.
_SHORT = QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon


class ReceiptDialog(FormDialog):
    """A receipt with its lines, shares and papers; a new one or one to be changed.

    Ctrl+Enter records it. A new one is shared to the repair area that is selected.
    """

    def __init__(
        self,
        desk: Desk,
        parent: QWidget | None = None,
        *,
        receipt: Receipt | None = None,
        area_id: AreaId | None = None,
        draft: Receipt | None = None,
        came: Sequence[WantedId] = (),
    ) -> None:
        """``draft`` fills a new receipt; ``came`` are the wanted parts that its lines are."""
        super().__init__("New receipt" if receipt is None else "Receipt", "&Record", parent)
        self._desk = desk
        self._receipt = receipt
        self._recording = False
        given = draft if receipt is None else receipt
        self._refund_of = given.refund_of if given else None
        if area_id is None and receipt is None and isinstance(desk.selection, AreaSelected):
            area_id = desk.selection.id
        car = desk.ask(cars.car)
        areas = desk.ask(area_actions.areas) or ()
        self._names = {area.id: area.name for area in areas}
        self.head = ReceiptHead(car.currency if car else "EUR")
        self.lines = LinesEdit(self.head.currency_code())
        self.same_for_all = QCheckBox("Same for &all lines")
        self.shares = ShareEdit(areas)
        self.shares_title = label("", "subheading", wrap=False)
        self.spread = QComboBox()
        for spread, words in _SPREADS.items():
            self.spread.addItem(words, spread)
        self.spread.setAccessibleName("Where this line goes")
        self.spread.setSizeAdjustPolicy(_SHORT)
        self._printed = MoneyEdit(self.head.currency_code(), optional=True)
        self.printed_total = CheckedField(edit=self._printed)
        self.sum = label("", wrap=False)
        self.tax = MoneyEdit(self.head.currency_code(), optional=True)
        self.papers = PapersEdit(desk)
        self.reading = ReceiptReading(self, desk)
        self.note = QLineEdit()
        self._build()
        self._connect()
        session = desk.session
        desk.read(lambda _context: actions.completions(session), self.head.offer, self)
        if draft is None:
            self._fill(receipt, area_id)
        else:
            self._begin_with(draft, came)

    # --- layout ---

    def _build(self) -> None:
        self.setMinimumSize(1000, 640)
        self.resize(1160, 740)
        self.outer.setSpacing(8)
        self.outer.insertWidget(0, self.head)
        self.outer.insertWidget(1, self.lines, 3)
        self.outer.insertLayout(2, self._build_below(), 2)
        for pressed in self.findChildren(QPushButton):
            pressed.setAutoDefault(False)
            pressed.setDefault(False)
        self.reading.make_room(
            label("Tab or Enter goes on; Ctrl+Enter records.", "muted", wrap=False)
        )

    def _build_below(self) -> QGridLayout:
        shares = QWidget()
        shares.setLayout(column(self.spread, self.shares, None))
        totals = QGridLayout()
        totals.setHorizontalSpacing(12)
        totals.setVerticalSpacing(8)
        for place, (name, field) in enumerate(
            (("The lines make", self.sum), ("&Printed total", self.printed_total))
        ):
            said = QLabel(name)
            said.setBuddy(field)
            said.setMinimumHeight(TARGET)
            totals.addWidget(said, place, 0, Qt.AlignmentFlag.AlignTop)
            totals.addWidget(field, place, 1, Qt.AlignmentFlag.AlignTop)
        self.sum.setMinimumHeight(TARGET)
        note = QLabel("N&ote")
        note.setBuddy(self.note)
        self.printed_total.setAccessibleName("Printed total")
        self.note.setAccessibleName("Note")
        tax = QLabel("&Tax in it")
        tax.setBuddy(self.tax)
        self.tax.setAccessibleName("Tax in it")
        self.tax.setPlaceholderText("as printed, where it is")
        totals.addWidget(tax, 2, 0)
        totals.addWidget(self.tax, 2, 1)
        totals.addWidget(note, 3, 0)
        totals.addWidget(self.note, 3, 1)
        totals.setColumnStretch(1, 1)
        below = QGridLayout()
        below.setHorizontalSpacing(24)
        below.addLayout(row(self.shares_title, None, self.same_for_all), 0, 0)
        below.addWidget(scrolled(shares, is_form=True), 1, 0, 2, 1)
        below.addLayout(totals, 0, 1, 2, 1)
        below.addWidget(self.papers, 2, 1)
        below.setColumnStretch(0, 1)
        below.setColumnStretch(1, 1)
        below.setRowStretch(1, 1)
        return below

    def _connect(self) -> None:
        self.head.currency_changed.connect(self._on_currency)
        self.lines.changed.connect(self._on_lines)
        self.lines.current_changed.connect(self._show_shares)
        self.shares.changed.connect(self._on_shares)
        self.spread.activated.connect(self._on_spread)
        self.same_for_all.toggled.connect(self._on_same)
        self.printed_total.changed.connect(self._show_difference)
        self.papers.changed.connect(self._on_papers)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.accept_button.click)

    def _fill(self, receipt: Receipt | None, area_id: AreaId | None) -> None:
        if receipt is None:
            first = (Share(area_id, 1),) if area_id is not None else ()
            self.shares.set_shares(first)
            self.same_for_all.setChecked(True)
            self._show_shares()
            self.head.supplier.setFocus()
            return
        self._show(receipt)

    def _begin_with(self, draft: Receipt, came: Sequence[WantedId]) -> None:
        self._show(draft)
        if draft.refund_of is not None:
            self.setWindowTitle("Taken back: leave out the lines that stayed")
        elif draft.rate == 1:
            self.head.forget_rate()
        for shown, line in zip(self.lines.rows, draft.lines, strict=True):
            if not line.amount:
                shown.price.clear()
        for shown, part in zip(self.lines.rows, came, strict=False):
            shown.came = part

    def _show(self, receipt: Receipt) -> None:
        self.head.show_receipt(receipt)
        self._on_currency(receipt.currency)
        self.lines.set_lines(receipt.lines)
        self.set_sums(receipt.printed_total, receipt.tax)
        self.note.setText(receipt.note)
        self.same_for_all.setChecked(len({line.shares for line in receipt.lines}) < 2)
        self.papers.set_held(self._paper_paths(receipt))
        self._show_shares()
        self._on_lines()
        self.head.supplier.setFocus()

    def set_sums(self, printed_total: int | None, tax: int | None) -> None:
        """Put in the total and the tax as printed, minor units; None empties a field."""
        self._printed.set_amount(printed_total)
        self.tax.set_amount(tax)

    def is_untouched(self) -> bool:
        """Whether it is for a new receipt and nothing was typed that reading could overwrite."""
        typed = (self.head.supplier.text(), self.printed_total.text(), self.tax.text())
        blank = all(shown.is_blank() for shown in self.lines.rows)
        return self._receipt is None and blank and not any(typed)

    # --- recording ---

    def submit(self) -> bool:
        """Record the receipt and select it; with files to be kept that takes a moment."""
        receipt = self._read()
        session, files = self._desk.session, self.papers.files()
        if self._receipt is None:
            came = self.lines.came()
            return self._record(
                lambda: actions.record_receipt(session, receipt, files, came), at_once=not files
            )
        if receipt != self._receipt or files:
            return self._record(
                lambda: actions.change_receipt(session, receipt, files), at_once=not files
            )
        return True

    def _record(self, act: Callable[[], Changes], *, at_once: bool) -> bool:
        """Record now, or in the writer's thread where papers are copied; whether it is done."""
        if at_once:
            self._tell(act())
            return True
        self._recording = True
        self.buttons.setEnabled(False)
        self._desk.tasks.write(
            "Recording the receipt",
            lambda _context: act(),
            owner=self._desk,
            on_done=self._on_recorded,
            on_failed=self._on_not_recorded,
        )
        return False

    def _tell(self, changes: Changes) -> None:
        self._desk.announce(changes)
        if self._receipt is None and changes.made is not None:
            self._desk.select(ReceiptSelected(ReceiptId(changes.made)))

    def _on_recorded(self, changes: Changes) -> None:
        self._recording = False
        self._tell(changes)
        if shiboken6.isValid(self):
            self.accept()

    def _on_not_recorded(self, error: Exception) -> None:
        self._recording = False
        if not isinstance(error, JournalError):
            self._desk.tell_failure(error)
        if shiboken6.isValid(self):
            self.buttons.setEnabled(True)
            self.show_problem(str(error))

    def reject(self) -> None:
        """Go away, unless it is being recorded just now."""
        if not self._recording:
            super().reject()

    def enter_in_field(self) -> None:
        """Go on to the next field: a receipt is many of them, and recorded once it is whole."""
        self.focusNextChild()

    def _read(self) -> Receipt:
        self._share_alike()
        head = self.head.value()
        lines = self.lines.lines()
        if not lines:
            self.lines.rows[0].text.setFocus()
            raise JournalError("A receipt needs a line; one for the whole of it will do.")
        before = self._receipt
        return replace(
            head,
            id=before.id if before else ReceiptId(0),
            lines=lines,
            printed_total=self._read_printed(),
            papers=before.papers if before else (),
            note=self.note.text().strip(),
            tax=self._read_tax(),
            refund_of=self._refund_of,
            read_text=before.read_text if before else self.reading.text,
        )

    def _read_printed(self) -> int | None:
        try:
            return self._printed.amount()
        except JournalError as error:
            self.printed_total.refuse(error)
            raise

    def _read_tax(self) -> int | None:
        try:
            return self.tax.amount()
        except JournalError:
            self.tax.setFocus()
            raise

    def _paper_paths(self, receipt: Receipt) -> list[Path]:
        found = (self._desk.ask(actions.paper_path, paper) for paper in receipt.papers)
        return [path for path in found if path is not None]

    # --- what follows from what ---

    def _on_currency(self, currency: str) -> None:
        self.lines.set_currency(currency)
        self._printed.set_currency(currency)
        self.tax.set_currency(currency)

    def _on_papers(self) -> None:
        files = self.papers.files()
        if files:
            self.head.hold_paper()
        if files and self.is_untouched():
            self.reading.begin(files[0])

    def _on_lines(self) -> None:
        self._share_alike()
        self.sum.setText(self._money(sum(self.lines.amounts())))
        self._show_amounts()
        self._show_difference()

    def _on_same(self) -> None:
        self._share_alike()
        self._show_shares()

    def _on_shares(self) -> None:
        self.lines.set_shares(self.lines.current, self.shares.shares())
        self._share_alike()
        self._show_words()

    def _on_spread(self) -> None:
        self.lines.set_spread(self.lines.current, Spread(self.spread.currentData()))
        self._show_words()

    def _share_alike(self) -> None:
        """Where one sharing holds for all lines, give it to every one, those added last too."""
        if self.same_for_all.isChecked():
            shares = self.shares.shares()
            for place in range(len(self.lines.rows)):
                self.lines.set_shares(place, shares)
        self._show_words()

    def _show_shares(self) -> None:
        """Show the sharing of all lines, or that of the line the keyboard is in."""
        if not self.same_for_all.isChecked() or not self.shares.shares():
            self.shares.set_shares(self.lines.rows[self.lines.current].shares)
        self.spread.setCurrentText(_SPREADS[self.lines.rows[self.lines.current].spread])
        self._show_amounts()

    def _show_amounts(self) -> None:
        amounts = self.lines.amounts()
        if self.same_for_all.isChecked():
            self.shares_title.setText("Shared to")
            self.shares.set_total(amounts, self._money)
            return
        place = min(self.lines.current, len(amounts) - 1)
        self.shares_title.setText(f"Line {place + 1} shared to")
        self.shares.set_total(amounts[place], self._money)

    def _show_words(self) -> None:
        self.lines.show_shares(
            [
                "the other lines" if shown.spread else shares_in_words(shown.shares, self._names)
                for shown in self.lines.rows
            ]
        )

    def _show_difference(self) -> None:
        printed = self._printed.seen()
        if self._printed.text().strip() and printed is None:
            self.printed_total.say("not a sum yet")
            return
        difference = 0 if printed is None else sum(self.lines.amounts()) - printed
        if not difference:
            self.printed_total.say("" if printed is None else "The lines make just that.")
            return
        more = "more" if difference > 0 else "less"
        self.printed_total.say(
            f"The lines make {self._money(abs(difference))} {more}; both are kept as they are."
        )

    def _money(self, minor: int) -> str:
        return format_money(minor, self.head.currency_code())
