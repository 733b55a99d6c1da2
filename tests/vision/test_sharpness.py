"""The sharpest of pictures of one thing."""

from pathlib import Path

import cv2
import numpy as np
import pytest
import skimage.data
from PIL import Image

from journal.domain.pictures import Picture
from journal.vision.sharpness import pack, sharpness, unpack


def photo():
    with Image.open(Path(skimage.data.__file__).parent / "coffee.png") as image:
        return np.asarray(image.convert("RGB"))


def measured(pixels) -> float:
    high, wide = pixels.shape[:2]
    return sharpness(Picture(wide, high, pixels.tobytes()))


def test_a_steadier_hand_measures_sharper_in_any_light():
    pixels = photo()
    shaken = [cv2.GaussianBlur(pixels, (0, 0), sigma) for sigma in (1.5, 3, 6)]
    values = [measured(one) for one in (pixels, *shaken)]
    assert values == sorted(values, reverse=True)
    darker = (pixels * 0.5).astype(np.uint8)
    assert measured(darker) == pytest.approx(measured(pixels), rel=0.1)


def test_noise_is_not_taken_for_sharpness():
    pixels = photo()
    blurred = cv2.GaussianBlur(pixels, (0, 0), 3).astype(np.int16)
    noise = np.random.default_rng(3).normal(0, 4, pixels.shape)
    noisy = np.clip(blurred + noise, 0, 255).astype(np.uint8)
    assert measured(noisy) < measured(pixels)


def test_a_black_picture_is_not_sharp():
    assert measured(np.zeros((40, 60, 3), np.uint8)) == 0.0
    assert unpack(pack(0.125)) == 0.125
