"""Bringing in a sheet against bare openpyxl: python -m tests.benchmarks.sheet_import [rows ...]

Seconds, and how many times as long as openpyxl alone needs to read the same cells (read-only,
values alone, its fastest way). Each is the best of three runs, the reference taken in between.
"""

import random
import sys
import tempfile
import time
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import openpyxl

from journal.actions.bring_in import OpenSheet, bring_in, open_sheet, plan
from journal.actions.history import undo
from journal.actions.journals import new_journal
from journal.actions.session import Session
from journal.domain.car import Car
from journal.domain.sheet_rows import Choices
from tests.intake.sheets.drawn import xlsx

_SUPPLIERS = ("Brandt Panels", "Fenwright", "Yard on Mill Lane", "Harbour Forge", "Swap meet")
_THINGS = ("Sill, outer", "Welding wire", "Front wing", "Bracket", "Primer", "Sheet steel 1 mm")
_HEADINGS = ("Date", "Supplier", "Item", "Qty", "Amount", "Category", "New/used", "Note")


def rows(count: int) -> list[tuple[Any, ...]]:
    """An invented list of purchases over twelve years."""
    chance = random.Random(7)
    return [
        _HEADINGS,
        *(
            (
                date(2012, 1, 1) + timedelta(days=chance.randrange(4_300)),
                chance.choice(_SUPPLIERS),
                f"{chance.choice(_THINGS)}, lot {number}",
                chance.randint(1, 6),
                chance.randint(100, 90_000) / 100,
                chance.choice(("mechanical", "paint", "tools", "panels")),
                chance.choice(("new", "used", "recon")),
                "" if number % 3 else "from memory",
            )
            for number in range(count)
        ),
    ]


def bare(path: Path) -> int:
    """Every value by openpyxl alone."""
    book = openpyxl.load_workbook(path, read_only=True, data_only=True)
    return sum(1 for row in book["Costs"].iter_rows(values_only=True) for _ in row)


def measured(session: Session, path: Path) -> dict[str, float]:
    """Each step once, in seconds; what came in is undone."""
    found: dict[str, Any] = {}
    steps: dict[str, Callable[[], Any]] = {
        "openpyxl alone": lambda: bare(path),
        "open and propose": lambda: open_sheet(session, path),
        "understand and compare": lambda: plan(session, *_read(found["open and propose"])),
        "record": lambda: bring_in(session, found["understand and compare"]),
        "understand it once more": lambda: plan(session, *_read(found["open and propose"])),
    }
    took = {}
    for name, act in steps.items():
        start = time.perf_counter()
        found[name] = act()
        took[name] = time.perf_counter() - start
    undo(session)
    return took


def _read(sheet: OpenSheet) -> tuple[OpenSheet, Choices]:
    return sheet, sheet.proposal.choices


def main() -> None:
    """Print the figures for every size asked for."""
    for count in [int(size) for size in sys.argv[1:]] or [10_000]:
        with tempfile.TemporaryDirectory() as scratch:
            path = xlsx(Path(scratch) / "list.xlsx", rows(count))
            with new_journal(Path(scratch) / "Rook", Car("Halden Rook")) as session:
                runs = [measured(session, path) for _ in range(3)]
            _tell(count, {name: min(run[name] for run in runs) for name in runs[0]})


def _tell(count: int, best: dict[str, float]) -> None:
    reference = best["openpyxl alone"]
    parts = ("open and propose", "understand and compare", "record")
    best["read, interpret and record"] = sum(best[name] for name in parts)
    print(f"{count:,} rows of {len(_HEADINGS)} columns")  # noqa: T201
    for name, took in best.items():
        print(f"  {name:<28}{took:7.2f} s  {took / reference:6.2f} x")  # noqa: T201


if __name__ == "__main__":
    main()
