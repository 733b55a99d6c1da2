"""Jobs off the main thread: order, progress, cancelling, failing and ending."""

import sys
import threading
import time

import pytest
from PySide6.QtCore import QObject, QTimer

from journal.desktop.tasks import TaskRunner
from journal.domain.errors import JournalError


@pytest.fixture
def runner(qapp):
    made = TaskRunner()
    yield made
    made.close()


@pytest.fixture
def owner(qapp):
    return QObject()


def test_a_result_arrives_on_the_main_thread_after_the_call(qtbot, runner, owner):
    told = []
    runner.write(
        "add",
        lambda context: 7,
        owner=owner,
        on_done=lambda n: told.append((n, threading.current_thread() is threading.main_thread())),
    )
    assert told == []
    qtbot.waitUntil(lambda: told != [])
    assert told == [(7, True)]


def test_writing_jobs_run_one_at_a_time_in_order(qtbot, runner, owner):
    running, most, order = set(), [0], []

    def job(name):
        def work(context):
            running.add(name)
            most[0] = max(most[0], len(running))
            time.sleep(0.01)
            running.discard(name)
            return name

        return work

    for name in range(5):
        runner.write("w", job(name), owner=owner, on_done=order.append)
    qtbot.waitUntil(lambda: len(order) == 5)
    assert most == [1]
    assert order == list(range(5))


def test_two_reading_jobs_run_side_by_side_while_one_writes(qtbot, runner, owner):
    meeting = threading.Barrier(3, timeout=5)
    told = []
    runner.write("w", lambda context: meeting.wait(), owner=owner, on_done=told.append)
    for _ in range(2):
        runner.read(lambda context: meeting.wait(), owner=owner, on_done=told.append)
    qtbot.waitUntil(lambda: len(told) == 3)


def test_progress_is_seen_while_the_job_runs_and_ends_with_nothing(qtbot, runner, owner):
    seen, go = [], threading.Event()
    runner.progressed.connect(seen.append)

    def job(context):
        context.report(3, 10, "Copying")
        go.wait(5)

    runner.write("Adding photos", job, owner=owner)
    qtbot.waitUntil(lambda: any(s and s[0].done == 3 for s in seen))
    snapshot = next(s[0] for s in seen if s and s[0].done == 3)
    assert (snapshot.label, snapshot.step, snapshot.total) == ("Adding photos", "Copying", 10)
    go.set()
    qtbot.waitUntil(lambda: seen[-1] == ())


def test_the_time_left_is_estimated_from_the_pace(qtbot, runner, owner):
    seen, go = [], threading.Event()
    runner.progressed.connect(seen.append)

    def job(context):
        started = time.monotonic()
        while not go.wait(0.02):
            context.report(min(99, int((time.monotonic() - started) * 10)), 100, "Copying")

    runner.write("w", job, owner=owner)
    qtbot.waitUntil(lambda: any(s and s[0].seconds_left is not None for s in seen), timeout=5000)
    left = next(s[0].seconds_left for s in seen if s and s[0].seconds_left is not None)
    go.set()
    assert 4 < left < 16  # about 90 units at ten a second


def test_a_cancelled_job_stops_at_its_next_checkpoint(qtbot, runner, owner):
    told, started = [], threading.Event()

    def job(context):
        started.set()
        while True:
            context.checkpoint()
            time.sleep(0.002)

    task = runner.write(
        "w",
        job,
        owner=owner,
        on_done=lambda _: told.append("done"),
        on_cancelled=lambda: told.append("cancelled"),
    )
    started.wait(5)
    task.cancel()
    qtbot.waitUntil(lambda: told != [])
    assert told == ["cancelled"]


def test_what_a_cancelled_writing_job_finished_still_arrives(qtbot, runner, owner):
    told, go = [], threading.Event()

    def job(context):
        go.wait(5)
        return "kept"

    task = runner.write("w", job, owner=owner, on_done=told.append)
    task.cancel()
    go.set()
    qtbot.waitUntil(lambda: task.is_over)
    assert told in (["kept"], [])  # cancelled before its start, or finished: never half


def test_a_cancelled_reading_job_is_never_told(qtbot, runner, owner):
    told, go = [], threading.Event()
    task = runner.read(lambda context: go.wait(5), owner=owner, on_done=told.append)
    task.cancel()
    go.set()
    qtbot.waitUntil(lambda: task.is_over)
    assert told == []


def test_a_failure_is_told_and_the_next_job_runs(qtbot, runner, owner):
    told = []

    def job(context):
        raise JournalError("The card was pulled out.")

    runner.write("w", job, owner=owner, on_failed=lambda error: told.append(str(error)))
    runner.write("w", lambda context: "next", owner=owner, on_done=told.append)
    qtbot.waitUntil(lambda: len(told) == 2)
    assert told == ["The card was pulled out.", "next"]


def test_nothing_is_told_to_an_owner_that_is_gone(qtbot, runner):
    gone, told, go = QObject(), [], threading.Event()
    task = runner.write("w", lambda context: go.wait(5), owner=gone, on_done=told.append)
    gone.deleteLater()
    qtbot.waitSignal(gone.destroyed, timeout=2000).wait()
    go.set()
    qtbot.waitUntil(lambda: task.is_over)
    assert told == []


def test_stopping_waits_for_the_job_and_tells_what_ended(qtbot, runner, owner):
    told, started = [], threading.Event()

    def job(context):
        started.set()
        context.asked_to_stop.wait(5)
        return "kept"

    runner.write("w", job, owner=owner, on_done=told.append)
    started.wait(5)
    runner.stop_all()
    assert told == ["kept"]
    assert not runner.is_writing()


def test_closing_ends_the_threads_and_tells_nothing_more(qtbot, qapp, owner):
    runner, told = TaskRunner(), []
    for _ in range(20):
        runner.read(lambda context: time.sleep(0.005), owner=owner, on_done=told.append)
    runner.close()
    before = len(told)
    QTimer.singleShot(30, lambda: told.append("timer"))
    qtbot.waitUntil(lambda: "timer" in told)
    assert len(told) == before + 1
    assert not [t for t in threading.enumerate() if t.name.startswith("journal-")]


def test_a_job_can_start_another_when_it_ends(qtbot, runner, owner):
    told = []

    def again(result):
        told.append(result)
        if result < 3:
            runner.write("w", lambda context: result + 1, owner=owner, on_done=again)

    runner.write("w", lambda context: 0, owner=owner, on_done=again)
    qtbot.waitUntil(lambda: told == [0, 1, 2, 3])


def test_five_hundred_small_jobs_all_arrive(qtbot, runner, owner):
    told = []
    for number in range(500):
        runner.read(lambda context, n=number: n, owner=owner, on_done=told.append)
    qtbot.waitUntil(lambda: len(told) == 500, timeout=5000)
    assert sorted(told) == list(range(500))


def test_this_qt_keeps_its_references(qapp):
    """PySide6 6.12.0 on Python 3.11 loses a reference to None with every void call."""
    timer = QTimer()
    before = sys.getrefcount(None)
    for _ in range(1000):
        timer.stop()
    assert abs(sys.getrefcount(None) - before) < 200
