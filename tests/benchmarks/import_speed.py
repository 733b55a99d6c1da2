"""How fast photos come in: python -m tests.benchmarks.import_speed [photos [rounds]]

Everything is compared with a floor measured beside it in the same process, on the same made
12-megapixel JPEGs, with the page cache warm and as many threads as there are cores:

- whole: read, SHA-256 and copy by hashlib, then a decode at an eighth by simplejpeg, nothing else;
- copy: read, SHA-256 and copy, then fsync of every file, which durable copying can't do without;
- known: read and SHA-256.

Times are milliseconds a photo, medians of the rounds: by the clock, and of processor time. Memory
is the peak of a process of its own that adds the photos, over what it had with the modules of the
program loaded (Linux only).
Workers stand behind other programs, so the figures mean something on a quiet machine alone.
"""

import hashlib
import io
import os
import random
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from datetime import datetime, timedelta
from functools import partial
from pathlib import Path
from typing import Any

import numpy as np
import simplejpeg
from PIL import Image

from journal.actions import adding
from journal.actions.add_photos import add_photos
from journal.actions.journals import new_journal, open_journal
from journal.actions.session import Session
from journal.domain.car import Car
from journal.domain.progress import Silent
from journal.intake.walking import walk
from tests.intake.made import DATE, exif

CHUNK = 256 * 1024
_MEASURED = """
import re, sys
from pathlib import Path
from journal.actions.add_photos import add_photos
from journal.actions import adding
from journal.actions.journals import open_journal
import numpy, simplejpeg
def kilobytes():
    return int(re.search(r"VmHWM:\\s+(\\d+)", Path("/proc/self/status").read_text())[1])
with open_journal(Path(sys.argv[1])) as session:
    before = kilobytes()
    add_photos(session, [Path(sys.argv[2])])
    print((kilobytes() - before) // 1024)
"""


def make_photos(folder: Path, count: int) -> None:
    """Photos as a camera makes them: 4000 x 3000, about 4 MB, dated, each with bytes of its own."""
    folder.mkdir()
    chance = np.random.default_rng(1)
    start = datetime(2016, 3, 5, 10, 0)
    pictures = [_picture(chance) for _ in range(6)]
    for number in range(count):
        taken = (start + timedelta(minutes=7 * number)).strftime("%Y:%m:%d %H:%M:%S")
        block = exif({0x010F: "Rook Optical", 0x0110: "Rook 12"}, {DATE: taken})
        body = pictures[number % len(pictures)]
        segment = b"\xff\xe1" + (len(block) + 2).to_bytes(2, "big") + block
        data = body[:2] + segment + body[2:] + random.Random(number).randbytes(64)
        (folder / f"IMG_{number + 1:04}.JPG").write_bytes(data)


def _picture(chance: np.random.Generator) -> bytes:
    coarse = chance.integers(0, 255, (94, 125, 3), dtype=np.uint8)
    smooth = Image.fromarray(coarse).resize((4000, 3000), Image.Resampling.BICUBIC)
    noise = chance.integers(-12, 12, (3000, 4000, 1), dtype=np.int16)
    pixels = (np.asarray(smooth, dtype=np.int16) + noise).clip(0, 255).astype(np.uint8)
    room = io.BytesIO()
    Image.fromarray(pixels).save(room, "JPEG", quality=90)
    return room.getvalue()


def in_threads(work: Callable[[Path], Any], paths: Sequence[Path]) -> None:
    """Run the floor's work on every core."""
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        for _ in pool.map(work, paths):
            pass


def read_and_hash(path: Path) -> bytes:
    """The floor of recognising a known file."""
    digest, data = hashlib.sha256(), bytearray()
    with path.open("rb", buffering=0) as handle:
        while chunk := handle.read(CHUNK):
            digest.update(chunk)
            data += chunk
    return bytes(data)


def copy(path: Path, into: Path) -> bytes:
    """The floor of copying: read, hash and write, in one pass."""
    digest, data = hashlib.sha256(), []
    with path.open("rb", buffering=0) as source, (into / path.name).open("wb", 0) as target:
        while chunk := source.read(CHUNK):
            digest.update(chunk)
            target.write(chunk)
            data.append(chunk)
    return b"".join(data)


def copy_and_decode(path: Path, into: Path) -> None:
    """The floor of the whole import."""
    simplejpeg.decode_jpeg(copy(path, into), min_width=256, min_height=192)


def sync_all(folder: Path) -> None:
    """Flush every file of a folder, one after the other."""
    for path in folder.iterdir():
        descriptor = os.open(path, os.O_RDONLY)
        os.fsync(descriptor)
        os.close(descriptor)


def timed(act: Callable[[], Any], photos: int) -> tuple[float, float]:
    """Milliseconds a photo: by the clock, and of processor time over all threads."""
    os.sync()
    start, busy = time.perf_counter(), time.process_time()
    act()
    spent = time.perf_counter() - start, time.process_time() - busy
    return spent[0] * 1000 / photos, spent[1] * 1000 / photos


def one_round(photos: Path) -> dict[str, tuple[float, float]]:
    """Every floor and every figure once.

    Each writes into a folder of its own, gone before the next begins: otherwise whoever comes last
    pays for memory that the system hands out for the first time.
    """
    paths, found = sorted(photos.iterdir()), {}
    count = len(paths)
    found["known floor"] = timed(lambda: in_threads(read_and_hash, paths), count)
    with emptied(photos) as into:
        work = partial(copy_and_decode, into=into)
        found["whole floor"] = timed(lambda: in_threads(work, paths), count)
    with emptied(photos) as into:
        found["copy floor"] = timed(lambda: copy_durably(paths, into), count)
    with emptied(photos) as into, new_journal(into / "journal", Car("Halden Rook")) as session:
        found["copy"] = timed(lambda: add_without_thumbnails(session, photos), count)
    with emptied(photos) as into, new_journal(into / "journal", Car("Halden Rook")) as session:
        found["whole"] = timed(lambda: add_photos(session, [photos]), count)
        found["known"] = timed(lambda: add_photos(session, [photos]), count)
    return found


def copy_durably(paths: Sequence[Path], into: Path) -> None:
    """The floor of phase one."""
    in_threads(partial(copy, into=into), paths)
    sync_all(into)


def add_without_thumbnails(session: Session, photos: Path) -> None:
    """Phase one: everything until the photos are on the timeline."""
    act = adding.Adding(session.journal, Silent(), datetime.now())
    act.take_in(walk([photos]))
    act.date_by_neighbours()
    assert len(act.added) == session.journal.photos.count()


@contextmanager
def emptied(beside: Path) -> Iterator[Path]:
    """A new folder beside another, deleted and forgotten after use."""
    with tempfile.TemporaryDirectory(dir=beside.parent) as folder:
        yield Path(folder)
    os.sync()


def peak_megabytes(photos: Path, scratch: Path) -> int:
    """How much more memory a process takes while it adds the photos."""
    new_journal(scratch / "memory", Car("Halden Rook")).close()
    command = [sys.executable, "-c", _MEASURED, str(scratch / "memory"), str(photos)]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    with open_journal(scratch / "memory") as session:
        assert session.journal.photos.count() == len(list(photos.iterdir()))
    return int(done.stdout)


def main() -> None:
    """Print the figures and their ratios to the floors."""
    count, rounds = (*map(int, sys.argv[1:]), *(200, 3)[len(sys.argv) - 1 :])
    with tempfile.TemporaryDirectory() as folder:
        photos = Path(folder) / "photos"
        make_photos(photos, count)
        size = sum(path.stat().st_size for path in photos.iterdir()) / count / 1e6
        say(f"{count} photos of {size:.1f} MB, {os.cpu_count()} cores, {rounds} rounds")
        results = [one_round(photos) for _ in range(rounds)]
        for name in ("whole", "copy", "known"):
            for which, clock in enumerate(("clock", "processor")):
                pairs = [(found[name][which], found[f"{name} floor"][which]) for found in results]
                ours, floor = (statistics.median(side) for side in zip(*pairs, strict=True))
                ratio = statistics.median(one / other for one, other in pairs)
                say(f"{name:<8}{ours:7.2f} ms, floor {floor:6.2f}, {ratio:5.2f} x ({clock})")
        with tempfile.TemporaryDirectory(dir=folder) as scratch:
            say(f"memory  {peak_megabytes(photos, Path(scratch)):4} MB over the loaded program")


def say(line: str) -> None:
    """One line of the figures."""
    sys.stdout.write(line + "\n")
    sys.stdout.flush()


if __name__ == "__main__":
    main()
