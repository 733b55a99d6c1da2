"""The bytes of a file, whether they are in memory or stay on the disk."""

import io
import mmap
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO, cast

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


def as_file(content: Content) -> BinaryIO:
    """The same bytes for a library that wants to read a file, without another copy of them."""
    if isinstance(content, bytes):
        return io.BytesIO(content)
    content.seek(0)
    return cast("BinaryIO", content)
