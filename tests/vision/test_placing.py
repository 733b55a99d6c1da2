"""Where a photo belongs, on literal times and looks."""

import math

import numpy as np
import pytest

from journal.vision.likeness import LENGTH, likeness
from journal.vision.placing import UNDATED, Pinned, Taken, propose

DAY = 1440.0
SILL, WING, ROOF, BOOT = 3, 1, 2, 9


def look(number):
    """Looks of which no two have anything in common."""
    made = np.zeros(LENGTH, np.float32)
    made[number] = 0.2
    return made


def pinned(*rows):
    """Rows of photo, panel, earliest, latest."""
    columns = [np.array(column) for column in zip(*rows, strict=True)]
    return Pinned(columns[0], columns[1], *(c.astype(float) for c in columns[2:]))


def proposed(photo, pins, looks=None, looks_of=None):
    rows = pins.nearest(photo)
    theirs = np.zeros((len(rows), LENGTH), np.float32)
    for place, row in enumerate(rows):
        if looks_of and pins.photo_ids[row] in looks_of:
            theirs[place] = looks_of[pins.photo_ids[row]] / 0.2
    return propose(photo, pins, rows, None if looks is None else likeness(looks, theirs))


def at(minute):
    return minute, minute


def test_time_alone_puts_the_panel_of_the_last_minutes_first():
    pins = pinned(
        (1, SILL, *at(0)),
        (2, WING, *at(-200)),
        (3, ROOF, *at(-3 * DAY)),
        (4, BOOT, *at(-900 * DAY)),
    )
    found = proposed(Taken(9, *at(20)), pins)
    assert [p.panel_id for p in found] == [SILL, WING, ROOF]
    assert (found[0].nearest, found[0].apart, found[0].alike) == (1, 20, None)


def test_the_score_is_closeness_on_three_scales_and_twenty_times_the_likeness():
    pins = pinned((1, SILL, *at(0)))
    (found,) = proposed(Taken(9, *at(12)), pins, look(5), {1: look(5)})
    near = 1.5 * math.exp(-0.5) + 1.5 * math.exp(-0.005) + 0.8 * math.exp(-0.5 * (12 / 5760) ** 2)
    assert found.score == pytest.approx(near + 20, abs=1e-4)
    assert found.likeness == pytest.approx(1, abs=1e-5)


def test_likeness_outweighs_time_and_names_the_one_alike():
    pins = pinned((1, SILL, *at(0)), (2, ROOF, *at(-400 * DAY)), (3, ROOF, *at(-401 * DAY)))
    found = proposed(Taken(9, *at(5)), pins, look(7), {1: look(1), 2: look(2), 3: look(7)})
    assert [p.panel_id for p in found] == [ROOF, SILL]
    assert (found[0].nearest, found[0].alike) == (2, 3)


def test_a_panel_is_judged_by_its_best_two_of_the_twelve_nearest():
    near = [(n, SILL, *at(-n * DAY)) for n in range(1, 13)]
    far = (13, SILL, *at(-13 * DAY))
    photo = Taken(99, *at(0))
    looks_of = {2: look(1), 7: look(1), 13: look(1)}
    pins = pinned(*near, far)
    assert sorted(pins.photo_ids[pins.nearest(photo)]) == list(range(1, 13))
    (found,) = proposed(photo, pins, look(1), looks_of)
    closeness = [
        1.5 * math.exp(-0.5 * (n * DAY / 120) ** 2) + 0.8 * math.exp(-0.5 * (n / 4) ** 2)
        for n in (2, 7)
    ]
    assert found.score == pytest.approx(20 + sum(closeness) / 2, abs=1e-3)


def test_two_photos_of_one_summer_are_not_of_one_minute():
    summer = (0.0, 92 * DAY)
    pins = pinned((1, SILL, *summer), (2, ROOF, *at(40 * DAY)))
    found = proposed(Taken(9, *summer), pins)
    assert all(p.score < 0.1 for p in found)
    assert all(p.apart is None for p in found)


def test_a_photo_without_a_date_is_judged_by_its_look():
    pins = pinned((1, SILL, *at(0)), (2, ROOF, *UNDATED))
    found = proposed(Taken(9, *UNDATED), pins, look(4), {1: look(4)})
    assert [p.panel_id for p in found] == [SILL, ROOF]
    assert found[0].apart is None
    assert found[1].score == pytest.approx(0)


def test_undated_photos_go_with_those_that_were_added_beside_them():
    pins = pinned(*((n, SILL, *UNDATED) for n in range(1, 40)))
    assert sorted(pins.photo_ids[pins.nearest(Taken(20, *UNDATED))]) == [
        *range(14, 20),
        *range(21, 27),
    ]


def test_a_photo_is_no_evidence_for_itself():
    pins = pinned((9, SILL, *at(0)), (1, ROOF, *at(-30)))
    assert [p.panel_id for p in proposed(Taken(9, *at(0)), pins)] == [ROOF]


def test_with_nothing_pinned_nothing_is_proposed():
    empty = Pinned(*(np.zeros(0, np.int64),) * 2, *(np.zeros(0),) * 2)
    assert proposed(Taken(9, *at(0)), empty, look(1)) == ()
