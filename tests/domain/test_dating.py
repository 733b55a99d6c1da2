from datetime import datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.dating import (
    choose,
    exif_candidate,
    exif_offset,
    exif_when,
    file_time_candidate,
    name_candidate,
    weigh,
)
from journal.domain.photos import Basis, DateCandidate
from journal.domain.when import When, parse_edtf

NOW = datetime(2026, 6, 1, 12, 0)

#: The form and the ways to write "unknown" are those of the Exif standard (CIPA DC-008), as the
#: Library of Congress's and others' pages quote it; the rest occurs in files of real devices.
EXIF_FORMS = {
    "2016:03:05 14:22:07": datetime(2016, 3, 5, 14, 22, 7),
    "2016:03:05 14:22:07\0": datetime(2016, 3, 5, 14, 22, 7),
    "2004.07.17 00.24.35": datetime(2004, 7, 17, 0, 24, 35),
    "2024-04-22T14:38:09GMT+2": datetime(2024, 4, 22, 14, 38, 9),
    "2019-10-17T16:55:20-07:00": datetime(2019, 10, 17, 16, 55, 20),
    "2016:3:5 4:22:07": datetime(2016, 3, 5, 4, 22, 7),
    "2016:03:05 14:22": datetime(2016, 3, 5, 14, 22),
    "2016/03/05 14:22:07": datetime(2016, 3, 5, 14, 22, 7),
}


@pytest.mark.parametrize(("text", "moment"), EXIF_FORMS.items())
def test_a_date_is_read_in_every_form_that_devices_write(text, moment):
    when = exif_when(text)
    assert when == When.at(moment)


def test_a_date_without_a_time_is_a_whole_day():
    assert exif_when("2016:03:05") == parse_edtf("2016-03-05")


@pytest.mark.parametrize(
    "text",
    ["", " " * 19, "    :  :     :  :  ", "0000:00:00 00:00:00", "\0" * 20,
     "2017:08:21 15:08:70", "2016:13:05 00:00:00", "2015:02:29 10:00:00", "2016:03:05 24:00:00",
     "yesterday", "2016", "2016:03"],
)  # fmt: skip
def test_unknown_and_impossible_dates_are_none(text):
    assert exif_when(text) is None


@pytest.mark.parametrize(
    ("subsec", "microseconds"),
    [("016", 16_000), ("550", 550_000), ("5", 500_000), ("05", 50_000), ("495109", 495_109),
     ("68 ", 680_000), ("00", 0), ("", 0), ("   ", 0), ("123456789", 123_456), ("-5", 0), ("²", 0)],
)  # fmt: skip
def test_sub_seconds_are_a_decimal_fraction(subsec, microseconds):
    when = exif_when("2015:04:10 20:12:23", subsec)
    assert when.earliest == datetime(2015, 4, 10, 20, 12, 23, microseconds)
    assert when.edtf == "2015-04-10T20:12:23"


@pytest.mark.parametrize(
    ("text", "offset"),
    [("+01:00", "+01:00"), ("-08:00\0", "-08:00"), ("+00:00", "+00:00"), ("+05:45", "+05:45"),
     ("   :  ", None), ("      ", None), ("", None), ("+25:00", None), ("01:00", None),
     ("Z", None)],
)  # fmt: skip
def test_an_offset_is_taken_as_it_stands_or_not_at_all(text, offset):
    assert exif_offset(text) == offset


def test_a_camera_date_never_becomes_utc():
    candidate = exif_candidate("DateTimeOriginal", "2022:02:16 12:55:41", "762", "+01:00")
    assert candidate.when.earliest == datetime(2022, 2, 16, 12, 55, 41, 762_000)
    assert candidate.when.edtf == "2022-02-16T12:55:41+01:00"
    assert (candidate.basis, candidate.offset, candidate.doubt) == (Basis.CAMERA, "+01:00", "")


@pytest.mark.parametrize(
    ("text", "doubt"),
    [("0000:00:00 00:00:00", "never set"), ("    :  :     :  :  ", "never set"),
     ("2017:08:21 15:08:70", "no real date")],
)  # fmt: skip
def test_a_date_that_cannot_count_says_why(text, doubt):
    candidate = exif_candidate("DateTime", text, "", "")
    assert candidate.when is None
    assert doubt in candidate.doubt
    assert choose([candidate], NOW) is None


NAMES = {
    "IMG_20160305_142207.jpg": "2016-03-05T14:22:07",
    "VID_20160305_142207.mp4": "2016-03-05T14:22:07",
    "20160305_142207.jpg": "2016-03-05T14:22:07",
    "20160305_142207(0).jpg": "2016-03-05T14:22:07",
    "IMG_20160305_142207123.jpg": "2016-03-05T14:22:07",
    "Screenshot_2016-03-05-14-22-07.png": "2016-03-05T14:22:07",
    "Screenshot 2016-03-05 at 14.22.07.png": "2016-03-05T14:22:07",
    "2016-03-05 14.22.07.jpg": "2016-03-05T14:22:07",
    "PXL_20230704_150156326.jpg": "2023-07-04",
    "PXL_20230704_150156326.MP.jpg": "2023-07-04",
    "IMG-20160305-WA0001.jpg": "2016-03-05~",
    "2016-03-05 sill, left.jpg": "2016-03-05",
    "sill 2016.03.05.jpg": "2016-03-05",
    "20160305.jpg": "2016-03-05",
    "1975-08-12 when new.jpg": "1975-08-12",
    "20160305_992207.jpg": "2016-03-05",
}


@pytest.mark.parametrize(("name", "edtf"), NAMES.items())
def test_dates_in_names(name, edtf):
    """Common practice, no source."""
    candidate = name_candidate(name)
    assert candidate.when == parse_edtf(edtf)
    assert candidate.basis is Basis.FILE_NAME


@pytest.mark.parametrize(
    "name",
    ["IMG_0001.JPG", "DSC_3656.JPG", "P1010123.JPG", "20161305.jpg", "19840512.jpg",
     "120160305.jpg", "201603051.jpg", "photo.jpg", "2016.jpg", "", ".jpg", "2015-02-29.jpg"],
)  # fmt: skip
def test_names_without_a_date(name):
    assert name_candidate(name) is None


def camera(text, basis="DateTimeOriginal"):
    return exif_candidate(basis, text, "", "")


@pytest.mark.parametrize(
    ("text", "doubt"),
    [("2099:09:29 10:10:10", "future"), ("1975:06:01 10:00:00", "older"),
     ("1980:01:01 00:00:00", "older"), ("2000:01:01 00:00:00", "never set"),
     ("2012:01:01 00:00:41", "never set"), ("2005:01:01 12:00:00", "never set")],
)  # fmt: skip
def test_an_implausible_date_does_not_win(text, doubt):
    name = name_candidate("IMG_20160305_142207.jpg")
    assert choose([camera(text), name], NOW) == name
    assert doubt in weigh([camera(text)], NOW)[0].doubt


@pytest.mark.parametrize(
    "text", ["2001:01:01 01:11:11", "2016:01:01 12:00:01", "2026:06:02 10:00:00"]
)
def test_an_unusual_date_may_still_be_true(text):
    assert choose([camera(text)], NOW) == camera(text)


def test_trust_decides_and_the_order_of_the_tags_after_it():
    original = camera("2016:03:05 10:00:00")
    name = name_candidate("20160304_100000.jpg")
    digitised = camera("2016:03:06 10:00:00", "DateTimeDigitized")
    changed = camera("2016:03:07 10:00:00", "DateTime")
    file = file_time_candidate(datetime(2016, 3, 8))
    everything = [file, original, name, digitised, changed]
    for best in (original, name, digitised, changed, file):
        assert choose(everything, NOW) == best
        everything.remove(best)
    assert choose(everything, NOW) is None


def test_the_owners_word_always_wins():
    owner = DateCandidate(Basis.OWNER, "owner", "summer 1975", parse_edtf("1975-22"))
    assert choose([camera("2016:03:05 10:00:00"), owner], NOW) == owner


@given(st.text(max_size=40), st.text(max_size=10), st.text(max_size=10))
def test_any_text_in_a_tag_gives_a_candidate_that_says_what_is_wrong(text, subsec, offset):
    candidate = exif_candidate("DateTime", text, subsec, offset)
    assert (candidate.when is None) == bool(candidate.doubt)


@given(st.text(max_size=60) | st.text("IMGV_-. 0123456789", max_size=40))
def test_any_name_gives_a_real_date_or_none(name):
    candidate = name_candidate(name)
    if candidate:
        assert parse_edtf(candidate.when.edtf).earliest.date() == candidate.when.earliest.date()


@given(st.datetimes(datetime(1990, 1, 2), NOW + timedelta(hours=25)).filter(lambda d: d.day > 1))
def test_every_plausible_moment_survives_the_way_through_exif(moment):
    text = moment.strftime("%Y:%m:%d %H:%M:%S")
    chosen = choose([exif_candidate("DateTimeOriginal", text, f"{moment.microsecond:06}", "")], NOW)
    assert chosen.when.earliest == moment
