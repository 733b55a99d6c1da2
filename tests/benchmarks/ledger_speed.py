"""How long the Ledger's sums take: python -m tests.benchmarks.ledger_speed [RECEIPTS]

A journal of 10,000 receipts of five lines, each line shared over up to three of 300 repair areas on
the panels of the starter drawing, and 4,000 days of work. "First" is from a journal just opened,
"after a receipt" once one more was recorded, as of an evening, "again" once more. The collector of
Python is off, as it is in the window. The reference is a bare reading of the same rows with
sqlite3, in the same process. Promised: any total within 100 ms and the whole page within 300.
"""

import gc
import random
import sqlite3
import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal
from functools import partial
from pathlib import Path

from journal.actions import costs
from journal.actions.journals import new_journal, open_journal
from journal.actions.ledger_page import ledger_table, read_ledger
from journal.actions.price_indices import record_index
from journal.actions.receipts import record_receipt
from journal.actions.session import Session
from journal.domain.car import Car, MilestoneKind
from journal.domain.costs import COSTS_BY
from journal.domain.ids import AreaId, LineId, ReceiptId, WorkId
from journal.domain.price_index import InMoneyOf
from journal.domain.receipts import Category, Condition, Line, Paper, Receipt, Share
from journal.domain.when import When
from journal.domain.work import Work

_AREAS = 300
_DAYS_OF_WORK = 4_000
_FIRST_DAY = date(2009, 1, 3)
_RUNS = 5


def make(folder: Path, receipts: int) -> None:
    """Record the journal."""
    chance = random.Random(receipts)
    with new_journal(folder, Car("Halden Rook")) as session:
        journal = session.journal
        with journal.edit("Make the journal"):
            panels = [panel.id for panel in journal.drawing.panels()]
            areas = [
                journal.areas.add(f"Area {number}", sorted(set(chance.choices(panels, k=3))), "")
                for number in range(_AREAS)
            ]
            journal.car.add_milestone(MilestoneKind.STRIPPED, When.on(date(2010, 5, 1)), "")
            journal.car.add_milestone(MilestoneKind.ON_THE_ROAD, When.on(date(2020, 6, 1)), "")
            for _ in range(receipts):
                journal.receipts.add(_receipt(chance, areas))
            for _ in range(_DAYS_OF_WORK):
                shares = _shares(chance, areas)
                journal.work.add(Work(WorkId(0), _day(chance), 90, chance.choice("AB"), "", shares))
        months = [f"{year}-{month:02d}" for year in range(2009, 2025) for month in range(1, 13)]
        values = {month: Decimal(100) + n for n, month in enumerate(months)}
        record_index(session, "Made-up", "EUR", "made up", values)


def _day(chance: random.Random) -> When:
    return When.on(_FIRST_DAY + timedelta(days=chance.randrange(5_500)))


def _shares(chance: random.Random, areas: list[AreaId]) -> tuple[Share, ...]:
    found = sorted(set(chance.choices(areas, k=chance.randint(1, 3))))
    return tuple(Share(area_id, chance.randint(1, 3)) for area_id in found)


def _receipt(chance: random.Random, areas: list[AreaId]) -> Receipt:
    lines = tuple(
        Line(
            LineId(0), "Bolt, zinc plated", Decimal(1), chance.randint(100, 90_000),
            chance.choice(list(Category)), chance.choice(list(Condition)),
            chance.choice([None, 50_000]), _shares(chance, areas),
        )
        for _ in range(5)
    )  # fmt: skip
    paper = chance.choice([Paper.HELD, Paper.HELD, Paper.LOST])
    supplier = f"Supplier {chance.randrange(200)}"
    return Receipt(ReceiptId(0), supplier, _day(chance), "EUR", paper, None, lines)


def bare(folder: Path) -> int:
    """Read the rows that the sums are made of, and nothing else; how many they are."""
    db = sqlite3.connect(folder / "journal.db")
    columns = {
        "receipts": "id, supplier, earliest, latest, currency, paper, printed_total, rate",
        "lines": "id, receipt_id, amount, category, condition, new_price, spread",
        "line_shares": "line_id, area_id, weight",
        "work": "id, earliest, latest, minutes, person",
        "work_shares": "work_id, area_id, weight",
    }
    count = sum(
        len(db.execute(f"SELECT {names} FROM {table}").fetchall())
        for table, names in columns.items()
    )
    db.close()
    return count


def timed(act: Callable[[], object], before: Callable[[], object] | None = None) -> float:
    """The median of some runs, in milliseconds of the processor; ``before`` is not counted."""
    took = []
    for _ in range(_RUNS):
        if before is not None:
            before()
        begun = time.process_time()
        act()
        took.append(time.process_time() - begun)
    return 1000 * statistics.median(took)


def first(folder: Path, act: Callable[[Session], object]) -> float:
    """The median of some runs, each with the journal just opened."""
    took = []
    for _ in range(_RUNS):
        with open_journal(folder, read_only=True) as session:
            begun = time.process_time()
            act(session)
            took.append(time.process_time() - begun)
        gc.collect()
    return 1000 * statistics.median(took)


def page(session: Session) -> None:
    """What the Ledger page reads when it is shown: figures, lists, one table, one chart."""
    read_ledger(session)
    ledger_table(session, "category")
    costs.cost_series(session, "month")


def report(folder: Path) -> None:
    """Measure, and print a line for each figure."""
    gc.disable()
    reference = timed(lambda: bare(folder))
    _say(f"{bare(folder):,} rows read bare: {reference:.0f} ms")

    def say(name: str, took: float) -> None:
        _say(f"{name:44}{took:8.1f} ms  {took / reference:6.2f} x bare")

    say("page, first", first(folder, page))
    with open_journal(folder) as session:
        template = session.journal.receipts.all()[-1]
        record = partial(_record_one, session, template)
        page(session)
        say("page, after a receipt", timed(lambda: page(session), record))
        say("page, again", timed(lambda: page(session)))
        for by in COSTS_BY:
            say(f"by {by}, after a receipt", timed(partial(costs.costs, session, by), record))
        wish = InMoneyOf("2024")
        rest: dict[str, Callable[[], object]] = {
            "figures": lambda: costs.summary(session),
            "three figures": lambda: costs.three_figures(session),
            "money by month, for a chart": lambda: costs.cost_series(session, "month"),
            "hours by month, for a chart": lambda: costs.hours_series(session, "month"),
            "a welded metre": lambda: costs.metre_costs(session),
            "all nine tables": lambda: [costs.costs(session, by) for by in COSTS_BY],
            "in the money of 2024, by area": lambda: costs.costs_in_money_of(session, "area", wish),
        }
        for name, act in rest.items():
            say(f"{name}, after a receipt", timed(act, record))
        say("in the money of 2024, again", timed(rest["in the money of 2024, by area"]))
        panel = costs.costs(session, "panel").rows[0].key
        say("lines of a panel", timed(lambda: costs.lines_of_row(session, "panel", panel)))
        say("lines of a category", timed(lambda: costs.lines_of_row(session, "category", "tools")))
        say("lines of all money", timed(lambda: costs.lines_of_figure(session, "money")))


def _record_one(session: Session, template: Receipt) -> None:
    lines = tuple(replace(line, id=LineId(0)) for line in template.lines)
    record_receipt(session, replace(template, id=ReceiptId(0), lines=lines))


def _say(text: str) -> None:
    sys.stdout.write(f"{text}\n")
    sys.stdout.flush()


def main() -> None:
    """Make the journal and measure."""
    receipts = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch) / "Rook"
        make(folder, receipts)
        report(folder)


if __name__ == "__main__":
    main()
