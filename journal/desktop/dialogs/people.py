"""The people who work on the car: own or paid, and what an own hour is valued at."""

from typing import TYPE_CHECKING

from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QLineEdit,
    QTreeWidgetItem,
    QWidget,
)

from journal.actions import cars, hours
from journal.actions import people as actions
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.widgets.checked import CheckedField
from journal.desktop.widgets.money_edit import MoneyEdit
from journal.desktop.widgets.parts import PlainTree, button, column, label, row
from journal.domain.hours import spoken_hours
from journal.domain.ids import PersonId
from journal.domain.money import format_money
from journal.domain.people import Person, PersonKind, same_name

if TYPE_CHECKING:
    from journal.domain.hour_sums import HourSum

_KINDS = {
    PersonKind.OWN: "own: the owner, family, friends",
    PersonKind.PAID: "paid: what it cost stands on receipts",
}
_NONE = "\N{EN DASH}"


class PeopleDialog(QDialog):
    """Lists everybody who worked or will; each can be changed, and taken off the list."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.setWindowTitle("People")
        self.resize(900, 440)
        self._people: tuple[Person, ...] = ()
        headings = ["Who", "Hours", "Rate an hour", "Own hours valued at", "Own or paid", "Note"]
        self.list = PlainTree("People, with their hours", headings)
        self.add = button("&Add somebody", self._on_add, icon="plus", role="primary")
        self.change = button("C&hange", self._on_change, icon="edit")
        self.remove = button("&Remove", self._on_remove, icon="remove")
        close = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        close.rejected.connect(self.reject)
        words = label(
            "Own hours are counted, and valued only where you give a rate. That value is a figure "
            "of its own, never added to the money spent.",
            "muted",
        )
        layout = column(words, self.list, margin=16)
        layout.addLayout(row(self.add, self.change, self.remove, None, close))
        self.setLayout(layout)
        self.list.itemSelectionChanged.connect(self._show_what_can_be_done)
        self.list.itemActivated.connect(self._on_change)
        desk.changed.connect(self._refresh)
        self._refresh()

    def _refresh(self) -> None:
        table = self._desk.ask(hours.hour_sums, "person")
        sums = {row.key: row for row in table.rows} if table else {}
        currency = table.currency if table else "EUR"
        self._people = self._desk.ask(actions.all_people) or ()
        self.list.clear()
        for person in self._people:
            cells = _cells(person, sums.get(same_name(person.name)), currency)
            item = QTreeWidgetItem(cells)
            item.setToolTip(5, person.note)
            self.list.addTopLevelItem(item)
        if first := self.list.topLevelItem(0):
            self.list.setCurrentItem(first)
        for number in range(5):
            self.list.resizeColumnToContents(number)
        self._show_what_can_be_done()

    def _show_what_can_be_done(self) -> None:
        chosen, writable = self._chosen(), not self._desk.read_only
        self.add.setEnabled(writable)
        self.change.setEnabled(writable and chosen is not None)
        self.remove.setEnabled(writable and chosen is not None and bool(chosen.id))

    def _chosen(self) -> Person | None:
        items = self.list.selectedItems()
        return self._people[self.list.indexOfTopLevelItem(items[0])] if items else None

    def _on_add(self) -> None:
        open_dialog(PersonDialog(self._desk, None, self))

    def _on_change(self) -> None:
        chosen = self._chosen()
        if chosen is not None and not self._desk.read_only:
            open_dialog(PersonDialog(self._desk, chosen, self))

    def _on_remove(self) -> None:
        if (chosen := self._chosen()) is not None and chosen.id:
            self._desk.act(actions.remove_person, chosen.id)


class PersonDialog(FormDialog):
    """Asks for one person."""

    def __init__(self, desk: Desk, person: Person | None, parent: QWidget | None = None) -> None:
        super().__init__("Change somebody" if person else "Add somebody", "&Save", parent)
        self._desk = desk
        self._person = person or Person(PersonId(0), "")
        car = desk.ask(cars.car)
        currency = car.currency if car else "EUR"
        self.name = CheckedField()
        self.name.set_text(self._person.name)
        self.kind = QComboBox()
        for kind, words in _KINDS.items():
            self.kind.addItem(words, kind)
        self.kind.setCurrentIndex(list(_KINDS).index(self._person.kind))
        self.rate = MoneyEdit(currency, optional=True)
        self.rate.set_amount(self._person.rate)
        self.note = QLineEdit(self._person.note)
        self.add_row("&Name", self.name, "A new spelling is written in all their hours too.")
        self.add_row("&Kind", self.kind)
        self.add_row(
            f"&Rate ({currency})",
            self.rate,
            "What you value an own hour at; empty values nothing.",
        )
        self.add_row("N&ote", self.note)
        self.kind.currentIndexChanged.connect(self._show_rate)
        self._show_rate()

    def submit(self) -> bool:
        """Save what was said."""
        kind = PersonKind(self.kind.currentData())
        rate = self.rate.amount() if kind is PersonKind.OWN else None
        person = Person(self._person.id, self.name.text(), kind, rate, self.note.text())
        self._desk.announce(actions.save_person(self._desk.session, person))
        return True

    def _show_rate(self) -> None:
        self.rate.setEnabled(self.kind.currentData() == PersonKind.OWN)


def _cells(person: Person, hours: "HourSum | None", currency: str) -> list[str]:
    rate = _NONE if person.rate is None else format_money(person.rate, currency)
    valued = hours is not None and hours.value is not None
    value = format_money(hours.value or 0, currency) if hours is not None and valued else _NONE
    worked = spoken_hours(hours.minutes) if hours is not None and hours.minutes else _NONE
    return [person.name, worked, rate, value, person.kind.value, person.note]
