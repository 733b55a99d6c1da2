from typing import Any, cast

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.costs import HOURS_BY, NO_DATE, NO_PERSON, NOT_SHARED, HoursBy
from journal.domain.errors import JournalError
from journal.ledger.books import Books
from journal.ledger.hours import hours_table
from tests.ledger.books import ARCH, DRIVING, GONE, LONG_AGO, SILL, any_books, books, work


def test_hours_are_shared_over_repair_areas_to_the_minute() -> None:
    table = hours_table("area", books(work=(work(100, (ARCH.id, 1), (SILL.id, 2), (GONE, 1)),)))
    assert [(row.key, row.label, row.minutes) for row in table.rows] == [
        ("1", "Sill, left", 50),
        ("2", "Wheel arch, rear", 25),
        (NOT_SHARED, "not shared over repair areas", 25),
    ]


def test_hours_by_person_put_the_busiest_first() -> None:
    table = hours_table(
        "person",
        books(work=(work(30), work(80, person="Bo"), work(20, person="ADA"), work(5, person=""))),
    )
    assert [(row.key, row.minutes) for row in table.rows] == [
        ("Bo", 80),
        ("Ada", 50),
        (NO_PERSON, 5),
    ]


def test_hours_by_year_tell_restoration_from_upkeep() -> None:
    table = hours_table(
        "year", books(work=(work(45, when=DRIVING), work(30), work(1, when=LONG_AGO)))
    )
    assert [(row.key, row.restoration, row.upkeep) for row in table.rows] == [
        ("2019", 30, 0),
        ("2022", 0, 45),
        (NO_DATE, 1, 0),
    ]


def test_hours_by_anything_else_are_refused_in_words() -> None:
    with pytest.raises(JournalError, match="by “moon”"):
        hours_table(cast(Any, "moon"), books())


@given(any_books, st.sampled_from(HOURS_BY))
def test_every_table_adds_up_to_all_the_time_recorded(journal: Books, by: HoursBy) -> None:
    table = hours_table(by, journal)
    assert sum(row.restoration for row in table.rows) == table.total.restoration
    assert sum(row.upkeep for row in table.rows) == table.total.upkeep
    assert table.total.minutes == sum(work.minutes for work in journal.work)
