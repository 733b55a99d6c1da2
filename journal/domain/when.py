"""Dates as sure as they are: EDTF text with the bounds it stands for.

EDTF is the Extended Date/Time Format of ISO 8601-2 (Library of Congress, 4 February 2019). Levels 0
and 1 are read in full, level 2 in part; ``journal.domain.edtf_text`` says which part, and which
months a season has.
"""

from dataclasses import dataclass
from datetime import date, datetime

from journal.domain.errors import JournalError

# What reads and writes dates is imported on first use: a window can show itself without.


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


def parse_edtf(text: str) -> When:
    """The date that an EDTF text stands for; JournalError where the text is none."""
    from journal.domain.edtf_text import bounds

    try:
        earliest, latest = bounds(text)
    except ValueError as error:
        raise JournalError(f"\u201c{_short(text)}\u201d is no date: {error}.") from error
    return When(earliest, latest, text)


def parse(text: str) -> When:
    """The date that a person typed: EDTF or words like "summer 2009", spaces around it ignored.

    ``edtf`` of the result is EDTF in either case. JournalError where no date can be read from it.
    """
    from journal.domain.edtf_text import bounds
    from journal.domain.words import as_edtf

    typed = text.strip()
    try:
        return parse_edtf(typed)
    except JournalError:
        pass
    try:
        edtf = as_edtf(typed)
        return When(*bounds(edtf), edtf)
    except ValueError as error:
        raise JournalError(
            f"\u201c{_short(text)}\u201d can't be read as a date ({error}); "
            "write for instance 3 March 2016, summer 2009, about 2012 or 2015 to 2017."
        ) from error


def spoken(when: When) -> str:
    """A date as a screen shows it: "5 March 2016, 14:22", "about 2012", "2015 to 2017"."""
    from journal.domain import words

    return words.spoken(when.edtf)


def _short(text: str) -> str:
    return text if len(text) <= 60 else text[:57] + "..."
