"""Photos made ready for print: fetched, checked and scaled by several threads at once."""

import os
from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path

from journal.domain.errors import JournalError
from journal.domain.photos import Photo
from journal.domain.progress import Context
from journal.dossier.document import Shown
from journal.files.scratch import write_scratch

#: Gives the bytes of a photo's picture (JPEG or PNG), upright and turned, whose longer side is
#: about so many pixels; None where the original is missing or can't be shown. Called from several
#: threads at once.
Pictures = Callable[[Photo, int], bytes | None]

#: A picture this much larger than asked for is scaled down again.
_ROOM = 1.3

_QUALITY = 86


@dataclass(frozen=True, slots=True)
class Print:
    """A picture ready for the page: the name of its file and its size in pixels."""

    name: str
    width: int
    height: int


@dataclass(frozen=True, slots=True)
class Unprinted:
    """A photo that can't be shown, and why, as the end of a sentence."""

    reason: str


def prints(
    sizes: Mapping[int, int],
    shown: Sequence[Shown],
    pictures: Pictures,
    folder: Path,
    context: Context,
    and_then: Callable[[Print], None] | None = None,
) -> dict[int, Print | Unprinted]:
    """Write every photo of ``shown`` into ``folder``; each by its number, none left out.

    ``sizes`` are the pixels each one's longer side needs; ``and_then`` is called with each picture
    once it is there, from several threads. ``Cancelled`` from the context ends the
    work after the pictures in hand; an OSError says that ``folder`` can't be written.
    """
    done: dict[int, Print | Unprinted] = {}
    with ThreadPoolExecutor(os.cpu_count() or 2) as pool:
        try:
            jobs = [
                pool.submit(_printed, pictures, row, sizes[row.number], folder, and_then)
                for row in shown
            ]
            for row, job in zip(shown, jobs, strict=True):
                context.checkpoint()
                done[row.number] = job.result()
                context.report(len(done), len(shown), "Preparing pictures")
        except BaseException:
            pool.shutdown(wait=True, cancel_futures=True)
            raise
    return done


def _printed(
    pictures: Pictures,
    shown: Shown,
    longest: int,
    folder: Path,
    and_then: Callable[[Print], None] | None,
) -> Print | Unprinted:
    """One picture; whatever is wrong with it is said, so that the others go on."""
    try:
        data = pictures(shown.photo, longest)
    except (JournalError, OSError, ValueError) as error:
        return Unprinted(str(error).rstrip(".") or "the original can’t be read")
    if data is None:
        return Unprinted("the original is missing or can’t be read")
    fitted_to = fitted(data, longest)
    if fitted_to is None:
        return Unprinted("its picture can’t be read")
    data, (width, height) = fitted_to
    name = f"photo-{shown.number}.jpg"
    write_scratch(folder / name, data)
    made = Print(name, width, height)
    if and_then is not None:
        and_then(made)
    return made


def fitted(data: bytes, longest: int) -> tuple[bytes, tuple[int, int]] | None:
    """JPEG bytes and size: as they are where they are plain and of about the size asked for."""
    from PIL import Image

    try:
        with Image.open(BytesIO(data)) as image:
            plain = image.format == "JPEG" and image.mode in ("RGB", "L")
            if plain and max(image.size) <= longest * _ROOM:
                return data, image.size
            image.draft("RGB", (longest, longest))
            small = image.convert("RGB")
            small.thumbnail((longest, longest), Image.Resampling.LANCZOS, reducing_gap=2.0)
            target = BytesIO()
            small.save(target, "JPEG", quality=_QUALITY)
            return target.getvalue(), small.size
    except (OSError, ValueError, SyntaxError, Image.DecompressionBombError):
        return None
