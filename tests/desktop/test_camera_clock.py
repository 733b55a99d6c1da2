"""How far a clock is moved, in words."""

from datetime import timedelta

import pytest

from journal.desktop.dialogs.camera_clock import shift_words


@pytest.mark.parametrize(
    ("shift", "words"),
    [
        (timedelta(hours=1), "1 hour"),
        (timedelta(days=1, hours=2), "1 day 2 hours"),
        (timedelta(days=800, hours=5), "2 years 70 days"),
        (timedelta(seconds=61), "1 minute 1 second"),
        (timedelta(days=365, minutes=3), "1 year 3 minutes"),
        (timedelta(), "0 seconds"),
    ],
)
def test_the_two_largest_parts_are_said(shift, words):
    assert shift_words(shift) == words
