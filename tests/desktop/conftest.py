"""A quiet desktop for tests: no screen, no real home, no thread left behind."""

import os
import sys
import threading

import pytest

if sys.platform == "linux":
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


def pytest_collection_modifyitems(items):
    for item in items:
        if {"qapp", "qtbot"} & set(getattr(item, "fixturenames", ())):
            item.add_marker("gui")


@pytest.fixture(autouse=True)
def _own_home(tmp_path_factory, monkeypatch):
    home = tmp_path_factory.mktemp("home")
    for name in ("HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME", "XDG_STATE_HOME"):
        monkeypatch.setenv(name, str(home))


@pytest.fixture(autouse=True)
def _no_thread_left():
    yield
    left = [thread.name for thread in threading.enumerate() if thread.name.startswith("journal-")]
    assert left == []
