"""Sums among words: exactly the currency's decimals, the last mark decimal, letters mended."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.intake.reading.amounts import amounts, digits_mended


def minors(text, places=2):
    return [found.minor for found in amounts(text, places)]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Total 12.50", [1250]),
        ("1.234,56", [123456]),
        ("1,234.56", [123456]),
        ("1 234,56", [123456]),
        ("1'234.50", [123450]),
        ("12.345.678,90", [1234567890]),
        ("2  123.45", [12345]),
        ("2 x 4.50   9.00", [450, 900]),
        ("EUR 12,50", [1250]),
        ("€12.50", [1250]),
        ("12.50€", [1250]),
        ("12,50 kr", [1250]),
        ("SEK1 234,00", [123400]),
        ("12.50EUR", [1250]),
        ("TOTAL12.50", [1250]),
        ("12.50 A", [1250]),
        ("12.50A", [1250]),
        ("3x4.50", [450]),
        ("-4,50", [-450]),
        ("4,50-", [-450]),
        ("\u22124.50", [-450]),
        ("12.5O", [1250]),
        ("1O.lO", []),
        ("1O0.l0", [10010]),
        ("l2.50", [1250]),
        ("6,6619,98", [666, 1998]),
        ("A hose 1.0810.80", [108, 1080]),
    ],
)
def test_a_sum_is_read(text, expected):
    assert minors(text) == expected


@pytest.mark.parametrize(
    "text",
    ["19,00 %", "12.05.2019", "12.5", "12", "1.659", "0,500 kg", "3,50 m", "14:05", "kl 14.05",
     "OIL.50", "Art.12.50", "192.168.10.20", "12.345", "7.50 Uhr", "12.50abc", "A4.10.20"],
)  # fmt: skip
def test_what_is_no_sum_is_none(text):
    assert minors(text) == []


def test_decimals_are_those_of_the_currency():
    assert minors("¥1,200", 0) == [1200]
    assert minors("KWD 1.250", 3) == [1250]
    assert minors("KWD 1.25", 3) == []


def test_letters_are_mended_only_among_digits():
    assert digits_mended("l2.50 OIL SOLO l00 B1O O2l") == "12.50 OIL SOLO 100 B1O O2l"


@given(
    minor=st.integers(0, 10**9 - 1),
    marks=st.sampled_from([(",", "."), (".", ","), (" ", ","), ("'", "."), ("", "."), ("", ",")]),
    around=st.sampled_from([("", ""), ("€ ", ""), ("", " EUR"), ("Total  ", ""), ("2 x ", " A")]),
)
def test_every_way_to_write_a_sum_reads_back(minor, marks, around):
    group, decimal = marks
    whole, cents = divmod(minor, 100)
    written = f"{whole:,}".replace(",", group) + f"{decimal}{cents:02}"
    before, after = around
    if before.startswith("2 x ") and group == " ":
        before = "2 x  "
    found = amounts(f"{before}{written}{after}", 2)
    assert [one.minor for one in found] == [minor]


def test_sums_read_as_one_word_stand_where_they_stand():
    text = "Hose 6,6619,98 and 7,1022,20"
    found = amounts(text, 2)
    assert [text[one.start : one.end] for one in found] == ["6,66", "19,98", "7,10", "22,20"]


@given(st.text(max_size=60))
def test_any_text_gives_sums_inside_it_or_none(text):
    for found in amounts(text, 2):
        assert 0 <= found.start < found.end <= len(text)
