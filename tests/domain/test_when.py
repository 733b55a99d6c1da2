import subprocess
import sys
from datetime import date, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.errors import JournalError
from journal.domain.when import When, parse, parse_edtf, spoken

ALWAYS, NEVER = datetime.max, datetime.min


def days(first, last):
    return (
        NEVER if first is None else datetime.fromisoformat(first),
        ALWAYS if last is None else datetime.fromisoformat(last + "T23:59:59"),
    )


#: Examples of the Library of Congress, "Extended Date/Time Format (EDTF) Specification",
#: 4 February 2019. Where it states no bounds, they follow from its wording or, for those marked
#: "library", from the tests of the python-edtf project (edtf/parser/tests.py).
LEVEL_0 = {
    "1985-04-12": ("1985-04-12", "1985-04-12"),
    "1985-04": ("1985-04-01", "1985-04-30"),
    "1985": ("1985-01-01", "1985-12-31"),
    "2008-12": ("2008-12-01", "2008-12-31"),  # library
    "1964/2008": ("1964-01-01", "2008-12-31"),  # library
    "2004-06/2006-08": ("2004-06-01", "2006-08-31"),
    "2004-02-01/2005-02-08": ("2004-02-01", "2005-02-08"),
    "2004-02-01/2005-02": ("2004-02-01", "2005-02-28"),  # library
    "2004-02-01/2005": ("2004-02-01", "2005-12-31"),
    "2005/2006-02": ("2005-01-01", "2006-02-28"),  # library
}
LEVEL_1 = {
    "1984?": ("1984-01-01", "1984-12-31"),  # library
    "2004-06~": ("2004-06-01", "2004-06-30"),
    "2004-06-11%": ("2004-06-11", "2004-06-11"),
    "201X": ("2010-01-01", "2019-12-31"),
    "20XX": ("2000-01-01", "2099-12-31"),
    "199X": ("1990-01-01", "1999-12-31"),  # library
    "2004-XX": ("2004-01-01", "2004-12-31"),
    "1999-XX": ("1999-01-01", "1999-12-31"),  # library
    "1985-04-XX": ("1985-04-01", "1985-04-30"),
    "1999-01-XX": ("1999-01-01", "1999-01-31"),  # library
    "1985-XX-XX": ("1985-01-01", "1985-12-31"),
    "1985-04-12/..": ("1985-04-12", None),
    "1985-04/..": ("1985-04-01", None),
    "1985/..": ("1985-01-01", None),
    "2004-01-01/..": ("2004-01-01", None),  # library
    "../1985": (None, "1985-12-31"),
    "../2006": (None, "2006-12-31"),  # library
    "1985-04/": ("1985-04-01", None),
    "/1985": (None, "1985-12-31"),
    "1984~/2004-06?": ("1984-01-01", "2004-06-30"),
}
LEVEL_2 = {
    "156X-12-25": ("1560-12-25", "1569-12-25"),  # library, and the standard's own words
    "1984-1X": ("1984-10-01", "1984-12-31"),
    "1950S2": ("1900-01-01", "1999-12-31"),
    "2001-34": ("2001-04-01", "2001-06-30"),  # library
    "?2004-06-~11": ("2004-06-11", "2004-06-11"),
    "[1667,1668,1670..1672]": ("1667-01-01", "1672-12-31"),
    "{1960,1961-12}": ("1960-01-01", "1961-12-31"),
    "2004-06-XX/2004-07-03": ("2004-06-01", "2004-07-03"),  # library
    "1985-XX-12": ("1985-01-12", "1985-12-12"),
    "19XX-02-29": ("1904-02-29", "1996-02-29"),
}


@pytest.mark.parametrize(("text", "bounds"), (LEVEL_0 | LEVEL_1 | LEVEL_2).items())
def test_a_date_stands_for_the_days_the_standard_says(text, bounds):
    when = parse_edtf(text)
    assert (when.earliest, when.latest) == days(*bounds)
    assert when.edtf == text
    assert parse(text) == when


@pytest.mark.parametrize("zone", ["", "Z", "-04", "+04:30", "+00:59", "-11:00"])
def test_a_moment_is_local_time_with_its_offset_kept(zone):
    when = parse_edtf("1985-04-12T23:20:30" + zone)
    assert when.earliest == when.latest == datetime(1985, 4, 12, 23, 20, 30)
    assert when.edtf.endswith(zone)


@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("2001-21", "2001-03-01", "2001-05-31"),
        ("2001-22", "2001-06-01", "2001-08-31"),
        ("2001-23", "2001-09-01", "2001-11-30"),
        ("2003-24", "2003-12-01", "2004-02-29"),
        ("2004-24~", "2004-12-01", "2005-02-28"),
    ],
)
def test_seasons_are_northern_by_our_convention(text, first, last):
    """The standard gives them no months; the months here are ours."""
    when = parse_edtf(text)
    assert (when.earliest, when.latest) == days(first, last)


@pytest.mark.parametrize("text", ["-1985", "-1985-04-12", "0000", "Y170000002", "-0044/0014"])
def test_years_that_python_has_no_date_for_are_kept_with_clipped_bounds(text):
    when = parse_edtf(text)
    assert when.edtf == text
    assert when.earliest in (NEVER, ALWAYS)
    assert when.earliest <= when.latest


#: Strings that the tests of the edtf-validate project (unt-libraries) refuse, then those of
#: python-edtf, then what the standard's own text excludes: the basic format, and what was replaced
#: since the draft of 2012.
REFUSED = [
    "",
    " 1863-03-29",
    "1863-03-29 ",
    "1960-06-31",
    "Y2006",
    "-0000",
    "+2006%",
    "2000/12-12",
    "2005-07-25T10:10:10Z/2006-01-01T10:10:10Z",
    "2001-21^southernHemisphere",
    "2012///4444",
    "0800/-0999",
    "0001/0000",
    "1985-04-12t23:20:30",
    "2016-13-08",
    "2016-02-39",
    "2004-(06)?-11",
    "20050924T100000",
    "199u",
    "2004-06-uu/2004-07-03",
    "unknown/2006",
    "2004-01-01/open",
    "1984?~",
    "y170000002",
    "2004-06-11T10:10:60",
    "2004-06-11T25:10:10",
    "2004-06-11T10:10:10+25",
    "2004-02-30",
    "2004-XX-31X",
    "..",
    "../..",
    "/",
    "1985-04-12T23:20:30~",
    "[" * 5000,
    "2016\n",
    "２０１６",
]


@pytest.mark.parametrize("text", REFUSED, ids=lambda text: text[:30])
def test_what_is_no_edtf_is_refused_with_a_sentence(text):
    with pytest.raises(JournalError) as caught:
        parse_edtf(text)
    assert str(caught.value).endswith(".")
    if text == text.strip():
        with pytest.raises(JournalError):
            parse(text)


def test_spaces_around_what_a_person_typed_do_no_harm():
    assert parse(" 1863-03-29 ").edtf == "1863-03-29"


WORDS = {
    "summer 2009": "2009-22",
    "Summer of 2009": "2009-22",
    "fall 2009": "2009-23",
    "winter 2009/10": "2009-24",
    "winter 1999-2000": "1999-24",
    "March 2016": "2016-03",
    "mar 2016": "2016-03",
    "Sept. 2016": "2016-09",
    "3 March 2016": "2016-03-03",
    "3rd of March, 2016": "2016-03-03",
    "March 3, 2016": "2016-03-03",
    "5 March 2016, 14:22": "2016-03-05T14:22:00",
    "5 March 2016 at 9:05:07": "2016-03-05T09:05:07",
    "2016-03-05 14:22": "2016-03-05T14:22:00",
    "about 2012": "2012~",
    "circa March 2012": "2012-03~",
    "c. 2012": "2012~",
    "perhaps 2012": "2012?",
    "maybe about summer 2012": "2012-22%",
    "2015 to 2017": "2015/2017",
    "2015-2017": "2015/2017",
    "2015 – 2017": "2015/2017",
    "between March 2015 and 2017": "2015-03/2017",
    "from 2015 to about 2017": "2015/2017~",
    "March to June 2016": "2016-03/2016-06",
    "3 to 5 March 2016": "2016-03-03/2016-03-05",
    "28 February to 5 March 2016": "2016-02-28/2016-03-05",
    "before 2006": "../2005",
    "before March 2016": "../2016-02",
    "before 1 March 2016": "../2016-02-29",
    "before summer 2009": "../2009-05-31",
    "after 2006": "2007/..",
    "after December 2016": "2017-01/..",
    "since 2006": "2006/..",
    "until June 2006": "../2006-06",
    "the 1990s": "199X",
    "in 2004": "2004",
}


@pytest.mark.parametrize(("words", "edtf"), WORDS.items())
def test_the_owners_words_become_edtf(words, edtf):
    assert parse(words) == parse_edtf(edtf)
    assert parse(words.upper()) == parse_edtf(edtf)


@pytest.mark.parametrize(
    "words",
    ["soon", "March", "31 February 2016", "0 March 2016", "winter 2009/11", "summer 2009/10",
     "before", "to 2", "2017 to 2015", "about 5 March 2016 14:22", "5 March 2016 25:00",
     "13 2016", "x" * 10_000, "2016 to", "after 9999", "before 0001", "before 0000", "after -0005"],
    ids=lambda words: words[:30],
)  # fmt: skip
def test_words_that_name_no_date_are_refused_in_one_plain_sentence(words):
    with pytest.raises(JournalError) as caught:
        parse(words)
    assert "can't be read as a date" in str(caught.value)
    assert len(str(caught.value)) < 300


def test_a_day_and_month_in_figures_could_be_either():
    with pytest.raises(JournalError, match="month as a word"):
        parse("03/04/2016")


SPOKEN = {
    "2016-03-05T14:22:07+01:00": "5 March 2016, 14:22",
    "2016-03-05": "5 March 2016",
    "2016-03": "March 2016",
    "2016": "2016",
    "2012~": "about 2012",
    "2012-03?": "perhaps March 2012",
    "2012%": "perhaps about 2012",
    "2015/2017": "2015 to 2017",
    "2015~/2017-03": "about 2015 to March 2017",
    "2009-22": "summer 2009",
    "1999-24": "winter 1999/00",
    "../2005": "until 2005",
    "2006/..": "since 2006",
    "201X": "2010s",
    "20XX": "2000 to 2099",
    "2004-XX": "2004, month unknown",
    "2004-06-XX": "June 2004, day unknown",
    "2004-XX-XX": "2004, day unknown",
    "{1960,1961-12}": "{1960,1961-12}",
    "156X-12-25": "156X-12-25",
    "2001-34": "2001-34",
}


@pytest.mark.parametrize(("edtf", "words"), SPOKEN.items())
def test_a_screen_shows_a_date_in_words(edtf, words):
    assert spoken(parse_edtf(edtf)) == words


points = st.one_of(
    st.dates(date(1000, 1, 1), date(9000, 1, 1)).map(lambda d: d.isoformat()),
    st.dates(date(1000, 1, 1), date(9000, 1, 1)).map(lambda d: d.isoformat()[:7]),
    st.integers(1000, 9000).map(str),
    st.tuples(st.integers(1000, 9000), st.integers(21, 24)).map(lambda v: f"{v[0]}-{v[1]}"),
)
qualified = st.tuples(points, st.sampled_from(["", "?", "~", "%"])).map("".join)
spans = st.tuples(qualified, qualified).map(
    lambda ends: "/".join(sorted(ends, key=lambda t: parse_edtf(t).earliest))
)


@given(qualified | spans)
def test_what_a_screen_shows_can_be_typed_back(edtf):
    assert parse(spoken(parse_edtf(edtf))).edtf == edtf


@given(st.text(max_size=30) | st.text("0123456789-/.XYTSE?~%[]{}, ", max_size=24))
def test_any_text_is_a_date_with_its_bounds_in_order_or_refused(text):
    try:
        when = parse(text)
    except JournalError:
        return
    assert when.earliest <= when.latest
    assert parse_edtf(when.edtf) == when


@given(st.datetimes(datetime(1, 1, 1), datetime(9999, 12, 30)))
def test_a_moment_keeps_its_fraction_and_writes_edtf(moment):
    when = When.at(moment, "+01:00")
    assert when.earliest == moment
    assert parse_edtf(when.edtf).earliest == moment.replace(microsecond=0)


def test_ordinary_dates_load_no_library():
    script = (
        "import sys; from journal.domain.when import parse, spoken\n"
        "for text in ('2016', '2016-03', '2016-03-05', '2016-03-05T10:00:00+01:00',"
        " 'summer 2009', 'about 2012', '2015 to 2017', '../2005', '201X'): spoken(parse(text))\n"
        "print('edtf' in sys.modules)"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "False"
