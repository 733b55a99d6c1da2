"""A small journal of the Halden Rook with something of everything, made through the actions."""

from decimal import Decimal
from io import BytesIO
from pathlib import Path

from PIL import Image, ImageDraw

from journal.actions import areas, cars, drawings, hours, pins, receipts
from journal.actions.journals import new_journal
from journal.actions.session import Session
from journal.domain.car import Car, MilestoneKind
from journal.domain.ids import AreaId, LineId, PanelId, PhotoId, ReceiptId, WorkId
from journal.domain.photos import Role
from journal.domain.receipts import Category, Condition, Line, Paper, Receipt, Share
from journal.domain.when import parse
from journal.domain.work import Work

_AREAS = (
    ("Sill, left, rear end", ("Sill, left",), "Rusted through behind the trim, 20 cm long."),
    (
        "Jacking point, left",
        ("Sill, left", "Floor, left"),
        "The plate has pulled out of the floor.",
    ),
    ("Front wing, lower edge", ("Front wing, left",), "Bubbles under the paint along the edge."),
    ("Boot lid lip", ("Boot lid",), "Pinholes along the drain channel."),
)


def panel(session: Session, label: str) -> PanelId:
    """The number of a panel, the nearest one where the drawing has no such name."""
    known = drawings.panels(session)
    return next((p.id for p in known if p.label == label), known[0].id)


def line(
    text: str,
    amount: int,
    category: Category = Category.PANELS,
    *,
    condition: Condition = Condition.NEW,
    new_price: int | None = None,
    shares: tuple[Share, ...] = (),
) -> Line:
    """A line with one of something."""
    return Line(LineId(0), text, Decimal(1), amount, category, condition, new_price, shares)


def receipt(supplier: str, when: str, *lines: Line, **changes: object) -> Receipt:
    """A receipt in euros whose paper is held."""
    values: dict[str, object] = {
        "id": ReceiptId(0),
        "supplier": supplier,
        "when": parse(when),
        "currency": "EUR",
        "paper": Paper.HELD,
        "printed_total": None,
        "lines": lines,
    }
    return Receipt(**{**values, **changes})  # type: ignore[arg-type]


def work(when: str, minutes: int, person: str, *area_ids: AreaId, note: str = "") -> Work:
    """A day's work shared evenly."""
    shares = tuple(Share(area_id, 1) for area_id in area_ids)
    return Work(WorkId(0), parse(when), minutes, person, note, shares)


def empty(folder: Path) -> Session:
    """A journal with nothing in it but the car."""
    return new_journal(folder / "Halden Rook", Car(title="Halden Rook", maker="Halden"))


def furnished(folder: Path) -> Session:
    """A journal with areas, stages, receipts, hours and an entry."""
    session = empty(folder)
    cars.add_milestone(session, MilestoneKind.ON_THE_ROAD, parse("2019-06-01"))
    made = []
    for name, labels, found in _AREAS:
        ids = [panel(session, label) for label in labels]
        changes = areas.add_area(session, name, ids, found, parse("2014-03-08"))
        made.append(AreaId(changes.made or 0))
    for stage, when in (("cut back", "2015-05-02"), ("new metal in", "2015-05-09")):
        areas.move_to_stage(session, made[0], stage, parse(when))
    areas.move_to_stage(session, made[2], "finished", parse("2016-07"))
    areas.add_entry(session, parse("2015-05-09"), "The inner sill was better than feared.", made[0])
    _buy(session, made)
    hours.record_work(session, work("2015-05-02", 210, "Iris", made[0]))
    hours.record_work(session, work("2015-05-09", 300, "Iris", made[0], made[1], note="Fitting"))
    hours.record_work(session, work("2015-05-09", 95, "Tom"))
    return session


def _buy(session: Session, made: list[AreaId]) -> None:
    sill = (Share(made[0], 2), Share(made[1], 1))
    receipts.record_receipt(
        session,
        receipt(
            "Brandt Panels",
            "2015-04-20",
            line("Sill, outer", 14_990, shares=sill),
            line("Sheet steel, 1 mm", 3_700, shares=sill),
            printed_total=18_790,
        ),
    )
    wing = line(
        "Front wing, used",
        9_000,
        condition=Condition.USED,
        new_price=32_000,
        shares=(Share(made[2], 1),),
    )
    receipts.record_receipt(
        session,
        receipt("Yard on Mill Lane", "2016-02", wing, paper=Paper.LOST, stands_in="bank statement"),
    )
    receipts.record_receipt(
        session,
        receipt("Fenwright", "2016-06-11", line("Welding wire", 2_450, Category.CONSUMABLES)),
    )
    receipts.record_receipt(
        session,
        receipt("Fenwright", "2020-03-04", line("Oil", 3_990, Category.MECHANICAL)),
    )


def picture(shade: int) -> bytes:
    """A small drawn JPEG, each number another."""
    colours = ("#8a4b32", "#7c868b", "#a8553a", "#4e5a50", "#b7b1a4", "#2f4a63")
    made = Image.new("RGB", (400, 300), colours[shade % 6])
    pen = ImageDraw.Draw(made)
    for number in range(7):
        y = 20 + number * 40 + shade % 13
        pen.line((0, y, 400, y + 40), fill=colours[(shade + number + 1) % 6], width=9)
    pen.text((20, 20), f"{shade}", fill="white")
    out = BytesIO()
    made.save(out, "JPEG", quality=80)
    return out.getvalue()


def with_photos(session: Session, folder: Path, count: int = 9) -> tuple[PhotoId, ...]:
    """Photos added to a journal, pinned to the first area's panel and chosen for it."""
    from journal.actions.add_photos import add_photos

    folder.mkdir(parents=True, exist_ok=True)
    paths = []
    for number in range(count):
        path = folder / f"IMG_{number:04}.jpg"
        path.write_bytes(picture(number))
        paths.append(path)
    report = add_photos(session, paths)
    ids = tuple(added.photo_id for added in report.added)
    first = areas.areas(session)[0]
    pins.pin(session, ids, first.panel_ids[0])
    for role, chosen in zip(Role, (ids[:2], ids[2:5], ids[5:6]), strict=True):
        areas.choose_photos(session, first.id, chosen, role)
    return ids
