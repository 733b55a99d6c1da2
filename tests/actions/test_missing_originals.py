"""Adding a photo again puts its original back where that went missing."""

from pathlib import Path

import pytest

from journal.actions.add_photos import add_photos
from journal.actions.checking import check
from journal.actions.receipts import record_receipt
from journal.actions.session import Session
from tests.intake.made import jpeg
from tests.store.values import receipt


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
