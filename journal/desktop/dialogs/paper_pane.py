"""The paper beside a receipt's form: its picture, what was read, where, and how surely."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QImage, QPixmap
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QPushButton, QWidget

from journal.actions.reading import ReadPaper, paper_picture
from journal.desktop.desk import Desk
from journal.desktop.tasks import Task
from journal.desktop.widgets.paper_view import PaperView
from journal.desktop.widgets.parts import button, column, label
from journal.domain.papers import Box, Field, ReadReceipt, sure_word
from journal.domain.pictures import Picture

_SHOWN_AT = 1600
_LIST_ROWS = 7


@dataclass(frozen=True, slots=True)
class Shown:
    """A field as the pane lists it: its name, how sure, and where."""

    name: str
    sure: float
    box: Box
    page: int


class PaperPane(QWidget):
    """Shows a paper and its fields; the field in hand is framed on the picture."""

    #: A field was picked in the list: its name.
    picked = Signal(str)
    #: The date is to be read in the other order of day and month.
    other_order_wanted = Signal()

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._paper: ReadPaper | None = None
        self._fields: tuple[Shown, ...] = ()
        self._page = -1
        self._task: Task | None = None
        self.view = PaperView()
        self.view.show_picture(None, "Reading the paper ...")
        self.said = label("", "muted")
        self.remark = label("", "error")
        self.remark.hide()
        self.other_order: QPushButton = button("", self.other_order_wanted.emit)
        self.other_order.setAutoDefault(False)
        self.other_order.hide()
        self.list = QListWidget()
        self.list.setAccessibleName("What was read, and how surely")
        self.list.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.list.itemClicked.connect(lambda item: self.picked.emit(self._name_of(item)))
        height = self.list.fontMetrics().height() + 8
        self.list.setFixedHeight(height * _LIST_ROWS)
        layout = column(self.remark, self.view, self.said, self.other_order, self.list, spacing=6)
        layout.setStretch(1, 1)
        self.setLayout(layout)
        self.setMinimumWidth(300)

    def wait_for(self, name: str) -> None:
        """Say that a paper is being read."""
        self.view.show_picture(None, f"Reading {name} ...")

    def show_paper(self, paper: ReadPaper, remarks: Sequence[str]) -> None:
        """Show a paper that was read, with sentences about it as a whole."""
        self._paper, self._page = paper, -1
        self._fields = fields_of(paper.read)
        self.list.clear()
        for shown in self._fields:
            item = QListWidgetItem(f"{shown.name}: {sure_word(shown.sure)}")
            item.setData(Qt.ItemDataRole.UserRole, shown.name)
            self.list.addItem(item)
        self.list.setVisible(bool(self._fields))
        self.show_remarks(remarks)
        if not self._fields:
            self.said.setText("Nothing was filled in; type what the paper says.")
        else:
            unsure = sum(sure_word(shown.sure) != "sure" for shown in self._fields)
            self.said.setText(
                f"{len(self._fields)} fields were read, {unsure} to look at twice. "
                "Tab goes through; Ctrl+Enter records."
            )
        self._show_page(self._fields[0].page if self._fields else 0)

    def show_remarks(self, remarks: Sequence[str]) -> None:
        """Say what is to be known of the paper as a whole, in these sentences alone."""
        self.remark.setText("\n".join(remarks))
        self.remark.setVisible(bool(remarks))

    def offer_other_order(self, words: str, hint: str = "") -> None:
        """Offer the date in the other order of day and month; "" takes the offer back."""
        self.other_order.setText(words)
        self.other_order.setToolTip(hint)
        self.other_order.setAccessibleDescription(hint)
        self.other_order.setVisible(bool(words))

    def choose(self, name: str) -> None:
        """Frame the place a field was read from, and say how sure it is."""
        shown = next((one for one in self._fields if one.name == name), None)
        if shown is None:
            self.view.choose("")
            self.list.setCurrentRow(-1)
            self.said.setText(f"{name}: not read from the paper." if name and self._paper else "")
            return
        self._show_page(shown.page)
        self.view.choose(name)
        self.list.setCurrentRow(self._fields.index(shown))
        self.said.setText(f"{name} was read in the frame: {sure_word(shown.sure)}.")

    def _name_of(self, item: QListWidgetItem) -> str:
        return str(item.data(Qt.ItemDataRole.UserRole))

    def _show_page(self, page: int) -> None:
        """Show a page's frames now and its picture as soon as it is there."""
        if self._paper is None or page == self._page:
            return
        self._page = page
        paper, turns = self._paper, self._paper.read.turns
        turn = turns[page] if page < len(turns) else 0
        self.view.set_boxes({one.name: one.box for one in self._fields if one.page == page})
        if self._task is not None:
            self._task.cancel()
        self._task = self._desk.tasks.read(
            lambda _context: paper_picture(paper.path, page=page, turn=turn, longest=_SHOWN_AT),
            owner=self,
            on_done=self._on_picture,
            on_failed=lambda error: self.view.show_picture(None, str(error)),
        )

    def _on_picture(self, picture: Picture) -> None:
        self._task = None
        image = QImage(
            picture.rgb, picture.width, picture.height, 3 * picture.width,
            QImage.Format.Format_RGB888,
        )  # fmt: skip
        self.view.show_picture(QPixmap.fromImage(image))


def fields_of(read: ReadReceipt) -> tuple[Shown, ...]:
    """The fields of a receipt as read, named as the form names them."""
    named: list[tuple[str, Field[Any] | None]] = [
        ("Supplier", read.supplier),
        ("Date", read.when),
        ("Currency", read.currency),
        *((line_name(number), line) for number, line in enumerate(read.lines)),
        ("Printed total", read.total),
        ("Tax in it", read.tax),
    ]
    return tuple(
        Shown(name, field.sure, field.box, field.page) for name, field in named if field is not None
    )


def line_name(number: int) -> str:
    """What the pane calls a line, counted from 0."""
    return f"Line {number + 1}"
