"""The strip along the bottom: what was just done, and the long job under way."""

from PySide6.QtCore import QTimer, Signal, Slot
from PySide6.QtWidgets import QFrame, QHBoxLayout, QProgressBar, QWidget

from journal.desktop.tasks import Running, Task
from journal.desktop.theme import TARGET
from journal.desktop.widgets.announce import announce
from journal.desktop.widgets.parts import button, label

_WORDS_STAY_MS = 12_000


def time_left(seconds: float | None) -> str:
    """How long yet, as a person says it; "" where it isn't known."""
    if seconds is None:
        return ""
    if seconds < 10:
        return "a few seconds left"
    if seconds < 90:
        return f"about {round(seconds / 10) * 10} s left"
    if seconds < 90 * 60:
        return f"about {round(seconds / 60)} min left"
    return f"about {round(seconds / 3600)} h left"


def progress_words(running: Running) -> str:
    """One line: what is being done, how many of how many, how long yet."""
    if running.cancelling:
        return f"{running.label}: stopping; what is in stays"
    parts = [running.step or running.label]
    if running.total:
        parts.append(f"{running.done:,} of {running.total:,}")
    elif running.done:
        parts.append(f"{running.done:,}")
    parts.append(time_left(running.seconds_left))
    return " \N{MIDDLE DOT} ".join(part for part in parts if part)


class ProgressStrip(QFrame):
    """Words about the last act with Undo beside it, and the progress of a long job with Cancel."""

    #: The person pressed Undo beside the words.
    undo_wanted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("role", "strip")
        self._task: Task | None = None
        self._words = label("", wrap=False)
        self._idle = ""
        self._words.setAccessibleName("What was done last")
        self._undo = button("Undo", self.undo_wanted.emit, icon="undo", role="quiet")
        self._undo.hide()
        self._job = label("", wrap=False)
        self._bar = QProgressBar()
        self._bar.setTextVisible(False)
        self._bar.setFixedWidth(180)
        self._bar.setAccessibleName("Progress")
        self._cancel = button("Cancel", self._on_cancel, icon="cancel")
        self._quiet = QTimer(self)
        self._quiet.setSingleShot(True)
        self._quiet.setInterval(_WORDS_STAY_MS)
        self._quiet.timeout.connect(self._clear_words)
        self._build()

    def _build(self) -> None:
        layout = QHBoxLayout(self)
        layout.setContentsMargins(12, 4, 12, 4)
        layout.setSpacing(12)
        layout.addWidget(self._words, 1)
        layout.addWidget(self._undo)
        layout.addWidget(self._job)
        layout.addWidget(self._bar)
        layout.addWidget(self._cancel)
        self.setMinimumHeight(TARGET + 10)
        self._show_job(None)

    def say(self, words: str, *, can_undo: bool = False) -> None:
        """Show words for a while, and tell a screen reader."""
        self._words.setText(words)
        self._undo.setVisible(can_undo)
        self._undo.setAccessibleName(f"Undo: {words}")
        self._quiet.start()
        announce(self, words)

    @Slot(object)
    def show_progress(self, running: tuple[Running, ...]) -> None:
        """Show the first of the writing jobs under way; how many wait is said beside it."""
        self._show_job(running[0] if running else None, len(running) - 1)

    def _show_job(self, running: Running | None, waiting: int = 0) -> None:
        busy = running is not None
        for widget in (self._job, self._bar, self._cancel):
            widget.setVisible(busy)
        self._task = running.task if running else None
        if running is None:
            return
        more = f" \N{MIDDLE DOT} {waiting} more waiting" if waiting > 0 else ""
        self._job.setText(progress_words(running) + more)
        self._bar.setRange(0, running.total)
        self._bar.setValue(running.done)
        self._cancel.setEnabled(not running.cancelling)
        self._cancel.setAccessibleName(f"Cancel: {running.label}")

    def set_idle(self, words: str) -> None:
        """What stands there while there is nothing to say."""
        self._idle = words
        self._clear_words()

    @Slot()
    def _clear_words(self) -> None:
        self._words.setText(self._idle)
        self._undo.hide()

    @Slot()
    def _on_cancel(self) -> None:
        if self._task:
            self._task.cancel()
            self._cancel.setEnabled(False)
