"""How long the receipt's form keeps a person waiting: python -m tests.benchmarks.receipt_form

A journal with 10,000 receipts of 5 lines over 300 repair areas is opened, and a 12-megapixel scan
is given to the ledger, recorded, changed and looked at. For each act the longest time is printed
that the main thread took no other event; promised are 50 ms. RECEIPTS may be given as an argument.
"""

import io
import os
import random
import sys
import tempfile
from datetime import date, timedelta
from decimal import Decimal
from functools import partial
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtWidgets import QApplication

from journal.actions import areas, receipts
from journal.actions.journals import new_journal
from journal.desktop.app import make_app, make_window
from journal.desktop.desk import AreaSelected, ReceiptSelected
from journal.desktop.dialogs.receipt import ReceiptDialog
from journal.desktop.garbage import Garbage
from journal.desktop.pages.ledger_papers import read_papers
from journal.domain.car import Car
from journal.domain.ids import AreaId, LineId, ReceiptId
from journal.domain.receipts import Category, Condition, Line, Paper, Receipt, Share
from journal.domain.when import When
from tests.benchmarks.blocking import Drive

_AREAS, _LINES, _SUPPLIERS = 300, 5, 90


def many_receipts(folder: Path, count: int) -> None:
    """Make a journal with so many receipts."""
    chance = random.Random(7)
    with new_journal(folder, Car("Halden Rook")) as session:
        with session.journal.edit("Make repair areas"):
            names = [f"Repair area number {number}" for number in range(_AREAS)]
            ids = [session.journal.areas.add(name, [], "") for name in names]
        with session.journal.edit("Make receipts"):
            for number in range(count):
                session.journal.receipts.add(_receipt(number, ids, chance))


def _receipt(number: int, ids: list[AreaId], chance: random.Random) -> Receipt:
    lines = tuple(
        Line(
            LineId(0),
            f"Part {chance.randrange(4000)}",
            Decimal(1),
            chance.randrange(100, 90_000),
            Category.OTHER,
            Condition.NEW,
            None,
            (Share(chance.choice(ids), 1),),
        )
        for _ in range(_LINES)
    )
    return Receipt(
        ReceiptId(0),
        f"Supplier {chance.randrange(_SUPPLIERS)}",
        When.on(date(2000, 1, 1) + timedelta(days=number % 9000)),
        "EUR",
        Paper.HELD,
        None,
        lines,
        read_text="words of a paper " * 20,
    )


def scan(path: Path) -> Path:
    """A photographed receipt of 12 megapixels, with the noise that a camera has."""
    import numpy as np
    from PIL import Image

    from tests.intake.reading import drawn

    photographed = Image.open(io.BytesIO(drawn.photographed(drawn.drawn(3), 3)))
    large = np.asarray(photographed.convert("RGB").resize((3000, 4000)), dtype=np.float32)
    noise = np.random.default_rng(3).normal(0, 6, (4000, 3000, 1))
    pixels = np.clip(large + noise, 0, 255).astype(np.uint8)
    Image.fromarray(pixels).save(path, quality=92)
    return path


def lead(drive: Drive, folder: Path, paper: Path) -> None:
    """A receipt's form through its life."""
    window = drive.window
    drive.act("open the journal", lambda: window.acts.open_folder(folder))
    assert window.workspace is not None
    assert window.desk is not None
    desk = window.desk
    drive.act("Ledger", partial(window.workspace.show_page, "Ledger"))
    drive.act("new receipt, empty", lambda: ReceiptDialog(desk, window).open())
    drive.act("put it away", lambda: _open_form().reject())
    drive.act("new receipt, again", lambda: ReceiptDialog(desk, window).open())
    drive.act("put it away", lambda: _open_form().reject())
    drive.act("drop a scan, first", lambda: read_papers(desk, [paper], window))
    drive.act("put it away", lambda: _open_form().reject())
    drive.act("drop a scan", lambda: read_papers(desk, [paper], window))
    form = _open_form()
    form.head.supplier.set_text("Ironmere Steel")
    form.head.when.set_text("5 March 2016")
    form.lines.rows[0].text.setText("Sheet")
    form.lines.rows[0].price.setText("10")
    for extra in form.lines.rows[1:]:
        extra.price.setText("1")
    drive.act("record it", form.accept_button.click)
    made = max(receipts.receipts(desk.session), key=lambda one: one.id)
    drive.act("look at it", lambda: desk.select(ReceiptSelected(made.id)))
    drive.act("change it", lambda: ReceiptDialog(desk, window, receipt=made).open())
    drive.act("put that away", lambda: _open_form().reject())
    area = areas.areas(desk.session)[7]
    drive.act("Areas", partial(window.workspace.show_page, "Areas"))
    drive.act("an area", lambda: desk.select(AreaSelected(area.id)))
    drive.act("close the journal", window.close_journal)


def _open_form() -> ReceiptDialog:
    found = [
        one
        for one in QApplication.topLevelWidgets()
        if isinstance(one, ReceiptDialog) and one.isVisible()
    ]
    return found[0]


def main() -> None:
    """Make the journal and the scan, lead the window through them."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    with tempfile.TemporaryDirectory() as scratch:
        os.environ["XDG_CONFIG_HOME"] = str(Path(scratch) / "settings")
        folder = Path(scratch) / "Rook"
        many_receipts(folder, count)
        paper = scan(Path(scratch) / "scan.jpg")
        app: QApplication = make_app(sys.argv)
        window = make_window(app)
        window.show()
        garbage = Garbage(app)
        # Without a screen no window is the active one, and the person would seem to have left.
        app.applicationStateChanged.disconnect()
        drive = Drive(window)
        lead(drive, folder, paper)
        drive.watchdog.stop()
        garbage.stop()
        window.close()


if __name__ == "__main__":
    main()
