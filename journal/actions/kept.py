"""What was worked out of the record, kept for as long as the record says the same."""

import threading
from collections.abc import Callable, Hashable
from typing import TypeVar, cast

from journal.store.journal import Journal

Value = TypeVar("Value")


class Kept:
    """Values of one open journal by name, each made anew once something it rests on has changed."""

    def __init__(self, journal: Journal) -> None:
        self._journal = journal
        self._lock = threading.RLock()
        self._values: dict[Hashable, tuple[int, object]] = {}

    def get(self, name: Hashable, kinds: frozenset[str], make: Callable[[], Value]) -> Value:
        """The value of that name; ``make`` makes it where none is kept that still holds.

        Args:
            name: what the value is known by.
            kinds: the kinds of record that it rests on, as ``Changes.kinds`` names them.
            make: makes it of the record as it is now.
        """
        with self._lock:
            now = self._journal.last_edit()
            if name in self._values:
                seen, value = self._values[name]
                if seen == now or not self._journal.kinds_since(seen) & kinds:
                    self._values[name] = now, value
                    return cast("Value", value)
            made = make()
            self._values[name] = now, made
            return made
