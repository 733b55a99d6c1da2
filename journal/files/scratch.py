"""Files that live only as long as one piece of work, in a folder of their own."""

import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path

from journal.files.buffers import Buffer
from journal.files.durable import write_all


@contextmanager
def scratch_folder(purpose: str) -> Iterator[Path]:
    """An empty folder in the system's place for temporary files, gone with all in it at the end."""
    with tempfile.TemporaryDirectory(prefix=f"restoration-{purpose}-") as folder:
        yield Path(folder)


def write_scratch(path: Path, data: Buffer, *, modified: datetime | None = None) -> None:
    """Put ``data`` into a new file at ``path``, without waiting for the disk.

    Its folder is made where missing. ``modified`` is the local time that the file says it was last
    changed at, now where none is given.
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
    descriptor = os.open(path, flags, 0o600)
    try:
        write_all(descriptor, data)
    finally:
        os.close(descriptor)
    if modified is not None:
        os.utime(path, (modified.timestamp(), modified.timestamp()))
