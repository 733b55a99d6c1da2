"""Bursts among a journal's photos, by what their thumbnails show."""

import cv2
import pytest

from journal.actions import bursts, photos
from journal.actions.add_photos import add_photos
from tests.actions.paired import blots, write


@pytest.fixture
def card(session, tmp_path):
    """Three photos of one view within seconds, the second the sharpest, then another view."""
    folder = tmp_path / "card"
    folder.mkdir()
    view = blots(1)
    shots = [cv2.GaussianBlur(view, (0, 0), 4), view, cv2.GaussianBlur(view, (0, 0), 2), blots(5)]
    paths = [
        write(folder / f"IMG_{n}.jpg", shot, f"2018:04:14 10:00:{2 * n:02}")
        for n, shot in enumerate(shots)
    ]
    added = {row.path: row.photo_id for row in add_photos(session, paths).added}
    return [added[path] for path in paths]


def test_a_burst_is_gathered_and_its_sharpest_proposed(session, card):
    (found,) = bursts.bursts(session)
    assert found.photo_ids == tuple(card[:3])
    (looked,) = bursts.sharpest(session, [found])
    assert looked.best == card[1]
    assert bursts.bursts(session) == (looked,), "what was looked at is known the next time"
    photos.turn(session, card[:3], 90)
    assert bursts.bursts(session)[0].best == card[1]


def test_a_burst_is_never_thinned_by_the_program(session, card):
    bursts.sharpest(session, bursts.bursts(session))
    assert session.journal.photos.count() == 4
    photos.remove_photos(session, card[:2])
    assert bursts.bursts(session) == ()


def test_photos_that_look_the_same_are_gathered_from_anywhere(session, card, tmp_path):
    copy = write(tmp_path / "copy.jpg", blots(1)[:, :], "2019:01:01 09:00:00")
    copy.write_bytes(copy.read_bytes() + b" ")
    (added,) = add_photos(session, [copy]).added
    assert any({card[1], added.photo_id} <= set(group) for group in bursts.near_copies(session))
    assert not any(card[3] in group for group in bursts.near_copies(session))
