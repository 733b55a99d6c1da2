"""Making and opening journal folders."""

import os
import sqlite3
from contextlib import closing
from pathlib import Path

from journal.domain.car import Car
from journal.domain.drawing import Drawing
from journal.domain.errors import JournalError
from journal.files.durable import discard, write_atomically
from journal.store import migrations, originals
from journal.store.connection import (
    APPLICATION_ID,
    DATABASE_NAME,
    connect,
    create,
    in_words,
    plain_errors,
)
from journal.store.journal import Journal
from journal.store.lock import LOCK_NAME, Lock

READ_ME_NAME = "READ ME.txt"
READ_ME = """\
This folder is one car's restoration journal.

journal.db    the record: an SQLite 3 database. Any SQLite program opens it.
              Table "photos" lists the photos, "receipts" and "lines" what was paid, "work" the
              hours, "areas" and "stage_changes" the repair areas, "pins" what lies where on the
              drawing. "edits" and "changes" are the history of every change, the oldest first.
originals/    every photo and paper exactly as it came in. A file's name is the SHA-256 of its
              bytes, so "sha256sum" shows whether it is unaltered. The name it came with stands in
              the table "photos".
previews.db   small pictures, for speed. It can be deleted; it comes back.

Copy the whole folder to keep it safe, while the program is closed.
"""

#: What the program's own files in a journal's folder end in.
_OWN_SUFFIXES = frozenset({".db", ".db-journal", ".lock", ".txt"})


def make(folder: Path, car: Car, drawing: Drawing) -> Journal:
    """Make a new journal in a folder that is empty or not there yet, and open it.

    Raises:
        JournalError: the folder holds something already, or can't be written to.
    """
    what = f"No journal could be made in “{folder}”"
    try:
        if folder.is_dir() and any(folder.iterdir()):
            raise JournalError(f"“{folder}” holds something already; choose an empty folder.")
        folder.mkdir(parents=True, exist_ok=True)
        lock = Lock(folder)
        try:
            with plain_errors(what):
                return _begin(folder, lock, car, drawing)
        except BaseException:
            lock.release()
            raise
    except OSError as error:
        raise JournalError(f"{what}: {error.strerror or error}.") from error


def _begin(folder: Path, lock: Lock, car: Car, drawing: Drawing) -> Journal:
    """Make the files of a journal; where that fails, none of them is left."""
    if (folder / DATABASE_NAME).exists():
        raise JournalError(f"“{folder}” holds a journal already; choose an empty folder.")
    journal = Journal(folder, lock, "")
    try:
        originals.make_folders(folder)
        write_atomically(folder / READ_ME_NAME, READ_ME.encode())
        with closing(create(folder / DATABASE_NAME)) as db:
            migrations.migrate(db)
        with journal.edit("New journal"):
            journal.car.begin(car)
            journal.drawing.begin(drawing)
    except BaseException:
        for name in (DATABASE_NAME, f"{DATABASE_NAME}-journal", READ_ME_NAME):
            discard(folder / name)
        originals.remove_folders(folder)
        journal.close()
        discard(folder / LOCK_NAME)
        raise
    return journal


def holds_journal(folder: Path) -> bool:
    """Whether a folder looks like a journal's, by the name of its database."""
    return (folder / DATABASE_NAME).is_file()


def open_folder(folder: Path, *, read_only: bool = False) -> Journal:
    """Open a journal, to read only where another program holds it or a newer one wrote it.

    Raises:
        JournalError: it is no journal, is damaged, or can't be read.
    """
    found = _checked_version(folder)
    if found > migrations.SCHEMA_VERSION:
        return Journal(
            folder,
            None,
            "It was written by a newer version of this program, so it is open for reading only.",
        )
    if read_only:
        return Journal(folder, None, "It was opened for reading only.")
    try:
        _refuse_unwritable(folder)
        lock = Lock(folder)
    except JournalError as error:
        return Journal(folder, None, str(error))
    try:
        if found < migrations.SCHEMA_VERSION:
            _migrate(folder)
        originals.make_folders(folder)
        originals.clear_staging(folder)
    except OSError as error:
        lock.release()
        return Journal(folder, None, f"The folder can't be written to ({error.strerror}).")
    except BaseException:
        lock.release()
        raise
    return Journal(folder, lock, "")


def _refuse_unwritable(folder: Path) -> None:
    # The lock alone would not show it: its file may be open to all in a folder that is not.
    for path in (folder, folder / DATABASE_NAME):
        if not os.access(path, os.W_OK):
            raise JournalError(f"“{path}” can't be written to.")


def refuse_own_place(folder: Path, out: Path) -> None:
    """Refuse a place for a document that would touch what the journal itself consists of.

    Raises:
        JournalError: ``out`` lies among the originals, or is a file of the journal's own.
    """
    place, whole = _resolved(out), _resolved(folder)
    if not place.is_relative_to(whole):
        return
    inside = place.relative_to(whole)
    if inside.parts[:1] and inside.parts[0].casefold() == originals.ORIGINALS_NAME:
        raise JournalError(f"“{out}” lies among the originals; choose another folder.")
    if inside.suffix.casefold() in _OWN_SUFFIXES:
        raise JournalError(f"“{out}” is a file of the journal itself; choose another name.")


def refuse_inside(folder: Path, out: Path) -> None:
    """Refuse a place anywhere in a journal's folder, also by way of a link.

    Raises:
        JournalError: ``out`` lies in it, or is no place at all.
    """
    if _resolved(out).is_relative_to(_resolved(folder)):
        raise JournalError(f"“{out}” lies inside the journal itself; choose another folder.")


def _resolved(path: Path) -> Path:
    try:
        return path.resolve()
    except (OSError, ValueError, RuntimeError) as error:
        # A loop of links is a RuntimeError until Python 3.13.
        raise JournalError(f"“{path}” can't be used: {error}.") from error


def _checked_version(folder: Path) -> int:
    path = folder / DATABASE_NAME
    try:
        there = path.is_file()
    except OSError as error:
        raise JournalError(f"“{folder}” can't be opened: {error.strerror or error}.") from error
    if not there:
        raise JournalError(f"“{folder}” is not a journal: it holds no {DATABASE_NAME}.")
    try:
        with closing(connect(path, read_only=True, factory=sqlite3.Connection)) as db:
            application = db.execute("PRAGMA application_id").fetchone()[0]
            if application != APPLICATION_ID:
                raise JournalError(f"“{path}” is a database, but not a journal's.")
            version = migrations.version(db)
            car = db.execute("SELECT title FROM car").fetchone() if version else None
    except sqlite3.OperationalError as error:
        raise JournalError(f"“{path}” can't be read: {in_words(error)}") from error
    except sqlite3.DatabaseError as error:
        raise JournalError(f"“{path}” is damaged or no database ({error}).") from error
    if car is None:
        raise JournalError(
            f"“{folder}” is a journal that was never finished; delete the folder and make it anew."
        )
    return version


def _migrate(folder: Path) -> None:
    with (
        plain_errors("The journal could not be brought to the present version"),
        closing(connect(folder / DATABASE_NAME, factory=sqlite3.Connection)) as db,
    ):
        migrations.back_up_before_migration(db, folder)
        migrations.migrate(db)
