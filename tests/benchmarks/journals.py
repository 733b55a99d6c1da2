"""Large journals for the benchmarks, recorded without pictures."""

import random
import time
from datetime import date, datetime, timedelta
from decimal import Decimal
from hashlib import sha256
from pathlib import Path

from journal.actions.journals import new_journal
from journal.actions.session import Session
from journal.domain.areas import Entry
from journal.domain.arrivals import NewPhoto
from journal.domain.car import Car
from journal.domain.ids import AreaId, EntryId, LineId, ReceiptId, Sha256
from journal.domain.photos import Basis, Kind, Role
from journal.domain.receipts import Category, Condition, Line, Paper, Receipt, Share
from journal.domain.when import When

_WORDS = [
    "sill",
    "wing",
    "rust",
    "hole",
    "weld",
    "seam",
    "patch",
    "primer",
    "wax",
    "bracket",
    "bolt",
    "clip",
    "hinge",
    "drain",
    "flange",
    "spot",
    "plug",
    "stitch",
    "grind",
    "dress",
    "filler",
    "paint",
    "door",
    "floor",
    "arch",
    "panel",
    "cut",
    "back",
    "inner",
    "outer",
    "left",
    "right",
    "captive",
]


def large_journal(folder: Path, photos: int) -> Session:
    """A journal of so many photos, a tenth as many entries, a twenty-fifth as many receipts."""
    chance = random.Random(photos)
    session = new_journal(folder, Car("Halden Rook"))
    journal = session.journal
    panels = [panel.id for panel in journal.drawing.panels()]
    with journal.edit("Areas"):
        areas = [
            journal.areas.add(f"Area {n}", [chance.choice(panels)], "holes") for n in range(60)
        ]
    start = datetime(2015, 4, 1, 18)
    for first in range(0, photos, 5000):
        with journal.edit("Photos"):
            numbers = range(first, min(first + 5000, photos))
            ids = journal.photos.add([_photo(n, start, chance) for n in numbers])
            for photo_id in ids:
                if chance.random() < 0.85:
                    journal.pins.put(photo_id, chance.choice(panels), None, None, None)
            for photo_id in ids[::20]:
                journal.areas.choose_photo(chance.choice(areas), photo_id, Role.DURING)
                journal.photos.set_caption(photo_id, _sentence(chance, 6))
    with journal.edit("Words and money"):
        for n in range(photos // 10):
            day = When.on((start + timedelta(hours=7 * n)).date())
            journal.areas.add_entry(
                Entry(EntryId(0), day, _sentence(chance, 30), chance.choice(areas), None)
            )
        for n in range(photos // 25):
            journal.receipts.add(_receipt(n, chance, areas))
    return session


def _sentence(chance: random.Random, words: int) -> str:
    return " ".join(chance.choices(_WORDS, k=words))


def _photo(number: int, start: datetime, chance: random.Random) -> NewPhoto:
    sitting, place = divmod(number, 20)
    moment = start + timedelta(days=sitting * 0.9, minutes=place * 4, seconds=chance.random() * 60)
    return NewPhoto(
        sha256=Sha256(sha256(str(number).encode()).hexdigest()),
        suffix=".jpg",
        size=1,
        name=f"DSCF{number % 9999 + 1:04d}.JPG",
        kind=Kind.PICTURE,
        mime="image/jpeg",
        when=When.at(moment),
        basis=Basis.CAMERA,
        offset=None,
        candidates=(),
        make="Lumenfield",
        model="L20",
        serial="",
        width=4000,
        height=3000,
        orientation=1,
        sequence=number,
        latitude=None,
        longitude=None,
        damage="",
    )


def _receipt(number: int, chance: random.Random, areas: list[AreaId]) -> Receipt:
    lines = tuple(
        Line(
            LineId(0), _sentence(chance, 3), Decimal(1), chance.randrange(100, 40000),
            chance.choice(list(Category)), Condition.NEW, None, (Share(chance.choice(areas), 1),),
        )
        for _ in range(3)
    )  # fmt: skip
    day = When.on(date(2015, 4, 1) + timedelta(days=number % 2500))
    supplier = f"Supplier {number % 40}"
    return Receipt(ReceiptId(0), supplier, day, "EUR", Paper.HELD, None, lines)


def median_ms(act: object, turns: int = 9) -> float:
    """The median time that a call takes, in milliseconds."""
    times = []
    for _ in range(turns):
        begun = time.perf_counter()
        act()  # type: ignore[operator]
        times.append((time.perf_counter() - begun) * 1000)
    return sorted(times)[turns // 2]
