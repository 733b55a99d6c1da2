"""Looking for garbage when it disturbs nobody.

Python looks for objects that hold only each other whenever many have been made, and goes through
all there are: with fifty thousand photos read, that stops the window for a tenth of a second, in
whatever thread it happens, and may end a widget in a thread that isn't its own. So it is done here,
on the main thread: a little every second, everything once the person has turned to something else.
"""

import gc

from PySide6.QtCore import QObject, Qt, QTimer, Slot
from PySide6.QtWidgets import QApplication

_LOOK_MS = 1000
#: A window that is left for another of the program is left for less long.
_LEFT_MS = 3000
#: So many new objects can only be rows that were read, and there is no garbage among them.
_ROWS = 50_000


class Garbage(QObject):
    """Collects in place of Python's own collector for as long as it lives."""

    def __init__(self, app: QApplication) -> None:
        super().__init__(app)
        gc.disable()
        self._timer = QTimer(self)
        self._timer.setInterval(_LOOK_MS)
        self._timer.timeout.connect(self.look)
        self._timer.start()
        self._left = QTimer(self)
        self._left.setSingleShot(True)
        self._left.setInterval(_LEFT_MS)
        self._left.timeout.connect(self.look_everywhere)
        app.applicationStateChanged.connect(self._on_state)

    @Slot()
    def look(self) -> None:
        """Collect among what was made lately; many rows are set aside unseen instead."""
        if gc.get_count()[0] < _ROWS:
            gc.collect(1)
        else:
            gc.freeze()

    @Slot()
    def look_everywhere(self) -> None:
        """Collect among everything, and set what stays aside."""
        gc.unfreeze()
        gc.collect()
        gc.freeze()

    def stop(self) -> None:
        """Leave it to Python again."""
        self._timer.stop()
        self._left.stop()
        gc.unfreeze()
        gc.enable()

    @Slot(Qt.ApplicationState)
    def _on_state(self, state: Qt.ApplicationState) -> None:
        if state == Qt.ApplicationState.ApplicationInactive:
            self._left.start()
        else:
            self._left.stop()
