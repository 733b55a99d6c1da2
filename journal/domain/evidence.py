"""Evidence: what stands behind a statement, piece by piece, each piece with its grade.

A grade follows from what a piece is and from nothing else; nobody can raise it.
"""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from typing import Literal

from journal.domain.ids import CameraId
from journal.domain.photos import Basis, Camera, Photo
from journal.domain.readings import Reading
from journal.domain.receipts import Paper, Receipt
from journal.domain.when import When


class Grade(StrEnum):
    """What a piece of evidence is worth, the least dependent on anybody's word first.

    The order is ours (common practice, no source): a machine's date, somebody else's paper, a
    number that can be taken again, a picture, and last what rests on the owner alone.
    """

    CAMERA = "photo dated by its camera"
    PAPER = "paper held"
    INSTRUMENT = "reading with instrument"
    PHOTO = "photo dated otherwise"
    HOURS = "hours"
    LOST = "paper lost"
    WORD = "the owner’s word"

    @property
    def rank(self) -> int:
        """Place in the order: 0 depends least on anybody's word."""
        return list(Grade).index(self)


#: What kind of record a piece of evidence is.
PieceKind = Literal["photo", "receipt", "reading", "work", "entry", "stage", "words"]


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece of evidence: a record of ``kind`` with the number ``id``, and its grade.

    ``when`` is its date, None for one without. A piece of "words" is what the owner says of the
    repair area itself and has the area's number.
    """

    grade: Grade
    kind: PieceKind
    id: int
    when: When | None = None


def put_right(cameras: Iterable[Camera]) -> frozenset[CameraId]:
    """The cameras whose clock the owner put right: what they date rests on his word too."""
    return frozenset(camera.id for camera in cameras if camera.shift_seconds)


def of_photo(photo: Photo, corrected: Collection[CameraId] = ()) -> Piece:
    """A photo as evidence: a date from the camera's own clock is one grade, any other another.

    ``corrected`` are the cameras whose clock was put right: their dates are no longer their own.
    """
    own = photo.basis is Basis.CAMERA and photo.camera_id not in corrected
    grade = Grade.CAMERA if own else Grade.PHOTO
    return Piece(grade, "photo", photo.id, photo.when)


def of_receipt(receipt: Receipt) -> Piece:
    """A receipt as evidence; a payment that never had a paper is the owner's word."""
    grades = {Paper.HELD: Grade.PAPER, Paper.LOST: Grade.LOST, Paper.NEVER: Grade.WORD}
    return Piece(grades[receipt.paper], "receipt", receipt.id, receipt.when)


def of_reading(reading: Reading) -> Piece:
    """A reading as evidence; one without its instrument named is the owner's word."""
    grade = Grade.INSTRUMENT if reading.instrument.strip() else Grade.WORD
    return Piece(grade, "reading", reading.id, reading.when)


def sorted_pieces(pieces: Iterable[Piece]) -> tuple[Piece, ...]:
    """Pieces once each, the best grade first, then by date and number."""
    once = dict.fromkeys(pieces)
    return tuple(
        sorted(once, key=lambda p: (p.grade.rank, p.when is None, p.when or _NEVER, p.kind, p.id))
    )


def is_word_alone(pieces: Iterable[Piece]) -> bool:
    """Whether nothing stands behind a statement but what the owner says."""
    return all(piece.grade is Grade.WORD for piece in pieces)


def graded(pieces: Iterable[Piece]) -> tuple[tuple[Grade, int], ...]:
    """How many pieces there are of each grade, the best first."""
    rows = list(pieces)
    counts = [(grade, sum(piece.grade is grade for piece in rows)) for grade in Grade]
    return tuple((grade, count) for grade, count in counts if count)


_NEVER = When.at(datetime.min)
