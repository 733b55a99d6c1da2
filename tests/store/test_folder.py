"""A journal folder: what it is made of, and what is refused."""

import shutil
import sqlite3
import subprocess
import sys
import threading
from contextlib import closing
from pathlib import Path

import pytest

from journal.domain.errors import JournalError, ReadOnlyError
from journal.store import folder as store
from journal.store import migrations
from journal.store.connection import APPLICATION_ID
from journal.store.journal import Journal
from tests.store.values import CAR, DRAWING, SILL


def test_database_header_is_as_sqlites_file_format_says(journal: Journal) -> None:
    # SQLite database file format, "The Database Header": magic at 0, versions at 18 and 19
    # (1 = rollback journal), user_version at 60, application_id at 68, big-endian.
    header = (journal.folder / "journal.db").read_bytes()[:100]
    assert header[:16] == bytes.fromhex("53514c69746520666f726d6174203300")
    assert header[18:20] == b"\x01\x01"
    assert int.from_bytes(header[60:64], "big") == migrations.SCHEMA_VERSION
    assert int.from_bytes(header[68:72], "big") == APPLICATION_ID
    assert journal.db.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
    assert journal.db.execute("PRAGMA synchronous").fetchone() == (3,)


def test_what_is_recorded_comes_back(journal: Journal) -> None:
    assert journal.car.get() == CAR
    assert journal.drawing.get() == DRAWING


def test_folder_says_what_it_is_without_the_program(journal: Journal) -> None:
    text = (journal.folder / "READ ME.txt").read_text(encoding="utf-8")
    assert "SQLite" in text
    assert "SHA-256" in text


def test_new_journal_never_goes_into_a_folder_in_use(tmp_path: Path) -> None:
    (tmp_path / "letter.txt").write_text("mine")
    with pytest.raises(JournalError, match="holds something already"):
        store.make(tmp_path, CAR, DRAWING)
    assert [p.name for p in tmp_path.iterdir()] == ["letter.txt"]


def test_second_opening_reads_only_and_names_the_holder(journal: Journal) -> None:
    with store.open_folder(journal.folder) as second:
        assert second.read_only
        assert "process" in second.notice
        assert second.car.get() == CAR
        with pytest.raises(ReadOnlyError), second.edit("Anything"):
            pass
        with pytest.raises(sqlite3.OperationalError, match="readonly"):
            second.db.execute("UPDATE car SET title = 'x'")


def test_lock_of_a_killed_program_is_free_again(tmp_path: Path) -> None:
    folder = tmp_path / "Rook"
    store.make(folder, CAR, DRAWING).close()
    code = (
        "import os, pathlib, sys; from journal.store.folder import open_folder; "
        "j = open_folder(pathlib.Path(sys.argv[1])); assert not j.read_only; os._exit(9)"
    )
    assert subprocess.run([sys.executable, "-c", code, str(folder)], check=False).returncode == 9
    with store.open_folder(folder) as again:
        assert not again.read_only


@pytest.mark.parametrize(
    "content", [b"", b"not a database at all, but long enough to look at" * 40]
)
def test_a_file_that_is_no_database_is_named_and_left(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "journal.db").write_bytes(content)
    with pytest.raises(JournalError, match=r"journal\.db"):
        store.open_folder(tmp_path)
    assert (tmp_path / "journal.db").read_bytes() == content


def test_a_folder_without_a_journal_is_named(tmp_path: Path) -> None:
    with pytest.raises(JournalError, match="is not a journal"):
        store.open_folder(tmp_path)
    assert list(tmp_path.iterdir()) == []


def test_somebody_elses_database_is_left_alone(tmp_path: Path) -> None:
    with closing(sqlite3.connect(tmp_path / "journal.db")) as db:
        db.execute("CREATE TABLE recipes (name TEXT)")
        db.commit()
    with pytest.raises(JournalError, match="not a journal's"):
        store.open_folder(tmp_path)


def test_cut_off_database_is_refused_in_words(journal: Journal, tmp_path: Path) -> None:
    copy = tmp_path / "copy"
    copy.mkdir()
    (copy / "journal.db").write_bytes((journal.folder / "journal.db").read_bytes()[:6000])
    with pytest.raises(JournalError, match="damaged"):
        store.open_folder(copy)


def test_newer_journal_opens_read_only_with_a_word(tmp_path: Path) -> None:
    folder = tmp_path / "Rook"
    with store.make(folder, CAR, DRAWING) as made:
        made.db.execute(f"PRAGMA user_version = {migrations.SCHEMA_VERSION + 1}")
    before = (folder / "journal.db").read_bytes()
    with store.open_folder(folder) as opened:
        assert opened.read_only
        assert "newer version" in opened.notice
        assert opened.drawing.panels()[0].id == SILL
    assert (folder / "journal.db").read_bytes() == before


def test_older_journal_is_backed_up_then_migrated(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = tmp_path / "Rook"
    store.make(folder, CAR, DRAWING).close()
    old_steps = migrations._steps

    def with_one_more() -> object:
        steps = old_steps()

        @steps()
        def m999_later(db: object) -> None:
            db.conn.execute("CREATE TABLE later (id INTEGER PRIMARY KEY)")  # type: ignore[attr-defined]

        return steps

    monkeypatch.setattr(migrations, "_steps", with_one_more)
    now = migrations.SCHEMA_VERSION
    monkeypatch.setattr(migrations, "SCHEMA_VERSION", now + 1)
    with store.open_folder(folder) as opened:
        assert migrations.version(opened.db) == now + 1
        assert opened.db.execute("SELECT count(*) FROM later").fetchone() == (0,)
        assert opened.car.get() == CAR
    with closing(sqlite3.connect(folder / f"journal before version {now + 1}.db")) as kept:
        assert kept.execute("PRAGMA user_version").fetchone() == (now,)
        assert kept.execute("SELECT title FROM car").fetchone() == ("Halden Rook",)


def test_folder_that_cannot_be_written_opens_read_only(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = tmp_path / "Rook"
    store.make(folder, CAR, DRAWING).close()

    class Unwritable:
        def __init__(self, path: Path) -> None:
            raise JournalError(f"The folder “{path}” can't be written to (Read-only file system).")

    # Rights mean nothing to root, so the lock's refusal stands in for the file system's.
    monkeypatch.setattr(store, "Lock", Unwritable)
    with store.open_folder(folder) as opened:
        assert opened.read_only
        assert "can't be written to" in opened.notice


def test_previews_come_back_when_their_file_is_lost_or_spoilt(journal: Journal) -> None:
    journal.previews.put("a" * 64, b"jpeg", rough=False)
    folder = journal.folder
    journal.close()
    (folder / "previews.db").write_bytes(b"spoilt" * 1000)
    with store.open_folder(folder) as again:
        assert again.previews.get("a" * 64) is None
        again.previews.put("a" * 64, b"jpeg", rough=False)
        assert again.previews.get("a" * 64) == b"jpeg"


def test_a_rough_preview_never_replaces_a_final_one(journal: Journal) -> None:
    journal.previews.put("b" * 64, b"rough", rough=True)
    assert not journal.previews.is_final("b" * 64)
    journal.previews.put("b" * 64, b"final", rough=False)
    journal.previews.put("b" * 64, b"rough", rough=True)
    assert journal.previews.get("b" * 64) == b"final"
    assert journal.previews.is_final("b" * 64)


def test_interrupted_arrivals_are_cleared_at_opening(tmp_path: Path) -> None:
    folder = tmp_path / "Rook"
    with store.make(folder, CAR, DRAWING) as made:
        (made.staging / "half.part").write_bytes(b"half a photo")
    with store.open_folder(folder) as again:
        assert list(again.staging.iterdir()) == []


def test_folder_can_be_moved(tmp_path: Path) -> None:
    store.make(tmp_path / "Rook", CAR, DRAWING).close()
    shutil.move(tmp_path / "Rook", tmp_path / "elsewhere, renamed")
    with store.open_folder(tmp_path / "elsewhere, renamed") as opened:
        assert opened.car.get() == CAR


def test_closing_while_other_threads_read_ends_in_order(journal: Journal) -> None:
    reading, ended = threading.Barrier(5), []

    def read() -> None:
        reading.wait()
        try:
            for _ in range(2000):
                journal.drawing.panels()
                journal.previews.get("a" * 64)
        except JournalError as error:
            ended.append(str(error))

    threads = [threading.Thread(target=read) for _ in range(4)]
    for thread in threads:
        thread.start()
    reading.wait()
    journal.close()
    for thread in threads:
        thread.join()
    assert ended == ["The journal is closed."] * 4
    with pytest.raises(JournalError, match="closed"):
        journal.car.get()
