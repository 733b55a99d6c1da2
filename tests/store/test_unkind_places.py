"""Copies to and from places that are full, foreign, or already somebody's."""

import errno
import os
import resource
import stat
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path

import pytest

from journal.domain.errors import JournalError
from journal.domain.progress import Silent
from journal.store.backup import backup, restore
from journal.store.checking import check
from journal.store.folder import open_folder, refuse_inside, refuse_own_place
from journal.store.journal import Journal
from tests.store.values import keep

NOW = datetime(2026, 5, 6, 7, 8, 9)


def test_restoring_never_clears_a_folder_that_looks_unfinished(
    journal: Journal, tmp_path: Path
) -> None:
    keep(journal, 1)
    made = backup(journal, tmp_path / "safe", Silent(), NOW)
    mine = tmp_path / "again (unfinished)" / "mine.txt"
    mine.parent.mkdir()
    mine.write_text("the only copy")
    restore(made, tmp_path / "again", Silent())
    assert mine.read_text() == "the only copy"


def test_a_backup_names_the_original_that_is_missing(journal: Journal, tmp_path: Path) -> None:
    keep(journal, 1)
    (gone,) = journal.folder.glob("originals/??/*")
    gone.unlink()
    with pytest.raises(JournalError, match=gone.name):
        backup(journal, tmp_path / "safe", Silent(), NOW)
    assert list((tmp_path / "safe").iterdir()) == []


def test_a_backup_through_a_link_into_the_journal_is_refused(
    journal: Journal, tmp_path: Path
) -> None:
    (tmp_path / "link").symlink_to(journal.folder / "originals")
    with pytest.raises(JournalError, match="inside the journal"):
        backup(journal, tmp_path / "link", Silent(), NOW)


@pytest.mark.skipif(sys.version_info >= (3, 13), reason="a loop is told when it is written to")
def test_a_loop_of_links_is_no_place_for_a_document(journal: Journal, tmp_path: Path) -> None:
    (tmp_path / "one").symlink_to(tmp_path / "other")
    (tmp_path / "other").symlink_to(tmp_path / "one")
    for refuse in (refuse_own_place, refuse_inside):
        with pytest.raises(JournalError, match="can't be used"):
            refuse(journal.folder, tmp_path / "one" / "a.pdf")


def test_a_backup_from_within_the_folder_bears_its_name(
    journal: Journal, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(journal.folder)
    with open_folder(Path(), read_only=True) as here:
        made = backup(here, tmp_path / "safe", Silent(), NOW)
    assert made.name.startswith("Halden Rook 2026")


def test_a_full_disk_ends_a_backup_in_words(journal: Journal, tmp_path: Path) -> None:
    with _files_no_longer_than(20_000), pytest.raises(JournalError, match="was not made"):
        backup(journal, tmp_path / "safe", Silent(), NOW)
    assert list((tmp_path / "safe").iterdir()) == []


def test_a_backup_is_made_where_folders_cannot_be_flushed_nor_permissions_set(
    journal: Journal, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    keep(journal, 1)
    _make_like_a_simple_stick(monkeypatch)
    made = backup(journal, tmp_path / "stick", Silent(), NOW)
    with open_folder(made, read_only=True) as copy:
        assert check(copy, Silent()).faults == ()


@contextmanager
def _files_no_longer_than(size: int) -> Iterator[None]:
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))


def _make_like_a_simple_stick(monkeypatch: pytest.MonkeyPatch) -> None:
    flush = os.fsync

    def fsync(descriptor: int) -> None:
        if stat.S_ISDIR(os.fstat(descriptor).st_mode):
            raise OSError(errno.EINVAL, "Invalid argument")
        flush(descriptor)

    def chmod(path: Path, mode: int) -> None:
        raise OSError(errno.EPERM, "Operation not permitted", str(path), None, str(mode))

    monkeypatch.setattr(os, "fsync", fsync)
    monkeypatch.setattr(Path, "chmod", chmod)


@pytest.mark.skipif(os.name == "nt", reason="Windows has no such rights")
@pytest.mark.parametrize("closed", ["folder", "journal.db"])
def test_a_journal_that_may_not_be_written_opens_to_read(
    journal: Journal, monkeypatch: pytest.MonkeyPatch, closed: str
) -> None:
    journal.close()
    shut = journal.folder if closed == "folder" else journal.folder / closed
    ask = os.access
    # Rights mean nothing to root, so the system's answer is stood in for.
    monkeypatch.setattr(os, "access", lambda path, mode: path != shut and ask(path, mode))
    with open_folder(journal.folder) as opened:
        assert opened.read_only
        assert shut.name in opened.notice
        assert "can't be written to" in opened.notice


def test_a_name_that_no_disk_takes_is_refused_in_words(journal: Journal, tmp_path: Path) -> None:
    endless = tmp_path / ("x" * 300)
    with pytest.raises(JournalError, match="can't be opened"):
        open_folder(endless)
    with pytest.raises(JournalError, match="can't be used"):
        restore(journal.folder, endless, Silent())
