import random
import time
from datetime import datetime, timedelta
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from journal.domain.sittings import (
    LONGEST_PAUSE,
    SHORTEST_PAUSE,
    USUAL_PAUSE,
    Moment,
    default_pause,
    sittings,
)

START = datetime(2016, 3, 5, 18, 0)


def moments(minutes, undated=0):
    dated = [
        Moment(i, (START + timedelta(minutes=m)).isoformat(), i % 2 == 0)
        for i, m in enumerate(sorted(minutes))
    ]
    return dated + [Moment(1000 + i, "", False) for i in range(undated)]


def test_a_pause_longer_than_the_limit_parts_two_sittings():
    found = sittings(moments([0, 10, 130, 251]), 120)
    assert [s.photo_ids for s in found] == [(0, 1, 2), (3,)]
    assert found[0].first == START
    assert found[0].last == START + timedelta(minutes=130)
    assert [s.placed for s in found] == [2, 0]


def test_undated_photos_are_one_sitting_at_the_end():
    found = sittings(moments([0], undated=3), 120)
    assert [s.photo_ids for s in found] == [(0,), (1000, 1001, 1002)]
    assert found[1].first is found[1].last is None
    assert sittings(moments([], undated=1), 120)[0].photo_ids == (1000,)
    assert sittings([], 120) == ()


@given(st.lists(st.integers(0, 10**6), max_size=60), st.integers(0, 3), st.integers(1, 10_000))
def test_every_photo_is_in_one_sitting_and_the_order_stays(minutes, undated, pause):
    given_moments = moments(minutes, undated)
    found = sittings(given_moments, pause)
    assert [i for s in found for i in s.photo_ids] == [m.photo_id for m in given_moments]
    assert sum(s.placed for s in found) == sum(m.placed for m in given_moments)
    for before, after in pairwise(found):
        assert after.first is None or after.first - before.last > timedelta(minutes=pause)


def _evenings(nights, between_photos, seed=7):
    """Photos of many evenings in the workshop, ``between_photos`` minutes apart at most."""
    chance = random.Random(seed)
    times, at = [], START
    for _ in range(nights):
        for _ in range(chance.randint(3, 25)):
            at += timedelta(minutes=chance.uniform(0.05, between_photos))
            times.append(at)
        at += timedelta(hours=chance.uniform(16, 90))
    return times


def test_the_default_pause_lies_between_what_happens_in_and_between_visits():
    for between_photos in (2, 15, 45, 110):
        pause = default_pause(_evenings(60, between_photos))
        assert between_photos < pause < 16 * 60
        assert SHORTEST_PAUSE <= pause <= LONGEST_PAUSE
        assert pause % 5 == 0


def test_the_default_pause_finds_the_visits():
    times = _evenings(60, 45)
    named = [Moment(i, t.isoformat(), False) for i, t in enumerate(times)]
    assert len(sittings(named, default_pause(times))) == 60


def test_few_photos_get_the_usual_pause():
    assert default_pause([]) == USUAL_PAUSE
    assert default_pause(_evenings(1, 5)[:20]) == USUAL_PAUSE


@given(st.lists(st.integers(0, 10**7), max_size=200))
def test_the_default_pause_stays_in_its_range(minutes):
    pause = default_pause(START + timedelta(minutes=m) for m in sorted(minutes))
    assert SHORTEST_PAUSE <= pause <= LONGEST_PAUSE


def test_fifty_thousand_photos_are_grouped_while_a_page_opens():
    named = [Moment(i, t.isoformat(), True) for i, t in enumerate(_evenings(4000, 10)[:50_000])]
    assert len(named) > 49_000
    fastest = min(_seconds(lambda: sittings(named, 120)) for _ in range(5))
    floor = min(
        _seconds(lambda: [datetime.fromisoformat(m.earliest) for m in named]) for _ in range(5)
    )
    assert fastest < 12 * floor


def _seconds(act):
    start = time.perf_counter()
    act()
    return time.perf_counter() - start
