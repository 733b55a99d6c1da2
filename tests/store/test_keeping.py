"""Originals are never lost or altered unseen: settling, checking, backing up."""

import os
import sqlite3
import stat
from contextlib import closing
from datetime import datetime
from pathlib import Path

import pytest

from journal.domain.errors import Cancelled, JournalError, UndoRefusedError
from journal.domain.ids import PhotoId
from journal.domain.photos import Role
from journal.domain.progress import Silent
from journal.store import clearing, originals
from journal.store.backup import backup, restore
from journal.store.checking import check
from journal.store.folder import open_folder
from journal.store.journal import Journal
from journal.store.originals import path_of, recorded_path
from tests.store.values import CAR, SILL, content, keep, new_photo, receipt

NOW = datetime(2026, 5, 6, 7, 8, 9)


def original(journal: Journal, number: int) -> Path:
    return recorded_path(journal, new_photo(number).sha256)


def overwrite(path: Path, data: bytes) -> None:
    path.chmod(0o644)
    path.write_bytes(data)


def test_originals_lie_under_their_hash_read_only(journal: Journal) -> None:
    keep(journal, 1)
    path = original(journal, 1)
    assert path.parent.name == path.name[:2]
    assert path.read_bytes() == content(1)
    assert not stat.S_IMODE(path.stat().st_mode) & 0o222
    assert list(journal.staging.iterdir()) == []


def test_the_same_bytes_settle_once(journal: Journal) -> None:
    keep(journal, 1)
    again = journal.staging / "again.part"
    again.write_bytes(content(1))
    journal.settle([(again, new_photo(1))])
    assert not again.exists()
    assert journal.known([new_photo(1).sha256, "0" * 64]) == {new_photo(1).sha256}


def test_a_full_disk_while_settling_is_said(
    journal: Journal, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(paths: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(originals, "sync_files", full)
    part = journal.staging / "1.part"
    part.write_bytes(content(1))
    with pytest.raises(JournalError, match="No space left"):
        journal.settle([(part, new_photo(1))])
    assert not path_of(journal.folder, new_photo(1).sha256, ".jpg").exists()


def test_a_whole_journal_has_no_fault(journal: Journal) -> None:
    keep(journal, 1, 2, 3)
    report = check(journal, Silent())
    assert report.faults == ()
    assert (report.originals, report.edits, report.loose) == (3, 2, 0)


def test_check_names_a_flipped_bit_a_missing_and_a_cut_original(journal: Journal) -> None:
    keep(journal, 1, 2, 3, 4)
    flipped = bytearray(content(1))
    flipped[3] ^= 1
    overwrite(original(journal, 1), bytes(flipped))
    original(journal, 2).unlink()
    overwrite(original(journal, 3), content(3)[:-1])
    faults = {fault.what.split(":")[0]: fault.what for fault in check(journal, Silent()).faults}
    assert set(faults) == {"DSCF0001.JPG", "DSCF0002.JPG", "DSCF0003.JPG"}
    assert "SHA-256" in faults["DSCF0001.JPG"]
    assert "missing" in faults["DSCF0002.JPG"]
    assert "8 bytes instead of 9" in faults["DSCF0003.JPG"]


def test_check_names_rows_and_log_altered_from_outside(journal: Journal) -> None:
    keep(journal, 1)
    db = journal.db
    db.execute("DROP TRIGGER photos_update_guard")
    db.execute("DROP TRIGGER photos_update_log")
    db.execute("UPDATE photos SET caption = 'never rusty'")
    (fault,) = check(journal, Silent()).faults
    assert "photos" in fault.what
    db.execute("DROP TRIGGER changes_kept")
    db.execute("UPDATE changes SET after = replace(after, '2016-03-05', '2015-03-05')")
    faults = [
        fault.what for fault in check(journal, Silent()).faults if fault.where == "change log"
    ]
    assert any("Add 1 photos" in what for what in faults)


def test_what_was_undone_is_loose_and_no_fault(journal: Journal) -> None:
    keep(journal, 1)
    journal.undo()
    report = check(journal, Silent())
    assert report.faults == ()
    assert report.loose == 1
    keep(journal, 1)
    assert check(journal, Silent()).loose == 0


class Impatient(Silent):
    def checkpoint(self) -> None:
        raise Cancelled


def test_backup_is_whole_and_opens(journal: Journal, tmp_path: Path) -> None:
    keep(journal, 1, 2)
    made = backup(journal, tmp_path / "safe", Silent(), NOW)
    assert made.name == "Halden Rook 2026-05-06 070809"
    with open_folder(made) as copy:
        assert copy.car.get() == CAR
        assert check(copy, Silent()).faults == ()
        assert len(copy.photos.all()) == 2


def test_restore_makes_a_journal_again(journal: Journal, tmp_path: Path) -> None:
    keep(journal, 1)
    made = backup(journal, tmp_path / "safe", Silent(), NOW)
    restore(made, tmp_path / "again", Silent())
    with open_folder(tmp_path / "again") as copy:
        assert check(copy, Silent()).originals == 1
    with pytest.raises(JournalError, match="holds something"):
        restore(made, tmp_path / "again", Silent())


def test_backup_refuses_an_altered_original_and_leaves_nothing(
    journal: Journal, tmp_path: Path
) -> None:
    keep(journal, 1)
    overwrite(original(journal, 1), b"something else")
    with pytest.raises(JournalError, match="altered"):
        backup(journal, tmp_path / "safe", Silent(), NOW)
    assert list((tmp_path / "safe").iterdir()) == []


def test_cancelled_backup_leaves_nothing(journal: Journal, tmp_path: Path) -> None:
    keep(journal, 1)
    with pytest.raises(Cancelled):
        backup(journal, tmp_path / "safe", Impatient(), NOW)
    assert list((tmp_path / "safe").iterdir()) == []


def test_backup_inside_the_journal_is_refused(journal: Journal) -> None:
    with pytest.raises(JournalError, match="inside the journal"):
        backup(journal, journal.folder / "copies", Silent(), NOW)


def test_backup_of_a_journal_being_written_is_consistent(journal: Journal, tmp_path: Path) -> None:
    keep(journal, 1)
    with closing(sqlite3.connect(journal.folder / "journal.db")) as other:
        other.execute("BEGIN IMMEDIATE")
        made = backup(journal, tmp_path / "safe", Silent(), NOW)
    with open_folder(made, read_only=True) as copy:
        assert check(copy, Silent()).faults == ()


def test_clearing_out_takes_only_what_nothing_shows(journal: Journal, tmp_path: Path) -> None:
    one, two, _ = keep(journal, 1, 2, 3)
    with journal.edit("Use and remove"):
        area = journal.areas.add("Sill", [SILL], "")
        journal.areas.choose_photo(area, PhotoId(one), Role.BEFORE)
        for photo in (one, two):
            journal.photos.set_removed(PhotoId(photo), removed=True)
        journal.receipts.add(receipt(papers=(new_photo(2).sha256,)))
    gone: list[Path] = []

    def trash(path: Path) -> None:
        gone.append(path)
        path.rename(tmp_path / path.name)

    assert clearing.removed(journal) == 1
    assert clearing.clear_out(journal, trash) == 1
    assert [path.name for path in gone] == [new_photo(1).sha256 + ".jpg"]
    assert check(journal, Silent()).faults == ()
    with pytest.raises(UndoRefusedError, match="take it back from the trash"):
        journal.undo()
    (tmp_path / gone[0].name).rename(gone[0])
    journal.undo()
    assert len(journal.photos.removed()) == 2


def test_an_original_the_trash_refuses_stays_loose(journal: Journal) -> None:
    (one,) = keep(journal, 1)
    with journal.edit("Remove"):
        journal.photos.set_removed(PhotoId(one), removed=True)

    def refuse(path: Path) -> None:
        raise OSError("no trash here")

    with pytest.raises(JournalError, match="left in place"):
        clearing.clear_out(journal, refuse)
    assert check(journal, Silent()).loose == 1


@pytest.mark.skipif(os.name == "nt", reason="Windows has no such names")
def test_sha256_is_the_standards(journal: Journal) -> None:
    # FIPS 180 example values for "abc" and the empty message.
    from journal.files.copying import hash_file

    path = journal.folder / "abc"
    path.write_bytes(b"abc")
    assert hash_file(path) == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    path.write_bytes(b"")
    assert hash_file(path) == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"
