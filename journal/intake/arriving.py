"""One file on its way in: looked at, copied, hashed, looked at again. Safe to run on any thread."""

import threading
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from journal.domain.errors import JournalError
from journal.files.copying import SourceError, Staged, copy_and_hash, hash_file
from journal.files.durable import discard
from journal.intake.inspect import Arrival, inspect, refuse_early
from journal.intake.walking import PHOTO_SUFFIXES

#: How many bytes of originals may stay in memory to be decoded later without a second reading.
_HELD_BYTES = 64 * 1024 * 1024


@dataclass(frozen=True, slots=True)
class Ready:
    """A photo to put on record; of one that is there already, the last two are None."""

    path: Path
    sha256: str
    staged: Path | None
    arrival: Arrival | None


@dataclass(frozen=True, slots=True)
class NotOne:
    """A file that can't be added; ``expected`` tells whether a person would think it could."""

    reason: str
    expected: bool


@dataclass(frozen=True, slots=True)
class Stopped:
    """The journal's own disk does not take a copy, so no further file can be added either."""

    reason: str


class Held:
    """Content of originals, by SHA-256, up to a limit; what comes after that is read again."""

    def __init__(self, limit: int = _HELD_BYTES) -> None:
        self._room = limit
        self._lock = threading.Lock()
        self._data: dict[str, bytes] = {}

    def offer(self, sha256: str, data: bytes | None) -> None:
        """Keep the content if there is room."""
        with self._lock:
            if data is not None and len(data) <= self._room and sha256 not in self._data:
                self._room -= len(data)
                self._data[sha256] = data

    def take(self, sha256: str) -> bytes | None:
        """The content, if it was kept; it is no longer kept after."""
        with self._lock:
            data = self._data.pop(sha256, None)
            self._room += len(data or b"")
            return data


def prepare(
    path: Path,
    staging: Path,
    now: datetime,
    *,
    may_be_known: Callable[[int], bool],
    is_known: Callable[[str], bool],
    held: Held,
    named: bool,
) -> Ready | NotOne | Stopped:
    """Make one file ready, whatever is wrong with it.

    Args:
        path: the file.
        staging: the folder for the copy, on the journal's file system.
        now: local time.
        may_be_known: whether an original of such a size, in bytes, is on record.
        is_known: whether a photo of such a SHA-256 is.
        held: keeps the content for the thumbnail.
        named: whether the person named this very file.
    """
    expected = named or path.suffix.lower() in PHOTO_SUFFIXES
    try:
        refuse_early(path)
        if may_be_known(path.stat().st_size):
            sha256 = hash_file(path)
            if is_known(sha256):
                return Ready(path, sha256, None, None)
    except JournalError as error:
        return NotOne(str(error), expected)
    except OSError as error:
        return NotOne(f"it can't be read: {_reason(error)}", expected)
    try:
        staged = copy_and_hash(path, staging)
    except SourceError as error:
        return NotOne(f"it can't be read: {error}", expected)
    except OSError as error:
        return Stopped(f"the journal's folder can't be written to: {_reason(error)}")
    return _looked_at(path, staged, now, held, expected=expected)


def _looked_at(
    path: Path, staged: Staged, now: datetime, held: Held, *, expected: bool
) -> Ready | NotOne:
    try:
        arrival = inspect(staged, path.name, now)
    except Exception as error:
        # A hostile file may bring a library down in ways it does not name; the others go on.
        discard(staged.path)
        known = isinstance(error, JournalError)
        return NotOne(str(error) if known else f"it can't be understood ({error!r})", expected)
    held.offer(staged.sha256, staged.data)
    return Ready(path, staged.sha256, staged.path, arrival)


def _reason(error: OSError) -> str:
    text = error.strerror or str(error)
    return text[:1].lower() + text[1:]
