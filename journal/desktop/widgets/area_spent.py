"""What went into a repair area: lines of receipts and hours, with its share of each."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from PySide6.QtWidgets import QWidget

from journal.actions.areas import area_spent
from journal.desktop.desk import Desk
from journal.desktop.dialogs.hours import HoursDialog
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.dialogs.receipt import ReceiptDialog
from journal.desktop.theme import TARGET
from journal.desktop.widgets.parts import button, column, label, row
from journal.desktop.widgets.rows import Column, RowsTable
from journal.domain.areas import Area
from journal.domain.hours import spoken_hours
from journal.domain.ids import AreaId
from journal.domain.money import format_money
from journal.domain.receipts import Paper, Receipt, Share
from journal.domain.sharing import share
from journal.domain.when import When, spoken
from journal.domain.work import BASIS_WORDS, Work

_MOST_SHOWN = 8


@dataclass(frozen=True, slots=True)
class Spent:
    """One line or one day, with what of it is this area's, in words."""

    when: When
    what: str
    part: str
    note: str
    source: Receipt | Work


class AreaSpent(QWidget):
    """The lines and hours shared to an area; Enter or a double click opens them to be changed."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._area: Area | None = None
        self._receipts: tuple[Receipt, ...] = ()
        self._work: tuple[Work, ...] = ()
        self.total = label("", wrap=False)
        self.expected = label("", "muted")
        self.table = RowsTable(
            "Lines and hours of this repair area",
            (
                Column("Date", lambda spent: spoken(spent.when), lambda spent: spent.when),
                Column("What", lambda spent: spent.what, wide=True),
                Column("This area's part", lambda spent: spent.part, number=True),
                Column("", lambda spent: spent.note),
            ),
        )
        self.table.on_opened(self._open)
        self.nothing = label("No receipt and no hours are shared to it yet.", "muted")
        bought = button(
            "Re&ceipt", self._on_receipt, icon="receipt", hint="Record a receipt for it"
        )
        worked = button("H&ours", self._on_hours, icon="hours", hint="Record hours worked on it")
        for act in (bought, worked):
            act.setEnabled(not desk.read_only)
        heading = row(label("Money and hours", "subheading", wrap=False), self.total, None)
        heading.addWidget(bought)
        heading.addWidget(worked)
        layout = column(spacing=6)
        layout.addLayout(heading)
        layout.addWidget(self.expected)
        layout.addWidget(self.nothing)
        layout.addWidget(self.table)
        self.setLayout(layout)

    def show_area(self, area: Area, figures: str, expected: str = "") -> None:
        """Show what went into an area, ``figures``, beside what a survey expected; in words."""
        self._area = area
        self._receipts, self._work = self._desk.ask(area_spent, area.id) or ((), ())
        found = sorted(self._spent(area.id), key=lambda spent: spent.when)
        self.table.set_rows(found)
        self.table.setVisible(bool(found))
        self.nothing.setVisible(not found)
        shown = min(len(found), _MOST_SHOWN)
        self.table.setFixedHeight((shown + 1) * TARGET + 10)
        self.total.setText(figures)
        self.expected.setText(expected)
        self.expected.setVisible(bool(expected))

    def _spent(self, area_id: AreaId) -> Iterator[Spent]:
        for receipt in self._receipts:
            for line in receipt.lines:
                part = part_of(line.amount, line.shares, area_id)
                if part is not None:
                    what = f"{receipt.supplier}: {line.text}"
                    money = format_money(part, receipt.currency)
                    note = "" if receipt.paper is Paper.HELD else f"paper {receipt.paper.value}"
                    yield Spent(receipt.when, what, money, note, receipt)
        for work in self._work:
            part = part_of(work.minutes, work.shares, area_id)
            if part is not None:
                what = f"{work.person}: {work.note}" if work.note else work.person
                yield Spent(work.when, what, spoken_hours(part), BASIS_WORDS[work.basis], work)

    def _open(self, spent: Spent) -> None:
        if self._desk.read_only:
            return
        if isinstance(spent.source, Receipt):
            open_dialog(ReceiptDialog(self._desk, self.window(), receipt=spent.source))
        else:
            open_dialog(HoursDialog(self._desk, self.window(), work=spent.source))

    def _on_receipt(self) -> None:
        self._record(ReceiptDialog)

    def _on_hours(self) -> None:
        self._record(HoursDialog)

    def _record(self, dialog: "Callable[..., ReceiptDialog | HoursDialog]") -> None:
        if self._area is not None:
            open_dialog(dialog(self._desk, self.window(), area_id=self._area.id))


def part_of(amount: int, shares: Iterable[Share], area_id: AreaId) -> int | None:
    """An area's part of an amount, to the last unit; None where none of it is the area's."""
    parts = tuple(shares)
    places = [place for place, part in enumerate(parts) if part.area_id == area_id]
    if not places:
        return None
    return share(amount, [part.weight for part in parts])[places[0]]
