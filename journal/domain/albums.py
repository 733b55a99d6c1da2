"""The web album: a folder of plain pages, and what came of making one."""

from dataclasses import dataclass
from pathlib import PurePath

#: The page to open first.
START_PAGE = "index.html"

#: By this file, which lists what the program wrote, an album is known again.
MARKER = "album.json"


@dataclass(frozen=True, slots=True)
class AlbumReport:
    """What came of making an album.

    ``path`` is its folder. ``photos`` is how many photos can be looked at in it. ``notes`` are
    sentences on what could not be shown as it should be; ``withheld`` on what is not in it by
    choice.
    """

    path: PurePath
    pages: int
    photos: int
    notes: tuple[str, ...]
    withheld: tuple[str, ...] = ()
