"""Words that say as much as there is room for."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget


class FittingLabel(QLabel):
    """One line that takes the longest of several wordings that fits; all of it is its tool tip."""

    def __init__(self, role: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._wordings: tuple[str, ...] = ("",)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        if role:
            self.setProperty("role", role)

    def say(self, *wordings: str) -> None:
        """Say one of these, given from the longest to the shortest."""
        self._wordings = wordings
        self.setToolTip(wordings[0])
        self.setAccessibleName(wordings[0])
        self._fit()

    def minimumSizeHint(self) -> QSize:
        """Hardly any width: others need not give way to it."""
        return QSize(40, super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Choose the words anew."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        measure, room = self.fontMetrics(), self.contentsRect().width()
        fitting = (w for w in self._wordings if measure.horizontalAdvance(w) <= room)
        shortest = self._wordings[-1]
        words = next(fitting, measure.elidedText(shortest, Qt.TextElideMode.ElideRight, room))
        if words != self.text():
            self.setText(words)
