"""Cuts of the dossier: which parts a reader gets, what is withheld, and on what paper."""

import json
from dataclasses import dataclass, field, replace
from enum import StrEnum
from typing import Any, Literal

from journal.domain.errors import JournalError
from journal.domain.ids import AreaId
from journal.domain.private_words import Private


class Cut(StrEnum):
    """For whom a dossier is."""

    BUYER = "buyer"
    VALUER = "valuer"
    OWN = "own"

    @property
    def words(self) -> str:
        """As a heading has it."""
        return {"buyer": "For a buyer", "valuer": "For a valuer", "own": "For the own shelf"}[self]


class Part(StrEnum):
    """A part of the dossier that may be in it or not; cover, contents, method and index always are.

    The order is that of the pages.
    """

    IDENTITY = "identity"
    STORY = "story"
    MILESTONES = "milestones"
    VIEWS = "standard views"
    CONDITION = "condition"
    DRAWING = "drawing"
    METAL = "metal replaced"
    PAIRS = "before and after"
    AREAS = "repair areas"
    CLAIMS = "claims"
    READINGS = "readings"
    REMAINING = "what remains"
    MONEY = "money"
    HOURS = "hours"
    RECEIPTS = "receipts"
    ESTIMATE = "estimate"
    VALUES = "valuations"
    PEOPLE = "people"
    NOTES = "notes"
    GAPS = "gaps"


Paper = Literal["a4", "letter"]
PAPERS: tuple[Paper, ...] = ("a4", "letter")

PictureSize = Literal["print", "screen"]
PICTURE_SIZES: tuple[PictureSize, ...] = ("print", "screen")

#: Parts of each cut unless the owner says otherwise.
_PARTS = {
    Cut.BUYER: frozenset(Part) - {
        Part.VIEWS, Part.CONDITION, Part.MONEY, Part.RECEIPTS, Part.VALUES, Part.ESTIMATE,
        Part.PEOPLE, Part.NOTES,
    },
    Cut.VALUER: frozenset(Part) - {Part.STORY, Part.NOTES, Part.ESTIMATE, Part.PEOPLE},
    Cut.OWN: frozenset(Part),
}  # fmt: skip

_WITHHELD = {
    Cut.BUYER: frozenset(Private),
    Cut.VALUER: frozenset({Private.ADDRESSES, Private.OTHER}),
    Cut.OWN: frozenset[Private](),
}

#: So many photos of a repair area are shown at most, unless the owner says otherwise; 0 for all.
_PHOTOS = {Cut.BUYER: 6, Cut.VALUER: 3, Cut.OWN: 0}


@dataclass(frozen=True, slots=True)
class Choices:
    """What one dossier holds.

    ``areas`` are the repair areas told, empty for all of them. ``photos`` is how many photos of
    one repair area are shown at most, 0 for all. ``signed_by`` is a line on the owner's key,
    printed in the method where it isn't empty.
    """

    cut: Cut
    parts: frozenset[Part] = frozenset(Part)
    withheld: frozenset[Private] = field(default_factory=frozenset)
    paper: Paper = "a4"
    pictures: PictureSize = "print"
    photos: int = 0
    areas: frozenset[AreaId] = frozenset()
    signed_by: str = ""

    def has(self, part: Part) -> bool:
        """Whether a part is in it."""
        return part in self.parts

    def with_part(self, part: Part, *, wanted: bool = True) -> "Choices":
        """It with a part more, or one less."""
        parts = self.parts | {part} if wanted else self.parts - {part}
        return replace(self, parts=parts)


def usual(cut: Cut) -> Choices:
    """What a cut holds until the owner chooses otherwise."""
    return Choices(cut, _PARTS[cut], _WITHHELD[cut], photos=_PHOTOS[cut])


def to_json(choices: Choices) -> str:
    """The choices as the journal keeps them; the key's line isn't kept."""
    return json.dumps(
        {
            "parts": [part.value for part in Part if part in choices.parts],
            "withheld": [kind.value for kind in Private if kind in choices.withheld],
            "paper": choices.paper,
            "pictures": choices.pictures,
            "photos": choices.photos,
            "areas": sorted(choices.areas),
        },
        ensure_ascii=False,
    )


def from_json(cut: Cut, text: str) -> Choices:
    """The choices that ``to_json`` wrote; what can't be read of them is as it usually is."""
    usually = usual(cut)
    try:
        found = json.loads(text) if text else {}
    except ValueError:
        return usually
    if not isinstance(found, dict):
        return usually
    return replace(
        usually,
        parts=_members(Part, found.get("parts"), usually.parts),
        withheld=_members(Private, found.get("withheld"), usually.withheld),
        paper=_one_of(PAPERS, found.get("paper"), usually.paper),
        pictures=_one_of(PICTURE_SIZES, found.get("pictures"), usually.pictures),
        photos=_number(found.get("photos"), usually.photos),
        areas=frozenset(AreaId(n) for n in _list(found.get("areas")) if type(n) is int),
    )


def check_choices(choices: Choices) -> None:
    """Refuse choices that can't be.

    Raises:
        JournalError: naming what is wrong.
    """
    if choices.paper not in PAPERS:
        raise JournalError(f"There is no paper “{choices.paper}”; there are a4 and letter.")
    if choices.pictures not in PICTURE_SIZES:
        raise JournalError(f"Pictures are for print or for screen, not for “{choices.pictures}”.")
    if choices.photos < 0:
        raise JournalError("A repair area can't be shown with fewer photos than none.")


def _members(kind: Any, found: Any, usually: Any) -> Any:
    if not isinstance(found, list):
        return usually
    values = {member.value: member for member in kind}
    return frozenset(values[name] for name in found if isinstance(name, str) and name in values)


def _one_of(known: tuple[Any, ...], found: Any, usually: Any) -> Any:
    return found if found in known else usually


def _list(found: Any) -> list[Any]:
    return found if isinstance(found, list) else []


def _number(found: Any, usually: int) -> int:
    return found if type(found) is int and found >= 0 else usually
