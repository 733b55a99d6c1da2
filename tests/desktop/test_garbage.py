"""Garbage: Python's own collector rests, what holds only itself goes all the same."""

import gc
import weakref

import pytest
from PySide6.QtCore import Qt

from journal.desktop.garbage import Garbage


class Ring:
    """Something that holds itself."""

    def __init__(self) -> None:
        self.itself = self


@pytest.fixture
def garbage(qapp):
    made = Garbage(qapp)
    yield made
    made.stop()
    made.deleteLater()


def ring():
    return weakref.ref(Ring())


def test_python_itself_stops_nothing_meanwhile_and_takes_over_again(garbage):
    assert not gc.isenabled()
    garbage.stop()
    assert gc.isenabled()
    assert gc.get_freeze_count() == 0


def test_what_holds_only_itself_goes_within_a_look(garbage):
    lost = ring()
    garbage.look()
    assert lost() is None


def test_many_rows_are_set_aside_unseen_and_looked_at_later(garbage):
    garbage.look()
    rows = [[] for _ in range(60_000)]
    lost = ring()
    garbage.look()
    assert gc.get_freeze_count() > len(rows)
    assert lost() is not None
    garbage.look_everywhere()
    assert lost() is None


def test_turning_to_something_else_is_the_time_to_look_everywhere(qapp, qtbot, garbage):
    lost = ring()
    gc.freeze()
    qapp.applicationStateChanged.emit(Qt.ApplicationState.ApplicationInactive)
    assert garbage._left.isActive()
    garbage._left.setInterval(1)
    qtbot.waitUntil(lambda: lost() is None)


def test_coming_back_at_once_disturbs_nobody(qapp, garbage):
    qapp.applicationStateChanged.emit(Qt.ApplicationState.ApplicationInactive)
    qapp.applicationStateChanged.emit(Qt.ApplicationState.ApplicationActive)
    assert not garbage._left.isActive()
