"""The parts the owner wanted, found and fitted, and those still wanted today. All made up."""

from dataclasses import dataclass
from decimal import Decimal

from journal.domain.receipts import Category, Condition
from journal.domain.wanted import WantedState


@dataclass(frozen=True, slots=True)
class SightingStory:
    """Where a part was seen: the day, the place, the price in minor units, a note."""

    day: str
    place: str
    price: int | None
    note: str = ""
    currency: str = "EUR"


@dataclass(frozen=True, slots=True)
class WantedStory:
    """One wanted part. ``became`` names the supplier and the text of the line it became."""

    text: str
    category: Category
    condition: Condition | None
    limit: int | None
    states: tuple[tuple[WantedState, str], ...]
    sightings: tuple[SightingStory, ...] = ()
    panel: str = ""
    area: str = ""
    quantity: Decimal = Decimal(1)
    new_price: int | None = None
    note: str = ""
    became: tuple[str, str] | None = None


def _states(*days: str) -> tuple[tuple[WantedState, str], ...]:
    """Days written "ordered 2024-03-02", in order."""
    return tuple((WantedState(word), day) for word, day in (one.split(" ", 1) for one in days))


WANTED = (
    WantedStory(
        "Jacking socket, front left",
        Category.PANELS,
        Condition.USED,
        4000,
        _states("wanted 2018-10-14", "seen 2018-10-27", "arrived 2018-11-09", "fitted 2018-11-24"),
        (
            SightingStory("2018-10-27", "Netherquill Breakers", 2500, "From a dry shell."),
            SightingStory("2018-10-28", "Rook Register spares", 8800, "New, and no better."),
        ),
        area="jack-front-left",
        new_price=8800,
        became=("Netherquill Breakers", "Jacking socket, cut from a dry shell"),
    ),
    WantedStory(
        "Brake master cylinder, sleeved",
        Category.MECHANICAL,
        Condition.RECONDITIONED,
        15000,
        _states(
            "wanted 2020-11-22", "ordered 2020-12-19", "arrived 2021-01-15", "fitted 2021-02-06"
        ),
        (SightingStory("2020-12-05", "Rook Register spares", 12200, "Exchange, mine back."),),
        new_price=26500,
        became=("Rook Register spares", "Master cylinder, sleeved"),
    ),
    WantedStory(
        "Boot lid, straight lower edge",
        Category.PANELS,
        Condition.USED,
        18000,
        _states("wanted 2023-10-15", "seen 2023-11-04"),
        (
            SightingStory("2023-11-04", "Netherquill Breakers", 14000, "Edge sound, one dent."),
            SightingStory("2023-11-18", "Autumn fair, Ostervale", 22000, "Primed, hides a lot."),
            SightingStory("2023-12-02", "Grelling Panel Works", None, "Would make the edge new."),
        ),
        panel="Boot lid",
        area="boot-lid",
        new_price=42000,
        note="In case the rust at the seam comes back a second time.",
    ),
    WantedStory(
        "Door seal, front left",
        Category.TRIM,
        Condition.NEW,
        4500,
        _states("wanted 2024-01-07", "ordered 2024-02-10"),
        (SightingStory("2024-01-13", "Halewick Rubber and Trim", 3900),),
        panel="Front door, left",
        new_price=3900,
        note="Whistles from 80 on.",
    ),
    WantedStory(
        "Hub caps with the small badge",
        Category.TRIM,
        Condition.NEW_OLD_STOCK,
        16000,
        _states("wanted 2022-06-05", "seen 2023-05-13"),
        (
            SightingStory("2023-05-13", "Spring fair, Ostervale", 21000, "Set of four, boxed."),
            SightingStory("2024-01-28", "Lars Ekdal, Sundvik", 150000, "By letter.", "SEK"),
        ),
        quantity=Decimal(4),
    ),
    WantedStory(
        "Choke cable with knob",
        Category.MECHANICAL,
        None,
        2500,
        _states("wanted 2024-02-04"),
        new_price=3200,
    ),
    WantedStory(
        "Wiper arms, stainless",
        Category.TRIM,
        Condition.NEW,
        None,
        _states("wanted 2023-09-17", "seen 2024-02-11"),
        (SightingStory("2024-02-11", "Marlstreet Motor Factors", 3480),),
        quantity=Decimal(2),
        new_price=3480,
    ),
    WantedStory(
        "Fuel tank sender, rebuilt",
        Category.ELECTRICAL,
        Condition.RECONDITIONED,
        9000,
        _states("wanted 2023-06-25", "ordered 2023-11-20", "arrived 2024-01-19"),
        (SightingStory("2023-11-12", "Hollin and Daughter, engineers", 7400),),
        note="On the shelf until the tank is down to a quarter.",
    ),
)
