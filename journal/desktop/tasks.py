"""Long jobs off the main thread: one writer, two readers, and results back on the main thread."""

import contextlib
import logging
import os
import sys
import threading
import time
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import dataclass
from typing import Any

import shiboken6
from PySide6.QtCore import QObject, Qt, QTimer, Signal, Slot

from journal.domain.errors import Cancelled
from journal.domain.progress import Context, Progress

_LOG = logging.getLogger(__name__)
_POLL_MS = 100
_READERS = 2
#: Added to the niceness of the writer and of every thread it starts, so that painting goes first.
_WRITER_NICENESS = 10

Job = Callable[[Context], Any]
OnDone = Callable[[Any], object]
OnFailed = Callable[[Exception], None]
OnCancelled = Callable[[], None]


@dataclass(frozen=True, slots=True)
class Running:
    """A writing job as it stands: what the progress strip shows.

    ``step`` is what is being done now, ``done`` of ``total`` units (0 when unknown).
    ``seconds_left`` is an estimate, None while there is nothing to estimate from.
    ``cancelling`` tells that the person has asked it to stop.
    """

    task: "Task"
    label: str
    step: str
    done: int
    total: int
    seconds_left: float | None
    cancelling: bool


class _JobContext:
    """What a job reports to; written by the worker, read by the main thread."""

    def __init__(self) -> None:
        self.progress = Progress(0, 0, "")
        self.asked_to_stop = threading.Event()

    def report(self, done: int, total: int, label: str) -> None:
        self.progress = Progress(done, total, label)

    def checkpoint(self) -> None:
        if self.asked_to_stop.is_set():
            raise Cancelled


class _Pace:
    """How fast a job gets on, from the progress seen at each poll."""

    def __init__(self) -> None:
        self._since = time.monotonic()
        self._from = Progress(0, 0, "")

    def seconds_left(self, now: Progress) -> float | None:
        """Seconds until ``now.total`` at the pace since the present step began."""
        if now.total != self._from.total or now.done < self._from.done:
            self._since, self._from = time.monotonic(), now
            return None
        elapsed = time.monotonic() - self._since
        gained = now.done - self._from.done
        if not gained or elapsed < 1:
            return None
        return elapsed / gained * (now.total - now.done)


class Task:
    """One job handed to the runner."""

    def __init__(self, label: str, job: Job, owner: QObject, *, writes: bool) -> None:
        self.label = label
        self.writes = writes
        self.context = _JobContext()
        self.result: Any = None
        self.error: Exception | None = None
        self.on_done: OnDone | None = None
        self.on_failed: OnFailed | None = None
        self.on_cancelled: OnCancelled | None = None
        self.is_over = False
        self._job: Job | None = job
        self._owner = owner
        self._pace = _Pace()

    def cancel(self) -> None:
        """Ask the job to stop after its present item.

        A reading job's result is thrown away; what a writing job finished still arrives.
        """
        self.context.asked_to_stop.set()

    @property
    def is_cancelled(self) -> bool:
        """Whether somebody asked it to stop."""
        return self.context.asked_to_stop.is_set()

    def running(self) -> Running:
        """A snapshot for the progress strip."""
        now = self.context.progress
        left = self._pace.seconds_left(now)
        return Running(self, self.label, now.label, now.done, now.total, left, self.is_cancelled)

    def work(self) -> None:
        """Do the job; runs on a worker thread and never raises."""
        job, self._job = self._job, None
        try:
            self.context.checkpoint()
            self.result = job(self.context) if job else None
        except Exception as error:  # noqa: BLE001, RUF100 - handed to whoever asked for the job
            self.error = error

    def settle(self) -> None:
        """Tell the owner how it ended, unless the owner is gone."""
        self.is_over = True
        if not shiboken6.isValid(self._owner):
            return
        if isinstance(self.error, Cancelled) or (self.is_cancelled and not self.writes):
            if self.on_cancelled:
                self.on_cancelled()
        elif self.error is not None:
            if self.on_failed:
                self.on_failed(self.error)
            else:
                _LOG.error("%s failed", self.label or "A reading job", exc_info=self.error)
        elif self.on_done:
            self.on_done(self.result)


class TaskRunner(QObject):
    """Runs writing jobs one after another and reading jobs two at a time.

    How a job ended is told on the main thread, later than the call that started it, and never
    once the owner has been destroyed or the runner closed.
    """

    #: A tuple of Running: the writing jobs under way, ten times a second; empty when all ended.
    progressed = Signal(object)
    _settled = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._writer = ThreadPoolExecutor(1, "journal-writer", initializer=_stand_back)
        self._readers = ThreadPoolExecutor(_READERS, "journal-reader")
        self._live: dict[Task, Future[None]] = {}
        self._closed = False
        self._stopping = False
        self._timer = QTimer(self)
        self._timer.setInterval(_POLL_MS)
        self._timer.timeout.connect(self._poll)
        self._settled.connect(self._on_settled, Qt.ConnectionType.QueuedConnection)

    def write(
        self,
        label: str,
        job: Job,
        *,
        owner: QObject,
        on_done: OnDone | None = None,
        on_failed: OnFailed | None = None,
        on_cancelled: OnCancelled | None = None,
    ) -> Task:
        """Queue a job that changes the journal; ``label`` is what the progress strip calls it."""
        task = Task(label, job, owner, writes=True)
        task.on_done, task.on_failed, task.on_cancelled = on_done, on_failed, on_cancelled
        self._start(task, self._writer)
        if not self._timer.isActive():
            self._timer.start()
        return task

    def read(
        self,
        job: Job,
        *,
        owner: QObject,
        on_done: OnDone | None = None,
        on_failed: OnFailed | None = None,
    ) -> Task:
        """Queue a job that only reads (a picture, a sum); it shows in no strip."""
        task = Task("", job, owner, writes=False)
        task.on_done, task.on_failed = on_done, on_failed
        self._start(task, self._readers)
        return task

    def is_writing(self) -> bool:
        """Whether a writing job is under way or waits."""
        return any(task.writes for task in self._live)

    def is_busy(self) -> bool:
        """Whether any job is under way or waits, a reading one too."""
        return bool(self._live)

    def stop_all(self) -> None:
        """Ask every job to stop, wait until all have, and let what ended be told.

        What is handed over meanwhile is not done.
        """
        self._stopping = True
        for task in self._live:
            task.cancel()
        for future in tuple(self._live.values()):
            with contextlib.suppress(Exception):
                future.result()
        for task in tuple(self._live):
            self._on_settled(task)
        self._stopping = False

    def close(self) -> None:
        """Stop everything and end the threads; nothing is told after this."""
        self._closed = True
        self._timer.stop()
        for task in self._live:
            task.cancel()
        self._writer.shutdown(wait=True, cancel_futures=True)
        self._readers.shutdown(wait=True, cancel_futures=True)
        self._live.clear()

    def _start(self, task: Task, pool: ThreadPoolExecutor) -> None:
        def work() -> None:
            task.work()
            if not self._closed:
                self._settled.emit(task)

        if not self._closed and not self._stopping:
            self._live[task] = pool.submit(work)

    @Slot()
    def _poll(self) -> None:
        self.progressed.emit(tuple(task.running() for task in self._live if task.writes))

    @Slot(object)
    def _on_settled(self, task: Task) -> None:
        if self._closed or self._live.pop(task, None) is None:
            return
        if task.writes and not self.is_writing():
            self._timer.stop()
            self.progressed.emit(())
        task.settle()


def _stand_back() -> None:
    """Let the calling thread, and those it starts, wait for the painting one."""
    if sys.platform == "linux":
        with contextlib.suppress(OSError):
            os.setpriority(os.PRIO_PROCESS, threading.get_native_id(), _WRITER_NICENESS)
