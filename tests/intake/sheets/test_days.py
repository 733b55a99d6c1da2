"""Days in cells, and the order of day and month told from the whole column."""

from datetime import date, datetime
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.domain.sheet_rows import BadCell, Cell, DayOrder
from journal.intake.sheets.days import orders_of, read_day

TODAY = date(2026, 1, 31)
DMY, MDY, YMD = DayOrder.DMY, DayOrder.MDY, DayOrder.YMD


@pytest.mark.parametrize(
    ("cells", "orders"),
    [
        (["31/12/2016", "03/04/2016"], {DMY}),
        (["12/31/2016", "03/04/2016"], {MDY}),
        (["03/04/2016", "05/06/2016"], {DMY, MDY}),
        (["31/12/2016", "12/31/2016", "03/04/2016"], {DMY, MDY}),
        (["03.04.2016"], {DMY}),
        (["2016-04-03", "3 April 2016"], {DMY}),
        ([date(2016, 4, 3), None, "words"], {DMY}),
    ],
)
def test_one_row_that_tells_tells_for_all(cells: list[Cell], orders: set[DayOrder]) -> None:
    assert orders_of(cells)[0] == orders


@pytest.mark.parametrize(
    ("cell", "order", "edtf"),
    [
        ("03/04/2016", DMY, "2016-04-03"),
        ("03/04/2016", MDY, "2016-03-04"),
        ("03.04.2016", MDY, "2016-04-03"),
        ("3-4-16", DMY, "2016-04-03"),
        ("16/04/03", YMD, "2016-04-03"),
        ("3/4/98", DMY, "1998-04-03"),
        ("2016-04-03T10:15:00", DMY, "2016-04-03"),
        ("03/04/2016 10:15", DMY, "2016-04-03"),
        ("20160403", DMY, "2016-04-03"),
        (Decimal(20160403), DMY, "2016-04-03"),
        (Decimal(2016), DMY, "2016"),
        ("04/2016", DMY, "2016-04"),
        ("3. April 2016", DMY, "2016-04-03"),
        ("3 avril 2016", DMY, "2016-04-03"),
        ("April 2016", DMY, "2016-04"),
        ("summer 2009", DMY, "2009-22"),
        (datetime(2016, 4, 3, 8, 1), DMY, "2016-04-03"),
    ],
)
def test_days_are_read_as_they_are_written(cell: Cell, order: DayOrder, edtf: str) -> None:
    assert read_day(cell, order, TODAY).edtf == edtf


@pytest.mark.parametrize(
    ("cell", "words"),
    [
        ("31/12/2016", "no date in this order"),
        ("30.02.2016", "no date"),
        ("some day", "no date"),
        ("03/04/2031", "future"),
        (date(1016, 1, 1), "too long ago"),
        (None, "there is no date"),
        (True, "no date"),
        (BadCell("#REF!"), "#REF!"),
        (Decimal("42434.5"), "no date"),
        (Decimal(42434), "no date"),
    ],
)
def test_what_is_no_day_of_a_receipt_says_why(cell: Cell, words: str) -> None:
    with pytest.raises(JournalError, match=words):
        read_day(cell, MDY, TODAY)


@settings(deadline=None)
@given(st.dates(date(1950, 1, 1), TODAY), st.sampled_from([DMY, MDY]))
def test_a_day_written_in_an_order_is_read_in_it(day: date, order: DayOrder) -> None:
    text = day.strftime("%d/%m/%Y" if order is DMY else "%m/%d/%Y")
    assert read_day(text, order, TODAY).earliest.date() == day


@settings(deadline=None)
@given(st.text(max_size=60) | st.decimals() | st.booleans())
def test_any_cell_is_a_day_or_refused_in_words(cell: Cell) -> None:
    try:
        read_day(cell, DMY, TODAY)
    except JournalError as told:
        assert str(told)  # noqa: PT017 - either outcome is right
