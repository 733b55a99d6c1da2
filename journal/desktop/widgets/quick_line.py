"""One line for hours, called up from any page: understood as it is typed, recorded by Enter."""

from datetime import date

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import QAbstractButton, QApplication, QFrame, QWidget

from journal.actions import areas, history, quick_hours
from journal.desktop.desk import Desk
from journal.desktop.theme import TARGET
from journal.desktop.widgets.announce import announce
from journal.desktop.widgets.hours_fields import LineField
from journal.desktop.widgets.parts import button, label, row, tool
from journal.desktop.widgets.remembered import remember_person, who_works
from journal.domain.errors import JournalError
from journal.domain.ids import AreaId
from journal.domain.quick_work import WorkLine, understood


class QuickLine(QFrame):
    """A strip with the line, an Undo for what it recorded, and a way out (Esc).

    It lies over the bottom of the page, beside ``rail``, so that the page keeps its place.
    """

    def __init__(self, desk: Desk, rail: QWidget, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk = desk
        self._rail = rail
        self._over = parent
        self._me = ""
        self._names: dict[AreaId, str] = {}
        self._came_from: QWidget | None = None
        self.setProperty("role", "strip")
        self.line = LineField(self._understand)
        self.line.setAccessibleName("Hours in one line")
        self.record = button("&Record", self._on_record, icon="hours", role="primary")
        self.undo = button("Undo", self._on_undo, icon="undo")
        self.undo.hide()
        close = tool("close", "Put the line away (Esc)", self.put_away)
        name = label("Hours in one line", "subheading", wrap=False)
        name.setFixedHeight(TARGET)
        self._row = layout = row(name, self.line, self.undo, self.record, close, spacing=12)
        layout.setContentsMargins(16, 8, 12, 8)
        layout.setStretch(1, 1)
        for widget in (name, self.undo, self.record, close):
            layout.setAlignment(widget, Qt.AlignmentFlag.AlignTop)
        self.setLayout(layout)
        self.line.edit.installEventFilter(self)
        self.hide()

    def call_up(self) -> None:
        """Show the line and take the keyboard there."""
        held = QApplication.focusWidget()
        if held is not None and not self.isAncestorOf(held):
            self._came_from = held
        self._me = who_works(self._desk)
        self._names = {area.id: area.name for area in self._desk.ask(areas.areas) or ()}
        self.show()
        self.place()
        self.raise_()
        self.line.edit.selectAll()
        self.line.edit.setFocus()

    def place(self) -> None:
        """Lie along the bottom, as high as the line and what is said under it."""
        room, left = self._over.rect(), self._rail.width()
        wide = room.width() - left
        high = self._row.totalHeightForWidth(wide)
        high = max(high, self._row.totalSizeHint().height())
        self.setGeometry(left, room.height() - high, wide, high)

    def event(self, event: QEvent) -> bool:
        """Grow when something is said under the line."""
        done = super().event(event)
        if event.type() == QEvent.Type.LayoutRequest:
            self.place()
        return done

    def put_away(self) -> None:
        """Hide the line, and give the keyboard back to where it was."""
        self.hide()
        self.line.set_text("")
        self.undo.hide()
        try:
            if self._came_from is not None and self._came_from.isVisible():
                self._came_from.setFocus()
        except RuntimeError:
            pass  # What had the keyboard is gone.
        self._came_from = None

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Record with Enter, or press the button it stands on; leave with Esc."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            held = self.focusWidget()
            if isinstance(held, QAbstractButton):
                held.click()
            else:
                self._on_record()
        elif event.key() == Qt.Key.Key_Escape:
            self.put_away()
        else:
            super().keyPressEvent(event)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """On an empty line Ctrl+Z takes back what the line recorded."""
        if (
            isinstance(event, QKeyEvent)
            and event.type() == QEvent.Type.KeyPress
            and event.matches(QKeySequence.StandardKey.Undo)
            and not self.line.text()
            and not self.undo.isHidden()
        ):
            self._on_undo()
            return True
        return super().eventFilter(watched, event)

    def _understand(self, text: str) -> tuple[WorkLine, str]:
        line = quick_hours.understand_hours(self._desk.session, text, self._me, date.today())
        return line, understood(line, self._names)

    def _on_record(self) -> None:
        if not self.line.text():
            self.put_away()
            return
        try:
            line, words = self._understand(self.line.text())
        except JournalError as error:
            self.line.refuse(error)
            return
        changes = self._desk.act(quick_hours.record_hours, line)
        if changes is None:
            return
        remember_person(self._desk, self._me)
        self.line.set_text("")
        self.line.say(f"Recorded: {words}")
        self.undo.show()
        self.line.edit.setFocus()
        announce(self, f"Recorded: {words}")

    def _on_undo(self) -> None:
        label_now = self._desk.ask(history.undo_label) or ""
        self._desk.act(history.undo)
        self.line.say(f"Taken back: {label_now}")
        self.undo.hide()
        self.line.edit.setFocus()
