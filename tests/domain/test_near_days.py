from datetime import date

import pytest

from journal.domain.near_days import near_day
from journal.domain.when import When

TODAY = date(2026, 11, 28)  # a Saturday


@pytest.mark.parametrize(
    ("said", "day"),
    [
        ("yesterday", date(2026, 11, 27)),
        ("Saturday", TODAY),
        ("sunday", date(2026, 11, 22)),
        ("3 nov", date(2026, 11, 3)),
        ("3. November", date(2026, 11, 3)),
        ("nov 3", date(2026, 11, 3)),
        ("29 Nov", date(2025, 11, 29)),
        ("24 december", date(2025, 12, 24)),
    ],
)
def test_a_near_day_is_the_last_such(said: str, day: date) -> None:
    assert near_day(said, TODAY) == When.on(day)


@pytest.mark.parametrize(
    "said",
    ["", "3", "nov", "summer", "3 nov 2024", "2016-07", "about 3 nov", "31 feb", "12/05", "-1"],
)
def test_what_names_no_near_day_is_left_to_others(said: str) -> None:
    assert near_day(said, TODAY) is None
