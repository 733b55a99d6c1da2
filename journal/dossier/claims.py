"""Claims as the dossier prints them: numbered, with their evidence by its number on these pages."""

from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence

from journal.domain.claims import AreaClaims, Claim
from journal.domain.cuts import Choices, Part
from journal.domain.evidence import Grade, Piece
from journal.domain.ids import PhotoId
from journal.dossier.document import Cited, Stated
from journal.dossier.words import count, listed

#: What a piece that has no number of its own is counted as.
_NOUNS = {
    "photo": ("photo in the journal", "photos in the journal"),
    "receipt": ("paper", "papers"),
    "reading": ("reading", "readings"),
    "work": ("day of work", "days of work"),
    "entry": ("note", "notes"),
}

#: So many numbers stand behind one grade of one claim; of more it says how many.
_MOST_REFS = 8


def stated(
    number: int,
    found: AreaClaims,
    photos: Mapping[PhotoId, int],
    receipts: Mapping[int, int],
    choices: Choices,
) -> tuple[Stated, ...]:
    """The claims on the repair area ``number``, those left out passed over.

    ``photos`` are the numbers of the photos on these pages, ``receipts`` those of the receipts.
    """
    refs: dict[str, Mapping[int, str]] = {
        "photo": {int(key): f"P{value}" for key, value in photos.items()}
    }
    if choices.has(Part.RECEIPTS):
        refs["receipt"] = {key: f"R{value}" for key, value in receipts.items()}
    kept = [claim for claim in found.claims if not claim.left_out]
    return tuple(
        Stated(
            f"{number}.{place}",
            claim.said,
            _cited(claim, refs),
            claim.is_word_alone,
            bool(claim.own),
        )
        for place, claim in enumerate(kept, 1)
    )


def left_out(found: AreaClaims) -> int:
    """How many claims the owner left out."""
    return sum(claim.left_out for claim in found.claims)


def _cited(claim: Claim, refs: Mapping[str, Mapping[int, str]]) -> tuple[Cited, ...]:
    grades: dict[Grade, list[Piece]] = defaultdict(list)
    for piece in claim.pieces:
        grades[piece.grade].append(piece)
    return tuple(_of_grade(grade, grades[grade], refs) for grade in Grade if grade in grades)


def _of_grade(
    grade: Grade, pieces: Sequence[Piece], refs: Mapping[str, Mapping[int, str]]
) -> Cited:
    named = [refs[p.kind][p.id] for p in pieces if p.id in refs.get(p.kind, {})]
    named.sort(key=lambda ref: int(ref[1:]))
    numbered = {p.kind for p in pieces if p.id in refs.get(p.kind, {})}
    uncounted = Counter(
        p.kind for p in pieces if p.id not in refs.get(p.kind, {}) and p.kind in _NOUNS
    )
    more = [_more(n, kind, numbered=kind in numbered) for kind, n in uncounted.items()]
    if len(named) > _MOST_REFS:
        more.insert(0, f"{len(named) - _MOST_REFS:,} more shown here")
    words = f"{grade.value[0].upper()}{grade.value[1:]}"
    return Cited(words, tuple(named[:_MOST_REFS]), listed(more))


def _more(number: int, kind: str, *, numbered: bool) -> str:
    one, many = _NOUNS[kind]
    if numbered:
        one, many = f"more {one}", f"more {many}"
    return count(number, one, many)
