"""Reading many files on several cores, with results in order and little of it in memory."""

import os
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import Future, ThreadPoolExecutor
from typing import TypeVar

Item = TypeVar("Item")
Result = TypeVar("Result")

#: More threads than this wait for the disk rather than for a core.
_MOST = 4


def in_order(
    work: Callable[[Item], Result], items: Iterable[Item], *, ahead: int = 16
) -> Iterator[tuple[Item, Result]]:
    """Give (item, ``work(item)``) in the order of the items, up to ``ahead`` of them worked before.

    An exception of ``work`` is raised where its result would come. Whoever stops asking stops the
    work: what runs is waited for, what has not begun is dropped.
    """
    waiting: deque[tuple[Item, Future[Result]]] = deque()
    pool = ThreadPoolExecutor(min(_MOST, os.cpu_count() or 1), "reading")
    try:
        for item in items:
            waiting.append((item, pool.submit(work, item)))
            if len(waiting) >= ahead:
                first, future = waiting.popleft()
                yield first, future.result()
        while waiting:
            first, future = waiting.popleft()
            yield first, future.result()
    finally:
        pool.shutdown(wait=True, cancel_futures=True)
