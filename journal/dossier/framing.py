"""Pairs framed alike: the after photo laid over the before, both cut to what both show."""

from collections.abc import Mapping, Sequence
from pathlib import Path

from journal.domain.errors import JournalError
from journal.domain.homographies import Matrix, inverse, product
from journal.domain.pairs import common_part
from journal.dossier.document import PairShown
from journal.dossier.printing import Print, Unprinted
from journal.files.scratch import write_scratch

_QUALITY = 88

#: The two pictures of a pair.
Framed = tuple[Print, Print]


def framings(
    pairs: Sequence[PairShown], prints: Mapping[int, Print | Unprinted], folder: Path
) -> dict[int, Framed]:
    """Both pictures of every pair that is laid, by its place; made of the pictures in ``folder``.

    A pair that can't be is left out, and stands side by side as its photos are.
    """
    made = {}
    for place, pair in enumerate(pairs):
        before, after = prints.get(pair.before.number), prints.get(pair.after.number)
        if pair.matrix is None or not isinstance(before, Print) or not isinstance(after, Print):
            continue
        framed = _framed(pair.matrix, before, after, folder, f"pair-{place}")
        if framed is not None:
            made[place] = framed
    return made


def _framed(matrix: Matrix, before: Print, after: Print, folder: Path, name: str) -> Framed | None:
    from PIL import Image

    try:
        part = common_part(matrix)
        left, top = round(part.left * before.width), round(part.top * before.height)
        right, low = round(part.right * before.width), round(part.bottom * before.height)
        size = (max(1, right - left), max(1, low - top))
        with Image.open(folder / before.name) as image:
            first = image.convert("RGB").crop((left, top, left + size[0], top + size[1]))
        with Image.open(folder / after.name) as image:
            way = _from_output(matrix, (left, top), before, after)
            second = image.convert("RGB").transform(
                size, Image.Transform.PERSPECTIVE, way, Image.Resampling.BICUBIC
            )
    except (JournalError, OSError, ValueError, ZeroDivisionError):
        return None
    return _kept(first, folder, f"{name}-before.jpg"), _kept(second, folder, f"{name}-after.jpg")


def _from_output(
    matrix: Matrix, corner: tuple[int, int], before: Print, after: Print
) -> tuple[float, ...]:
    """The eight numbers that lead a pixel of the cut before picture to one of the after."""
    x, y = corner
    to_shares: Matrix = (
        1 / before.width, 0.0, x / before.width, 0.0, 1 / before.height, y / before.height,
        0.0, 0.0, 1.0,
    )  # fmt: skip
    to_pixels: Matrix = (
        float(after.width), 0.0, 0.0, 0.0, float(after.height), 0.0, 0.0, 0.0, 1.0,
    )  # fmt: skip
    whole = product(to_pixels, product(inverse(matrix), to_shares))
    return tuple(number / whole[8] for number in whole[:8])


def _kept(image: object, folder: Path, name: str) -> Print:
    from io import BytesIO

    from PIL import Image

    assert isinstance(image, Image.Image)
    room = BytesIO()
    image.save(room, "JPEG", quality=_QUALITY)
    write_scratch(folder / name, room.getvalue())
    return Print(name, image.width, image.height)
