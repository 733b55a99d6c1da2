"""What stands behind a statement: photos, papers and hours, counted and named in sentences."""

from collections import Counter
from collections.abc import Collection, Iterable, Sequence

from journal.domain.ids import CameraId
from journal.domain.photos import Basis, Photo, Role
from journal.domain.receipts import Paper, Receipt
from journal.domain.when import When
from journal.dossier.document import Shown
from journal.dossier.words import KNOWN_BY, count, listed, shortened

#: Bases that do not rest on what the owner says.
INDEPENDENT = frozenset({Basis.CAMERA, Basis.FILE_NAME})

_ROLES = {Role.BEFORE: "from before", Role.DURING: "of the work", Role.AFTER: "from after"}

_LACKING = {
    Role.BEFORE: "No photo shows it before the work.",
    Role.DURING: "No photo shows the work itself.",
    Role.AFTER: "No photo shows it after the work.",
}


def photo_sentences(shown: Sequence[Shown]) -> tuple[str, ...]:
    """How many photos show an area, in which role, and how their dates are known."""
    if not shown:
        return ()
    roles = Counter(row.role for row in shown)
    parts = [f"{roles[role]:,} {words}" for role, words in _ROLES.items() if roles[role]]
    return (
        f"{count(len(shown), 'photo')}: {listed(parts)}.",
        f"Dates: {dates_known(row.photo for row in shown)}.",
    )


def dates_known(photos: Iterable[Photo]) -> str:
    """How the dates of photos are known, the most trusted first: "5 by the camera's clock"."""
    bases = Counter(photo.basis for photo in photos)
    parts = [
        f"{bases[basis]:,} {'not known' if basis is Basis.UNKNOWN else 'by ' + KNOWN_BY[basis]}"
        for basis in Basis
        if bases[basis]
    ]
    return listed(parts)


def receipt_sentence(receipts: Sequence[Receipt]) -> str:
    """How many receipts an area has, and how many of their papers are held; "" for none."""
    if not receipts:
        return ""
    held = sum(receipt.paper is Paper.HELD for receipt in receipts)
    if held == len(receipts):
        proof = "its paper is held" if held == 1 else "all papers are held"
    elif not held:
        proof = "there is no paper" if len(receipts) == 1 else "there are no papers"
    else:
        proof = f"the papers of {held:,} are held"
    return f"{count(len(receipts), 'receipt')}; {proof}."


def lacking_sentences(shown: Sequence[Shown], receipts: int, minutes: int) -> tuple[str, ...]:
    """What of an area isn't evidenced, said to be so."""
    roles = {row.role for row in shown}
    sentences = [text for role, text in _LACKING.items() if role not in roles]
    if len(sentences) == len(_LACKING):
        sentences = ["No photo shows it."]
    if not receipts:
        sentences.append("No receipt is shared to it.")
    if not minutes:
        sentences.append("No hours are recorded for it.")
    return tuple(sentences)


def behind(when: When, shown: Sequence[Shown], corrected: Collection[CameraId] = ()) -> str:
    """What stands behind a stage's date: the owner's record, and photos of that very time.

    ``corrected`` are the cameras whose clock the owner put right: they prove no date of his.
    """
    then = [
        f"P{row.number}"
        for row in shown
        if row.photo.basis in INDEPENDENT
        and row.photo.camera_id not in corrected
        and row.photo.when
        and _within(row.photo.when, when)
    ]
    if not then:
        return "owner’s record alone"
    return f"owner’s record; {shortened(then, 6)} of that time"


def _within(inner: When, outer: When) -> bool:
    return outer.earliest <= inner.earliest and inner.latest <= outer.latest
