"""A file from outside is found among a journal's originals, by its bytes or by its looks."""

import io
from collections.abc import Iterator
from pathlib import Path

import pytest
from PIL import Image

from journal.actions.add_photos import add_photos
from journal.actions.checking import check_path
from journal.actions.journals import new_journal
from journal.actions.receipts import record_receipt
from journal.actions.session import Session
from journal.domain.car import Car
from journal.domain.checks import BundleCheck, CheckReport, Likeness, PictureCheck
from journal.domain.errors import JournalError
from tests.dossier.bags import as_folder, as_tar, as_zip, bag_files
from tests.store.values import receipt
from tests.vision.test_same_picture import drawn


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    with new_journal(tmp_path / "Halden Rook", Car("Halden Rook")) as made:
        paths = []
        for number in range(4):
            path = tmp_path / f"IMG_{number}.jpg"
            drawn(number, (800, 600)).save(path, quality=92)
            paths.append(path)
        add_photos(made, paths)
        yield made


def looked_up(session: Session, path: Path) -> PictureCheck:
    report = check_path(path, journal=session)
    assert isinstance(report, PictureCheck)
    return report


def test_an_original_is_known_by_its_bytes_whatever_it_is_called(
    session: Session, tmp_path: Path
) -> None:
    other = tmp_path / "from the forum.jpeg"
    other.write_bytes((tmp_path / "IMG_2.jpg").read_bytes())
    report = looked_up(session, other)
    (found,) = report.pictures
    assert (found.likeness, found.name, found.distance) == (Likeness.ORIGINAL, "IMG_2.jpg", None)
    assert report.faults == ()
    (kept,) = session.folder.glob(f"originals/??/{found.sha256}.jpg")
    kept.unlink()
    assert "missing" in looked_up(session, other).faults[0].what


def test_a_paper_is_known_by_its_bytes_too(session: Session, tmp_path: Path) -> None:
    paper = tmp_path / "scan.jpg"
    drawn(50).save(paper)
    record_receipt(session, receipt(), [paper])
    (found,) = looked_up(session, paper).pictures
    assert (found.likeness, found.name) == (Likeness.ORIGINAL, "a paper of the journal")


def test_a_copy_is_the_same_picture_and_never_called_the_original(
    session: Session, tmp_path: Path
) -> None:
    copy = tmp_path / "copy.jpg"
    with Image.open(tmp_path / "IMG_1.jpg") as image:
        image.resize((400, 300)).save(copy, quality=60)
    report = looked_up(session, copy)
    (found,) = report.pictures
    assert (found.likeness, found.name) == (Likeness.SAME_PICTURE, "IMG_1.jpg")
    assert found.distance is not None
    assert "judged by looks" in report.notes[0]


def test_one_changed_bit_makes_a_photo_a_copy(session: Session, tmp_path: Path) -> None:
    path = tmp_path / "spoilt.jpg"
    data = bytearray((tmp_path / "IMG_0.jpg").read_bytes())
    data[-3] ^= 1
    path.write_bytes(data)
    assert looked_up(session, path).pictures[0].likeness is Likeness.SAME_PICTURE


def test_another_picture_is_unknown(session: Session, tmp_path: Path) -> None:
    path = tmp_path / "other.jpg"
    drawn(77, (800, 600)).save(path)
    report = looked_up(session, path)
    assert report.pictures[0].likeness is Likeness.UNKNOWN
    assert any("was cut" in note for note in report.notes), "why it may be of it all the same"


def test_the_pictures_on_the_pages_of_a_pdf_are_matched_each(
    session: Session, tmp_path: Path
) -> None:
    pages = [drawn(number, (800, 600)).resize((500, 375)) for number in (3, 88, 0)]
    path = tmp_path / "pages.pdf"
    pages[0].save(path, "PDF", save_all=True, append_images=pages[1:])
    found = looked_up(session, path).pictures
    assert [one.what for one in found] == [f"page {n}, picture 1" for n in (1, 2, 3)]
    assert [one.name for one in found] == ["IMG_3.jpg", "", "IMG_0.jpg"]
    assert found[1].likeness is Likeness.UNKNOWN


def test_what_is_no_picture_is_refused_by_name(session: Session, tmp_path: Path) -> None:
    odd = tmp_path / "notes.jpg"
    odd.write_bytes(b"no picture at all")
    with pytest.raises(JournalError, match=r"notes\.jpg"):
        check_path(odd, journal=session)
    empty = tmp_path / "empty.pdf"
    room = io.BytesIO()
    Image.new("1", (20, 20)).save(room, "PDF")
    empty.write_bytes(room.getvalue())
    with pytest.raises(JournalError, match="no page of it holds a picture"):
        check_path(empty, journal=session)


def test_what_lies_at_a_path_is_checked_as_what_it_is(session: Session, tmp_path: Path) -> None:
    assert isinstance(check_path(session.folder), CheckReport)
    files = bag_files({"a.txt": b"a"})
    for path in (
        as_folder(tmp_path / "bag", files),
        as_zip(tmp_path / "bag.zip", files),
        as_tar(tmp_path / "bag.TAR", files),
    ):
        assert isinstance(check_path(path), BundleCheck)
    with pytest.raises(JournalError, match="in which journal"):
        check_path(tmp_path / "IMG_0.jpg")
    with pytest.raises(JournalError, match="There is nothing at"):
        check_path(tmp_path / "nowhere")
