import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.domain.hours import parse_hours, spoken_hours


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("3", 180),
        ("3.5", 210),
        ("3,5", 210),
        (" 3:30 ", 210),
        ("2h 15", 135),
        ("2h15m", 135),
        ("2 hours and 15 minutes", 135),
        ("2 h", 120),
        ("45 min", 45),
        ("45m", 45),
        ("2½", 150),
        ("½", 30),
        (".5", 30),
        ("1.33", 80),
        ("24", 1440),
        ("0:05", 5),
    ],
)
def test_times_as_people_write_them(text, minutes):
    assert parse_hours(text) == minutes


@pytest.mark.parametrize(
    "text", ["", "a while", "3:75", "2h 75", "0", "0:00", "-3", "25", "1:2:3", "3 days", "9999"]
)
def test_what_is_no_time_is_refused_in_one_sentence(text):
    with pytest.raises(JournalError) as refused:
        parse_hours(text)
    assert str(refused.value).endswith(".")


@given(st.integers(1, 24 * 60))
def test_what_is_shown_can_be_typed_again(minutes):
    assert parse_hours(spoken_hours(minutes)) == minutes


def test_many_hours_are_grouped():
    assert spoken_hours(72750) == "1,212 h 30 min"
