"""The album's pictures: two sizes of every photo, and of a pair the two framed alike."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from journal.domain.progress import Context
from journal.dossier.album.links import PHOTOS, small_name
from journal.dossier.document import PairShown, Shown
from journal.dossier.framing import Framed, framings
from journal.dossier.printing import Pictures, Print, Unprinted, fitted, prints
from journal.files.scratch import write_scratch

#: The longer side of a photo's two pictures, in pixels: on a page of its own, and among others.
LARGE, SMALL = 1600, 480

#: Two photos of shapes no more apart than this can lie over each other as they are.
_ALIKE = 0.02


@dataclass(frozen=True, slots=True)
class Plate:
    """A photo's two pictures: their files below the album's folder, and their size in pixels.

    ``reason`` says why there is none, as the end of a sentence; "" where there is.
    """

    large: str = ""
    width: int = 0
    height: int = 0
    small: str = ""
    small_width: int = 0
    small_height: int = 0
    reason: str = ""


@dataclass(frozen=True, slots=True)
class Laid:
    """The two pictures of a pair that are of one shape, so that one can slide over the other."""

    before: str
    after: str
    width: int
    height: int


@dataclass(frozen=True, slots=True)
class Plates:
    """Every photo's pictures by its number, and of the pairs by their place."""

    photos: Mapping[int, Plate]
    pairs: Mapping[int, Laid]

    @property
    def whole(self) -> int:
        """How many photos can be looked at."""
        return sum(not plate.reason for plate in self.photos.values())


def plates(
    shown: Sequence[Shown],
    pairs: Sequence[PairShown],
    pictures: Pictures,
    folder: Path,
    context: Context,
) -> Plates:
    """Write the pictures into the album's ``folder``, several at a time.

    ``Cancelled`` from the context ends the work; an OSError says that the folder can't be written.
    """
    place = folder / PHOTOS
    small: dict[str, tuple[str, int, int]] = {}

    def smaller(large: Print) -> None:
        # What was covered on the large picture is covered on what is made of it.
        found = fitted((place / large.name).read_bytes(), SMALL)
        if found is None:
            small[large.name] = (large.name, large.width, large.height)
            return
        data, size = found
        name = small_name(int(large.name.removeprefix("photo-").removesuffix(".jpg")))
        write_scratch(place / name, data)
        small[large.name] = (name, *size)

    sizes = {row.number: LARGE for row in shown}
    made = prints(sizes, shown, pictures, place, context, smaller)
    framed = framings(pairs, made, place)
    laid = {
        place: found
        for place, pair in enumerate(pairs)
        if (found := _laid(place, pair, made, framed))
    }
    return Plates({number: _plate(one, small) for number, one in made.items()}, laid)


def _plate(made: Print | Unprinted, small: Mapping[str, tuple[str, int, int]]) -> Plate:
    if isinstance(made, Unprinted):
        return Plate(reason=made.reason)
    name, width, height = small[made.name]
    return Plate(
        f"{PHOTOS}/{made.name}", made.width, made.height, f"{PHOTOS}/{name}", width, height
    )


def _laid(
    place: int,
    pair: PairShown,
    made: Mapping[int, Print | Unprinted],
    framed: Mapping[int, Framed],
) -> Laid | None:
    """The pair as it was framed, or as the photos are where they have one shape."""
    before, after = framed.get(place) or (made[pair.before.number], made[pair.after.number])
    if not isinstance(before, Print) or not isinstance(after, Print):
        return None
    shapes = before.width * after.height, after.width * before.height
    if abs(shapes[0] - shapes[1]) > max(shapes) * _ALIKE:
        return None
    return Laid(f"{PHOTOS}/{before.name}", f"{PHOTOS}/{after.name}", before.width, before.height)
