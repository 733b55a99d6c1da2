"""A box for some sentences in the owner's own words."""

from PySide6.QtWidgets import QPlainTextEdit, QWidget


class WordsEdit(QPlainTextEdit):
    """A few lines of plain text; Tab goes on to the next field."""

    def __init__(self, hint: str = "", lines: int = 3, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setPlaceholderText(hint)
        self.setTabChangesFocus(True)
        self.setFixedHeight(self.fontMetrics().lineSpacing() * lines + 24)

    def words(self) -> str:
        """What is written, without space around it."""
        return self.toPlainText().strip()
