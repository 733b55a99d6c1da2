"""How the record was made and how it can be checked: the passages at the end of every dossier."""

from collections import Counter
from collections.abc import Sequence

from journal.domain.cuts import Choices, Cut, Part, usual
from journal.domain.evidence import Grade
from journal.domain.photos import Basis
from journal.domain.record import Record
from journal.dossier.cautions import NEVER_A_PASS
from journal.dossier.document import AreaStory, Passage, Shown
from journal.dossier.evidence import dates_known
from journal.dossier.words import count, listed


def method(
    record: Record,
    shown: tuple[Shown, ...],
    program_version: str,
    told: Sequence[AreaStory] = (),
    choices: Choices | None = None,
) -> tuple[Passage, ...]:
    """The passages on dates, corrections, hash values and limits, in reading order."""
    choices = choices or usual(Cut.OWN)
    return (
        Passage("What this document is", _what(record, shown, program_version)),
        *_grades(told, choices),
        Passage("How dates are known", _dates(shown)),
        Passage("What was corrected", _corrections(record)),
        *_metal(record),
        Passage("What SHA-256 is, and how to check it", _hashes()),
        *_signed(choices),
        Passage("What it is not", (NEVER_A_PASS,)),
    )


def _grades(told: Sequence[AreaStory], choices: Choices) -> tuple[Passage, ...]:
    """What stands behind a statement, and whose words it is in; nothing without claims."""
    if not choices.has(Part.CLAIMS) or not told:
        return ()
    every = [claim for area in told for claim in area.claims]
    alone = sum(claim.alone for claim in every)
    own = sum(claim.own for claim in every)
    left = sum(area.left_out for area in told)
    lines = [
        (
            "Every repair area has numbered statements, each with what stands behind it. The "
            "grade of a piece of evidence follows from what it is; the owner can change the words "
            "of a statement, and never a grade. The least dependent on anybody’s word come first: "
            f"{listed([grade.value for grade in Grade])}."
        ),
        (
            "A photo, hours or a note of the time between two stages stand behind the stage they "
            "fall in; a photo from before behind what was found, one from after behind what is "
            "finished; a paper behind what it paid for."
        ),
        (
            f"There are {count(len(every), 'statement')} here. "
            f"{_some(alone)} on the owner’s word alone; {_worded(own)} in words of the owner’s."
        ),
    ]
    if left:
        lines.append(f"The owner left {count(left, 'statement')} out of this document.")
    return (Passage("What a statement rests on", tuple(lines)),)


def _some(number: int) -> str:
    if not number:
        return "None rests"
    return "One rests" if number == 1 else f"{number:,} rest"


def _worded(number: int) -> str:
    if not number:
        return "none is"
    return "one is" if number == 1 else f"{number:,} are"


def _signed(choices: Choices) -> tuple[Passage, ...]:
    if not choices.signed_by.strip():
        return ()
    lines = (
        (
            "The bundle that goes with this document is signed with the owner’s own Ed25519 key. "
            "Its fingerprint, to be compared with the one the owner tells you by another way:"
        ),
        choices.signed_by.strip(),
    )
    return (Passage("Signing key", lines),)


def _what(record: Record, shown: tuple[Shown, ...], version: str) -> tuple[str, ...]:
    return (
        (
            "It is made from the owner’s journal of the car: photos, notes, receipts and hours, "
            f"each entered with its date. Restoration Journal {version} put it together; every "
            "sentence follows from the record, and where the record lacks something the document "
            "says so."
        ),
        (
            f"It shows {len(shown):,} of the {count(len(record.photos), 'photo')} in the journal. "
            "Pictures are scaled down for print and never cropped or retouched, but for pairs laid "
            "over each other and boxes over what is withheld, both said where they are; the "
            "originals stay in the journal, byte for byte as they came in."
        ),
    )


def _dates(shown: tuple[Shown, ...]) -> tuple[str, ...]:
    known = dates_known(row.photo for row in shown)
    counted = f"Of the photos shown: {known}." if known else "No photo is shown."
    return (
        (
            "Each photo’s date stands with the way it is known. The camera’s clock is the date "
            "that the camera wrote into the file; the file’s name is a date that the camera or "
            "phone put there; photos taken around it lend their date to one without; the day of "
            "its scan or edit, and the file’s own time, say only that the picture is at "
            "least that old. The owner’s word counts before all of these."
        ),
        (
            "A date is printed as sure as it is: “March 2016” means no day is known, “about "
            "2012” that the year itself is an estimate."
        ),
        counted,
        (
            "The dates of repair stages, receipts, notes and hours are the owner’s. Where photos "
            "dated by a camera or by their file’s name fall in the same time, they are named "
            "beside the stage."
        ),
    )


def _corrections(record: Record) -> tuple[str, ...]:
    taken = Counter(photo.camera_id for photo in record.photos)
    lines = [
        f"The clock of {camera.label or 'a camera'} was {_shift(camera.shift_seconds)}; the dates "
        f"of its {count(taken[camera.id], 'photo')} are put right by that."
        for camera in record.cameras
        if camera.shift_seconds and taken[camera.id]
    ]
    told = sum(photo.basis is Basis.OWNER for photo in record.photos)
    if told:
        lines.append(f"The owner gave the date of {count(told, 'photo')} by hand.")
    turned = sum(bool(photo.turn) for photo in record.photos)
    if turned:
        lines.append(
            f"{count(turned, 'photo').capitalize()} turned upright by hand, for show only."
        )
    return tuple(lines) or ("Nothing: every date is as its file gave it.",)


def _metal(record: Record) -> tuple[Passage, ...]:
    """How lengths, areas and distances came about, where the record has any."""
    if not (record.seams or record.patches or record.anchors):
        return ()
    return (
        Passage(
            "How metalwork is measured",
            (
                (
                    "Lengths of seams, areas of patches and distances to mountings are computed "
                    "from what the owner drew on the drawing of the car, along the drawing and in "
                    "millimetres; the mass of steel from the area, the thickness and 7,850 kg to "
                    "the cubic metre. Readings are numbers that the owner took with the "
                    "instrument named in the journal."
                ),
            ),
        ),
    )


def _shift(seconds: int) -> str:
    """What was wrong with a clock that ``seconds`` put right."""
    size = abs(seconds)
    days, rest = divmod(size, 86_400)
    whole_hours, rest = divmod(rest, 3600)
    minutes, left = divmod(rest, 60)
    parts = [
        text
        for amount, text in (
            (days, count(days, "day")),
            (whole_hours, f"{whole_hours} h"),
            (minutes, f"{minutes} min"),
            (left, f"{left} s"),
        )
        if amount
    ]
    return f"{' '.join(parts)} {'slow' if seconds > 0 else 'fast'}"


def _hashes() -> tuple[str, ...]:
    return (
        (
            "SHA-256 is a number of 64 digits (0 to 9, a to f) computed from all bytes of a file. "
            "Change one bit and it is another number; nobody knows how to make a second file with "
            "the same one. The index prints that of every original used here, in groups of eight."
        ),
        "Ask the owner for an original, here called FILE, and compute its number:",
        "on Windows:  certutil -hashfile FILE SHA256",
        "on macOS:  shasum -a 256 FILE",
        "on Linux:  sha256sum FILE",
        (
            "If it equals the number printed here, the file is the one this document was made "
            "from, unaltered since it came into the journal. It doesn’t prove when a picture was "
            "taken, nor what it shows."
        ),
    )
