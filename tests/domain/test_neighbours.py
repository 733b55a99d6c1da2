from datetime import datetime, timedelta

import pytest

from journal.domain.neighbours import WIDEST, Numbered, counter, from_neighbours
from journal.domain.photos import Basis
from journal.domain.when import When

DAY = datetime(2016, 3, 5, 10, 0)


def photo(number, when=None, camera="Rook Optical 1", basis=Basis.CAMERA, group="card/IMG_"):
    name = f"IMG_{number:04}.JPG"
    known = When.at(when) if when else None
    return Numbered(number, name, group, number, camera, known, basis if when else Basis.UNKNOWN)


def test_an_undated_photo_lies_between_its_dated_neighbours():
    later = DAY + timedelta(days=2)
    found = from_neighbours([photo(5), photo(7, later), photo(3, DAY), photo(9)])
    assert set(found) == {5}
    candidate = found[5]
    assert (candidate.when.earliest, candidate.when.latest) == (DAY, later)
    assert candidate.when.edtf == "2016-03-05/2016-03-07"
    assert candidate.basis is Basis.NEIGHBOURS
    assert candidate.source == "between IMG_0003.JPG and IMG_0007.JPG"


def test_neighbours_of_one_day_give_that_day_and_the_hours_between():
    found = from_neighbours([photo(3, DAY), photo(4), photo(5, DAY + timedelta(minutes=5))])
    assert found[4].when.edtf == "2016-03-05"
    assert found[4].when.latest == DAY + timedelta(minutes=5)


@pytest.mark.parametrize(
    "others",
    [
        [photo(3, DAY)],
        [photo(5, DAY)],
        [photo(3, DAY), photo(5, DAY - timedelta(seconds=1))],
        [photo(3, DAY), photo(5, DAY + WIDEST + timedelta(seconds=1))],
        [photo(3, DAY), photo(5, DAY, camera="another")],
        [photo(3, DAY, group="x"), photo(5, DAY)],
        [photo(3, DAY, basis=Basis.FILE_TIME), photo(5, DAY)],
    ],
    ids=["none above", "none below", "counter started again", "too far apart", "two cameras",
         "two folders", "badly dated"],
)  # fmt: skip
def test_without_two_trusted_neighbours_nothing_is_said(others):
    assert 4 not in from_neighbours([photo(4), *others])


def test_a_photo_of_another_camera_is_left_alone():
    undated = photo(4, camera="another")
    assert not from_neighbours([photo(3, DAY), undated, photo(5, DAY)])


def test_a_weaker_date_between_the_neighbours_is_more_exact_and_stays():
    end = DAY + timedelta(hours=2)
    inside = photo(4, DAY + timedelta(hours=1), basis=Basis.FILE_TIME)
    outside = photo(5, DAY + timedelta(days=900), basis=Basis.FILE_TIME)
    found = from_neighbours([photo(3, DAY), inside, outside, photo(6, end)])
    assert set(found) == {5}


@pytest.mark.parametrize(
    ("name", "expected"),
    [("IMG_0001.JPG", ("IMG_", 1)), ("DSCN9999.jpg", ("DSCN", 9999)),
     ("_DSC6099.nef", ("_DSC", 6099)),
     ("P1010123.JPG", ("P101", 123)), ("img_0042.jpg", ("IMG_", 42)), ("IMG_0000.JPG", None),
     ("IMG_00012.JPG", None), ("IMG_0001 (2).JPG", None), ("IMG_20160305_142207.jpg", None),
     ("photo.jpg", None), ("IMG_0001", None)],
)  # fmt: skip
def test_names_that_carry_a_counter(name, expected):
    """DCF (CIPA DC-009): four characters and four digits from 0001 to 9999."""
    assert counter(name) == expected
