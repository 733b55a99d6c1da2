"""What the owner thought, three weeks after the car came home and before anything was cut.

Invented like the rest: money in whole euros, time in hours, best, likely and worst.
"""

from dataclasses import dataclass

from journal.domain.findings import Severity


@dataclass(frozen=True, slots=True)
class FindingStory:
    """One finding: on which panel, what, how bad, what it may take, and what goes with it.

    ``area`` is the key of a repair area, "" for none; ``cause`` one of ``CAUSES``, "" for none.
    """

    panel: str
    text: str
    severity: Severity
    euros: tuple[int, int, int]
    hours: tuple[int, int, int]
    area: str = ""
    cause: str = ""
    note: str = ""


NAME, DAY = "Before the first cut", "2018-04-07"
NOTE = (
    "On four stands in the yard, dry, with a screwdriver, a magnet and Edo's knees. Carpets out, "
    "wings still on."
)
#: The most the owner would spend, in whole euros, and the hours she would give it.
CEILING, CEILING_HOURS = 8_000, 300
SEED = 20_180_407

INSIDE, FILLER = "It's worse inside", "The last owner's filler"
#: Cause -> strength.
CAUSES = {INSIDE: 0.6, FILLER: 0.4}

_S = Severity
FINDINGS = (
    FindingStory(
        "Inner sill, left", "Soft under the carpet by the seat crossmember", _S.STRUCTURAL,
        (40, 90, 320), (6, 12, 40), "inner-sill-left", INSIDE,
    ),
    FindingStory(
        "Sill, left", "A magnet won't hold on the lower half", _S.STRUCTURAL,
        (120, 190, 420), (8, 14, 34), "sill-left", INSIDE,
    ),
    FindingStory(
        "Inner sill, right", "Sounds dull at the rear, no hole seen", _S.SCABBY,
        (10, 40, 200), (3, 8, 26), "inner-sill-right", INSIDE,
    ),
    FindingStory(
        "Sill, right", "Blisters in a row along the foot", _S.PERFORATED,
        (120, 190, 400), (8, 13, 30), "sill-right", INSIDE,
    ),
    FindingStory(
        "Floor pan, front, left", "Daylight under the pedals", _S.PERFORATED,
        (20, 45, 120), (5, 10, 24), "floor-front-left", INSIDE,
    ),
    FindingStory(
        "Floor pan, front, right", "Two pinholes by the drain", _S.PERFORATED,
        (5, 15, 60), (2, 5, 14), "floor-front-right", INSIDE,
    ),
    FindingStory(
        "Jacking point, front, left", "The socket moves with the jack in it", _S.STRUCTURAL,
        (15, 40, 110), (3, 6, 14), "jack-front-left",
        note="Have the engineer look at it before anything is welded.",
    ),
    FindingStory(
        "Rear wing, left", "Blisters over the arch, none larger than a pea", _S.SCABBY,
        (40, 80, 190), (4, 9, 22), "arch-left", FILLER,
    ),
    FindingStory(
        "Rear wing, right", "Filler round the arch, thick as a finger", _S.PERFORATED,
        (60, 110, 240), (6, 10, 24), "arch-right", FILLER,
    ),
    FindingStory(
        "Front wing, left", "The rear foot is loose", _S.PERFORATED,
        (5, 15, 40), (2, 4, 10), "wing-left", FILLER,
    ),
    FindingStory(
        "Front wing, right", "Hit once and filled once", _S.PERFORATED,
        (90, 250, 600), (2, 5, 12), "wing-right", FILLER,
    ),
    FindingStory(
        "Boot floor", "Wet in the left corner", _S.SCABBY,
        (5, 15, 50), (2, 6, 15), "boot-floor",
    ),
    FindingStory(
        "Spare wheel well", "A pond with a wheel in it", _S.PERFORATED,
        (25, 60, 150), (4, 9, 20), "well",
    ),
    FindingStory(
        "Rear valance", "Rust round the holes of an old tow bar", _S.SCABBY,
        (10, 30, 80), (2, 4, 12), "rear-valance",
    ),
    FindingStory(
        "Bonnet", "All of it wants paint; the shine is filler and hope", _S.SURFACE,
        (2_200, 3_600, 6_500), (30, 60, 120),
        note="A price asked by telephone. Nobody has seen the car.",
    ),
    FindingStory(
        "", "Brakes seized at the rear, hoses from the last century", _S.WORN,
        (280, 480, 900), (10, 18, 35),
    ),
    FindingStory(
        "", "Engine turns by hand; more isn't known", _S.WORN,
        (150, 700, 2_600), (8, 30, 90),
    ),
    FindingStory(
        "", "Rubbers, tyres, a screen with a crack", _S.MISSING,
        (500, 850, 1_400), (8, 14, 25),
    ),
)  # fmt: skip
