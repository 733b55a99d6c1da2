"""What the photos of a day say of the hours, offered beside the field for them."""

from datetime import date
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from journal.desktop.desk import Desk
from journal.desktop.widgets.parts import button, label, row
from journal.domain.changes import Changes
from journal.domain.hours import spoken_hours
from journal.domain.work import Work

if TYPE_CHECKING:
    from journal.domain.photo_spans import PhotoDay


class PhotoOffer(QWidget):
    """One line: from the first to the last shot, so at least so long, and a button to take it."""

    #: Which days have photos and no hours is known.
    found = Signal()
    #: The offer was taken: a PhotoDay.
    taken = Signal(object)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._days: dict[date, PhotoDay] = {}
        self._shown: PhotoDay | None = None
        self._taken: PhotoDay | None = None
        self._words = label("", "muted")
        self.take = button("&Take it", self._on_take, hint="Recorded as “at least”")
        self.take.setAutoDefault(False)
        layout = row(self._words, self.take)
        layout.setStretch(0, 1)
        self.setLayout(layout)

    def look(self) -> None:
        """Look for days with photos and no hours, in a reader's thread."""
        from journal.actions.photo_hours import days_without_hours

        session = self._desk.session
        self._desk.read(lambda _context: days_without_hours(session), self._on_days, self)

    def show_day(self, day: date | None) -> None:
        """Offer what the photos of a day show; nothing where it has none or has hours."""
        self._shown = self._days.get(day) if day is not None else None
        self.setVisible(self._shown is not None)
        if self._shown is not None:
            self._words.setText(f"Photos that day: {span_in_words(self._shown)}.")

    def holds(self, work: Work) -> bool:
        """Whether hours are just what was taken from the photos of their day."""
        day = self._taken
        if day is None or work.minutes != day.minutes:
            return False
        return work.when.earliest.date() == day.day == work.when.latest.date()

    def record(self, work: Work) -> Changes:
        """Record hours for which ``holds`` is true, tied to the photos."""
        from journal.actions.photo_hours import PhotoHours, record_photo_hours

        assert self._taken is not None
        wanted = PhotoHours(self._taken, work.person, work.note, work.shares)
        self._taken = None
        return record_photo_hours(self._desk.session, (wanted,))

    def _on_days(self, days: "tuple[PhotoDay, ...]") -> None:
        self._days = {day.day: day for day in days}
        self.found.emit()

    def _on_take(self) -> None:
        self._taken = self._shown
        self.taken.emit(self._shown)


def span_in_words(day: "PhotoDay") -> str:
    """What a day shows: "14:05 to 17:50 (8 photos of 2 cameras), at least 3 h 45 min"."""
    visits = " and ".join(
        f"{visit.first.taken:%H:%M} to {visit.last.taken:%H:%M}" for visit in day.visits
    )
    number = len(day.photo_ids)
    many = f"{number} photos" + (f" of {day.cameras} cameras" if day.cameras > 1 else "")
    return f"{visits} ({many}), at least {spoken_hours(day.minutes)}"
