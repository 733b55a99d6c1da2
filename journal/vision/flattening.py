"""A picture as it lies on a view once it is squared up, pixel by pixel."""

from typing import TYPE_CHECKING, Any

from journal.domain.errors import JournalError
from journal.domain.homographies import Matrix, inverse, product
from journal.domain.pictures import Picture

if TYPE_CHECKING:
    from numpy.typing import NDArray

#: What lies beside the picture.
_PAPER = (255, 255, 255)


def laid_flat(
    picture: Picture, matrix: Matrix, width_mm: float, height_mm: float, longest: int
) -> Picture:
    """The sheet of a view with the picture on it; its longer side has ``longest`` pixels.

    ``matrix`` leads from the pixels of ``picture`` to millimetres of the view.

    Raises:
        JournalError: the view has no size.
    """
    import cv2
    import numpy as np

    if not (width_mm > 0 and height_mm > 0 and longest > 0):
        raise JournalError("A picture can't be laid on a sheet without a size.")
    scale = longest / max(width_mm, height_mm)
    size = max(1, round(width_mm * scale)), max(1, round(height_mm * scale))
    # Pixels are squares with their middle at a half; OpenCV counts from the middle of the first.
    whole = product((scale, 0, -0.5, 0, scale, -0.5, 0, 0, 1), matrix)
    whole = product(whole, (1, 0, 0.5, 0, 1, 0.5, 0, 0, 1))
    pixels = np.frombuffer(picture.rgb, np.uint8).reshape(picture.height, picture.width, 3)
    flat = cv2.warpPerspective(
        pixels,
        np.array(whole, dtype=np.float64).reshape(3, 3),
        size,
        flags=cv2.INTER_LINEAR,
        borderMode=cv2.BORDER_CONSTANT,
        borderValue=_PAPER,
    )
    _clear_beyond(flat, inverse(whole))
    return Picture(size[0], size[1], flat.tobytes())


def _clear_beyond(flat: "NDArray[Any]", back: Matrix) -> None:
    """Make paper of what lies beyond the picture's horizon, where it would show upside down."""
    import numpy as np

    rows, columns = np.ogrid[: flat.shape[0], : flat.shape[1]]
    flat[back[6] * columns + back[7] * rows + back[8] <= 0] = _PAPER
