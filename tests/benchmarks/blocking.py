"""How long the window keeps a person waiting: python -m tests.benchmarks.blocking [PHOTOS]

The program with a large journal is led through its pages; for each act the longest time is printed
that the main thread took no other event, how much of that it was busy itself (the rest it waited
for the disk, for another thread of the program or of another program), how long until all was
there, and where it was when it took too long. Promised: never more than 50 ms.
"""

import os
import sys
import tempfile
import threading
import time
from collections import Counter
from collections.abc import Callable
from functools import partial
from pathlib import Path
from types import FrameType
from typing import Any

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QEventLoop, QObject, Qt, QTimer
from PySide6.QtWidgets import QApplication

from journal.actions import areas, drawings, panels, receipts, timeline
from journal.desktop.app import make_app, make_window
from journal.desktop.desk import (
    AreaSelected,
    Desk,
    PanelSelected,
    PhotosSelected,
    ReceiptSelected,
)
from journal.desktop.garbage import Garbage
from journal.desktop.widgets.year_scale import Month
from journal.desktop.window import Window
from tests.benchmarks.journals import large_journal

_BEAT_MS = 2
_LOOK_S = 0.005
_PROMISED_MS = 50.0
_PAGES = ("Timeline", "Areas", "Ledger", "Gaps", "Dossier")


class Watchdog(QObject):
    """Notices how long the event loop goes round no more, and where the main thread is then."""

    def __init__(self) -> None:
        super().__init__()
        self.longest = self.busy = 0.0
        self.where = ""
        self._last, self._last_busy = time.perf_counter(), time.thread_time()
        self._seen: Counter[str] = Counter()
        self._main = threading.get_ident()
        self._stopped = threading.Event()
        self._timer = QTimer(self, interval=_BEAT_MS, timerType=Qt.TimerType.PreciseTimer)
        self._timer.timeout.connect(self._beat)
        self._timer.start()
        self._looker = threading.Thread(target=self._look)
        self._looker.start()

    def begin(self) -> None:
        """Forget what was noticed so far."""
        self.longest = self.busy = 0.0
        self.where, self._seen = "", Counter()
        self._last, self._last_busy = time.perf_counter(), time.thread_time()

    def stop(self) -> None:
        """Notice nothing more."""
        self._timer.stop()
        self._stopped.set()
        self._looker.join()

    def _beat(self) -> None:
        now, busy = time.perf_counter(), time.thread_time()
        if now - self._last > self.longest:
            self.longest, self.busy = now - self._last, busy - self._last_busy
            self.where = "; ".join(f"{n} x {place}" for place, n in self._seen.most_common(2))
        self._seen = Counter()
        self._last, self._last_busy = now, busy

    def _look(self) -> None:
        while not self._stopped.wait(_LOOK_S):
            if time.perf_counter() - self._last > _LOOK_S:
                self._seen[_place(sys._current_frames().get(self._main))] += 1


def _place(frame: FrameType | None) -> str:
    """The innermost functions of the program that a frame is in."""
    names = []
    while frame is not None and len(names) < 3:
        if "/journal/" in frame.f_code.co_filename:
            names.append(f"{Path(frame.f_code.co_filename).stem}.{frame.f_code.co_name}")
        frame = frame.f_back
    return " < ".join(names)


class Drive:
    """The window led through acts, each watched until all it began has ended."""

    def __init__(self, window: Window) -> None:
        self.window = window
        self.watchdog = Watchdog()

    def act(self, name: str, act: Callable[[], object]) -> None:
        """Do something in the event loop, as a click would, and print the longest stall."""
        self.watchdog.begin()
        QTimer.singleShot(0, self.window, act)
        begun = time.perf_counter()
        self._rest()
        stall = self.watchdog.longest * 1000
        mark = "  over" if stall > _PROMISED_MS else ""
        took = (time.perf_counter() - begun) * 1000
        where = f"  {self.watchdog.where}" if mark else ""
        busy = self.watchdog.busy * 1000
        sys.stdout.write(f"{name:24}{stall:7.1f} ms, busy {busy:6.1f}; {took:6.0f}{mark}{where}\n")

    def _rest(self) -> None:
        """Go round the event loop until no job is left and 150 ms have gone by."""
        quiet = 0
        while quiet < 5:
            loop = QEventLoop()
            QTimer.singleShot(30, loop.quit)
            loop.exec()
            quiet = 0 if self.window.tasks.is_busy() else quiet + 1


def lead(drive: Drive, folder: Path, count: int) -> None:
    """Every page of a journal, and what takes longest on each."""
    window = drive.window
    drive.act("open the journal", lambda: window.acts.open_folder(folder))
    assert window.workspace is not None
    assert window.desk is not None
    workspace, desk, session = window.workspace, window.desk, window.desk.session
    for title in _PAGES:
        drive.act(f"{title}, first", partial(workspace.show_page, title))
    drive.act("Drawing, again", partial(workspace.show_page, "Drawing"))
    on_drawing(drive, workspace.current_page(), desk)
    drive.act("undo", window.acts.undo)
    photos = tuple(moment.photo_id for moment in timeline.moments(session))
    drive.act("select a photo", lambda: desk.select(PhotosSelected(photos[1000:1001])))
    drive.act("Timeline, with a photo", partial(workspace.show_page, "Timeline"))
    drive.act("select a thousand", lambda: desk.select(PhotosSelected(photos[:1000])))
    drive.act("select all", lambda: desk.select(PhotosSelected(photos)))
    drive.act("Areas, again", partial(workspace.show_page, "Areas"))
    area = areas.areas(session)[7]
    drive.act("an area", lambda: desk.select(AreaSelected(area.id)))
    drive.act("Ledger, again", partial(workspace.show_page, "Ledger"))
    ledger: Any = workspace.current_page()
    receipt = receipts.receipts(session)[count // 60]
    drive.act("a receipt", lambda: desk.select(ReceiptSelected(receipt.id)))
    drive.act("filter receipts", lambda: ledger.tab("Receipts").filter.setText("flange"))
    drive.act("close the journal", window.close_journal)


def on_drawing(drive: Drive, page: Any, desk: Desk) -> None:
    """What is done on the Drawing page."""
    session = desk.session
    found = drawings.panels(session)
    crowded = max(found, key=lambda panel: len(panels.history(session, panel.id).photos))
    other = drawings.find_panel(session, "Sill, left")
    drive.act("a panel's story", lambda: desk.select(PanelSelected(crowded.id)))
    drive.act("another panel's story", lambda: desk.select(PanelSelected(other.id)))
    for view in drawings.views(session)[1:4]:
        drive.act(f"view: {view.name}", partial(page.tabs.chosen.emit, view.id))
    month = Month(2016, 5)
    drive.act("the car as it stood", partial(page.years.strip.moved.emit, month))
    drive.act("take a sitting", lambda: page.tray.list.setCurrentIndex(page.tray.model.index(0)))
    drive.act("pin it", lambda: page.canvas.panel_chosen.emit(other.id))


def main() -> None:
    """Make a large journal, lead the window through it."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 50_000
    with tempfile.TemporaryDirectory() as scratch:
        os.environ["XDG_CONFIG_HOME"] = str(Path(scratch) / "settings")
        folder = Path(scratch) / "Rook"
        large_journal(folder, count).close()
        app: QApplication = make_app(sys.argv)
        window = make_window(app)
        window.show()
        garbage = Garbage(app)
        # Without a screen no window is the active one, and the person would seem to have left.
        app.applicationStateChanged.disconnect()
        drive = Drive(window)
        drive.act("nothing", lambda: None)
        lead(drive, folder, count)
        drive.watchdog.stop()
        garbage.stop()
        window.close()


if __name__ == "__main__":
    main()
