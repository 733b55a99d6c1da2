"""How soon an original is on screen: python -m tests.benchmarks.viewing [RUNS]

Photos of twelve megapixels in a journal are looked at in the viewer. The time runs from the key
to the end of the painting of the picture in its full size for the window. Promised: 60 ms. The
reference is a scaled decode of the same file by Pillow alone, in this process.
"""

import os
import random
import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PIL import Image
from PySide6.QtCore import QEventLoop, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget

from journal.actions.add_photos import add_photos
from journal.actions.journals import new_journal
from journal.actions.session import Session
from journal.actions.settings import Settings
from journal.actions.timeline import moments
from journal.desktop.app import make_app
from journal.desktop.desk import Desk
from journal.desktop.tasks import TaskRunner
from journal.desktop.widgets.photo_viewer import PhotoViewer
from journal.domain.car import Car

_SIZE = (4000, 3000)
_WINDOW = (1920, 1080)


def pictures(folder: Path, count: int) -> list[Path]:
    """Files as large as a camera's, about four megabytes each, no two alike."""
    folder.mkdir()
    made = []
    for number in range(count):
        chance = random.Random(number)
        grain = Image.effect_noise(_SIZE, 17)
        ground = Image.linear_gradient("L").resize(_SIZE).rotate(chance.randrange(360))
        picture = Image.merge("RGB", (grain, Image.blend(grain, ground, 0.5), ground))
        made.append(folder / f"DSCF{number:04}.jpg")
        picture.save(made[-1], quality=90)
    return made


def scaled_decode(path: Path, longest: int) -> float:
    """Milliseconds that Pillow takes to decode a file no larger than needed."""
    begun = time.perf_counter()
    with Image.open(path) as picture:
        picture.draft("RGB", (longest, longest))
        picture.load()
    return (time.perf_counter() - begun) * 1000


class Walk:
    """A viewer, and the time from a key to the picture."""

    def __init__(self, session: Session) -> None:
        self.tasks = TaskRunner()
        self.over = QWidget()
        self.over.resize(*_WINDOW)
        self.over.show()
        desk = Desk(session, self.tasks, Settings(), self.over)
        self.viewer = PhotoViewer(desk, None, self.over)
        self.ids = tuple(moment.photo_id for moment in moments(session))

    def until_shown(self, act: Callable[[], object]) -> float:
        """Milliseconds from ``act`` to the painting of the picture it leads to."""
        begun = time.perf_counter()
        act()
        loop = QEventLoop()
        timer = QTimer(interval=1, timerType=Qt.TimerType.PreciseTimer)
        timer.timeout.connect(lambda: self._is_shown() and loop.quit())
        timer.start()
        if not self._is_shown():
            loop.exec()
        self.viewer.view.repaint()
        return (time.perf_counter() - begun) * 1000

    def _is_shown(self) -> bool:
        photo, shown = self.viewer.photo, self.viewer.view.pixmap
        if photo is None or shown is None:
            return False
        return shown is self.viewer.source.have(photo, self.viewer.view.width())

    def rest(self) -> None:
        """Wait until the neighbours are decoded."""
        while self.tasks.is_busy():
            loop = QEventLoop()
            QTimer.singleShot(5, loop.quit)
            loop.exec()


def measure(walk: Walk, runs: int) -> dict[str, list[float]]:
    """Times of a first look, of steps at a person's pace, and of steps to what is not decoded."""
    found: dict[str, list[float]] = {"a photo opened": [], "the next one": [], "ten on": []}
    for run in range(runs):
        place = run * 20
        found["a photo opened"].append(
            walk.until_shown(lambda: walk.viewer.open_at(walk.ids, walk.ids[place]))  # noqa: B023
        )
        walk.rest()
        found["the next one"].append(
            walk.until_shown(lambda: QTest.keyClick(walk.viewer, Qt.Key.Key_Right))
        )
        walk.rest()
        found["ten on"].append(
            walk.until_shown(lambda: QTest.keyClick(walk.viewer, Qt.Key.Key_PageDown))
        )
        walk.rest()
        walk.viewer.leave()
    return found


def main() -> None:
    """Make a journal, look at its photos, report."""
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 5
    with tempfile.TemporaryDirectory() as scratch:
        files = pictures(Path(scratch) / "card", runs * 20)
        session = new_journal(Path(scratch) / "Rook", Car("Halden Rook"))
        add_photos(session, files)
        app = make_app(sys.argv)
        walk = Walk(session)
        app.processEvents()
        size = statistics.mean(path.stat().st_size for path in files) / 1e6
        bare = statistics.median(scaled_decode(path, _WINDOW[0]) for path in files[:9])
        _say(f"{_SIZE[0]} x {_SIZE[1]} pixels, {size:.1f} MB; Pillow's scaled decode {bare:.1f} ms")
        for name, times in measure(walk, runs).items():
            middle = statistics.median(times)
            _say(
                f"{name:16}median {middle:6.1f} ms, most {max(times):6.1f}  {middle / bare:5.2f} x"
            )
        walk.viewer.deleteLater()
        walk.tasks.close()
        session.close()


def _say(text: str) -> None:
    sys.stdout.write(f"{text}\n")


if __name__ == "__main__":
    main()
