"""Real photos that come inside the scikit-image wheel, against full decoding by Pillow."""

import io
from pathlib import Path

import pytest
from PIL import Image, ImageChops, ImageStat

from journal.intake.content import opened
from journal.intake.decode import picture, thumbnail
from journal.intake.facts import facts_of

skimage_data = pytest.importorskip("skimage.data", reason="scikit-image is not installed")
FOLDER = Path(skimage_data.__file__).parent
PHOTOS = sorted(
    path
    for path in FOLDER.iterdir()
    if path.suffix in (".jpg", ".png", ".tif", ".gif")
    # Two layouts at once (separate planes, several pages) that Pillow does not open.
    and path.name != "multipage_rgb.tif"
)


def test_the_wheel_ships_photos():
    assert {path.suffix for path in PHOTOS} == {".jpg", ".png", ".tif", ".gif"}
    assert len(PHOTOS) > 20


@pytest.mark.parametrize("path", PHOTOS, ids=lambda path: path.name)
def test_a_shipped_photo_is_whole_and_shown_as_pillow_shows_it(path):
    with opened(path) as content:
        facts = facts_of(content)
    with Image.open(path) as image:
        assert facts.shown == image.size
        rgba = image.convert("RGBA")
    assert facts.damage == ""
    paper = Image.new("RGBA", rgba.size, "white")
    whole = Image.alpha_composite(paper, rgba).convert("RGB")
    found = picture(path, 128)
    ours = Image.frombytes("RGB", (found.width, found.height), found.rgb)
    theirs = whole.resize(ours.size, Image.Resampling.BOX)
    assert max(ImageStat.Stat(ImageChops.difference(ours, theirs)).mean) < 6


@pytest.mark.parametrize("name", ["rocket.jpg", "retina.jpg", "hubble_deep_field.jpg"])
def test_cutting_a_shipped_photo_short_is_noticed(name):
    whole = (FOLDER / name).read_bytes()
    for part in (0.95, 0.5, 0.1):
        assert facts_of(whole[: int(len(whole) * part)]).damage
    small = Image.open(io.BytesIO(thumbnail(whole[: len(whole) // 2])))
    assert max(small.size) == 256
