"""Pillow, set up once, with a limit of our own on how large a picture may be.

Pillow's guard against pictures that unpack to more than memory holds refuses the largest photos of
today's phones, so it is replaced: by ``refuse_huge``, which every decoding here goes through.
"""

import threading
import warnings

from PIL import Image, ImageOps

from journal.domain.errors import JournalError

#: No file with more pixels than this is taken for a photo, in millions.
LARGEST_MEGAPIXELS = 500

#: What has to be unpacked whole (anything but JPEG) is unpacked up to this size, in millions.
LARGEST_WHOLE_MEGAPIXELS = 120

#: Above this size, in millions, pictures are unpacked one after the other, to spare the memory.
_ONE_AT_A_TIME_MEGAPIXELS = 24

_one_at_a_time = threading.Lock()

Image.MAX_IMAGE_PIXELS = None
warnings.filterwarnings("ignore", category=UserWarning, module=r"PIL\b")
Image.init()

__all__ = ["Image", "ImageOps", "Room", "refuse_huge"]


def refuse_huge(width: int, height: int, limit: int = LARGEST_MEGAPIXELS) -> None:
    """Raise JournalError where a picture has more millions of pixels than ``limit``."""
    if width * height > limit * 1_000_000:
        raise JournalError(
            f"it would unpack to {width * height / 1_000_000:,.0f} megapixels, "
            f"more than the {limit} this program opens"
        )


class Room:
    """Waits, as a context manager, until a large picture may be unpacked."""

    def __init__(self, width: int, height: int) -> None:
        self._large = width * height > _ONE_AT_A_TIME_MEGAPIXELS * 1_000_000

    def __enter__(self) -> None:
        if self._large:
            _one_at_a_time.acquire()

    def __exit__(self, *_: object) -> None:
        if self._large:
            _one_at_a_time.release()
