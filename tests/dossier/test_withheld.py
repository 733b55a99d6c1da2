"""What is withheld is gone from the finished file, as two other libraries read it."""

import io
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

import pikepdf
import pypdfium2
from PIL import Image

from journal.domain.cuts import Cut, Part, usual
from journal.domain.privacy import Redacted, redact, said_of
from journal.domain.private_words import Private
from journal.dossier.compose import Beside, compose
from journal.dossier.document import DossierReport
from journal.dossier.gaps import gaps
from journal.dossier.leaks import leaks
from journal.dossier.typeset import write_pdf
from tests.domain.test_privacy import private_record
from tests.dossier import records
from tests.dossier.records import picture

GONE = (
    "lindqvist", "ben came", "ostwell", "ab12cd", "ab 12-cd", "ab 12", "hr 10482", "hr-10482",
    "paid 450", "€12", "serial77", "ada_2016", "ada's", "120.00",
)  # fmt: skip


def made(folder: Path, withheld: frozenset[Private]) -> tuple[DossierReport, Redacted]:
    """A dossier with every part in it, from which so much is withheld."""
    whole = private_record()
    given = redact(whole, withheld, ())
    told = [replace(gap, title=given.text(gap.title), detail=given.text(gap.detail),
                    claim=given.text(gap.claim)) for gap in gaps(whole)]  # fmt: skip
    dossier = compose(
        given.record,
        records.summary(),
        records.tables(),
        told,
        date(2026, 11, 25),
        "1",
        replace(usual(Cut.OWN), withheld=withheld),
        Beside(withheld=said_of(given)),
    )
    return write_pdf(dossier, picture, folder / "a.pdf", None, given.finder), given


def everything_said(path: Path) -> Iterator[str]:
    """All texts of a PDF, by two libraries: what pages show, and every string and stream."""
    document = pypdfium2.PdfDocument(path.read_bytes())
    for page in document:
        yield page.get_textpage().get_text_bounded()
    document.close()
    with pikepdf.open(path) as pdf:
        for found in pdf.objects:
            if isinstance(found, pikepdf.Stream):
                if found.get("/Subtype") not in ("/Image", "/CIDFontType0C"):
                    yield found.read_bytes().decode("latin-1")
                yield str(dict(found.items()))
            else:
                yield from strings(found)
        yield str(dict(pdf.docinfo))
        with pdf.open_metadata() as metadata:
            yield str(dict(metadata))


def strings(found: object, depth: int = 0) -> Iterator[str]:
    if isinstance(found, pikepdf.String):
        yield str(found)
    elif depth < 4 and isinstance(found, pikepdf.Dictionary):
        for value in dict(found.items()).values():
            yield from strings(value, depth + 1)
    elif depth < 4 and isinstance(found, pikepdf.Array):
        for value in list(found):  # type: ignore[call-overload]
            yield from strings(value, depth + 1)


def test_nothing_withheld_is_left_in_the_bytes(tmp_path: Path) -> None:
    report, given = made(tmp_path, frozenset(Private))
    assert report.notes == ()
    said = "\n".join(everything_said(report.path)).casefold()
    for gone in GONE:
        assert gone not in said, gone
    assert leaks(report.path.read_bytes(), given.finder) == {}
    assert "[withheld]" in said
    assert "person 2" in said
    assert "supplier 1" in said


def test_the_same_words_are_there_when_nothing_is_withheld(tmp_path: Path) -> None:
    report, _ = made(tmp_path, frozenset())
    said = "\n".join(everything_said(report.path)).casefold()
    for there in ("lindqvist", "ben came", "ostwell", "ab 12-cd", "hr 10482", "€12", "120.00"):
        assert there in said, there
    finder = redact(private_record(), frozenset(Private), ()).finder
    assert set(leaks(report.path.read_bytes(), finder)) == {
        Private.PEOPLE, Private.SUPPLIERS, Private.PLATE, Private.CHASSIS,
    }  # fmt: skip


def test_the_document_says_what_is_withheld(tmp_path: Path) -> None:
    _, given = made(tmp_path, frozenset(Private))
    text = " ".join(" ".join(everything_said(tmp_path / "a.pdf")).split())
    every = said_of(given)
    assert len(every) == len(Private) + 2
    for sentence in every:
        assert sentence in text
    for kind in Private:
        (first, *_) = said_of(redact(private_record(), {kind}, ()))
        assert first in every


def test_without_prices_no_part_names_a_sum_and_none_is_nought(tmp_path: Path) -> None:
    report, _ = made(tmp_path, frozenset({Private.PRICES}))
    said = "\n".join(everything_said(report.path))
    assert "€" not in said
    assert "All money" not in said


def test_a_word_spelt_like_the_programs_own_is_noted_and_stops_nothing(tmp_path: Path) -> None:
    whole = replace(private_record(), car=replace(private_record().car, owner="Dossier"))
    given = redact(whole, {Private.PEOPLE}, ())
    choices = replace(usual(Cut.BUYER), withheld=frozenset({Private.PEOPLE}))
    made_of = compose(
        given.record, records.summary(), records.tables(), (), date(2026, 1, 1), "1", choices
    )
    report = write_pdf(made_of, picture, tmp_path / "a.pdf", None, given.finder)
    assert any("still stands in" in note for note in report.notes)
    assert report.path.exists()


def test_pictures_in_the_file_say_nothing_beside_the_picture(tmp_path: Path) -> None:
    report, _ = made(tmp_path, frozenset(Private))
    count = 0
    with pikepdf.open(report.path) as pdf:
        for found in pdf.objects:
            if isinstance(found, pikepdf.Stream) and found.get("/Subtype") == "/Image":
                raw = found.read_raw_bytes()
                if raw[:2] == b"\xff\xd8":
                    count += 1
                    assert not Image.open(io.BytesIO(raw)).getexif()
                    assert b"Exif" not in raw
                    assert b"http://ns.adobe" not in raw
    assert count


def test_parts_are_in_it_as_chosen(tmp_path: Path) -> None:
    whole = private_record()
    seen = {}
    for cut in Cut:
        given = redact(whole, usual(cut).withheld, ())
        made_of = compose(
            given.record, records.summary(), records.tables(), gaps(whole), date(2026, 1, 1), "1",
            usual(cut),
        )  # fmt: skip
        seen[cut] = made_of
    assert not seen[Cut.BUYER].costs.grids
    assert seen[Cut.VALUER].costs.grids
    assert seen[Cut.VALUER].condition is not None
    assert seen[Cut.BUYER].condition is None
    assert seen[Cut.BUYER].car.story
    bare = compose(
        whole, records.summary(), records.tables(), gaps(whole), date(2026, 1, 1), "1",
        replace(usual(Cut.OWN), parts=frozenset[Part]()),
    )  # fmt: skip
    report = write_pdf(bare, picture, tmp_path / "bare.pdf")
    assert report.pages >= 3
