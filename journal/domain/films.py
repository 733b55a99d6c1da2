"""What film thickness suggests: guidance with its sources and its doubts, never a verdict."""

import math
from dataclasses import dataclass

from journal.domain.errors import JournalError

#: Micrometres in a mil, a thousandth of an inch.
MIL_UM = 25.4

_PAINT_SOURCES = (
    "read at dndautodetailing.com, autopia.org and engineerfix.com, whose ranges differ"
)
_NO_SOURCE = "common practice, no source; unverified"


@dataclass(frozen=True, slots=True)
class FilmBand:
    """A range of film thickness in micrometres, from ``least`` up to below ``most``.

    ``text`` says what it suggests, ``source`` whose figure that is and how far to trust it.
    """

    least: float
    most: float
    text: str
    source: str


#: The bands, from the thinnest film; each begins where the one before ends.
FILM_BANDS = (
    FilmBand(0, 100, "thinner than most factory paint that sources tell of", _PAINT_SOURCES),
    FilmBand(100, 180, "as factory paint is said to be", _PAINT_SOURCES),
    FilmBand(180, 300, "thicker than most factory paint; sources differ", _PAINT_SOURCES),
    FilmBand(300, 1000, "suggests that it was painted again", _NO_SOURCE),
    FilmBand(1000, math.inf, "suggests filler", _NO_SOURCE),
)


@dataclass(frozen=True, slots=True)
class FilmLayer:
    """One coat of factory paint: what sources say it measures, in micrometres."""

    name: str
    least: float
    most: float
    source: str = _PAINT_SOURCES


#: The coats of factory paint, from the metal outwards.
FACTORY_LAYERS = (
    FilmLayer("e-coat", 12, 33),
    FilmLayer("primer", 18, 60),
    FilmLayer("base coat", 15, 40),
    FilmLayer("clear coat", 35, 60),
)


def film_band(micrometres: float) -> FilmBand:
    """The band that a film of that many micrometres falls in.

    Raises:
        JournalError: it is no thickness.
    """
    for band in FILM_BANDS:
        if band.least <= micrometres < band.most:
            return band
    raise JournalError(f"A film can't be {micrometres:g} µm thick.")
