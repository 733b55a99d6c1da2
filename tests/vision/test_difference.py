"""Difference hashes, against the imagehash package, and the search for near ones."""

import imagehash
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from journal.vision.difference import pack, pairs_within, signs, signs_of_jpeg, unpack


def test_the_signs_are_those_of_the_imagehash_package():
    """Bit for bit ``imagehash.dhash`` on 300 pictures of noise, ramps and blots of many sizes."""
    chance = np.random.default_rng(7)
    for _ in range(300):
        high, wide = chance.integers(9, 300, 2)
        few = chance.integers(0, 256, chance.integers(2, 12, 2)).astype(np.uint8)
        image = Image.fromarray(few).resize((int(wide), int(high)), Image.Resampling.BICUBIC)
        image = Image.merge("RGB", (image, image.point(lambda v: 255 - v), image))
        assert signs(image) == int(str(imagehash.dhash(image)), 16)


def test_what_is_no_picture_has_no_signs():
    assert signs_of_jpeg(b"no picture") is None


@given(st.integers(0, 2**64 - 1))
def test_signs_come_back_from_where_they_are_kept(found):
    assert unpack(pack(found)) == found


@given(
    st.lists(st.integers(0, 2**64 - 1), max_size=12),
    st.lists(st.tuples(st.integers(0, 11), st.sets(st.integers(0, 63), max_size=5)), max_size=8),
    st.integers(0, 3),
)
def test_every_near_pair_is_found_and_no_other(hashes, copies, most):
    known = list(hashes)
    for number, bits in copies:
        if hashes:
            known.append(hashes[number % len(hashes)] ^ sum(1 << bit for bit in bits))
    expected = [
        (i, j)
        for i in range(len(known))
        for j in range(i + 1, len(known))
        if (known[i] ^ known[j]).bit_count() <= most
    ]
    assert pairs_within(known, most) == expected


def test_bands_promise_no_more_than_they_can_keep():
    with pytest.raises(ValueError, match="0 to 3"):
        pairs_within([1, 2], 4)
