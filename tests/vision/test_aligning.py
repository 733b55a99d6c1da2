"""Laying one photo over another, against warps of known truth and published matrices."""

import math
from itertools import combinations
from pathlib import Path

import cv2
import numpy as np
import pytest
import skimage.data
from PIL import Image

from journal.domain.errors import JournalError
from journal.domain.homographies import mapped
from journal.vision.aligning import FEWEST, features, is_plausible, lay, lay_by_hand

_SIDE = 800

#: H1to3 of the Oxford "graffiti" set (Mikolajczyk and Schmid), as in OpenCV's samples/data.
GRAFFITI_1_TO_3 = (
    7.6285898e-01, -2.9922929e-01, 2.2567123e02,
    3.3443473e-01, 1.0143901e00, -7.6999973e01,
    3.4663091e-04, -1.4364524e-05, 1.0,
)  # fmt: skip


def shown(name: str, side: int = _SIDE):
    """A photo that comes with scikit-image, reduced."""
    with Image.open(Path(skimage.data.__file__).parent / name) as image:
        image = image.convert("RGB")
        image.thumbnail((side, side))
        return np.asarray(image)


def warped(picture, seed: int, reach: float = 0.08):
    """The picture seen from elsewhere, in another light, and the matrix that did it."""
    high, wide = picture.shape[:2]
    chance = np.random.default_rng(seed)
    corners = np.float32([[0, 0], [wide, 0], [wide, high], [0, high]])
    moved = corners + chance.uniform(-reach, reach, (4, 2)) * [wide, high]
    matrix = cv2.getPerspectiveTransform(corners, moved.astype(np.float32))
    drawn = cv2.warpPerspective(picture, matrix, (wide, high), borderMode=cv2.BORDER_CONSTANT)
    return cv2.convertScaleAbs(drawn, alpha=0.8, beta=30), matrix


def corner_error(laid, matrix, picture) -> float:
    """How far the corners that the truth moved come back from their places, at worst, in pixels."""
    high, wide = picture.shape[:2]
    errors = []
    for corner in ((0, 0), (wide, 0), (wide, high), (0, high)):
        there = mapped(tuple(matrix.ravel()), corner)
        errors.append(math.dist(mapped(laid.matrix, there), corner))
    return max(errors)


@pytest.mark.parametrize("name", ["astronaut.png", "coffee.png", "chelsea.png"])
@pytest.mark.parametrize("seed", [1, 2])
def test_a_photo_seen_from_elsewhere_is_laid_within_five_pixels(name, seed):
    picture = shown(name)
    moved, matrix = warped(picture, seed)
    laid = lay(features(picture), features(moved))
    assert laid is not None
    assert corner_error(laid, matrix, picture) < 5
    assert laid.error_px < 3


def test_a_published_matrix_is_found_again():
    """The Oxford graffiti matrix 1 to 3, applied to another picture of its size, 800 x 640."""
    picture = cv2.resize(shown("motorcycle_left.png"), (800, 640))
    matrix = np.array(GRAFFITI_1_TO_3).reshape(3, 3)
    moved = cv2.warpPerspective(picture, matrix, (800, 640))
    laid = lay(features(picture), features(moved))
    assert laid is not None
    assert corner_error(laid, matrix, picture) < 5


def test_what_the_repair_changed_does_not_hinder_it():
    picture = shown("motorcycle_left.png")
    moved, matrix = warped(picture, 3)
    high, wide = moved.shape[:2]
    moved[high // 4 : high, wide // 3 : wide * 3 // 4] = (120, 40, 30)
    laid = lay(features(picture), features(moved))
    assert laid is not None
    assert corner_error(laid, matrix, picture) < 5


def test_unrelated_photos_are_never_laid():
    names = ["astronaut.png", "coffee.png", "chelsea.png", "brick.png", "rocket.jpg"]
    known = [features(shown(name, 400)) for name in names]
    for one, other in combinations(known, 2):
        assert lay(one, other) is None


def test_a_blank_photo_lies_nowhere():
    blank = features(np.full((300, 400, 3), 128, np.uint8))
    assert len(blank.points) < FEWEST
    assert lay(blank, features(shown("coffee.png", 400))) is None
    assert lay(features(shown("coffee.png", 400)), blank) is None


def test_the_matrix_is_for_the_pictures_as_they_were_given():
    """Pictures larger than the side that is compared, of different sizes."""
    picture = shown("coffee.png", 600)
    large = cv2.resize(picture, None, fx=3.5, fy=3.5, interpolation=cv2.INTER_CUBIC)
    laid = lay(features(large), features(picture))
    assert laid is not None
    middle = (picture.shape[1] / 2, picture.shape[0] / 2)
    assert math.dist(mapped(laid.matrix, middle), (middle[0] * 3.5, middle[1] * 3.5)) < 4


def test_points_by_hand_give_the_published_homography():
    """Worked example A of the README of jlouthan/perspective-transform; it rounds to 1e-4."""
    first = [(158, 64), (494, 69), (495, 404), (158, 404)]
    second = [(100, 500), (152, 564), (148, 604), (100, 560)]
    laid = lay_by_hand([(to, at) for at, to in zip(first, second, strict=True)])
    assert mapped(laid.matrix, (250, 120)) == pytest.approx((117.27521, 530.92024), abs=1e-4)
    assert laid.error_px == pytest.approx(0, abs=1e-6)


def test_with_more_points_a_slip_of_the_hand_shows():
    exact = [((x, y), (x + 10.0, y - 5.0)) for x in (0, 300, 600) for y in (0, 400)]
    slipped = [(exact[0][0], (exact[0][1][0] + 8, exact[0][1][1])), *exact[1:]]
    assert lay_by_hand(exact).error_px == pytest.approx(0, abs=1e-6)
    assert 0.5 < lay_by_hand(slipped).error_px < 8
    with pytest.raises(JournalError, match="four points"):
        lay_by_hand(exact[:3])


@pytest.mark.parametrize(
    "matrix",
    [
        (1, 0, 0, 0, -1, 400, 0, 0, 1),
        (0.01, 0, 0, 0, 0.01, 0, 0, 0, 1),
        (1, 0, 0, 0, 1, 0, -0.01, 0, 1),
        (1, 0, 0, 0, 1, 0, 0.02, 0.02, 1),
    ],
    ids=["mirrored", "a speck", "beyond the horizon", "one corner drawn out"],
)
def test_what_no_camera_can_have_seen_is_refused(matrix):
    assert not is_plausible(matrix, (600, 400), (600, 400))
    assert is_plausible((1, 0.1, 5, -0.1, 1, 3, 0, 0, 1), (600, 400), (600, 400))
