import io
import struct

import pytest
from hypothesis import given
from hypothesis import strategies as st

from journal.domain.photos import Kind
from journal.intake.facts import facts_of
from journal.intake.kinds import recognise
from tests.intake.made import box, film, saved, scene


@pytest.mark.parametrize(
    ("kind", "mime"),
    [("JPEG", "image/jpeg"), ("PNG", "image/png"), ("GIF", "image/gif"), ("BMP", "image/bmp"),
     ("WEBP", "image/webp"), ("TIFF", "image/tiff"), ("JPEG2000", "image/jp2"),
     ("AVIF", "image/avif")],
)  # fmt: skip
def test_what_pillow_writes_is_recognised(kind, mime):
    data = saved(scene(), kind)
    found = recognise(data)
    assert (found.mime, found.kind) == (mime, Kind.PICTURE)
    facts = facts_of(data)
    assert facts.shown == (400, 300)
    assert facts.damage == ""


def test_heic_is_recognised_whatever_it_is_called():
    import pillow_heif

    room = io.BytesIO()
    pillow_heif.from_pillow(scene(640, 480)).save(room, quality=70)
    facts = facts_of(room.getvalue())
    assert (facts.type.mime, facts.shown, facts.damage) == ("image/heic", (640, 480), "")


@pytest.mark.parametrize(
    ("brand", "mime", "kind"),
    [(b"isom", "video/mp4", Kind.VIDEO), (b"mp42", "video/mp4", Kind.VIDEO),
     (b"3gp4", "video/mp4", Kind.VIDEO), (b"qt  ", "video/quicktime", Kind.VIDEO),
     (b"crx ", "image/x-canon-cr3", Kind.RAW), (b"heix", "image/heic", Kind.PICTURE),
     (b"mif1", "image/heif", Kind.PICTURE), (b"avis", "image/avif", Kind.PICTURE)],
)  # fmt: skip
def test_the_brand_tells_what_a_file_of_boxes_is(brand, mime, kind):
    found = recognise(film(brand=brand))
    assert (found.mime, found.kind) == (mime, kind)


def test_a_general_brand_gives_way_to_a_special_one():
    assert recognise(box(b"ftyp", b"mif1" + bytes(4) + b"mif1heic")).mime == "image/heic"
    assert recognise(box(b"ftyp", b"mif1" + bytes(4) + b"avifmif1")).mime == "image/avif"


def _tiff(*entries, order="<"):
    body = b"".join(struct.pack(order + "HHI", *e[:3]) + e[3] for e in entries)
    mark = b"II*\0" if order == "<" else b"MM\0*"
    head = mark + struct.pack(order + "IH", 8, len(entries))
    return head + body + bytes(4) + b"NIKON CORPORATION\0"


def test_raw_formats_are_told_from_a_plain_tiff():
    version = (50706, 1, 4, b"\1\4\0\0")
    assert recognise(_tiff(version)).mime == "image/x-adobe-dng"
    at = 8 + 2 + 3 * 12 + 4
    maker = (271, 2, 18, struct.pack("<I", at))
    reduced, inner = (254, 4, 1, struct.pack("<I", 1)), (330, 4, 1, struct.pack("<I", 8))
    assert recognise(_tiff(maker, reduced, inner)).mime == "image/x-nikon-nef"
    assert recognise(_tiff(maker)).mime == "image/tiff"
    assert recognise(b"II*\0\x10\0\0\0CR\2\0").mime == "image/x-canon-cr2"


@pytest.mark.parametrize(
    ("head", "words"),
    [
        (b"%PDF-1.7", "PDF"),
        (b"PK\3\4", "ZIP"),
        (b"bplist00", "property list"),
        (film(brand=b"M4A "), "sound"),
    ],
)
def test_common_files_that_are_no_photos_are_called_by_their_name(head, words):
    found = recognise(head)
    assert found.kind is None
    assert words in found.name


@pytest.mark.parametrize(
    "head",
    [b"", b"\xff", b"BM", b"BM is how this letter begins", b"<!DOCTYPE html>", b"RIFF1234WAVE"],
)
def test_anything_else_is_unknown(head):
    assert recognise(head) is None


_starts = st.sampled_from(
    [saved(scene(), k)[:200] for k in ("JPEG", "PNG", "GIF", "WEBP", "TIFF", "AVIF")]
    + [film()[:200], film(brand=b"crx ")[:200], film(brand=b"heic"), b"II*\0", b"MM\0*", b""]
)


@given(_starts, st.integers(0, 200), st.binary(max_size=300))
def test_no_bytes_bring_the_reading_of_structure_down(start, cut, rest):
    facts = facts_of(start[:cut] + rest)
    assert facts.width >= 0
    assert facts.height >= 0
