"""A layout that sets its widgets one after another like words, in as many lines as they need."""

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget


class FlowLayout(QLayout):
    """Left to right, then on the next line."""

    def __init__(self, parent: QWidget | None = None, *, spacing: int = 6) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self._gap = spacing
        self.setContentsMargins(0, 0, 0, 0)

    def addItem(self, item: QLayoutItem) -> None:
        """Put one more at the end."""
        self._items.append(item)

    def count(self) -> int:
        """How many there are."""
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        """The one at a place."""
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        """Take the one at a place out."""
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def clear(self) -> None:
        """Take all out and let their widgets go."""
        while self._items:
            widget = self._items.pop().widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()

    def expandingDirections(self) -> Qt.Orientation:
        """Wants no more room than it needs."""
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        """The height follows from the width."""
        return True

    def heightForWidth(self, width: int) -> int:
        """How high the lines are in that width."""
        return self._lay_out(QRect(0, 0, width, 0), move=False)

    def setGeometry(self, rect: QRect) -> None:
        """Put every widget in its place."""
        super().setGeometry(rect)
        self._lay_out(rect, move=True)

    def sizeHint(self) -> QSize:
        """All in one line."""
        sizes = [item.sizeHint() for item in self._items]
        width = sum(size.width() for size in sizes) + self._gap * max(0, len(sizes) - 1)
        return QSize(min(width, 480), max((size.height() for size in sizes), default=0))

    def minimumSize(self) -> QSize:
        """Room for the widest, as high as it wants to be."""
        size = QSize()
        for item in self._items:
            size = size.expandedTo(QSize(item.minimumSize().width(), item.sizeHint().height()))
        return size

    def _lay_out(self, rect: QRect, *, move: bool) -> int:
        x, y, line = rect.x(), rect.y(), 0
        for item in self._items:
            size = item.sizeHint().boundedTo(QSize(max(rect.width(), 1), 10_000))
            if x > rect.x() and x + size.width() > rect.right() + 1:
                x, y, line = rect.x(), y + line + self._gap, 0
            if move:
                item.setGeometry(QRect(QPoint(x, y), size))
            x += size.width() + self._gap
            line = max(line, size.height())
        return y + line - rect.y()
