"""Clockings: a clock started when somebody begins and stopped when they leave off.

Moments are local times with their offset from UTC, so that an hour put forward or back in between
is counted as it passed.
"""

import re
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from journal.domain.errors import JournalError
from journal.domain.hours import spoken_hours
from journal.domain.ids import ClockingId, WorkId
from journal.domain.receipts import Share
from journal.domain.sharing import share
from journal.domain.when import When, parse, spoken

#: What is offered is rounded to so many minutes.
STEP = 5
#: A clock that ran longer was forgotten.
LONGEST = timedelta(hours=24)

_TIME = re.compile(r"([01]?\d|2[0-3])[:.]([0-5]\d)")
_DAY_AND_TIME = re.compile(r"(.+?)[,T ]+(?:at )?(\d{1,2}[:.]\d{2})(?::\d{2})?")


@dataclass(frozen=True, slots=True)
class Clocking:
    """One run of the clock for one person.

    ``stopped`` is None while it runs. ``work_id`` is the hours that were recorded of it; None
    while it runs, and after somebody has stated the hours otherwise.
    """

    id: ClockingId
    person: str
    started: datetime
    note: str = ""
    shares: tuple[Share, ...] = ()
    stopped: datetime | None = None
    work_id: WorkId | None = None


@dataclass(frozen=True, slots=True)
class Stretch:
    """The part of a run that lies on one day, with the minutes that are recorded for it."""

    day: date
    started: datetime
    stopped: datetime
    minutes: int


def minutes_run(started: datetime, stopped: datetime) -> int:
    """The whole minutes that passed between two moments.

    Raises:
        JournalError: it would have stopped before it started, or run more than a day.
    """
    ran = stopped - started
    if ran < timedelta(0):
        raise JournalError(f"The clock can't stop before it started, at {started:%H:%M}.")
    if ran > LONGEST:
        raise JournalError(
            f"The clock has run since {spoken(When.on(started.date()))}, {started:%H:%M}: more "
            "than a day. Say when it should have stopped."
        )
    return int(ran.total_seconds() // 60)


def offered(minutes: int) -> int:
    """The hours offered for a clock that ran so long: to the nearest five minutes, five at least.

    Half of five counts up.
    """
    return max(STEP, (2 * minutes + STEP) // (2 * STEP) * STEP)


def most(minutes: int) -> int:
    """The most that can be recorded of a clock that ran so long: five minutes begun are five."""
    return max(STEP, -(-minutes // STEP) * STEP)


def stretches(started: datetime, stopped: datetime, minutes: int | None = None) -> list[Stretch]:
    """A run laid out by day: over midnight it is two, each with its part of the minutes.

    Midnight is where the clock stood when it was started. ``minutes`` are what is recorded, None
    for what is offered; they are shared by the time that passed on each day and always add up. A
    day too short for a minute has no part.

    Raises:
        JournalError: as for ``minutes_run``, or ``minutes`` are more than the clock ran.
    """
    ran = minutes_run(started, stopped)
    recorded = offered(ran) if minutes is None else minutes
    if not 0 < recorded <= most(ran):
        raise JournalError(
            f"The clock ran {spoken_hours(ran)}; of that, {spoken_hours(recorded)} can't be "
            "recorded. Say when it stopped, or record hours without the clock."
        )
    midnight = datetime.combine(started.date() + timedelta(days=1), time.min, tzinfo=started.tzinfo)
    if stopped <= midnight:
        return [Stretch(started.date(), started, stopped, recorded)]
    seconds = [int((midnight - started).total_seconds()), int((stopped - midnight).total_seconds())]
    before, after = share(recorded, seconds)
    both = (
        Stretch(started.date(), started, midnight, before),
        Stretch(midnight.date(), midnight, stopped, after),
    )
    return [one for one in both if one.minutes]


def spoken_moment(moment: datetime, today: date) -> str:
    """A moment as short as it can be told today: "14:05", "yesterday 19:40", "3 March, 19:40"."""
    at = f"{moment:%H:%M}"
    if moment.date() == today:
        return at
    if moment.date() == today - timedelta(days=1):
        return f"yesterday {at}"
    return f"{spoken(When.on(moment.date()))}, {at}"


def read_moment(text: str, now: datetime) -> datetime:
    """The local moment that a person means: "19:40", "yesterday 19:40", "3 March 2026 19:40".

    A time alone is the last such time that has been. ``now`` and the answer have no offset.

    Raises:
        JournalError: it is no time of day, or has not been yet.
    """
    typed = text.strip()
    if typed.casefold() == "now":
        return now
    if found := _TIME.fullmatch(typed):
        moment = datetime.combine(now.date(), time(int(found[1]), int(found[2])))
        return moment if moment <= now else moment - timedelta(days=1)
    found = _DAY_AND_TIME.fullmatch(typed)
    at = _TIME.fullmatch(found[2]) if found else None
    if found is None or at is None:
        raise JournalError(
            f"“{typed[:40]}” is no time of day; write for instance 19:40 or yesterday 19:40."
        )
    moment = datetime.combine(_day(found[1], now.date()), time(int(at[1]), int(at[2])))
    if moment > now:
        raise JournalError(f"“{typed[:40]}” has not been yet.")
    return moment


def _day(words: str, today: date) -> date:
    named = {"today": 0, "yesterday": 1}.get(words.strip().casefold())
    if named is not None:
        return today - timedelta(days=named)
    when = parse(words)
    if when.earliest.date() != when.latest.date():
        raise JournalError(f"“{words.strip()[:40]}” is no single day.")
    return when.earliest.date()
