"""Wanted parts: what is wanted, the day it came to a state, and the receipt when it came."""

from collections.abc import Callable, Sequence
from datetime import date
from typing import TypeVar

from PySide6.QtWidgets import QComboBox, QLineEdit, QWidget

from journal.actions import cars, drawings
from journal.actions import wanted as actions
from journal.desktop.desk import Desk, PanelSelected, WantedSelected
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.dialogs.metal_fields import AreaBox
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.widgets.checked import CheckedField
from journal.desktop.widgets.money_edit import MoneyEdit
from journal.desktop.widgets.pick_edit import PickEdit
from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId, PanelId, WantedId
from journal.domain.quantities import parse_quantity, write_quantity
from journal.domain.receipts import Category, Condition
from journal.domain.wanted import Wanted, WantedState
from journal.domain.when import When

_ANY = "any"
_T = TypeVar("_T")


class WantedDialog(FormDialog):
    """What is wanted, for what, in what condition, and for how much.

    A new part starts out for what is selected.
    """

    def __init__(
        self,
        desk: Desk,
        parent: QWidget | None = None,
        *,
        wanted: Wanted | None = None,
        area_id: AreaId | None = None,
    ) -> None:
        super().__init__("New wanted part" if wanted is None else "Wanted part", "&Record", parent)
        self._desk = desk
        self._wanted = wanted
        car = desk.ask(cars.car)
        self._panels = {panel.label: panel.id for panel in desk.ask(drawings.panels) or ()}
        currency = car.currency if car else "EUR"
        self.text = CheckedField()
        self.quantity = CheckedField(edit=QLineEdit("1"))
        self.area = AreaBox(desk, area_id, optional=True)
        self._pick = PickEdit(list(self._panels))
        self.panel = CheckedField(edit=self._pick)
        self.category = QComboBox()
        self.category.addItems([each.value for each in Category])
        self.condition = QComboBox()
        self.condition.addItems([_ANY, *(c.value for c in Condition if c is not Condition.NONE)])
        self._limit = MoneyEdit(currency, optional=True)
        self._new = MoneyEdit(currency, optional=True)
        self.price_limit = CheckedField(edit=self._limit)
        self.new_price = CheckedField(edit=self._new)
        self.note = QLineEdit()
        self.when = WhenEdit(optional=True)
        self._build()
        self._fill(wanted, area_id)
        self.text.setFocus()

    def _build(self) -> None:
        self.text.edit.setPlaceholderText("Door hinge, upper")
        self._pick.setPlaceholderText("none, or type a panel")
        self._limit.setPlaceholderText("the most to pay for all of it")
        self._new.setPlaceholderText("for all of it, if known")
        self.add_row("&What", self.text)
        self.add_row("&Quantity", self.quantity)
        self.add_row("&For the area", self.area)
        self.add_row("For the &panel", self.panel)
        self.add_row("C&ategory", self.category)
        self.add_row("&Condition", self.condition)
        self.add_row("Price &limit", self.price_limit)
        self.add_row("Price n&ew", self.new_price)
        self.add_row("&Note", self.note)

    def _fill(self, wanted: Wanted | None, area_id: AreaId | None) -> None:
        if wanted is None:
            self.add_row("Wanted &since", self.when)
            self.when.set_today()
            chosen = self._desk.selection
            if isinstance(chosen, PanelSelected) and area_id is None:
                self._show_panel(chosen.id)
            return
        self.text.set_text(wanted.text)
        self.quantity.set_text(write_quantity(wanted.quantity))
        self.area.setCurrentIndex(max(0, self.area.findData(wanted.area_id)))
        if wanted.area_id is None:
            self.area.setCurrentIndex(0)
        self._show_panel(wanted.panel_id)
        self.category.setCurrentText(wanted.category.value)
        self.condition.setCurrentText(wanted.condition.value if wanted.condition else _ANY)
        self._limit.set_amount(wanted.price_limit)
        self._new.set_amount(wanted.new_price)
        self.note.setText(wanted.note)

    def _show_panel(self, panel_id: PanelId | None) -> None:
        names = [name for name, known in self._panels.items() if known == panel_id]
        self.panel.set_text(names[0] if names else "")

    def submit(self) -> bool:
        """Record the part."""
        before, made = self._wanted, self._read()
        session = self._desk.session
        if before is None:
            changes = actions.add_wanted(session, made, self.when.value())
            self._desk.announce(changes)
            self._desk.select(WantedSelected(WantedId(changes.made or 0)))
        elif made != before:
            self._desk.announce(actions.change_wanted(session, made))
        return True

    def _read(self) -> Wanted:
        text = self.text.text()
        if not text:
            error = JournalError("What is wanted? A word is enough.")
            self.text.refuse(error)
            raise error
        before, condition = self._wanted, self.condition.currentText()
        return Wanted(
            id=before.id if before else WantedId(0),
            text=text,
            quantity=_refusing(self.quantity, lambda: parse_quantity(self.quantity.text())),
            panel_id=self._read_panel(),
            area_id=self.area.area_id(),
            category=Category(self.category.currentText()),
            condition=None if condition == _ANY else Condition(condition),
            price_limit=_refusing(self.price_limit, self._limit.amount),
            new_price=_refusing(self.new_price, self._new.amount),
            note=self.note.text().strip(),
            line_id=before.line_id if before else None,
            receipt_id=before.receipt_id if before else None,
            changes=before.changes if before else (),
            sightings=before.sightings if before else (),
        )

    def _read_panel(self) -> PanelId | None:
        text = self.panel.text()
        if not text:
            return None
        name = self._pick.best()
        if name not in self._panels:
            error = JournalError(f"“{text}” means no one panel; pick one.")
            self.panel.refuse(error)
            raise error
        return self._panels[name]


class WantedStateDialog(FormDialog):
    """Which state a part came to, on what day, with a note."""

    def __init__(
        self, desk: Desk, wanted: Wanted, state: WantedState, parent: QWidget | None = None
    ) -> None:
        super().__init__(f"State of “{wanted.text}”", "&Record", parent)
        self._desk = desk
        self._wanted = wanted
        self.state = QComboBox()
        self.state.addItems([each.value for each in WantedState])
        self.state.setCurrentText(state.value)
        self.when = WhenEdit()
        self.note = QLineEdit()
        self.add_row("&State", self.state)
        self.add_row("Reached &on", self.when)
        self.add_row("&Note", self.note)
        known = wanted.change_to(state)
        if known is None:
            self.when.set_today()
        else:
            self.when.set_when(known.when)
            self.note.setText(known.note)
        self.when.edit.selectAll()
        self.when.setFocus()

    def submit(self) -> bool:
        """Record the day."""
        when = self.when.required()
        state, note = WantedState(self.state.currentText()), self.note.text().strip()
        session = self._desk.session
        self._desk.announce(actions.move_wanted(session, [self._wanted.id], state, when, note))
        return True


def move_today(desk: Desk, wanted_ids: Sequence[WantedId], state: WantedState) -> None:
    """Record that parts came to a state today."""
    desk.act(actions.move_wanted, wanted_ids, state, When.on(date.today()))


def record_arrival(desk: Desk, wanted_ids: Sequence[WantedId], over: QWidget) -> None:
    """Open the receipt's form, filled from the parts that came."""
    from journal.desktop.dialogs.receipt import ReceiptDialog

    draft = desk.ask(actions.receipt_for, wanted_ids, date.today())
    if draft is not None:
        came = tuple(dict.fromkeys(wanted_ids))
        open_dialog(ReceiptDialog(desk, over, draft=draft, came=came))


def _refusing(field: CheckedField, read: Callable[[], _T]) -> _T:
    """What a field says, which itself shows why it can't be read."""
    try:
        return read()
    except JournalError as error:
        field.refuse(error)
        raise
