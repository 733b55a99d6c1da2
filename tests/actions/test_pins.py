"""Pins moved, shifted and turned: one edit for each act, nothing lost, refused where unclear."""

import pytest

from journal.actions import drawings, history, pins
from journal.domain.errors import JournalError
from journal.domain.ids import PhotoId
from tests.desktop.garage import add_sittings


@pytest.fixture
def photos(session):
    (ids,) = add_sittings(session, 3)
    return ids


@pytest.fixture
def sill(session):
    return drawings.find_panel(session, "Sill, left").id


@pytest.fixture
def roof(session):
    return drawings.find_panel(session, "Roof").id


@pytest.fixture
def view(session):
    return drawings.views(session)[0].id


def of(session, photo):
    return pins.pins_of(session, photo)


def test_moving_pins_takes_them_from_the_panel_they_were_on(session, photos, sill, roof, view):
    pins.pin(session, photos, sill, view_id=view, x=10, y=20)
    pins.move_pins(session, [(p, sill) for p in photos[:2]], roof, view_id=view, spot=(30, 40))
    assert [(p.panel_id, p.x, p.y) for p in of(session, photos[0])] == [(roof, 30, 40)]
    assert [p.panel_id for p in of(session, photos[2])] == [sill]
    assert history.undo_label(session) == "Move 2 pins to Roof"
    history.undo(session)
    assert [(p.panel_id, p.x, p.y) for p in of(session, photos[1])] == [(sill, 10, 20)]


def test_another_pin_of_the_same_photo_stays(session, photos, sill, roof, view):
    wing = drawings.find_panel(session, "Front wing, left").id
    pins.pin(session, photos[:1], sill)
    pins.pin(session, photos[:1], wing)
    pins.move_pins(session, [(photos[0], sill)], roof)
    assert {p.panel_id for p in of(session, photos[0])} == {wing, roof}


def test_the_way_a_camera_faced_goes_along_on_its_view_alone(session, photos, sill, roof, view):
    other = drawings.views(session)[1].id
    pins.pin(session, photos[:1], sill, view_id=view, x=10, y=20, facing=90)
    pins.move_pins(session, [(photos[0], sill)], roof, view_id=view, spot=(1, 2))
    assert of(session, photos[0])[0].facing == 90
    pins.move_pins(session, [(photos[0], roof)], roof, view_id=other, spot=(1, 2))
    assert of(session, photos[0])[0].facing is None


def test_shifting_moves_by_millimetres_and_leaves_pins_without_a_spot(session, photos, sill, view):
    pins.pin(session, photos[:1], sill, view_id=view, x=10, y=20, facing=45)
    pins.pin(session, photos[1:2], sill)
    pins.shift_pins(session, [(photos[0], sill), (photos[1], sill)], 5, -7.5)
    first, second = of(session, photos[0])[0], of(session, photos[1])[0]
    assert (first.x, first.y, first.facing) == (15, 12.5, 45)
    assert second.x is None


@pytest.mark.parametrize(
    ("given", "kept"), [(30.0, 30), (360.0, 0), (-90.0, 270), (725.0, 5), (None, None)]
)
def test_a_camera_is_turned_round_the_compass(session, photos, sill, view, given, kept):
    pins.pin(session, photos[:1], sill, view_id=view, x=10, y=20, facing=200)
    pins.face_pins(session, [(photos[0], sill)], given)
    (turned,) = of(session, photos[0])
    assert (turned.facing, turned.x, turned.y) == (kept, 10, 20)


def test_a_pin_without_a_spot_is_turned_on_the_one_given_or_refused(session, photos, sill, view):
    pins.pin(session, photos[:2], sill)
    pins.face_pins(session, [(photos[0], sill)], 90, view_id=view, spot=(7, 8))
    (turned,) = of(session, photos[0])
    assert (turned.view_id, turned.x, turned.y, turned.facing) == (view, 7, 8, 90)
    with pytest.raises(JournalError, match="has no spot on the drawing"):
        pins.face_pins(session, [(photos[1], sill)], 90)
    assert of(session, photos[1])[0].facing is None


def test_a_pin_that_is_not_there_is_named_and_nothing_moves(session, photos, sill, roof):
    pins.pin(session, photos[:1], sill)
    with pytest.raises(JournalError, match="Photo number 2 has no pin on Sill, left"):
        pins.move_pins(session, [(photos[0], sill), (PhotoId(2), sill)], roof)
    assert of(session, photos[0])[0].panel_id == sill
