"""What was worked out of the record, kept for as long as the record says the same."""

import threading
from collections.abc import Callable, Hashable
from dataclasses import dataclass
from typing import TypeVar, cast

from journal.store.journal import Journal

Value = TypeVar("Value")


@dataclass(frozen=True, slots=True)
class Since:
    """What changed since a value was made: after which edit, and which kinds of record."""

    edit_id: int
    kinds: frozenset[str]


class Kept:
    """Values of one open journal by name, each made anew once something it rests on has changed.

    Of each name one value is kept, so that large ones don't heap up.
    """

    def __init__(self, journal: Journal) -> None:
        self._journal = journal
        self._lock = threading.RLock()
        self._values: dict[Hashable, tuple[int, Hashable, object]] = {}

    def get(
        self,
        name: Hashable,
        kinds: frozenset[str],
        make: Callable[[], Value],
        renew: Callable[[Value, Since], Value] | None = None,
        of: Hashable = None,
    ) -> Value:
        """The value of that name; ``make`` makes it where none is kept that still holds.

        Args:
            name: what the value is known by.
            kinds: the kinds of record that it rests on, as ``Changes.kinds`` names them.
            make: makes it of the record as it is now.
            renew: makes it of the one kept, where that is less work.
            of: what was asked for under the name; the value of something else is not kept.
        """
        with self._lock:
            now = self._journal.last_edit()
            seen, kept_of, value = self._values.get(name, (now, None, None))
            touched = frozenset() if seen == now else self._journal.kinds_since(seen)
            if name not in self._values or kept_of != of:
                value = make()
            elif touched & kinds:
                value = renew(cast("Value", value), Since(seen, touched)) if renew else make()
            # Read a moment later than the number was: at worst it is made anew once too often.
            self._values[name] = now, of, value
            return cast("Value", value)
