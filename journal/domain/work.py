"""Work: hours by one person on one day, shared over repair areas."""

from dataclasses import dataclass

from journal.domain.ids import WorkId
from journal.domain.receipts import Share
from journal.domain.when import When


@dataclass(frozen=True, slots=True)
class Work:
    """Time spent by one person on one day, in whole minutes."""

    id: WorkId
    when: When
    minutes: int
    person: str
    note: str = ""
    shares: tuple[Share, ...] = ()
