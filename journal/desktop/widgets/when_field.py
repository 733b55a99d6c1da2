"""A field for a date as sure as it is, which says at once how it is understood."""

from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from journal.desktop.widgets.parts import label
from journal.domain.errors import JournalError
from journal.domain.when import When, parse, spoken


class WhenField(QWidget):
    """Takes "3 March 2016", "summer 2009", "about 2012" or EDTF."""

    #: What is typed has changed.
    changed = Signal()

    def __init__(
        self, name: str, *, when: When | None = None, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._edit = QLineEdit()
        self._edit.setAccessibleName(name)
        self._edit.setPlaceholderText("3 March 2016, summer 2009, about 2012")
        self._reading = label("", "muted")
        self.setFocusProxy(self._edit)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(2)
        layout.addWidget(self._edit)
        layout.addWidget(self._reading)
        self._edit.textChanged.connect(self._on_typed)
        self.set_when(when)

    def set_when(self, when: When | None) -> None:
        """Show a date; None empties the field."""
        self._edit.setText(spoken(when) if when else "")
        self._on_typed()

    def set_today(self) -> None:
        """Show today."""
        self.set_when(When.on(date.today()))

    def is_empty(self) -> bool:
        """Whether nothing is typed."""
        return not self._edit.text().strip()

    def when(self) -> When | None:
        """The date typed, None where nothing is; JournalError where it can't be read."""
        return None if self.is_empty() else parse(self._edit.text())

    def needed_when(self, what: str) -> When:
        """The date typed; JournalError naming ``what`` it is missing for where there is none."""
        found = self.when()
        if found is None:
            raise JournalError(f"{what} needs a date; a year is enough.")
        return found

    def _on_typed(self) -> None:
        try:
            found = self.when()
        except JournalError:
            words = "Not a date yet: write for instance 3 March 2016, summer 2009 or 2015 to 2017."
        else:
            words = f"Understood as: {spoken(found)}" if found else ""
        self._reading.setText(words)
        self._edit.setAccessibleDescription(words)
        self.changed.emit()
