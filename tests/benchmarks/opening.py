"""How soon a journal's first page shows: python -m tests.benchmarks.opening [RUNS]

A window without anything in it, and the program with journals of 500 and of 50,000 photos, each in
a process of its own, in turns. Seconds of the processor count from the start of Python to the end
of the first painting; for the program that is the painting of the drawing with its panels. "All
read" is when pins and the sittings to place are on the page as well. Everything has been started
once before, so that Python has its bytecode at hand, as it has after the first start.
"""

import os
import statistics
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

from tests.benchmarks.journals import large_journal

_SIZES = (500, 50_000)
_BARE = "bare window"
_PATIENCE_S = 60
_NO_BYTECODE = "PYTHONDONTWRITEBYTECODE"

#: Both scripts import nothing that the program does not, so that neither is made to look better.
_BARE_SCRIPT = """
import sys, time
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QMainWindow

class Window(QMainWindow):
    def paintEvent(self, event):
        super().paintEvent(event)
        print(time.process_time(), time.time(), flush=True)
        QTimer.singleShot(0, QApplication.quit)

app = QApplication(sys.argv[:1])
window = Window()
window.resize(1280, 800)
window.show()
app.exec()
"""

#: The program starts as it always does; two of its methods are watched once their modules are in.
_JOURNAL_SCRIPT = """
import sys, time
from journal import __main__ as program

painted = []

def watch_painting(module):
    paint = module.DrawingCanvas.drawForeground
    def watched(canvas, painter, rect):
        paint(canvas, painter, rect)
        if canvas.panels_shown() and not painted:
            painted.append((time.process_time(), time.time()))
    module.DrawingCanvas.drawForeground = watched

def watch_reading(module):
    show = module.DrawingPage._show_rest
    def watched(page, found, reading):
        show(page, found, reading)
        print(*painted[0], flush=True)
        print(time.process_time(), time.time(), flush=True)
        page.window().close()
    module.DrawingPage._show_rest = watched

class Finder:
    watches = {
        "journal.desktop.widgets.canvas": watch_painting,
        "journal.desktop.pages.drawing": watch_reading,
    }
    def find_spec(self, name, path, target=None):
        watch = self.watches.get(name)
        if watch is None:
            return None
        spec = sys.meta_path[-1].find_spec(name, path)
        run = spec.loader.exec_module
        def run_and_watch(module):
            run(module)
            watch(module)
        spec.loader.exec_module = run_and_watch
        return spec

sys.meta_path.insert(0, Finder())
program.main(sys.argv[1:])
"""


@dataclass(frozen=True, slots=True)
class Moment:
    """Seconds since Python was started: of the processor, and of the clock."""

    cpu: float
    wall: float


def run(script: str, *words: str) -> list[Moment]:
    """Run a script in a Python of its own; the moments it tells of."""
    begun = time.time()
    told = subprocess.run(
        [sys.executable, "-c", script, *words],
        check=True,
        timeout=_PATIENCE_S,
        capture_output=True,
        text=True,
        env={name: value for name, value in os.environ.items() if name != _NO_BYTECODE},
    ).stdout
    pairs = [line.split() for line in told.splitlines()]
    return [Moment(float(cpu), float(wall) - begun) for cpu, wall in pairs]


def measure(folders: dict[str, Path], runs: int) -> dict[str, list[list[Moment]]]:
    """The moments of each run of each; they take turns, so that all see the same machine."""
    found: dict[str, list[list[Moment]]] = {_BARE: [], **{name: [] for name in folders}}
    for _ in range(runs + 1):
        found[_BARE].append(run(_BARE_SCRIPT))
        for name, folder in folders.items():
            found[name].append(run(_JOURNAL_SCRIPT, str(folder)))
    return {name: told[1:] for name, told in found.items()}


def median(runs: list[list[Moment]], place: int) -> Moment:
    """The medians of one moment over all runs."""
    told = [moments[place] for moments in runs]
    return Moment(statistics.median(m.cpu for m in told), statistics.median(m.wall for m in told))


def report(found: dict[str, list[list[Moment]]]) -> None:
    """Print a line for each, and the two ratios that are promised."""
    bare = median(found[_BARE], 0)
    for name, runs in found.items():
        for place, what in enumerate(("first page", "all read")[: len(runs[0])]):
            told = median(runs, place)
            ratios = f"{told.cpu / bare.cpu:5.2f} x bare, wall {told.wall / bare.wall:5.2f} x"
            _say(f"{name:16}{what:12}{told.cpu:7.3f} s cpu {told.wall:7.3f} s wall  {ratios}")
    small, large = (median(found[f"{size:,} photos"], 0) for size in _SIZES)
    _say(f"{_SIZES[1]:,} photos against a bare window: {large.cpu / bare.cpu:.2f} (promised: 3)")
    _say(f"{_SIZES[1]:,} photos against {_SIZES[0]}: {large.cpu / small.cpu:.2f} (promised: 1.2)")


def _say(text: str) -> None:
    sys.stdout.write(f"{text}\n")


def main() -> None:
    """Make the journals, open them, report."""
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 7
    with tempfile.TemporaryDirectory() as scratch:
        os.environ["QT_QPA_PLATFORM"] = "offscreen"
        os.environ["XDG_CONFIG_HOME"] = str(Path(scratch) / "settings")
        os.environ["PYTHONPYCACHEPREFIX"] = str(Path(scratch) / "bytecode")
        folders = {}
        for size in _SIZES:
            folders[f"{size:,} photos"] = Path(scratch) / f"Rook {size}"
            large_journal(folders[f"{size:,} photos"], size).close()
        report(measure(folders, runs))


if __name__ == "__main__":
    main()
