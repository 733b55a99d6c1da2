"""Fields for hours: a line of words, and a time worked."""

from collections.abc import Callable

from journal.desktop.widgets.checked import CheckedField
from journal.domain.errors import JournalError
from journal.domain.hours import parse_hours, spoken_hours
from journal.domain.quick_work import WorkLine


class LineField(CheckedField):
    """Hours in one line, with how it is understood under it."""

    def __init__(self, read: Callable[[str], tuple[WorkLine, str]]) -> None:
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


class HoursField(CheckedField):
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
