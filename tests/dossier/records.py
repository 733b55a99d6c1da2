"""Records made for the tests: each maker fills in what a test doesn't care about."""

from dataclasses import replace
from datetime import datetime
from decimal import Decimal
from hashlib import sha256
from io import BytesIO
from typing import Any

from PIL import Image

from journal.domain.areas import Area, StageChange
from journal.domain.car import Car, Milestone, MilestoneKind
from journal.domain.claims import all_claims
from journal.domain.costs import CostRow, CostsBy, CostSummary, CostTable
from journal.domain.cuts import Cut, Part, usual
from journal.domain.drawing import Drawing, Panel, PanelShape, Side, System, View
from journal.domain.ids import (
    AreaId,
    LineId,
    MilestoneId,
    PanelId,
    PhotoId,
    PinId,
    ReceiptId,
    Sha256,
    StageChangeId,
    ViewId,
    WorkId,
)
from journal.domain.photos import AreaPhoto, Basis, Kind, Photo, Pin, Role
from journal.domain.receipts import Category, Condition, Line, Paper, Receipt, Share
from journal.domain.record import Record
from journal.domain.shapes import polygon
from journal.domain.when import When, parse
from journal.domain.work import Work
from journal.dossier.document import AreaStory
from journal.dossier.story import stories

SILL = Panel(PanelId(1), "Sill", Side.LEFT, System.STRUCTURE)
ROOF = Panel(PanelId(2), "Roof", Side.CENTRE, System.OUTER)


def photo(number: int, when: str | None = "2016-03-12T14:05:00", **changes: Any) -> Photo:
    known = parse(when) if when else None
    made = Photo(
        id=PhotoId(number),
        sha256=sha_of(f"photo {number}"),
        suffix=".jpg",
        name=f"ABCD{number:04}.JPG",
        kind=Kind.PICTURE,
        when=known,
        basis=Basis.CAMERA if known else Basis.UNKNOWN,
        offset=None,
        camera_id=None,
        camera="",
        width=1600,
        height=1200,
        orientation=1,
        turn=0,
        caption="",
        damage="",
        placed=False,
    )
    return replace(made, **changes)


def sha_of(text: str) -> Sha256:
    return Sha256(sha256(text.encode()).hexdigest())


def area(number: int = 1, *stages: tuple[str, str], **changes: Any) -> Area:
    """A repair area that came to each (stage, date)."""
    steps = tuple(
        StageChange(StageChangeId(number * 100 + n), AreaId(number), stage, parse(when))
        for n, (stage, when) in enumerate(stages)
    )
    made = Area(
        AreaId(number),
        f"Area {number}",
        (SILL.id,),
        "rusted through",
        "cut out and replaced",
        (),
        steps,
    )
    return replace(made, **changes)


def chosen(area_id: int, photo_id: int, role: Role, rank: int = 0) -> AreaPhoto:
    return AreaPhoto(AreaId(area_id), PhotoId(photo_id), role, rank)


def pin(photo_id: int, panel_id: int = 1) -> Pin:
    return Pin(PinId(photo_id), PhotoId(photo_id), PanelId(panel_id), None, None, None)


def receipt(number: int = 1, amount: int = 12000, *area_ids: int, **changes: Any) -> Receipt:
    line = Line(
        LineId(number),
        "Sheet steel 1.2 mm",
        Decimal(1),
        amount,
        Category.PANELS,
        Condition.NEW,
        None,
        tuple(Share(AreaId(a), 1) for a in area_ids),
    )
    made = Receipt(
        ReceiptId(number),
        "Ostwell Steel",
        parse("2016-02-20"),
        "EUR",
        Paper.HELD,
        amount,
        (line,),
        (sha_of(f"paper {number}"),),
    )
    return replace(made, **changes)


def work(number: int, minutes: int, *area_ids: int, person: str = "Ada") -> Work:
    shares = tuple(Share(AreaId(a), 1) for a in area_ids)
    return Work(WorkId(number), parse("2016-03-12"), minutes, person, "", shares)


def milestone(kind: MilestoneKind, when: str) -> Milestone:
    number = list(MilestoneKind).index(kind) + 1
    return Milestone(MilestoneId(number), kind, parse(when))


def drawing() -> Drawing:
    """One view with a roof over a sill."""
    view = View(ViewId(1), "Left side", 4200.0, 1400.0)
    sill = polygon([(900, 1000), (3000, 1000), (3000, 1150), (900, 1150)])
    roof = polygon([(1200, 100), (2800, 100), (3100, 300), (1000, 300)])
    return Drawing(
        (view,),
        (SILL, ROOF),
        (PanelShape(SILL.id, view.id, sill, 1), PanelShape(ROOF.id, view.id, roof, 2)),
    )


def record(**parts: Any) -> Record:
    """A record that lacks nothing in itself, with ``parts`` in place of its own."""
    whole: dict[str, Any] = {
        "car": Car(
            "The Rook", maker="Halden", model="Rook", year="1971", chassis_number="HR 10482"
        ),
        "milestones": (
            milestone(MilestoneKind.ACQUIRED, "2015-05-02"),
            milestone(MilestoneKind.ON_THE_ROAD, "2019-06-01"),
        ),
        "drawing": drawing(),
        "cameras": (),
        "photos": (),
        "pins": (),
        "areas": (),
        "area_photos": (),
        "entries": (),
        "receipts": (),
        "work": (),
    }
    return Record(**(whole | parts))


def finished_record() -> Record:
    """One repair area from found to finished with all that belongs to it."""
    photos = (
        photo(1, "2016-01-10T10:00:00", caption="Rust under the paint"),
        photo(2, "2016-03-12T14:05:00", caption="New metal tacked in"),
        photo(3, "2016-05-01", caption="In colour", basis=Basis.OWNER),
    )
    roles = (Role.BEFORE, Role.DURING, Role.AFTER)
    return record(
        photos=photos,
        pins=(*(pin(p.id) for p in photos), replace(pin(3, 2), id=PinId(99))),
        areas=(
            area(1, ("found", "2016-01-10"), ("welded", "2016-03-12"), ("finished", "2016-05")),
        ),
        area_photos=tuple(chosen(1, p.id, r) for p, r in zip(photos, roles, strict=True)),
        receipts=(receipt(1, 12000, 1),),
        work=(work(1, 330, 1), work(2, 60, 1, person="Ben")),
    )


def summary(money: int = 12000, minutes: int = 390, **changes: Any) -> CostSummary:
    made = CostSummary(
        currency="EUR",
        restoration=money,
        upkeep=0,
        minutes=minutes,
        restoration_minutes=minutes,
        upkeep_minutes=0,
        people=(),
        unproven=0,
        difference=0,
        differing=(),
        saved_against_new=0,
        saved_on=0,
        saved_lines=0,
        not_shared=0,
        not_shared_minutes=0,
        missing_rates=(),
    )
    return replace(made, **changes)


def table(by: CostsBy, *rows: CostRow) -> CostTable:
    total = CostRow(
        "total",
        "Total",
        sum(r.restoration for r in rows),
        sum(r.upkeep for r in rows),
        sum(r.minutes for r in rows),
        sum(r.unproven for r in rows),
    )
    return CostTable(by, "EUR", rows, total)


def tables() -> tuple[CostTable, ...]:
    """The tables that belong to ``finished_record``."""
    return (
        table("category", CostRow(Category.PANELS, "panels and metal", 12000, 0, 0, 0)),
        table("area", CostRow("1", "Area 1", 12000, 0, 390, 0)),
    )


def told(rec: Record, cover: PhotoId | None = None) -> tuple[AreaStory, ...]:
    """Every story with its stages rather than its claims, and figures of ``tables``."""
    choices = usual(Cut.OWN).with_part(Part.CLAIMS, wanted=False)
    numbers = {cover: 1} if cover is not None else {}
    return stories(rec, tables()[1], numbers, choices, all_claims(rec))


def at(text: str) -> When:
    return When.at(datetime.fromisoformat(text))


def jpeg(width: int = 320, height: int = 240, colour: str = "#7A4A2B") -> bytes:
    """A small picture of one colour, as JPEG."""
    target = BytesIO()
    Image.new("RGB", (width, height), colour).save(target, "JPEG")
    return target.getvalue()


def picture(_photo: Photo, _longest: int) -> bytes | None:
    return jpeg()
