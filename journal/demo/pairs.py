"""The demo's pairs: photos of one view before and after, and spots clicked on both.

The drawn pictures show little but the metal that changed, so the pairs are laid by hand: the spots
lie on the metal, and a hand that is no machine missed each by a pixel or so.
"""

import zlib
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from journal.demo.canvas import plane_to_picture
from journal.demo.pictures import framing_of
from journal.demo.plan import Planned
from journal.demo.story import AreaShot
from journal.domain.pairs import PointPair
from journal.domain.photos import Role
from journal.domain.shapes import Point

#: What each pair shows, by the key of its repair area.
CAPTIONS = {
    "sill-left": "The outer sill from the front jacking point back: filler over newspaper, and the"
    " new sill in paint.",
    "jack-front-left": "The front jacking point, as found and as it lifts the car now.",
    "floor-front-left": "The footwell, from below the pedals.",
}

#: Spots that were clicked, as shares of the before picture: wide apart, none on the wound.
_CLICKED = ((0.12, 0.15), (0.5, 0.1), (0.88, 0.16), (0.13, 0.85), (0.52, 0.9), (0.87, 0.83))
_MISSED = 0.0012
_EDGE = 0.02


@dataclass(frozen=True, slots=True)
class PairStory:
    """A pair: the places of its photos among those drawn, and the spots clicked on both."""

    area: str
    before: int
    after: int
    points: tuple[PointPair, ...]
    caption: str


def pairs_of(pictures: Sequence[Planned]) -> tuple[PairStory, ...]:
    """The pairs among the pictures drawn; fewer where not all were drawn."""
    made = []
    for key, caption in CAPTIONS.items():
        before = _places(pictures, key, Role.BEFORE)
        after = _places(pictures, key, Role.AFTER)
        found = [(b, a, _points(pictures[b], pictures[a])) for b in before for a in after]
        best = max(found, key=lambda row: len(row[2]), default=None)
        if best is not None and len(best[2]) == len(_CLICKED):
            made.append(PairStory(key, *best, caption))
    return tuple(made)


def _places(pictures: Sequence[Planned], key: str, role: Role) -> list[int]:
    return [
        place
        for place, planned in enumerate(pictures)
        if planned.subject.area is not None
        and planned.subject.area.key == key
        and planned.role is role
        and isinstance(planned.subject.shot, AreaShot)
        and planned.subject.shot.look != "bought"
        and not planned.portrait
    ]


def _points(before: Planned, after: Planned) -> tuple[PointPair, ...]:
    """The clicked spots that lie on both pictures."""
    lead = _to_picture(after) @ np.linalg.inv(_to_picture(before))
    made = []
    for number, (x, y) in enumerate(_CLICKED):
        u, v, w = lead @ np.array([x, y, 1.0])
        spot = Point(float(u / w) + _slip(after, number), float(v / w) + _slip(after, -number - 1))
        if all(_EDGE < share < 1 - _EDGE for share in spot):
            made.append(PointPair(Point(x, y), spot))
    return tuple(made)


def _to_picture(planned: Planned) -> npt.NDArray[np.float64]:
    """What leads from millimetres on the metal to shares of the picture."""
    area, shot = planned.subject.area, planned.subject.shot
    if area is None or not isinstance(shot, AreaShot):
        raise ValueError("only close views of a repair area show the same metal")
    wide, high = planned.camera.size
    longest = max(wide, high)
    shares = np.array([[longest / wide, 0, 0.5], [0, longest / high, 0.5], [0, 0, 1]])
    mirrored = np.array([[-1, 0, 1], [0, 1, 0], [0, 0, 1]]) if area.mirrored else np.eye(3)
    found: npt.NDArray[np.float64] = (
        mirrored @ shares @ plane_to_picture(framing_of(planned, area, shot))
    )
    return found


def _slip(planned: Planned, number: int) -> float:
    """By how much a hand misses, in shares of the picture."""
    part = zlib.crc32(f"{planned.subject.seed}/{number}".encode()) / 0xFFFFFFFF
    return (2 * part - 1) * _MISSED
