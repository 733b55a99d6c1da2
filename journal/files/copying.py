"""Copying a file and taking its SHA-256 in one reading."""

import hashlib
import io
import os
import stat
from dataclasses import dataclass
from pathlib import Path

from journal.files.durable import discard, open_temporary, write_all

#: How much is read at a time: small enough to stay in the processor's cache between the steps.
CHUNK = 256 * 1024

#: Files up to this many bytes stay in memory, so that decoding needs no second reading.
KEEP_LIMIT = 64 * 1024 * 1024


class SourceError(OSError):
    """The file to copy can't be read whole; the message is the bare reason, without its name."""


@dataclass(frozen=True, slots=True)
class Staged:
    """A copy under a temporary name, not yet flushed to the disk.

    ``sha256`` is 64 lower-case hexadecimal digits, ``size`` is in bytes, ``modified`` is the
    source's own time in seconds since 1970. ``data`` holds the content of a file small enough.
    """

    path: Path
    sha256: str
    size: int
    modified: float
    data: bytes | None


def copy_and_hash(source: Path, staging: Path, *, keep_limit: int = KEEP_LIMIT) -> Staged:
    """Copy ``source`` into the folder ``staging`` under a temporary name, hashing on the way.

    SourceError: the source can't be read, is no ordinary file, or changed while it was read.
    Any other OSError: the copy can't be written. Either way no copy is left.
    """
    reader = open_source(source)
    try:
        before = os.fstat(reader)
        if not stat.S_ISREG(before.st_mode):
            raise SourceError("it is not an ordinary file")
        writer, path = open_temporary(staging)
        try:
            try:
                sha256, size, data = _pump(reader, writer, before.st_size, keep_limit)
            finally:
                os.close(writer)
            _refuse_changed(before, os.fstat(reader), size)
        except BaseException:
            discard(path)
            raise
    finally:
        os.close(reader)
    return Staged(path, sha256, size, before.st_mtime, data)


def hash_file(path: Path) -> str:
    """The SHA-256 of a file's content, 64 lower-case hexadecimal digits; OSError as it comes."""
    with path.open("rb") as handle:
        return hashlib.file_digest(handle, "sha256").hexdigest()


def open_source(source: Path) -> int:
    """Open a file from outside to be read, without waiting for one that is a pipe.

    Raises:
        SourceError: it can't be opened.
    """
    # Without O_NONBLOCK a named pipe among the photos would hold the import up for ever.
    flags = os.O_RDONLY | getattr(os, "O_BINARY", 0) | getattr(os, "O_NONBLOCK", 0)
    try:
        return os.open(source, flags)
    except (OSError, ValueError) as error:
        raise SourceError(reason_of(error)) from error


def open_unfollowed(path: Path) -> io.FileIO:
    """Open a file to be read, unless a link has been put in its place; OSError as it comes."""
    flags = os.O_RDONLY | getattr(os, "O_BINARY", 0) | getattr(os, "O_NOFOLLOW", 0)
    return open(path, "rb", buffering=0, opener=lambda name, _: os.open(name, flags))


def _pump(reader: int, writer: int, size: int, keep_limit: int) -> tuple[str, int, bytes | None]:
    """Read, hash and write until the end; the digest, the bytes read and, if few, the content."""
    digest = hashlib.sha256()
    keep = size <= keep_limit
    # The buffer hands its content over at the end without copying it once more.
    content = io.BytesIO(bytes(size if keep else CHUNK))
    done = 0
    with content.getbuffer() as whole, open(reader, "rb", buffering=0, closefd=False) as handle:
        while True:
            room = whole[done : done + CHUNK] if keep else whole
            count = _read(handle, room) if room.nbytes else 0
            if not count:
                break
            digest.update(room[:count])
            write_all(writer, room[:count])
            done += count
    data = content.getvalue() if keep and done == size else None
    return digest.hexdigest(), done, data


def _read(handle: io.RawIOBase | io.FileIO, room: memoryview) -> int:
    try:
        return handle.readinto(room) or 0
    except OSError as error:
        raise SourceError(reason_of(error)) from error


def _refuse_changed(before: os.stat_result, after: os.stat_result, copied: int) -> None:
    if copied < before.st_size:
        raise SourceError("it ended before its length, so not all of it was copied")
    if (before.st_size, before.st_mtime_ns) != (after.st_size, after.st_mtime_ns):
        raise SourceError("it was changed while it was being read")


def reason_of(error: OSError | ValueError) -> str:
    """Why something failed, as the end of a sentence."""
    text = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
    return text[:1].lower() + text[1:]
