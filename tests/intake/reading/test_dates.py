"""Days on a paper: one repeated mark, months in five languages, glued times, order by setting."""

from datetime import date

import pytest

from journal.domain.papers import DateOrder
from journal.intake.reading.dates import dates

TODAY = date(2026, 1, 1)


def days(text, order=DateOrder.DAY_FIRST):
    return [found.day for found in dates(text, order, TODAY)]


@pytest.mark.parametrize(
    "text",
    [
        "12.05.2019", "12/05/2019", "12-05-2019", "12.05.19", "12 - 05 - 2019", "l2.O5.2019",
        "12/05/201914:32", "12/05/1914:32", "2019-05-12", "2019/05/12", "2019-05-12T14:32",
        "12 May 2019", "May 12, 2019", "12MAY2019", "12-May-19", "12. Mai 2019", "12 mai 2019",
        "12 mei 2019", "12 maj 2019", "12th May 2019", "Datum: 12.05.2019 Bon 4711",
    ],
)  # fmt: skip
def test_a_day_is_read(text):
    assert days(text) == [date(2019, 5, 12)]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("1er août 2017", date(2017, 8, 1)),
        ("3 mars 2018", date(2018, 3, 3)),
        ("3. März 2018", date(2018, 3, 3)),
        ("3 maart 2018", date(2018, 3, 3)),
        ("31 décembre 2018", date(2018, 12, 31)),
        ("3 okt 2018", date(2018, 10, 3)),
        ("24/12/87", date(1987, 12, 24)),
    ],
)
def test_months_are_words_in_five_languages(text, expected):
    assert days(text) == [expected]


@pytest.mark.parametrize(
    "text",
    ["12.05/2019", "31.02.2019", "0123-456-789", "12.05.2031", "01.01.1899", "1.2.3", "12.50"],
)
def test_what_is_no_day_is_none(text):
    assert days(text) == []


def test_the_setting_decides_where_numbers_leave_it_open():
    (found,) = dates("05/06/2012", DateOrder.DAY_FIRST, TODAY)
    assert (found.day, found.other) == (date(2012, 6, 5), date(2012, 5, 6))
    (found,) = dates("05/06/2012", DateOrder.MONTH_FIRST, TODAY)
    assert (found.day, found.other) == (date(2012, 5, 6), date(2012, 6, 5))


def test_numbers_that_fit_one_order_only_are_not_open():
    for order in DateOrder:
        (found,) = dates("12/31/2019", order, TODAY)
        assert (found.day, found.other) == (date(2019, 12, 31), None)
