"""The years along the bottom of the drawing: move the handle, and the car stands as it did then."""

from collections.abc import Iterable
from datetime import date, datetime

from PySide6.QtCore import QTimer, Signal, Slot
from PySide6.QtWidgets import QVBoxLayout, QWidget

from journal.desktop import icons
from journal.desktop.widgets.day_strip import DayStrip
from journal.desktop.widgets.fitting_label import FittingLabel
from journal.desktop.widgets.parts import button, row, tool
from journal.domain.areas import Area
from journal.domain.when import When, spoken

_TODAY = "The car as it stands today"
_NOW = f"{_TODAY}. Move the handle below to go back, or play the years."
_PLAY, _PAUSE = "Play the years (Space on the years below)", "Pause (Space)"

#: How long each change stays while the years play, in milliseconds.
STEP_MS = 350


class AsItStood(QWidget):
    """A strip of years with the stages of each month, playing, and a way back to today."""

    #: Another day is looked at: its When, None for today.
    moved = Signal(object)
    #: The years are to be taken out to a file.
    export_wanted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._when: When | None = None
        self.strip = DayStrip("stage")
        self.strip.setAccessibleName("Years; the drawing shows the car as it stood")
        self._words = FittingLabel("muted")
        self.play_button = tool("play", _PLAY, self.toggle)
        self.play_button.setProperty("role", "quiet")
        export = button("Take the &years out\N{HORIZONTAL ELLIPSIS}", self.export_wanted.emit)
        export.setProperty("role", "quiet")
        self._today = button("&Today", self.back_to_today, role="quiet")
        self._steps = QTimer(self)
        self._steps.setInterval(STEP_MS)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        head = row(self.play_button, self._words, self._today, export)
        head.setStretch(1, 1)
        layout.addLayout(head)
        layout.addWidget(self.strip)
        self.strip.day_moved.connect(self._on_day)
        self.strip.play_wanted.connect(self.toggle)
        self._steps.timeout.connect(self._step)
        self._show()

    @property
    def when(self) -> When | None:
        """The day looked at, None for today."""
        return self._when

    @property
    def is_playing(self) -> bool:
        """Whether the years play by themselves."""
        return self._steps.isActive()

    def set_areas(self, areas: Iterable[Area], welding: Iterable[When] = ()) -> None:
        """Show when repair areas came to a stage, and when metalwork went on; or else nothing."""
        dates = [change.when for area in areas for change in area.changes]
        days = [
            when.earliest.date() for when in (*dates, *welding) if when.earliest != datetime.min
        ]
        self.strip.set_days(days)
        self.setVisible(bool(days))

    def back_to_today(self) -> None:
        """Look at today again."""
        self.pause()
        self.strip.set_day(None)
        self._go(None)

    def look_at(self, day: date) -> None:
        """Look at a day."""
        self.strip.set_day(day)
        self._go(When.on(day))

    @Slot()
    def toggle(self) -> None:
        """Play from the handle on, from the first change where it is at the end; or pause."""
        if self.is_playing:
            self.pause()
            return
        if self._when is None or self.strip.next_day() is None:
            if not self.strip.days:
                return
            self.look_at(self.strip.days[0])
        self._steps.start()
        self._show()

    def pause(self) -> None:
        """Stand still."""
        self._steps.stop()
        self._show()

    @Slot()
    def _step(self) -> None:
        following = self.strip.next_day()
        if following is None:
            self.pause()
        else:
            self.look_at(following)

    @Slot(object)
    def _on_day(self, day: date) -> None:
        self.pause()
        self._go(When.on(day))

    def _go(self, when: When | None) -> None:
        self._when = when
        self._show()
        self.moved.emit(when)

    def _show(self) -> None:
        if self._when is None:
            self._words.say(_NOW, _TODAY, "Today")
        else:
            day = spoken(self._when)
            self._words.say(f"The car as it stood on {day}", f"As it stood on {day}", day)
        self._today.setVisible(self._when is not None)
        icons.put(self.play_button, "pause" if self.is_playing else "play")
        name = _PAUSE if self.is_playing else _PLAY
        self.play_button.setToolTip(name)
        self.play_button.setAccessibleName(name)
