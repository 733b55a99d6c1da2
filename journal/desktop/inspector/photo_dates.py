"""Every date that something says of a photo, which one counts, and why the others don't."""

from collections.abc import Sequence
from dataclasses import dataclass

from journal.domain.photos import Basis, DateCandidate, Photo
from journal.domain.when import spoken

#: What each basis is, as the subject of a sentence.
_NAMES = {
    Basis.OWNER: "You",
    Basis.CAMERA: "The camera",
    Basis.FILE_NAME: "The file's name",
    Basis.NEIGHBOURS: "Its neighbours",
    Basis.DIGITISED: "The scan or edit",
    Basis.FILE_TIME: "The file's own time",
    Basis.UNKNOWN: "Something",
}


@dataclass(frozen=True, slots=True)
class Said:
    """One date that was said: by what, which, and why it counts or not."""

    source: str
    date: str
    reason: str
    counts: bool


def said_of(photo: Photo, candidates: Sequence[DateCandidate]) -> tuple[Said, ...]:
    """What was said of a photo's date, the one that counts first."""
    rows = []
    found_winner = False
    for candidate in sorted(candidates, key=lambda c: c.basis.trust):
        wins = not found_winner and _counts(photo, candidate)
        found_winner = found_winner or wins
        rows.append(_said(photo, candidate, wins=wins))
    if not found_winner and photo.when is not None:
        rows.append(Said(_NAMES[photo.basis], spoken(photo.when), _why_alone(photo), counts=True))
    return tuple(sorted(rows, key=lambda row: not row.counts))


def _counts(photo: Photo, candidate: DateCandidate) -> bool:
    return photo.basis is candidate.basis and candidate.when is not None and not candidate.doubt


def _said(photo: Photo, candidate: DateCandidate, *, wins: bool) -> Said:
    name = _NAMES[candidate.basis]
    source = f"{name} ({candidate.source})" if candidate.source else name
    date = spoken(candidate.when) if candidate.when is not None else candidate.text or "nothing"
    if wins:
        return Said(source, date, _why_it_counts(photo, candidate), counts=True)
    if candidate.doubt:
        return Said(source, date, f"left out: {candidate.doubt}", counts=False)
    if candidate.when is None:
        return Said(source, date, "left out: no date can be read from it", counts=False)
    if photo.basis is candidate.basis:
        return Said(source, date, "says the same kind of thing; the first one counts", counts=False)
    winner = "your word" if photo.basis is Basis.OWNER else _NAMES[photo.basis]
    winner = winner[0].lower() + winner[1:]
    return Said(source, date, f"left out: {winner} is trusted more", counts=False)


def _why_it_counts(photo: Photo, candidate: DateCandidate) -> str:
    if photo.when is not None and candidate.when is not None:
        shift = photo.when.earliest - candidate.when.earliest
        if photo.basis is Basis.CAMERA and shift:
            return f"this one counts, put right to {spoken(photo.when)}"
    return "this one counts"


def _why_alone(photo: Photo) -> str:
    is_own = photo.basis is Basis.OWNER
    return "this one counts: your word is above all else" if is_own else "this one counts"
