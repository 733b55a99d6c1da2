"""The lines of a receipt: Tab or Enter at the end of the last one begins the next."""

from collections.abc import Sequence
from itertools import pairwise

from PySide6.QtCore import QSize, Qt, QTimer, Signal, Slot
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication, QFrame, QGridLayout, QLabel, QVBoxLayout, QWidget

from journal.desktop.theme import TARGET
from journal.desktop.widgets.line_row import LineRow
from journal.desktop.widgets.parts import button, label, row, scrolled
from journal.domain.errors import JournalError
from journal.domain.ids import WantedId
from journal.domain.receipts import Line, Share, Spread

_TITLES = ("How many", "What", "Price", "Category", "Condition", "Price new", "Shared to", "")
_WIDTHS = (64, 0, 96, 164, 138, 92, 0, 40)
_TEXT, _SHARED = 1, 6
_ROWS_SHOWN = 4
_ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter)


class LinesEdit(QWidget):
    """Rows of fields, one for each line."""

    #: Something in a line changed, or there are more or fewer.
    changed = Signal()
    #: The keyboard is in another line, or the lines have moved: its number from 0.
    current_changed = Signal(int)

    def __init__(self, currency: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._currency = currency
        self.rows: list[LineRow] = []
        self._current = 0
        self._grid_holder = QFrame()
        self._grid = QGridLayout(self._grid_holder)
        self._grid.setContentsMargins(0, 0, 6, 0)
        self._grid.setHorizontalSpacing(6)
        self._grid.setVerticalSpacing(4)
        self._area = scrolled(self._grid_holder, is_form=True)
        self._area.setMinimumHeight((TARGET + 6) * _ROWS_SHOWN)
        self.add_button = button("Add a line", self.add_line, icon="plus", role="quiet")
        self.add_button.setAutoDefault(False)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(4)
        layout.addWidget(self._area, 1)
        layout.addLayout(row(self.add_button, None))
        self._lay_out()
        self._make_row()
        self._lay_out()
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.focusChanged.connect(self._on_focus)

    def sizeHint(self) -> QSize:
        """Room for a few lines."""
        return QSize(900, (TARGET + 6) * (_ROWS_SHOWN + 2))

    @property
    def current(self) -> int:
        """Which line the keyboard was in last, from 0."""
        return self._current

    def set_currency(self, currency: str) -> None:
        """Read prices in another currency from now on."""
        self._currency = currency
        for line in self.rows:
            line.set_currency(currency)
        self.changed.emit()

    def set_lines(self, lines: Sequence[Line]) -> None:
        """Show the lines of a receipt that is there."""
        for old in self.rows:
            self._let_go(old)
        self.rows = []
        for line in lines:
            self._make_row().show_line(line)
        if not lines:
            self._make_row()
        self._lay_out()
        self._move_to(0)
        self.changed.emit()

    def lines(self) -> tuple[Line, ...]:
        """The lines as they stand; rows nothing was written into don't count.

        Raises:
            JournalError: a field can't be read; the sentence names the line.
        """
        found = []
        for number, shown in enumerate(self.rows, start=1):
            if shown.is_blank():
                continue
            try:
                found.append(shown.line())
            except JournalError as error:
                raise JournalError(f"Line {number}: {error}") from error
        return tuple(found)

    def came(self) -> tuple[WantedId | None, ...]:
        """For each of ``lines`` the wanted part that it is, None where it is none."""
        return tuple(shown.came for shown in self.rows if not shown.is_blank())

    def amounts(self) -> tuple[int, ...]:
        """The prices that can be read now, 0 for the others; one for each row."""
        return tuple(shown.price.seen() or 0 for shown in self.rows)

    def add_line(self) -> None:
        """Add an empty line below and go there."""
        before = self.rows[-1] if self.rows else None
        made = self._make_row()
        if before is not None:
            made.follow(before)
        self._lay_out()
        self._move_to(len(self.rows) - 1)
        made.text.setFocus(Qt.FocusReason.TabFocusReason)
        QTimer.singleShot(0, made, lambda: self._area.ensureWidgetVisible(made.text))
        self.changed.emit()

    def set_shares(self, place: int, shares: tuple[Share, ...]) -> None:
        """Share one line."""
        self.rows[place].shares = shares

    def set_spread(self, place: int, spread: Spread) -> None:
        """Have one line go over the others, or stand for itself."""
        self.rows[place].spread = spread

    def show_shares(self, words: Sequence[str]) -> None:
        """Write beside each line what it is shared to."""
        for shown, said in zip(self.rows, words, strict=True):
            text = said or "nothing"
            metrics = shown.share_button.fontMetrics()
            cut = metrics.elidedText(text, Qt.TextElideMode.ElideRight, 120)
            shown.share_button.setText(cut.replace("&", "&&"))
            shown.share_button.setToolTip(f"Shared to {text}")
            shown.share_button.setAccessibleName(f"Shared to {text}; press to change")

    def _make_row(self) -> LineRow:
        made = LineRow(self._currency, self)
        made.changed.connect(self.changed)
        made.removed.connect(lambda: self._remove(made))
        self.rows.append(made)
        return made

    def focusNextPrevChild(self, forwards: bool) -> bool:
        """Begin the next line where Tab leaves the last one."""
        shown = self._focused_row()
        if forwards and shown is not None and self.focusWidget() is shown.last_field():
            self._leave(shown)
            return True
        return super().focusNextPrevChild(forwards)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go on with Enter as with Tab."""
        plain = event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier
        if event.key() in _ENTER and not plain and self._focused_row() is not None:
            self.focusNextPrevChild(True)
            return
        super().keyPressEvent(event)

    def _focused_row(self) -> LineRow | None:
        focused = self.focusWidget()
        return next((shown for shown in self.rows if focused in shown.fields), None)

    @Slot(QWidget, QWidget)
    def _on_focus(self, _old: QWidget | None, _new: QWidget | None) -> None:
        shown = self._focused_row()
        focused = self.focusWidget()
        if shown is None or focused is None:
            return
        self._area.ensureWidgetVisible(focused)
        if self.rows.index(shown) != self._current:
            self._move_to(self.rows.index(shown))

    def _leave(self, shown: LineRow) -> None:
        place = self.rows.index(shown)
        if place + 1 < len(self.rows):
            self.rows[place + 1].quantity.setFocus(Qt.FocusReason.TabFocusReason)
        elif shown.is_blank():
            super().focusNextPrevChild(True)
        else:
            self.add_line()

    def _remove(self, shown: LineRow) -> None:
        place = self.rows.index(shown)
        self.rows.remove(shown)
        self._let_go(shown)
        if not self.rows:
            self._make_row()
        self._lay_out()
        self._move_to(min(place, len(self.rows) - 1))
        self.rows[self._current].text.setFocus()
        self.changed.emit()

    def _move_to(self, place: int) -> None:
        self._current = place
        self.current_changed.emit(place)

    def _let_go(self, shown: LineRow) -> None:
        for field in (*shown.fields, shown.share_button, shown.remove_button):
            field.hide()
            self._grid.removeWidget(field)
            field.deleteLater()
        shown.deleteLater()

    def _lay_out(self) -> None:
        """Put every field into its place, and the keyboard's way through them in order."""
        self._clear_titles()
        for place, title in enumerate(_TITLES):
            self._grid.addWidget(label(title, "muted", wrap=False), 0, place)
            if _WIDTHS[place]:
                self._grid.setColumnMinimumWidth(place, _WIDTHS[place])
        self._grid.setColumnStretch(_TEXT, 3)
        self._grid.setColumnStretch(_SHARED, 1)
        way: list[QWidget] = []
        for number, shown in enumerate(self.rows, start=1):
            shown.name(number)
            way += (*shown.fields, shown.share_button, shown.remove_button)
            for place, widget in enumerate(way[-len(_TITLES) :]):
                if _WIDTHS[place] and place < _SHARED:
                    widget.setFixedWidth(_WIDTHS[place])
                self._grid.addWidget(widget, number, place)
                widget.show()  # a widget that waits for its layout to show it takes no focus
        stops = [field for field in way if field.focusPolicy() & Qt.FocusPolicy.TabFocus]
        for before, after in pairwise([*stops, self.add_button]):
            QWidget.setTabOrder(before, after)
        for number in range(self._grid.rowCount()):
            self._grid.setRowStretch(number, 0)
        self._grid.setRowStretch(len(self.rows) + 1, 1)

    def _clear_titles(self) -> None:
        while (item := self._grid.takeAt(0)) is not None:
            widget = item.widget()
            if isinstance(widget, QLabel):
                widget.hide()
                widget.deleteLater()
