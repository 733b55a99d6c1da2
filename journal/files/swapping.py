"""Putting a whole folder in the place of an older one, of which only known files may go."""

import contextlib
import errno
import os
import shutil
import tempfile
from collections.abc import Collection, Iterator
from pathlib import Path

from journal.files.durable import (
    TEMPORARY_SUFFIX,
    allow,
    make_folder,
    sync_files,
    sync_folder,
    sync_tree,
    unfinished_folder,
)


@contextlib.contextmanager
def new_folder(target: Path, own: Collection[str]) -> Iterator[Path]:
    """An empty folder beside ``target`` that takes its place at the end, or is gone on a failure.

    ``own`` are the files of what is at ``target`` that may go, as paths with forward slashes; every
    other file there is moved into the new folder. What was written is on the disk at the end.

    Raises:
        FileExistsError: a file that may not go stands where the new folder has one of its own;
            ``filename`` says which, and what was at ``target`` is as it was.
    """
    if not own:
        with unfinished_folder(target) as made:
            yield made
            _settle(made)
        return
    made = Path(tempfile.mkdtemp(TEMPORARY_SUFFIX, f"{target.name[:60]} ", target.parent))
    try:
        yield made
        _settle(made)
        others = _others(target, own)
        for name in others:
            if os.path.lexists(made / name):
                raise FileExistsError(errno.EEXIST, "it is in the way", name)
        _swap(made, target, others)
    except BaseException:
        shutil.rmtree(made, ignore_errors=True)
        raise
    sync_folder(target.parent)


def _settle(made: Path) -> None:
    """Have everything on the disk, for all to read."""
    files = []
    for place, _, names in os.walk(made):
        allow(Path(place), 0o755)
        files += [Path(place, name) for name in names]
    for path in files:
        allow(path, 0o644)
    sync_files(files)
    sync_tree(made)


def _others(target: Path, own: Collection[str]) -> list[str]:
    """What lies below ``target`` and isn't among its own files; a link counts as a file."""
    found = []
    for place, folders, names in os.walk(target):
        linked = [name for name in folders if Path(place, name).is_symlink()]
        for name in (*names, *linked):
            path = Path(place, name).relative_to(target).as_posix()
            if path not in own:
                found.append(path)
    return found


def _swap(made: Path, target: Path, others: Collection[str]) -> None:
    """Exchange the two, and keep the others' files; a failure leaves the old one in its place."""
    aside = Path(tempfile.mkdtemp(TEMPORARY_SUFFIX, f"{target.name[:60]} old ", target.parent))
    aside.rmdir()
    target.replace(aside)
    moved: list[str] = []
    try:
        for name in others:
            make_folder((made / name).parent)
            (aside / name).replace(made / name)
            moved.append(name)
        made.replace(target)
    except BaseException:
        for name in moved:
            (made / name).replace(aside / name)
        aside.replace(target)
        raise
    shutil.rmtree(aside, ignore_errors=True)
