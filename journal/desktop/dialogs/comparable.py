"""Recording another car like this one, with its price."""

from PySide6.QtWidgets import QComboBox, QLineEdit, QWidget

from journal.actions import cars
from journal.actions import valuations as actions
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.money_edit import MoneyEdit
from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.errors import JournalError
from journal.domain.ids import ComparableId
from journal.domain.money import minor_units
from journal.domain.valuations import Comparable, PriceKind


class ComparableDialog(FormDialog):
    """Asks for one car to compare with."""

    def __init__(
        self, desk: Desk, parent: QWidget | None = None, *, comparable: Comparable | None = None
    ) -> None:
        title = "Add a car to compare with" if comparable is None else "Change the car"
        super().__init__(title, "&Record", parent)
        self._desk = desk
        self._comparable = comparable
        self.when = WhenEdit()
        self.text, self.source, self.note = QLineEdit(), QLineEdit(), QLineEdit()
        car = desk.ask(cars.car)
        own = car.currency if car is not None else "EUR"
        self.currency = QLineEdit(own if comparable is None else comparable.currency)
        self.currency.setMaxLength(3)
        self.price = MoneyEdit(self.currency.text(), optional=True)
        self.kind = QComboBox()
        for kind in PriceKind:
            self.kind.addItem(kind.value, kind)
        self.add_row("&When", self.when)
        self.add_row("W&hich car", self.text, "Year, state and what sets it apart.")
        self.add_row("How the price is &known", self.kind)
        self.add_row("&Price", self.price)
        self.add_row("&Currency", self.currency)
        self.add_row("Where &from", self.source)
        self.add_row("&Note", self.note)
        self.currency.editingFinished.connect(self._on_currency)
        if comparable is None:
            self.when.set_today()
        else:
            self._fill(comparable)

    def _fill(self, comparable: Comparable) -> None:
        self.when.set_when(comparable.when)
        self.text.setText(comparable.text)
        self.price.set_amount(comparable.price)
        self.source.setText(comparable.source)
        self.note.setText(comparable.note)
        self.kind.setCurrentIndex(list(PriceKind).index(comparable.kind))

    def _on_currency(self) -> None:
        code = self.currency.text().strip().upper()
        try:
            minor_units(code)
        except JournalError as error:
            self.show_problem(str(error))
            return
        self.show_problem("")
        self.price.set_currency(code)

    def submit(self) -> bool:
        """Record the car."""
        code = self.currency.text().strip().upper()
        minor_units(code)
        self.price.set_currency(code)
        price = self.price.amount()
        if price is None:
            raise JournalError("Say what was asked, offered or paid for it.")
        old = self._comparable
        given = Comparable(
            ComparableId(0) if old is None else old.id,
            self.when.required(),
            self.text.text().strip(),
            price,
            code,
            PriceKind(self.kind.currentData()),
            self.source.text().strip(),
            self.note.text().strip(),
        )
        act = actions.record_comparable if old is None else actions.change_comparable
        self._desk.announce(act(self._desk.session, given))
        return True
