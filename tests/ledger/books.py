"""Made-up receipts, work and repair areas, and strategies that make any of them."""

from dataclasses import replace
from datetime import date, datetime
from decimal import Decimal

from hypothesis import strategies as st

from journal.domain.areas import Area
from journal.domain.car import Milestone, MilestoneKind
from journal.domain.drawing import Panel, Side, System
from journal.domain.ids import AreaId, LineId, MilestoneId, PanelId, ReceiptId, WorkId
from journal.domain.receipts import Category, Condition, Line, Paper, Receipt, Share, Spread
from journal.domain.when import When, parse_edtf
from journal.domain.work import Work
from journal.ledger.books import Books

PANELS = tuple(
    Panel(PanelId(number), name, Side.LEFT, System.OUTER)
    for number, name in enumerate(("Sill", "Wheel arch", "Rear wing"), 1)
)
SILL = Area(AreaId(1), "Sill, left", (PanelId(1),), "", "", ())
ARCH = Area(AreaId(2), "Wheel arch, rear", (PanelId(1), PanelId(2), PanelId(3)), "", "", ())
FLOOR = Area(AreaId(3), "Floor under the pedals", (), "", "", ())
GONE = AreaId(99)

ON_THE_ROAD = Milestone(MilestoneId(1), MilestoneKind.ON_THE_ROAD, When.on(date(2021, 6, 12)))
STRIPPED = Milestone(MilestoneId(2), MilestoneKind.STRIPPED, When.on(date(2019, 3, 1)))
RESTORING = When.on(date(2019, 3, 2))
DRIVING = When.on(date(2022, 5, 7))
LONG_AGO = When(datetime.min, datetime(2016, 12, 31, 23, 59, 59), "../2016")

STEEL = Line(LineId(1), "Sheet, 1 mm", Decimal(2), 4000, Category.PANELS, Condition.NEW, None, ())
RECEIPT = Receipt(ReceiptId(1), "Fenwick Metal", RESTORING, "EUR", Paper.HELD, None, (STEEL,))
WORK = Work(WorkId(1), RESTORING, 90, "Ada")


def line(amount: int, *weights: tuple[AreaId, int], **changes: object) -> Line:
    shares = tuple(Share(area_id, weight) for area_id, weight in weights)
    return replace(STEEL, amount=amount, shares=shares, **changes)  # type: ignore[arg-type]


def receipt(*lines: Line, **changes: object) -> Receipt:
    return replace(RECEIPT, lines=lines, **changes)  # type: ignore[arg-type]


def work(minutes: int, *weights: tuple[AreaId, int], **changes: object) -> Work:
    shares = tuple(Share(area_id, weight) for area_id, weight in weights)
    return replace(WORK, minutes=minutes, shares=shares, **changes)  # type: ignore[arg-type]


def books(*receipts: Receipt, work: tuple[Work, ...] = ()) -> Books:
    return Books("EUR", receipts, work, (SILL, ARCH, FLOOR), (ON_THE_ROAD,), PANELS)


_money = st.integers(-(10**7), 10**7)
_whens = st.sampled_from(
    [
        RESTORING, DRIVING, LONG_AGO, When.on(date(2021, 6, 12)), When.on(date(2021, 6, 13)),
        parse_edtf("2018"), parse_edtf("2019-03"), parse_edtf("2019/2022"),
    ]
)  # fmt: skip
_shares = st.lists(
    st.builds(Share, st.sampled_from([SILL.id, ARCH.id, FLOOR.id, GONE]), st.integers(0, 1000)),
    max_size=4,
).map(tuple)

lines = st.builds(
    Line,
    id=st.just(LineId(0)),
    text=st.just(""),
    quantity=st.just(Decimal(1)),
    amount=_money,
    category=st.sampled_from(Category),
    condition=st.sampled_from(Condition),
    new_price=st.none() | st.integers(0, 10**7),
    shares=_shares,
    spread=st.sampled_from(Spread),
)
receipts = st.builds(
    Receipt,
    id=(st.integers(1, 3) | st.integers(1, 10**6)).map(ReceiptId),
    supplier=st.sampled_from(["Fenwick Metal", "fenwick  metal", "Orla's Paints", "", "(hours)"]),
    when=_whens,
    currency=st.sampled_from(["EUR", "EUR", "GBP", "JPY", "KWD"]),
    paper=st.sampled_from(Paper),
    printed_total=st.none() | _money,
    lines=st.lists(lines, max_size=5).map(tuple),
    rate=st.sampled_from(["1", "1.1734", "0.0062", "2.97"]).map(Decimal),
    refund_of=st.none() | st.integers(1, 3).map(ReceiptId),
)
works = st.builds(
    Work,
    id=st.just(WorkId(0)),
    when=_whens,
    minutes=st.integers(0, 1440),
    person=st.sampled_from(["Ada", "ada", "Bo", ""]),
    shares=_shares,
)
any_books = st.builds(
    Books,
    currency=st.just("EUR"),
    receipts=st.lists(receipts, max_size=6).map(tuple),
    work=st.lists(works, max_size=6).map(tuple),
    areas=st.just((SILL, ARCH, FLOOR)),
    milestones=st.sampled_from([(), (ON_THE_ROAD,), (STRIPPED, ON_THE_ROAD)]),
    panels=st.just(PANELS),
)
