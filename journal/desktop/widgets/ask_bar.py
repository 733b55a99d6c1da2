"""One question in a line above what it is about: type, Enter answers, Esc takes it back."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import QStringListModel, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QCompleter, QFrame, QWidget

from journal.desktop.widgets.parts import button, label, row
from journal.desktop.widgets.pick_edit import PickEdit
from journal.domain.errors import JournalError


class WordsEdit(PickEdit):
    """Proposes what holds all the words typed, in any order: "left sill" finds "Sill, left"."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__((), parent)
        self._found = QStringListModel(self)
        self.completer().setModel(self._found)
        self.completer().setCompletionMode(QCompleter.CompletionMode.UnfilteredPopupCompletion)
        self.textEdited.connect(self._propose)

    def set_choices(self, choices: Sequence[str]) -> None:
        """Propose these."""
        super().set_choices(choices)
        self._propose("")

    def matches(self, text: str) -> list[str]:
        """The choices that hold every word of a text, short ones that begin with it first."""
        words = text.casefold().replace(",", " ").split()
        found = [c for c in self.choices if all(word in c.casefold() for word in words)]
        first = words[0] if words else ""
        return sorted(found, key=lambda c: (not c.casefold().startswith(first), len(c), c))

    def best(self) -> str:
        """The choice meant: the very one, else the only one that holds all the words."""
        found = self.matches(self.text())
        typed = self.text().strip().casefold()
        exact = [choice for choice in found if choice.casefold() == typed]
        return exact[0] if exact else found[0] if typed and len(found) == 1 else ""

    def _propose(self, text: str) -> None:
        # The base class sets its choices before there is a list to propose from.
        if hasattr(self, "_found"):
            self._found.setStringList(self.matches(text) if text.strip() else [])


class AskBar(QFrame):
    """Asks one thing at a time; with choices it proposes them as they are typed."""

    #: A question is asked: the bar is to be seen.
    asked = Signal()
    #: The question was answered or taken back; the keyboard may go back to where it was.
    ended = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("role", "strip")
        self._answer: Callable[[str], object] | None = None
        self._question = label("", "subheading", wrap=False)
        self._problem = label("", "error")
        self.edit = WordsEdit()
        self._done = button("", self._on_done, role="primary")
        self._back = button("Cancel", self.leave)
        line = row(self._question, self.edit, self._problem, self._done, self._back, spacing=10)
        line.setContentsMargins(16, 6, 16, 6)
        line.setStretch(1, 2)
        line.setStretch(2, 1)
        self.setLayout(line)
        self.edit.picked.connect(self._on_picked)
        self.edit.returnPressed.connect(self._on_done)
        self.edit.textEdited.connect(self._forget_problem)
        self._problem.hide()
        self.hide()

    def ask(
        self,
        question: str,
        act: str,
        answer: Callable[[str], object],
        *,
        text: str = "",
        hint: str = "",
        choices: Sequence[str] = (),
    ) -> None:
        """Ask a question; ``answer`` gets the text and may raise JournalError to be asked again.

        ``act`` is what the button says. Only the text of a proposal, or one that can mean only one
        of them, is an answer where there are choices.
        """
        self._answer = answer
        self._question.setText(question)
        self._done.setText(act)
        self.edit.set_choices(choices)
        self.edit.setText(text)
        self.edit.setPlaceholderText(hint)
        self.edit.setAccessibleName(question)
        self._forget_problem()
        self.show()
        self.asked.emit()
        self.edit.setFocus()
        self.edit.selectAll()

    def leave(self) -> None:
        """Take the question back."""
        if self._answer is not None:
            self._answer = None
            self._forget_problem()
            self.hide()
            self.ended.emit()

    def _on_picked(self, text: str) -> None:
        self.edit.setText(text)
        self._on_done()

    def _on_done(self) -> None:
        if self._answer is None:
            return
        text = self.edit.text().strip()
        if self.edit.choices:
            text = self.edit.best() or text
        try:
            self._answer(text)
        except JournalError as error:
            self._problem.setText(str(error))
            self._problem.show()
            self.edit.setAccessibleDescription(str(error))
            self.edit.setFocus()
            return
        self.leave()

    def _forget_problem(self) -> None:
        self._problem.hide()
        self.edit.setAccessibleDescription("")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc takes the question back."""
        if event.key() == Qt.Key.Key_Escape:
            self.leave()
        else:
            super().keyPressEvent(event)
