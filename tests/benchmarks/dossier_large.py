"""A dossier with 500 photos at print size: time against its parts alone, and memory at its peak.

Run it as ``python -m tests.benchmarks.dossier_large``. The originals are twelve drawn pictures of
twelve megapixels each, used in turn. References, measured beside the whole job and in turn with it:

- typst alone, given the finished pictures, drawings and texts of the very same pages;
- scaling: the same originals to the same sizes with Pillow alone, in as many threads as cores.

Goals: setting the pages within 2 times typst alone; the whole job within 1.5 times of scaling and
typst alone, one after the other; memory below 1 GiB in a process of its own.
"""

import io
import json
import os
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from functools import partial
from pathlib import Path
from statistics import median

import typst
from PIL import Image, ImageFilter

from journal.domain.photos import Photo
from journal.domain.progress import Silent
from journal.dossier import glyphs, pdf
from journal.dossier.document import Dossier
from journal.dossier.pages import sheet
from journal.dossier.printing import prints
from journal.dossier.typeset import sizes, write_pdf
from journal.files.assets import asset
from journal.files.copying import hash_file
from journal.intake import decode
from tests.benchmarks.dossier_speed import composed
from tests.dossier import showcase

_AREAS, _EACH, _ORIGINALS, _ROUNDS = 125, 4, 12, 3


def originals(folder: Path) -> None:
    """Draw pictures with the noise of a camera's, 4000 by 3000 pixels."""
    for number in range(_ORIGINALS):
        noise = Image.effect_noise((1000, 750), 40 + number).resize((4000, 3000))
        tone = Image.linear_gradient("L").resize((4000, 3000)).rotate(90 * number)
        image = Image.merge("RGB", (noise, tone, noise.filter(ImageFilter.BLUR)))
        image.save(folder / f"original-{number}.jpg", quality=90)


def original(folder: Path, photo: Photo) -> Path:
    """The original that stands for a photo."""
    return folder / f"original-{photo.id % _ORIGINALS}.jpg"


def picture(folder: Path, photo: Photo, longest: int) -> bytes | None:
    """A photo's picture as the program makes it: its original hashed first, then scaled."""
    hash_file(original(folder, photo))
    shown = decode.picture(original(folder, photo), longest)
    return decode.encode(Image.frombytes("RGB", (shown.width, shown.height), shown.rgb), 88)


def scaling(folder: Path, dossier: Dossier) -> None:
    """The same pictures with Pillow alone."""
    wanted = sizes(dossier)

    def one(number: int, photo: Photo) -> None:
        with Image.open(original(folder, photo)) as image:
            side = wanted[number]
            image.draft("RGB", (side, side))
            image.thumbnail((side, side), Image.Resampling.BILINEAR, reducing_gap=2.0)
            image.save(io.BytesIO(), "JPEG", quality=88)

    with ThreadPoolExecutor(os.cpu_count() or 2) as pool:
        for job in [pool.submit(one, row.number, row.photo) for row in dossier.shown]:
            job.result()


def typst_alone(folder: Path, texts: str) -> None:
    typst.compile(
        folder / "main.typ",
        root=folder,
        font_paths=typst.Fonts(include_system_fonts=False, font_paths=[str(asset("fonts"))]),
        sys_inputs={"dossier": texts},
        pdf_standards=["a-2a", "ua-1"],
    )


def seconds(work: Callable[[], object]) -> float:
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def one_round(folder: Path, number: int) -> dict[str, float]:
    """Seconds of each side; titles differ, so that typst remembers nothing of the others."""
    record = showcase.showcase(areas=_AREAS, photos_each=_EACH)
    found: dict[str, float] = {}
    dossier = composed(record, f"Round {number}")
    with tempfile.TemporaryDirectory() as ready:
        room = Path(ready)
        printed = prints(sizes(dossier), dossier.shown, partial(picture, folder), room, Silent())
        laid = sheet(composed(record, f"Round {number}, ours"), printed)
        found["setting"] = seconds(lambda: pdf.typeset(laid, room))
        laid = sheet(composed(record, f"Round {number}, alone"), printed)
        texts = json.dumps(glyphs.everywhere(laid.data, glyphs.breakable), ensure_ascii=False)
        found["typst"] = seconds(lambda: typst_alone(room, texts))
    found["scaling"] = seconds(lambda: scaling(folder, dossier))
    whole = composed(record, f"Round {number}, whole")
    out = folder / "dossier.pdf"
    found["whole"] = seconds(lambda: write_pdf(whole, partial(picture, folder), out))
    return found


def peak(folder: Path) -> int:
    """Make one dossier and say the most memory this process ever had, in MiB."""
    record = showcase.showcase(areas=_AREAS, photos_each=_EACH)
    write_pdf(composed(record, "Peak"), partial(picture, folder), folder / "peak.pdf")
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024


def main() -> None:
    """Measure, and print each figure beside its goal."""
    if len(sys.argv) > 1:
        sys.stdout.write(f"{peak(Path(sys.argv[1]))}\n")
        return
    with tempfile.TemporaryDirectory() as room:
        folder = Path(room)
        originals(folder)
        command = [sys.executable, "-m", "tests.benchmarks.dossier_large", room]
        memory = int(subprocess.run(command, capture_output=True, text=True, check=True).stdout)
        rounds = [one_round(folder, number) for number in range(_ROUNDS)]
    mid = {name: median(row[name] for row in rounds) for name in rounds[0]}
    both = mid["scaling"] + mid["typst"]
    lines = (
        f"{_AREAS * _EACH} photos, {os.cpu_count()} cores, median of {_ROUNDS}",
        f"typst alone       {mid['typst']:6.1f} s",
        f"setting the pages {mid['setting']:6.1f} s   {mid['setting'] / mid['typst']:.2f} (goal 2)",
        f"scaling alone     {mid['scaling']:6.1f} s",
        f"the whole job     {mid['whole']:6.1f} s   {mid['whole'] / both:.2f} of both (goal 1.5)",
        f"                             {mid['whole'] / mid['scaling']:.2f} of scaling alone",
        f"memory at its peak {memory:5} MiB (goal: under 1024)",
    )
    sys.stdout.write("\n".join(lines) + "\n")


if __name__ == "__main__":
    main()
