"""Price indices: read, looked up, and held against what statistical offices publish."""

import csv
import importlib.util
import math
import sqlite3
from decimal import Decimal
from fractions import Fraction
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.domain.ids import PriceIndexId
from journal.domain.price_index import (
    PriceIndex,
    as_period,
    in_order,
    level,
    period_of,
    ratio,
    read_index,
    refuse_other_currency,
    span,
)
from journal.domain.sharing import nearest
from journal.domain.when import parse_edtf


def index(currency: str = "USD", **values: str) -> PriceIndex:
    found = {k.removeprefix("p").replace("_", "-"): Decimal(v) for k, v in values.items()}
    return PriceIndex(PriceIndexId(1), "Made-up", currency, "made up", found)


def percent(old: str, new: str) -> Decimal:
    change = ratio(index(p1=old, p2000=new, p1999=old), "1999", "2000")
    assert change is not None
    return Decimal(round(float(change - 1) * 100, 1)).quantize(Decimal("0.1"))


# --- against the outside


def test_the_change_is_that_of_the_bls_worked_example() -> None:
    # BLS, "Using the Consumer Price Index for Escalation" (January 1989), p. 5.
    assert percent("113.8", "118.5") == Decimal("4.1")


def test_the_change_is_that_of_the_ons_manual() -> None:
    # ONS, Consumer Prices Indices Technical Manual (2019), Table 7.
    assert percent("129.9", "136.0") == Decimal("4.7")


def test_ten_thousand_of_1913_come_to_what_the_calculator_says() -> None:
    # The BLS's calculator as quoted at math.andyou.com: 1913 average to January 2011.
    change = ratio(index(p1913="9.9", p2011_01="220.223"), "1913", "2011-01")
    assert change is not None
    assert nearest(1_000_000 * change) == 22_244_747


def _package_file(package: str, *inside: str) -> Path:
    found = importlib.util.find_spec(package)
    if found is None or found.origin is None:
        pytest.skip(f"the {package} package is not installed")
    return Path(found.origin).parent.joinpath(*inside)


def test_changes_are_those_of_the_series_in_statsmodels() -> None:
    # statsmodels, datasets/macrodata (public domain): ``infl`` is 400 times the log of the ratio.
    path = _package_file("statsmodels", "datasets", "macrodata", "macrodata.csv")
    with path.open(newline="") as file:
        rows = list(csv.DictReader(file))
    text = "\n".join(f"{row['year']}Q{row['quarter']},{row['cpi']}" for row in rows)
    series = PriceIndex(PriceIndexId(1), "US", "USD", "macrodata", read_index(text))
    periods = in_order(series.values)
    assert (len(periods), span(series)) == (203, "1959-Q1 to 2009-Q3")
    for old, new, row in zip(periods, periods[1:], rows[1:], strict=False):
        change = ratio(series, old, new)
        assert change is not None
        assert 400 * math.log(change) == pytest.approx(float(row["infl"]), abs=0.00501)


@cache
def _us_cities() -> PriceIndex:
    # The cpi package's database, read and nothing else: BLS series CUUR0000SA0, by month.
    path = _package_file("cpi", "cpi.db")
    db = sqlite3.connect(f"{path.as_uri()}?mode=ro&immutable=1", uri=True)
    rows = db.execute(
        "SELECT year, period, value FROM indexes WHERE series = 'CUUR0000SA0' AND period <> 'M13'"
    ).fetchall()
    db.close()
    values = {f"{year}-{period[1:]}": Decimal(str(value)) for year, period, value in rows}
    return PriceIndex(PriceIndexId(1), "US", "USD", "BLS CUUR0000SA0", values)


@pytest.mark.parametrize(
    ("year", "published"),
    [
        ("1950", "24.1"), ("1960", "29.6"), ("1970", "38.8"), ("1980", "82.4"),
        ("1990", "130.7"), ("2000", "172.2"), ("2010", "218.056"), ("2020", "258.811"),
        ("2022", "292.655"), ("2024", "313.689"),
    ],
)  # fmt: skip
def test_the_mean_of_the_months_is_the_annual_average_published(year: str, published: str) -> None:
    # Published to one decimal place until 2006, to three since.
    found = level(_us_cities(), year)
    assert found is not None
    assert found.by == "mean of 12 months"
    places = len(published.partition(".")[2])
    assert abs(found.value - Fraction(published)) <= Fraction(501, 1000) / 10**places


def test_january_to_january_is_as_published() -> None:
    # BLS, January 2000 (168.8) to January 2001 (175.1): 3.73 per cent.
    change = ratio(_us_cities(), "2000-01", "2001-01")
    assert change is not None
    assert round(float(change - 1) * 100, 2) == 3.73


# --- looking up


def test_a_month_falls_back_on_its_quarter_and_its_year() -> None:
    found = index(p2016="100", p2016_Q3="103", p2016_07="104")
    expected = {"2016-07": "104", "2016-08": "103", "2016-02": "100", "2016": "100"}
    for period, value in expected.items():
        there = level(found, period)
        assert there is not None
        assert there.value == Fraction(value)
    assert level(found, "2017") is None
    assert level(found, "2017-01") is None


def test_a_year_is_the_mean_of_what_the_index_has_of_it() -> None:
    found = level(index(p2016_01="100", p2016_02="103"), "2016")
    assert found is not None
    assert (found.value, found.by) == (Fraction(203, 2), "mean of 2 months")
    quarters = level(index(p2016_Q1="100"), "2016")
    assert quarters is not None
    assert quarters.by == "mean of 1 quarter"


def test_a_quarter_is_the_mean_of_its_months_or_else_that_of_its_year() -> None:
    of_months = level(index(p2016_06="90", p2016_07="100", p2016_09="103"), "2016-Q3")
    assert of_months is not None
    assert (of_months.value, of_months.by) == (Fraction(203, 2), "mean of 2 months")
    of_year = level(index(p2016="100", p2016_06="90"), "2016-Q3")
    assert of_year is not None
    assert (of_year.value, of_year.by) == (100, "that of 2016")
    assert level(index(p2016_06="90"), "2016-Q3") is None


@pytest.mark.parametrize(
    ("edtf", "period"),
    [
        ("2016-07-04", "2016-07"), ("2016-07", "2016-07"), ("2016", "2016"), ("2016-22", "2016"),
        ("2015/2017", "2015"), ("../2016", ""), ("2016-07-30/2016-08-02", "2016"),
    ],
)  # fmt: skip
def test_a_date_counts_in_its_month_or_its_first_year(edtf: str, period: str) -> None:
    assert period_of(parse_edtf(edtf)) == period


def test_an_index_of_another_currency_is_refused_with_a_word() -> None:
    with pytest.raises(JournalError, match="is for USD, and the journal's sums are in EUR"):
        refuse_other_currency(index(), "EUR")


# --- reading


@pytest.mark.parametrize(
    "text",
    [
        "2016-01,100.0\n2016-Q3,103.5\n2017,110\n",
        "\ufeffPeriod;Value\r\n\r\n2016-01;100,0\r\n2016q3;103,5\r\n2017;110\r\n",
        "# made up\n2016-01\t100\n2016-Q3\t103.50\n2017\t110,0\t\n",
        "2016-01 100\n2016-Q3 103.5\n 2017 110",
        'period,value\n"2016-01","100"\n2016-Q3,"103,5"\n2017,110\n',
    ],
)
def test_two_columns_are_read_however_they_are_parted(text: str) -> None:
    assert read_index(text) == {"2016-01": 100, "2016-Q3": Decimal("103.5"), "2017": 110}


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "no row with a period"),
        ("period,value\n", "no row with a period"),
        ("2016,100\n2016,101", "Row 2: 2016 stands there twice"),
        ("2016,100\n2016-13,101", "Row 2: “2016-13” is no period"),
        ("2016,100\n\n2017,-", "Row 3: “-” is no value"),
        ("2016,0", "Row 1: a price index is above zero"),
        ("2016,100\n2017", "Row 2 has 1 filled columns"),
        ("2016,1,2,3", "Row 1 has 4 filled columns"),
        ("2016,=1+1", "Row 1: “=1\\+1” is no value"),
        ("2016,1e5", "is no value"),
        ("2016,NaN", "is no value"),
        ("٢٠١٦,100", "is no period"),
        ("2016,1\n" * 20_001, "20,001 rows are more"),
    ],
)
def test_a_row_that_cant_be_read_is_named(text: str, said: str) -> None:
    with pytest.raises(JournalError, match=said) as caught:
        read_index(text)
    assert len(str(caught.value)) < 250


@given(st.text(max_size=60))
def test_any_text_is_an_index_or_one_plain_sentence(text: str) -> None:
    try:
        assert read_index(text)
    except JournalError as error:
        assert str(error)  # noqa: PT017 - either outcome is right


def test_periods_are_kept_in_one_form_and_in_order_of_time() -> None:
    typed = [" 2016-q3", "2016Q1", "2017", "2016-08", "2016"]
    periods = [as_period(text) for text in typed]
    assert in_order(periods) == ["2016", "2016-Q1", "2016-08", "2016-Q3", "2017"]


@pytest.mark.parametrize(
    "text",
    ["2016\t998\n2017\t1,004", "2016;998\n2017;1.004", "2016;1.004\n2017;1.010\n2018;990"],
)
def test_a_mark_for_thousands_is_not_taken_for_a_decimal_one(text: str) -> None:
    with pytest.raises(JournalError, match="mark for thousands"):
        read_index(text)


def test_three_decimal_places_are_read_beside_whole_numbers() -> None:
    # BLS publishes three places since 2007; spreadsheets leave zeros at the end out.
    assert read_index("2010;218.056\n2011;219")["2010"] == Decimal("218.056")
    assert read_index("2010;1,004\n2011;1,010")["2011"] == Decimal("1.010")
