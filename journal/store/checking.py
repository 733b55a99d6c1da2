"""Checking a journal: every original by its SHA-256, the database, the chain of changes."""

import sqlite3
from collections.abc import Iterator
from pathlib import Path

from journal.domain.checks import CheckReport, Fault
from journal.domain.errors import JournalError
from journal.domain.progress import Context
from journal.files.copying import hash_file
from journal.store import edits, originals
from journal.store.connection import DATABASE_NAME, in_words
from journal.store.journal import Journal
from journal.store.originals import path_of


def check(journal: Journal, context: Context) -> CheckReport:
    """Look at all of a journal and name each fault; nothing is changed.

    Raises:
        Cancelled: the person asked to stop.
    """
    faults = list(_database_faults(journal.db))
    recorded = journal.db.execute(
        """SELECT o.sha256, o.suffix, o.size, coalesce(p.name, '') FROM originals o
           LEFT JOIN photos p ON p.sha256 = o.sha256 ORDER BY o.id"""
    ).fetchall()
    for done, (sha256, suffix, size, name) in enumerate(recorded):
        context.checkpoint()
        context.report(done, len(recorded), "Checking originals")
        path = path_of(journal.folder, sha256, suffix)
        what = _original_fault(path, sha256, size)
        if what:
            place = path.relative_to(journal.folder).as_posix()
            faults.append(Fault(place, f"{name or 'A paper'}: {what}"))
    (count,) = journal.db.execute("SELECT count(*) FROM edits").fetchone()
    return CheckReport(tuple(faults), len(recorded), count, len(originals.loose(journal)))


def _database_faults(db: sqlite3.Connection) -> Iterator[Fault]:
    looks = (
        (DATABASE_NAME, _unsound_pages),
        (DATABASE_NAME, _loose_ends),
        ("change log", edits.walk_chain),
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


def _original_fault(path: Path, sha256: str, size: int) -> str:
    try:
        if not path.is_file():
            return "the original is missing."
        found = path.stat().st_size
        if found != size:
            return f"the original has {found:,} bytes instead of {size:,}."
        if hash_file(path) != sha256:
            return "the original was altered: its SHA-256 is another."
    except OSError as error:
        return f"the original can't be read ({error.strerror or error})."
    return ""
