"""Connections to a journal's database: one place for the pragmas."""

import sqlite3
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from journal.domain.errors import JournalError
from journal.store.tables import SECOND

#: "RJnl" in ASCII, at offset 68 of the database file, so that ``file`` and we know it.
APPLICATION_ID = 0x524A6E6C
DATABASE_NAME = "journal.db"


class Plain(sqlite3.Connection):
    """A connection whose obstacles to reading are told in words, as JournalError.

    Inside a transaction SQLite's own errors are raised, for ``plain_errors`` to say what failed.
    """

    def execute(self, sql: str, parameters: Any = (), /) -> sqlite3.Cursor:
        """Run a statement."""
        try:
            return super().cursor(_Rows).execute(sql, parameters)
        except sqlite3.DatabaseError as error:
            if not sql.lstrip().startswith(("SELECT", "PRAGMA", "BEGIN")):
                raise
            self.tell(error)
            raise

    def tell(self, error: sqlite3.DatabaseError) -> None:
        """Raise JournalError for what a disk or another program brought about."""
        if not self.in_transaction and not isinstance(error, sqlite3.ProgrammingError):
            raise JournalError(f"The journal can't be read: {in_words(error)}") from error


class _Rows(sqlite3.Cursor):
    """A cursor whose rows are read with the same promise."""

    connection: Plain

    def __next__(self) -> Any:
        try:
            return super().__next__()
        except sqlite3.DatabaseError as error:
            self.connection.tell(error)
            raise

    def fetchone(self) -> Any:
        try:
            return super().fetchone()
        except sqlite3.DatabaseError as error:
            self.connection.tell(error)
            raise

    def fetchall(self) -> list[Any]:
        try:
            return super().fetchall()
        except sqlite3.DatabaseError as error:
            self.connection.tell(error)
            raise


def connect(
    path: Path, *, read_only: bool = False, factory: type[sqlite3.Connection] = Plain
) -> sqlite3.Connection:
    """A connection in explicit-transaction mode with foreign keys on.

    Raises:
        JournalError: the file can't be opened.
    """
    # After a kill or a power cut SQLite has to roll back what was half written before it can read.
    interrupted = path.with_name(path.name + "-journal").exists()
    mode = "ro" if read_only and not interrupted else "rw"
    try:
        db = sqlite3.connect(
            f"{path.absolute().as_uri()}?mode={mode}",
            uri=True,
            timeout=5.0,
            isolation_level=None,
            check_same_thread=False,
            factory=factory,
        )
    except sqlite3.Error as error:
        raise JournalError(f"“{path}” can't be opened: {error}.") from error
    db.execute("PRAGMA foreign_keys = ON")
    if read_only:
        _stand_in(db)
        db.execute("PRAGMA query_only = ON")
    else:
        # A journal is copied about and kept on network drives, where WAL does not work.
        db.execute("PRAGMA synchronous = EXTRA")
    return db


def _stand_in(db: sqlite3.Connection) -> None:
    """Give an older journal that may not be migrated empty tables in place of those it lacks."""
    # Raw cursors: what is damaged is told by whoever asked for the journal, in its own words.
    if sqlite3.Cursor(db).execute("PRAGMA user_version").fetchone()[0] == 1:
        for table, definition in SECOND.items():
            sqlite3.Cursor(db).execute(f"CREATE TEMP TABLE {table} ({definition}) STRICT")


def create(path: Path) -> sqlite3.Connection:
    """Make an empty database file that names itself a journal."""
    db = sqlite3.connect(path, isolation_level=None, check_same_thread=False)
    db.execute(f"PRAGMA application_id = {APPLICATION_ID}")
    db.execute("PRAGMA journal_mode = DELETE")
    db.execute("PRAGMA synchronous = EXTRA")
    db.execute("PRAGMA foreign_keys = ON")
    return db


class PerThread:
    """One connection for every thread that asks, since SQLite's can't be shared."""

    def __init__(self, make: Callable[[], sqlite3.Connection]) -> None:
        self._make = make
        self._local = threading.local()
        self._closed = False

    def get(self) -> sqlite3.Connection:
        """The calling thread's connection, made when it first asks.

        Raises:
            JournalError: ``close`` was called before.
        """
        found: sqlite3.Connection | None = getattr(self._local, "db", None)
        if found is None:
            if self._closed:
                raise JournalError("The journal is closed.")
            found = self._local.db = self._make()
        return found

    def close(self) -> None:
        """Close the calling thread's connection and let go of the others.

        Closing a connection while its own thread reads from it would end the process; let go of,
        it closes by itself when that reading is over.
        """
        self._closed = True
        own: sqlite3.Connection | None = getattr(self._local, "db", None)
        if own is not None:
            own.close()
        self._local = threading.local()


@contextmanager
def plain_errors(what: str) -> Iterator[None]:
    """Turn SQLite's errors into one plain sentence about ``what``.

    Raises:
        JournalError: in place of the error that SQLite raised.
    """
    try:
        yield
    except sqlite3.DatabaseError as error:
        raise JournalError(f"{what}: {in_words(error)}") from error
    except OverflowError as error:
        raise JournalError(f"{what}: a number in it is too large to be kept.") from error


#: What SQLite's messages hold, and what that means; the first that fits counts.
_MEANINGS = (
    ("full", "there is no space left on the disk; nothing was changed."),
    ("readonly", "the journal's folder can't be written to; nothing was changed."),
    ("locked", "another program holds the journal's database; try again when it is done."),
    ("busy", "another program holds the journal's database; try again when it is done."),
    ("FOREIGN KEY", "something that it belongs to is not in the journal, or not any more."),
    ("malformed", "its database is damaged; take the latest backup."),
    ("disk I/O", "the disk or the network drive it lies on does not answer as it should."),
    ("decode", "its database is damaged; take the latest backup."),
    ("unable to open", "its database file can't be opened."),
    ("UNIQUE", "the journal has that already."),
)


def is_held(error: sqlite3.DatabaseError) -> bool:
    """Tell whether another program holds the database at the moment."""
    return "locked" in str(error) or "busy" in str(error)


def in_words(error: sqlite3.DatabaseError) -> str:
    """What an error of SQLite's means to a person, as the end of a sentence."""
    said = str(error)
    for part, meaning in _MEANINGS:
        if part in said:
            return meaning
    return f"the journal's database says “{said}”."
