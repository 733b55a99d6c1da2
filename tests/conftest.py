"""What holds for every test: a home of its own, quiet logs, no thread or window left behind."""

import itertools
import logging
import os
import sys
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import settings

# The same examples every time where a change is judged; new ones wherever people work on it.
settings.register_profile("ci", derandomize=True, deadline=None)
if os.environ.get("CI"):
    settings.load_profile("ci")

if sys.platform == "linux" and not (os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY")):
    # Qt reads this when it is first imported, so it can't wait for a fixture.
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

_HOMES = {
    "HOME": "",
    "USERPROFILE": "",
    "APPDATA": "AppData/Roaming",
    "LOCALAPPDATA": "AppData/Local",
    "XDG_DATA_HOME": ".local/share",
    "XDG_CONFIG_HOME": ".config",
    "XDG_STATE_HOME": ".local/state",
    "XDG_CACHE_HOME": ".cache",
}
_GUI_FIXTURES = {"qtbot", "qapp", "qtmodeltester"}


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Mark every test that asks for a Qt application."""
    for item in items:
        if _GUI_FIXTURES & set(getattr(item, "fixturenames", ())):
            item.add_marker(pytest.mark.gui)


@pytest.fixture(scope="session")
def _homes(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    base = tmp_path_factory.mktemp("homes")
    counter = itertools.count()
    return (base / str(number) for number in counter)


@pytest.fixture(autouse=True)
def home(_homes: Iterator[Path], monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty home, so that no test reads or writes the real one."""
    folder = next(_homes)
    folder.mkdir()
    for name, below in _HOMES.items():
        monkeypatch.setenv(name, str(folder / below))
    return folder


class _Kept(logging.Handler):
    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.records: list[logging.LogRecord] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.records.append(record)


@pytest.fixture(autouse=True)
def _quiet_log(request: pytest.FixtureRequest) -> Iterator[list[logging.LogRecord]]:
    """Fail on a warning in the program's log, unless the test asks for ``expected_log``."""
    kept = _Kept()
    logger = logging.getLogger("journal")
    # The import linter sets up logging for itself and silences every logger it finds.
    for name, known in logging.root.manager.loggerDict.items():
        if name.split(".")[0] == "journal" and isinstance(known, logging.Logger):
            known.disabled = False
    logger.addHandler(kept)
    yield kept.records
    logger.removeHandler(kept)
    if kept.records and "expected_log" not in request.fixturenames:
        lines = "\n".join(f"{one.levelname} {one.name}: {one.getMessage()}" for one in kept.records)
        pytest.fail(f"unexpected in the log:\n{lines}")


@pytest.fixture
def expected_log(_quiet_log: list[logging.LogRecord]) -> list[logging.LogRecord]:
    """Warnings and errors logged so far, for a test that means to cause some."""
    return _quiet_log


@pytest.fixture(autouse=True)
def _no_thread_left() -> Iterator[None]:
    """Fail when a thread of the program outlives its test."""
    before = set(threading.enumerate())
    yield
    left = [one for one in threading.enumerate() if one not in before]
    for thread in left:
        thread.join(timeout=5)
    alive = [one.name for one in left if one.is_alive()]
    if alive:
        pytest.fail(f"threads left running: {', '.join(alive)}")


@pytest.fixture(autouse=True)
def _no_window_left(request: pytest.FixtureRequest) -> Iterator[None]:
    """Fail when a window outlives its test."""
    if not _GUI_FIXTURES & set(request.fixturenames):
        yield
        return
    from PySide6.QtCore import QCoreApplication, QEvent
    from PySide6.QtWidgets import QApplication

    before = {id(widget) for widget in QApplication.topLevelWidgets()}
    yield
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    left = [
        f"{type(widget).__name__} {widget.objectName()!r}"
        for widget in QApplication.topLevelWidgets()
        if id(widget) not in before and not widget.isHidden()
    ]
    if left:
        pytest.fail(f"windows left open: {', '.join(left)}")
