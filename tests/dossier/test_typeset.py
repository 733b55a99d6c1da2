"""The PDF is read back by two libraries that had no part in making it."""

import errno
import io
import os
import tempfile
import threading
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pikepdf
import pypdfium2
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from journal.domain.areas import Entry
from journal.domain.car import Car
from journal.domain.drawing import Drawing
from journal.domain.errors import Cancelled, JournalError
from journal.domain.ids import EntryId
from journal.domain.photos import Photo, Role
from journal.domain.record import Record
from journal.domain.when import parse
from journal.dossier import typeset
from journal.dossier.compose import compose
from journal.dossier.document import Dossier, DossierReport
from journal.dossier.gaps import gaps
from journal.dossier.typeset import write_pdf
from tests.dossier import records
from tests.dossier.records import finished_record, jpeg, photo, picture, record

MADE_ON = date(2026, 11, 25)


def dossier_of(rec: Record) -> Dossier:
    return compose(rec, records.summary(), records.tables(), gaps(rec), MADE_ON, "0.1.0")


def made(rec: Record, folder: Path, pictures: Any = picture) -> tuple[DossierReport, str]:
    """The report, and the text of all pages with runs of white space made one blank."""
    report = write_pdf(dossier_of(rec), pictures, folder / "dossier.pdf")
    return report, text_of(report.path)


def text_of(path: Path) -> str:
    document = pypdfium2.PdfDocument(path.read_bytes())
    pages = [page.get_textpage().get_text_bounded() for page in document]
    document.close()
    return " ".join("\n".join(pages).split())


def captioned(caption: str) -> Record:
    first, *rest = finished_record().photos
    return replace(finished_record(), photos=(replace(first, caption=caption), *rest))


# What every dossier is


def test_it_is_archival_tagged_and_says_what_it_is(tmp_path: Path) -> None:
    report, _ = made(finished_record(), tmp_path)
    with pikepdf.open(report.path) as pdf:
        with pdf.open_metadata() as metadata:
            assert metadata["pdfaid:part"] == "2"
            assert metadata["pdfaid:conformance"] == "A"
            assert metadata["pdfuaid:part"] == "1"
            assert metadata["dc:title"] == "The Rook"
        assert pdf.Root.MarkInfo.Marked
        assert str(pdf.Root.Lang) == "en"
        assert "/StructTreeRoot" in pdf.Root
        assert not pdf.is_encrypted
        assert len(pdf.pages) == report.pages


def test_every_font_is_embedded(tmp_path: Path) -> None:
    report, _ = made(captioned("Latin, Ελληνικά, Кириллица, 中文, עברית"), tmp_path)
    with pikepdf.open(report.path) as pdf:
        descriptors = [o for o in pdf.objects if _is_a(o, "/FontDescriptor")]
        assert len(descriptors) > 3
        for descriptor in descriptors:
            assert {"/FontFile", "/FontFile2", "/FontFile3"} & set(descriptor.keys())


def _is_a(item: object, kind: str) -> bool:
    return isinstance(item, pikepdf.Dictionary) and item.get("/Type") == kind


def test_every_picture_has_words_in_its_place(tmp_path: Path) -> None:
    report, _ = made(finished_record(), tmp_path)
    with pikepdf.open(report.path) as pdf:
        figures = [
            o for o in pdf.objects if isinstance(o, pikepdf.Dictionary) and o.get("/S") == "/Figure"
        ]
        alts = [str(figure.get("/Alt", "")) for figure in figures]
    assert all(alts)
    assert any("Before: Rust under the paint. 10 January 2016, 10:00." in alt for alt in alts)
    assert any(alt.startswith("Drawing, Left side. Sill, left: finished") for alt in alts)


def test_its_pages_say_what_the_record_says(tmp_path: Path) -> None:
    report, text = made(finished_record(), tmp_path)
    assert report.photos == 3
    assert report.notes == ()
    for said in (
        "The Rook", "HR 10482", "Rusted through.", "Cut out and replaced.", "P2", "€120.00",
        "6 h 30 min", "Ostwell Steel", "the camera’s clock", "the owner’s word", "ABCD0001.JPG",
        "passes nothing as safe",
    ):  # fmt: skip
        assert said in text


def test_every_photo_and_paper_stands_with_its_whole_hash(tmp_path: Path) -> None:
    rec = finished_record()
    _, text = made(rec, tmp_path)
    closed = text.replace(" ", "")
    hashes = [p.sha256 for p in rec.photos] + [s for r in rec.receipts for s in r.papers]
    assert all(sha in closed for sha in hashes)


def test_the_same_record_makes_the_same_file(tmp_path: Path) -> None:
    for name in ("a.pdf", "b.pdf"):
        write_pdf(dossier_of(finished_record()), picture, tmp_path / name)
    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()


# Texts of every kind

_TEXTS = st.text(max_size=40) | st.text("#$*_`<>@\\/[]{}=\"'~-.", max_size=40)

HOSTILE = (
    '#panic("no") #eval("1") $x^2$ *bold* _it_ `raw` <label> @ref \\ // no comment [b] {c} = not',
    "</text> <script>&amp; %s {0} \\u0041",
    "“quotes” 'straight' \"double\" -- --- ... ~ 1971/72",
    "中文说明 日本語のメモ 한국어",
    "🚗 🔧 ∑ ½",
)


@pytest.mark.parametrize("caption", HOSTILE)
def test_a_caption_comes_out_as_it_was_typed(caption: str, tmp_path: Path) -> None:
    _, text = made(captioned(caption), tmp_path)
    assert " ".join(caption.split()) in text


def test_every_other_text_comes_out_as_it_was_typed(tmp_path: Path) -> None:
    odd = HOSTILE[0]
    full = finished_record()
    rec = replace(
        full,
        car=replace(full.car, owner=f"owner {odd}", story=f"story {odd}", maker=f"maker {odd}"),
        areas=(replace(full.areas[0], name=f"area {odd}", found=f"found {odd}"),),
        receipts=(replace(full.receipts[0], supplier=f"supplier {odd}\x07"),),
        photos=(replace(full.photos[0], name=f"name {odd}.jpg"), *full.photos[1:]),
    )
    report, text = made(rec, tmp_path)
    for said in ("owner", "story", "maker", "area", "found", "supplier", "name"):
        assert f"{said} {odd}".casefold() in text.casefold()
    assert "not[U+0007]" in text
    assert len(report.notes) == 1


def test_what_has_no_shape_is_written_out_and_said(tmp_path: Path) -> None:
    report, text = made(captioned("bell \x07 turned \u202e private \ue000"), tmp_path)
    assert "bell [U+0007] turned [U+202E] private [U+E000]" in text
    assert len(report.notes) == 1
    assert "written out by their number" in report.notes[0]


def test_writing_that_no_font_has_is_written_out(tmp_path: Path) -> None:
    report, text = made(captioned("old \U00012000 script"), tmp_path)
    assert "old [U+12000] script" in text
    assert len(report.notes) == 1


@pytest.mark.slow
@settings(max_examples=6, deadline=None, suppress_health_check=list(HealthCheck))
@given(
    st.lists(st.text(max_size=40) | st.text("#$*_`<>@\\\\/[]{}=\"'~-.", max_size=40), min_size=30)
)
def test_no_text_of_any_kind_stops_a_dossier_or_is_read_as_markup(texts: list[str]) -> None:
    texts = ["#panic(1)", *texts]
    rec = record(
        areas=tuple(
            records.area(n, ("found", "2016"), name=text, found=text, done=text)
            for n, text in enumerate(texts, 1)
        ),
        entries=tuple(
            Entry(EntryId(n), parse("2016"), text, None, None) for n, text in enumerate(texts, 1)
        ),
    )
    with tempfile.TemporaryDirectory() as folder:
        report, said = made(rec, Path(folder))
        assert report.pages > 1
        assert "#panic(1)" in said


def test_a_caption_of_twenty_thousand_characters_is_printed_whole(tmp_path: Path) -> None:
    words = [f"word{n}" for n in range(2600)]
    caption = " ".join(words)
    assert len(caption) > 20_000
    _, text = made(captioned(caption), tmp_path)
    printed = set(text.split())
    assert all(word in printed for word in words)


def test_a_caption_without_a_single_blank_stays_on_the_page(tmp_path: Path) -> None:
    report, _ = made(captioned("x" * 20_000), tmp_path)
    document = pypdfium2.PdfDocument(report.path.read_bytes())
    for page in document:
        width = page.get_width()
        right = [o.get_bounds()[2] for o in page.get_objects() if o.type == 1]
        assert all(edge <= width for edge in right)
    document.close()


def test_a_title_with_slashes_and_more_is_only_a_title(tmp_path: Path) -> None:
    title = "Rook 13/00 \\ “the ../grey” #one"
    rec = replace(finished_record(), car=replace(finished_record().car, title=title))
    report, text = made(rec, tmp_path)
    assert title in text
    with pikepdf.open(report.path) as pdf, pdf.open_metadata() as metadata:
        assert metadata["dc:title"] == title


# Few photos, none, damaged ones


def test_a_record_of_nothing_makes_a_dossier(tmp_path: Path) -> None:
    empty = record(car=Car(""), milestones=(), drawing=Drawing((), (), ()))
    report, text = made(empty, tmp_path)
    assert report.photos == 0
    assert "No repair area is recorded." in text
    assert "What this record does not show" in text


def test_without_a_photo_the_drawing_is_on_the_cover(tmp_path: Path) -> None:
    report, text = made(replace(finished_record(), photos=(), pins=(), area_photos=()), tmp_path)
    assert report.photos == 0
    assert "No photo shows it." in text
    assert "No photo is used." in text


def test_one_photo_is_enough(tmp_path: Path) -> None:
    only = finished_record().photos[:1]
    rec = replace(finished_record(), photos=only, area_photos=(records.chosen(1, 1, Role.BEFORE),))
    report, text = made(rec, tmp_path)
    assert report.photos == 1
    assert "No photo shows the work itself." in text


@pytest.mark.parametrize(
    ("answer", "reason"),
    [
        (None, "the original is missing or can’t be read"),
        (b"", "its picture can’t be read"),
        (b"\xff\xd8\xff\xe0 no picture", "its picture can’t be read"),
        (JournalError("ABCD0002.JPG ends too early."), "ABCD0002.JPG ends too early"),
        (OSError("gone"), "gone"),
    ],
)
def test_a_photo_that_cannot_be_shown_is_said_and_the_rest_goes_on(
    answer: bytes | Exception | None, reason: str, tmp_path: Path
) -> None:
    def pictures(shown: Photo, longest: int) -> bytes | None:
        if shown.id != 2:
            return jpeg()
        if isinstance(answer, Exception):
            raise answer
        return answer

    report, text = made(finished_record(), tmp_path, pictures)
    assert report.photos == 2
    assert report.notes == (f"ABCD0002.JPG (P3) isn’t shown: {reason}.",)
    assert f"Not shown: {reason}." in text


def test_damage_is_said_beside_the_photo_and_in_the_notes(tmp_path: Path) -> None:
    first, *rest = finished_record().photos
    rec = replace(finished_record(), photos=(replace(first, damage="ends after 60 % of it"), *rest))
    report, text = made(rec, tmp_path)
    assert "The file is damaged: ends after 60 % of it" in text
    assert report.notes == ("ABCD0001.JPG (P2) is damaged: ends after 60 % of it.",)


def test_pictures_of_any_kind_become_plain_ones_of_the_size_asked_for(tmp_path: Path) -> None:
    from PIL import Image

    def pictures(shown: Photo, _longest: int) -> bytes:
        target = io.BytesIO()
        ink = (0, 200, int(shown.id) * 30, 0)
        Image.new("CMYK", (4000, 3000), ink).save(target, "JPEG")
        return target.getvalue()

    report, _ = made(finished_record(), tmp_path, pictures)
    with pikepdf.open(report.path) as pdf:
        images = [
            o
            for o in pdf.objects
            if isinstance(o, pikepdf.Stream) and o.get("/Subtype") == "/Image"
        ]
        assert len(images) == 3
        # A page is 210 mm wide: 1,819 pixels at 220 to the inch.
        assert all(image.Width <= 1820 for image in images)
        assert not any(image.ColorSpace == "/DeviceCMYK" for image in images)


# Where it is written


def test_an_existing_file_is_replaced(tmp_path: Path) -> None:
    (tmp_path / "dossier.pdf").write_bytes(b"old")
    report, _ = made(finished_record(), tmp_path)
    assert report.path.read_bytes().startswith(b"%PDF")
    assert list(tmp_path.iterdir()) == [report.path]


def test_a_folder_that_does_not_exist_is_one_plain_sentence(tmp_path: Path) -> None:
    with pytest.raises(JournalError, match=r"there is no folder .*nowhere"):
        write_pdf(dossier_of(finished_record()), picture, tmp_path / "nowhere" / "a.pdf")


def test_a_folder_in_the_place_of_the_file_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "a.pdf").mkdir()
    with pytest.raises(JournalError, match="is a folder, not a file"):
        write_pdf(dossier_of(finished_record()), picture, tmp_path / "a.pdf")


def test_a_full_disk_leaves_what_was_there(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    target = tmp_path / "dossier.pdf"
    target.write_bytes(b"the last one")

    def full(path: Path, data: bytes) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(typeset, "write_atomically", full)
    with pytest.raises(JournalError, match="no space left on device") as caught:
        write_pdf(dossier_of(finished_record()), picture, target)
    assert str(caught.value).count(".") == str(target).count(".") + 1
    assert target.read_bytes() == b"the last one"


class _Stopping:
    """Asks to stop after so many checkpoints."""

    def __init__(self, after: int) -> None:
        self.left = after
        self.reports: list[tuple[int, int, str]] = []

    def report(self, done: int, total: int, label: str) -> None:
        self.reports.append((done, total, label))

    def checkpoint(self) -> None:
        self.left -= 1
        if self.left < 0:
            raise Cancelled


@pytest.mark.parametrize("after", [0, 2, 3, 4])
def test_stopping_leaves_no_file_and_no_thread(after: int, tmp_path: Path) -> None:
    threads = threading.active_count()
    with pytest.raises(Cancelled):
        write_pdf(dossier_of(finished_record()), picture, tmp_path / "a.pdf", _Stopping(after))
    assert not list(tmp_path.iterdir())
    assert threading.active_count() == threads


def test_progress_counts_every_picture(tmp_path: Path) -> None:
    context = _Stopping(99)
    write_pdf(dossier_of(finished_record()), picture, tmp_path / "a.pdf", context)
    assert [done for done, _, _ in context.reports] == [1, 2, 3, 3]
    assert context.reports[-1][2] == "Typesetting"


def test_typst_is_loaded_only_when_a_dossier_is_set() -> None:
    import subprocess
    import sys

    code = (
        "import sys, journal.dossier.compose, journal.dossier.typeset;"
        "sys.exit('typst' in sys.modules or 'PIL' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


def test_a_photo_with_no_size_and_no_place_still_fits(tmp_path: Path) -> None:
    rec = replace(
        finished_record(),
        photos=(photo(1, None, width=0, height=0), *finished_record().photos[1:]),
    )
    report, text = made(rec, tmp_path, lambda _p, _n: jpeg(60, 2000))
    assert report.photos == 3
    assert "no date, not known" in text
