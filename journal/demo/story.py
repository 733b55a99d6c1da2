"""The shapes of the made-up story: what each part of it says, and how its tables are read."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from journal.domain.car import MilestoneKind
from journal.domain.photos import Role
from journal.domain.receipts import Category, Condition, Paper


@dataclass(frozen=True, slots=True)
class AreaShot:
    """A picture of a repair area: the day, the look it had, its role, the light, the camera.

    ``frames`` over 1 is a burst: so many pictures within one second.
    """

    day: date
    look: str
    role: Role
    light: str
    camera: str = ""
    frames: int = 1


@dataclass(frozen=True, slots=True)
class StageStory:
    """The day a repair area came to a stage, in EDTF, which may be unsure."""

    stage: str
    when: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class AreaStory:
    """One repair area: on which panels, what was found and done, and how it is drawn.

    ``place`` is a key of ``places.PLACES``. ``spot`` is the trouble's width, height and turn, in
    mm and degrees; ``coated`` metal was under black underseal. ``mirrored`` is the car's right.
    """

    key: str
    name: str
    panels: tuple[str, ...]
    place: str
    spot: tuple[float, float, float]
    found: str
    done: str
    cautions: tuple[str, ...]
    stages: tuple[StageStory, ...]
    shots: tuple[AreaShot, ...]
    coated: bool = False
    mirrored: bool = False


@dataclass(frozen=True, slots=True)
class OtherShot:
    """A picture of the whole car, of parts, or a scanned print.

    ``subject`` is "car", "scene" or "print"; ``name`` a key of the car's states or of the scenes.
    ``clean`` tells a part before from one after; ``azimuth`` is where the camera stood round the
    car. ``panel`` is "" where the picture belongs to no one panel. ``said`` is the date of a print
    in the owner's words, "" where there is none.
    """

    day: date
    subject: str
    name: str
    light: str
    panel: str = ""
    caption: str = ""
    clean: bool = False
    azimuth: float = 40.0
    camera: str = ""
    said: str = ""


@dataclass(frozen=True, slots=True)
class LineStory:
    """One line of a receipt; amounts are in minor units, ``shares`` name repair areas."""

    text: str
    quantity: Decimal
    amount: int
    category: Category
    condition: Condition
    new_price: int | None = None
    shares: tuple[tuple[str, int], ...] = ()


@dataclass(frozen=True, slots=True)
class ReceiptStory:
    """One receipt. ``form`` is how its paper looks: "invoice", "till", "note" or "" for none."""

    day: date
    supplier: str
    town: str
    lines: tuple[LineStory, ...]
    paper: Paper = Paper.HELD
    form: str = "invoice"
    currency: str = "EUR"
    rate: Decimal = Decimal(1)
    stands_in: str = ""
    note: str = ""
    when: str = ""


@dataclass(frozen=True, slots=True)
class WorkStory:
    """One person's time on one day."""

    day: date
    person: str
    minutes: int
    note: str
    shares: tuple[tuple[str, int], ...]


@dataclass(frozen=True, slots=True)
class EntryStory:
    """A dated note in the owner's voice."""

    when: str
    text: str
    area: str = ""
    panel: str = ""


@dataclass(frozen=True, slots=True)
class MilestoneStory:
    """A turning point."""

    kind: MilestoneKind
    when: str
    note: str = ""


def shares_of(text: str) -> tuple[tuple[str, int], ...]:
    """Shares written "sill-left:2 floor-left" (a weight of 1 may be left out)."""
    shares = []
    for part in text.split():
        key, _, weight = part.partition(":")
        shares.append((key, int(weight or 1)))
    return tuple(shares)


def shots_of(table: str) -> tuple[AreaShot, ...]:
    """Shots, one a line: day, look, role, light, then the camera and "x2" for a burst if so."""
    shots = []
    for row in table.strip().splitlines():
        day, look, role, light, *more = row.split()
        frames = next((int(m[1:]) for m in more if m.startswith("x")), 1)
        camera = next((m for m in more if not m.startswith("x")), "")
        shots.append(AreaShot(date.fromisoformat(day), look, Role(role), light, camera, frames))
    return tuple(shots)


def stages_of(table: str) -> tuple[StageStory, ...]:
    """Stage changes, one a line: when, stage, and a note after a bar if there is one."""
    stages = []
    for row in table.strip().splitlines():
        words, _, note = row.strip().partition(" | ")
        when, stage = words.split(" ", 1)
        stages.append(StageStory(stage.strip(), when, note))
    return tuple(stages)


def work_of(table: str, people: dict[str, str]) -> tuple[WorkStory, ...]:
    """Days of work, one a line: day, person, hours, note, and after a bar the shares."""
    days = []
    for row in table.strip().splitlines():
        words, _, shares = (part.strip() for part in row.partition("|"))
        day, person, hours, note = words.split(" ", 3)
        minutes = int(Decimal(hours) * 60)
        days.append(
            WorkStory(date.fromisoformat(day), people[person], minutes, note, shares_of(shares))
        )
    return tuple(days)


_CATEGORIES = {
    "metal": Category.PANELS,
    "mech": Category.MECHANICAL,
    "elec": Category.ELECTRICAL,
    "trim": Category.TRIM,
    "paint": Category.PAINT,
    "cons": Category.CONSUMABLES,
    "tool": Category.TOOLS,
    "work": Category.SERVICES,
    "fees": Category.FEES,
    "car": Category.CAR,
    "other": Category.OTHER,
}
_CONDITIONS = {
    "new": Condition.NEW,
    "used": Condition.USED,
    "nos": Condition.NEW_OLD_STOCK,
    "recon": Condition.RECONDITIONED,
    "-": Condition.NONE,
}


def lines_of(table: str) -> tuple[LineStory, ...]:
    """Lines of a receipt, one a line, parted by bars.

    Quantity, text, amount in major units, category, condition, then "new=PRICE" and the shares
    where there are any.
    """
    lines = []
    for row in table.strip().splitlines():
        quantity, text, amount, category, condition, *more = (w.strip() for w in row.split("|"))
        new = next((m[4:] for m in more if m.startswith("new=")), "")
        shares = next((m for m in more if m and not m.startswith("new=")), "")
        lines.append(
            LineStory(
                text=text,
                quantity=Decimal(quantity),
                amount=_minor(amount),
                category=_CATEGORIES[category],
                condition=_CONDITIONS[condition],
                new_price=_minor(new) if new else None,
                shares=shares_of(shares),
            )
        )
    return tuple(lines)


def _minor(text: str) -> int:
    return int(Decimal(text) * 100)
