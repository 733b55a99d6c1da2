"""A field with a line under it: how what stands in it is understood, or what is wrong with it."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from journal.desktop.widgets.parts import label
from journal.domain.errors import JournalError


class CheckedField(QWidget):
    """A line to type in, and under it a plain sentence.

    Attributes:
        edit: the line itself; it takes the keyboard for the whole field.
        note: the words under it.
    """

    #: What stands in the field changed.
    changed = Signal()

    def __init__(self, parent: QWidget | None = None, *, edit: QLineEdit | None = None) -> None:
        super().__init__(parent)
        self.edit = edit if edit is not None else QLineEdit()
        self.note = label("", "muted")
        self.line = QHBoxLayout()
        self.line.setSpacing(6)
        self.line.addWidget(self.edit, 1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(2)
        layout.addLayout(self.line)
        layout.addWidget(self.note)
        self.note.hide()
        self.setFocusProxy(self.edit)
        self.edit.textChanged.connect(self._on_text)

    def setAccessibleName(self, name: str) -> None:
        """Name the line too, since that is what has the keyboard."""
        super().setAccessibleName(name)
        self.edit.setAccessibleName(name)

    def text(self) -> str:
        """What stands in the line, without spaces around it."""
        return self.edit.text().strip()

    def set_text(self, text: str) -> None:
        """Put a text into the line."""
        self.edit.setText(text)

    def say(self, words: str) -> None:
        """Say under the line how it is understood; "" for nothing."""
        self._show(words, "muted")

    def complain(self, sentence: str) -> None:
        """Say under the line what is wrong with it, and mark it."""
        self._show(sentence, "error")

    @property
    def is_wrong(self) -> bool:
        """Whether a fault is shown."""
        return bool(self.note.text()) and self.note.property("role") == "error"

    def refuse(self, error: JournalError) -> None:
        """Show what is wrong, and take the keyboard there."""
        self.complain(str(error))
        self.edit.setFocus()

    def understand(self) -> None:
        """Read the text as it is typed and say what it means; here only forget a complaint."""
        self.say("")

    def _on_text(self) -> None:
        self.understand()
        self.changed.emit()

    def _show(self, words: str, role: str) -> None:
        mark_wrong(self.edit, wrong=role == "error" and bool(words))
        self.edit.setAccessibleDescription(words)
        if self.note.property("role") != role:
            self.note.setProperty("role", role)
            repolish(self.note)
        self.note.setText(words)
        self.note.setVisible(bool(words))


def mark_wrong(field: QWidget, *, wrong: bool) -> None:
    """Frame a field in the colour of a failure, or no longer."""
    if bool(field.property("wrong")) != wrong:
        field.setProperty("wrong", wrong)
        repolish(field)


def repolish(widget: QWidget) -> None:
    """Dress a widget anew after a property that the style sheet looks at has changed."""
    widget.style().unpolish(widget)
    widget.style().polish(widget)
