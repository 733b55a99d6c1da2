"""A long record with drawn pictures, for the benchmark and for looking at pages."""

import random
from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal
from io import BytesIO

from PIL import Image, ImageDraw, ImageFilter

from journal.domain.areas import Area, Entry
from journal.domain.car import Car, Milestone, MilestoneKind
from journal.domain.costs import CostRow, CostSummary, CostTable, HoursRow
from journal.domain.drawing import Drawing, Panel, PanelShape, Side, System, View
from journal.domain.ids import AreaId, CameraId, EntryId, LineId, PanelId, ViewId
from journal.domain.photos import AreaPhoto, Basis, Camera, Photo, Role
from journal.domain.receipts import Category, Condition, Line, Paper, Receipt, Share
from journal.domain.record import Record
from journal.domain.shapes import circle, polygon, rounded
from journal.domain.when import parse
from journal.domain.work import Work
from tests.dossier import records

STAGES = ("found", "cut back", "new metal in", "welded", "dressed", "protected", "finished")

_PLACES = (
    ("Sill", Side.LEFT, System.STRUCTURE),
    ("Sill", Side.RIGHT, System.STRUCTURE),
    ("Front wing", Side.LEFT, System.OUTER),
    ("Front wing", Side.RIGHT, System.OUTER),
    ("Rear wing", Side.LEFT, System.OUTER),
    ("Rear wing", Side.RIGHT, System.OUTER),
    ("Front door", Side.LEFT, System.OPENINGS),
    ("Front door", Side.RIGHT, System.OPENINGS),
    ("Rear door", Side.LEFT, System.OPENINGS),
    ("Rear door", Side.RIGHT, System.OPENINGS),
    ("Bonnet", Side.CENTRE, System.OPENINGS),
    ("Boot lid", Side.CENTRE, System.OPENINGS),
    ("Roof", Side.CENTRE, System.OUTER),
    ("Boot floor", Side.CENTRE, System.FLOOR),
    ("Front floor", Side.LEFT, System.FLOOR),
    ("Front floor", Side.RIGHT, System.FLOOR),
)

_FOUND = (
    (
        "Two holes behind the jacking point, and the flange gone over its whole length. Under the "
        "old underseal the metal was no thicker than paper."
    ),
    "Bubbles under the paint along the lower edge; behind them, rust through in three places.",
    "An old patch, brazed on over the rust without cutting anything out.",
    "surface rust only, but pitted too deep to leave",
)
_DONE = (
    (
        "Cut back to clean metal, a new section made of 1.2 mm steel let in with one seam, "
        "zinc primer inside, two coats of epoxy, cavity wax in 2019."
    ),
    (
        "Lower 80 mm replaced with a section folded on the bench, butt welded in short runs, "
        "dressed, and coated on both sides."
    ),
    "Old patch removed. The inner panel behind it was sound and only needed treating.",
)
_CAPTIONS = (
    "",
    "What the wire brush left of it",
    "New section clamped, gap 1 mm all round",
    "First seam. The camera was held under the car, hence the angle; the light is the lamp.",
    "Epoxy on, before the second coat",
    "In colour",
)
_SUPPLIERS = ("Ostwell Steel", "Brandt & Söhne Metallhandel", "Corner Paint Factors", "E. Tarn")


def showcase(areas: int = 24, photos_each: int = 4) -> Record:
    """A record of ``areas`` repair areas with so many photos each, always the same."""
    chance = random.Random(7)
    panels = tuple(Panel(PanelId(n), *place) for n, place in enumerate(_PLACES, 1))
    photos: list[Photo] = []
    chosen: list[AreaPhoto] = []
    made: list[Area] = []
    work: list[Work] = []
    receipts: list[Receipt] = []
    for number in range(1, areas + 1):
        start = date(2015, 6, 1) + timedelta(days=55 * number + chance.randrange(20))
        reached = len(STAGES) if number < areas - 2 else chance.randrange(1, 6)
        made.append(_area(number, start, reached, panels))
        for n in range(photos_each):
            role = _role(n, reached)
            photos.append(_photo(len(photos) + 1, start, role, chance, number + n))
            chosen.append(records.chosen(number, len(photos), role, n))
        work += _work(number, start)
        receipts.append(_receipt(number, start, chance))
    places = {area.id: area.panel_ids[0] for area in made}
    return Record(
        car=_car(),
        milestones=_milestones(),
        drawing=drawing(panels),
        cameras=(Camera(CameraId(1), "Orrin", "Orrin P2", "", 3720),),
        photos=tuple(sorted(photos, key=lambda p: p.when.earliest.isoformat() if p.when else "z")),
        pins=tuple(records.pin(row.photo_id, places[row.area_id]) for row in chosen),
        areas=tuple(made),
        area_photos=tuple(chosen),
        entries=(
            *(_entry(area) for area in made if area.id % 3 == 0),
            Entry(EntryId(999), parse("2016-02"), "Lamp moved to the other wall.", None, None),
        ),
        receipts=tuple(receipts),
        work=tuple(work),
    )


def _area(number: int, start: date, reached: int, panels: tuple[Panel, ...]) -> Area:
    panel = panels[(number - 1) % len(panels)]
    steps = [(STAGES[s], (start + timedelta(days=9 * s)).isoformat()) for s in range(reached)]
    if number % 5 == 0:
        steps[-1] = (steps[-1][0], steps[-1][1][:7])
    return records.area(
        number,
        *steps,
        name=f"{panel.label}{' again' if number > len(panels) else ''}",
        panel_ids=(panel.id,) if number % 7 else (panel.id, panels[0].id),
        found=_FOUND[number % 4],
        done=_DONE[number % 3] if reached > 2 else "",
        cautions=("load-bearing", "welding") if panel.system is System.STRUCTURE else (),
    )


def _role(n: int, reached: int) -> Role:
    role = (Role.BEFORE, Role.DURING, Role.AFTER, Role.DURING)[n % 4]
    return Role.DURING if reached < len(STAGES) and role is Role.AFTER else role


def _work(number: int, start: date) -> list[Work]:
    rows = [
        records.work(number * 10 + n, 90 + 45 * n, number, person=("Ada", "Ben")[n % 2])
        for n in range(3)
    ]
    return [replace(row, when=parse(start.isoformat())) for row in rows]


def _entry(area: Area) -> Entry:
    text = "Half a day lost looking for the right drill.\nThe seam took four evenings."
    return Entry(EntryId(area.id), area.changes[0].when, text, area.id, None)


def _milestones() -> tuple[Milestone, ...]:
    return (
        records.milestone(MilestoneKind.ACQUIRED, "2015-05-02"),
        records.milestone(MilestoneKind.STRIPPED, "2015-08"),
        replace(
            records.milestone(MilestoneKind.PAINTED, "2019-03/2019-04"),
            note="Single stage, in the old garage colour, by the owner and a friend",
        ),
        records.milestone(MilestoneKind.ON_THE_ROAD, "2019-06-01"),
    )


def _car() -> Car:
    return Car(
        title="The grey Rook",
        wheelbase_mm=2540,
        length_mm=4180,
        maker="Halden",
        model="Rook 1300",
        year="1971",
        chassis_number="HR 10482 B",
        engine_number="13-20771",
        registration="not registered at purchase",
        colour="stone grey over oxide red",
        owner="Ada Lindqvist",
        story=(
            "Bought from a barn as “solid, needs paint”. The first screwdriver went through the "
            "left sill.\nWhat was to be one winter became four years; this is what was done, "
            "by whom, and what proves it."
        ),
    )


def _photo(number: int, start: date, role: Role, chance: random.Random, caption: int) -> Photo:
    day = start + timedelta(days={Role.BEFORE: 0, Role.DURING: 27, Role.AFTER: 54}[role])
    time = f"T{chance.randrange(9, 21):02}:{chance.randrange(60):02}:00"
    tall = chance.random() < 0.2
    made = records.photo(
        number,
        day.isoformat() + time,
        caption=_CAPTIONS[caption % len(_CAPTIONS)],
        width=1200 if tall else 1600,
        height=1600 if tall else 1200,
        camera_id=CameraId(1),
    )
    if number % 9 == 0:
        return replace(made, when=parse(day.isoformat()[:7]), basis=Basis.OWNER)
    if number % 11 == 0:
        return replace(made, when=None, basis=Basis.UNKNOWN)
    return made


def _receipt(number: int, day: date, chance: random.Random) -> Receipt:
    amount = chance.randrange(900, 48000)
    lines = (
        Line(
            LineId(number * 2),
            "Sheet steel 1.2 mm, 1250 × 500",
            Decimal(2),
            amount,
            Category.PANELS,
            Condition.NEW,
            None,
            (Share(AreaId(number), 1),),
        ),
        Line(
            LineId(number * 2 + 1),
            "Welding wire 0.6 mm",
            Decimal(1),
            1890,
            Category.CONSUMABLES,
            Condition.NEW,
            None,
            (Share(AreaId(number), 1),) if number % 2 else (),
        ),
    )
    lost = number % 8 == 0
    return records.receipt(
        number,
        amount,
        supplier=_SUPPLIERS[number % 4],
        when=parse(day.isoformat()),
        lines=lines,
        printed_total=amount + 1890,
        paper=Paper.LOST if lost else Paper.HELD,
        papers=() if lost else (records.sha_of(f"paper {number}"),),
        stands_in="The line in the bank statement of that month" if lost else "",
    )


def drawing(panels: tuple[Panel, ...]) -> Drawing:
    """Six plain views of a saloon, with every panel on at least one."""
    views = (
        View(ViewId(1), "Left side", 4180, 1400),
        View(ViewId(2), "Right side", 4180, 1400),
        View(ViewId(3), "Top", 4180, 1600),
        View(ViewId(4), "Underside", 4180, 1600),
        View(ViewId(5), "Front", 1600, 1400),
        View(ViewId(6), "Rear", 1600, 1400),
    )
    by_label = {panel.label: panel.id for panel in panels}
    shapes = [
        *_side(by_label, "left", views[0], mirrored=False),
        *_side(by_label, "right", views[1], mirrored=True),
    ]

    def add(label: str, view: View, *corners: tuple[float, float]) -> None:
        shape = rounded(list(corners), 40)
        shapes.append(PanelShape(by_label[label], view.id, shape, len(shapes)))

    add("Bonnet", views[2], (250, 200), (1150, 140), (1150, 1460), (250, 1400))
    add("Roof", views[2], (1500, 260), (2800, 260), (2800, 1340), (1500, 1340))
    add("Boot lid", views[2], (3250, 200), (4050, 240), (4050, 1360), (3250, 1400))
    add("Front floor, left", views[3], (1200, 820), (2600, 820), (2600, 1400), (1200, 1400))
    add("Front floor, right", views[3], (1200, 200), (2600, 200), (2600, 780), (1200, 780))
    add("Boot floor", views[3], (3200, 300), (4050, 300), (4050, 1300), (3200, 1300))
    add("Bonnet", views[4], (250, 500), (1350, 500), (1400, 800), (200, 800))
    add("Boot lid", views[5], (250, 500), (1350, 500), (1400, 900), (200, 900))
    return Drawing(views, panels, tuple(shapes))


def _side(
    by_label: dict[str, PanelId], side: str, view: View, *, mirrored: bool
) -> list[PanelShape]:
    def at(*corners: tuple[float, float]) -> list[tuple[float, float]]:
        return [(view.width - x if mirrored else x, y) for x, y in corners]

    outlines = {
        f"Front wing, {side}": at((120, 640), (1150, 600), (1150, 1100), (900, 1100), (120, 1050)),
        f"Front door, {side}": at((1170, 600), (2080, 590), (2080, 1060), (1170, 1060)),
        f"Rear door, {side}": at((2100, 590), (2900, 600), (2760, 1060), (2100, 1060)),
        f"Rear wing, {side}": at((2920, 600), (4080, 680), (4060, 1050), (2790, 1090)),
        f"Sill, {side}": at((1000, 1080), (2780, 1080), (2760, 1200), (1000, 1200)),
        "Roof": at((1500, 180), (2750, 190), (2960, 260), (1400, 260)),
    }
    rows = [
        PanelShape(by_label[label], view.id, rounded(corners, 45), order)
        for order, (label, corners) in enumerate(outlines.items())
    ]
    window = polygon(at((1380, 290), (2960, 290), (3050, 560), (1180, 560)))
    rows.append(PanelShape(by_label["Roof"], view.id, window, 8))
    for x in (760.0, 3300.0):
        wheel = circle(view.width - x if mirrored else x, 1090, 290)
        rows.append(PanelShape(by_label["Roof"], view.id, wheel, 9))
    return rows


def costs(record: Record) -> tuple[CostSummary, tuple[CostTable, ...]]:
    """Figures that go with the record; the sums are those of its receipts and hours."""
    by_area = [
        CostRow(
            str(receipt.id),
            record.areas[receipt.id - 1].name,
            receipt.lines_total,
            0,
            405,
            receipt.lines_total if receipt.paper is Paper.LOST else 0,
        )
        for receipt in record.receipts
    ]
    money = sum(row.restoration for row in by_area)
    unproven = sum(row.unproven for row in by_area)
    minutes = 405 * len(by_area)
    summary = records.summary(
        money,
        minutes,
        upkeep=41250,
        unproven=unproven,
        people=(
            HoursRow("Ada", "Ada", minutes // 3 * 2, 0),
            HoursRow("Ben", "Ben", minutes // 3, 0),
        ),
    )
    by_category = (
        CostRow(Category.PANELS, "panels and metal", money - 45360, 12000, 0, unproven),
        CostRow(Category.CONSUMABLES, "consumables", 45360, 29250, 0, 0),
        CostRow("hours", "hours", 0, 0, minutes, 0),
    )
    return summary, (records.table("category", *by_category), records.table("area", *by_area))


def picture(photo: Photo, longest: int) -> bytes | None:
    """A drawn picture of a panel with rust, bare metal or paint, the same for the same photo."""
    chance = random.Random(int(photo.id))
    width, height = (longest, longest * 3 // 4)
    if photo.height > photo.width:
        width, height = height, width
    ground = chance.choice(("#6f7f86", "#8a8f8c", "#b9b4a7", "#7a4a2b", "#46525a"))
    image = Image.new("RGB", (width, height), ground)
    draw = ImageDraw.Draw(image)
    for _ in range(60):
        x, y, r = chance.random() * width, chance.random() * height, chance.random() * width / 9
        shade = chance.choice(("#8c4a22", "#9aa3a6", "#5f3a20", "#c2bdb2", "#39424a", "#a8552a"))
        draw.ellipse((x - r, y - r / 2, x + r, y + r / 2), fill=shade)
    image = image.filter(ImageFilter.GaussianBlur(width / 160))
    draw = ImageDraw.Draw(image)
    y = height * (0.3 + 0.4 * chance.random())
    for n in range(60):
        x = width * n / 60
        draw.arc((x, y, x + width / 40, y + width / 40), 120, 300, fill="#e8e4da", width=3)
    target = BytesIO()
    image.save(target, "JPEG", quality=85)
    return target.getvalue()
