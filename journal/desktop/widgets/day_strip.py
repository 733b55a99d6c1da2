"""The years with a handle that goes day by day: what the drawing stands still at."""

from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Iterable
from datetime import date, timedelta

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QWidget

from journal.desktop.widgets.year_scale import Month
from journal.desktop.widgets.year_strip import YearStrip

_ONE = timedelta(days=1)


class DayStrip(YearStrip):
    """Bars by month with a handle on a day.

    Left and Right go to the day of the change before and after, with Shift by one day; Page Up and
    Page Down by a year, Home and End to the ends, Space plays.
    """

    #: The handle was moved by the person: a date.
    day_moved = Signal(object)
    #: Space was pressed.
    play_wanted = Signal()

    def __init__(self, noun: str, parent: QWidget | None = None) -> None:
        super().__init__(noun, parent)
        self._days: list[date] = []
        self._day: date | None = None

    def set_days(self, days: Iterable[date]) -> None:
        """Show on which days something changed, a day as often as something did."""
        found = sorted(days)
        self._days = sorted(set(found))
        self.set_counts(Counter(Month(day.year, day.month) for day in found))

    @property
    def days(self) -> list[date]:
        """The days on which something changed, in order."""
        return self._days

    @property
    def day(self) -> date | None:
        """The day the handle is on."""
        return self._day

    def set_day(self, day: date | None) -> None:
        """Put the handle on a day without telling anybody; None takes it off."""
        self._day = day
        self.set_place(Month(day.year, day.month) if day else None)
        self.setAccessibleDescription(self.words())
        self.update()

    def words(self) -> str:
        """Where the handle is, in words."""
        from journal.domain.words import day_in_words

        return day_in_words(self._day) if self._day else "no day"

    def handle_x(self, _place: Month) -> float:
        """Where the handle is painted, in pixels."""
        return self._scale.day_x(self._day) if self._day else 0.0

    def next_day(self, *, forward: bool = True) -> date | None:
        """The day of the change after the handle, or before it; None where there is none."""
        if self._day is None:
            return (self._days[0 if forward else -1]) if self._days else None
        place = bisect_right(self._days, self._day) if forward else None
        if place is None:
            place = bisect_left(self._days, self._day) - 1
        return self._days[place] if 0 <= place < len(self._days) else None

    def _go_day(self, day: date | None) -> None:
        from PySide6.QtGui import QAccessible, QAccessibleEvent

        if day is None or day == self._day:
            return
        self.set_day(day)
        event = QAccessibleEvent(self, QAccessible.Event.DescriptionChanged)
        QAccessible.updateAccessibility(event)
        self.day_moved.emit(day)

    # Qt

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go from change to change, day by day, year by year, or to an end; play."""
        key = event.key()
        by_day = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
        if not self._days:
            event.ignore()
        elif key == Qt.Key.Key_Space:
            self.play_wanted.emit()
        elif key in {Qt.Key.Key_Left, Qt.Key.Key_Right}:
            forward = key == Qt.Key.Key_Right
            self._go_day(self._beside(forward) if by_day else self.next_day(forward=forward))
        elif key in {Qt.Key.Key_PageUp, Qt.Key.Key_PageDown}:
            self._go_day(self._year_on(1 if key == Qt.Key.Key_PageDown else -1))
        elif key in {Qt.Key.Key_Home, Qt.Key.Key_End}:
            self._go_day(self._days[0 if key == Qt.Key.Key_Home else -1])
        else:
            event.ignore()

    def _beside(self, forward: bool) -> date:
        start = self._day or self._days[-1]
        return self._held(start + (_ONE if forward else -_ONE))

    def _year_on(self, years: int) -> date:
        start = self._day or self._days[0]
        # The 29th of February has no fellow in other years.
        return self._held(date(start.year + years, start.month, min(start.day, 28)))

    def _held(self, day: date) -> date:
        return max(self._days[0], min(self._days[-1], day))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Go to the day under the pointer."""
        if event.button() == Qt.MouseButton.LeftButton:
            self._go_day(self._scale.day_at(event.position().x()))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Pull the handle along, or name the month under the pointer."""
        if event.buttons() & Qt.MouseButton.LeftButton:
            self._hover = None
            self._go_day(self._scale.day_at(event.position().x()))
        else:
            super().mouseMoveEvent(event)
