"""A line for a sum of money, in the currency of its receipt."""

from decimal import Decimal

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit, QWidget

from journal.desktop.widgets.checked import mark_wrong
from journal.domain.errors import JournalError
from journal.domain.money import format_money, minor_units, parse_money


class MoneyEdit(QLineEdit):
    """A sum as people write it; the tool tip says how it is read, a frame that it can't be."""

    def __init__(
        self, currency: str = "EUR", parent: QWidget | None = None, *, optional: bool = False
    ) -> None:
        super().__init__(parent)
        self._currency = currency
        self._optional = optional
        self._put: tuple[str, int] | None = None
        self.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.textChanged.connect(self.understand)

    @property
    def currency(self) -> str:
        """The ISO 4217 code of the sum's currency."""
        return self._currency

    def set_currency(self, currency: str) -> None:
        """Read the sum in another currency from now on."""
        if currency != self._currency:
            self._put = None
        self._currency = currency
        self.understand()

    def set_amount(self, minor: int | None) -> None:
        """Put in a sum in minor units; None empties the line."""
        if minor is None:
            self.clear()
            return
        places = minor_units(self._currency)
        text = str(Decimal(minor).scaleb(-places).quantize(Decimal(1).scaleb(-places)))
        # With three places "1.234" could be read in two ways; what was put in is known.
        self._put = (text, minor)
        self.setText(text)

    def amount(self) -> int | None:
        """The sum in minor units; None where the line may be empty and is.

        Raises:
            JournalError: no sum can be read; the line is marked too.
        """
        try:
            return self._read()
        except JournalError as error:
            self.complain(str(error))
            raise

    def seen(self) -> int | None:
        """The sum if one can be read now, None otherwise; never marks the line."""
        try:
            return self._read()
        except JournalError:
            return None

    def complain(self, sentence: str) -> None:
        """Mark the line as wrong and say why."""
        mark_wrong(self, wrong=True)
        self._tell(sentence)

    def understand(self) -> None:
        """Take a mark away as soon as a sum can be read, and say which."""
        minor = self.seen()
        if minor is None and self.text().strip():
            self._tell("")
            return
        mark_wrong(self, wrong=False)
        self._tell("" if minor is None else format_money(minor, self._currency))

    def _read(self) -> int | None:
        text = self.text().strip()
        if self._put is not None and text == self._put[0]:
            return self._put[1]
        if text:
            return parse_money(text, self._currency)
        if self._optional:
            return None
        raise JournalError("A sum is needed; 0 if it cost nothing.")

    def _tell(self, words: str) -> None:
        self.setToolTip(words)
        self.setAccessibleDescription(words)
