"""The head of a receipt: supplier, date, currency, and where the paper is."""

from collections.abc import Sequence
from decimal import Decimal

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QAbstractButton,
    QButtonGroup,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QWidget,
)

from journal.desktop.widgets.checked import CheckedField
from journal.desktop.widgets.pick_edit import PickEdit
from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.errors import JournalError
from journal.domain.ids import ReceiptId
from journal.domain.money import minor_units
from journal.domain.quantities import parse_rate
from journal.domain.receipts import Paper, Receipt

_COMMON = ("EUR", "GBP", "USD", "CHF", "SEK", "NOK", "DKK", "PLN", "CZK", "JPY", "AUD", "CAD")
_PAPER_WORDS = {
    Paper.HELD: "Paper &held",
    Paper.LOST: "Paper &lost",
    Paper.NEVER: "Never e&xisted",
}


class ReceiptHead(QWidget):
    """Who was paid, when, in what money, and what proves it."""

    #: Another currency that exists was written: its code.
    currency_changed = Signal(str)

    def __init__(self, currency: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.own_currency = currency
        self._code = currency
        self._suppliers, self._currencies = PickEdit(), PickEdit()
        self.supplier = CheckedField(edit=self._suppliers)
        self.when = WhenEdit()
        self.when.set_today()
        self._first_date = self.when.text()
        self.currency = CheckedField(edit=self._currencies)
        self.offer(((), ()))
        self.currency.set_text(currency)
        self.rate = CheckedField()
        self.rate_name = QLabel("")
        self.paper = QButtonGroup(self)
        self.stands_in = QLineEdit()
        self.stands_in.setPlaceholderText("a bank statement, an email, a photo of the part ...")
        self.stands_in_name = QLabel("&Instead")
        self.stands_in_name.setToolTip("What stands in for the paper")
        self._build()
        self.currency.changed.connect(self._on_currency)
        self.paper.buttonToggled.connect(self._on_paper)
        self._on_currency()
        self._on_paper()

    def _build(self) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(6)
        papers = self._build_papers()
        cells = (
            ("&Supplier", self.supplier, 0, 0),
            ("&Date", self.when, 0, 2),
            ("&Currency", self.currency, 0, 4),
        )
        for name, field, line, place in cells:
            said = QLabel(name)
            said.setBuddy(field)
            said.setMinimumHeight(36)
            field.setAccessibleName(name.replace("&", ""))
            grid.addWidget(said, line, place, Qt.AlignmentFlag.AlignTop)
            grid.addWidget(field, line, place + 1, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(papers, 1, 0, 1, 2)
        self.stands_in_name.setBuddy(self.stands_in)
        self.stands_in.setAccessibleName("What stands in for the paper")
        grid.addWidget(self.stands_in_name, 1, 2)
        grid.addWidget(self.stands_in, 1, 3)
        self.rate_name.setBuddy(self.rate)
        grid.addWidget(self.rate_name, 1, 4)
        grid.addWidget(self.rate, 1, 5)
        for place, stretch in ((1, 4), (3, 4), (5, 1)):
            grid.setColumnStretch(place, stretch)
        self.currency.setMinimumWidth(90)

    def _build_papers(self) -> QWidget:
        holder = QWidget()
        layout = QHBoxLayout(holder)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(4)
        for paper, words in _PAPER_WORDS.items():
            made = QPushButton(words)
            made.setCheckable(True)
            made.setProperty("paper", paper.value)
            made.setChecked(paper is Paper.HELD)
            self.paper.addButton(made)
            layout.addWidget(made)
        layout.addStretch(1)
        return holder

    def offer(self, known: tuple[Sequence[str], Sequence[str]]) -> None:
        """Propose suppliers and currencies of the receipts that are there."""
        suppliers, currencies = known
        self._suppliers.set_choices(suppliers)
        offered = dict.fromkeys((self.own_currency, *currencies, *_COMMON))
        self._currencies.set_choices(tuple(offered))

    def currency_code(self) -> str:
        """The last currency written that exists."""
        return self._code

    def paper_is(self) -> Paper:
        """Where the paper is."""
        pressed = self.paper.checkedButton()
        return Paper(pressed.property("paper")) if pressed else Paper.HELD

    def hold_paper(self) -> None:
        """Press "held": a file of the paper is there."""
        self._button(Paper.HELD).setChecked(True)

    def show_receipt(self, receipt: Receipt) -> None:
        """Fill in a receipt that is there."""
        self.supplier.set_text(receipt.supplier)
        self.when.set_when(receipt.when)
        self.currency.set_text(receipt.currency)
        self._button(receipt.paper).setChecked(True)
        self.stands_in.setText(receipt.stands_in)
        self.rate.set_text(f"{receipt.rate.normalize():f}")

    def forget_date(self) -> None:
        """Have the date typed, unless somebody has: that it was today is a guess."""
        if self.when.text() == self._first_date:
            self.when.set_text("")

    def forget_rate(self) -> None:
        """Have the rate to another currency typed: the one of the day isn't known."""
        self.rate.set_text("")

    def value(self) -> Receipt:
        """The head as a receipt without lines.

        Raises:
            JournalError: a field can't be read; it says so and has the keyboard.
        """
        supplier = self.supplier.text()
        if not supplier:
            error = JournalError("Who was paid? Write “unknown” where it is forgotten.")
            self.supplier.refuse(error)
            raise error
        when = self.when.required()
        currency = self._read_currency()
        paper = self.paper_is()
        return Receipt(
            id=ReceiptId(0),
            supplier=supplier,
            when=when,
            currency=currency,
            paper=paper,
            printed_total=None,
            lines=(),
            stands_in="" if paper is Paper.HELD else self.stands_in.text().strip(),
            rate=self._read_rate(currency),
        )

    def _read_currency(self) -> str:
        code = self.currency.text().upper()
        try:
            minor_units(code)
        except JournalError as error:
            self.currency.refuse(error)
            raise
        return code

    def _read_rate(self, currency: str) -> Decimal:
        if currency == self.own_currency:
            return Decimal(1)
        try:
            return parse_rate(self.rate.text())
        except JournalError:
            error = JournalError(f"How many {self.own_currency} did one {currency} cost?")
            self.rate.refuse(error)
            raise error from None

    def _button(self, paper: Paper) -> QAbstractButton:
        return next(b for b in self.paper.buttons() if b.property("paper") == paper.value)

    def _on_currency(self) -> None:
        code = self.currency.text().upper()
        try:
            minor_units(code)
        except JournalError:
            return
        foreign = code != self.own_currency
        self.rate_name.setText(f"1 {code} = {self.own_currency}")
        self.rate.setAccessibleName(f"How many {self.own_currency} one {code} cost")
        self.rate_name.setVisible(foreign)
        self.rate.setVisible(foreign)
        if code != self._code:
            self._code = code
            self.currency_changed.emit(code)

    def _on_paper(self) -> None:
        lacking = self.paper_is() is not Paper.HELD
        self.stands_in.setVisible(lacking)
        self.stands_in_name.setVisible(lacking)
