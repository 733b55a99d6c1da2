"""A field for a date as sure as it is; it shows at once how it is understood."""

import re
from datetime import date, datetime, timedelta

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QPushButton, QWidget

from journal.desktop.widgets.checked import CheckedField
from journal.domain.errors import JournalError
from journal.domain.near_days import near_day
from journal.domain.when import When, parse, spoken

_ZONE = re.compile(r"(?<=:\d\d)(Z|[+-]\d\d:\d\d)$")
_KEYS = {Qt.Key.Key_Up.value: 1, Qt.Key.Key_Down.value: -1}


class WhenEdit(CheckedField):
    """A line for "5 March 2016", "2016-07" or "summer 2009".

    Up and Down move a whole day by one. "yesterday", "monday" and "3 nov" are understood too.
    """

    def __init__(self, parent: QWidget | None = None, *, optional: bool = False) -> None:
        super().__init__(parent)
        self._optional = optional
        self.edit.setPlaceholderText("5 March 2016, 2016-07, summer 2009 ...")
        self.today_button = QPushButton("Today")
        self.today_button.setToolTip("Put in today's date")
        self.today_button.setAutoDefault(False)
        self.today_button.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.today_button.clicked.connect(self.set_today)
        self.line.addWidget(self.today_button)

    def set_when(self, when: When | None) -> None:
        """Put a date into the field, in words where they say all of it."""
        self.set_text("" if when is None else _as_text(when))

    def set_today(self) -> None:
        """Put today's date into the field."""
        self.set_when(When.on(_today()))

    def value(self) -> When | None:
        """The date in the field; None where it may be empty and is.

        Raises:
            JournalError: it is empty and must not be, or no date; the field says so too.
        """
        try:
            return self._read()
        except JournalError as error:
            self.complain(str(error))
            raise

    def seen(self) -> When | None:
        """The date if one can be read now, None otherwise; nothing is complained of."""
        try:
            return self._read()
        except JournalError:
            return None

    def required(self) -> When:
        """The date in the field.

        Raises:
            JournalError: it is empty or no date; the field says so too.
        """
        when = self.value()
        if when is None:
            error = JournalError("A date is needed; “2016” or “summer 2009” is enough.")
            self.complain(str(error))
            raise error
        return when

    def understand(self) -> None:
        """Say how the text is understood; while it is no date yet, say so without alarm."""
        if not self.text():
            self.say("")
            return
        try:
            when = self._read()
        except JournalError:
            self.say("not a date yet")
            return
        self.say("" if when is None else _explained(when, self.text()))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move the day by one with Up and Down, which the line itself has no use for."""
        step = _KEYS.get(event.key())
        if not (step and self._step(step)):
            super().keyPressEvent(event)

    def _step(self, days: int) -> bool:
        try:
            when = self._read() or When.on(_today())
        except JournalError:
            return False
        if when.earliest.date() != when.latest.date():
            return False
        try:
            self.set_when(When.on(when.earliest.date() + timedelta(days=days)))
        except OverflowError:
            return False
        return True

    def _read(self) -> When | None:
        text = self.text()
        if not text:
            if self._optional:
                return None
            raise JournalError("A date is needed; “2016” or “summer 2009” is enough.")
        return near_day(text, _today()) or parse(text)


def _today() -> date:
    return date.today()


def _as_text(when: When) -> str:
    """A date in words where they say all of it; the zone of a time of day is left out."""
    words = spoken(when)
    meant = _ZONE.sub("", when.edtf)
    for text in (words, f"{words}:{when.earliest:%S}"):
        try:
            if parse(text).edtf == meant:
                return text
        except JournalError:
            continue
    return when.edtf


def _explained(when: When, typed: str) -> str:
    """What a date means: in words, and the days it spans where it is more than one."""
    words = spoken(when)
    first, last = when.earliest, when.latest
    weekday = f"{first:%A}"
    if first.date() == last.date():
        return weekday if words.lower() == typed.lower() else f"{weekday}, {words}"
    span = _span(first, last)
    return f"{words}: {span}" if words.lower() != typed.lower() else span


def _span(first: datetime, last: datetime) -> str:
    if first == datetime.min:
        return f"any day up to {_day(last)}"
    if last == datetime.max:
        return f"any day from {_day(first)} on"
    return f"some day from {_day(first)} to {_day(last)}"


def _day(moment: datetime) -> str:
    return spoken(When.on(moment.date()))
