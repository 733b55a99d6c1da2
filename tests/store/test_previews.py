"""Previews whose file is spoilt, held by another program, or none at all."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from journal.store import folder as store
from journal.store.journal import Journal
from tests.store.values import CAR, DRAWING

SHA = "ab" * 32


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    with store.make(tmp_path / "Rook", CAR, DRAWING) as journal:
        journal.previews.put_many((f"{i:064}", b"\xff" * 9000, False) for i in range(40))
    return tmp_path / "Rook"


def keep_and_get(journal: Journal) -> bytes | None:
    journal.previews.put(SHA, b"small", rough=False)
    return journal.previews.get(SHA)


def test_a_page_spoilt_inside_stops_nothing_and_heals_at_the_next_opening(folder: Path) -> None:
    path = folder / "previews.db"
    spoilt = bytearray(path.read_bytes())
    spoilt[16384:-16384] = b"\xa5" * (len(spoilt) - 2 * 16384)
    path.write_bytes(spoilt)
    with store.open_folder(folder) as journal:
        keep_and_get(journal)
        assert journal.previews.get(f"{1:064}") is None
    with store.open_folder(folder) as journal:
        assert keep_and_get(journal) == b"small"


def test_a_folder_in_their_place_stops_nothing(folder: Path) -> None:
    (folder / "previews.db").unlink()
    (folder / "previews.db" / "inside").mkdir(parents=True)
    with store.open_folder(folder) as journal:
        assert keep_and_get(journal) == b"small"


def test_previews_that_another_program_holds_are_left_to_it(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    connect = sqlite3.connect
    monkeypatch.setattr(
        sqlite3, "connect", lambda *args, **named: connect(*args, **{**named, "timeout": 0})
    )
    with closing(connect(folder / "previews.db")) as other:
        other.execute("BEGIN EXCLUSIVE")
        with store.open_folder(folder) as journal:
            keep_and_get(journal)
    with store.open_folder(folder) as journal:
        assert journal.previews.is_final(f"{1:064}")


def test_a_full_disk_is_forgotten_once_there_is_room(folder: Path) -> None:
    with store.open_folder(folder) as journal:
        db = journal.previews._connections.get()
        (pages,) = db.execute("PRAGMA page_count").fetchone()
        db.execute(f"PRAGMA max_page_count = {pages}")
        journal.previews.put(SHA, b"\xff" * 200_000, rough=False)
        assert journal.previews.get(SHA) is None
        db.execute(f"PRAGMA max_page_count = {pages + 100}")
        assert keep_and_get(journal) == b"small"
