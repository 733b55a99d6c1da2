"""One arriving file: what it is, when it was taken, and whether it is a photo at all."""

import stat
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from journal.domain.arrivals import NewPhoto
from journal.domain.dating import (
    EXIF_BASES,
    choose,
    exif_candidate,
    file_time_candidate,
    name_candidate,
    weigh,
)
from journal.domain.errors import JournalError
from journal.domain.ids import Sha256
from journal.domain.neighbours import counter
from journal.domain.photos import Basis, DateCandidate
from journal.domain.when import When
from journal.files.copying import Staged
from journal.files.names import safe_suffix, shown_name
from journal.intake.content import opened
from journal.intake.decode import small_jpeg
from journal.intake.facts import Facts, facts_of
from journal.intake.kinds import HEAD, FileType, recognise
from journal.intake.pillow import refuse_huge


@dataclass(frozen=True, slots=True)
class Arrival:
    """What was found out about a file, and a rough thumbnail where the camera put one into it."""

    photo: NewPhoto
    rough_thumbnail: bytes | None


def refuse_early(path: Path) -> None:
    """Raise JournalError where a file's first bytes show that it is no photo, before it is copied.

    Half a sentence without the file's name, as with ``inspect``.
    """
    try:
        status = path.stat()
        if not stat.S_ISREG(status.st_mode):
            raise JournalError("it is not an ordinary file")
        with path.open("rb") as handle:
            head = handle.read(HEAD)
    except (OSError, ValueError) as error:
        text = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
        raise JournalError(f"it can't be read: {text[:1].lower()}{text[1:]}") from error
    _refuse(status.st_size, recognise(head))


def inspect(staged: Staged, name: str, now: datetime) -> Arrival:
    """Look at a staged copy of a file that was called ``name``; ``now`` is local time.

    A picture that is cut short or broken but can be told to be one is taken in, with its damage
    named. JournalError, half a sentence without the file's name, for what is no photo.
    """
    with opened(staged.data if staged.data is not None else staged.path) as content:
        facts = facts_of(content)
    _refuse(staged.size, facts.type)
    refuse_huge(facts.width, facts.height)
    photo = _photo(staged, shown_name(name), facts, now)
    return Arrival(photo, _rough(facts))


def _refuse(size: int, found: FileType | None) -> None:
    if not size:
        raise JournalError("it is empty, 0 bytes")
    if found is None:
        raise JournalError("it is no picture that this program knows")
    if found.kind is None:
        raise JournalError(f"it is {found.name}, not a photo")


def _photo(staged: Staged, name: str, facts: Facts, now: datetime) -> NewPhoto:
    assert facts.type is not None
    assert facts.type.kind is not None
    candidates = weigh(_candidates(staged, name, facts), now)
    chosen = choose(candidates, now)
    numbered = counter(name)
    exif = facts.exif
    return NewPhoto(
        sha256=Sha256(staged.sha256),
        suffix=safe_suffix(name) or facts.type.suffix,
        size=staged.size,
        name=name,
        kind=facts.type.kind,
        mime=facts.type.mime,
        when=chosen.when if chosen else None,
        basis=chosen.basis if chosen else Basis.UNKNOWN,
        offset=chosen.offset if chosen else None,
        candidates=candidates,
        make=exif.make,
        model=exif.model,
        serial=exif.serial,
        width=facts.shown[0],
        height=facts.shown[1],
        orientation=facts.orientation,
        sequence=numbered[1] if numbered else None,
        latitude=exif.latitude,
        longitude=exif.longitude,
        damage=facts.damage,
    )


def _candidates(staged: Staged, name: str, facts: Facts) -> list[DateCandidate]:
    """Every date that something says of the file, the most trusted first."""
    dates = facts.exif.dates
    found = [
        exif_candidate(source, dates[source].text, dates[source].subsec, dates[source].offset)
        for source in EXIF_BASES
        if source in dates
    ]
    if facts.movie and facts.movie.made:
        found.append(_film_candidate(facts.movie.made))
    if named := name_candidate(name):
        found.append(named)
    found.append(file_time_candidate(datetime.fromtimestamp(staged.modified)))
    return found


def _film_candidate(made: datetime) -> DateCandidate:
    """A film's own time, which is in UTC, as this computer's clock would have shown it.

    Weak: many cameras write their local time there instead, and the film may have been cut since.
    """
    local = made.astimezone().replace(tzinfo=None)
    return DateCandidate(Basis.DIGITISED, "film header", made.isoformat(), When.at(local))


def _rough(facts: Facts) -> bytes | None:
    if not facts.exif.thumbnail:
        return None
    try:
        return small_jpeg(facts.exif.thumbnail, None if facts.turned else facts.orientation)
    except JournalError:
        return None
