"""Originals: files kept byte for byte, named by the SHA-256 of what is in them."""

import contextlib
import re
import shutil
import sqlite3
from collections.abc import Iterable, Sequence
from pathlib import Path

from journal.domain.errors import JournalError
from journal.domain.ids import Sha256
from journal.files.copying import hash_file
from journal.files.durable import discard, move_into_place, sync_files, sync_folder
from journal.store.opened import Opened

ORIGINALS_NAME = "originals"
_STAGING_NAME = "arriving"
_NAME = re.compile(r"([0-9a-f]{2})[0-9a-f]{62}(\.[a-z0-9]{1,8})?")


def staging(folder: Path) -> Path:
    """The folder for files under temporary names."""
    return folder / ORIGINALS_NAME / _STAGING_NAME


def make_folders(folder: Path) -> None:
    """Make the places for originals, where they aren't there yet."""
    staging(folder).mkdir(parents=True, exist_ok=True)


def remove_folders(folder: Path) -> None:
    """Remove the places for originals again, where nothing is in them."""
    for place in (staging(folder), folder / ORIGINALS_NAME):
        with contextlib.suppress(OSError):
            place.rmdir()


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


def settle(folder: Path, staged: Sequence[tuple[Path, str, str]]) -> list[Path]:
    """Flush staged files, rename them into place read-only, flush the folders.

    A file whose original is already in place, whole, is dropped. Returns what was put in place
    anew, for ``withdraw``.

    Raises:
        JournalError: the disk is full or the folder can't be written to; nothing stays in place.
    """
    placed: list[Path] = []
    try:
        sync_files([path for path, _, _ in staged])
        touched = set()
        for path, sha256, suffix in staged:
            target = path_of(folder, sha256, suffix)
            if _is_whole(target, sha256):
                path.unlink()
                continue
            if not target.parent.is_dir():
                touched.add(target.parent.parent)
            move_into_place(path, target)
            placed.append(target)
            touched.add(target.parent)
        for place in touched:
            sync_folder(place)
    except OSError as error:
        for target in placed:
            discard(target)
        raise JournalError(
            f"The originals could not be put in place: {error.strerror or error}."
        ) from error
    return placed


def _is_whole(original: Path, sha256: str) -> bool:
    return original.is_file() and hash_file(original) == sha256


def withdraw(db: sqlite3.Connection, placed: Iterable[Path]) -> None:
    """Take files out of their places again that could not be recorded after all."""
    # A write that failed at its very end may have come through: what is on record stays.
    with contextlib.suppress(sqlite3.Error):
        for path in placed:
            if suffix_of(db, path.name[:64]) is None:
                discard(path)


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
    found = sorted((journal.folder / ORIGINALS_NAME).glob("??/*"))
    return [p for p in found if p not in kept and _is_ours(p)]


def _is_ours(path: Path) -> bool:
    """Tell whether a file bears the name of an original; what a system leaves about does not."""
    named = _NAME.fullmatch(path.name)
    return named is not None and named[1] == path.parent.name and path.is_file()


def in_place(journal: Opened, sha256: str) -> bool:
    """Tell whether a recorded original lies in its place with all its bytes, unread."""
    row = journal.db.execute(
        "SELECT suffix, size FROM originals WHERE sha256 = ?", (sha256,)
    ).fetchone()
    if row is None:
        return False
    try:
        return path_of(journal.folder, sha256, row[0]).stat().st_size == int(row[1])
    except OSError:
        return False


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
