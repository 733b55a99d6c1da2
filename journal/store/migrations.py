"""Bringing a journal's database to the version this program writes."""

import sqlite3
from contextlib import closing
from pathlib import Path
from typing import Any

from journal.store.schema import first_schema, second_schema

#: The version of the tables that this program writes: one more for every step below.
SCHEMA_VERSION = 2


def _steps() -> Any:
    # sqlite-utils brings NumPy along, a tenth of a second: only a journal that needs a step pays.
    from sqlite_utils import Migrations

    steps = Migrations("journal")

    @steps()
    def m001_first_tables(db: Any) -> None:
        for statement in first_schema():
            db.conn.execute(statement)

    @steps()
    def m002_people_surveys_buying_proof(db: Any) -> None:
        for statement in second_schema():
            db.conn.execute(statement)

    return steps


def version(db: sqlite3.Connection) -> int:
    """The version that the database says it has."""
    return int(db.execute("PRAGMA user_version").fetchone()[0])


def migrate(db: sqlite3.Connection) -> None:
    """Apply every step that the database lacks, then write the version.

    Raises:
        sqlite3.DatabaseError: a step failed.
    """
    from sqlite_utils import Database

    _steps().apply(Database(db, strict=True, execute_plugins=False))
    db.execute(f"PRAGMA user_version = {SCHEMA_VERSION}")


def back_up_before_migration(db: sqlite3.Connection, folder: Path) -> Path:
    """Copy the database beside itself before a migration touches it."""
    target = folder / f"journal before version {SCHEMA_VERSION}.db"
    with closing(sqlite3.connect(target)) as copy:
        db.backup(copy)
    return target
