"""The clock in the corner of the window: who is at work, and for how long by now."""

from datetime import datetime
from functools import partial

from PySide6.QtCore import QPoint, QSize, Qt, QTimer, Slot
from PySide6.QtWidgets import QMenu, QToolButton, QWidget

from journal.actions import clockings as actions
from journal.desktop import icons
from journal.desktop.desk import Desk
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.widgets.checked import repolish
from journal.domain.changes import Changes
from journal.domain.clockings import LONGEST, Clocking, spoken_moment
from journal.domain.errors import JournalError
from journal.domain.hours import spoken_hours

#: How often the time shown is worked out again; nothing is read or written for it.
_TICK_MS = 5_000


class ClockButton(QToolButton):
    """Shows the time running, or offers to clock on; its ticking never touches the journal."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.running: tuple[Clocking, ...] = ()
        self.setProperty("role", "rail")
        self.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextUnderIcon)
        self.setIconSize(QSize(28, 28))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        icons.put(self, "hours")
        self._ticks = QTimer(self, interval=_TICK_MS)
        self._ticks.timeout.connect(self.show_time)
        self.clicked.connect(self.press)
        desk.changed.connect(self._on_changed)
        self._read()

    def remind(self) -> None:
        """Ask whether clocks that ran before the journal was opened are still meant to."""
        if not self.running or self._desk.read_only:
            return
        today = actions.now().date()
        told = " and ".join(
            f"{clock.person} since {spoken_moment(clock.started, today)}" for clock in self.running
        )
        self._desk.message.emit(
            f"The clock still runs for {told}. If that is not meant: press it, bottom left, and "
            "say when you left off, or throw it away.",
            "warning",
        )

    @Slot()
    def press(self) -> None:
        """Clock on where nobody is, clock off the one who is; with several, ask whom."""
        if not self.running:
            self.clock_on()
        else:
            self._menu().popup(self.mapToGlobal(QPoint(self.width(), 0)))

    def clock_on(self) -> None:
        """Ask who begins."""
        from journal.desktop.dialogs.clock import ClockOnDialog

        if not self._desk.read_only:
            open_dialog(ClockOnDialog(self._desk, self.window()))

    def clock_off(self, clocking: Clocking) -> None:
        """Ask when a clock stopped."""
        from journal.desktop.dialogs.clock import ClockOffDialog

        open_dialog(ClockOffDialog(self._desk, clocking, self.window()))

    def _menu(self) -> QMenu:
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        today = actions.now().date()
        for clock in self.running:
            since = spoken_moment(clock.started, today)
            off = menu.addAction(
                f"Clock {clock.person} &off (since {since})\N{HORIZONTAL ELLIPSIS}"
            )
            off.triggered.connect(partial(self.clock_off, clock))
        menu.addSeparator()
        more = menu.addAction("Clock somebody else o&n\N{HORIZONTAL ELLIPSIS}")
        more.triggered.connect(self.clock_on)
        menu.setActiveAction(menu.actions()[0])
        return menu

    @Slot(object)
    def _on_changed(self, changes: Changes) -> None:
        if "work" in changes.kinds:
            self._read()

    def _read(self) -> None:
        self.running = self._desk.ask(actions.running) or ()
        self.setEnabled(not self._desk.read_only)
        if bool(self.property("running")) != bool(self.running):
            self.setProperty("running", bool(self.running))
            repolish(self)
        if self.running:
            self._ticks.start()
        else:
            self._ticks.stop()
        self.show_time()

    @Slot()
    def show_time(self) -> None:
        """Show how long the first clock has run, and how many more there are."""
        if not self.running:
            self.setText("Clock on")
            self.setAccessibleName("Clock on")
            self.setToolTip("Start a clock for somebody who begins to work (Ctrl+K)")
            return
        now = actions.now()
        times = [_time(clock, now) for clock in self.running]
        more = f" +{len(times) - 1}" if len(times) > 1 else ""
        self.setText(f"{_short(times[0])}{more}")
        lines = [
            f"{clock.person} {_spoken(time)}, since {spoken_moment(clock.started, now.date())}"
            for clock, time in zip(self.running, times, strict=True)
        ]
        self.setAccessibleName(f"Clock: {'; '.join(lines)}")
        self.setToolTip("\n".join([*lines, "Press to clock off (Ctrl+K)"]))


def _time(clock: Clocking, now: datetime) -> int | None:
    """The minutes that a clock has run; None for longer than it can have been meant to."""
    try:
        return actions.ran(clock, now)
    except JournalError:
        return None


def _short(minutes: int | None) -> str:
    return "1 day?" if minutes is None else f"{minutes // 60}:{minutes % 60:02}"


def _spoken(minutes: int | None) -> str:
    if minutes is None:
        return f"more than {spoken_hours(int(LONGEST.total_seconds() // 60))}"
    return spoken_hours(minutes) if minutes else "0 min"
