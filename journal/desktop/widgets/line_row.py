"""One line of a receipt as fields side by side."""

from collections.abc import Callable
from typing import TypeVar

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import QComboBox, QLineEdit, QWidget

from journal.desktop.widgets.checked import mark_wrong
from journal.desktop.widgets.money_edit import MoneyEdit
from journal.desktop.widgets.parts import button, tool
from journal.domain.errors import JournalError
from journal.domain.ids import LineId, WantedId
from journal.domain.quantities import parse_quantity, write_quantity
from journal.domain.receipts import Category, Condition, Line, Share, Spread

#: Conditions in which a price new says something that the price paid doesn't.
_WORTH_COMPARING = frozenset({Condition.USED, Condition.NEW_OLD_STOCK, Condition.RECONDITIONED})
_T = TypeVar("_T")


class LineRow(QObject):
    """The fields of one line.

    Attributes:
        fields: the widgets from left to right, as the keyboard goes through them.
        shares: how the line is shared, as it was given or set.
        spread: whether it goes over the other lines instead, as postage does.
        came: the wanted part that the line is, None where it is none.
    """

    #: Something in the line changed.
    changed = Signal()
    #: The line is to go.
    removed = Signal()

    def __init__(self, currency: str, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._id = LineId(0)
        self.shares: tuple[Share, ...] = ()
        self.spread = Spread.NONE
        self.came: WantedId | None = None
        self.quantity = QLineEdit("1")
        self.text = QLineEdit()
        self.price = MoneyEdit(currency)
        self.category = _combo(Category)
        self.condition = _combo(Condition)
        self.new_price = MoneyEdit(currency, optional=True)
        self.share_button = button("", self._ask_for_shares, hint="Share this line over areas")
        self.remove_button = tool("remove", "Remove this line", self.removed.emit)
        self.fields: tuple[QWidget, ...] = (
            self.quantity,
            self.text,
            self.price,
            self.category,
            self.condition,
            self.new_price,
        )
        self._build()
        self._connect()
        self._on_condition()

    def _build(self) -> None:
        self.quantity.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.quantity.setToolTip("How many")
        self.text.setPlaceholderText("What it was")
        self.price.setPlaceholderText("for all of it")
        self.new_price.setPlaceholderText("if known")
        self.remove_button.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.remove_button.setProperty("role", "quiet")
        self.share_button.setProperty("role", "quiet")
        self.share_button.setAutoDefault(False)
        self.share_button.setFocusPolicy(Qt.FocusPolicy.ClickFocus)

    def _connect(self) -> None:
        for edit in (self.quantity, self.text, self.price, self.new_price):
            edit.textChanged.connect(self._on_text)
        self.category.currentIndexChanged.connect(self.changed)
        self.condition.currentIndexChanged.connect(self._on_condition)

    def name(self, number: int) -> None:
        """Call the fields by the line's number, for screen readers."""
        names = ("Quantity", "Text", "Price", "Category", "Condition", "Price new")
        for field, name in zip(self.fields, names, strict=True):
            field.setAccessibleName(f"{name}, line {number}")
        self.remove_button.setAccessibleName(f"Remove line {number}")

    def show_line(self, line: Line) -> None:
        """Fill in a line that is there."""
        self._id = line.id
        self.shares = line.shares
        self.spread = line.spread
        self.quantity.setText(write_quantity(line.quantity))
        self.text.setText(line.text)
        self.category.setCurrentText(line.category.value)
        self.condition.setCurrentText(line.condition.value)
        self.price.set_amount(line.amount)
        self.new_price.set_amount(line.new_price)
        self._on_condition()

    def follow(self, other: "LineRow") -> None:
        """Start with the category and condition of the line before."""
        self.category.setCurrentIndex(other.category.currentIndex())
        self.condition.setCurrentIndex(other.condition.currentIndex())

    def set_currency(self, currency: str) -> None:
        """Read the prices in another currency."""
        self.price.set_currency(currency)
        self.new_price.set_currency(currency)

    def is_blank(self) -> bool:
        """Whether nothing was written into it."""
        return not any(e.text().strip() for e in (self.text, self.price, self.new_price))

    def line(self) -> Line:
        """The line as it stands.

        Raises:
            JournalError: a field can't be read; it is marked and has the keyboard.
        """
        quantity = self._checked(self.quantity, lambda: parse_quantity(self.quantity.text()))
        text = self._checked(self.text, self._text)
        amount = self._checked(self.price, self.price.amount)
        new_price = self._checked(self.new_price, self.new_price.amount)
        return Line(
            id=self._id,
            text=text,
            quantity=quantity,
            amount=amount or 0,
            category=Category(self.category.currentText()),
            condition=Condition(self.condition.currentText()),
            new_price=new_price,
            shares=self.shares,
            spread=self.spread,
        )

    def last_field(self) -> QWidget:
        """Where the keyboard leaves the line."""
        return self.new_price if self.new_price.isEnabled() else self.condition

    def _checked(self, field: QLineEdit, read: Callable[[], _T]) -> _T:
        try:
            return read()
        except JournalError as error:
            mark_wrong(field, wrong=True)
            field.setToolTip(str(error))
            field.setFocus()
            raise

    def _text(self) -> str:
        text = self.text.text().strip()
        if not text:
            raise JournalError("A line needs a word for what was bought.")
        return text

    def _ask_for_shares(self) -> None:
        self.text.setFocus()

    def _on_text(self) -> None:
        for edit in (self.quantity, self.text):
            mark_wrong(edit, wrong=False)
        self.changed.emit()

    def _on_condition(self) -> None:
        condition = Condition(self.condition.currentText())
        has_use = condition in _WORTH_COMPARING or bool(self.new_price.text())
        self.new_price.setEnabled(has_use)
        self.new_price.setPlaceholderText("if known" if has_use else "")
        self.changed.emit()


def _combo(values: type[Category] | type[Condition]) -> QComboBox:
    made = QComboBox()
    made.addItems([value.value for value in values])
    made.setMaxVisibleItems(20)
    return made
