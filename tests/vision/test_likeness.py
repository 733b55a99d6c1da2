"""Histograms of oriented gradients: by hand on small pictures, and beside scikit-image's."""

import io

import numpy as np
import pytest
from PIL import Image
from skimage import data
from skimage.feature import hog
from skimage.transform import resize

from journal.vision.likeness import (
    LENGTH,
    SIDE,
    features,
    histograms,
    likeness,
    pack,
    small_grey,
    unpack,
    unpack_all,
)


def square(picture):
    grey = picture if picture.ndim == 2 else picture @ np.array([0.299, 0.587, 0.114])
    return np.rint(resize(grey, (SIDE, SIDE), anti_aliasing=True, preserve_range=True))


def alike(one, other):
    return float(likeness(features(one), unpack_all([pack(features(other))]))[0])


def jpeg(grey):
    content = io.BytesIO()
    Image.fromarray(grey).save(content, "JPEG", quality=95)
    return content.getvalue()


def test_a_plain_picture_has_no_edges():
    assert not histograms(np.full((SIDE, SIDE), 90, np.uint8)).any()


def test_an_upright_edge_counts_as_a_gradient_across_in_its_own_cells_alone():
    picture = np.zeros((SIDE, SIDE), np.uint8)
    picture[:, 40:] = 100
    cells = histograms(picture)
    # Columns 39 and 40 see a step of 10 (the root of 100), in cell 2; direction 0 lies half
    # between the first and the last of nine bins.
    assert cells[3, 2] == pytest.approx([160, 0, 0, 0, 0, 0, 0, 0, 160])
    assert not np.delete(cells, 2, axis=1).any()


def test_an_edge_of_45_degrees_falls_into_the_bin_around_45():
    down, across = np.mgrid[:SIDE, :SIDE]
    picture = np.where(across + down < SIDE, 0, 225).astype(np.uint8)
    counts = histograms(picture).sum(axis=(0, 1))
    assert counts.argmax() == 2
    assert counts[1:3].sum() > 0.9 * counts.sum()


@pytest.mark.parametrize("name", ["astronaut", "coffee", "camera", "chelsea", "rocket", "coins"])
def test_histograms_agree_with_scikit_image(name):
    picture = square(getattr(data, name)())
    theirs = hog(
        picture,
        orientations=9,
        pixels_per_cell=(16, 16),
        cells_per_block=(2, 2),
        transform_sqrt=True,
        feature_vector=False,
    )
    assert theirs.size == LENGTH
    # Theirs sorts a block's cells by place, then direction, and gives each edge to one bin whole.
    ours = features(picture).reshape(7, 7, 2, 2, 9)
    assert np.corrcoef(ours.ravel(), theirs.ravel())[0, 1] > 0.85
    summed = np.corrcoef(ours.sum(axis=(0, 1, 2, 3)), theirs.sum(axis=(0, 1, 2, 3)))
    assert summed[0, 1] > 0.9


def test_light_and_paint_change_little_and_another_picture_much():
    coffee = square(data.coffee())
    assert alike(coffee, coffee) == pytest.approx(1, abs=1e-3)
    assert alike(coffee, coffee * 0.6 + 30) > 0.9
    assert alike(coffee, 255 - coffee) > 0.8
    assert alike(coffee, square(data.astronaut())) < 0.75


def test_what_is_kept_comes_back_nearly_as_it_was():
    found = features(square(data.camera()))
    again = unpack(pack(found))
    assert len(pack(found)) == LENGTH
    assert np.abs(again - found).max() <= 0.5 / 255 + 1e-6
    assert unpack(b"of another kind") is None


def test_a_thumbnail_is_made_a_grey_square_turned_as_the_owner_turned_it():
    picture = np.zeros((100, 200), np.uint8)
    picture[:, 150:] = 255
    upright = small_grey(jpeg(picture))
    assert upright.shape == (SIDE, SIDE)
    assert upright[:, 100:].min() > 240
    assert upright[:, :90].max() < 15
    assert small_grey(jpeg(picture), 90)[100:].min() > 240
    assert small_grey(jpeg(picture), 270)[:28].min() > 240


def test_what_is_no_picture_looks_like_nothing():
    assert small_grey(b"") is None
    assert small_grey(b"\xff\xd8\xff\xe0 and no more") is None
    assert small_grey(jpeg(np.zeros((50, 50), np.uint8))[:200]) is None


def test_what_was_not_kept_is_like_nothing():
    one = features(square(data.camera()))
    rows = unpack_all([pack(one), None, b"of another kind"])
    assert rows.shape == (3, LENGTH)
    assert likeness(one, rows) == pytest.approx([1, 0, 0], abs=1e-3)
    assert unpack_all([]).shape == (0, LENGTH)
