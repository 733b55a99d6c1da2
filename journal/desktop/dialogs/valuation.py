"""What the car is valued at: the list of valuations and of cars to compare with, and one of them.

A valuation is never added to money spent, nor to hours.
"""

from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QLineEdit,
    QTabWidget,
    QWidget,
)

from journal.actions import cars
from journal.actions import valuations as actions
from journal.desktop.desk import Desk
from journal.desktop.dialogs.comparable import ComparableDialog
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.widgets.list_pane import ListPane
from journal.desktop.widgets.money_edit import MoneyEdit
from journal.desktop.widgets.parts import EmptyState, column
from journal.desktop.widgets.rows import Column
from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.errors import JournalError
from journal.domain.ids import ValuationId
from journal.domain.money import format_money
from journal.domain.valuations import Comparable, Valuation, ValuationBasis
from journal.domain.when import spoken

_KINDS = frozenset({"valuations", "car"})


class ValuationsDialog(QDialog):
    """Lists what others say the car is worth, and what others like it were offered and sold for."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._currency = _currency(desk)
        self.setWindowTitle("What the car is valued at")
        self.resize(760, 480)
        self.valuations = self._make_valuations()
        self.comparables = self._make_comparables()
        self.tabs = QTabWidget()
        self.tabs.setDocumentMode(True)
        self.tabs.addTab(self.valuations, "Valuations")
        self.tabs.addTab(self.comparables, "Cars to compare with")
        close = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        close.rejected.connect(self.reject)
        self.setLayout(column(self.tabs, close, margin=16))
        desk.changed.connect(self._on_changed)
        self._refresh()

    def _make_valuations(self) -> ListPane:
        def worth(one: Valuation) -> str:
            return format_money(one.amount, self._currency)

        return ListPane(
            "Valuations",
            (
                Column("When", lambda one: spoken(one.when), lambda one: one.when),
                Column("Amount", worth, lambda one: one.amount, number=True),
                Column("Basis", lambda one: one.basis.value),
                Column("By", lambda one: one.valuer, wide=True),
                Column("Note", lambda one: one.note, wide=True),
            ),
            EmptyState(
                "ledger",
                "No valuation yet",
                "Record what a valuer, an insurer or you yourself say the car is worth, on which "
                "day and on what basis.",
            ),
            "The latest stands on the Ledger, apart from money spent and from hours.",
            add=("&Add a valuation", self._add_valuation),
            change=("C&hange", self._change_valuation),
            remove=lambda one: self._desk.act(actions.remove_valuation, one.id),
            can_write=not self._desk.read_only,
        )

    def _make_comparables(self) -> ListPane:
        def price(one: Comparable) -> str:
            return f"{one.kind.value} {format_money(one.price, one.currency)}"

        return ListPane(
            "Cars to compare with",
            (
                Column("When", lambda one: spoken(one.when), lambda one: one.when),
                Column("Which", lambda one: one.text, wide=True),
                Column("Price", price, lambda one: (one.currency, one.price), number=True),
                Column("Where from", lambda one: one.source, wide=True),
                Column("Note", lambda one: one.note, wide=True),
            ),
            EmptyState(
                "ledger",
                "No car to compare with yet",
                "Record what cars like this one were offered and sold for, and where you saw it.",
            ),
            "What is asked is seldom what is paid; say which of the two it was.",
            add=("&Add a car", self._add_comparable),
            change=("C&hange", self._change_comparable),
            remove=lambda one: self._desk.act(actions.remove_comparable, one.id),
            can_write=not self._desk.read_only,
        )

    def _on_changed(self, changes: object) -> None:
        if getattr(changes, "kinds", frozenset()) & _KINDS:
            self._refresh()

    def _refresh(self) -> None:
        self.valuations.show_rows(tuple(reversed(self._desk.ask(actions.valuations) or ())))
        self.comparables.show_rows(tuple(reversed(self._desk.ask(actions.comparables) or ())))

    def _add_valuation(self) -> None:
        open_dialog(ValuationDialog(self._desk, self))

    def _change_valuation(self, one: Valuation) -> None:
        open_dialog(ValuationDialog(self._desk, self, valuation=one))

    def _add_comparable(self) -> None:
        open_dialog(ComparableDialog(self._desk, self))

    def _change_comparable(self, one: Comparable) -> None:
        open_dialog(ComparableDialog(self._desk, self, comparable=one))


class ValuationDialog(FormDialog):
    """Asks for one valuation."""

    def __init__(
        self, desk: Desk, parent: QWidget | None = None, *, valuation: Valuation | None = None
    ) -> None:
        title = "Add a valuation" if valuation is None else "Change the valuation"
        super().__init__(title, "&Record", parent)
        self._desk = desk
        self._valuation = valuation
        self.when = WhenEdit()
        self.amount = MoneyEdit(_currency(desk), optional=True)
        self.valuer, self.note = QLineEdit(), QLineEdit()
        self.basis = QComboBox()
        for basis in ValuationBasis:
            self.basis.addItem(basis.value, basis)
        self.add_row("&When", self.when)
        self.add_row("&Amount", self.amount)
        self.add_row("&By", self.valuer, "The valuer, the insurer, or your own name.")
        self.add_row("B&asis", self.basis)
        self.add_row("&Note", self.note)
        if valuation is None:
            self.when.set_today()
        else:
            self.when.set_when(valuation.when)
            self.amount.set_amount(valuation.amount)
            self.valuer.setText(valuation.valuer)
            self.note.setText(valuation.note)
            self.basis.setCurrentIndex(list(ValuationBasis).index(valuation.basis))

    def submit(self) -> bool:
        """Record the valuation."""
        amount = self.amount.amount()
        if amount is None:
            raise JournalError("Say what the car is valued at.")
        old = self._valuation
        given = Valuation(
            ValuationId(0) if old is None else old.id,
            self.when.required(),
            amount,
            self.valuer.text().strip(),
            ValuationBasis(self.basis.currentData()),
            self.note.text().strip(),
            None if old is None else old.sha256,
        )
        act = actions.record_valuation if old is None else actions.change_valuation
        self._desk.announce(act(self._desk.session, given))
        return True


def _currency(desk: Desk) -> str:
    car = desk.ask(cars.car)
    return car.currency if car is not None else "EUR"
