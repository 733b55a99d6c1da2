"""A photo or a sketch laid under a view, to draw over."""

import math
from dataclasses import dataclass

from journal.domain.errors import JournalError
from journal.domain.ids import Sha256, ViewId

#: The matrix that leaves everything where it is.
UNMOVED = (1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0)


@dataclass(frozen=True, slots=True)
class Underlay:
    """A picture under a view.

    ``matrix`` is a homography in nine numbers, row by row, from pixels of the upright picture to
    millimetres of the view. ``strength`` is from 0 (unseen) to 1 (as it is). The picture itself is
    an original.
    """

    view_id: ViewId
    sha256: Sha256
    matrix: tuple[float, ...] = UNMOVED
    strength: float = 0.5
    shown: bool = True


def check_underlay(underlay: Underlay) -> None:
    """Refuse an underlay that could not be seen or placed.

    Raises:
        JournalError: the matrix is no homography, or the strength is not between 0 and 1.
    """
    if len(underlay.matrix) != 9 or not all(map(math.isfinite, underlay.matrix)):
        raise JournalError("The picture under the view has no sound place.")
    if not 0 <= underlay.strength <= 1:
        raise JournalError("The strength of the picture under the view is from 0 to 1.")
