"""The acts of pinning on the Drawing page: what is in hand goes to a panel, by hand or by key."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, Slot
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QWidget

from journal.desktop.desk import Desk
from journal.desktop.pages.drawing_pins import PinActs
from journal.desktop.pages.drawing_proposals import Proposing
from journal.desktop.pages.drawing_side import DrawingSide
from journal.domain.drawing import Drawing
from journal.domain.ids import PanelId, PhotoId, ViewId

if TYPE_CHECKING:
    from journal.desktop.widgets.tool_canvas import ToolCanvas


@dataclass(frozen=True, slots=True)
class Place:
    """Where photos were pinned last: a panel, and the spot on a view where one was pointed at."""

    panel_id: PanelId
    view_id: ViewId | None = None
    x: float | None = None
    y: float | None = None


class Pinning(QObject):
    """Pins what is in hand and brings the next to hand; nothing is pinned without being asked."""

    def __init__(
        self,
        desk: Desk,
        canvas: "ToolCanvas",
        side: DrawingSide,
        drawing: Callable[[], Drawing],
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._desk = desk
        self._canvas = canvas
        self._side = side
        self._drawing = drawing
        self._last: Place | None = None
        self.pins = PinActs(desk, canvas, self)
        self.proposing = Proposing(desk, canvas, side.proposals, self._labels, self)
        self.proposing.shown.connect(self._show_proposed_view)
        side.pin_here_wanted.connect(self.here)
        side.pin_again_wanted.connect(self.again)
        side.proposals.chosen.connect(self.proposed)
        side.tray.hand_changed.connect(self.show_what_can_be_done)
        for holder in (canvas, side.tray.list, side.tray.grid, *side.proposals.rows):
            self._listen(holder)

    def _listen(self, holder: QWidget) -> None:
        acts = {
            "P": self.again,
            "Escape": self._side.tray.let_go,
            "N": self._side.tray.skip,
            "O": self._side.proposals.one_by_one.toggle,
            "1": lambda: self.proposed(1),
            "2": lambda: self.proposed(2),
            "3": lambda: self.proposed(3),
        }
        if holder is self._side.tray.list:
            acts |= {"Return": lambda: self.proposed(1), "Enter": lambda: self.proposed(1)}
        for keys, act in acts.items():
            shortcut = QShortcut(QKeySequence(keys), holder, act)
            shortcut.setContext(Qt.ShortcutContext.WidgetShortcut)

    def _labels(self) -> Mapping[PanelId, str]:
        return {panel.id: panel.label for panel in self._drawing().panels}

    @Slot()
    def show_what_can_be_done(self) -> None:
        """Name the panels that what is in hand would go to, and propose others."""
        labels, panel_id = self._labels(), self._canvas.selected_panel
        here = labels.get(panel_id, "") if panel_id is not None else ""
        last = labels.get(self._last.panel_id, "") if self._last else ""
        self._side.show_acts(here, last, writable=not self._desk.read_only)
        self.proposing.look(self._side.tray.in_hand())

    @Slot()
    def _show_proposed_view(self) -> None:
        """Bring the likeliest panel to the front where it isn't on the view shown."""
        rings = self.proposing.rings
        if rings.panels and 1 not in rings.spots():
            shapes = self._drawing().shapes
            views = [s.view_id for s in shapes if s.panel_id == rings.panels[0]]
            if views:
                self._canvas.set_view(views[0])

    # --- pinning ---

    @Slot()
    def here(self) -> None:
        """Pin what is in hand to the panel selected."""
        panel_id, ids = self._canvas.selected_panel, self._side.tray.in_hand()
        if panel_id is not None and ids:
            self.pin(ids, Place(panel_id))

    @Slot()
    def again(self) -> None:
        """Pin what is in hand, else the first sitting, where the last photos went."""
        ids = self._side.tray.next_in_hand()
        if self._last is None:
            words = "Nothing was pinned yet; pin the first sitting to a panel."
            self._desk.message.emit(words, "info")
        elif not ids:
            words = "Every photo has its place; there is nothing to pin."
            self._desk.message.emit(words, "info")
        else:
            self.pin(ids, self._last)

    @Slot(int)
    def proposed(self, number: int) -> None:
        """Pin what is in hand to the panel proposed under a number, from 1."""
        panel_id, ids = self.proposing.panel(number), self._side.tray.in_hand()
        if panel_id is not None and ids and not self._desk.read_only:
            self.pin(ids, Place(panel_id))

    def pin(self, ids: tuple[PhotoId, ...], place: Place) -> None:
        """Pin photos to a place and remember it."""
        from journal.actions.pins import pin

        self._side.tray.was_pinned(ids)
        changes = self._desk.act(
            pin, ids, place.panel_id, view_id=place.view_id, x=place.x, y=place.y
        )
        if changes is not None:
            self._last = place
        self.show_what_can_be_done()
