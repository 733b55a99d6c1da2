"""Recording hours worked: Enter records them and offers the next."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date

from PySide6.QtWidgets import QLineEdit, QWidget

from journal.actions import areas as area_actions
from journal.actions import hours as actions
from journal.actions import quick_hours
from journal.actions.settings import save_settings
from journal.desktop.desk import AreaSelected, Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.checked import CheckedField
from journal.desktop.widgets.parts import label
from journal.desktop.widgets.pick_edit import PickEdit
from journal.desktop.widgets.share_edit import ShareEdit
from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.errors import JournalError
from journal.domain.hours import parse_hours, spoken_hours
from journal.domain.ids import AreaId, WorkId
from journal.domain.quick_work import WorkLine
from journal.domain.receipts import Share
from journal.domain.when import When, spoken
from journal.domain.work import Work


class HoursDialog(FormDialog):
    """Date, person, hours, repair areas and a note.

    New hours go on being asked for until the dialog is closed; the date, the person and a repair
    area it was opened for stay. They can be said in one line as well, in place of the fields.
    """

    def __init__(
        self,
        desk: Desk,
        parent: QWidget | None = None,
        *,
        work: Work | None = None,
        area_id: AreaId | None = None,
    ) -> None:
        super().__init__("New hours" if work is None else "Hours", "&Record", parent)
        self._desk = desk
        self._work = work
        self._asked_for = area_id
        if area_id is None and work is None and isinstance(desk.selection, AreaSelected):
            area_id = desk.selection.id
        self._area_id = area_id
        self.line = _LineField(self._understand)
        self.when = WhenEdit()
        self.person = CheckedField(edit=PickEdit(desk.ask(actions.people) or ()))
        self.hours = _HoursField()
        self.note = QLineEdit()
        self._areas = desk.ask(area_actions.areas) or ()
        self.shares = ShareEdit(self._areas)
        self.recorded = label("", "muted")
        self._build()
        self._fill(work)
        self._show_amounts()

    def _build(self) -> None:
        if self._work is None:
            self.add_row("In one &line", self.line)
        self.add_row("&Date", self.when)
        self.add_row("&Person", self.person)
        self.add_row("&Hours", self.hours)
        self.add_row("Repair &areas", self.shares)
        self.add_row("&Note", self.note)
        self.form.addRow("", self.recorded)
        self.recorded.hide()
        self.setMinimumWidth(640)
        self.hours.changed.connect(self._show_amounts)
        self.person.changed.connect(self.line.understand)

    def _fill(self, work: Work | None) -> None:
        if work is None:
            self.when.set_today()
            self.person.set_text(self._desk.settings.person or self._last_person())
            self._clear()
            self.line.setFocus()
            return
        self.when.set_when(work.when)
        self.person.set_text(work.person)
        self.hours.set_text(spoken_hours(work.minutes))
        self.note.setText(work.note)
        self.shares.set_shares(work.shares)
        self.hours.setFocus()

    def submit(self) -> bool:
        """Record the hours; a new record leaves the dialog open for the next."""
        session = self._desk.session
        if self._work is None and self.line.text():
            self._record_line()
            return False
        work = self._read()
        if self._work is not None:
            if work != self._work:
                self._desk.announce(actions.change_work(session, work))
            return True
        self._desk.announce(actions.record_work(session, work))
        self._remember(work.person)
        self._say_recorded(work.minutes, (work.person,), work.when)
        self._clear()
        return False

    def _record_line(self) -> None:
        line = self.line.required()
        self._desk.announce(quick_hours.record_hours(self._desk.session, line))
        self._say_recorded(line.minutes, line.people, line.when)
        self.line.set_text("")
        self.line.setFocus()

    def _understand(self, text: str) -> tuple[WorkLine, str]:
        """What a line says, for the repair area the dialog is for where it names none, in words."""
        session = self._desk.session
        line = quick_hours.understand_hours(session, text, self.person.text(), date.today())
        if line.area_id is None and self._asked_for is not None:
            line = replace(line, area_id=self._asked_for)
        known = {area.id: area.name for area in self._areas}
        said = [f"{spoken_hours(line.minutes)} by {' and '.join(line.people)}", spoken(line.when)]
        said.append(f"for “{known[line.area_id]}”" if line.area_id in known else "no repair area")
        return line, ", ".join(said) + (f": {line.note}" if line.note else "")

    def _read(self) -> Work:
        when = self.when.required()
        person = self.person.text()
        if not person:
            error = JournalError("Whose hours are they?")
            self.person.refuse(error)
            raise error
        return Work(
            id=self._work.id if self._work else WorkId(0),
            when=when,
            minutes=self.hours.minutes(),
            person=person,
            note=self.note.text().strip(),
            shares=self.shares.shares(),
        )

    def _clear(self) -> None:
        self.hours.set_text("")
        self.note.clear()
        self.shares.set_shares((Share(self._area_id, 1),) if self._area_id is not None else ())
        (self.hours if self.person.text() else self.person).setFocus()

    def _say_recorded(self, minutes: int, people: tuple[str, ...], when: When) -> None:
        who = " and ".join(people)
        said = f"Recorded: {spoken_hours(minutes)} by {who}, {spoken(when)}."
        self.recorded.setText(f"{said} The next?")
        self.recorded.show()
        for pressed in self.buttons.buttons():
            if pressed is not self.accept_button:
                pressed.setText("&Close")

    def _show_amounts(self) -> None:
        self.shares.set_total(self.hours.seen() or (), spoken_hours)

    def _last_person(self) -> str:
        latest = max(self._desk.ask(actions.work) or (), key=lambda w: w.id, default=None)
        return latest.person if latest else ""

    def _remember(self, person: str) -> None:
        if self._desk.settings.person != person:
            self._desk.settings = replace(self._desk.settings, person=person)
            save_settings(self._desk.settings)


class _LineField(CheckedField):
    """Hours in one line, with how it is understood under it."""

    def __init__(self, read: "Callable[[str], tuple[WorkLine, str]]") -> None:
        super().__init__()
        self._read = read
        self.edit.setPlaceholderText("3h weld sill left with Nils yesterday")

    def required(self) -> WorkLine:
        """What the line says; JournalError where it says no hours, shown at the field too."""
        try:
            return self._read(self.text())[0]
        except JournalError as error:
            self.refuse(error)
            raise

    def understand(self) -> None:
        """Say how the line is understood; what lacks yet, without alarm."""
        try:
            self.say(self._read(self.text())[1] if self.text() else "")
        except JournalError as error:
            self.say(str(error))


class _HoursField(CheckedField):
    """A line for a time worked."""

    def __init__(self) -> None:
        super().__init__()
        self.edit.setPlaceholderText("3, 3.5, 3:30, 2h 15, 45 min")

    def minutes(self) -> int:
        """The time in whole minutes; JournalError where there is none, shown at the field too."""
        try:
            return parse_hours(self.text())
        except JournalError as error:
            self.refuse(error)
            raise

    def seen(self) -> int:
        """The time if one can be read now, 0 otherwise."""
        try:
            return parse_hours(self.text())
        except JournalError:
            return 0

    def understand(self) -> None:
        """Say the time in words."""
        minutes = self.seen()
        self.say(spoken_hours(minutes) if minutes else "")
