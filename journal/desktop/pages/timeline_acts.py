"""What can be done with the photos selected on the timeline, by button, menu and key."""

from collections.abc import Callable

from PySide6.QtCore import QObject, QPoint, Qt, Signal
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu

from journal.actions import drawings
from journal.actions import photos as photo_actions
from journal.actions import pins as pin_actions
from journal.desktop import icons
from journal.desktop.desk import Desk
from journal.desktop.dialogs.opening import open_dialog
from journal.desktop.pages.timeline_groups import count_words
from journal.desktop.widgets.ask_bar import AskBar
from journal.desktop.widgets.photo_grid import PhotoGrid
from journal.domain.drawing import Panel
from journal.domain.errors import JournalError
from journal.domain.ids import PhotoId


class TimelineActs(QObject):
    """Acts on the photos selected in a grid; questions are asked in the bar above it."""

    #: Photos are being pinned: the label of the panel that one key pins to again.
    last_changed = Signal(str)

    def __init__(self, desk: Desk, grid: PhotoGrid, ask_bar: AskBar) -> None:
        super().__init__(grid)
        self._desk = desk
        self._grid = grid
        self._ask_bar = ask_bar
        self._last: Panel | None = None
        self._actions: list[QAction | None] = []
        self._add("Show &large", "", self._open, "zoom-in", changes=False)
        self._actions.append(None)
        self._add("&Pin to a panel\N{HORIZONTAL ELLIPSIS}", "Shift+P", self.pin, "pin")
        self._again = self._add("Pin a&gain", "P", self.pin_again, "pin")
        self._add("&Unpin", "", self.unpin, "unpin")
        self._actions.append(None)
        self._add("&Date\N{HORIZONTAL ELLIPSIS}", "D", self.date, "")
        self._add("Camera c&lock\N{HORIZONTAL ELLIPSIS}", "T", self.clock, "camera")
        self._add("&Caption\N{HORIZONTAL ELLIPSIS}", "C", self.caption, "edit")
        self._add("Turn le&ft", "Shift+R", lambda: self.turn(-90), "turn-left")
        self._add("Turn &right", "R", lambda: self.turn(90), "turn-right")
        self._actions.append(None)
        self._add("Re&move", "Delete", self.remove, "remove")
        self._kept = [one for one in self._actions[1:] if one is not None]
        self._back = self._add("Bring &back", "B", self.bring_back, "undo")
        self.show_removed(removed=False)

    def _add(
        self, text: str, keys: str, act: Callable[[], object], icon: str, *, changes: bool = True
    ) -> QAction:
        action = QAction(text, self)
        if keys:
            action.setShortcut(QKeySequence(keys))
            action.setShortcutContext(Qt.ShortcutContext.WidgetShortcut)
        if icon:
            icons.put(action, icon)
        action.setEnabled(not (changes and self._desk.read_only))
        action.triggered.connect(lambda _checked: act())
        self._grid.addAction(action)
        self._actions.append(action)
        return action

    def show_menu(self, spot: QPoint) -> None:
        """Show the menu of acts at a spot of the grid."""
        if self._grid.selected():
            self.menu().popup(self._grid.viewport().mapToGlobal(spot))

    def menu(self) -> QMenu:
        """The menu of acts."""
        made = QMenu(self._grid)
        made.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        for action in self._actions:
            if action is None:
                made.addSeparator()
            else:
                made.addAction(action)
        return made

    def show_removed(self, *, removed: bool) -> None:
        """Offer what can be done with removed photos, or else with those that are there."""
        for action in self._kept:
            action.setVisible(not removed)
        self._back.setVisible(removed)

    # --- where ---

    def pin(self) -> None:
        """Ask which panel the photos belong to."""
        ids = self._chosen()
        if not ids:
            return
        panels = self._desk.ask(drawings.panels) or ()
        self._ask_bar.ask(
            f"Pin {count_words(len(ids))} to",
            "&Pin",
            lambda text: self._pin_by_name(ids, text),
            hint="Type a part of the panel's name: sill left, boot floor",
            choices=sorted(panel.label for panel in panels),
        )

    def pin_again(self) -> None:
        """Pin the photos to the panel pinned to last; ask where there was none yet."""
        ids = self._chosen()
        if self._last is None:
            self.pin()
        elif ids:
            self._pin_to(ids, self._last)

    def unpin(self) -> None:
        """Take every pin of the photos away."""
        if ids := self._chosen():
            self._desk.act(pin_actions.unpin, ids)

    def _pin_by_name(self, ids: tuple[PhotoId, ...], text: str) -> None:
        if not text:
            raise JournalError("Type a part of the panel's name.")
        self._pin_to(ids, drawings.find_panel(self._desk.session, text))

    def _pin_to(self, ids: tuple[PhotoId, ...], panel: Panel) -> None:
        self._last = panel
        self._again.setText(f"Pin a&gain: {panel.label}")
        self.last_changed.emit(panel.label)
        self._desk.act(pin_actions.pin, ids, panel.id)

    # --- when and what ---

    def date(self) -> None:
        """Ask when the photos were taken."""
        from journal.desktop.dialogs.photo_date import PhotoDateDialog

        if ids := self._chosen():
            open_dialog(PhotoDateDialog(self._desk, ids, self._grid.window()))

    def clock(self) -> None:
        """Ask for the true time of the photo that the keyboard is on."""
        from journal.desktop.dialogs.camera_clock import CameraClockDialog

        chosen, current = self._chosen(), self._grid.selection.current
        if not chosen:
            return
        photo_id = current if current in chosen else chosen[0]
        pictures = self._grid.pictures_of([photo_id])
        picture = pictures[0] if pictures else None
        over = self._grid.window()
        open_dialog(CameraClockDialog(self._desk, photo_id, over, picture=picture))

    def caption(self) -> None:
        """Ask what the photos show."""
        ids = self._chosen()
        if not ids:
            return
        first = self._desk.ask(photo_actions.photo, ids[0])
        self._ask_bar.ask(
            f"Caption of {count_words(len(ids))}",
            "&Save",
            lambda text: self._desk.act(photo_actions.set_caption, ids, text),
            text=first.caption if first else "",
            hint="What do they show?",
        )

    def turn(self, degrees: int) -> None:
        """Turn the photos clockwise by quarter turns."""
        if ids := self._chosen():
            self._desk.act(photo_actions.turn, ids, degrees)

    def remove(self) -> None:
        """Take the photos out of the journal; undo or “Bring back” brings them back."""
        if ids := self._chosen():
            self._desk.act(photo_actions.remove_photos, ids)

    def bring_back(self) -> None:
        """Put removed photos back where they were."""
        if ids := self._chosen():
            self._desk.act(photo_actions.bring_back_photos, ids)

    def _open(self) -> None:
        current = self._grid.selection.current
        if current is not None:
            self._grid.opened.emit(current)

    def _chosen(self) -> tuple[PhotoId, ...]:
        return () if self._desk.read_only else self._grid.selected()
