"""The years along the bottom of the drawing: move the handle, and the car stands as it did then."""

from collections import Counter
from collections.abc import Iterable
from datetime import datetime

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QVBoxLayout, QWidget

from journal.desktop.widgets.parts import button, label, row
from journal.desktop.widgets.year_scale import Month
from journal.desktop.widgets.year_strip import YearStrip
from journal.domain.areas import Area
from journal.domain.when import When, parse_edtf, spoken

_NOW = "The car as it stands today. Move the handle below to go back."


class AsItStood(QWidget):
    """A strip of years with the stages of each month, and a way back to today."""

    #: Another day is looked at: the When of its month, None for today.
    moved = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._when: When | None = None
        self.strip = YearStrip("stage")
        self.strip.setAccessibleName("Years; the drawing shows the car as it stood")
        self._words = label(_NOW, "muted", wrap=False)
        self._today = button("&Today", self.back_to_today, role="quiet")
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addLayout(row(self._words, None, self._today))
        layout.addWidget(self.strip)
        self.strip.moved.connect(self._on_moved)
        self._show()

    @property
    def when(self) -> When | None:
        """The month looked at, None for today."""
        return self._when

    def set_areas(self, areas: Iterable[Area]) -> None:
        """Show in which months repair areas came to a stage; without any there is nothing."""
        months = Counter(
            Month(change.when.earliest.year, change.when.earliest.month)
            for area in areas
            for change in area.changes
            if change.when.earliest != datetime.min
        )
        self.strip.set_counts(months)
        self.setVisible(bool(months))

    def back_to_today(self) -> None:
        """Look at today again."""
        self.strip.set_place(None)
        self._go(None)

    @Slot(object)
    def _on_moved(self, month: Month) -> None:
        self._go(parse_edtf(f"{month.year:04}-{month.month:02}"))

    def _go(self, when: When | None) -> None:
        self._when = when
        self._show()
        self.moved.emit(when)

    def _show(self) -> None:
        words = f"The car as it stood at the end of {spoken(self._when)}" if self._when else _NOW
        self._words.setText(words)
        self._today.setVisible(self._when is not None)
