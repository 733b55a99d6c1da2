"""How soon an original is on screen: walking with the arrow keys, and leaping to a far photo.

Run it: ``QT_QPA_PLATFORM=offscreen python -m tests.benchmarks.large_photo``. The reference is the
bare scaled decode of the same original to the same size, in this process, without a window.
"""

import os
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
from PySide6.QtWidgets import QApplication, QWidget

from journal.actions import photos as photo_actions
from journal.actions import pictures
from journal.actions.add_photos import add_photos
from journal.actions.journals import new_journal
from journal.actions.session import Session
from journal.actions.settings import Settings
from journal.desktop.desk import Desk
from journal.desktop.tasks import TaskRunner
from journal.desktop.widgets.photo_viewer import PhotoViewer
from journal.domain.car import Car
from journal.domain.ids import PhotoId

_SIZE = (1920, 1080)
_PHOTOS = 9
_PAUSE_MS = 700


def _make(folder: Path) -> list[Path]:
    """Originals of 12 megapixels with as much detail as a phone's."""
    paths = []
    for number in range(_PHOTOS):
        coarse = Image.effect_noise((160, 120), 90).resize((4000, 3000), Image.Resampling.BICUBIC)
        fine = Image.effect_noise((4000, 3000), 24)
        grey = Image.blend(coarse, fine, 0.35)
        picture = Image.merge("RGB", (grey, grey.point(lambda v: v * 0.9), grey.rotate(180)))
        path = folder / f"IMG_{number:04}.jpg"
        picture.save(path, "JPEG", quality=90, comment=str(number).encode())
        paths.append(path)
    return paths


def _pause(milliseconds: int) -> None:
    loop = QEventLoop()
    QTimer.singleShot(milliseconds, loop.quit)
    loop.exec()


def _until_sharp(viewer: PhotoViewer, act: Callable[[], object]) -> float:
    """Milliseconds from an act until the photo itself, not its placeholder, is painted."""
    start = time.perf_counter()
    act()
    while viewer.view.pixmap is None or viewer.view.pixmap.width() < 1000:
        loop = QEventLoop()
        viewer.source.ready.connect(loop.quit)
        QTimer.singleShot(2000, loop.quit)
        loop.exec()
    viewer.view.repaint()
    return (time.perf_counter() - start) * 1000


def _bare(session: Session, ids: list[PhotoId], longest: int) -> list[float]:
    times = []
    for photo in photo_actions.photos(session, ids):
        start = time.perf_counter()
        pictures.picture(session, photo, longest)
        times.append((time.perf_counter() - start) * 1000)
    return times


def _report(name: str, times: list[float], floor: float) -> None:
    middle, worst = statistics.median(times), max(times)
    sys.stdout.write(
        f"{name:36} median {middle:6.1f} ms  worst {worst:6.1f}  {middle / floor:5.2f} x decode\n"
    )


def _measure(session: Session, ids: list[PhotoId], runner: TaskRunner) -> None:
    over = QWidget()
    over.resize(*_SIZE)
    over.show()
    viewer = PhotoViewer(Desk(session, runner, Settings()), None, over)
    viewer.open_at(ids, ids[0])
    longest = viewer._longest()
    bare = _bare(session, ids, longest)
    floor = statistics.median(bare)
    _report(f"the bare decode, {longest} pixels", bare, floor)
    _pause(_PAUSE_MS)
    walked, leapt = [], []
    for _ in ids[1:]:
        walked.append(_until_sharp(viewer, lambda: QTest.keyClick(viewer, Qt.Key.Key_Right)))
        _pause(_PAUSE_MS)
    for place in (4, 0, 8, 3, 7, 2):
        viewer.source._kept.clear()
        leapt.append(_until_sharp(viewer, lambda place=place: viewer.go(place)))
        _pause(_PAUSE_MS)
    _report("the next photo by key", walked, floor)
    _report("a far photo, nothing decoded", leapt, floor)
    over.close()


def main() -> None:
    app = QApplication([])
    app.setApplicationName("large_photo")
    runner = TaskRunner()
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        with new_journal(folder / "Halden Rook", Car(title="Halden Rook")) as session:
            report = add_photos(session, _make(folder))
            _measure(session, [added.photo_id for added in report.added], runner)
            runner.close()


if __name__ == "__main__":
    main()
