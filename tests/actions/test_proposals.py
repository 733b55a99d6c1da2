"""Proposals for photos of a journal: by pinned neighbours, kept features, and never a pin."""

import io
from datetime import datetime, timedelta

import pytest
from PIL import Image
from skimage import data

from journal.actions import drawings, history, photos, pins
from journal.actions.journals import open_journal
from journal.actions.proposals import proposals
from journal.domain.errors import Cancelled, JournalError
from journal.domain.ids import PhotoId
from journal.domain.when import When
from journal.vision.likeness import KIND
from tests.desktop.garage import new_photo

START = datetime(2016, 3, 5, 9, 30)
SCENES = {"coffee": data.coffee, "rocket": data.rocket, "cat": data.chelsea}


def thumb(scene, turn=0):
    image = Image.fromarray(SCENES[scene]()).rotate(-turn, expand=True)
    image.thumbnail((256, 256))
    content = io.BytesIO()
    image.save(content, "JPEG")
    return content.getvalue()


def add(session, *shots):
    """Photos of scenes at minutes after the start; a scene of None has no thumbnail."""
    first = session.journal.photos.count() + 1
    new = [
        new_photo(first + n, None if minute is None else When.at(START + timedelta(minutes=minute)))
        for n, (_, minute) in enumerate(shots)
    ]
    with session.journal.edit("Add photos"):
        ids = session.journal.photos.add(new)
    for photo, (scene, _) in zip(new, shots, strict=True):
        if scene:
            session.journal.previews.put(photo.sha256, thumb(scene), rough=False)
    return ids


@pytest.fixture
def sill(session):
    return drawings.find_panel(session, "Sill, left").id


@pytest.fixture
def roof(session):
    return drawings.find_panel(session, "Roof").id


def test_a_photo_minutes_later_of_the_same_look_goes_where_the_other_is(session, sill, roof):
    a, b, c = add(session, ("coffee", 0), ("rocket", 3), ("coffee", 20))
    pins.pin(session, [a], sill)
    pins.pin(session, [b], roof)
    first, second = proposals(session, [c])[c]
    assert (first.panel_id, first.nearest, first.alike) == (sill, a, a)
    assert first.apart == pytest.approx(20)
    assert first.likeness > 0.98
    assert second.panel_id == roof


def test_proposing_pins_nothing_and_changes_nothing(session, sill):
    a, b = add(session, ("coffee", 0), ("coffee", 4))
    pins.pin(session, [a], sill)
    before = history.edits(session)
    proposals(session, [b])
    assert [pin.photo_id for pin in pins.pins(session)] == [a]
    assert history.edits(session) == before


def test_with_nothing_pinned_there_is_nothing_to_go_by(session):
    (a,) = add(session, ("coffee", 0))
    assert proposals(session, [a]) == {a: ()}
    assert proposals(session, []) == {}


def test_features_are_kept_and_found_again(session, sill, monkeypatch):
    a, b = add(session, ("coffee", 0), ("cat", 4))
    pins.pin(session, [a], sill)
    made = proposals(session, [b])
    keys = [(photo.sha256, 0) for photo in photos.photos(session, [a, b])]
    assert set(session.journal.previews.features(KIND, keys)) == set(keys)
    monkeypatch.setattr("journal.vision.likeness.features", lambda _grey: pytest.fail("again"))
    assert proposals(session, [b]) == made


def test_a_journal_open_for_reading_proposes_as_well(session, sill):
    a, b = add(session, ("coffee", 0), ("coffee", 4))
    pins.pin(session, [a], sill)
    folder = session.folder
    session.close()
    with open_journal(folder, read_only=True) as reader:
        assert proposals(reader, [b])[b][0].panel_id == sill


def test_a_photo_turned_by_the_owner_looks_as_it_is_shown(session, sill, roof):
    a, b, c = add(session, ("coffee", 0), ("cat", 0), ("coffee", None))
    session.journal.previews.put(
        photos.photo(session, a).sha256, thumb("coffee", turn=270), rough=False
    )
    pins.pin(session, [a], sill)
    pins.pin(session, [b], roof)
    photos.turn(session, [a], 90)
    assert proposals(session, [c])[c][0].panel_id == sill
    assert proposals(session, [c])[c][0].likeness > 0.95


def test_without_pixels_time_alone_tells(session, sill, roof):
    a, b, c = add(session, (None, 0), (None, 500), (None, 20))
    pins.pin(session, [a], sill)
    pins.pin(session, [b], roof)
    first, _ = proposals(session, [c])[c]
    assert (first.panel_id, first.alike, first.likeness) == (sill, None, 0)


def test_photos_removed_from_the_journal_prove_nothing(session, sill):
    a, b = add(session, ("coffee", 0), ("coffee", 4))
    pins.pin(session, [a], sill)
    photos.remove_photos(session, [a])
    assert proposals(session, [b]) == {b: ()}


def test_a_number_that_is_no_photos_is_named(session):
    with pytest.raises(JournalError, match="99"):
        proposals(session, [PhotoId(99)])


def test_it_stops_when_asked_and_keeps_nothing_half_done(session, sill):
    class Stop:
        def report(self, done, total, label):
            pass

        def checkpoint(self):
            raise Cancelled

    a, b = add(session, ("coffee", 0), ("coffee", 4))
    pins.pin(session, [a], sill)
    with pytest.raises(Cancelled):
        proposals(session, [b], Stop())
    assert proposals(session, [b])[b][0].panel_id == sill
