"""A line that proposes what was written in it before, or what there is to choose from."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import QStringListModel, Qt, QTimer, Signal, Slot
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QCompleter, QLineEdit, QWidget


class PickEdit(QLineEdit):
    """A line to type in with proposals that hold what is typed, wherever it stands in them."""

    #: A proposal was taken: its text.
    picked = Signal(str)
    #: Enter was pressed on words that mean no proposal, or several: the words.
    not_found = Signal(str)

    def __init__(self, choices: Sequence[str] = (), parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._choices: tuple[str, ...] = ()
        self._takes_enter = False
        self._model = QStringListModel(self)
        completer = QCompleter(self._model, self)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        completer.setFilterMode(Qt.MatchFlag.MatchContains)
        completer.setMaxVisibleItems(12)
        completer.activated.connect(self._on_activated)
        self.setCompleter(completer)
        self.set_choices(choices)
        self.textEdited.connect(self._on_edited)

    @property
    def choices(self) -> tuple[str, ...]:
        """What is proposed."""
        return self._choices

    def set_choices(self, choices: Sequence[str]) -> None:
        """Propose these."""
        self._choices = tuple(choices)
        self._model.setStringList(list(choices))

    def show_all(self) -> None:
        """Open the list of everything there is to choose from."""
        completer = self.completer()
        completer.setCompletionPrefix("")
        completer.complete()

    def best(self) -> str:
        """The choice that what is typed stands for: the very one, else the only one that holds it.

        "" where it is none or more than one.
        """
        typed = self.text().strip().casefold()
        if not typed:
            return ""
        exact = [choice for choice in self._choices if choice.casefold() == typed]
        near = exact or [choice for choice in self._choices if typed in choice.casefold()]
        return near[0] if len(near) == 1 or exact else ""

    def on_picked(self, react: Callable[[str], object]) -> None:
        """Call ``react`` with a proposal that was taken, or with what Enter was pressed on."""
        self.picked.connect(react)
        self._takes_enter = True

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Take the choice meant with Enter; an empty line leaves Enter to the dialog."""
        enter = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        popup = self.completer().popup()
        in_popup = popup is not None and popup.isVisible() and popup.currentIndex().isValid()
        if not (enter and self._takes_enter and self.text().strip()) or in_popup:
            super().keyPressEvent(event)
            return
        event.accept()
        if popup is not None:
            popup.hide()
        if best := self.best():
            self.picked.emit(best)
        else:
            self.not_found.emit(self.text().strip())

    @Slot(str)
    def _on_edited(self, text: str) -> None:
        """Put the list away where it has no more to say: it would swallow the next click."""
        typed = text.strip().casefold()
        near = [choice.casefold() for choice in self._choices if typed in choice.casefold()]
        if near == [typed]:
            QTimer.singleShot(0, self, self._hide_list)

    @Slot()
    def _hide_list(self) -> None:
        popup = self.completer().popup()
        if popup is not None:
            popup.hide()

    def _on_activated(self, text: str) -> None:
        self.picked.emit(text)
        if not self.text():
            # The list writes its choice into the line once more, after it has told of it.
            QTimer.singleShot(0, self, self.clear)
