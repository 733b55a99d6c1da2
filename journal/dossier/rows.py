"""Photos laid in rows of equal height that fill the width of the page, none of them cropped."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from journal.domain.photos import Photo, Role
from journal.dossier.document import Shown

#: The width between the margins of an A4 page, and the white between two photos, in millimetres.
MEASURE = 166.0
GUTTER = 4.0

#: Heights no photo exceeds, in millimetres: by how many stand side by side in the row.
_HIGHEST = {1: 58.0, 2: 66.0, 3: 58.0}

#: The narrowest place a photo has, in millimetres: under a narrower one no caption could be read.
_COLUMN = 28.0

#: Bounds to width over height of a photo's place; what is beyond them leaves white beside it.
_NARROWEST, _WIDEST = 0.3, 4.0

#: The shape taken for a photo whose size isn't known.
_USUAL = 4 / 3


#: The shape of the box of a photo that stands in half the width: a standard view, one of a pair.
#: Three such rows with their words fill a page.
HALF_SHAPE = 1.55


#: And of one that stands in a third of it.
THIRD_SHAPE = 4 / 3


def third_width(measure: float) -> float:
    """The width of each of three photos side by side."""
    return (measure - 2 * GUTTER) / 3


def half_width(measure: float) -> float:
    """The width of each of two photos side by side."""
    return (measure - GUTTER) / 2


@dataclass(frozen=True, slots=True)
class Placed:
    """A photo with its printed size in millimetres."""

    shown: Shown
    width: float
    height: float


def in_rows(shown: Sequence[Shown]) -> tuple[tuple[Shown, ...], ...]:
    """Photos by row: first one of before, during and after side by side, then the rest in order.

    Where a single photo would be left over, the one of the work goes down to it, so that two
    pairs stand one below the other.
    """
    first = [next((row for row in shown if row.role is role), None) for role in Role]
    lead = list({row.number: row for row in first if row is not None}.values())
    if len(lead) == len(Role) and len(shown) == len(lead) + 1:
        lead = [row for row in lead if row.role is not Role.DURING]
    rest = [row for row in shown if row not in lead]
    return tuple(tuple(row) for row in (lead, *_in_threes(rest)) if row)


def _in_threes(rest: Sequence[Shown]) -> list[Sequence[Shown]]:
    """Rows of three; four that are left over are two pairs rather than three and one."""
    rows: list[Sequence[Shown]] = []
    while rest:
        take = 2 if len(rest) == 4 else 3
        rows.append(rest[:take])
        rest = rest[take:]
    return rows


def placed(
    row: Sequence[Shown], shapes: Mapping[int, float], measure: float = MEASURE
) -> tuple[Placed, ...]:
    """A row's photos at one height, as wide together as the measure or as their height allows.

    ``shapes`` are widths over heights by the number of the photo in the document; a photo that
    isn't in it has the shape its record says.
    """
    ratios = [shapes.get(s.number) or shape_of(s.photo) for s in row]
    ratios = [min(max(ratio, _NARROWEST), _WIDEST) for ratio in ratios]
    height = min(_height(ratios, measure), _HIGHEST[len(row)])
    return tuple(
        Placed(s, max(height * r, _COLUMN), height) for s, r in zip(row, ratios, strict=True)
    )


def _height(ratios: Sequence[float], measure: float) -> float:
    """The height at which places of these shapes, none narrower than a column, fill the measure."""
    room = measure - GUTTER * (len(ratios) - 1)
    wide = list(ratios)
    height = room / sum(wide)
    while any(height * ratio < _COLUMN for ratio in wide) and len(wide) > 1:
        wide.remove(min(wide))
        height = (room - _COLUMN * (len(ratios) - len(wide))) / sum(wide)
    return height


def shape_of(photo: Photo) -> float:
    """Width over height of a photo as its record says, 4:3 where it doesn't."""
    if not (photo.width and photo.height):
        return _USUAL
    lies = photo.turn % 180 == 90
    return photo.height / photo.width if lies else photo.width / photo.height


def pixels(width: float, height: float, dots_per_inch: int) -> int:
    """How many pixels the longer side of a picture printed at that size (mm) needs."""
    return max(1, round(max(width, height) / 25.4 * dots_per_inch))
