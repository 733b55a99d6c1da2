"""Copies of a journal that are whole, even of one that is open."""

import sqlite3
from contextlib import closing
from datetime import datetime
from pathlib import Path

from journal.domain.errors import JournalError
from journal.domain.progress import Context
from journal.files.copying import SourceError, copy_and_hash
from journal.files.durable import (
    move_into_place,
    sync_files,
    sync_tree,
    unfinished_folder,
    write_atomically,
)
from journal.store.connection import DATABASE_NAME, plain_errors
from journal.store.folder import READ_ME, READ_ME_NAME, open_folder
from journal.store.journal import Journal
from journal.store.originals import path_of


def backup(journal: Journal, destination: Path, context: Context, now: datetime) -> Path:
    """Copy a journal into a dated folder below ``destination``; every original is hashed again.

    The copy has its final name only once it is whole.

    Raises:
        JournalError: an original is missing or altered, or the destination can't be written to.
        Cancelled: the person asked to stop; what was copied is removed.
    """
    _refuse_inside(journal.folder, destination)
    name = f"{journal.folder.resolve().name} {now:%Y-%m-%d %H%M%S}"
    return _copy(journal, destination / name, context)


def restore(source: Path, folder: Path, context: Context) -> None:
    """Make a journal folder out of a backup, checking every original on the way.

    Raises:
        JournalError: the source is no journal or is damaged, or the folder holds something.
        Cancelled: the person asked to stop; what was copied is removed.
    """
    try:
        taken = folder.exists() and (not folder.is_dir() or any(folder.iterdir()))
    except OSError as error:
        raise JournalError(f"“{folder}” can't be used: {error.strerror or error}.") from error
    if taken:
        raise JournalError(f"“{folder}” holds something already; choose an empty folder.")
    with open_folder(source, read_only=True) as journal:
        _refuse_inside(source, folder)
        _copy(journal, folder, context)


def _refuse_inside(source: Path, target: Path) -> None:
    if target.resolve().is_relative_to(source.resolve()):
        raise JournalError(f"“{target}” lies inside the journal itself; choose another folder.")


def _copy(journal: Journal, target: Path, context: Context) -> Path:
    what = f"The copy to “{target}” was not made"
    try:
        if target.exists() and (not target.is_dir() or any(target.iterdir())):
            raise JournalError(f"“{target}” exists already.")
        with unfinished_folder(target) as unfinished, plain_errors(what):
            _copy_database(journal, unfinished)
            _copy_originals(journal, unfinished, context)
            write_atomically(unfinished / READ_ME_NAME, READ_ME.encode())
            sync_tree(unfinished)
    except OSError as error:
        raise JournalError(f"{what}: {error.strerror or error}.") from error
    return target


def _copy_database(journal: Journal, folder: Path) -> None:
    with closing(sqlite3.connect(folder / DATABASE_NAME)) as copy:
        journal.db.backup(copy)
    sync_files([folder / DATABASE_NAME])


def _copy_originals(journal: Journal, folder: Path, context: Context) -> None:
    with closing(sqlite3.connect(folder / DATABASE_NAME)) as copy:
        rows = copy.execute("SELECT sha256, suffix FROM originals ORDER BY id").fetchall()
    for done, (sha256, suffix) in enumerate(rows):
        context.checkpoint()
        context.report(done, len(rows), "Copying originals")
        source, target = (path_of(f, sha256, suffix) for f in (journal.folder, folder))
        _copy_original(source, target, sha256)


def _copy_original(source: Path, target: Path, sha256: str) -> None:
    target.parent.mkdir(parents=True, exist_ok=True)
    try:
        staged = copy_and_hash(source, target.parent, keep_limit=0)
    except SourceError as error:
        raise JournalError(f"“{source}” can't be copied: {error}; check the journal.") from error
    if staged.sha256 != sha256:
        raise JournalError(f"“{source}” was altered since it came in; the copy was not made.")
    sync_files([staged.path])
    move_into_place(staged.path, target)
