"""Numbers in cells as people and locales write them."""

from decimal import Decimal

import pytest
from babel.numbers import format_currency, format_decimal, get_decimal_symbol
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.domain.sheet_rows import Decimals
from journal.intake.sheets.sums import Mark, value, written

#: Locales whose digits, groups and signs differ, by CLDR as Babel carries it.
LOCALES = (
    "en", "en_IN", "en_ZA", "de", "de_AT", "de_CH", "fr", "fr_CH", "sv", "nb", "da", "nl", "it",
    "es", "pt", "pt_PT", "pl", "cs", "fi", "hu", "ja", "hr", "et",
)  # fmt: skip


def read(text: str, decimals: Decimals) -> Decimal:
    found = written(text)
    assert found is not None, text
    number = value(found, decimals)
    return -number if found.negative else number


@given(st.decimals("-9999999", "9999999", places=2), st.sampled_from(LOCALES))
def test_what_cldr_writes_in_any_locale_is_read_as_the_same_number(
    number: Decimal, locale: str
) -> None:
    mark = Decimals.POINT if get_decimal_symbol(locale) == "." else Decimals.COMMA
    text = format_decimal(number, "#,##0.00" if locale != "en_IN" else None, locale=locale)
    assert read(text, mark) == number


@given(st.decimals("-9999999", "9999999", places=2), st.sampled_from(LOCALES))
def test_sums_with_their_currency_are_read_in_any_locale(number: Decimal, locale: str) -> None:
    mark = Decimals.POINT if get_decimal_symbol(locale) == "." else Decimals.COMMA
    for currency in ("EUR", "GBP"):
        text = format_currency(number, currency, locale=locale)
        found = written(text)
        assert found is not None
        assert found.words.strip() in ("€", "£", "EUR", "GBP", "£GB", "UK£", "£\u00a0GB")
        assert read(text, mark) == number


@pytest.mark.parametrize(
    ("text", "mark"),
    [
        ("1234", Mark.NONE),
        ("1.234", Mark.OPEN),
        ("12,345", Mark.OPEN),
        ("0.125", Mark.POINT),
        ("0,125", Mark.COMMA),
        ("1.234,5", Mark.COMMA),
        ("1,234.5", Mark.POINT),
        ("1.234.567", Mark.COMMA),
        ("12,34,567.50", Mark.POINT),
        ("1234,567", Mark.COMMA),
        ("1 234", Mark.NONE),
        ("1'234.50", Mark.POINT),
        ("12.50", Mark.POINT),
        (".5", Mark.POINT),
        ("12,-", Mark.NONE),
    ],
)
def test_a_number_shows_its_mark_or_that_it_is_open(text: str, mark: Mark) -> None:
    found = written(text)
    assert found is not None
    assert found.mark is mark


@pytest.mark.parametrize(
    "text",
    [
        "", "abc", "1.2.3", "1,2,3", "1.23.456", "12/50", "5-7", "1,234.567,8", "1 23 456",
        "12.50 13.50", "--5", "." * 70,
    ],
)  # fmt: skip
def test_what_is_no_number_is_none(text: str) -> None:
    assert written(text) is None


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("(12.50)", "-12.5"),
        ("12.50-", "-12.5"),
        ("\u221212.50", "-12.5"),
        ("£ -12.50", "-12.5"),
        ("12.50 DR", "-12.5"),
        ("12.50 CR", "12.5"),
        ("+12.50", "12.5"),
        ("١٢٫٥٠", "12.5"),
    ],
)
def test_signs_before_and_behind_are_read(text: str, number: str) -> None:
    assert read(text, Decimals.BOTH) == Decimal(number)


def test_the_mark_of_the_whole_sheet_decides_and_the_other_is_refused() -> None:
    assert read("1.234", Decimals.COMMA) == 1234
    assert read("1.234", Decimals.POINT) == Decimal("1.234")
    with pytest.raises(JournalError, match="can be read in two ways"):
        read("1.234", Decimals.BOTH)
    with pytest.raises(JournalError, match="not written with a decimal comma"):
        read("1,234.56", Decimals.COMMA)
    with pytest.raises(JournalError, match="not written with a decimal point"):
        read("12,5", Decimals.POINT)


@given(st.text(max_size=80))
def test_any_text_is_a_number_or_none(text: str) -> None:
    found = written(text)
    if found is not None:
        try:
            assert value(found, Decimals.BOTH) >= 0
        except JournalError:
            assert found.mark is Mark.OPEN
