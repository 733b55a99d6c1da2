import os
import sys
import threading
import time

import pytest

from journal.actions.workers import Workers


def test_results_come_in_the_order_of_the_items():
    def work(number):
        time.sleep(0.002 * (number % 3))
        return number * number

    with Workers(work, range(40)) as results:
        assert list(results) == [(n, n * n) for n in range(40)]


def test_only_so_many_are_begun_before_their_turn():
    begun = []
    with Workers(begun.append, range(100), ahead=5) as results:
        for turn, _ in enumerate(results, 1):
            assert len(begun) <= turn + 5
            if turn == 20:
                break
        results.rest()
    assert len(begun) <= 26


def test_the_rest_is_given_back_and_nothing_more_is_begun():
    gate, begun = threading.Event(), []

    def work(number):
        begun.append(number)
        gate.wait(5)
        return number

    with Workers(work, range(50), ahead=10) as results:
        gate.set()
        taken = next(iter(results))
        rest = results.rest()
        assert taken == (0, 0)
        assert len(rest) <= 10
        assert sorted([0, *rest]) == sorted(begun)
    assert not [t for t in threading.enumerate() if t.name.startswith("arriving")]


def test_a_fault_of_the_work_comes_out_where_its_result_would():
    def work(number):
        return 10 // number

    with Workers(work, [5, 0, 2]) as results:
        coming = iter(results)
        assert next(coming) == (5, 2)
        with pytest.raises(ZeroDivisionError):
            next(coming)


@pytest.mark.skipif(
    sys.platform != "linux", reason="elsewhere threads have no priority of their own"
)
def test_workers_stand_behind_the_window():
    def work(_):
        return os.getpriority(os.PRIO_PROCESS, threading.get_native_id())

    before = os.getpriority(os.PRIO_PROCESS, threading.get_native_id())
    with Workers(work, range(4)) as results:
        assert {nice for _, nice in results} == {max(before, 10)}
    assert os.getpriority(os.PRIO_PROCESS, threading.get_native_id()) == before
