"""What a check found: of a journal, of a bundle, of a single photo."""

from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum

from journal.domain.ids import PhotoId


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that isn't as it should be: where, and what."""

    where: str
    what: str


@dataclass(frozen=True, slots=True)
class CheckReport:
    """The outcome of a check: every fault, and how much was looked at.

    ``loose`` are files that the record doesn't mention (what was undone or removed): no fault.
    ``good_until`` says how far the chain of changes holds, "" where it holds to its end.
    """

    faults: tuple[Fault, ...]
    originals: int
    edits: int
    loose: int
    good_until: str = ""


@dataclass(frozen=True, slots=True)
class ChainFound:
    """What walking a chain of changes found: how many edits, from when to when, UTC.

    ``digest`` is the last edit's. ``broken`` names the first edit that doesn't follow from those
    before it, and ``good_until`` the last one that does; both "" where the chain holds.
    """

    edits: int = 0
    first: str = ""
    last: str = ""
    digest: str = ""
    broken: str = ""
    good_until: str = ""


@dataclass(frozen=True, slots=True)
class SignatureFound:
    """A signature: the fingerprint of its key, whether it holds, and whether the key is ours."""

    fingerprint: str
    good: bool
    ours: bool = False


@dataclass(frozen=True, slots=True)
class StampFound:
    """A time stamp: its file, when it says it was made (UTC), by whom, and whether it holds.

    ``authority`` is the name in the certificate that signed it. ``trusted`` tells whether that
    certificate was followed up to one that the person gave. ``said`` are sentences on what was
    verified and what was not.
    """

    name: str
    made: datetime | None
    authority: str
    good: bool
    trusted: bool
    said: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BundleCheck:
    """The outcome of checking a bundle, or any bag.

    ``refused`` is why it wasn't looked into, "" where it was; then everything else is empty.
    ``title`` is the car, ``made`` the day it was made, ``by`` the program that made it, as the
    bag itself says. ``notes`` are sentences on what is as it should be, or can't be known.
    """

    where: str
    form: str
    refused: str = ""
    title: str = ""
    made: str = ""
    by: str = ""
    files: int = 0
    size: int = 0
    algorithms: tuple[str, ...] = ()
    faults: tuple[Fault, ...] = ()
    warnings: tuple[Fault, ...] = ()
    notes: tuple[str, ...] = ()
    chain: ChainFound | None = None
    signature: SignatureFound | None = None
    stamps: tuple[StampFound, ...] = field(default=())

    @property
    def whole(self) -> bool:
        """Whether nothing was found missing or altered."""
        return not self.refused and not self.faults


class Likeness(StrEnum):
    """How a picture from outside stands to the journal's originals."""

    ORIGINAL = "the original"
    SAME_PICTURE = "same picture, not same bytes"
    UNKNOWN = "not in the journal"


@dataclass(frozen=True, slots=True)
class PictureFound:
    """One picture that was looked for: what it is called, and the photo it is or looks like.

    ``distance`` is how many of 64 signs of the two pictures differ, None where bytes decided.
    """

    what: str
    likeness: Likeness
    photo_id: PhotoId | None = None
    name: str = ""
    taken: str = ""
    sha256: str = ""
    distance: int | None = None


@dataclass(frozen=True, slots=True)
class PictureCheck:
    """The outcome of looking a file's pictures up in a journal; ``notes`` are sentences on it."""

    where: str
    sha256: str
    pictures: tuple[PictureFound, ...]
    faults: tuple[Fault, ...] = ()
    notes: tuple[str, ...] = ()
