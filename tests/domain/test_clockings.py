"""The clock's rules: what is offered, how a run is split at midnight, what a moment means."""

from datetime import UTC, date, datetime, timedelta, timezone
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.clockings import (
    LONGEST,
    minutes_run,
    most,
    offered,
    read_moment,
    spoken_moment,
    stretches,
)
from journal.domain.errors import JournalError

NOW = datetime(2026, 3, 6, 8, 15)
#: Zones whose clocks go forward and back at two in the morning, at midnight, and by half an hour.
ZONES = ("Europe/Berlin", "America/New_York", "America/Havana", "Australia/Lord_Howe", "UTC")


@st.composite
def runs(draw: st.DrawFn) -> tuple[datetime, datetime]:
    """A run as this computer's clock would tell it: local times with the offset that held then."""
    zone = ZoneInfo(draw(st.sampled_from(ZONES)))
    # Thickly round the nights when the clocks change.
    near = st.sampled_from([date(2026, 3, 8), date(2026, 3, 29), date(2026, 10, 25)])
    day = draw(near | st.dates(date(2015, 1, 1), date(2035, 12, 31)))
    midnight = datetime(day.year, day.month, day.day, tzinfo=zone).astimezone(UTC)
    start = midnight + timedelta(minutes=draw(st.integers(-18 * 60, 18 * 60)))
    end = start + timedelta(seconds=draw(st.integers(0, 24 * 3600)))

    def told(moment: datetime) -> datetime:
        local = moment.astimezone(zone)
        return local.replace(tzinfo=timezone(local.utcoffset() or timedelta(0)))

    return told(start), told(end)


@given(runs())
def test_a_run_is_recorded_whole_on_the_days_it_lies_on(run: tuple[datetime, datetime]) -> None:
    started, stopped = run
    parts = stretches(started, stopped)
    assert sum(part.minutes for part in parts) == offered(minutes_run(started, stopped))
    assert 1 <= len(parts) <= 2
    for part in parts:
        assert 0 < part.minutes <= 24 * 60
        assert part.started <= part.stopped
        # No more is recorded of a day than passed on it, but for the rounding.
        passed = (part.stopped - part.started).total_seconds() / 60
        assert abs(part.minutes - passed) <= 5
    assert parts[0].day in (started.date(), started.date() + timedelta(days=1))


@given(runs(), st.integers(1, 24 * 60))
def test_stated_hours_are_kept_to_the_minute_or_refused(
    run: tuple[datetime, datetime], minutes: int
) -> None:
    started, stopped = run
    if minutes > most(minutes_run(started, stopped)):
        with pytest.raises(JournalError, match="can't be recorded"):
            stretches(started, stopped, minutes)
    else:
        assert sum(part.minutes for part in stretches(started, stopped, minutes)) == minutes


@given(st.integers(0, 24 * 60))
def test_what_is_offered_is_the_nearest_five_minutes(minutes: int) -> None:
    assert offered(minutes) % 5 == 0
    assert offered(minutes) == 5 or abs(offered(minutes) - minutes) <= 2.5
    assert offered(minutes) <= most(minutes) < minutes + 5 or most(minutes) == 5


def test_the_night_the_clocks_go_forward_is_an_hour_shorter() -> None:
    started = datetime(2026, 3, 28, 23, 0, tzinfo=timezone(timedelta(hours=1)))
    stopped = datetime(2026, 3, 29, 4, 0, tzinfo=timezone(timedelta(hours=2)))
    assert [(p.day.day, p.minutes) for p in stretches(started, stopped)] == [(28, 60), (29, 180)]


def test_the_night_they_go_back_is_an_hour_longer() -> None:
    started = datetime(2026, 10, 24, 23, 0, tzinfo=timezone(timedelta(hours=2)))
    stopped = datetime(2026, 10, 25, 4, 0, tzinfo=timezone(timedelta(hours=1)))
    assert [(p.day.day, p.minutes) for p in stretches(started, stopped)] == [(24, 60), (25, 300)]


def test_a_clock_that_was_forgotten_or_runs_backwards_is_refused() -> None:
    started = datetime(2026, 3, 5, 19, 40, tzinfo=UTC)
    with pytest.raises(JournalError, match="Say when it should have stopped"):
        stretches(started, started + LONGEST + timedelta(seconds=1))
    with pytest.raises(JournalError, match="can't stop before it started, at 19:40"):
        stretches(started, started - timedelta(minutes=1))


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("8:15", datetime(2026, 3, 6, 8, 15)),
        ("19.40", datetime(2026, 3, 5, 19, 40)),
        ("yesterday 22:30", datetime(2026, 3, 5, 22, 30)),
        ("Yesterday at 22:30", datetime(2026, 3, 5, 22, 30)),
        ("2026-03-01T07:05", datetime(2026, 3, 1, 7, 5)),
        ("1 March 2026, 7:05", datetime(2026, 3, 1, 7, 5)),
        ("now", NOW),
    ],
)
def test_moments_are_read_as_people_type_them(typed: str, meant: datetime) -> None:
    assert read_moment(typed, NOW) == meant


@pytest.mark.parametrize("typed", ["", "25:00", "8:60", "soon", "today 8:16", "March 2026 7:05"])
def test_what_is_no_moment_that_has_been_is_refused(typed: str) -> None:
    with pytest.raises(JournalError):
        read_moment(typed, NOW)


def test_moments_are_told_as_short_as_they_can_be() -> None:
    told = [spoken_moment(NOW - timedelta(days=back), NOW.date()) for back in (0, 1, 2)]
    assert told == ["08:15", "yesterday 08:15", "4 March 2026, 08:15"]
