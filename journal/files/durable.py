"""Writing that survives a power cut: temporary name, flush, replace, flush the folder.

Every byte the program itself puts on a disk goes through ``write_all`` here, so that a test can
make any one write fail.
"""

import contextlib
import errno
import os
import shutil
import stat
import tempfile
from collections.abc import Iterable, Iterator
from pathlib import Path

from journal.files.buffers import Buffer

#: Marks a file that is still being written; whatever bears it may be deleted at any time.
TEMPORARY_SUFFIX = ".part"

#: What a file system answers that can't do a thing, rather than that it failed.
_NO_SUCH_ACT = (errno.EINVAL, errno.ENOTSUP, errno.ENOSYS)


def write_all(descriptor: int, data: Buffer) -> None:
    """Write the whole of ``data``; an OSError says why not (no space left, for one)."""
    view = memoryview(data)
    while view.nbytes:
        view = view[os.write(descriptor, view) :]


def open_temporary(folder: Path) -> tuple[int, Path]:
    """A new, empty file in ``folder``, open for writing, whose name ends in ``.part``."""
    descriptor, name = tempfile.mkstemp(suffix=TEMPORARY_SUFFIX, dir=folder)
    return descriptor, Path(name)


def write_atomically(path: Path, data: Buffer, *, private: bool = False) -> None:
    """Put ``data`` at ``path`` so that a reader finds either the old content or the new, whole.

    The folder must exist. When this returns, the content is on the disk as far as the system can
    promise; an OSError leaves what was there before. A ``private`` file is its owner's to read.
    """
    descriptor, temporary = open_temporary(path.parent)
    try:
        try:
            write_all(descriptor, data)
            os.fsync(descriptor)
        finally:
            os.close(descriptor)
        allow(temporary, 0o600 if private else _mode_for(path))
        temporary.replace(path)
    except BaseException:
        discard(temporary)
        raise
    sync_folder(path.parent)


def make_folder(path: Path) -> None:
    """Make a folder, and those above it, where it isn't there yet."""
    path.mkdir(parents=True, exist_ok=True)


def sync_files(paths: Iterable[Path]) -> None:
    """Have the system write the content of each file to the disk."""
    # Windows flushes only what is open for writing; elsewhere the file may be read-only by now.
    mode = os.O_RDWR if os.name == "nt" else os.O_RDONLY
    for path in paths:
        descriptor = os.open(path, mode)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)


def sync_folder(folder: Path) -> None:
    """Have the system write a folder's list of names to the disk, where it can be asked to."""
    if os.name == "nt":
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    except OSError as error:
        # Some network drives and sticks flush files alone; all else is a failure.
        if error.errno not in _NO_SUCH_ACT:
            raise
    finally:
        os.close(descriptor)


def sync_tree(folder: Path) -> None:
    """Have the system write the names in a folder, and in all below it, to the disk."""
    for place, _, _ in os.walk(folder, topdown=False):
        sync_folder(Path(place))


@contextlib.contextmanager
def unfinished_folder(target: Path) -> Iterator[Path]:
    """An empty folder beside ``target`` that takes its name at the end, or is gone after a failure.

    The folders above are made where missing. ``target`` must not be there, or be an empty folder.
    """
    make_folder(target.parent)
    made = Path(tempfile.mkdtemp(TEMPORARY_SUFFIX, f"{target.name[:60]} ", target.parent))
    try:
        yield made
        allow(made, 0o755)
        if target.exists():
            target.rmdir()
        made.replace(target)
    except BaseException:
        shutil.rmtree(made, ignore_errors=True)
        raise
    sync_folder(target.parent)


def move_into_place(staged: Path, target: Path) -> None:
    """Give a staged file its final name, read-only; the target's folder is made where missing.

    Both must be on one file system. The caller has flushed the file, and flushes the folder after.
    """
    target.parent.mkdir(parents=True, exist_ok=True)
    allow(staged, stat.S_IRUSR | stat.S_IRGRP | stat.S_IROTH)
    staged.replace(target)


def discard(temporary: Path) -> None:
    """Delete a temporary file that is not wanted after all, if it can be deleted."""
    with contextlib.suppress(OSError):
        temporary.unlink()


def allow(path: Path, mode: int) -> None:
    """Set a file's permissions, where the file system has any."""
    try:
        path.chmod(mode)
    except OSError as error:
        if error.errno not in (*_NO_SUCH_ACT, errno.EPERM):
            raise


def _mode_for(path: Path) -> int:
    """The permissions a file at ``path`` has, or would have if it were made in the usual way."""
    try:
        return stat.S_IMODE(path.stat().st_mode)
    except OSError:
        return 0o644
