"""Every file of the shared corpus against what ExifTool 12.57 and 13.58 say of it."""

import json
from datetime import datetime
from pathlib import Path

import pytest

from journal.domain.errors import JournalError
from journal.domain.photos import Basis, DateCandidate
from journal.files.copying import copy_and_hash
from journal.intake.content import opened
from journal.intake.decode import picture
from journal.intake.facts import facts_of
from journal.intake.inspect import Arrival, inspect

CORPUS = Path(__file__).resolve().parents[3] / "shared" / "corpus"
TRUTH = CORPUS / "expected.json"
ENTRIES = json.loads(TRUTH.read_text("utf-8")) if TRUTH.is_file() else []
NOW = datetime(2026, 12, 1, 12, 0)

pytestmark = pytest.mark.skipif(not ENTRIES, reason="the shared corpus is not beside this checkout")


def named(entry):
    return Path(entry["path"]).name[:48]


@pytest.fixture(scope="module")
def arrivals(tmp_path_factory):
    """What the intake makes of every file, or the reason why it is refused."""
    staging = tmp_path_factory.mktemp("staging")
    found = {}
    for entry in ENTRIES:
        staged = copy_and_hash(CORPUS / entry["path"], staging)
        assert (staged.sha256, staged.size) == (entry["sha256"], entry["bytes"])
        try:
            found[entry["path"]] = inspect(staged, Path(entry["path"]).name, NOW)
        except JournalError as error:
            found[entry["path"]] = str(error)
    return found


def exif_date(arrival) -> DateCandidate | None:
    """The first date of the Exif block that is a real one."""
    if not isinstance(arrival, Arrival):
        return None
    dates = (c for c in arrival.photo.candidates if c.source.startswith("DateTime"))
    return next((c for c in dates if c.when), None)


def test_the_corpus_is_whole():
    assert len(ENTRIES) == 80


@pytest.mark.parametrize("entry", ENTRIES, ids=named)
def test_when_it_was_taken(arrivals, entry):
    arrival = arrivals[entry["path"]]
    found = exif_date(arrival)
    if "taken_also" in entry and found:
        assert found.when.earliest.isoformat() == entry["taken_also"]
        return
    if entry["taken"] is None:
        assert found is None
        return
    digits = (entry["subsec"] or "").ljust(6, "0")[:6]
    assert found.when.earliest == datetime.fromisoformat(entry["taken"]).replace(
        microsecond=int(digits)
    )
    assert "EXIF " + found.source == entry["taken_basis"]
    assert found.offset == entry["offset"]
    # The camera's date is the photo's, unless it is one that can't be true.
    if found.when.earliest.year < 2099:
        assert arrival.photo.when == found.when
        assert arrival.photo.offset == entry["offset"]
        weak = entry["taken_basis"] != "EXIF DateTimeOriginal"
        assert arrival.photo.basis is (Basis.DIGITISED if weak else Basis.CAMERA)
    else:
        assert "future" in found.doubt
        assert arrival.photo.basis is Basis.FILE_TIME


@pytest.mark.parametrize("entry", ENTRIES, ids=named)
def test_its_size_as_shown_and_its_camera(arrivals, entry):
    arrival = arrivals[entry["path"]]
    if not isinstance(arrival, Arrival):
        assert entry["shown_width"] is None
        return
    photo = arrival.photo
    assert (photo.width, photo.height) == (entry["shown_width"], entry["shown_height"])
    if "taken_also" in entry:
        return  # the two readers disagree on this broken block
    assert (photo.make or None, photo.model or None) == (entry["make"], entry["model"])
    assert photo.orientation == entry.get("orientation_in_xmp", entry["orientation"])


@pytest.mark.parametrize("entry", ENTRIES, ids=named)
def test_where_it_was_taken(arrivals, entry):
    arrival = arrivals[entry["path"]]
    if not isinstance(arrival, Arrival):
        return
    has_place = arrival.photo.latitude is not None
    if "200MP" in entry["path"]:
        # Its tags are there, but each number in them is 0/0.
        assert not has_place
    else:
        assert has_place == entry["gps"]


@pytest.mark.parametrize("entry", ENTRIES, ids=named)
def test_whether_it_is_whole_and_can_be_seen(arrivals, entry):
    arrival = arrivals[entry["path"]]
    film = entry["type"] == "MOV"
    if not entry["picture"] and not film:
        assert isinstance(arrival, str)
        return
    assert isinstance(arrival, Arrival)
    assert bool(arrival.photo.damage) == entry["damaged"]
    if not entry["readable"]:
        assert film or arrival.photo.damage
        return
    shown = picture(CORPUS / entry["path"], 256)
    # Reading it as the standard says, the one cut-short file that can be seen is cropped.
    if not entry["damaged"]:
        tall = entry["shown_width"] / entry["shown_height"]
        assert shown.width / shown.height == pytest.approx(tall, rel=0.03)
    assert max(shown.width, shown.height) <= 256
    assert len(shown.rgb) == 3 * shown.width * shown.height


def test_what_is_no_photo_is_refused_with_the_reason(arrivals):
    assert arrivals["photos/pillow_heif__empty.heic"] == "it is empty, 0 bytes"
    assert "no picture" in arrivals["photos/made__web-page-named.jpg"]
    assert "no picture" in arrivals["photos/exiftool__PLIST.aae"]


def test_two_shots_of_one_second_keep_their_order(arrivals):
    first = arrivals["photos/exif-samples__iphone_hdr_NO.jpg"].photo
    second = arrivals["photos/exif-samples__iphone_hdr_YES.jpg"].photo
    assert first.when < second.when
    assert first.when.edtf == second.when.edtf


def _distance(one, other):
    assert (one.width, one.height) == (other.width, other.height)
    return sum(abs(a - b) for a, b in zip(one.rgb, other.rgb, strict=True)) / len(one.rgb)


def test_the_same_picture_in_every_orientation_looks_the_same():
    paths = [CORPUS / f"photos/orientation-examples__Landscape_{i}.jpg" for i in range(9)]
    shown = [picture(path, 96) for path in paths]
    # Each is labelled with its number, so they are near, not equal; a wrong turn is far off.
    assert all(_distance(shown[1], other) < 6 for other in shown[2:])
    half = len(shown[1].rgb) // 2
    turned = shown[1].rgb[half:] + shown[1].rgb[:half]
    assert sum(abs(a - b) for a, b in zip(turned, shown[1].rgb, strict=True)) / len(turned) > 20


def test_a_heif_picture_is_turned_once():
    shown = picture(CORPUS / "photos/pillow_heif__arrow.heic", 256)
    assert shown.height > shown.width


def test_two_hundred_megapixels_are_shown_through_the_embedded_thumbnail():
    path = CORPUS / "photos/pillow_heif__200MP.heic"
    small, large = picture(path, 256), picture(path, 1600)
    assert (small.width, small.height) == (192, 256)
    assert (large.width, large.height) == (384, 512)


def test_the_structure_alone_tells_of_a_cut_at_any_place():
    """Every kind of file, cut short by a tenth, is still a picture and known to be damaged."""
    kinds = {}
    for entry in ENTRIES:
        if entry["picture"] and not entry["damaged"] and entry["frames"] == 1:
            kinds.setdefault(entry["type"], entry)
    seen = set()
    for kind, entry in kinds.items():
        with opened(CORPUS / entry["path"]) as content:
            whole = bytes(content[:])
        facts = facts_of(whole[: len(whole) * 9 // 10])
        assert facts.type is not None
        assert facts.damage, kind
        # A TIFF may keep its directory behind the picture data.
        assert facts.width > 0 or kind == "TIFF"
        seen.add(kind)
    assert {"JPEG", "PNG", "HEIC", "AVIF", "TIFF", "Extended WEBP"} <= seen
