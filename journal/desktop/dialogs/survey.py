"""Starting a survey of the car, going on from one, or saying something else of one."""

from PySide6.QtWidgets import QLineEdit, QWidget

from journal.actions import cars, surveys
from journal.desktop.desk import Desk
from journal.desktop.dialogs.form import FormDialog
from journal.desktop.widgets.money_edit import MoneyEdit
from journal.desktop.widgets.when_edit import WhenEdit
from journal.desktop.widgets.words_edit import WordsEdit
from journal.domain.findings import Survey, parse_time, written_time
from journal.domain.ids import SurveyId


class SurveyDialog(FormDialog):
    """Name, day, the most the owner will give in money and hours, and a note.

    Attributes:
        made: the number of the survey begun, once it is.
    """

    def __init__(
        self,
        desk: Desk,
        parent: QWidget | None = None,
        *,
        survey: Survey | None = None,
        go_on: bool = False,
    ) -> None:
        """With a survey it is changed, or gone on from in a new one."""
        title, accept = "New survey", "&Start it"
        if survey is not None:
            title = f"Go on from “{survey.name}”" if go_on else f"Survey “{survey.name}”"
            accept = "&Start it" if go_on else "&Record"
        super().__init__(title, accept, parent)
        self._desk, self._survey, self._goes_on = desk, survey, go_on
        self.made: SurveyId | None = None
        car = desk.ask(cars.car)
        self.name = QLineEdit()
        self.name.setPlaceholderText("Before buying")
        self.when = WhenEdit()
        self.ceiling = MoneyEdit(car.currency if car else "EUR", optional=True)
        self.ceiling.setPlaceholderText("none set")
        self.hours = QLineEdit()
        self.hours.setPlaceholderText("none set")
        self.note = WordsEdit("How it was looked at: on stands, from below, in the rain …")
        self.add_row("&Name", self.name)
        self.add_row("&Day", self.when)
        if not go_on:
            self.add_row("&Most money", self.ceiling, "What you would spend on all of it.")
            self.add_row("Most &hours", self.hours, "What time you would give it.")
            self.add_row("N&ote", self.note)
        self._fill()

    def _fill(self) -> None:
        known = self._survey
        self.when.set_today()
        if known is None:
            return
        if self._goes_on:
            self.name.setText(f"{known.name}, again")
            self.name.selectAll()
            return
        self.name.setText(known.name)
        self.when.set_when(known.when)
        self.ceiling.set_amount(known.ceiling)
        if known.ceiling_minutes is not None:
            self.hours.setText(written_time(known.ceiling_minutes))
        self.note.setPlainText(known.note)

    def submit(self) -> bool:
        """Record the survey."""
        session, known = self._desk.session, self._survey
        name, when = self.name.text().strip(), self.when.required()
        if known is not None and self._goes_on:
            changes = surveys.go_on_from(session, known.id, name, when)
        else:
            hours = self.hours.text().strip()
            survey = Survey(
                SurveyId(0) if known is None else known.id,
                name,
                when,
                self.ceiling.amount(),
                parse_time(hours) if hours else None,
                0,
                self.note.words(),
            )
            act = surveys.start_survey if known is None else surveys.change_survey
            changes = act(session, survey)
        self.made = None if changes.made is None else SurveyId(changes.made)
        self._desk.announce(changes)
        return True
