"""What may wait until something is on screen."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, QTimer
from PySide6.QtWidgets import QWidget


def once_painted(widget: QWidget, act: Callable[[], object]) -> None:
    """Do ``act`` when ``widget`` was painted next; soon, where it is out of sight.

    It is not done at all where the widget is gone by then.
    """
    if widget.isVisible():
        _Watch(widget, act)
    else:
        QTimer.singleShot(0, widget, act)


class _Watch(QObject):
    """Waits for the next painting of its parent."""

    def __init__(self, widget: QWidget, act: Callable[[], object]) -> None:
        super().__init__(widget)
        self._act = act
        widget.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Let the painting happen first, then act."""
        if event.type() == QEvent.Type.Paint:
            watched.removeEventFilter(self)
            QTimer.singleShot(0, self, self._go)
        return False

    def _go(self) -> None:
        self.deleteLater()
        self._act()
