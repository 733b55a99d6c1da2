"""Originals when things go wrong half-way, and files among them that are none."""

import os
import stat
from pathlib import Path

import pytest

from journal.domain.errors import JournalError
from journal.domain.ids import PhotoId
from journal.domain.progress import Silent
from journal.files.trash import to_trash
from journal.store import clearing
from journal.store.checking import check
from journal.store.journal import Journal
from tests.store.values import content, keep, new_photo


def stage(journal: Journal, number: int) -> tuple[Path, int]:
    path = journal.staging / f"{number}.part"
    path.write_bytes(content(number))
    return path, number


def test_what_was_undone_stays_when_adding_it_again_fails(journal: Journal) -> None:
    keep(journal, 1)
    journal.undo()
    path, _ = stage(journal, 1)
    placed = journal.settle([(path, new_photo(1))])
    journal.withdraw(placed)
    journal.redo()
    assert check(journal, Silent()).faults == ()


def test_what_could_not_be_recorded_is_taken_out_but_never_what_is_on_record(
    journal: Journal,
) -> None:
    staged = [(stage(journal, number)[0], new_photo(number)) for number in (1, 2)]
    placed = journal.settle(staged)
    assert len(placed) == 2
    with journal.edit("Add 1 photo"):
        journal.photos.add([new_photo(2)])
    journal.withdraw(placed)
    report = check(journal, Silent())
    assert (report.faults, report.loose, report.originals) == ((), 0, 1)


def test_a_spoilt_file_in_the_place_of_an_original_gives_way_to_the_whole_one(
    journal: Journal,
) -> None:
    keep(journal, 1)
    journal.undo()
    (left,) = journal.folder.glob("originals/??/*")
    left.chmod(0o644)
    left.write_bytes(b"pictare 1")
    keep(journal, 1)
    assert check(journal, Silent()).faults == ()


def test_a_disk_that_fills_up_half_way_leaves_no_original_behind(
    journal: Journal, monkeypatch: pytest.MonkeyPatch
) -> None:
    staged = [(stage(journal, number)[0], new_photo(number)) for number in (1, 2)]
    rename = Path.replace

    def replace(path: Path, target: Path) -> Path:
        if path.name == "2.part":
            raise OSError(28, "No space left on device")
        return rename(path, target)

    monkeypatch.setattr(Path, "replace", replace)
    with pytest.raises(JournalError, match="No space left"):
        journal.settle(staged)
    assert check(journal, Silent()).loose == 0


def test_files_of_others_among_the_originals_are_never_cleared_out(journal: Journal) -> None:
    (one,) = keep(journal, 1)
    with journal.edit("Remove 1 photo"):
        journal.photos.set_removed(PhotoId(one), removed=True)
    place = journal.folder / "originals"
    others = [place / "notes.txt", place / "ab" / "Thumbs.db", place / "mine" / ("a" * 64)]
    for other in others:
        other.parent.mkdir(exist_ok=True)
        other.write_text("the owner's")
    assert clearing.clear_out(journal, Path.unlink) == 1
    assert all(other.exists() for other in others)
    assert check(journal, Silent()).loose == 0


@pytest.mark.skipif(os.name == "nt", reason="Windows knows read-only alone")
def test_a_file_that_the_trash_refuses_stays_read_only(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    import send2trash

    def refuse(_path: str) -> None:
        raise PermissionError("no trash here")

    monkeypatch.setattr(send2trash, "send2trash", refuse)
    kept = tmp_path / "kept"
    kept.touch(0o444)
    kept.chmod(0o444)
    with pytest.raises(PermissionError):
        to_trash(kept)
    assert stat.S_IMODE(kept.stat().st_mode) == 0o444
