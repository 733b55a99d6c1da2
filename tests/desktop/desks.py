"""A desk over a real journal, for tests of pages and dialogs."""

from collections.abc import Iterator
from contextlib import contextmanager

from PySide6.QtCore import QEventLoop, QObject, QTimer
from PySide6.QtWidgets import QApplication, QDialog, QWidget
from shiboken6 import isValid

from journal.actions.session import Session
from journal.actions.settings import Settings
from journal.desktop.desk import Desk
from journal.desktop.tasks import Job, OnDone, Task, TaskRunner


class Told:
    """What a desk has told: messages, pages wanted, changes."""

    def __init__(self, desk: Desk) -> None:
        self.messages: list[str] = []
        self.pages: list[str] = []
        self.labels: list[str] = []
        desk.message.connect(lambda text, _level: self.messages.append(text))
        desk.page_wanted.connect(self.pages.append)
        desk.changed.connect(lambda changes: self.labels.append(changes.label))


def put_away(widget: QWidget) -> None:
    """Hide a widget at the end of a test, unless a last reading has let it be deleted already."""
    if isValid(widget):
        widget.hide()


class PatientDesk(Desk):
    """A desk that goes round the event loop until what is being read has been told."""

    def read(self, job: Job, on_done: OnDone, owner: QObject) -> Task:
        """Read in a reader's thread as ever, and wait."""
        task = super().read(job, on_done, owner)
        loop = QEventLoop()
        timer = QTimer(interval=1)
        # What is handed over while the runner stops is never done.
        timer.timeout.connect(
            lambda: loop.quit() if task.is_over or not self.tasks.is_busy() else None
        )
        timer.start()
        loop.exec()
        return task


@contextmanager
def desk_over(session: Session) -> Iterator[Desk]:
    """A desk that waits for what it reads; its threads end with the block."""
    tasks = TaskRunner()
    desk = PatientDesk(session, tasks, Settings())
    try:
        yield desk
    finally:
        tasks.close()
        desk.deleteLater()
        tasks.deleteLater()


def opened_dialog(kind: type[QDialog]) -> QDialog:
    """The dialog of a kind that is open now."""
    found = [w for w in QApplication.topLevelWidgets() if isinstance(w, kind) and w.isVisible()]
    assert len(found) == 1, f"{len(found)} of {kind.__name__} are open"
    return found[0]
