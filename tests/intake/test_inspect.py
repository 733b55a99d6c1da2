import dataclasses
import os
import time
from datetime import datetime

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PIL.TiffImagePlugin import IFDRational

from journal.domain.errors import JournalError
from journal.domain.photos import Basis, Kind
from journal.domain.when import parse_edtf
from journal.files.copying import copy_and_hash
from journal.intake.inspect import inspect, refuse_early
from tests.intake.made import (
    CHANGED,
    DATE,
    DIGITISED,
    OFFSET,
    SUBSEC,
    bomb_png,
    circling_tiff,
    exif,
    film,
    jpeg,
    lying,
    png_chunk,
    png_with,
    saved,
    scene,
    with_thumbnail,
)

NOW = datetime(2026, 6, 1, 12, 0)
MODIFIED = datetime(2020, 2, 2, 10, 0)


@pytest.fixture
def look(tmp_path):
    """Inspect some bytes as if they were a file of a name."""

    def act(data, name="photo.jpg"):
        source = tmp_path / "source"
        source.write_bytes(data)
        os.utime(source, (MODIFIED.timestamp(),) * 2)
        return inspect(copy_and_hash(source, tmp_path), name, NOW)

    return act


def test_all_that_a_camera_says_is_taken_over(look):
    gps = {
        1: "S", 2: (IFDRational(33), IFDRational(51), IFDRational(3540, 100)),
        3: "E", 4: (IFDRational(151), IFDRational(12), IFDRational(40)),
    }  # fmt: skip
    main = {0x010F: "Rook Optical\0\0", 0x0110: "Rook 1", 0x0112: 6, CHANGED: "2020:01:01 10:00:00"}
    inner = {DATE: "2016:03:05 14:22:07", SUBSEC: "25", OFFSET: "+01:00", 0xA431: "00042"}
    data = saved(lying(scene(), 6), exif=exif(main, inner, gps))
    photo = look(data, "IMG_0042.JPG").photo
    assert photo.when.earliest == datetime(2016, 3, 5, 14, 22, 7, 250_000)
    assert photo.when.edtf == "2016-03-05T14:22:07+01:00"
    assert (photo.basis, photo.offset) == (Basis.CAMERA, "+01:00")
    assert (photo.make, photo.model, photo.serial) == ("Rook Optical", "Rook 1", "00042")
    assert (photo.width, photo.height, photo.orientation) == (400, 300, 6)
    assert (photo.sequence, photo.suffix, photo.mime) == (42, ".jpg", "image/jpeg")
    assert photo.latitude == pytest.approx(-33.8598, abs=1e-4)
    assert photo.longitude == pytest.approx(151.2111, abs=1e-4)
    assert photo.damage == ""


def test_every_date_is_kept_the_best_one_wins(look):
    main = {CHANGED: "2021:01:05 10:00:00"}
    inner = {DATE: "0000:00:00 00:00:00", DIGITISED: "2020:01:05 10:00:00"}
    photo = look(saved(scene(), exif=exif(main, inner)), "IMG_20160305_142207.jpg").photo
    assert photo.when == parse_edtf("2016-03-05T14:22:07")
    assert photo.basis is Basis.FILE_NAME
    assert [(c.source, c.doubt == "") for c in photo.candidates] == [
        ("DateTimeOriginal", False),
        ("DateTimeDigitized", True),
        ("DateTime", True),
        ("file name", True),
        ("file time", True),
    ]


def test_without_any_other_date_the_files_own_time_stands_in(look):
    photo = look(saved(scene(), "PNG"), "sill.png").photo
    assert photo.when.earliest == MODIFIED
    assert photo.basis is Basis.FILE_TIME


def test_a_film_gives_its_size_and_a_weak_date(look):
    made = int((datetime(2016, 3, 5, 12, 0) - datetime(1904, 1, 1)).total_seconds())
    photo = look(film(made, turned=True), "VID_0001.mp4").photo
    assert photo.kind is Kind.VIDEO
    assert (photo.width, photo.height) == (480, 640)
    assert photo.basis is Basis.DIGITISED
    local = datetime.fromtimestamp(time.mktime((2016, 3, 5, 12, 0, 0, 0, 0, -1)) - time.timezone)
    assert abs((photo.when.earliest - local).total_seconds()) <= 3600
    assert photo.damage == ""


def test_a_film_cut_short_is_kept_and_said_to_be(look):
    assert "missing" in look(film()[:-10], "a.mp4").photo.damage
    assert "missing" in look(film()[:30], "a.mp4").photo.damage


def test_the_embedded_thumbnail_becomes_a_rough_one(look):
    small = saved(scene(160, 120))
    arrival = look(with_thumbnail(saved(lying(scene(), 6)), small, 6))
    assert arrival.rough_thumbnail[:3] == b"\xff\xd8\xff"
    assert arrival.photo.orientation == 6
    broken = look(with_thumbnail(saved(scene()), b"\xff\xd8\xff" + bytes(50), 1))
    assert broken.rough_thumbnail is None
    assert look(jpeg()).rough_thumbnail is None


def test_a_name_keeps_its_extension_and_becomes_readable(look):
    name = b"Schweller_\xfc.JPG".decode("utf-8", "surrogateescape")
    photo = look(jpeg(), name).photo
    photo.name.encode("utf-8")
    assert photo.suffix == ".jpg"
    assert look(jpeg(), "without extension").photo.suffix == ".jpg"
    assert look(jpeg(), "x" * 10_000 + ".jpeg").photo.suffix == ".jpeg"
    assert look(saved(scene(), "PNG"), "odd.?!").photo.suffix == ".png"


def test_utf_8_in_a_tag_is_put_right(look):
    name = "Rüben & Söhne"
    standing_in = "x" * len(name.encode())
    data = saved(scene(), exif=exif({0x010F: standing_in}))
    data = data.replace(standing_in.encode(), name.encode())
    assert look(data).photo.make == name


@pytest.mark.parametrize("keyword", [b"exif", b"APP1"])
def test_a_png_tells_its_date_in_the_older_text_form(look, keyword):
    block = exif({}, {DATE: "2016:03:05 14:22:07"})
    text = b"\nexif\n%8d\n%s\n" % (len(block), block.hex().encode())
    chunk = png_chunk(b"tEXt", b"Raw profile type " + keyword + b"\0" + text)
    assert look(png_with(saved(scene(), "PNG"), chunk)).photo.basis is Basis.CAMERA


def test_a_png_tells_its_date_in_a_chunk_behind_the_picture(look):
    block = exif({}, {DATE: "2016:03:05 14:22:07"}).removeprefix(b"Exif\0\0")
    data = png_with(saved(scene(), "PNG"), png_chunk(b"eXIf", block))
    assert look(data).photo.when == parse_edtf("2016-03-05T14:22:07")


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP", "TIFF", "AVIF"])
def test_a_picture_cut_short_is_kept_with_its_damage(look, kind):
    whole = saved(scene(), kind)
    photo = look(whole[: len(whole) * 4 // 5]).photo
    assert photo.damage
    assert photo.kind is Kind.PICTURE


@pytest.mark.parametrize(
    ("data", "reason"),
    [(b"", "empty"), (b"<!DOCTYPE html><html>", "no picture"), (b"%PDF-1.4 x", "PDF document"),
     (b"\0" * 5000, "no picture"), (bomb_png(), "megapixels")],
)  # fmt: skip
def test_what_is_no_photo_is_refused_in_half_a_sentence(look, tmp_path, data, reason):
    with pytest.raises(JournalError, match=reason) as caught:
        look(data)
    assert str(caught.value).startswith("it ")
    if "megapixels" not in reason:
        path = tmp_path / "early.jpg"
        path.write_bytes(data)
        with pytest.raises(JournalError, match=reason):
            refuse_early(path)


def test_directories_that_point_at_themselves_end(look):
    photo = look(circling_tiff(), "loop.tif").photo
    assert photo.damage
    block = b"Exif\0\0" + circling_tiff()
    head = b"\xff\xd8\xff\xe1" + (len(block) + 2).to_bytes(2, "big") + block
    photo = look(head + saved(scene())[2:]).photo
    assert (photo.width, photo.height, photo.basis) == (400, 300, Basis.FILE_TIME)


def test_a_place_that_is_none_is_left_out(look):
    for value in ((IFDRational(0, 0),) * 3, (IFDRational(91),) * 3, (), ("x",)):
        gps = {1: "N", 2: value, 3: "E", 4: (IFDRational(1),) * 3}
        try:
            data = saved(scene(), exif=exif({}, {}, gps))
        except Exception:  # the writer itself refuses some of them
            continue
        assert look(data).photo.latitude is None


def test_a_date_in_2099_does_not_win(look):
    photo = look(jpeg("2099:01:02 10:00:00")).photo
    assert photo.basis is Basis.FILE_TIME
    assert "future" in photo.candidates[0].doubt


_BLOCK = exif({0x0112: 6}, {DATE: "2016:03:05 10:00:00"})
_PHOTOS = {
    "jpeg": jpeg("2016:03:05 10:00:00"),
    "png": png_with(saved(scene(), "PNG"), png_chunk(b"eXIf", _BLOCK)),
    "webp": saved(scene(), "WEBP", exif=_BLOCK),
    "avif": saved(scene(), "AVIF", exif=_BLOCK),
    "tiff": saved(scene(60, 40), "TIFF"),
    "thumbnail": with_thumbnail(saved(scene()), saved(scene(80, 60))),
    "film": film(3_500_000_000),
}


@settings(
    max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None
)
@given(
    kind=st.sampled_from(sorted(_PHOTOS)),
    hits=st.lists(st.tuples(st.integers(0, 3000), st.integers(0, 255)), max_size=20),
    end=st.integers(0, 20_000),
)
def test_no_damage_brings_the_inspection_down(look, kind, hits, end):
    """Flip bytes near the start, cut the end: a photo or a plain refusal, nothing else."""
    spoilt = bytearray(_PHOTOS[kind])
    for at, value in hits:
        spoilt[at % len(spoilt)] = value
    try:
        photo = look(bytes(spoilt[:end])).photo
    except JournalError as error:
        if not str(error).startswith("it "):
            raise
        return
    assert dataclasses.astuple(photo)
    photo.name.encode()
    (photo.make + photo.model + photo.serial).encode()
