"""Thumbnails come in the order they are wanted and take no more memory than allowed."""

import json

import pytest
from PySide6.QtCore import QMimeData

from journal.desktop.tasks import TaskRunner
from journal.desktop.widgets.photo_drag import PHOTOS_MIME, photos_from_mime, photos_to_mime
from journal.desktop.widgets.thumbs import ThumbCache, decode
from tests.desktop.photo_fakes import fake_load, fake_photo, jpeg


@pytest.fixture
def runner(qtbot):
    made = TaskRunner()
    yield made
    made.close()


def test_wanted_photos_arrive_scaled_into_their_box(qtbot, runner):
    cache = ThumbCache(fake_load, runner)
    with qtbot.waitSignal(cache.arrived) as told:
        cache.want([1, 4, 29], 160)
    assert told.args == [(1, 4, 29)]
    assert cache.card(1).pixmap.size().toTuple() == (160, 120)
    assert cache.card(4).pixmap.size().toTuple() == (90, 120)
    assert cache.card(29).pixmap is None
    assert cache.card(29).photo == fake_photo(29)


def test_the_memory_stays_under_its_limit_and_the_latest_stay(qtbot, runner):
    cache = ThumbCache(fake_load, runner, budget=2_000_000)
    for first in range(1, 200, 20):
        wanted = list(range(first, first + 20))
        cache.want(wanted, 160)
        qtbot.waitUntil(lambda ids=wanted: all(cache.card(i) for i in ids))
        assert cache.bytes_held <= 2_000_000
    assert cache.card(1) is None
    assert cache.card(200) is not None


def test_what_is_no_longer_wanted_is_not_read(qtbot, runner):
    read = []

    def load(ids):
        read.extend(ids)
        return fake_load(ids)

    cache = ThumbCache(load, runner)
    cache.want(range(1, 1000), 160)
    cache.want(range(5000, 5010), 160)
    qtbot.waitUntil(lambda: cache.card(5009) is not None)
    assert len([photo for photo in read if photo < 1000]) <= 24


def test_another_size_is_read_again_and_the_old_one_shows_meanwhile(qtbot, runner):
    cache = ThumbCache(fake_load, runner)
    with qtbot.waitSignal(cache.arrived):
        cache.want([1], 160)
    cache.want([1], 96)
    assert cache.card(1).edge == 160
    qtbot.waitUntil(lambda: cache.card(1).edge == 96)
    assert cache.card(1).pixmap.width() == 96


def test_stale_cards_are_read_again(qtbot, runner):
    turn = iter(("first", "second"))

    def load(ids):
        caption = next(turn)
        return [(fake_photo(i, caption=caption), jpeg(1)) for i in ids]

    cache = ThumbCache(load, runner)
    with qtbot.waitSignal(cache.arrived):
        cache.want([1], 160)
    cache.mark_stale()
    assert cache.card(1).photo.caption == "first"
    with qtbot.waitSignal(cache.arrived):
        cache.want([1], 160)
    assert cache.card(1).photo.caption == "second"


def test_a_failed_read_does_not_stop_the_next(qtbot, runner):
    def load(ids):
        if 1 in ids:
            raise OSError("card pulled out")
        return fake_load(ids)

    cache = ThumbCache(load, runner)
    cache.want([1], 160)
    cache.want([2], 160)
    qtbot.waitUntil(lambda: cache.card(2) is not None)
    assert cache.card(1) is None


@pytest.mark.parametrize("data", [None, b"", b"no picture at all"])
def test_what_is_no_picture_is_no_image(data):
    assert decode(data, 160) is None


def test_photos_travel_as_a_list_of_numbers():
    data = photos_to_mime([3, 1, 2])
    assert json.loads(bytes(data.data(PHOTOS_MIME).data())) == [3, 1, 2]
    assert photos_from_mime(data) == (3, 1, 2)


@pytest.mark.parametrize("payload", [b"", b"{", b'{"a": 1}', b'["x", null, true]', b"\xff\xfe"])
def test_a_drag_of_nonsense_carries_no_photos(payload):
    data = QMimeData()
    data.setData(PHOTOS_MIME, payload)
    assert photos_from_mime(data) == ()
