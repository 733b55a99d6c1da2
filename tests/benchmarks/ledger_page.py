"""How long the Ledger page takes: python -m tests.benchmarks.ledger_page [RECEIPTS]

A journal of 10,000 receipts of five lines (that of ``ledger_speed``). For each act: the longest
time that the main thread took no other event, how much of it it was busy itself, and how long
until all was there. Reference: the sums alone, read in the same process without a window.
Promised: the page within 300 ms once its sums are kept, no stall over 50 ms.
"""

import os
import sys
import tempfile
import time
from functools import partial
from pathlib import Path
from typing import Any

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtWidgets import QApplication

from journal.actions.journals import open_journal
from journal.actions.ledger_page import ledger_table, read_ledger
from journal.actions.receipts import receipts as all_receipts
from journal.desktop.app import make_app, make_window
from journal.desktop.garbage import Garbage
from journal.domain.charts import ChartKind
from journal.domain.price_index import InMoneyOf
from tests.benchmarks.blocking import Drive
from tests.benchmarks.ledger_speed import make


def reference(folder: Path) -> None:
    """The sums alone, from a journal just opened and again."""
    with open_journal(folder, read_only=True) as session:
        for name in ("sums, first", "sums, again"):
            begun = time.perf_counter()
            read_ledger(session)
            ledger_table(session, "category")
            sys.stdout.write(f"{name:24}{(time.perf_counter() - begun) * 1000:7.1f} ms\n")


def lead(drive: Drive, folder: Path) -> None:
    """The page opened, its tabs, a figure, another year and an edit."""
    window = drive.window
    drive.act("open the journal", lambda: window.acts.open_folder(folder))
    assert window.workspace is not None
    assert window.desk is not None
    workspace, desk = window.workspace, window.desk
    drive.act("Ledger, first", partial(workspace.show_page, "Ledger"))
    page: Any = workspace.current_page()
    drive.act("Drawing", partial(workspace.show_page, "Drawing"))
    drive.act("Ledger, again", partial(workspace.show_page, "Ledger"))
    for by in ("area", "panel", "month", "supplier"):
        drive.act(f"laid out by {by}", partial(page.tab("Costs").lay_out_by, by))
    drive.act("Receipts", partial(page.show_tab, "Receipts"))
    drive.act("Hours", partial(page.show_tab, "Hours"))
    drive.act("Charts, first", partial(page.show_tab, "Charts"))
    for kind in ChartKind:
        drive.act(f"chart: {kind.value}", partial(page.tab("Charts").show_chart, kind))
    drive.act("open Money spent", page.figures["Money spent"].click)
    drive.act("show all again", lambda: page.tab("Receipts").show_all())
    drive.act("in the money of 2020", partial(page.show_in_money_of, InMoneyOf("2020")))
    drive.act("as it was paid", partial(page.show_in_money_of, None))
    receipt = all_receipts(desk.session)[100]
    from journal.actions.receipts import remove_receipt

    drive.act("remove a receipt", lambda: desk.act(remove_receipt, receipt.id))


def main() -> None:
    """Make the journal, read it, lead the window through its Ledger."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    with tempfile.TemporaryDirectory() as scratch:
        os.environ["XDG_CONFIG_HOME"] = str(Path(scratch) / "settings")
        folder = Path(scratch) / "Rook"
        make(folder, count)
        reference(folder)
        app: QApplication = make_app(sys.argv)
        window = make_window(app)
        window.show()
        garbage = Garbage(app)
        # Without a screen no window is the active one, and the person would seem to have left.
        app.applicationStateChanged.disconnect()
        drive = Drive(window)
        lead(drive, folder)
        drive.watchdog.stop()
        garbage.stop()
        window.close()


if __name__ == "__main__":
    main()
