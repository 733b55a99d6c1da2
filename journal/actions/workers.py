"""Many pieces of one job at once, at low priority, with results in order and memory in bounds."""

import os
import threading
from collections import deque
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from types import TracebackType
from typing import Generic, Self, TypeVar

Item = TypeVar("Item")
Result = TypeVar("Result")

#: How far behind the window's threads the workers stand, as ``nice`` counts it.
_NICENESS = 10


class Workers(Generic[Item, Result]):
    """Runs ``work`` over items on as many threads as there are cores, as a context manager.

    Iterating gives (item, result) in the order of the items, starting at most ``ahead`` of them
    before their turn. An exception of ``work`` is raised where its result would come.
    """

    def __init__(
        self, work: Callable[[Item], Result], items: Sequence[Item], *, ahead: int = 32
    ) -> None:
        self._work = work
        self._items = iter(items)
        self._ahead = ahead
        self._waiting: deque[tuple[Item, Future[Result]]] = deque()
        self._pool = ThreadPoolExecutor(
            os.cpu_count() or 1, "arriving", initializer=_stand_behind_the_window
        )

    def __iter__(self) -> Iterator[tuple[Item, Result]]:
        self._fill()
        while self._waiting:
            item, future = self._waiting[0]
            result = future.result()
            self._waiting.popleft()
            self._fill()
            yield item, result

    def _fill(self) -> None:
        while len(self._waiting) < self._ahead:
            try:
                item = next(self._items)
            except StopIteration:
                return
            self._waiting.append((item, self._pool.submit(self._work, item)))

    def rest(self) -> list[Result]:
        """Start nothing more, wait for what runs, and give what nobody asked for yet."""
        self._items = iter(())
        self._pool.shutdown(wait=True, cancel_futures=True)
        unasked = [future for _, future in self._waiting if not future.cancelled()]
        self._waiting.clear()
        return [future.result() for future in unasked if not future.exception()]

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._pool.shutdown(wait=True, cancel_futures=True)


def _stand_behind_the_window() -> None:
    """Lower this thread's priority, where the system lets a single thread do so."""
    if hasattr(os, "setpriority") and os.uname().sysname == "Linux":
        this = os.PRIO_PROCESS, threading.get_native_id()
        os.setpriority(*this, max(os.getpriority(*this), _NICENESS))
