"""Small pictures and how they look, in a database that can be deleted and comes back."""

import contextlib
import sqlite3
import threading
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

from journal.files.durable import discard
from journal.store.connection import PerThread, is_held
from journal.store.rows import chunks, marks

PREVIEWS_NAME = "previews.db"


class Previews:
    """Thumbnails as JPEG, by the SHA-256 of their original.

    A *rough* one was cut out of the camera's file and waits to be replaced. Losing this file costs
    time, never anything of the record, so it is written without waiting for the disk.
    """

    def __init__(self, folder: Path, *, read_only: bool) -> None:
        self._path = folder / PREVIEWS_NAME
        self._read_only = read_only
        self._connections = PerThread(self._open)
        self._writing = threading.Lock()

    def _open(self) -> sqlite3.Connection:
        if self._read_only and not self._path.is_file():
            return _prepared(sqlite3.connect(":memory:", check_same_thread=False))
        if self._read_only:
            uri = f"{self._path.absolute().as_uri()}?mode=ro"
            return sqlite3.connect(uri, uri=True, check_same_thread=False, isolation_level=None)
        with self._writing:
            try:
                return _prepared(sqlite3.connect(self._path, timeout=5, check_same_thread=False))
            except sqlite3.DatabaseError as error:
                return self._afresh(error)

    def _afresh(self, error: sqlite3.DatabaseError) -> sqlite3.Connection:
        """A database in place of one that is spoilt; in memory where there can be none on disk."""
        if not is_held(error):
            discard(self._path)
            with contextlib.suppress(sqlite3.DatabaseError):
                return _prepared(sqlite3.connect(self._path, timeout=5, check_same_thread=False))
        return _prepared(sqlite3.connect(":memory:", check_same_thread=False))

    def get(self, sha256: str) -> bytes | None:
        """The thumbnail of an original, rough or not, None where there is none."""
        row = self._ask("SELECT jpeg FROM thumbs WHERE sha256 = ?", (sha256,))
        return bytes(row[0]) if row else None

    def is_final(self, sha256: str) -> bool:
        """Whether the thumbnail is there and made of the picture itself."""
        row = self._ask("SELECT rough FROM thumbs WHERE sha256 = ?", (sha256,))
        return row is not None and not row[0]

    def _ask(self, sql: str, values: Sequence[object]) -> tuple[Any, ...] | None:
        try:
            row: tuple[Any, ...] | None = self._connections.get().execute(sql, values).fetchone()
        except sqlite3.DatabaseError:
            return None
        return row

    def put(self, sha256: str, jpeg: bytes, *, rough: bool) -> None:
        """Keep a thumbnail."""
        self.put_many([(sha256, jpeg, rough)])

    def put_many(self, rows: Iterable[tuple[str, bytes, bool]]) -> None:
        """Keep some thumbnails; a rough one never replaces a final one."""
        self._put(
            """INSERT INTO thumbs (sha256, rough, jpeg) VALUES (?1, ?3, ?2)
               ON CONFLICT (sha256) DO UPDATE SET rough = excluded.rough, jpeg = excluded.jpeg
               WHERE excluded.rough <= thumbs.rough""",
            rows,
        )

    def _put(self, sql: str, rows: Iterable[tuple[Any, ...]]) -> None:
        """Write rows, all or none; what can't be kept is made again when it is wanted."""
        if self._read_only and self._path.is_file():
            return
        db = self._connections.get()
        with self._writing:
            try:
                db.execute("BEGIN IMMEDIATE")
                db.executemany(sql, rows)
                db.execute("COMMIT")
            except sqlite3.OperationalError:
                # The disk is full, or another program holds the file.
                db.rollback()
            except sqlite3.DatabaseError:
                # Spoilt inside: the next opening begins afresh.
                discard(self._path)

    def features(self, kind: str, keys: Iterable[tuple[str, int]]) -> dict[tuple[str, int], bytes]:
        """What was kept of how pictures look, by SHA-256 and turn; what isn't there is left out."""
        wanted = set(keys)
        found: dict[tuple[str, int], bytes] = {}
        with contextlib.suppress(sqlite3.DatabaseError):
            db = self._connections.get()
            for batch in chunks({sha256 for sha256, _ in wanted}):
                rows = db.execute(
                    "SELECT sha256, turn, value FROM features "
                    f"WHERE kind = ? AND sha256 IN ({marks(batch)})",
                    (kind, *batch),
                )
                found.update(((sha, turn), value) for sha, turn, value in rows)
        return {key: value for key, value in found.items() if key in wanted}

    def put_features(self, kind: str, rows: Iterable[tuple[str, int, bytes]]) -> None:
        """Keep how pictures look: SHA-256, turn and the packed features of each."""
        self._put(
            "INSERT OR REPLACE INTO features (sha256, turn, kind, value) VALUES (?, ?, ?, ?)",
            ((sha256, turn, kind, value) for sha256, turn, value in rows),
        )

    def close(self) -> None:
        """Close; what is asked for or kept later is refused."""
        with self._writing:
            self._connections.close()


def _prepared(db: sqlite3.Connection) -> sqlite3.Connection:
    db.isolation_level = None
    db.execute("PRAGMA page_size = 16384")
    db.execute("PRAGMA synchronous = OFF")
    db.execute("PRAGMA journal_mode = TRUNCATE").fetchone()
    db.execute(
        """CREATE TABLE IF NOT EXISTS thumbs (
             id INTEGER PRIMARY KEY, sha256 TEXT NOT NULL UNIQUE, rough INTEGER NOT NULL,
             jpeg BLOB NOT NULL) STRICT"""
    )
    db.execute(
        """CREATE TABLE IF NOT EXISTS features (
             sha256 TEXT NOT NULL, turn INTEGER NOT NULL, kind TEXT NOT NULL, value BLOB NOT NULL,
             PRIMARY KEY (kind, sha256, turn)) STRICT, WITHOUT ROWID"""
    )
    return db
