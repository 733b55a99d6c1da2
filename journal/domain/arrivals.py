"""A photo on its way into the journal: all that its file says of it."""

from dataclasses import dataclass

from journal.domain.ids import Sha256
from journal.domain.photos import Basis, DateCandidate, Kind
from journal.domain.when import When


@dataclass(frozen=True, slots=True)
class NewPhoto:
    """What the intake found out about one file, ready to be recorded.

    ``suffix`` is the extension the original keeps, lower case with its dot. ``width`` and
    ``height`` are pixels as shown, upright. ``sequence`` is the camera's own counter from the file
    name, None where there is none. ``latitude`` and ``longitude`` are WGS 84 degrees.
    ``candidates`` hold every date found, the chosen one among them.
    """

    sha256: Sha256
    suffix: str
    size: int
    name: str
    kind: Kind
    mime: str
    when: When | None
    basis: Basis
    offset: str | None
    candidates: tuple[DateCandidate, ...]
    make: str
    model: str
    serial: str
    width: int
    height: int
    orientation: int | None
    sequence: int | None
    latitude: float | None
    longitude: float | None
    damage: str
