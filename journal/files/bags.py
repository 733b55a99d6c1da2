"""Writing a bag: every file read once, hashed twice on its way, into a folder, a ZIP or a tar file.

Nothing bears the final name before it is whole and on the disk. RFC 8493 has it that a packed bag
lies in one folder inside its package.
"""

import contextlib
import hashlib
import io
import os
import stat
import tarfile
import zipfile
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import Future, ThreadPoolExecutor
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Protocol

from journal.files import durable
from journal.files.ahead import in_order
from journal.files.buffers import Buffer
from journal.files.copying import CHUNK, SourceError, open_source, reason_of

#: How many files are flushed to the disk in one go, beside the work.
_FLUSHED_TOGETHER = 50
#: Files up to this many bytes are held until their turn in a package comes.
_HELD = 32 * 1024 * 1024


@dataclass(frozen=True, slots=True)
class Wanted:
    """A file that is to come into the bag: its path there, where it lies, what it must be.

    ``sha256`` is "" for a file that may hold anything.
    """

    path: str
    source: Path
    sha256: str = ""


@dataclass(frozen=True, slots=True)
class Digests:
    """What is known of a file in the bag: both digests, and its size in bytes."""

    sha256: str
    sha512: str
    size: int


class _Sink(Protocol):
    """Where a bag's files go."""

    def take(self, wanted: Wanted) -> tuple[Digests, bytes | None]:
        """Read and hash a file, and write it if that may be done in any thread."""

    def place(self, wanted: Wanted, digests: Digests, data: bytes | None) -> None:
        """Finish what ``take`` began, one file after another."""

    def put(self, path: str, data: Buffer) -> None:
        """Write a small file."""


class BagWriter:
    """A bag while it is written.

    Attributes:
        digests: every file so far, by its path.
    """

    def __init__(self, sink: _Sink) -> None:
        self._sink = sink
        self.digests: dict[str, Digests] = {}

    def copy(
        self, files: Iterable[Wanted], step: Callable[[int], None]
    ) -> list[tuple[Wanted, str]]:
        """Copy files in; those that can't be read, or aren't what they must be, with the reason.

        ``step`` is told before each how many are done, and may raise to stop.

        Raises:
            OSError: the bag can't be written.
        """
        left_out = []

        def work(wanted: Wanted) -> tuple[Digests, bytes | None] | SourceError:
            try:
                return self._sink.take(wanted)
            except SourceError as error:
                return error

        # Few ahead: a package keeps what is read in memory until its turn.
        for done, (wanted, taken) in enumerate(in_order(work, files, ahead=6)):
            step(done)
            if isinstance(taken, SourceError):
                left_out.append((wanted, str(taken)))
                continue
            try:
                self._sink.place(wanted, *taken)
            except SourceError as error:
                left_out.append((wanted, str(error)))
                continue
            self.digests[wanted.path] = taken[0]
        return left_out

    def put(self, path: str, data: bytes) -> None:
        """Write a file whose content is at hand; OSError where it can't be."""
        self._sink.put(path, data)
        sha256, sha512 = hashlib.sha256(data), hashlib.sha512(data)
        self.digests[path] = Digests(sha256.hexdigest(), sha512.hexdigest(), len(data))


@contextmanager
def new_bag(target: Path, form: str, base: str) -> Iterator[BagWriter]:
    """A bag that appears at ``target`` when all went well, and not at all otherwise.

    ``form`` is "folder", "zip" or "tar"; ``base`` names the folder inside a package.

    Raises:
        FileExistsError: there is something at ``target``.
        OSError: it can't be written.
    """
    if target.exists() or target.is_symlink():
        raise FileExistsError(f"“{target}” exists already")
    if form == "folder":
        with durable.unfinished_folder(target) as folder, _Folder(folder) as sink:
            yield BagWriter(sink)
        return
    with _unfinished_file(target) as stream:
        if form == "zip":
            with zipfile.ZipFile(stream, "w", zipfile.ZIP_STORED) as archive:
                yield BagWriter(_Zip(archive, base))
        else:
            with tarfile.open(fileobj=stream, mode="w", format=tarfile.PAX_FORMAT) as tar:
                yield BagWriter(_Tar(tar, base))


def _pump(source: Path, write: Callable[[memoryview], object] | None) -> tuple[Digests, int]:
    """Read a file once, hash it twice, hand on each part; its digests and time in nanoseconds."""
    reader = open_source(source)
    sha256, sha512, size = hashlib.sha256(), hashlib.sha512(), 0
    room = memoryview(bytearray(CHUNK))
    try:
        before = os.fstat(reader)
        if not stat.S_ISREG(before.st_mode):
            raise SourceError("it is not an ordinary file")
        with open(reader, "rb", buffering=0, closefd=False) as handle:
            while count := _read(handle, room):
                part = room[:count]
                sha256.update(part)
                sha512.update(part)
                size += count
                if write is not None:
                    write(part)
        after = os.fstat(reader)
    finally:
        os.close(reader)
    if (size, after.st_mtime_ns) != (before.st_size, before.st_mtime_ns):
        raise SourceError("it was changed while it was being read")
    return Digests(sha256.hexdigest(), sha512.hexdigest(), size), before.st_mtime_ns


def _read(handle: io.FileIO, room: memoryview) -> int:
    try:
        return handle.readinto(room) or 0
    except OSError as error:
        raise SourceError(reason_of(error)) from error


def _refuse_other(wanted: Wanted, found: Digests) -> None:
    if wanted.sha256 and found.sha256 != wanted.sha256:
        raise SourceError("it was altered since it came in: its SHA-256 is another")


class _Folder:
    """Files written straight to their places, by any thread, and flushed beside the work."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._unflushed: list[Path] = []
        self._flusher = ThreadPoolExecutor(1, "flushing")
        self._flushes: list[Future[None]] = []

    def __enter__(self) -> "_Folder":
        return self

    def __exit__(self, kind: object, error: object, trace: object) -> None:
        try:
            if kind is None:
                self._flush()
                for flush in self._flushes:
                    flush.result()
                durable.sync_tree(self._folder)
        finally:
            self._flusher.shutdown(wait=True, cancel_futures=True)

    def take(self, wanted: Wanted) -> tuple[Digests, bytes | None]:
        path = self._folder / wanted.path
        writer = self._open(path)
        try:
            try:
                digests, _ = _pump(wanted.source, lambda part: durable.write_all(writer, part))
            finally:
                os.close(writer)
            _refuse_other(wanted, digests)
        except BaseException:
            durable.discard(path)
            raise
        return digests, None

    def place(self, wanted: Wanted, digests: Digests, data: bytes | None) -> None:  # noqa: ARG002
        self._flush_later(self._folder / wanted.path)

    def put(self, path: str, data: Buffer) -> None:
        writer = self._open(self._folder / path)
        try:
            durable.write_all(writer, data)
        finally:
            os.close(writer)
        self._flush_later(self._folder / path)

    def _open(self, path: Path) -> int:
        path.parent.mkdir(parents=True, exist_ok=True)
        flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
        return os.open(path, flags, 0o644)

    def _flush_later(self, path: Path) -> None:
        self._unflushed.append(path)
        if len(self._unflushed) >= _FLUSHED_TOGETHER:
            self._flush()

    def _flush(self) -> None:
        paths, self._unflushed = self._unflushed, []
        self._flushes.append(self._flusher.submit(durable.sync_files, paths))


class _Package:
    """Files put one after another into a package; hashing goes on beside in other threads."""

    def __init__(self, base: str) -> None:
        self._base = base
        self._now = datetime.now()

    def take(self, wanted: Wanted) -> tuple[Digests, bytes | None]:
        parts = io.BytesIO()
        small = _size(wanted.source) <= _HELD
        digests, _ = _pump(wanted.source, parts.write if small else None)
        _refuse_other(wanted, digests)
        return digests, parts.getvalue() if small else None

    def place(self, wanted: Wanted, digests: Digests, data: bytes | None) -> None:
        if data is not None:
            self.put(wanted.path, data)
            return
        # Too large to be held: read once more, and never trusted to be what it was.
        with self.opened(wanted.path, digests.size) as write:
            again, _ = _pump(wanted.source, write)
        if again != digests:
            raise OSError(f"“{wanted.source}” was changed while the bag was written")

    def put(self, path: str, data: Buffer) -> None:
        with self.opened(path, memoryview(data).nbytes) as write:
            write(memoryview(data))

    def opened(
        self, path: str, size: int
    ) -> contextlib.AbstractContextManager[Callable[[memoryview], object]]:
        """A file of so many bytes in the package, and the function that writes it."""
        raise NotImplementedError


class _Zip(_Package):
    """A ZIP file; nothing is packed smaller, since photos can't be."""

    def __init__(self, archive: zipfile.ZipFile, base: str) -> None:
        super().__init__(base)
        self._archive = archive

    @contextmanager
    def opened(self, path: str, size: int) -> Iterator[Callable[[memoryview], object]]:
        info = zipfile.ZipInfo(f"{self._base}/{path}", self._now.timetuple()[:6])
        info.create_system = 3
        info.external_attr = (stat.S_IFREG | 0o644) << 16
        info.file_size = size
        with self._archive.open(info, "w") as stream:
            yield stream.write


class _Tar(_Package):
    """A plain tar file."""

    def __init__(self, archive: tarfile.TarFile, base: str) -> None:
        super().__init__(base)
        self._archive = archive

    @contextmanager
    def opened(self, path: str, size: int) -> Iterator[Callable[[memoryview], object]]:
        info = tarfile.TarInfo(f"{self._base}/{path}")
        info.size, info.mode, info.mtime = size, 0o644, int(self._now.timestamp())
        # The head first, then the content, rounded up to whole blocks as the form has it.
        stream = self._archive.fileobj
        assert stream is not None
        head = info.tobuf(self._archive.format, "utf-8", "surrogateescape")
        stream.write(head)
        yield lambda part: stream.write(part)  # type: ignore[arg-type] # bytes or a view
        stream.write(bytes(-size % tarfile.BLOCKSIZE))
        self._archive.offset += len(head) + size + (-size % tarfile.BLOCKSIZE)


def _size(source: Path) -> int:
    try:
        return source.stat().st_size
    except (OSError, ValueError) as error:
        raise SourceError(reason_of(error)) from error


class _Descriptor(io.RawIOBase):
    """A file being written, every byte of which goes the one way that all writing goes."""

    def __init__(self, descriptor: int) -> None:
        self._descriptor = descriptor

    def writable(self) -> bool:
        return True

    def seekable(self) -> bool:
        return True

    def write(self, data: Buffer) -> int:  # type: ignore[override] # as io calls it
        durable.write_all(self._descriptor, data)
        return memoryview(data).nbytes

    def seek(self, place: int, whence: int = os.SEEK_SET) -> int:
        return os.lseek(self._descriptor, place, whence)

    def tell(self) -> int:
        return os.lseek(self._descriptor, 0, os.SEEK_CUR)


@contextmanager
def _unfinished_file(target: Path) -> Iterator[io.RawIOBase]:
    """A file beside ``target`` that takes its name at the end, or is gone after a failure."""
    durable.make_folder(target.parent)
    descriptor, temporary = durable.open_temporary(target.parent)
    try:
        try:
            yield _Descriptor(descriptor)
            os.fsync(descriptor)
        finally:
            os.close(descriptor)
        durable.allow(temporary, 0o644)
        if target.exists():
            raise FileExistsError(f"“{target}” exists already")
        temporary.replace(target)
    except BaseException:
        durable.discard(temporary)
        raise
    durable.sync_folder(target.parent)
