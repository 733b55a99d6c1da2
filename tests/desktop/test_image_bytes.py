"""Pictures are read by the kind that they are said to be, and by no other."""

import io
from pathlib import Path

import pytest
from PIL import Image

from journal.desktop.widgets.image_bytes import image_of, reader_of

SVG = b"<?xml version='1.0'?><svg xmlns='http://www.w3.org/2000/svg' width='4' height='3'/>"


def drawn(kind: str) -> bytes:
    room = io.BytesIO()
    Image.new("RGB", (4, 3), "green").save(room, kind)
    return room.getvalue()


@pytest.mark.parametrize("kind", ["JPEG", "PNG"])
def test_a_picture_is_read(qapp, kind):
    image = image_of(drawn(kind))
    assert (image.width(), image.height()) == (4, 3)


@pytest.mark.parametrize("data", [None, b"", b"\x89PNG torn", SVG, drawn("GIF"), b"nothing at all"])
def test_what_is_neither_is_left_alone(qapp, data):
    assert image_of(data).isNull()


@pytest.mark.parametrize(
    ("name", "kind"), [("a.jpg", "JPEG"), ("b.JPEG", "JPEG"), ("c.png", "PNG"), ("d.webp", "WEBP")]
)
def test_a_file_is_read_by_its_ending(qapp, tmp_path, name, kind):
    (tmp_path / name).write_bytes(drawn(kind))
    reader = reader_of(tmp_path / name)
    assert reader is not None
    assert reader.read().width() == 4


def test_a_file_of_another_kind_is_not_looked_into(qapp, tmp_path):
    assert reader_of(Path("paper.pdf")) is None
    (tmp_path / "drawing.png").write_bytes(SVG)
    reader = reader_of(tmp_path / "drawing.png")
    assert reader is not None
    assert reader.read().isNull()
