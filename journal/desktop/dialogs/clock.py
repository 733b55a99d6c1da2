"""Clocking on and off: two short forms."""

from dataclasses import replace
from datetime import datetime, timedelta

from PySide6.QtWidgets import QDialogButtonBox, QLineEdit, QWidget

from journal.actions import areas as area_actions
from journal.actions import clockings as actions
from journal.actions import hours as hour_actions
from journal.desktop.desk import AreaSelected, Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.checked import CheckedField
from journal.desktop.widgets.hours_fields import HoursField
from journal.desktop.widgets.parts import label
from journal.desktop.widgets.pick_edit import PickEdit
from journal.desktop.widgets.remembered import remember_person, who_works
from journal.desktop.widgets.share_edit import ShareEdit
from journal.domain.clockings import Clocking, offered, read_moment, spoken_moment
from journal.domain.errors import JournalError
from journal.domain.hours import spoken_hours
from journal.domain.people import same_name
from journal.domain.receipts import Share

#: A clock that ran longer may have been forgotten.
_LONG = timedelta(hours=12)


class MomentField(CheckedField):
    """A line for a moment that has been: "19:40", "yesterday 19:40"; empty is now."""

    def __init__(self, empty: str) -> None:
        super().__init__()
        self.edit.setPlaceholderText(empty)

    def moment(self) -> datetime:
        """The moment with its offset; JournalError where it is none, shown at the field too."""
        if not self.text():
            return actions.now()
        try:
            return actions.local(read_moment(self.text(), actions.now().replace(tzinfo=None)))
        except JournalError as error:
            self.refuse(error)
            raise

    def seen(self) -> datetime | None:
        """The moment if one can be read now, None otherwise."""
        try:
            typed = self.text()
            now = actions.now()
            return actions.local(read_moment(typed, now.replace(tzinfo=None))) if typed else now
        except JournalError:
            return None

    def understand(self) -> None:
        """Say which day is meant."""
        moment = self.seen() if self.text() else None
        if moment is None:
            self.say("not a time yet" if self.text() else "")
        else:
            self.say(spoken_moment(moment, actions.now().date()))


class ClockOnDialog(FormDialog):
    """Who begins to work, and for what; the clock runs from now on or from a time stated."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__("Clock on", "Clock &on", parent)
        self._desk = desk
        self.person = CheckedField(edit=PickEdit(desk.ask(hour_actions.people) or ()))
        self.since = MomentField("now; or a time that has been: 14:05")
        self.note = QLineEdit()
        self.shares = ShareEdit(desk.ask(area_actions.areas) or ())
        self.add_row("&Person", self.person)
        self.add_row("&Since", self.since)
        self.add_row("Repair &areas", self.shares)
        self.add_row("&Note", self.note)
        self._fill()

    def _fill(self) -> None:
        busy = {same_name(one.person) for one in self._desk.ask(actions.running) or ()}
        known = (who_works(self._desk), *(self._desk.ask(hour_actions.people) or ()))
        self.person.set_text(next((n for n in known if n and same_name(n) not in busy), ""))
        selection = self._desk.selection
        latest = self._desk.ask(actions.latest)
        if isinstance(selection, AreaSelected):
            self.shares.set_shares((Share(selection.id, 1),))
        elif latest is not None:
            there = {area.id for area in self._desk.ask(area_actions.areas) or ()}
            self.shares.set_shares([one for one in latest.shares if one.area_id in there])
            self.note.setText(latest.note)
        if self.person.text():
            self.accept_button.setFocus()

    def submit(self) -> bool:
        """Start the clock."""
        if not self.person.text():
            error = JournalError("Whose clock is it? Say who is working.")
            self.person.refuse(error)
            raise error
        since = self.since.moment() if self.since.text() else None
        changes = actions.clock_on(
            self._desk.session, self.person.text(), self.shares.shares(), self.note.text(), since
        )
        remember_person(self._desk, self.person.text())
        self._desk.announce(changes)
        return True


class ClockOffDialog(FormDialog):
    """When the clock stopped, what is recorded of it and for what; or throw it away."""

    def __init__(self, desk: Desk, clocking: Clocking, parent: QWidget | None = None) -> None:
        super().__init__(f"Clock {clocking.person} off", "&Record", parent)
        self._desk = desk
        self._clocking = clocking
        now = actions.now()
        started = clocking.started
        self.is_old = started.date() != now.date() or now - started > _LONG
        since = spoken_moment(clocking.started, now.date())
        asked = " Still running? Say when you stopped, or throw it away." if self.is_old else ""
        self.said = label(f"Started {since}.{asked}")
        self.stopped = MomentField("yesterday 22:30; or now" if self.is_old else "now")
        self.hours = HoursField()
        self.ran = label("", "muted")
        self.note = QLineEdit(clocking.note)
        self.shares = ShareEdit(desk.ask(area_actions.areas) or ())
        self.shares.set_shares(clocking.shares)
        self._by_hand = False
        self._build()
        self._offer()
        (self.stopped if self.is_old else self.accept_button).setFocus()

    def _build(self) -> None:
        self.form.addRow(self.said)
        self.add_row("S&topped", self.stopped)
        self.form.addRow("", self.ran)
        self.add_row("&Hours", self.hours)
        self.add_row("Repair &areas", self.shares)
        self.add_row("&Note", self.note)
        self.cancel_button.setText("&Keep it running")
        away = QDialogButtonBox.ButtonRole.DestructiveRole
        self.away_button = self.buttons.addButton("Throw it a&way", away)
        self.away_button.setToolTip("Record nothing of it; undo brings it back")
        self.away_button.clicked.connect(self._on_away)
        self.stopped.changed.connect(self._offer)
        self.hours.edit.textEdited.connect(self._on_hours_typed)
        self.hours.changed.connect(self._show_amounts)

    def submit(self) -> bool:
        """Stop the clock and record its hours."""
        if self.is_old and not self.stopped.text():
            error = JournalError("Say when you stopped: a time, or “now”.")
            self.stopped.refuse(error)
            raise error
        stopped = self.stopped.moment()
        minutes = self.hours.minutes() if self.hours.text() or self._by_hand else None
        wanted = replace(self._clocking, note=self.note.text().strip(), shares=self.shares.shares())
        self._desk.announce(actions.clock_off(self._desk.session, wanted, stopped, minutes))
        return True

    def _offer(self) -> None:
        """Say how long the clock ran, and offer that to the nearest five minutes."""
        stopped = self.stopped.seen()
        if stopped is None or (self.is_old and not self.stopped.text()):
            self.ran.setText("")
            if not self._by_hand:
                self.hours.set_text("")
            return
        try:
            minutes = actions.ran(self._clocking, stopped)
        except JournalError as error:
            self.ran.setText(str(error))
            if not self._by_hand:
                self.hours.set_text("")
            return
        over = " It is recorded on two days." if stopped.date() != self._started.date() else ""
        self.ran.setText(
            f"The clock ran {spoken_hours(minutes)}; offered to the nearest five minutes.{over}"
        )
        if not self._by_hand:
            self.hours.set_text(spoken_hours(offered(minutes)))

    @property
    def _started(self) -> datetime:
        return self._clocking.started

    def _on_hours_typed(self) -> None:
        self._by_hand = bool(self.hours.text())

    def _show_amounts(self) -> None:
        self.shares.set_total(self.hours.seen() or (), spoken_hours)

    def _on_away(self) -> None:
        self._desk.act(actions.throw_away, self._clocking.id)
        self.reject()
