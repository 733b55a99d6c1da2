"""Copies of one picture are known as such, and other pictures are not."""

import io
import random
from pathlib import Path

import imagehash
import pytest
from PIL import Image, ImageDraw, ImageEnhance, ImageFilter

from journal.vision.same_picture import alike, apart, is_same, sight, sight_of_jpeg

PHOTOS = Path(__file__).resolve().parents[3] / "shared" / "corpus" / "photos"


def drawn(seed: int, size: tuple[int, int] = (320, 240)) -> Image.Image:
    """A picture of blurred shapes, another for every seed."""
    chance = random.Random(seed)
    image = Image.new("RGB", size, tuple(chance.randrange(256) for _ in range(3)))
    draw = ImageDraw.Draw(image)
    for _ in range(25):
        x, y = chance.randrange(size[0]), chance.randrange(size[1])
        wide, high = chance.randrange(20, 120), chance.randrange(20, 120)
        colour = tuple(chance.randrange(256) for _ in range(3))
        draw.ellipse((x - wide, y - high, x + wide, y + high), fill=colour)
    return image.filter(ImageFilter.GaussianBlur(2))


def test_the_signs_are_those_of_the_reference_library() -> None:
    """The difference hash of the ``imagehash`` package, sign for sign."""
    for seed in range(40):
        image = drawn(seed)
        reference = imagehash.dhash(image)
        signs = int("".join("1" if sign else "0" for sign in reference.hash.ravel()), 2)
        assert sight(image).signs == signs


@pytest.mark.parametrize("change", ["smaller", "poorer", "brighter", "grey"])
def test_copies_are_the_same_picture(change: str) -> None:
    for seed in range(15):
        image = drawn(seed)
        if change == "smaller":
            copy = image.resize((200, 150))
        elif change == "poorer":
            room = io.BytesIO()
            image.save(room, "JPEG", quality=35)
            found = sight_of_jpeg(room.getvalue())
            assert found is not None
            assert is_same(sight(image), found)
            continue
        else:
            copy = ImageEnhance.Brightness(image).enhance(1.1)
            copy = copy.convert("L") if change == "grey" else copy
        assert is_same(sight(image), sight(copy)), seed


def test_other_pictures_are_others() -> None:
    sights = [sight(drawn(seed)) for seed in range(60)]
    pairs = [(one, other) for n, one in enumerate(sights) for other in sights[:n]]
    assert not any(is_same(one, other) for one, other in pairs)
    assert all(-1.001 <= alike(one, other) <= 1.001 for one, other in pairs)
    assert sum(apart(one, other) for one, other in pairs) / len(pairs) > 20


def test_an_even_picture_and_no_picture_are_nothing_to_go_by() -> None:
    even = sight(Image.new("RGB", (90, 90), (120, 120, 120)))
    assert not is_same(even, even)
    assert sight_of_jpeg(b"no picture") is None


def test_real_photos_are_told_apart_and_known_again() -> None:
    if not PHOTOS.is_dir():
        pytest.skip("the corpus of photos is not at ../shared/corpus/photos")
    images = []
    for path in sorted(PHOTOS.glob("*.jpg"))[:24]:
        try:
            with Image.open(path) as image:
                image.draft("RGB", (640, 640))
                images.append(image.convert("RGB").resize((320, 240)))
        except (OSError, ValueError, SyntaxError):
            continue
    for image in images:
        room = io.BytesIO()
        image.resize((200, 150)).save(room, "JPEG", quality=60)
        found = sight_of_jpeg(room.getvalue())
        assert found is not None
        own = sight(image)
        if own.greys.any():
            assert is_same(own, found)
