"""Work: hours by one person on one day, shared over repair areas."""

from dataclasses import dataclass
from enum import StrEnum

from journal.domain.ids import WorkId
from journal.domain.receipts import Share
from journal.domain.when import When


class WorkBasis(StrEnum):
    """How hours are known."""

    #: The owner's word.
    STATED = "stated"
    #: A clock that was started and stopped.
    CLOCKED = "clocked"
    #: From the first to the last photo: at least so long.
    PHOTOS = "photos"


#: How a list marks hours of each basis; the owner's word needs no mark.
BASIS_WORDS = {
    WorkBasis.STATED: "",
    WorkBasis.CLOCKED: "clocked",
    WorkBasis.PHOTOS: "at least (photos)",
}


@dataclass(frozen=True, slots=True)
class Work:
    """Time spent by one person on one day, in whole minutes.

    ``basis`` says how they are known; it is read with the hours and set by clocking off or by
    taking them from photos, never by recording them.
    """

    id: WorkId
    when: When
    minutes: int
    person: str
    note: str = ""
    shares: tuple[Share, ...] = ()
    basis: WorkBasis = WorkBasis.STATED
