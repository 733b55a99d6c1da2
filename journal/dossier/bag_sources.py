"""Bags where they lie: a folder, a ZIP file or a tar file, listed and read, never unpacked.

What could harm whoever unpacks it is refused when it is listed: paths out of the folder, links and
devices, two names that are one on some disks, names that some systems keep for themselves, and
files that would grow without measure. RFC 8493, section 5, names most of these dangers.
"""

import io
import os
import stat
import struct
import tarfile
import zipfile
import zlib
from collections.abc import Collection, Iterable, Iterator, Sized
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import BinaryIO, Protocol

from journal.domain.bags import BagRefusedError, shown_path
from journal.domain.errors import JournalError
from journal.files.copying import open_unfollowed
from journal.files.names import one_on_any_disk, why_unsafe

#: A package with more files than this is no bag of a car.
MOST_FILES = 500_000
#: A file in a ZIP that is larger, in bytes, may not be more than so many times its packed size.
_SMALL, _MOST_GROWTH = 16 * 1024 * 1024, 100

#: What goes wrong when a file in a package can't be read to its end.
READING_ERRORS = (
    OSError, EOFError, ValueError, NotImplementedError, RuntimeError, OverflowError, struct.error,
    zipfile.BadZipFile, tarfile.TarError, zlib.error,
)  # fmt: skip
#: What the libraries raise over a package whose own lists are spoilt.
_DAMAGE = (
    zipfile.BadZipFile, tarfile.TarError, NotImplementedError, ValueError, EOFError, OverflowError,
    struct.error, zlib.error, IndexError,
)  # fmt: skip
#: Folders lie in one another no deeper than this in a bag of a car.
_DEEPEST = 40


class Source(Protocol):
    """A package: what is in it by path, in bytes, and a way to read each file.

    Attributes:
        form: "folder", "ZIP" or "tar".
        files: the size in bytes of every file in the bag, by its path from the bag's own folder.
        beside: paths in the package that lie beside the bag's own folder.
    """

    form: str
    files: dict[str, int]
    beside: tuple[str, ...]

    def open(self, path: str) -> BinaryIO:
        """Open a file of the bag to be read from its beginning; any thread may."""


@contextmanager
def opened(path: Path) -> Iterator[Source]:
    """The package at ``path``, listed.

    Raises:
        BagRefusedError: it could harm whoever unpacks it, or is no bag.
        JournalError: it can't be read.
    """
    with ExitStack() as closing:
        try:
            source = _source_at(path, closing)
        except OSError as error:
            raise JournalError(f"“{path}” can't be read: {error.strerror or error}.") from error
        except _DAMAGE as error:
            raise BagRefusedError(f"“{path.name}” is damaged as a package: {error}.") from error
        yield source


def _source_at(path: Path, closing: ExitStack) -> Source:
    if path.is_dir():
        return _Folder(path)
    if zipfile.is_zipfile(path):
        return _Zip(closing.enter_context(zipfile.ZipFile(path)))
    if tarfile.is_tarfile(path):
        return _Tar(path)
    raise JournalError(f"“{path}” is no folder, no ZIP file and no tar file.")


class _Folder:
    """A bag as a folder."""

    form = "folder"
    beside: tuple[str, ...] = ()

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self.files: dict[str, int] = {}
        self._list(folder, "")
        _refuse_twins(self.files)
        if "bagit.txt" not in self.files:
            raise BagRefusedError("It is no bag: there is no bagit.txt in it.")

    def _list(self, folder: Path, above: str) -> None:
        if above.count("/") > _DEEPEST:
            raise BagRefusedError(f"{shown_path(above)} is deeper than {_DEEPEST} folders.")
        with os.scandir(folder) as found:
            entries = sorted(found, key=lambda entry: entry.name)
        for entry in entries:
            path = above + entry.name
            _refuse_name(path)
            mode = entry.stat(follow_symlinks=False).st_mode
            if stat.S_ISDIR(mode):
                self._list(folder / entry.name, path + "/")
            elif stat.S_ISREG(mode):
                self.files[path] = entry.stat(follow_symlinks=False).st_size
                _refuse_too_many(self.files)
            else:
                raise BagRefusedError(f"{shown_path(path)} is {_kind_of(mode)}, not a file.")

    def open(self, path: str) -> BinaryIO:
        # The file was an ordinary one when listed.
        return open_unfollowed(self._folder / path)


class _Zip:
    """A bag in a ZIP file."""

    form = "ZIP"

    def __init__(self, archive: zipfile.ZipFile) -> None:
        self._archive = archive
        self._entries: dict[str, zipfile.ZipInfo] = {}
        packed = archive.infolist()
        _refuse_overlaps(packed)
        for entry in packed:
            # zipfile itself cuts names at a NUL and turns separators round.
            name = entry.orig_filename
            if name.endswith("/") and not entry.file_size:
                _refuse_name(name[:-1])
                continue
            _refuse_name(name)
            _refuse_entry(name, entry)
            if name in self._entries:
                raise BagRefusedError(f"{shown_path(name)} is in the package twice.")
            self._entries[name] = entry
            _refuse_too_many(self._entries)
        _refuse_twins(self._entries)
        self._base = _base_of(self._entries)
        self.files = {
            name.removeprefix(self._base): entry.file_size
            for name, entry in self._entries.items()
            if name.startswith(self._base)
        }
        self.beside = tuple(name for name in self._entries if not name.startswith(self._base))

    def open(self, path: str) -> BinaryIO:
        # It reads as a file does.
        return self._archive.open(self._entries[self._base + path])  # type: ignore[return-value]


class _Tar:
    """A bag in a tar file."""

    form = "tar"

    def __init__(self, path: Path) -> None:
        self._path = path
        self._places: dict[str, tuple[int, int]] = {}
        whole = path.stat().st_size
        # Only plain tar: a packed one could grow without measure while it is being listed.
        with tarfile.open(path, "r:") as archive:
            for member in archive:
                name = member.name
                _refuse_name(name)
                if member.isdir():
                    continue
                if not member.isreg() or member.issparse():
                    raise BagRefusedError(f"{shown_path(name)} is {_tar_kind(member)}.")
                if name in self._places:
                    raise BagRefusedError(f"{shown_path(name)} is in the package twice.")
                if member.offset_data + member.size > whole:
                    raise BagRefusedError(f"The package ends in the middle of {shown_path(name)}.")
                self._places[name] = (member.offset_data, member.size)
                _refuse_too_many(self._places)
        _refuse_twins(self._places)
        base = self._base = _base_of(self._places)
        self.files = {
            name.removeprefix(base): size
            for name, (_, size) in self._places.items()
            if name.startswith(base)
        }
        self.beside = tuple(name for name in self._places if not name.startswith(base))

    def open(self, path: str) -> BinaryIO:
        start, size = self._places[self._base + path]
        return io.BufferedReader(_Part(self._path, start, size))


class _Part(io.RawIOBase):
    """So many bytes of a file from a place on, as a file of their own."""

    def __init__(self, path: Path, start: int, size: int) -> None:
        self._file = path.open("rb", buffering=0)
        self._file.seek(start)
        self._left = size

    def readable(self) -> bool:
        return True

    def readinto(self, room: memoryview) -> int:  # type: ignore[override] # as io calls it
        count = self._file.readinto(memoryview(room)[: self._left]) or 0
        self._left -= count
        return count

    def close(self) -> None:
        self._file.close()
        super().close()


def _refuse_name(path: str) -> None:
    reason = why_unsafe(path) or why_unsafe(_decoded(path))
    if reason:
        raise BagRefusedError(f"{shown_path(path)} is refused: {reason}.")


def _decoded(path: str) -> str:
    """A path as a reader that takes percent signs for more than they are would see it."""
    from urllib.parse import unquote

    decoded = unquote(path, errors="replace").replace("\ufffd", "_")
    # Line breaks are the one thing that a bag may write so; they lead nowhere.
    return decoded.replace("\n", "_").replace("\r", "_")


def _refuse_twins(paths: Iterable[str]) -> None:
    """Refuse files of which a disk that tells no cases or forms apart would keep only one."""
    seen: dict[str, str] = {}
    for path in paths:
        other = seen.setdefault(one_on_any_disk(path), path)
        if other != path:
            raise BagRefusedError(
                f"{shown_path(path)} and {shown_path(other)} are one and the same name on some "
                "disks, so that unpacked only one of them is left."
            )


def _refuse_too_many(paths: Sized) -> None:
    if len(paths) > MOST_FILES:
        raise BagRefusedError(f"It holds more than {MOST_FILES:,} files.")


def _refuse_entry(name: str, entry: zipfile.ZipInfo) -> None:
    mode = entry.external_attr >> 16
    if entry.create_system == 3 and stat.S_IFMT(mode) not in (0, stat.S_IFREG):
        raise BagRefusedError(f"{shown_path(name)} is {_kind_of(mode)}, not a file.")
    if entry.flag_bits & 0x1:
        raise BagRefusedError(f"{shown_path(name)} is locked with a password.")
    if entry.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
        raise BagRefusedError(f"{shown_path(name)} is packed in an unusual way.")
    if entry.file_size > max(_SMALL, entry.compress_size * _MOST_GROWTH):
        raise BagRefusedError(
            f"{shown_path(name)} would grow from {entry.compress_size:,} to "
            f"{entry.file_size:,} bytes; that is how a package fills a disk."
        )


def _refuse_overlaps(entries: list[zipfile.ZipInfo]) -> None:
    """Refuse entries that share their bytes: so a small package could hold any amount."""
    end = 0
    for entry in sorted(entries, key=lambda entry: entry.header_offset):
        if entry.header_offset < end:
            raise BagRefusedError(
                f"{shown_path(entry.orig_filename)} shares its bytes with another file of the "
                "package; that is how a package fills a disk."
            )
        end = entry.header_offset + 30 + entry.compress_size


def _base_of(names: Collection[str]) -> str:
    """The one folder that the bag in a package is, with its slash; "" where it has none."""
    if "bagit.txt" in names:
        return ""
    bases = {name.split("/")[0] + "/" for name in names if name.count("/") == 1}
    found = [base for base in bases if base + "bagit.txt" in names]
    if len(found) != 1:
        many = "more than one bagit.txt" if found else "no bagit.txt"
        raise BagRefusedError(f"It is no bag: there is {many} in it.")
    return found[0]


def _kind_of(mode: int) -> str:
    if stat.S_ISLNK(mode):
        return "a link"
    if stat.S_ISDIR(mode):
        return "a folder"
    return "a device or a pipe"


def _tar_kind(member: tarfile.TarInfo) -> str:
    if member.issym() or member.islnk():
        return "a link, not a file"
    if member.isreg():
        return "a file with holes that could fill a disk"
    return "a device or a pipe, not a file"
