"""Files of paper: PDFs with and without a text layer, locked, broken, long; and pictures."""

import io
from collections import Counter
from datetime import date
from types import SimpleNamespace

import pikepdf
import pytest
from PIL import Image

from journal.domain.errors import Cancelled
from journal.domain.pictures import Picture
from journal.domain.progress import Silent
from journal.intake.reading import engine
from journal.intake.reading.fields import TWO_RECEIPTS, Known
from journal.intake.reading.files import NO_ENGINE, page_picture, read_file
from journal.intake.reading.pictures import page_of_picture
from tests.intake.reading import drawn
from tests.intake.reading.judged import judge

TODAY = date(2026, 1, 1)
needs_engine = pytest.mark.skipif(
    not engine.can_read_pictures(), reason="the extra “reading” isn't installed"
)
needs_fonts = pytest.mark.skipif(
    not drawn.has_fonts(), reason="the typefaces that paper is drawn in aren't here"
)


def read(path, currency="EUR", order=drawn.DateOrder.DAY_FIRST):
    return read_file(path, Known(currency, (), order), TODAY, Silent())


@pytest.fixture
def written(tmp_path):
    def write(content, name="paper.pdf"):
        path = tmp_path / name
        path.write_bytes(content)
        return path

    return write


@pytest.fixture
def no_engine(monkeypatch):
    monkeypatch.setattr(engine, "reader", lambda: None)


def test_sixty_pdfs_are_read_as_well_as_is_promised(written):
    right, asked = Counter(), Counter()
    for number in range(60):
        of = drawn.drawn(number)
        found = read(written(drawn.pdf(of)), of.truth.currency, of.truth.order)
        judge(of.truth, found, right, asked)
    share = {name: right[name] / asked[name] for name in asked}
    assert right["invented"] == 0
    assert share["dates"] >= 0.95
    assert share["totals"] >= 0.95
    assert share["suppliers"] >= 0.85
    assert share["lines"] >= 0.80


def test_a_field_of_a_pdf_stands_where_it_was_read(written):
    of = drawn.drawn(1)
    path = written(drawn.pdf(of))
    found = read(path, of.truth.currency)
    picture = page_picture(path, 0, 0, 1000)
    box = found.total.box
    image = Image.frombytes("RGB", (picture.width, picture.height), picture.rgb).convert("L")
    wide, high = image.size
    inside = image.crop(
        tuple(
            int(a) for a in (box.left * wide, box.top * high, box.right * wide, box.bottom * high)
        )
    )
    assert inside.getextrema()[0] < 128, "no ink inside the box"
    assert inside.getextrema()[1] > 200


@pytest.mark.parametrize(
    ("degrees", "matrix"),
    [(90, "0 1 -1 0 {high} 0"), (180, "-1 0 0 -1 {wide} {high}"), (270, "0 -1 1 0 0 {wide}")],
)
def test_a_page_stored_turned_is_read_and_placed_as_it_is_shown(written, tmp_path, degrees, matrix):
    of = drawn.drawn(1)
    plain = read(written(drawn.pdf(of)), of.truth.currency)
    with pikepdf.open(io.BytesIO(drawn.pdf(of))) as document:
        page = document.pages[0]
        wide, high = (int(side) for side in page.MediaBox[2:])
        cm = matrix.format(wide=wide, high=high) + " cm\n"
        page.Contents = document.make_stream(cm.encode() + page.Contents.read_bytes())
        page.MediaBox = [0, 0, high, wide] if degrees != 180 else [0, 0, wide, high]
        page.Rotate = degrees
        document.save(tmp_path / "turned.pdf")
    found = read(tmp_path / "turned.pdf", of.truth.currency)
    assert found.text == plain.text
    assert found.total.value == plain.total.value
    for side in ("left", "top", "right", "bottom"):
        shown, expected = getattr(found.total.box, side), getattr(plain.total.box, side)
        assert shown == pytest.approx(expected, abs=0.01)


def test_a_locked_pdf_is_told(written, tmp_path):
    with pikepdf.open(io.BytesIO(drawn.pdf(drawn.drawn(1)))) as document:
        document.save(tmp_path / "a.pdf", encryption=pikepdf.Encryption(owner="o", user="u"))
    found = read(tmp_path / "a.pdf")
    assert found.is_empty
    (remark,) = found.remarks
    assert remark.startswith("“a.pdf” can't be read: it is locked with a password; ")


@pytest.mark.parametrize("content", [b"%PDF-1.4\n", b"%PDF-1.7\nnonsense" * 50])
def test_a_broken_pdf_is_told(written, content):
    assert read(written(content)).remarks == ("“paper.pdf” can't be read: it is a broken PDF.",)


def test_a_file_that_is_gone_or_no_picture_is_told(written, tmp_path):
    assert "“gone.jpg” can't be read" in read(tmp_path / "gone.jpg").remarks[0]
    assert "“a.jpg” can't be read" in read(written(b"words", "a.jpg")).remarks[0]


def test_a_page_with_nothing_on_it_costs_no_reading() -> None:
    def words(_picture):
        pytest.fail("a blank page was read")

    blank = Picture(40, 30, bytes([250]) * (40 * 30 * 3))
    page = page_of_picture(blank, SimpleNamespace(words=words), 2)
    assert (page.words, page.number) == ((), 2)


def test_of_500_pages_the_first_are_read(written):
    of = drawn.drawn(0)
    content = "\n".join(
        f"BT /F 9 Tf 20 {700 - 15 * i} Td ({left}  {right}) Tj ET"
        for i, (left, right, _) in enumerate(of.rows)
    ).encode("cp1252", "replace")
    found = read(written(drawn.written(content, 400, 750, 500)))
    assert "Of its 500 pages only the first 5 were read." in found.remarks


def test_reading_stops_between_pages_when_asked(written):
    class Stopping(Silent):
        def checkpoint(self):
            raise Cancelled

    path = written(drawn.pdf(drawn.drawn(0)))
    with pytest.raises(Cancelled):
        read_file(path, Known("EUR"), TODAY, Stopping())


def test_without_the_engine_a_picture_says_how_to_add_it(written, no_engine):
    room = io.BytesIO()
    Image.new("RGB", (300, 400), "white").save(room, "JPEG")
    found = read(written(room.getvalue(), "a.jpg"))
    assert found.remarks == (NO_ENGINE,)
    assert "restoration-journal[reading]" in NO_ENGINE


def test_without_the_engine_a_pdf_with_text_is_read_and_a_scan_says_so(written, no_engine):
    of = drawn.drawn(1)
    assert read(written(drawn.pdf(of)), of.truth.currency).total.value == of.truth.total
    room = io.BytesIO()
    Image.new("RGB", (300, 400), "white").save(room, "PDF")
    assert read(written(room.getvalue(), "scan.pdf")).remarks == (NO_ENGINE,)


@needs_engine
@needs_fonts
@pytest.mark.slow
def test_badly_photographed_receipts_are_read(written):
    right, asked = Counter(), Counter()
    for number in (0, 1, 3, 4, 5, 9):
        of = drawn.drawn(number)
        path = written(drawn.photographed(of, number), f"{number}.jpg")
        judge(of.truth, read(path, of.truth.currency, of.truth.order), right, asked)
    assert right["invented"] == 0
    assert right["dates"] >= 5
    assert right["totals"] >= 4
    assert right["lines"] >= 0.8 * asked["lines"]


@needs_engine
@needs_fonts
@pytest.mark.slow
@pytest.mark.parametrize("turn", [90, 180, 270])
def test_paper_that_lies_on_its_side_or_head_is_turned(written, turn):
    of = drawn.drawn(1)
    path = written(drawn.photographed(of, 1, turn=turn), "a.jpg")
    found = read(path, of.truth.currency)
    assert found.turns == (360 - turn,)
    assert found.total.value == of.truth.total


@needs_engine
@needs_fonts
@pytest.mark.slow
def test_two_receipts_in_one_photo_are_told(written):
    import numpy as np

    one, other = (drawn.paper(drawn.drawn(number)) for number in (0, 3))
    high = min(one.shape[0], other.shape[0])
    gap = np.full((high, 120), 90, np.uint8)
    both = np.hstack([one[-high:], gap, other[-high:]])
    room = io.BytesIO()
    Image.fromarray(both).convert("RGB").save(room, "JPEG")
    assert read(written(room.getvalue(), "two.jpg")).remarks == (TWO_RECEIPTS,)


@needs_engine
@needs_fonts
@pytest.mark.slow
def test_two_receipts_below_each_other_are_told(written):
    import numpy as np

    one, other = (drawn.paper(drawn.drawn(number)) for number in (0, 3))
    both = np.vstack([one, np.full((60, one.shape[1]), 90, np.uint8), other])
    room = io.BytesIO()
    Image.fromarray(both).convert("RGB").save(room, "JPEG")
    assert read(written(room.getvalue(), "two.jpg")).remarks == (TWO_RECEIPTS,)


@needs_engine
def test_a_blank_photo_gives_nothing(written):
    room = io.BytesIO()
    Image.new("RGB", (600, 800), "#c8c4bc").save(room, "JPEG")
    found = read(written(room.getvalue(), "blank.jpg"))
    assert found.is_empty
    assert found.remarks == ("No words could be read on this paper.",)
