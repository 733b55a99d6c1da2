"""One writer at a time: the lock beside a journal's database, and who holds it."""

import contextlib
import getpass
import os
import platform
from pathlib import Path

from filelock import FileLock, Timeout

from journal.domain.errors import JournalError

LOCK_NAME = "journal.lock"
HOLDER_NAME = "journal in use by.txt"


class Lock:
    """The right to write one journal folder, held until released or the program ends."""

    def __init__(self, folder: Path) -> None:
        """Take the lock.

        Raises:
            JournalError: another program holds it, or the folder can't be written to.
        """
        self._holder = folder / HOLDER_NAME
        self._lock = FileLock(folder / LOCK_NAME)
        try:
            self._lock.acquire(timeout=0)
        except Timeout as error:
            raise JournalError(f"The journal is open elsewhere{self._who()}.") from error
        except OSError as error:
            raise JournalError(
                f"The folder “{folder}” can't be written to ({error.strerror or error})."
            ) from error
        with contextlib.suppress(OSError):
            self._holder.write_text(_myself(), encoding="utf-8")

    def _who(self) -> str:
        try:
            return ": " + self._holder.read_text(encoding="utf-8").strip()
        except (OSError, UnicodeDecodeError):
            return ""

    def release(self) -> None:
        """Give the lock back."""
        with contextlib.suppress(OSError):
            self._holder.unlink(missing_ok=True)
        self._lock.release()


def _myself() -> str:
    try:
        user = getpass.getuser()
    except (OSError, KeyError, ImportError):
        user = "somebody"
    return f"{user} on {platform.node() or 'this computer'}, process {os.getpid()}"
