"""How sharp a picture is, to be compared with others of the same thing and no others.

The variance of the Laplacian (Pech-Pacheco et al., "Diatom autofocusing in brightfield
microscopy", 2000), taken at one size and after a little smoothing, which takes the sensor's noise
away, and divided by the square of the mean, so that a darker exposure is not a duller one.
"""

import struct
from typing import TYPE_CHECKING, Any

from journal.domain.pictures import Picture

if TYPE_CHECKING:
    from numpy.typing import NDArray

#: The longer side that pictures are brought to, in pixels.
SIDE = 1024
#: The name under which kept values are found again.
KIND = "sharp-1024-1"
_SIGMA = 1.0


def sharpness(picture: Picture) -> float:
    """How sharp a picture is: more is sharper; 0 for one that is black all over."""
    import cv2
    import numpy as np

    pixels = np.frombuffer(picture.rgb, np.uint8).reshape(picture.height, picture.width, 3)
    grey = cv2.cvtColor(pixels, cv2.COLOR_RGB2GRAY)
    scale = max(grey.shape) / SIDE
    if scale > 1:
        size = (max(1, round(grey.shape[1] / scale)), max(1, round(grey.shape[0] / scale)))
        grey = cv2.resize(grey, size, interpolation=cv2.INTER_AREA)
    return _of_grey(grey)


def _of_grey(grey: "NDArray[Any]") -> float:
    import cv2
    import numpy as np

    smooth = cv2.GaussianBlur(grey.astype(np.float32), (0, 0), _SIGMA)
    mean = float(smooth.mean())
    return float(cv2.Laplacian(smooth, cv2.CV_32F).var()) / mean**2 if mean > 0 else 0.0


def pack(found: float) -> bytes:
    """A value as 8 bytes, to be kept."""
    return struct.pack(">d", found)


def unpack(kept: bytes) -> float:
    """A value that was kept."""
    (found,) = struct.unpack(">d", kept)
    return float(found)
