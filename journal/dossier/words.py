"""Numbers, lists and hours as the dossier's sentences write them."""

from collections.abc import Collection, Sequence

from journal.domain.ids import CameraId
from journal.domain.photos import Basis, Photo

#: How a photo's date is known, as a reader who never saw the program understands it.
KNOWN_BY = {
    Basis.OWNER: "the owner’s word",
    Basis.CAMERA: "the camera’s clock",
    Basis.FILE_NAME: "the file’s name",
    Basis.NEIGHBOURS: "photos taken around it",
    Basis.DIGITISED: "the day of its scan or edit",
    Basis.FILE_TIME: "the file’s own time",
    Basis.UNKNOWN: "not known",
}

#: It for a camera whose clock the owner put right: the date is its own no longer.
PUT_RIGHT = "the camera’s clock, put right"


def known_by(photo: Photo, corrected: Collection[CameraId]) -> str:
    """How a photo's date is known; ``corrected`` are the cameras whose clock was put right."""
    if photo.basis is Basis.CAMERA and photo.camera_id in corrected:
        return PUT_RIGHT
    return KNOWN_BY[photo.basis]


def count(number: int, one: str, many: str = "") -> str:
    """A number with its noun: "1 photo", "1,204 photos", "no photos"."""
    if number == 1:
        return f"1 {one}"
    return f"{number:,} {many or one + 's'}" if number else f"no {many or one + 's'}"


def listed(words: Sequence[str]) -> str:
    """Words in a row: "a", "a and b", "a, b and c"."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} and {words[-1]}"


def shortened(words: Sequence[str], most: int) -> str:
    """The first ``most`` words in a row, and how many more there are."""
    if len(words) <= most:
        return listed(words)
    return f"{', '.join(words[:most])} and {len(words) - most:,} more"


def hours(minutes: int) -> str:
    """Time worked: "45 min", "3 h", "12 h 30 min"."""
    whole, rest = divmod(minutes, 60)
    if not whole:
        return f"{rest} min"
    return f"{whole:,} h {rest} min" if rest else f"{whole:,} h"


def sentence(text: str) -> str:
    """Text as a sentence: first letter large, a full stop where none of its own ends it."""
    text = text.strip()
    if not text:
        return ""
    text = text[0].upper() + text[1:]
    return text if text[-1] in '.!?…。！？”"' else text + "."


def excerpt(text: str, most: int) -> str:
    """The start of a long text, cut between words, with "…" where something is left out."""
    if len(text) <= most:
        return text
    head = text[:most]
    cut = head.rfind(" ", most // 2)
    return (head[:cut] if cut > 0 else head).rstrip() + " …"
