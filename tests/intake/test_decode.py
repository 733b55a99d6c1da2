import io
import sys

import pytest
from PIL import Image, ImageChops, ImageOps, ImageStat

from journal.domain.errors import JournalError
from journal.intake import pillow
from journal.intake.decode import picture, small_jpeg, thumbnail
from tests.intake.made import bomb_png, exif, film, lying, png_chunk, png_with, saved, scene

XMP = b"<x tiff:Orientation='%d'/>"


def shown(source, longest=96, **options):
    found = picture(source, longest, **options)
    return Image.frombytes("RGB", (found.width, found.height), found.rgb)


def far(one, other):
    """How unlike two pictures are: the mean difference of a channel, 0 to 255."""
    assert one.size == other.size
    return max(ImageStat.Stat(ImageChops.difference(one, other)).mean)


def upright(size=(96, 72)):
    return scene().resize(size, Image.Resampling.BOX)


@pytest.fixture(params=["simplejpeg", "pillow alone"])
def decoder(request, monkeypatch):
    if request.param == "pillow alone":
        monkeypatch.setitem(sys.modules, "simplejpeg", None)
    return request.param


@pytest.mark.parametrize("orientation", range(1, 9))
@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP", "TIFF", "AVIF"])
def test_every_orientation_is_followed_once(decoder, kind, orientation):
    data = saved(lying(scene(), orientation), kind, exif=exif({0x0112: orientation}))
    assert far(shown(data), upright()) < 6


@pytest.mark.parametrize("orientation", [None, 0, 9, 1])
def test_an_orientation_that_means_nothing_is_shown_as_stored(orientation):
    data = saved(scene(), exif=exif({0x0112: orientation} if orientation is not None else {}))
    assert far(shown(data), upright()) < 6


@pytest.mark.parametrize("orientation", range(1, 9))
def test_an_orientation_in_xmp_alone_counts(orientation):
    text = b"XML:com.adobe.xmp\0\0\0\0\0" + XMP % orientation
    data = png_with(saved(lying(scene(), orientation), "PNG"), png_chunk(b"iTXt", text))
    assert far(shown(data), upright()) < 3


@pytest.mark.parametrize("orientation", [1, 3, 6, 8])
def test_a_heif_picture_is_turned_by_its_container_and_not_again(orientation):
    import pillow_heif

    room = io.BytesIO()
    stored = pillow_heif.from_pillow(lying(scene(640, 480), orientation))
    stored.save(room, quality=90, exif=exif({0x0112: orientation}))
    # The writer moves the orientation into the container, as phones do.
    assert far(shown(room.getvalue()), upright()) < 6


@pytest.mark.parametrize(
    ("degrees", "orientation"), [(0, 1), (90, 6), (180, 3), (270, 8), (450, 6)]
)
def test_the_owners_turn_comes_on_top(degrees, orientation):
    stored = lying(scene(), orientation)
    data = saved(stored)
    assert far(shown(data, turn=degrees), upright()) < 6


@pytest.mark.parametrize(
    "mode", ["L", "LA", "RGBA", "P", "1", "CMYK", "I;16", "I", "F", "YCbCr", "LAB"]
)
def test_every_kind_of_pixel_becomes_three_channels(mode):
    grey = scene().convert("L")
    if mode in ("I;16", "I", "F"):
        image = Image.new(mode, grey.size)
        image.putdata([value * 100 for value in grey.get_flattened_data()])
    elif mode == "LAB":
        image = Image.new("LAB", grey.size, (128, 0, 0))
    else:
        image = scene().convert(mode)
    found = shown(saved(image, "TIFF"))
    assert found.mode == "RGB"
    if mode in ("L", "I;16", "I", "F"):
        wanted = ImageOps.autocontrast(grey) if mode != "L" else grey
        assert far(found, wanted.resize((96, 72), Image.Resampling.BOX).convert("RGB")) < 4


def test_what_is_transparent_lies_on_white():
    clear = Image.new("RGBA", (40, 30), (10, 20, 30, 0))
    assert shown(saved(clear, "PNG")).getpixel((20, 15)) == (255, 255, 255)


@pytest.mark.parametrize("longest", [16, 100, 256, 399, 400, 5000])
def test_the_longer_side_is_what_was_asked_but_never_enlarged(decoder, longest):
    found = picture(saved(scene()), longest)
    assert max(found.width, found.height) == min(longest, 400)
    assert found.width / found.height == pytest.approx(4 / 3, rel=0.1)


@pytest.mark.parametrize("size", [(1, 1), (1, 3000), (3000, 1), (7, 5)])
def test_odd_shapes_are_shown(decoder, size):
    found = picture(saved(scene(*size)), 256)
    assert min(found.width, found.height) >= 1
    assert max(found.width, found.height) <= 256


def test_a_thumbnail_is_a_small_upright_jpeg(decoder):
    data = saved(lying(scene(), 6), exif=exif({0x0112: 6}))
    small = Image.open(io.BytesIO(thumbnail(data)))
    assert (small.format, small.size) == ("JPEG", (256, 192))
    assert "exif" not in small.info
    assert far(small.resize((96, 72)), upright()) < 6


def test_a_cut_out_thumbnail_follows_the_orientation_of_its_photo():
    small = small_jpeg(saved(lying(scene(160, 120), 8)), 8)
    assert far(Image.open(io.BytesIO(small)).resize((96, 72)), upright()) < 8


def test_of_a_jpeg_cut_short_the_beginning_is_shown(decoder):
    whole = saved(scene(), quality=95)
    found = shown(whole[: len(whole) * 2 // 3], 400)
    top = (0, 0, 400, 60)
    assert far(found.crop(top), scene().crop(top)) < 8


def test_a_picture_that_would_fill_the_memory_is_not_unpacked():
    with pytest.raises(JournalError, match="megapixels"):
        picture(bomb_png(), 256)
    with pytest.raises(JournalError, match="megapixels"):
        picture(bomb_png(12_000, 12_000), 256)


def test_a_progressive_jpeg_is_shown_and_a_huge_one_is_not_unpacked(decoder):
    data = saved(scene(), quality=85, progressive=True)
    assert far(shown(data), upright()) < 6
    at = data.index(b"\xff\xc2") + 5
    huge = data[:at] + (20_000).to_bytes(2, "big") * 2 + data[at + 4 :]
    with pytest.raises(JournalError, match="400 megapixels"):
        picture(huge, 256)


def test_pillows_own_guard_is_replaced_and_not_merely_gone():
    assert Image.MAX_IMAGE_PIXELS is None
    with pytest.raises(JournalError, match="501 megapixels"):
        pillow.refuse_huge(501_000, 1_000)
    pillow.refuse_huge(500_000, 1_000)


@pytest.mark.parametrize("data", [b"", b"hello", film(), saved(scene(), "PNG")[:60], b"%PDF-1.7"])
def test_what_cannot_be_shown_says_why(data):
    with pytest.raises(JournalError) as caught:
        picture(data, 256)
    assert str(caught.value).startswith(("it is", "its picture"))
    assert "\n" not in str(caught.value)


def test_a_missing_file_says_so(tmp_path):
    with pytest.raises(JournalError, match="it can't be read"):
        picture(tmp_path / "gone.jpg", 256)


def test_a_raw_file_shows_the_preview_that_is_just_large_enough():
    small, large = saved(scene(320, 240)), saved(scene(1600, 1200))
    raw = b"FUJIFILMCCD-RAW ".ljust(64, b"\0") + small + large
    assert max(picture(raw, 256).width, 0) == 256
    assert picture(raw, 1000).width == 1000
    assert picture(raw, 4000).width == 1600
