"""A web album of 500 photos: time against scaling the same pictures, and memory at its peak.

Run it as ``python -m tests.benchmarks.album_speed``. The originals are twelve drawn pictures of
twelve megapixels each, used in turn. References, measured beside the whole job and in turn with it:

- scaling: the same originals to the same two sizes with Pillow alone, in as many threads as cores;
- flushing: the finished folder's bytes written once more and flushed.

Goals: the whole job within 1.5 times of both, one after the other; memory below 1 GiB in a process
of its own.
"""

import io
import json
import os
import resource
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from functools import partial
from pathlib import Path
from statistics import median

from PIL import Image

from journal.domain.photos import Photo
from journal.domain.progress import Silent
from journal.domain.record import Record
from journal.dossier.album.plates import LARGE, SMALL
from journal.dossier.album.writing import write_album
from journal.dossier.document import Dossier
from journal.files.durable import sync_files
from tests.benchmarks.dossier_large import original, originals, picture
from tests.benchmarks.dossier_speed import composed
from tests.dossier import showcase

_AREAS, _EACH, _ROUNDS = 125, 4, 3


def told() -> tuple[Record, Dossier]:
    """A record of 500 photos, and what is told of it."""
    record = showcase.showcase(_AREAS, _EACH)
    return record, composed(record, record.car.title)


def whole(folder: Path, record: Record, dossier: Dossier) -> None:
    """The album, from the originals on."""
    out = folder / "album"
    shutil.rmtree(out, ignore_errors=True)
    write_album(dossier, record, partial(picture, folder), out, Silent())


def scaling(folder: Path, dossier: Dossier) -> None:
    """The same pictures with Pillow alone."""

    def one(photo: Photo) -> None:
        with Image.open(original(folder, photo)) as image:
            for side in (LARGE, SMALL):
                image.draft("RGB", (side, side))
                image.thumbnail((side, side), Image.Resampling.BILINEAR, reducing_gap=2.0)
                image.save(io.BytesIO(), "JPEG", quality=88)

    with ThreadPoolExecutor(os.cpu_count() or 2) as pool:
        for job in [pool.submit(one, row.photo) for row in dossier.shown]:
            job.result()


def flushing(folder: Path) -> None:
    """The finished folder's files copied and flushed."""
    copy = folder / "copy"
    shutil.rmtree(copy, ignore_errors=True)
    shutil.copytree(folder / "album", copy)
    sync_files([path for path in copy.rglob("*") if path.is_file()])


def timed(act: Callable[[], None]) -> float:
    begun = time.perf_counter()
    act()
    return time.perf_counter() - begun


def memory(folder: Path) -> None:
    """Make the album once, and print the process's peak in MiB."""
    whole(folder, *told())
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    sys.stdout.write(json.dumps(peak))


def main() -> None:
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        originals(folder)
        record, dossier = told()
        rows = []
        for _ in range(_ROUNDS):
            job = timed(lambda: whole(folder, record, dossier))
            rows.append(
                (job, timed(lambda: scaling(folder, dossier)), timed(lambda: flushing(folder)))
            )
        jobs, scaled, flushed = (median(column) for column in zip(*rows, strict=True))
        command = [sys.executable, "-m", "tests.benchmarks.album_speed", name]
        peak = json.loads(subprocess.run(command, check=True, capture_output=True).stdout)
        sys.stdout.write(
            f"{len(dossier.shown)} photos: {jobs:.1f} s, scaling {scaled:.1f} s, flushing "
            f"{flushed:.1f} s: {jobs / (scaled + flushed):.2f} times of both; "
            f"{peak:.0f} MiB at the peak\n"
        )


if __name__ == "__main__":
    if len(sys.argv) > 1:
        memory(Path(sys.argv[1]))
    else:
        main()
