"""Making and checking bundles: python -m tests.benchmarks.bundle_speed [originals] [kB each]

The journal's originals are bytes without a picture in them; the dossier is left out, which has a
benchmark of its own. Each figure is the least of three, in seconds of the clock, with the processor
time beside it. The references run in the same script over the same files: reading each once and
taking SHA-256 and SHA-512 of it, by one thread and by as many as there are cores; and
``sha256sum``. ``flushed`` says what a plain copy with a flush of every file needs: the disk's part.
"""

import hashlib
import os
import random
import resource
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from pathlib import Path

from journal.actions import bundles
from journal.actions.bundles import make_bundle
from journal.actions.checking import check, check_bundle
from journal.actions.journals import new_journal
from journal.actions.session import Session
from journal.domain.bundles import BundleChoice, BundleForm
from journal.domain.car import Car
from journal.domain.ids import Sha256
from tests.store.values import new_photo

_TURNS = 3


def filled_journal(folder: Path, count: int, size: int) -> Session:
    """A journal of so many originals of about so many bytes each."""
    session = new_journal(folder, Car("Halden Rook"))
    chance = random.Random(count)
    for first in range(0, count, 500):
        staged = []
        for number in range(first, min(first + 500, count)):
            content = chance.randbytes(chance.randrange(size // 2, size * 3 // 2))
            path = session.journal.staging / f"{number}.part"
            path.write_bytes(content)
            sha256 = Sha256(hashlib.sha256(content).hexdigest())
            new = new_photo(number)
            staged.append((path, replace(new, sha256=sha256, size=len(content))))
        session.journal.settle(staged)
        with session.journal.edit(f"Add {len(staged)} photos"):
            session.journal.photos.add([photo for _, photo in staged])
    return session


def hash_twice(path: Path) -> None:
    """Read a file once and take both digests."""
    one, other = hashlib.sha256(), hashlib.sha512()
    room = memoryview(bytearray(256 * 1024))
    with path.open("rb", buffering=0) as stream:
        while count := stream.readinto(room):
            one.update(room[:count])
            other.update(room[:count])


def in_threads(act: Callable[[Path], object], paths: Iterable[Path]) -> None:
    """Do it to every file, on all cores."""
    with ThreadPoolExecutor(os.cpu_count() or 1) as pool:
        list(pool.map(act, paths))


def copy_flushed(paths: Iterable[Path], folder: Path) -> None:
    """What the disk needs for as many bytes in as many files."""
    folder.mkdir()
    for path in paths:
        shutil.copyfile(path, folder / path.name)
        descriptor = os.open(folder / path.name, os.O_RDONLY)
        os.fsync(descriptor)
        os.close(descriptor)
    shutil.rmtree(folder)


def least(act: Callable[[], object]) -> tuple[float, float]:
    """The least time of the clock and of the processor that a call takes, in seconds."""
    times = []
    for _ in range(_TURNS):
        before, begun = resource.getrusage(resource.RUSAGE_SELF), time.perf_counter()
        act()
        took = time.perf_counter() - begun
        after = resource.getrusage(resource.RUSAGE_SELF)
        cpu = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
        times.append((took, cpu))
    return min(wall for wall, _ in times), min(cpu for _, cpu in times)


def show(name: str, took: tuple[float, float], base: tuple[float, float]) -> None:
    """A line of the table."""
    wall, cpu = took
    ratio, of_cpu = wall / base[0], cpu / base[1] if base[1] else 0
    print(f"  {name:<34}{wall:8.2f} s {ratio:6.2f} x   cpu {cpu:7.2f} s {of_cpu:6.2f} x")  # noqa: T201


def bundle_once(session: Session, out: Path, form: BundleForm) -> None:
    """Make a bundle and remove it again."""
    make_bundle(session, out, BundleChoice(form=form))
    shutil.rmtree(out) if out.is_dir() else out.unlink()


def without_dossier() -> None:
    """Leave the typesetting out of what is measured."""

    def write(_session: Session, out: Path, *_rest: object) -> object:
        out.write_bytes(b"%PDF-1.7")
        return type("Report", (), {"notes": ()})()

    bundles.make_dossier = write  # type: ignore[assignment]


def main() -> None:
    """Print the table."""
    count, kilobytes = [int(word) for word in sys.argv[1:]] or (2000, 500)
    without_dossier()
    with tempfile.TemporaryDirectory(dir=os.environ.get("BENCHMARK_FOLDER")) as scratch:
        folder = Path(scratch)
        with filled_journal(folder / "Rook", count, kilobytes * 1000) as session:
            paths = sorted(session.folder.glob("originals/??/*"))
            size = sum(path.stat().st_size for path in paths) / 1e6
            print(f"{count:,} originals, {size:,.0f} MB, {os.cpu_count()} cores")  # noqa: T201
            base = least(lambda: [hash_twice(path) for path in paths])
            show("read and hash twice, one thread", base, base)
            show("the same, all cores", least(lambda: in_threads(hash_twice, paths)), base)
            show(
                "copy with a flush of each file",
                least(lambda: copy_flushed(paths, folder / "c")),
                base,
            )
            for form in BundleForm:
                out = folder / f"bundle{form.suffix}"
                took = least(lambda out=out, form=form: bundle_once(session, out, form))
                show(f"bundle as a {form.value}", took, base)
            make_bundle(session, folder / "b", BundleChoice())
            show("check of the bundle", least(lambda: check_bundle(folder / "b")), base)
            words = ["sha256sum", *map(str, paths)]
            tool = least(lambda: subprocess.run(words, capture_output=True, check=True))
            show("sha256sum", tool, (tool[0], 0))
            show("check of the journal", least(lambda: check(session)), (tool[0], 0))


if __name__ == "__main__":
    main()
