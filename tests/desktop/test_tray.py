"""The tray: what is to be placed, what is in hand, and what comes next."""

from datetime import datetime

import pytest
from PySide6.QtCore import QModelIndex

from journal.actions.settings import Settings
from journal.desktop.desk import Desk
from journal.desktop.tasks import TaskRunner
from journal.desktop.widgets.photo_drag import photos_from_mime
from journal.desktop.widgets.tray import Tray, TrayModel, to_place
from journal.domain.ids import PhotoId
from journal.domain.sittings import Sitting
from tests.desktop.garage import garage


def ids(*numbers):
    return tuple(PhotoId(n) for n in numbers)


def sitting(day, *numbers, placed=0):
    first = datetime(2016, 3, day, 9) if day else None
    last = datetime(2016, 3, day, 12, 30) if day else None
    return Sitting(first, last, ids(*numbers), placed)


SITTINGS = (sitting(5, 1, 2, 3), sitting(12, 4, 5), sitting(None, 6))


def test_the_latest_sitting_comes_first_and_undated_photos_last():
    rows = to_place(SITTINGS, set())
    assert [row.ids for row in rows] == [ids(4, 5), ids(1, 2, 3), ids(6)]
    assert rows[0].title == "Sat 12 March 2016"
    assert rows[0].detail == "09:00 to 12:30 · 2 photos"
    assert (rows[2].title, rows[2].detail) == ("No date known", "1 photo")


def test_placed_photos_and_placed_sittings_are_left_out():
    rows = to_place(SITTINGS, {2, 4, 5})
    assert [row.ids for row in rows] == [ids(1, 3), ids(6)]
    assert rows[0].detail.endswith("2 of 3 photos")


def test_the_model_behaves_like_one(qtmodeltester, qtbot):
    model = TrayModel()
    model.set_rows(to_place(SITTINGS, set()))
    qtmodeltester.check(model)


def test_a_dragged_sitting_carries_its_photos_without_a_place(qtbot):
    model = TrayModel()
    model.set_rows(to_place(SITTINGS, {2}))
    assert photos_from_mime(model.mimeData([model.index(1)])) == ids(1, 3)


@pytest.fixture
def tray(qtbot, tmp_path):
    session = garage(tmp_path)
    runner = TaskRunner()
    desk = Desk(session, runner, Settings())
    made = Tray(desk)
    qtbot.addWidget(made)
    made.set_sittings(to_place(SITTINGS, set()), any_photos=True)
    yield made
    runner.close()
    session.close()


def test_nothing_is_in_hand_until_a_sitting_is_picked(tray):
    assert tray.in_hand() == ()
    assert tray.next_in_hand() == ids(4, 5)


def test_picking_a_sitting_takes_it_in_hand(qtbot, tray):
    with qtbot.waitSignal(tray.picked) as told:
        tray.list.setCurrentIndex(tray.model.index(1))
    assert told.args == [ids(1, 2, 3)]
    assert tray.in_hand() == ids(1, 2, 3)


def test_photos_picked_from_a_sitting_are_in_hand_alone(qtbot, tray):
    tray.list.setCurrentIndex(tray.model.index(1))
    tray.grid.select(ids(2))
    assert tray.in_hand() == ids(2)


def test_photos_selected_elsewhere_are_in_hand_until_let_go(tray):
    tray.take(ids(9, 10))
    assert tray.in_hand() == ids(9, 10)
    tray.let_go()
    assert tray.in_hand() == ()


def test_after_pinning_the_next_sitting_is_in_hand_without_a_word(qtbot, tray):
    tray.list.setCurrentIndex(tray.model.index(0))
    tray.was_pinned(ids(4, 5))
    with qtbot.assertNotEmitted(tray.picked):
        tray.set_sittings(to_place(SITTINGS, {4, 5}), any_photos=True)
    assert tray.in_hand() == ids(1, 2, 3)


def test_after_pinning_some_photos_the_rest_of_the_sitting_is_next(tray):
    tray.list.setCurrentIndex(tray.model.index(1))
    tray.was_pinned(ids(1))
    tray.set_sittings(to_place(SITTINGS, {1}), any_photos=True)
    assert tray.in_hand() == ids(2, 3)


def test_reading_again_keeps_what_was_picked(qtbot, tray):
    tray.list.setCurrentIndex(tray.model.index(1))
    with qtbot.assertNotEmitted(tray.picked):
        tray.set_sittings(to_place((sitting(20, 30), *SITTINGS), set()), any_photos=True)
    assert tray.in_hand() == ids(1, 2, 3)


def test_an_empty_tray_says_whether_there_are_photos_at_all(tray):
    tray.set_sittings((), any_photos=False)
    assert "No photos yet" in tray._done.text()
    tray.set_sittings((), any_photos=True)
    assert tray._done.text() == "Every photo has its place on the car."
    assert tray.list.currentIndex() == QModelIndex()
