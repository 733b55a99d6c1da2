"""A disk that fails on demand: the n-th write of the program finds no space left."""

import errno
import os
from dataclasses import dataclass, field

import pytest

from journal.files import copying, durable


@dataclass
class FullDisk:
    """Fails every write from the ``fail_at``-th on (1 is the first); 0 never fails.

    ``writes`` counts the writes asked for since the last ``fill``. With ``short`` the failing write
    first puts half of its bytes on the disk, as a file system does that runs full half-way.
    """

    fail_at: int = 0
    short: bool = True
    writes: int = 0
    _write_all: object = field(default=durable.write_all)

    def fill(self, at: int) -> None:
        self.fail_at, self.writes = at, 0

    def write_all(self, descriptor: int, data: bytes) -> None:
        self.writes += 1
        if self.fail_at and self.writes >= self.fail_at:
            if self.short and self.writes == self.fail_at:
                os.write(descriptor, memoryview(data)[: len(data) // 2])
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        self._write_all(descriptor, data)


@pytest.fixture
def full_disk(monkeypatch: pytest.MonkeyPatch) -> FullDisk:
    """The program's own writes go through this disk until the test ends."""
    disk = FullDisk()
    monkeypatch.setattr(durable, "write_all", disk.write_all)
    monkeypatch.setattr(copying, "write_all", disk.write_all)
    return disk
