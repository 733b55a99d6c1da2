"""The desk: acts that change, acts that can't, and who is told."""

from types import SimpleNamespace

import pytest

from journal.actions.settings import Settings
from journal.desktop.desk import Desk, Nothing, PanelSelected
from journal.desktop.tasks import TaskRunner
from journal.domain.changes import Changes
from journal.domain.errors import JournalError
from journal.domain.ids import EditId, PanelId

SESSION = SimpleNamespace(read_only=False, notice="")
CHANGED = Changes("Turn 1 photo", frozenset({"photos"}), EditId(3))


@pytest.fixture
def desk(qapp):
    runner = TaskRunner()
    yield Desk(SESSION, runner, Settings())
    runner.close()


def fail(session):
    raise JournalError("The paper is missing.")


def test_an_act_is_given_the_session_and_tells_what_changed(qtbot, desk):
    def turn(session, degrees, *, by):
        assert (session, degrees, by) == (SESSION, 90, "hand")
        return CHANGED

    with qtbot.waitSignal(desk.changed) as told:
        assert desk.act(turn, 90, by="hand") is CHANGED
    assert told.args == [CHANGED]


def test_an_act_that_changed_nothing_tells_nobody(qtbot, desk):
    with qtbot.assertNotEmitted(desk.changed):
        desk.act(lambda session: Changes("", frozenset()))


@pytest.mark.parametrize("way", ["act", "ask"])
def test_an_obstacle_becomes_a_message(qtbot, desk, way):
    with qtbot.waitSignal(desk.message) as told:
        assert getattr(desk, way)(fail) is None
    assert told.args == ["The paper is missing.", "error"]


def test_a_fault_of_the_program_is_not_hidden(desk):
    with pytest.raises(ZeroDivisionError):
        desk.act(lambda session: 1 / 0)


def test_a_long_job_tells_what_changed_before_it_is_done(qtbot, desk):
    order = []
    desk.changed.connect(lambda changes: order.append(changes))
    report = SimpleNamespace(changes=CHANGED)
    desk.run("Adding photos", lambda context: report, order.append)
    qtbot.waitUntil(lambda: len(order) == 2)
    assert order == [CHANGED, report]


def test_a_long_job_that_meets_an_obstacle_says_so(qtbot, desk):
    with qtbot.waitSignal(desk.message) as told:
        desk.run("Backing up", lambda context: fail(None))
    assert told.args == ["The paper is missing.", "error"]


def test_a_long_job_that_was_stopped_says_so(qtbot, desk):
    def job(context):
        while True:
            context.checkpoint()

    with qtbot.waitSignal(desk.message) as told:
        desk.run("Backing up", job).cancel()
    assert told.args == ["Backing up: stopped, as you asked.", "info"]


def test_a_long_job_that_breaks_is_logged_and_said(qtbot, desk, expected_log):
    with qtbot.waitSignal(desk.message) as told:
        desk.run("Backing up", lambda context: 1 / 0)
    assert "ZeroDivisionError" in told.args[0]
    assert [record.levelname for record in expected_log] == ["ERROR"]


def test_selecting_the_same_again_tells_nobody(qtbot, desk):
    assert desk.selection == Nothing()
    with qtbot.waitSignal(desk.selected):
        desk.select(PanelSelected(PanelId(1)))
    with qtbot.assertNotEmitted(desk.selected):
        desk.select(PanelSelected(PanelId(1)))
