"""Checking a journal: every original by its SHA-256, the database, the chain of changes."""

import sqlite3
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

from journal.domain.checks import CheckReport, Fault
from journal.domain.errors import JournalError
from journal.domain.progress import Context
from journal.files.ahead import in_order
from journal.files.copying import hash_file
from journal.store import edits, originals
from journal.store.connection import DATABASE_NAME, in_words
from journal.store.journal import Journal
from journal.store.originals import path_of

_LOG = "change log"


def check(journal: Journal, context: Context) -> CheckReport:
    """Look at all of a journal and name each fault; nothing is changed.

    Raises:
        Cancelled: the person asked to stop.
    """
    faults = list(_database_faults(journal.db))
    recorded = journal.db.execute(
        """SELECT o.sha256, o.suffix, o.size, coalesce(p.name, ''), o.added
           FROM originals o
           LEFT JOIN photos p ON p.sha256 = o.sha256 ORDER BY o.id"""
    ).fetchall()

    def work(row: tuple[str, str, int, str, str]) -> str:
        sha256, suffix, size, _, added = row
        return _original_fault(path_of(journal.folder, sha256, suffix), sha256, size, added)

    for done, ((sha256, suffix, _, name, _), what) in enumerate(in_order(work, recorded)):
        context.checkpoint()
        context.report(done, len(recorded), "Checking originals")
        if what:
            place = path_of(journal.folder, sha256, suffix).relative_to(journal.folder).as_posix()
            faults.append(Fault(place, f"{name or 'A paper'}: {what}"))
    (count,) = journal.db.execute("SELECT count(*) FROM edits").fetchone()
    loose = len(originals.loose(journal))
    chain_fails = any(fault.where == _LOG for fault in faults)
    until = _good_until(journal.db) if chain_fails else ""
    return CheckReport(tuple(faults), len(recorded), count, loose, until)


def _good_until(db: sqlite3.Connection) -> str:
    """How far the chain of changes holds, "" where it holds to its end."""
    try:
        return edits.good_until(db)
    except (JournalError, sqlite3.DatabaseError):
        # What can't be read is among the faults already.
        return ""


def _database_faults(db: sqlite3.Connection) -> Iterator[Fault]:
    looks = (
        (DATABASE_NAME, _unsound_pages),
        (DATABASE_NAME, _loose_ends),
        (_LOG, edits.walk_chain),
        (DATABASE_NAME, edits.differences),
    )
    for where, look in looks:
        try:
            yield from (Fault(where, sentence) for sentence in look(db))
        except JournalError as error:
            yield Fault(where, str(error))
        except sqlite3.DatabaseError as error:
            yield Fault(where, f"It can't be read to its end: {in_words(error)}")


def _unsound_pages(db: sqlite3.Connection) -> Iterator[str]:
    for (line,) in db.execute("PRAGMA integrity_check"):
        if line != "ok":
            yield f"SQLite finds: {line}."


def _loose_ends(db: sqlite3.Connection) -> Iterator[str]:
    for table, row, parent, _ in db.execute("PRAGMA foreign_key_check"):
        yield f"Row {row} of {table} points at no row of {parent}."


def _original_fault(path: Path, sha256: str, size: int, added: str) -> str:
    came = f"It came in whole on {added[:10]}"
    try:
        if not path.is_file():
            return f"the original is missing. {came}."
        found = path.stat()
        since = f"{came}; by the file's own time it was last written on {_day(found.st_mtime)}."
        if found.st_size != size:
            return f"the original has {found.st_size:,} bytes instead of {size:,}. {since}"
        if hash_file(path) != sha256:
            return f"the original was altered: its SHA-256 is another. {since}"
    except OSError as error:
        return f"the original can't be read ({error.strerror or error})."
    return ""


def _day(seconds: float) -> str:
    try:
        return datetime.fromtimestamp(seconds).date().isoformat()
    except (OverflowError, OSError, ValueError):
        return "a day that no calendar has"
