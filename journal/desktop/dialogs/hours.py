"""Recording hours worked: Enter records them and offers the next."""

from dataclasses import replace
from datetime import date
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QLineEdit, QWidget

from journal.actions import areas as area_actions
from journal.actions import hours as actions
from journal.actions import quick_hours
from journal.desktop.desk import AreaSelected, Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.checked import CheckedField
from journal.desktop.widgets.hours_fields import HoursField, LineField
from journal.desktop.widgets.parts import label
from journal.desktop.widgets.photo_offer import PhotoOffer
from journal.desktop.widgets.pick_edit import PickEdit
from journal.desktop.widgets.remembered import remember_person, who_works
from journal.desktop.widgets.share_edit import ShareEdit
from journal.desktop.widgets.when_edit import WhenEdit
from journal.domain.errors import JournalError
from journal.domain.hours import spoken_hours
from journal.domain.ids import AreaId, WorkId
from journal.domain.quick_work import WorkLine, understood
from journal.domain.receipts import Share
from journal.domain.when import When, spoken
from journal.domain.work import Work

if TYPE_CHECKING:
    from journal.domain.photo_spans import PhotoDay


class HoursDialog(FormDialog):
    """Date, person, hours, repair areas and a note.

    New hours go on being asked for until the dialog is closed; the date, the person and a repair
    area it was opened for stay. They can be said in one line as well, in place of the fields, and
    where the day has photos and no hours, what those show is offered.
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
        self.line = LineField(self._understand)
        self.when = WhenEdit()
        self.offer = PhotoOffer(desk)
        self.person = CheckedField(edit=PickEdit(desk.ask(actions.people) or ()))
        self.hours = HoursField()
        self.note = QLineEdit()
        self._areas = desk.ask(area_actions.areas) or ()
        self.shares = ShareEdit(self._areas)
        self.basis = label("", "muted")
        self.recorded = label("", "muted")
        self._build()
        self._fill(work)
        self._show_amounts()

    def _build(self) -> None:
        if self._work is None:
            self.add_row("In one &line", self.line)
        self.add_row("&Date", self.when)
        self.form.addRow("", self.offer)
        self.add_row("&Person", self.person)
        self.add_row("&Hours", self.hours)
        self.form.addRow("", self.basis)
        self.add_row("Repair &areas", self.shares)
        self.add_row("&Note", self.note)
        self.form.addRow("", self.recorded)
        self.basis.hide()
        self.recorded.hide()
        self.offer.hide()
        self.setMinimumWidth(640)
        self.hours.changed.connect(self._show_amounts)
        self.person.changed.connect(self.line.understand)
        self.offer.taken.connect(self._on_offer_taken)
        if self._work is None:
            self.when.changed.connect(self._offer_photos)
            self.offer.found.connect(self._offer_photos)
            self.offer.look()

    def _fill(self, work: Work | None) -> None:
        if work is None:
            self.when.set_today()
            self.person.set_text(who_works(self._desk))
            self._clear()
            self.line.setFocus()
            return
        self.when.set_when(work.when)
        self.person.set_text(work.person)
        self.hours.set_text(spoken_hours(work.minutes))
        self.note.setText(work.note)
        self.shares.set_shares(work.shares)
        said = self._desk.ask(actions.basis_in_words, work) or ""
        self.basis.setText(
            f"{said} Another time, day or person makes it your word." if said else ""
        )
        self.basis.setVisible(bool(said))
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
        if self.offer.holds(work):
            self._desk.announce(self.offer.record(work))
        else:
            self._desk.announce(actions.record_work(session, work))
        remember_person(self._desk, work.person)
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
        return line, understood(line, {area.id: area.name for area in self._areas})

    def _read(self) -> Work:
        when = self.when.required()
        person = self.person.text()
        if not person:
            error = JournalError("Whose hours are they?")
            self.person.refuse(error)
            raise error
        before = self._work or Work(WorkId(0), when, 0, person)
        return replace(
            before,
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
        self.offer.look()
        for pressed in self.buttons.buttons():
            if pressed is not self.accept_button:
                pressed.setText("&Close")

    def _show_amounts(self) -> None:
        self.shares.set_total(self.hours.seen() or (), spoken_hours)

    def _offer_photos(self) -> None:
        when = self.when.seen()
        is_day = when is not None and when.earliest.date() == when.latest.date()
        self.offer.show_day(when.earliest.date() if when is not None and is_day else None)

    def _on_offer_taken(self, day: "PhotoDay") -> None:
        self.hours.set_text(spoken_hours(day.minutes))
        if day.area_ids and not self.shares.shares():
            self.shares.set_shares((Share(day.area_ids[0], 1),))
        (self.note if self.person.text() else self.person).setFocus()
