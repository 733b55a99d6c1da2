"""Originals of photos and papers: put back when missing, kept once, never left about."""

from pathlib import Path

import pytest

from journal.actions.add_photos import add_photos
from journal.actions.checking import check
from journal.actions.receipts import record_receipt
from journal.actions.session import Session
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId
from journal.domain.receipts import Share
from tests.files.faults import FullDisk, full_disk
from tests.intake.made import jpeg
from tests.store.values import receipt

__all__ = ["full_disk"]


@pytest.mark.parametrize("damage", ["missing", "cut off", "folder gone"])
def test_adding_a_photo_again_puts_back_what_is_missing(
    session: Session, tmp_path: Path, damage: str
) -> None:
    photo = tmp_path / "IMG_0001.JPG"
    photo.write_bytes(jpeg("2016:03:05 14:00:00", seed=1))
    add_photos(session, [photo])
    (kept,) = session.folder.glob("originals/??/*")
    kept.chmod(0o644)
    if damage == "cut off":
        kept.write_bytes(photo.read_bytes()[:-1])
    else:
        kept.unlink()
    if damage == "folder gone":
        kept.parent.rmdir()
    assert check(session).faults
    report = add_photos(session, [photo])
    assert (len(report.added), len(report.already), report.refused) == (0, 1, ())
    assert report.changes.edit_id is None
    assert check(session).faults == ()
    assert not list(session.journal.staging.iterdir())


def test_a_paper_that_comes_as_a_photo_of_another_ending_is_kept_once(
    session: Session, tmp_path: Path
) -> None:
    scan, photo = tmp_path / "scan.jpeg", tmp_path / "IMG_0001.JPG"
    for path in (scan, photo):
        path.write_bytes(jpeg("2016:03:05 14:00:00", seed=1))
    record_receipt(session, receipt(), [scan])
    assert len(add_photos(session, [photo]).added) == 1
    report = check(session)
    assert (report.faults, report.loose) == ((), 0)


def test_a_photo_that_is_also_a_paper_of_another_ending_is_kept_once(
    session: Session, tmp_path: Path
) -> None:
    scan, photo = tmp_path / "scan.jpeg", tmp_path / "IMG_0001.JPG"
    for path in (scan, photo):
        path.write_bytes(jpeg("2016:03:05 14:00:00", seed=1))
    add_photos(session, [photo])
    record_receipt(session, receipt(), [scan])
    report = check(session)
    assert (report.faults, report.loose) == ((), 0)


def test_papers_of_a_receipt_that_could_not_be_recorded_leave_nothing(
    session: Session, tmp_path: Path
) -> None:
    scan = tmp_path / "scan.pdf"
    scan.write_bytes(b"%PDF-1.4 made up")
    with pytest.raises(JournalError, match="not in the journal"):
        record_receipt(session, receipt(Share(AreaId(99), 1)), [scan])
    assert check(session).loose == 0
    assert not list(session.folder.glob("originals/??/*"))


def test_a_full_disk_is_not_laid_on_the_paper(
    session: Session, tmp_path: Path, full_disk: FullDisk
) -> None:
    scan = tmp_path / "scan.pdf"
    scan.write_bytes(b"%PDF-1.4 made up")
    full_disk.fill(1)
    with pytest.raises(JournalError, match="papers can't be kept: No space left") as refused:
        record_receipt(session, receipt(), [scan])
    assert "scan.pdf" not in str(refused.value)
    assert check(session).loose == 0
