"""The bytes of a file, whether they are in memory or stay on the disk."""

import mmap
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

#: What can be sliced and searched like bytes.
Content = bytes | mmap.mmap


@contextmanager
def opened(source: Path | bytes) -> Iterator[Content]:
    """A file's bytes; those of a path are mapped, not read. OSError as the system gives it."""
    if isinstance(source, bytes):
        yield source
        return
    with source.open("rb") as handle:
        if not source.stat().st_size:
            yield b""
            return
        with mmap.mmap(handle.fileno(), 0, access=mmap.ACCESS_READ) as mapped:
            yield mapped
