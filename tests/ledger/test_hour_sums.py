"""Hours summed: whatever they are summed by, the same total, to the minute and to the cent."""

from dataclasses import replace
from typing import Any, cast

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.domain.hour_sums import NO_MONTH, NO_PANEL, SUMS_BY, SumsBy
from journal.domain.ids import PanelId, PersonId
from journal.domain.people import Person, PersonKind
from journal.domain.when import parse
from journal.domain.work import WorkBasis
from journal.ledger.books import Books
from journal.ledger.hour_sums import sum_hours
from tests.ledger.books import ARCH, SILL, any_books, books, work

ADA = Person(PersonId(1), "Ada", PersonKind.OWN, 2500)
BO = Person(PersonId(2), "Bo", PersonKind.PAID)


def test_own_hours_are_valued_at_their_rate_and_paid_ones_are_counted_apart() -> None:
    done = (work(90), work(60, person="Bo"), work(10, person="Cyd"))
    table = sum_hours("person", books(work=done), (ADA, BO))
    assert [(r.label, r.own, r.paid, r.valued, r.value) for r in table.rows] == [
        ("Ada", 90, 0, 90, 3750),
        ("Bo", 0, 60, 0, None),
        ("Cyd", 10, 0, 0, None),
    ]
    assert (table.total.own, table.total.paid, table.total.value) == (100, 60, 3750)


def test_nothing_is_valued_where_no_rate_is_given() -> None:
    table = sum_hours("year", books(work=(work(90),)), (replace(ADA, rate=None),))
    assert table.total.value is None
    assert sum_hours("year", books(work=(work(90),)), (replace(ADA, rate=0),)).total.value == 0


def test_a_value_is_shared_to_the_last_cent() -> None:
    # Half of the minutes on each area, and a rate that leaves a cent over.
    done = (work(100, (SILL.id, 2), (ARCH.id, 1), (ARCH.id, 1)),)
    table = sum_hours("area", books(work=done), (replace(ADA, rate=1001),))
    # 100 x 1001 / 60 = 1668.33.
    assert [row.value for row in table.rows] == [834, 834]
    assert table.total.value == 1668


def test_the_hours_of_an_area_go_to_its_panels_evenly() -> None:
    shell = replace(books(work=(work(61, (SILL.id, 1)), work(5))), areas=(_on(SILL, 4, 9), ARCH))
    table = sum_hours("panel", shell, panels={PanelId(9): "Floor", PanelId(4): "Sill"})
    assert [(row.label, row.minutes) for row in table.rows] == [
        ("Floor", 30),
        ("Sill", 31),
        ("on no panel", 5),
    ]
    assert table.rows[-1].key == NO_PANEL


def test_months_come_in_order_and_a_year_is_no_month() -> None:
    whens = ("2019-11", "2019-03-05", "2019", "2019-03-31", "2018-12-31")
    done = tuple(work(1, when=parse(when)) for when in whens)
    table = sum_hours("month", books(work=done))
    keys = [(row.key, row.minutes) for row in table.rows]
    assert keys == [("2018-12", 1), ("2019-03", 2), ("2019-11", 1), (NO_MONTH, 1)]


def test_how_hours_are_known_is_kept_apart() -> None:
    done = (
        work(30),
        work(20, basis=WorkBasis.CLOCKED),
        work(7, basis=WorkBasis.PHOTOS),
    )
    total = sum_hours("area", books(work=done)).total
    assert (total.stated, total.clocked, total.at_least, total.minutes) == (30, 20, 7, 57)


def test_sums_by_anything_else_are_refused_in_words() -> None:
    with pytest.raises(JournalError, match="by “moon”"):
        sum_hours(cast(Any, "moon"), books())


@settings(max_examples=50)
@given(any_books, st.sampled_from(SUMS_BY), st.integers(0, 10**6), st.booleans())
def test_rows_add_up_to_the_same_total_whatever_they_are_summed_by(
    journal: Books, by: SumsBy, rate: int, paid: bool
) -> None:
    spread = tuple(_on(area, *range(area.id + 1)) for area in journal.areas)
    people = (replace(ADA, rate=rate), BO if paid else replace(BO, kind=PersonKind.OWN))
    table = sum_hours(by, replace(journal, areas=spread), people)
    assert table.total.minutes == sum(one.minutes for one in journal.work)
    for name in ("own", "paid", "valued", "clocked", "at_least"):
        assert sum(getattr(row, name) for row in table.rows) == getattr(table.total, name)
    ada = sum(one.minutes for one in journal.work if one.person.casefold() == "ada")
    if ada:
        # The exact value to the nearest cent, half up.
        assert table.total.value == (ada * rate * 2 + 60) // 120
        assert sum(row.value or 0 for row in table.rows) == table.total.value


def _on(area: Any, *panels: int) -> Any:
    return replace(area, panel_ids=tuple(PanelId(panel) for panel in panels))
