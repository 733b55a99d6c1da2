"""A receipt's form filled from its paper, with the paper beside it."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QApplication, QHBoxLayout, QWidget

from journal.actions import receipts as receipt_actions
from journal.actions.reading import ReadPaper, lines_from, noticed_anew, read_papers
from journal.actions.settings import save_settings
from journal.desktop.dialogs.paper_pane import PaperPane, line_name
from journal.desktop.tasks import Task
from journal.desktop.widgets.parts import column, row, scrolled
from journal.domain.ids import ReceiptId
from journal.domain.money import format_money
from journal.domain.papers import DateOrder, ReadReceipt, sure_word
from journal.domain.receipts import Receipt
from journal.domain.when import spoken

if TYPE_CHECKING:
    from journal.desktop.desk import Desk
    from journal.desktop.dialogs.receipt import ReceiptDialog

_WIDE, _HIGH = 1500, 880
#: What a window's frame takes beside its content, about.
_FRAME_WIDE, _FRAME_HIGH = 12, 40
#: Narrower than this the lines of a receipt have no room for their words; it scrolls instead.
_FORM = 896
#: How paper and form share the room.
_PARTS = 3, 8


class ReceiptReading(QObject):
    """Reads papers in a reader's thread and fills a new receipt's form that is still empty."""

    def __init__(self, dialog: "ReceiptDialog", desk: "Desk") -> None:
        super().__init__(dialog)
        self._dialog = dialog
        self._desk = desk
        self._task: Task | None = None
        self.pane: PaperPane | None = None
        self.read: ReadReceipt | None = None
        self._shown: Path | None = None
        self._beside = QHBoxLayout()
        dialog.finished.connect(self.stop)

    def make_room(self, hint: QWidget) -> None:
        """Put the form where the paper can stand beside it; moving it later dresses it anew.

        The form scrolls where it has no room; ``hint`` and the buttons stay in sight below it.
        """
        dialog = self._dialog
        form = QWidget()
        form.setLayout(dialog.outer)
        form.setMinimumWidth(_FORM)
        area = scrolled(form, is_form=True)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
        self._beside.setSpacing(0)
        self._beside.addWidget(area, _PARTS[1])
        dialog.foot = row(hint, None)
        below = column(dialog.problem, spacing=6)
        below.addLayout(dialog.foot)
        below.setContentsMargins(20, 4, 20, 14)
        whole = column()
        whole.addLayout(self._beside, 1)
        whole.addLayout(below)
        dialog.setLayout(whole)
        dialog.foot.addWidget(dialog.buttons)

    def begin(self, path: Path) -> None:
        """Read a paper and show it beside the form when it is read; one shown already stays."""
        if path == self._shown:
            return
        pane = self._open_pane()
        pane.wait_for(path.name)
        self.stop()
        self._task = read_in_background(self._desk, path, self.show, self)

    def stop(self) -> None:
        """Read no further."""
        if self._task is not None:
            self._task.cancel()
            self._task = None

    def show_kept(self, paper: ReadPaper) -> None:
        """Show a paper that was read a while ago; what was recorded since is noticed soon."""
        self.show(paper)
        session = self._desk.session
        self._task = self._desk.read(
            lambda _context: noticed_anew(session, paper), self._notice, self
        )

    def _notice(self, paper: ReadPaper) -> None:
        self._task = None
        if self.pane is not None:
            self.pane.show_remarks([*self._known_already(paper), *paper.read.remarks])

    def show(self, paper: ReadPaper) -> None:
        """Fill the form with what was read, as far as nobody has typed there."""
        self._task = None
        self._shown = paper.path
        pane = self._open_pane()
        pane.show_paper(paper, [*self._known_already(paper), *paper.read.remarks])
        self.read = paper.read
        if not self._dialog.is_untouched():
            return
        if paper.read.is_empty:
            # Today is a guess for a receipt without paper; this one has its own day on it.
            self._dialog.head.forget_date()
            return
        self._fill(paper.read)
        self._offer_other_order(paper.read)
        self._dialog.head.supplier.setFocus()
        pane.choose("Supplier")

    @property
    def text(self) -> str:
        """All that was read from the paper, for searching."""
        return self.read.text if self.read else ""

    def _open_pane(self) -> PaperPane:
        if self.pane is not None:
            return self.pane
        dialog = self._dialog
        self.pane = PaperPane(self._desk)
        self._beside.setContentsMargins(12, 12, 0, 0)
        self._beside.insertWidget(0, self.pane, _PARTS[0])
        self.pane.picked.connect(self._on_picked)
        self.pane.other_order_wanted.connect(self._on_other_order)
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.focusChanged.connect(self._on_focus)
        free = dialog.screen().availableGeometry().size()
        dialog.setMinimumSize(760, 480)
        wide, high = free.width() - _FRAME_WIDE, free.height() - _FRAME_HIGH
        dialog.resize(min(_WIDE, wide), min(max(dialog.height(), _HIGH), high))
        if dialog.isVisible():
            # Larger where it was, it would reach over the edge of the screen.
            over = dialog.frameGeometry()
            over.moveCenter(dialog.screen().availableGeometry().center())
            dialog.move(over.topLeft())
        return self.pane

    # --- filling ---

    def _fill(self, read: ReadReceipt) -> None:
        head, dialog = self._dialog.head, self._dialog
        if read.currency:
            head.currency.set_text(read.currency.value)
        if read.supplier:
            head.supplier.set_text(read.supplier.value)
            head.supplier.say(_said(read.supplier.sure))
        if read.when:
            head.when.set_when(read.when.value)
            head.when.say(f"{spoken(read.when.value)}. {_said(read.when.sure)}")
        else:
            head.when.set_text("")
        dialog.lines.set_lines(lines_from(read, dialog.shares.shares()))
        dialog.set_sums(
            read.total.value if read.total else None, read.tax.value if read.tax else None
        )
        if read.total:
            dialog.printed_total.say(f"{dialog.printed_total.note.text()} {_said(read.total.sure)}")
        for number, line in enumerate(read.lines):
            words = f"Read from the paper: {sure_word(line.sure)}"
            dialog.lines.rows[number].text.setToolTip(words)
            dialog.lines.rows[number].text.setAccessibleDescription(words)

    def _known_already(self, paper: ReadPaper) -> Sequence[str]:
        said = []
        if paper.held_by is not None:
            said.append(
                f"This very paper is already with {self._named(paper.held_by)}; nothing is to do."
            )
        said += [
            f"Perhaps recorded already: {self._named(one)} has the same supplier, day and total."
            for one in paper.like
        ]
        return said

    def _named(self, receipt_id: ReceiptId) -> str:
        found: Receipt | None = self._desk.ask(receipt_actions.receipt, receipt_id)
        if found is None:
            return "a receipt"
        total = found.lines_total if found.printed_total is None else found.printed_total
        money = format_money(total, found.currency)
        return f"the receipt from {found.supplier}, {spoken(found.when)}, {money}"

    # --- the order of day and month ---

    def _offer_other_order(self, read: ReadReceipt) -> None:
        if self.pane is None or read.other_date is None:
            return
        hint = "Dates of papers are read so from now on" if self._is_home() else ""
        self.pane.offer_other_order(f"Rather {spoken(read.other_date)}", hint)

    def _on_other_order(self) -> None:
        if self.read is None or self.read.other_date is None or self.pane is None:
            return
        self._dialog.head.when.set_when(self.read.other_date)
        self.pane.offer_other_order("")
        if not self._is_home():
            return
        now = DateOrder(self._desk.settings.date_order)
        other = next(order for order in DateOrder if order is not now)
        self._desk.settings = replace(self._desk.settings, date_order=other.value)
        save_settings(self._desk.settings)
        self._dialog.head.when.say(f"{spoken(self.read.other_date)}; {other.value} from now on")

    def _is_home(self) -> bool:
        """Whether the paper is in the journal's currency; others may come from anywhere."""
        head = self._dialog.head
        return head.currency_code() == head.own_currency

    # --- where the keyboard is ---

    def _places(self) -> tuple[tuple[str, QWidget], ...]:
        dialog, head = self._dialog, self._dialog.head
        lines = [
            (line_name(number), field)
            for number, shown in enumerate(dialog.lines.rows)
            for field in (shown.text, *shown.fields)
        ]
        return (
            ("Supplier", head.supplier.edit),
            ("Date", head.when.edit),
            ("Currency", head.currency.edit),
            *lines,
            ("Printed total", dialog.printed_total.edit),
            ("Tax in it", dialog.tax),
        )

    def _on_focus(self, _old: QWidget | None, new: QWidget | None) -> None:
        if self.pane is None or new is None:
            return
        name = next((name for name, field in self._places() if field is new), None)
        if name is not None:
            self.pane.choose(name)

    def _on_picked(self, name: str) -> None:
        field = next((field for other, field in self._places() if other == name), None)
        if field is not None:
            field.setFocus(Qt.FocusReason.OtherFocusReason)


def read_in_background(
    desk: "Desk", path: Path, on_read: Callable[[ReadPaper], object], owner: QObject
) -> Task:
    """Read one paper in a reader's thread; ``on_read`` is told on the main thread."""
    session, order = desk.session, DateOrder(desk.settings.date_order)
    return desk.read(
        lambda context: read_papers(session, [path], context, order)[0], on_read, owner
    )


def _said(sure: float) -> str:
    return f"Read from the paper: {sure_word(sure)}."
