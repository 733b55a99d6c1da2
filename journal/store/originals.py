"""Originals: files kept byte for byte, named by the SHA-256 of what is in them."""

import contextlib
import shutil
import sqlite3
from collections.abc import Iterable, Sequence
from pathlib import Path

from journal.domain.errors import JournalError
from journal.domain.ids import Sha256
from journal.files.durable import move_into_place, sync_files, sync_folder
from journal.store.opened import Opened

ORIGINALS_NAME = "originals"
_STAGING_NAME = "arriving"


def staging(folder: Path) -> Path:
    """The folder for files under temporary names."""
    return folder / ORIGINALS_NAME / _STAGING_NAME


def make_folders(folder: Path) -> None:
    """Make the places for originals, where they aren't there yet."""
    staging(folder).mkdir(parents=True, exist_ok=True)


def clear_staging(folder: Path) -> None:
    """Remove what an interrupted arrival left under temporary names."""
    for leftover in staging(folder).iterdir():
        if leftover.is_dir() and not leftover.is_symlink():
            shutil.rmtree(leftover, ignore_errors=True)
        else:
            with contextlib.suppress(OSError):
                leftover.unlink()


def path_of(folder: Path, sha256: str, suffix: str) -> Path:
    """Where an original lies."""
    return folder / ORIGINALS_NAME / sha256[:2] / f"{sha256}{suffix}"


def settle(folder: Path, staged: Sequence[tuple[Path, str, str]]) -> None:
    """Flush staged files, rename them into place read-only, flush the folders.

    A file whose original is already in place is dropped: the bytes are the same.

    Raises:
        JournalError: the disk is full or the folder can't be written to.
    """
    try:
        sync_files([path for path, _, _ in staged])
        touched = set()
        for path, sha256, suffix in staged:
            target = path_of(folder, sha256, suffix)
            if target.exists():
                path.unlink()
                continue
            if not target.parent.is_dir():
                touched.add(target.parent.parent)
            move_into_place(path, target)
            touched.add(target.parent)
        for place in touched:
            sync_folder(place)
    except OSError as error:
        raise JournalError(
            f"The originals could not be put in place: {error.strerror or error}."
        ) from error


def withdraw(folder: Path, db: sqlite3.Connection, files: Iterable[tuple[str, str]]) -> None:
    """Take files out of their places again that could not be recorded after all."""
    for sha256, suffix in files:
        if suffix_of(db, sha256) is None:
            with contextlib.suppress(OSError):
                path_of(folder, sha256, suffix).unlink()


def sizes(db: sqlite3.Connection) -> set[int]:
    """The sizes in bytes that recorded originals have."""
    return {size for (size,) in db.execute("SELECT DISTINCT size FROM originals")}


def known(db: sqlite3.Connection, sha256s: Iterable[str]) -> set[str]:
    """Those of some originals that are recorded already."""
    found = set()
    for sha256 in sha256s:
        if db.execute("SELECT 1 FROM originals WHERE sha256 = ?", (sha256,)).fetchone():
            found.add(sha256)
    return found


def suffix_of(db: sqlite3.Connection, sha256: str) -> str | None:
    """The extension a recorded original keeps, None where it isn't recorded."""
    row = db.execute("SELECT suffix FROM originals WHERE sha256 = ?", (sha256,)).fetchone()
    return str(row[0]) if row else None


def recorded_path(journal: Opened, sha256: Sha256) -> Path:
    """Where a recorded original lies.

    Raises:
        JournalError: the journal has no such original.
    """
    suffix = suffix_of(journal.db, sha256)
    if suffix is None:
        raise JournalError(f"The journal has no original {sha256}.")
    return path_of(journal.folder, sha256, suffix)


def loose(journal: Opened) -> list[Path]:
    """Originals' files that the record doesn't mention: what was undone or cleared out."""
    rows = journal.db.execute("SELECT sha256, suffix FROM originals").fetchall()
    kept = {path_of(journal.folder, sha256, suffix) for sha256, suffix in rows}
    arriving = staging(journal.folder)
    found = sorted((journal.folder / ORIGINALS_NAME).rglob("*"))
    return [p for p in found if p.is_file() and p.parent != arriving and p not in kept]


def missing_of(journal: Opened, edit_id: int) -> Path | None:
    """The first original that an edit put on record without its file being in place."""
    for (sha256,) in journal.db.execute(
        "SELECT json_extract(after, '$.sha256') FROM changes "
        "WHERE edit_id = ? AND tbl = 'originals' AND op = 'insert'",
        (edit_id,),
    ).fetchall():
        path = recorded_path(journal, Sha256(sha256))
        if not path.exists():
            return path
    return None
