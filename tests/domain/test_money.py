import subprocess
import sys
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from iso4217 import Currency

from journal.domain.errors import JournalError
from journal.domain.money import format_money, minor_units, parse_money, to_currency


@pytest.mark.parametrize("currency", list(Currency), ids=lambda currency: currency.code)
def test_minor_units_are_those_of_iso_4217(currency: Currency) -> None:
    # The list published 2026-01-01, as the iso4217 package ships it.
    if currency.exponent is None:
        with pytest.raises(JournalError, match=currency.code):
            minor_units(currency.code)
    else:
        assert minor_units(currency.code) == currency.exponent


def test_the_list_itself_has_the_published_counts() -> None:
    exponents = [currency.exponent for currency in Currency]
    counts = {places: exponents.count(places) for places in (0, 2, 3, 4)}
    assert counts == {0: 17, 2: 139, 3: 7, 4: 2}


@pytest.mark.parametrize(("code", "places"), [("DEM", 2), ("FRF", 2), ("ITL", 0), ("ESP", 0)])
def test_currencies_before_the_euro_are_known(code: str, places: int) -> None:
    # Places in use before 2002: common knowledge, no source.
    assert minor_units(code) == places


@pytest.mark.parametrize("code", ["", "EURO", "eur", "ZZZ", "12€", "X" * 5000])
def test_an_unknown_code_is_named(code: str) -> None:
    with pytest.raises(JournalError, match="three-letter code") as caught:
        minor_units(code)
    assert len(str(caught.value)) < 100


@pytest.mark.parametrize(
    ("text", "minor"),
    [
        ("1.234,56", 123456),
        ("1,234.56", 123456),
        ("1 234,56", 123456),
        ("1\u202f234,56", 123456),
        ("1'234.56", 123456),
        ("1’234.56", 123456),
        ("12", 1200),
        ("12.5", 1250),
        ("12,5", 1250),
        ("€ 12.50", 1250),
        ("12,50\u00a0€", 1250),
        ("EUR 12.50", 1250),
        ("12.50 eur", 1250),
        ("-12.50", -1250),
        ("\u2212 12.50", -1250),
        ("€-12.50", -1250),
        ("12.50-", -1250),
        ("12,-", 1200),
        ("12.—", 1200),
        (".50", 50),
        ("-,50", -50),
        ("0", 0),
        ("007", 700),
        ("1.234.567", 123456700),
        ("1,234,567.89", 123456789),
        (" 12.50\n", 1250),
        ("0.00", 0),
    ],
)
def test_sums_are_read_as_people_write_them(text: str, minor: int) -> None:
    assert parse_money(text, "EUR") == minor


@pytest.mark.parametrize(
    ("text", "currency", "minor"),
    [
        ("1 234", "JPY", 1234),
        ("1,234", "JPY", 1234),
        ("1.234", "KRW", 1234),
        ("¥1234", "JPY", 1234),
        ("0.125", "KWD", 125),
        ("12.3456", "KWD", None),
        ("12.5", "JPY", None),
        ("250 kr", "SEK", 25000),
        ("250 kr.", "DKK", 25000),
        ("Fr. 12.50", "CHF", 1250),
        ("$12.50", "CAD", 1250),
        ("£12", "GBP", 1200),
    ],
)
def test_every_currency_has_its_own_places(text: str, currency: str, minor: int | None) -> None:
    if minor is None:
        with pytest.raises(JournalError, match=f"more decimal places than {currency}"):
            parse_money(text, currency)
    else:
        assert parse_money(text, currency) == minor


def test_three_digits_after_a_mark_are_decimals_where_a_currency_has_three() -> None:
    assert parse_money("1.234", "KWD") == 1234
    assert parse_money("KWD 12,500", "KWD") == 12_500
    assert parse_money("1,234.500", "KWD") == 1_234_500


@pytest.mark.parametrize("text", ["1.234", "1,234", "12.500", "€ 1.234", "-1,234"])
@pytest.mark.parametrize("currency", ["EUR", "SEK"])
def test_what_can_be_read_two_ways_is_not_guessed_at(text: str, currency: str) -> None:
    if "€" in text and currency != "EUR":
        text = text.replace("€", currency)
    with pytest.raises(JournalError, match="two ways"):
        parse_money(text, currency)


@pytest.mark.parametrize(
    "text",
    [
        "",
        " ",
        "abc",
        "€",
        "-",
        "12.50.3",
        "1,23,456",
        "12 50",
        "1.2.3",
        "--5",
        "5-5",
        "12.50 13.50",
        "1 234'567",
        "1.234,567.89",
        "£12",
        "USD 12",
        "12 %",
        "1e5",
        "½",
        "5²",
        "nan",
        "inf",
        "12.345,6,7",
        "٣٤",
    ],
)
def test_what_is_no_sum_is_refused_by_name(text: str) -> None:
    with pytest.raises(JournalError) as caught:
        parse_money(text, "EUR")
    assert text.strip() in str(caught.value)
    assert str(caught.value).count(".") <= text.count(".") + 1


@pytest.mark.parametrize("text", ["9" * 15, "9" * 5000, "1" + "0" * 12, "1,000,000,000,000.00"])
def test_an_absurd_sum_is_refused(text: str) -> None:
    with pytest.raises(JournalError, match="too large") as caught:
        parse_money(text, "EUR")
    assert len(str(caught.value)) < 120


@pytest.mark.parametrize(
    ("minor", "currency", "locale", "written"),
    [
        (123456, "EUR", "en", "€1,234.56"),
        (123450, "EUR", "de", "1.234,50\u00a0€"),
        (-50, "EUR", "en", "-€0.50"),
        (1234, "JPY", "en", "¥1,234"),
        (1250, "KWD", "en", "KWD\u00a01.250"),
        (1250, "RSD", "en", "RSD\u00a012.50"),
        (0, "GBP", "en", "£0.00"),
    ],
)
def test_sums_are_written_with_all_their_places(
    minor: int, currency: str, locale: str, written: str
) -> None:
    assert format_money(minor, currency, locale) == written


@given(
    st.integers(-(10**11), 10**11),
    st.sampled_from(["EUR", "GBP", "SEK", "CHF", "USD", "JPY", "AUD"]),
    st.sampled_from(["en", "de", "fr", "sv"]),
)
def test_what_is_written_can_be_read_again(minor: int, currency: str, locale: str) -> None:
    assert parse_money(format_money(minor, currency, locale), currency) == minor


@given(st.text(max_size=30))
def test_any_text_is_a_sum_or_one_plain_sentence(text: str) -> None:
    try:
        assert isinstance(parse_money(text, "EUR"), int)
    except JournalError as error:
        assert str(error)  # noqa: PT017 - either outcome is right


@pytest.mark.parametrize(
    ("minor", "currency", "rate", "target", "result"),
    [
        (10000, "GBP", "1.1734", "EUR", 11734),
        (1000, "JPY", "0.0062", "EUR", 620),
        (1000, "EUR", "160.5", "JPY", 1605),
        (1000, "EUR", "0.33", "KWD", 3300),
        (1, "GBP", "1.5", "EUR", 2),
        (-1, "GBP", "1.5", "EUR", -2),
        (1, "GBP", "1.49", "EUR", 1),
        (12345, "EUR", "1", "EUR", 12345),
    ],
)
def test_another_currency_rounds_half_away_from_zero(
    minor: int, currency: str, rate: str, target: str, result: int
) -> None:
    assert to_currency(minor, currency, Decimal(rate), target) == result


@pytest.mark.parametrize("rate", ["0", "-1", "NaN", "Infinity"])
def test_a_rate_is_a_number_above_zero(rate: str) -> None:
    with pytest.raises(JournalError, match="from GBP to EUR"):
        to_currency(100, "GBP", Decimal(rate), "EUR")


@given(st.integers(0, 10**12), st.decimals("0.0001", "1000", places=6))
def test_a_refund_comes_to_what_the_purchase_came_to(minor: int, rate: Decimal) -> None:
    assert to_currency(-minor, "GBP", rate, "EUR") == -to_currency(minor, "GBP", rate, "EUR")


def test_the_libraries_are_loaded_on_first_use_only() -> None:
    code = (
        "import sys, journal.domain.money; print(sorted({'babel', 'moneyed'} & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
