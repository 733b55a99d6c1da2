"""A journal of each released version is brought to the present one with all it holds."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from journal.domain.progress import Silent
from journal.store import folder as store
from journal.store import migrations
from journal.store.checking import check
from journal.store.edits import differences, walk_chain
from journal.store.journal import Journal
from journal.store.schema import first_schema
from journal.store.tables import FIRST, SECOND
from tests.store.values import CAR, DRAWING


@pytest.fixture
def first_version(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A journal as version 1 wrote it."""
    folder = tmp_path / "Rook"

    def only_the_first(db: sqlite3.Connection) -> None:
        for statement in first_schema():
            db.execute(statement)
        db.execute("PRAGMA user_version = 1")

    with monkeypatch.context() as patch:
        patch.setattr(migrations, "migrate", only_the_first)
        store.make(folder, CAR, DRAWING).close()
    with closing(sqlite3.connect(folder / "journal.db")) as db:
        # sqlite-utils keeps its own account of the steps taken.
        db.execute(
            "CREATE TABLE _sqlite_migrations (migration_set TEXT, name TEXT, applied_at TEXT, "
            "PRIMARY KEY (migration_set, name))"
        )
        db.execute("INSERT INTO _sqlite_migrations VALUES ('journal', 'm001_first_tables', '')")
        db.commit()
    return folder


def tables(journal: Journal) -> set[str]:
    found = journal.db.execute("SELECT name FROM sqlite_master WHERE type = 'table'")
    return {name for (name,) in found}


def test_the_first_version_is_migrated_with_all_it_holds(first_version: Path) -> None:
    with store.open_folder(first_version) as opened:
        assert migrations.version(opened.db) == migrations.SCHEMA_VERSION
        assert tables(opened) >= set(FIRST) | set(SECOND)
        assert opened.car.get() == CAR
        assert opened.drawing.panels() == DRAWING.panels
        assert not list(walk_chain(opened.db))
        assert not list(differences(opened.db))
    assert (first_version / f"journal before version {migrations.SCHEMA_VERSION}.db").is_file()


def test_what_was_done_before_a_migration_can_still_be_undone(first_version: Path) -> None:
    with closing(sqlite3.connect(first_version / "journal.db")) as db:
        assert db.execute("PRAGMA user_version").fetchone() == (1,)
    with store.open_folder(first_version) as opened:
        with opened.edit("Change the car"):
            opened.db.execute("UPDATE car SET title = 'Other'")
        opened.undo()
        assert opened.car.get() == CAR


def test_a_migrated_journal_has_the_tables_of_a_new_one(
    first_version: Path, tmp_path: Path
) -> None:
    def schema(journal: Journal) -> set[tuple[str, str]]:
        query = "SELECT name, sql FROM sqlite_master WHERE name NOT LIKE '\\_%' ESCAPE '\\'"
        return set(journal.db.execute(query).fetchall())

    with (
        store.open_folder(first_version) as migrated,
        store.make(tmp_path / "New", CAR, DRAWING) as new,
    ):
        assert schema(migrated) == schema(new)


def test_an_older_journal_read_only_has_nothing_of_what_came_later(first_version: Path) -> None:
    before = (first_version / "journal.db").read_bytes()
    with store.open_folder(first_version, read_only=True) as opened:
        for table in SECOND:
            assert opened.db.execute(f"SELECT count(*) FROM {table}").fetchone() == (0,)
        assert opened.car.get() == CAR
        assert not list(differences(opened.db))
    assert (first_version / "journal.db").read_bytes() == before


def test_check_of_an_older_journal_finds_no_fault(first_version: Path) -> None:
    with store.open_folder(first_version, read_only=True) as opened:
        assert not check(opened, Silent()).faults
