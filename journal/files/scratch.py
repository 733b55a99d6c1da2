"""Files that live only as long as one piece of work, in a folder of their own."""

import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from journal.files.buffers import Buffer
from journal.files.durable import write_all


@contextmanager
def scratch_folder(purpose: str) -> Iterator[Path]:
    """An empty folder in the system's place for temporary files, gone with all in it at the end."""
    with tempfile.TemporaryDirectory(prefix=f"restoration-{purpose}-") as folder:
        yield Path(folder)


def write_scratch(path: Path, data: Buffer) -> None:
    """Put ``data`` into a new file at ``path``, without waiting for the disk."""
    flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
    descriptor = os.open(path, flags, 0o600)
    try:
        write_all(descriptor, data)
    finally:
        os.close(descriptor)
