"""Pairs: found, kept, turned, taken away, proposed, pictured and given away."""

import io
from dataclasses import replace

import numpy as np
import pytest
from PIL import Image

from journal.actions import areas, covers, history, pairs, photos
from journal.actions.pair_pictures import SheetLook, export_pair, pair_pictures, pair_sheet
from journal.actions.pair_proposals import propose_all, propose_pairs
from journal.actions.pictures import original_path
from journal.domain.errors import JournalError
from journal.domain.homographies import mapped
from journal.domain.pairs import SIDE_BY_SIDE, Fit, How, PointPair, in_pixels
from journal.domain.photos import Role
from journal.domain.private_words import Private
from journal.domain.shapes import Point
from tests.actions.paired import MOVED, SIZE, paired


@pytest.fixture
def known(session, tmp_path):
    return paired(session, tmp_path / "card")


def fit_of(session, first, last) -> Fit:
    found = pairs.find_fit(session, photos.photo(session, first), photos.photo(session, last))
    assert found is not None
    return found


def kept(session, known, caption="") -> pairs.Pair:
    area, first, last, _ = known
    pairs.keep_pair(session, area, first, last, fit_of(session, first, last), caption)
    return pairs.area_pairs(session, area)[0]


def pixels(picture):
    return np.frombuffer(picture.rgb, np.uint8).reshape(picture.height, picture.width, 3)


def likeness(one, other) -> float:
    """The share of pixels that are nearly alike."""
    return float((np.abs(pixels(one).astype(int) - pixels(other)).max(axis=2) < 40).mean())


def test_a_fit_that_was_found_is_the_one_the_camera_moved_by(session, known):
    _, first, last, other = known
    fit = fit_of(session, first, last)
    assert fit.how is How.FOUND
    back = in_pixels(fit.matrix, SIZE, SIZE)
    x, y, w = MOVED @ np.array([200.0, 100.0, 1.0])
    assert mapped(back, (x / w, y / w)) == pytest.approx((200, 100), abs=1.0)
    assert pairs.find_fit(session, *photos.photos(session, [first, other])) is None


def test_a_pair_is_kept_changed_and_undone_by_name(session, known):
    area, first, last, other = known
    pair = kept(session, known, "  The sill, cut and let in.  ")
    assert pair.caption == "The sill, cut and let in."
    assert (pair.fit.inliers or 0) >= 20
    pairs.keep_pair(session, area, first, last, SIDE_BY_SIDE)
    assert [one.fit for one in pairs.area_pairs(session, area)] == [SIDE_BY_SIDE]
    assert "Keep a before and after" in history.undo(session).label
    assert pairs.area_pairs(session, area) == (pair,)
    pairs.keep_pair(session, area, first, other)
    one, two = pairs.area_pairs(session, area)
    pairs.order_pairs(session, area, [two.id, one.id])
    assert [row.id for row in pairs.area_pairs(session, area)] == [two.id, one.id]
    with pytest.raises(JournalError, match="every pair"):
        pairs.order_pairs(session, area, [two.id])
    pairs.remove_pair(session, one.id)
    assert [row.id for row in pairs.pairs(session)] == [two.id]
    history.undo(session)
    pairs.set_pair_caption(session, one.id, "Again")
    assert pairs.pair(session, one.id).caption == "Again"
    assert [row.name for _, row in pairs.photo_pairs(session, last)] == ["Sill, left"]


def test_a_pair_of_photos_not_chosen_yet_chooses_them(session, known):
    area, first, last, other = known
    areas.unchoose_photos(session, area, [first, last, other])
    pairs.keep_pair(session, area, first, last)
    roles = {row.photo_id: row.role for row in session.journal.areas.photos_of(area)}
    assert roles == {first: Role.BEFORE, last: Role.AFTER}


def test_what_is_no_pair_is_refused_in_words(session, known):
    area, first, last, _ = known
    with pytest.raises(JournalError, match="one and the same"):
        pairs.keep_pair(session, area, first, first)
    far = Fit(How.BY_HAND, (1.0, 0.0, 3.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0))
    with pytest.raises(JournalError, match="nothing in common"):
        pairs.keep_pair(session, area, first, last, far)
    with pytest.raises(JournalError, match="20,001 signs"):
        pairs.keep_pair(session, area, first, last, caption="x" * 20_001)
    with pytest.raises(JournalError):
        pairs.keep_pair(session, area, first, pairs.PhotoId(999))
    assert pairs.pairs(session) == ()


def test_both_pictures_show_one_frame_pixel_for_pixel(session, known):
    pair = kept(session, known)
    before, after = pair_pictures(session, pair, 400)
    assert (before.width, before.height) == (after.width, after.height)
    assert max(before.width, before.height) <= 400
    assert likeness(before, after) > 0.75
    flat = replace(pair, fit=SIDE_BY_SIDE)
    whole = pair_pictures(session, flat, 300)
    assert [(one.width, one.height) for one in whole] == [(300, 225), (300, 225)]


@pytest.mark.parametrize("which", [1, 2])
def test_a_photo_turned_later_still_lies_right(session, known, which):
    pair = kept(session, known)
    photos.turn(session, [known[which]], 90)
    before, after = pair_pictures(session, pair, 400)
    assert likeness(before, after) > 0.75
    assert (before.height > before.width) == (which == 1)


def test_points_shown_by_hand_follow_the_turn_of_the_photo(session, known):
    _, first, last, _ = known
    both = photos.photos(session, [first, last])
    points = []
    for x, y in ((60, 50), (400, 60), (390, 300), (70, 290), (230, 60), (240, 300)):
        u, v, w = MOVED @ np.array([x, y, 1.0])
        points.append(
            PointPair(Point(x / SIZE[0], y / SIZE[1]), Point(u / w / SIZE[0], v / w / SIZE[1]))
        )
    fit = pairs.fit_by_hand(*both, points)
    assert fit.how is How.BY_HAND
    assert fit.error_px == pytest.approx(0, abs=1e-6)
    photos.turn(session, [last], 180)
    turned = photos.photos(session, [first, last])
    shown = pairs.shown_points(*turned, fit)
    assert shown[0].before == pytest.approx(points[0].before)
    assert shown[0].after == pytest.approx([1 - share for share in points[0].after])
    again = pairs.fit_by_hand(*turned, shown)
    assert again.matrix == pytest.approx(fit.matrix)
    with pytest.raises(JournalError, match="needs 4 points"):
        pairs.fit_by_hand(*both, points[:3])


def test_a_removed_photo_takes_its_pair_away_until_it_is_back(session, known):
    area, _, last, _ = known
    pair = kept(session, known)
    photos.remove_photos(session, [last])
    assert pairs.area_pairs(session, area) == ()
    with pytest.raises(JournalError, match="was removed"):
        pairs.pair(session, pair.id)
    photos.bring_back_photos(session, [last])
    assert pairs.area_pairs(session, area) == (pair,)
    areas.remove_area(session, area)
    assert pairs.pairs(session) == ()
    history.undo(session)
    assert pairs.pairs(session) == (pair,)


def test_a_missing_original_is_named(session, known):
    pair = kept(session, known)
    path = original_path(session, photos.photo(session, pair.after_id))
    path.chmod(0o600)
    path.unlink()
    with pytest.raises(JournalError, match=r"“after\.jpg” can't be shown"):
        pair_pictures(session, pair)
    with pytest.raises(JournalError, match=r"after\.jpg"):
        pair_sheet(session, pair)
    assert len(propose_pairs(session, pair.area_id)) == 1


def test_what_is_covered_is_covered_before_it_is_laid(session, known):
    pair = kept(session, known)
    last = photos.photo(session, pair.after_id)
    covers.add_cover(session, last, (0.4, 0.4, 0.2, 0.2), Private.PLATE)
    photos.turn(session, [last.id], 90)
    boxes = covers.all_covers(session)
    _, bare = pair_pictures(session, pair, 480)
    _, covered = pair_pictures(session, pair, 480, boxes)
    grey = (pixels(covered) == 96).all(axis=2)
    assert 0.03 < grey.mean() < 0.1
    rows, columns = np.where(grey)
    middle = pixels(covered)[
        rows.min() + 12 : rows.max() - 12, columns.min() + 12 : columns.max() - 12
    ]
    assert (middle == 96).all()
    assert not (pixels(bare) == 96).all(axis=2).any()


@pytest.mark.parametrize("look", list(SheetLook))
@pytest.mark.parametrize("name", ["pair.jpg", "pair.png"])
def test_a_pair_is_given_away_as_one_picture_without_metadata(session, known, tmp_path, look, name):
    pair = kept(session, known, "<b>#let x</b> “quotes” & \\ signs")
    made = export_pair(session, pair, tmp_path / name, look, 900)
    data = made.read_bytes()
    with Image.open(io.BytesIO(data)) as image:
        assert image.width > image.height * (1.1 if look is SheetLook.DIVIDED else 1.8)
        assert not image.getexif()
        assert image.format == ("PNG" if name.endswith("png") else "JPEG")
    for word in (b"Corvid", b"2018:04:14", b"Exif"):
        assert word not in data


def test_a_picture_of_a_pair_goes_where_it_can_only(session, known, tmp_path):
    pair = kept(session, known)
    with pytest.raises(JournalError, match="inside the journal"):
        export_pair(session, pair, session.folder / "pair.jpg")
    (tmp_path / "link").symlink_to(session.folder / "originals")
    with pytest.raises(JournalError, match="inside the journal"):
        export_pair(session, pair, tmp_path / "link" / "pair.jpg")
    with pytest.raises(JournalError, match=r"\.jpg or a \.png"):
        export_pair(session, pair, tmp_path / "pair.tiff")
    (tmp_path / "file").write_text("")
    with pytest.raises(JournalError, match="can't be written"):
        export_pair(session, pair, tmp_path / "file" / "pair.jpg")
    with pytest.raises(JournalError, match="side by side alone"):
        pair_sheet(session, replace(pair, fit=SIDE_BY_SIDE), SheetLook.DIVIDED)


def test_photos_of_one_view_are_proposed_and_nothing_is_kept(session, known):
    area, first, last, _ = known
    (best,) = propose_pairs(session, area)
    assert (best.before_id, best.after_id) == (first, last)
    assert best.fit is not None
    assert pairs.pairs(session) == ()
    assert [rows[0].area_id for rows in propose_all(session)] == [area]
    pairs.keep_pair(session, area, first, last, best.fit)
    (left,) = propose_pairs(session, area)
    assert left.fit is None, "only a pair that can't be laid is left"
    assert propose_all(session) == ()
    areas.unchoose_photos(session, area, [first])
    assert propose_pairs(session, area) == ()
