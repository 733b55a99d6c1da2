"""How smoothly the grid scrolls: 50,000 photos against the same pixels painted by a bare loop.

Run it: ``QT_QPA_PLATFORM=offscreen python -m tests.benchmarks.scrolling [PHOTOS]``. The reference
is a widget of the same size that paints as many plain pixmaps as the grid shows, in a QPainter
loop, nothing else. Every frame is a whole scroll step with its paint, in this process.
"""

import os
import statistics
import sys
import time
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QEventLoop, QTimer
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QApplication, QWidget

from journal.desktop.stylesheet import dress
from journal.desktop.tasks import TaskRunner
from journal.desktop.widgets.photo_grid import Group, PhotoGrid
from journal.desktop.widgets.thumbs import ThumbCache
from tests.desktop.photo_fakes import fake_groups, fake_load

_SIZE = (1920, 1080)
_FRAMES = 400


class _Plain(QWidget):
    """Paints a fixed number of pixmaps, one after another, as fast as Qt can."""

    def __init__(self, count: int, width: int, height: int) -> None:
        super().__init__()
        self.resize(*_SIZE)
        self.offset = 0
        self._columns = max(1, _SIZE[0] // (width + 8))
        self._count, self._cell = count, (width + 8, height + 8)
        self._pictures = [_picture(width, height, n) for n in range(24)]

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's name
        painter = QPainter(self)
        painter.fillRect(event.rect(), QColor("#efece6"))
        for n in range(self._count):
            x = n % self._columns * self._cell[0]
            y = n // self._columns * self._cell[1] - self.offset % self._cell[1]
            painter.drawPixmap(x, y, self._pictures[n % len(self._pictures)])


def _picture(width: int, height: int, number: int) -> QPixmap:
    made = QPixmap(width, height)
    made.fill(QColor.fromHsv(number * 15, 120, 160))
    return made


def _say(text: str) -> None:
    sys.stdout.write(f"{text}\n")


def _wait(milliseconds: int) -> None:
    loop = QEventLoop()
    QTimer.singleShot(milliseconds, loop.quit)
    loop.exec()


def _frames(*steps: Callable[[int], None], count: int = _FRAMES) -> list[list[float]]:
    """The time of each frame of each step; they take turns, so that all see the same machine."""
    times: list[list[float]] = [[] for _ in steps]
    for number in range(count):
        for step, taken in zip(steps, times, strict=True):
            start = time.perf_counter()
            step(number)
            QApplication.processEvents()
            taken.append((time.perf_counter() - start) * 1000)
    return times


def _line(name: str, times: list[float]) -> str:
    p95, p99 = (statistics.quantiles(times, n=100)[i] for i in (94, 98))
    return f"{name:34} median {statistics.median(times):6.2f} ms  p95 {p95:6.2f}  p99 {p99:6.2f}"


def _memory() -> float:
    """Resident memory in MB; 0 where the system doesn't tell."""
    try:
        pages = Path("/proc/self/statm").read_text().split()[1]
        return int(pages) * os.sysconf("SC_PAGE_SIZE") / 2**20
    except OSError:
        return 0.0


def _shown_grid(groups: list[Group], runner: TaskRunner) -> PhotoGrid:
    """The grid with all photos on screen; says how long the first picture of it took."""
    grid = PhotoGrid(ThumbCache(fake_load, runner))
    grid.resize(*_SIZE)
    start = time.perf_counter()
    grid.set_groups(groups)
    ready = time.perf_counter()
    grid.show()
    QApplication.processEvents()
    laid_out, shown = (ready - start) * 1000, (time.perf_counter() - start) * 1000
    _say(f"{grid.grid_layout.count:,} photos: laid out in {laid_out:.1f} ms, shown in {shown:.1f}")
    return grid


def _compare(grid: PhotoGrid, plain: _Plain) -> None:
    """Frames of the grid beside frames of the plain loop."""
    bar = grid.verticalScrollBar()

    def plain_step(number: int) -> None:
        plain.offset = number * 37
        plain.repaint()

    def line_step(number: int) -> None:
        bar.setValue(number * 37)

    def whole_step(number: int) -> None:
        bar.setValue(number * 37)
        grid.viewport().repaint()

    def leap_step(number: int) -> None:
        bar.setValue(number * 791_900 % bar.maximum())

    for name, step in (
        ("by lines, thumbnails coming", line_step),
        ("by lines", line_step),
        ("every frame painted in whole", whole_step),
        ("leaps to anywhere", leap_step),
    ):
        reference, times = _frames(plain_step, step)
        ratio = statistics.median(times) / statistics.median(reference)
        _say(_line("  the plain loop", reference))
        _say(f"{_line(name, times)}  {ratio:5.2f} x the plain loop")


def _walk(grid: PhotoGrid, bare: float) -> None:
    """The memory after the first screens, and after looking all over the grid."""
    bar = grid.verticalScrollBar()
    bar.setValue(0)
    _wait(500)
    early = _memory()
    for number in range(60):
        bar.setValue(number * bar.maximum() // 60)
        _wait(60)
    late, held = _memory(), grid.cache.bytes_held / 2**20
    _say(f"memory: {bare:.0f} MB before, {early:.0f} after the first screens,")
    _say(f"{late:.0f} after a walk through all; thumbnails held {held:.0f} MB")


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 50_000
    app = QApplication([])
    dress(app, "light")
    runner = TaskRunner()
    groups = fake_groups(count)
    bare = _memory()
    grid = _shown_grid(groups, runner)
    cell = grid.grid_layout.cell
    plain = _Plain(len(grid.visible_photos()), cell.width(), cell.width() * 3 // 4)
    plain.show()
    app.processEvents()
    _compare(grid, plain)
    _walk(grid, bare)
    runner.close()


if __name__ == "__main__":
    main()
