"""Pieces of evidence told in words, so that a list of them can be read and opened."""

from collections.abc import Callable, Iterable

from journal.actions.session import Session
from journal.domain.errors import JournalError
from journal.domain.evidence import Piece
from journal.domain.hours import spoken_hours
from journal.domain.ids import AreaId, MeasureId, PhotoId, ReadingId, ReceiptId, WorkId
from journal.domain.when import spoken

_LONGEST = 60


def in_words(session: Session, pieces: Iterable[Piece]) -> dict[Piece, str]:
    """What each piece is: the photo's name or caption, the receipt's supplier, and so on.

    What isn't in the record any more is told by its kind alone.
    """
    tell = _Teller(session)
    return {piece: tell.words(piece) for piece in pieces}


def measure_of(session: Session, reading_id: ReadingId) -> MeasureId | None:
    """Where a reading was taken; None for one that isn't in the record any more."""
    found = (r.measure_id for r in session.journal.readings.all() if r.id == reading_id)
    return next(found, None)


class _Teller:
    """Looks records up once each."""

    def __init__(self, session: Session) -> None:
        self._journal = session.journal
        self._readings = {reading.id: reading for reading in self._journal.readings.all()}
        self._measures = {measure.id: measure for measure in self._journal.readings.measures()}
        self._work = {work.id: work for work in self._journal.work.all()}

    def words(self, piece: Piece) -> str:
        """One piece, with its date."""
        ways: dict[str, Callable[[int], str]] = {
            "photo": self._photo,
            "receipt": self._receipt,
            "reading": self._reading,
            "work": self._hours,
            "entry": self._entry,
            "stage": lambda _number: "The date of the stage, as you gave it",
            "words": lambda number: _short(self._journal.areas.get(AreaId(number)).found),
        }
        try:
            said = ways[piece.kind](piece.id)
        except JournalError:
            said = piece.kind
        when = spoken(piece.when) if piece.when is not None else "no date"
        return said if piece.kind == "words" else f"{said}, {when}"

    def _photo(self, number: int) -> str:
        found = self._journal.photos.get((PhotoId(number),))
        if not found:
            return "Photo"
        return _short(found[0].caption) if found[0].caption.strip() else found[0].name

    def _receipt(self, number: int) -> str:
        return self._journal.receipts.get(ReceiptId(number)).supplier or "Receipt"

    def _reading(self, number: int) -> str:
        reading = self._readings.get(ReadingId(number))
        measure = self._measures.get(reading.measure_id) if reading else None
        if reading is None or measure is None:
            return "Reading"
        by = f" ({reading.instrument})" if reading.instrument.strip() else ""
        return f"{measure.name}: {reading.value} {measure.unit}{by}"

    def _hours(self, number: int) -> str:
        work = self._work.get(WorkId(number))
        return f"{spoken_hours(work.minutes)} by {work.person}" if work else "Hours"

    def _entry(self, number: int) -> str:
        entries = self._journal.areas.entries()
        return next((f"“{_short(one.text)}”" for one in entries if one.id == number), "Entry")


def _short(text: str) -> str:
    line = " ".join(text.split())
    return line if len(line) <= _LONGEST else f"{line[:_LONGEST].rstrip()}\N{HORIZONTAL ELLIPSIS}"
