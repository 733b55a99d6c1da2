"""Small values of every kind of record."""

import hashlib
from datetime import date, datetime
from decimal import Decimal

from journal.domain.arrivals import NewPhoto
from journal.domain.car import Car
from journal.domain.drawing import Drawing, Panel, PanelShape, Side, System, View
from journal.domain.ids import AreaId, LineId, PanelId, ReceiptId, Sha256, ViewId, WorkId
from journal.domain.photos import Basis, DateCandidate, Kind
from journal.domain.receipts import Category, Condition, Line, Paper, Receipt, Share
from journal.domain.shapes import polygon
from journal.domain.when import When
from journal.domain.work import Work
from journal.store.journal import Journal

CAR = Car("Halden Rook", wheelbase_mm=2500, length_mm=4200, year="1967")
SILL, WING, ROOF = PanelId(1), PanelId(2), PanelId(3)
DRAWING = Drawing(
    (View(ViewId(1), "left side", 4600, 1800), View(ViewId(2), "top", 4600, 2000)),
    (
        Panel(SILL, "Sill", Side.LEFT, System.STRUCTURE),
        Panel(WING, "Front wing", Side.LEFT, System.OUTER),
        Panel(ROOF, "Roof", Side.CENTRE, System.OUTER),
    ),
    (
        PanelShape(SILL, ViewId(1), polygon([(1000, 1300), (3000, 1300), (3000, 1400)]), 1),
        PanelShape(ROOF, ViewId(2), polygon([(1000, 500), (3000, 500), (2000, 1500)]), 2),
    ),
)
DAY = When.on(date(2016, 3, 5))


def new_photo(number: int, **changes: object) -> NewPhoto:
    """A photo of its own content, taken on the fifth of March at so many seconds past ten."""
    moment = When.at(datetime(2016, 3, 5, 10, number // 60 % 60, number % 60))
    values: dict[str, object] = {
        "sha256": Sha256(hashlib.sha256(content(number)).hexdigest()),
        "suffix": ".jpg",
        "size": len(content(number)),
        "name": f"DSCF{number:04d}.JPG",
        "kind": Kind.PICTURE,
        "mime": "image/jpeg",
        "when": moment,
        "basis": Basis.CAMERA,
        "offset": None,
        "candidates": (
            DateCandidate(Basis.CAMERA, "DateTimeOriginal", "2016:03:05 10:00:00", moment),
            DateCandidate(Basis.FILE_TIME, "file time", "", DAY),
        ),
        "make": "Lumenfield",
        "model": "L20",
        "serial": "",
        "width": 1600,
        "height": 1200,
        "orientation": 1,
        "sequence": number,
        "latitude": None,
        "longitude": None,
        "damage": "",
    }
    return NewPhoto(**{**values, **changes})  # type: ignore[arg-type]


def content(number: int) -> bytes:
    """The bytes of a photo's original."""
    return f"picture {number}".encode()


def keep(journal: Journal, *numbers: int) -> list[int]:
    """Put photos' originals in place and record them, as the intake does."""
    staged = []
    for number in numbers:
        path = journal.staging / f"{number}.part"
        path.write_bytes(content(number))
        staged.append((path, new_photo(number)))
    journal.settle(staged)
    with journal.edit(f"Add {len(numbers)} photos"):
        return list(journal.photos.add([photo for _, photo in staged]))


def receipt(*shares: Share, **changes: object) -> Receipt:
    """A receipt of two lines from a made-up supplier."""
    lines = (
        Line(
            LineId(0), "Sill, outer", Decimal(1), 8950, Category.PANELS, Condition.NEW, None, shares
        ),
        Line(LineId(0), "Zinc primer", Decimal("2.5"), 2475, Category.PAINT, Condition.NONE),
    )
    values: dict[str, object] = {
        "id": ReceiptId(0),
        "supplier": "Marrow & Quill Panels",
        "when": DAY,
        "currency": "EUR",
        "paper": Paper.HELD,
        "printed_total": 11425,
        "lines": lines,
    }
    return Receipt(**{**values, **changes})  # type: ignore[arg-type]


def work(*areas: int) -> Work:
    """Three hours and a half, shared evenly."""
    shares = tuple(Share(AreaId(area), 1) for area in areas)
    return Work(WorkId(0), DAY, 210, "Ines Toller", "cut the sill back", shares)
