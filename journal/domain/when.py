"""Dates as sure as they are: EDTF text with the bounds it stands for.

EDTF is the Extended Date/Time Format of ISO 8601-2 (Library of Congress, 4 February 2019).
"""

from dataclasses import dataclass
from datetime import date, datetime


@dataclass(frozen=True, slots=True, order=True)
class When:
    """A date or time as sure as it is.

    ``earliest`` and ``latest`` are local times without a zone, both inclusive; an open end is
    ``datetime.min`` or ``datetime.max``. ``edtf`` is the text it was made of. Values sort by
    (earliest, latest).
    """

    earliest: datetime
    latest: datetime
    edtf: str

    @classmethod
    def at(cls, moment: datetime, offset: str | None = None) -> "When":
        """A moment known to the second (or finer), in local time, with its offset if known."""
        text = moment.replace(microsecond=0, tzinfo=None).isoformat()
        naive = moment.replace(tzinfo=None)
        return cls(naive, naive, text + (offset or ""))

    @classmethod
    def on(cls, day: date) -> "When":
        """A whole day."""
        return cls(
            datetime(day.year, day.month, day.day),
            datetime(day.year, day.month, day.day, 23, 59, 59),
            day.isoformat(),
        )
