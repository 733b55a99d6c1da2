import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.files.names import LONGEST, one_on_any_disk, safe_name, safe_suffix, shown_name

any_name = st.text(st.characters(codec=None), max_size=400)

#: RFC 8493, section 6.1.2: device names and characters that Windows forbids.
WINDOWS_FORBIDS = '<>:"/\\|?*'


@given(any_name, st.integers(20, LONGEST))
def test_a_safe_name_is_allowed_everywhere(name, longest):
    safe = safe_name(name, longest=longest)
    assert safe
    assert len(safe.encode("utf-8")) <= longest
    assert not set(safe) & set(WINDOWS_FORBIDS)
    assert not any(ord(c) < 32 or ord(c) == 127 for c in safe)
    assert safe.strip(". ")
    assert not safe.endswith((".", " "))
    assert safe == unicodedata.normalize("NFC", safe)
    assert safe_name(safe, longest=longest) == safe


@pytest.mark.parametrize(
    "device", ["CON", "prn", "Aux", "NUL", "COM1", "lpt9", "con.jpg", "NUL.a.b"]
)
def test_the_devices_of_windows_are_no_names(device):
    assert safe_name(device) == "_" + device


@pytest.mark.parametrize(
    "name", ["console.jpg", "COM10", "nullify.png", "Sill, left.jpg", "Türe.heic"]
)
def test_good_names_stay(name):
    assert safe_name(name) == name


def test_ten_thousand_characters_are_cut_and_the_suffix_kept():
    assert safe_name("ä" * 10_000 + ".JPG").endswith(".jpg")
    assert len(safe_name("ä" * 10_000 + ".JPG").encode()) <= LONGEST


def test_a_name_that_is_not_utf_8_can_be_shown():
    name = b"Schweller_\xfc.jpg".decode("utf-8", "surrogateescape")
    shown = shown_name(name)
    shown.encode("utf-8")
    assert shown.startswith("Schweller_")
    assert shown.endswith(".jpg")
    assert safe_name(name) == "Schweller__.jpg"


@pytest.mark.parametrize(
    ("name", "suffix"),
    [
        ("IMG_0001.JPG", ".jpg"),
        ("a.b.HEIC", ".heic"),
        ("noextension", ""),
        (".jpg", ""),
        ("photo.jp g", ""),
        ("photo.ünïcode", ""),
        ("photo." + "x" * 50, ""),
        ("folder.jpg/file", ""),
    ],
)
def test_the_suffix_that_an_original_keeps(name, suffix):
    assert safe_suffix(name) == suffix


def test_one_name_in_two_normal_forms_or_cases_is_one():
    # RFC 8493, section 6.1.1: U+00FA against U+0075 U+0301.
    assert one_on_any_disk("\u00fa.jpg") == one_on_any_disk("u\u0301.JPG")
    assert one_on_any_disk("a.jpg") != one_on_any_disk("b.jpg")
