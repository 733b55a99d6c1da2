"""A picture laid under a view: kept, placed, squared up, scaled, taken away, all undoable."""

import math
from pathlib import Path

import pytest
from PIL import Image

from journal.actions import drawings, history
from journal.actions.journals import open_journal
from journal.actions.photos import clear_out_removed, turn
from journal.actions.session import Session
from journal.actions.tracing import (
    flat_underlay,
    lay_photo_under,
    lay_under,
    scale_underlay,
    set_underlay,
    square_up_underlay,
    take_underlay,
    underlay,
    underlay_picture,
    underlay_size,
    underlays,
)
from journal.domain.errors import JournalError
from journal.domain.homographies import mapped
from journal.domain.ids import ViewId
from journal.store.originals import recorded_path


@pytest.fixture
def sketch(tmp_path: Path) -> Path:
    path = tmp_path / "side sketch.png"
    image = Image.new("RGB", (600, 300), "white")
    image.paste((200, 0, 0), (0, 0, 300, 300))
    image.save(path)
    return path


def first(session: Session) -> ViewId:
    return drawings.views(session)[0].id


def test_a_picture_is_kept_as_an_original_and_lies_in_the_middle(session, sketch):
    view = drawings.views(session)[0]
    changes = lay_under(session, view.id, sketch)
    assert "drawing" in changes.kinds
    found = underlay(session, view.id)
    kept = recorded_path(session.journal, found.sha256)
    assert kept.read_bytes() == sketch.read_bytes()
    assert underlay_size(session, found.sha256) == (600, 300)
    assert mapped(found.matrix, (300, 150)) == pytest.approx((view.width / 2, view.height / 2))
    corners = [mapped(found.matrix, corner) for corner in ((0, 0), (600, 300))]
    assert min(corners[0]) >= -0.01
    assert corners[1].x <= view.width + 0.01
    assert corners[1].y <= view.height + 0.01


def test_one_undo_takes_it_away_and_redo_lays_it_again(session, sketch):
    lay_under(session, first(session), sketch)
    before = underlays(session)
    history.undo(session)
    assert underlays(session) == ()
    history.redo(session)
    assert underlays(session) == before


def test_a_photo_of_the_journal_lies_as_its_owner_turned_it(session, tmp_path):
    from journal.actions.add_photos import add_photos

    path = tmp_path / "IMG_1.jpg"
    image = Image.new("RGB", (400, 200), "white")
    image.paste((200, 0, 0), (0, 0, 200, 200))
    image.save(path)
    (added,) = add_photos(session, [path]).added
    turn(session, [added.photo_id], 90)
    view = drawings.views(session)[0]
    lay_photo_under(session, view.id, added.photo_id)
    found = underlay(session, view.id)
    left, right = mapped(found.matrix, (0, 100)), mapped(found.matrix, (400, 100))
    assert left.x == pytest.approx(right.x)
    assert left.y < right.y
    assert left.y == pytest.approx(0)


def test_squaring_up_and_scaling_place_it_true_to_the_millimetre(session, sketch):
    view = first(session)
    lay_under(session, view, sketch)
    corners = [(50, 40), (550, 60), (540, 260), (45, 250)]
    square_up_underlay(session, view, corners, 2600, 1000, at=(300, 200))
    matrix = underlay(session, view).matrix
    assert mapped(matrix, (50, 40)) == pytest.approx((300, 200), abs=0.01)
    assert mapped(matrix, (540, 260)) == pytest.approx((2900, 1200), abs=0.01)
    scale_underlay(session, view, (100, 100), (400, 200), 900)
    matrix = underlay(session, view).matrix
    assert math.dist(mapped(matrix, (100, 100)), mapped(matrix, (400, 200))) == pytest.approx(900)


@pytest.mark.parametrize(
    ("corners", "size", "says"),
    [
        ([(0, 0), (10, 10), (20, 20), (0, 20)], (100, 100), "one line"),
        ([(0, 0), (20, 20), (20, 0), (0, 20)], (100, 100), "cross"),
        ([(0, 0), (20, 0), (20, 20), (0, 20)], (0, 100), "more than nothing"),
    ],
)
def test_a_refusal_leaves_it_where_it_was(session, sketch, corners, size, says):
    view = first(session)
    lay_under(session, view, sketch)
    before, undo = underlays(session), history.undo_label(session)
    with pytest.raises(JournalError, match=says):
        square_up_underlay(session, view, corners, *size)
    with pytest.raises(JournalError, match="more than nothing"):
        scale_underlay(session, view, (0, 0), (10, 0), 0)
    with pytest.raises(JournalError, match="from 0 to 1"):
        set_underlay(session, view, strength=1.5)
    with pytest.raises(JournalError, match="flattened"):
        set_underlay(session, view, matrix=(1, 2, 3, 2, 4, 6, 0, 0, 1))
    assert underlays(session) == before
    assert history.undo_label(session) == undo


def test_it_is_faded_hidden_and_taken_away(session, sketch):
    view = first(session)
    lay_under(session, view, sketch)
    set_underlay(session, view, strength=0.2)
    set_underlay(session, view, shown=False)
    found = underlay(session, view)
    assert (found.strength, found.shown) == (0.2, False)
    assert history.undo_label(session).startswith("Hide the picture")
    take_underlay(session, view)
    assert underlay(session, view) is None
    with pytest.raises(JournalError, match="No picture lies under"):
        take_underlay(session, view)


def test_what_is_no_picture_is_refused_and_not_kept(session, tmp_path):
    text = tmp_path / "notes.png"
    text.write_text("no picture")
    for file in (text, tmp_path / "missing.png", tmp_path):
        with pytest.raises(JournalError, match="can't be laid under a view") as refusal:
            lay_under(session, first(session), file)
        assert file.name in str(refusal.value)
    assert underlays(session) == ()
    assert list((session.folder / "originals").glob("??/*")) == []


def test_clearing_out_leaves_a_picture_under_a_view(session, sketch, monkeypatch):
    sent = []
    monkeypatch.setattr("journal.actions.photos.to_trash", sent.append)
    lay_under(session, first(session), sketch)
    assert clear_out_removed(session) == 0
    assert sent == []
    take_underlay(session, first(session))
    assert clear_out_removed(session) == 1


def test_the_sheet_is_shown_with_the_picture_on_it(session, sketch):
    view = drawings.views(session)[0]
    lay_under(session, view.id, sketch)
    found = underlay(session, view.id)
    assert underlay_picture(session, found.sha256, 100).width == 100
    flat = flat_underlay(session, found, 400)
    image = Image.frombytes("RGB", (flat.width, flat.height), flat.rgb)
    assert max(image.size) == 400
    middle = image.height // 2
    assert image.getpixel((image.width // 2 - 40, middle)) == pytest.approx((200, 0, 0), abs=3)
    assert image.getpixel((image.width // 2 + 40, middle)) == (255, 255, 255)


def test_a_journal_open_for_reading_takes_no_picture(session, sketch):
    refused = pytest.raises(JournalError, match="No picture can be laid")
    with open_journal(session.folder, read_only=True) as other, refused:
        lay_under(other, first(other), sketch)
