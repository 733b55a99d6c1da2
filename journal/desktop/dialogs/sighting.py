"""Recording where a wanted part was seen."""

from PySide6.QtWidgets import QLineEdit, QWidget

from journal.actions import wanted as actions
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.checked import CheckedField
from journal.desktop.widgets.money_edit import MoneyEdit
from journal.desktop.widgets.pick_edit import PickEdit
from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.errors import JournalError
from journal.domain.ids import SightingId
from journal.domain.money import format_money, minor_units
from journal.domain.wanted import Sighting, Wanted


class SightingDialog(FormDialog):
    """Place, price for all of it, day and a note; a price over the limit is said at once."""

    def __init__(
        self,
        desk: Desk,
        wanted: Wanted,
        currency: str,
        parent: QWidget | None = None,
        *,
        sighting: Sighting | None = None,
    ) -> None:
        """``currency`` is the journal's own; ``sighting`` is the one to be changed."""
        super().__init__(f"“{wanted.text}” was seen", "&Record", parent)
        self._desk = desk
        self._wanted = wanted
        self._own = currency
        self._sighting = sighting
        self.place = CheckedField(edit=PickEdit(desk.ask(actions.places) or ()))
        self._price = MoneyEdit(sighting.currency if sighting else currency, optional=True)
        self.price = CheckedField(edit=self._price)
        self.currency = CheckedField(edit=QLineEdit(currency))
        self.when = WhenEdit()
        self.when.set_today()
        self.note = QLineEdit()
        self._price.setPlaceholderText("for all of it; empty where none was said")
        self.add_row("&Where", self.place)
        self.add_row("&Price", self.price)
        self.add_row("&Currency", self.currency)
        self.add_row("&Day", self.when)
        self.add_row("&Note", self.note)
        if sighting is not None:
            self._fill(sighting)
        self.price.changed.connect(self._say_limit)
        self.currency.changed.connect(self._on_currency)
        self._say_limit()
        self.place.setFocus()

    def _fill(self, sighting: Sighting) -> None:
        self.place.set_text(sighting.place)
        self.currency.set_text(sighting.currency)
        self._price.set_amount(sighting.price)
        self.when.set_when(sighting.when)
        self.note.setText(sighting.note)

    def _code(self) -> str:
        return self.currency.text().upper()

    def _on_currency(self) -> None:
        try:
            minor_units(self._code())
        except JournalError:
            return
        self._price.set_currency(self._code())
        self._say_limit()

    def _say_limit(self) -> None:
        limit, price = self._wanted.price_limit, self._price.seen()
        if limit is None:
            return
        if self._code() != self._own:
            self.price.say(f"Not compared with the limit, which is in {self._own}.")
            return
        money = format_money(limit, self._own)
        over = (price or 0) - limit
        words = f"{format_money(over, self._own)} over" if over > 0 else "Within"
        self.price.say(f"Your limit is {money}." if price is None else f"{words} your {money}.")

    def submit(self) -> bool:
        """Record it."""
        place = self.place.text()
        if not place:
            error = JournalError("Where was it seen? A shop, a stall or a name is enough.")
            self.place.refuse(error)
            raise error
        before = self._sighting
        made = Sighting(
            before.id if before else SightingId(0),
            self._wanted.id,
            place,
            self._read_price(),
            self._read_currency(),
            self.when.required(),
            self.note.text().strip(),
        )
        if before is None:
            self._desk.announce(actions.add_sighting(self._desk.session, made))
        elif made != before:
            self._desk.announce(actions.change_sighting(self._desk.session, made))
        return True

    def _read_price(self) -> int | None:
        try:
            return self._price.amount()
        except JournalError as error:
            self.price.refuse(error)
            raise

    def _read_currency(self) -> str:
        try:
            minor_units(self._code())
        except JournalError as error:
            self.currency.refuse(error)
            raise
        return self._code()
