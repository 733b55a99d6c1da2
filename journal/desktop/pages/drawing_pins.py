"""What is done with pins on the Drawing page, by hand and by key."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, Slot
from PySide6.QtGui import QKeySequence, QShortcut

from journal.desktop.desk import Desk, PhotosSelected, Selection
from journal.desktop.widgets.pin_hand import PinHand, PlacedPhoto
from journal.domain.ids import PanelId, PhotoId, ViewId

if TYPE_CHECKING:
    from journal.actions.session import Session
    from journal.desktop.widgets.tool_canvas import ToolCanvas

#: By key pins are shifted and turned by so much: millimetres, and with Shift; degrees.
_SHIFT_MM, _FAR_MM, _TURN = 10.0, 100.0, 15.0
_NOTHING_CHOSEN = (
    "Choose pins first: click one, draw a line round some with Shift, "
    "or press A for all of the panel."
)


class PinActs(QObject):
    """Moves, shifts and turns the chosen pins; one edit for each act."""

    def __init__(self, desk: Desk, canvas: "ToolCanvas", parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._canvas = canvas
        self.hand = PinHand(canvas, self)
        self.hand.writable = not desk.read_only
        self.hand.picked.connect(self._on_picked)
        self.hand.move_wanted.connect(self._on_moved)
        self.hand.turn_wanted.connect(self._on_turned)
        desk.selected.connect(self._on_selected)
        acts = {
            "A": self.choose_all,
            "M": self.move_here,
            "[": lambda: self.turn_by(-_TURN),
            "]": lambda: self.turn_by(_TURN),
        }
        for key, across, down in (
            ("Left", -1, 0),
            ("Right", 1, 0),
            ("Up", 0, -1),
            ("Down", 0, 1),
        ):
            for held, mm in (("Alt", _SHIFT_MM), ("Alt+Shift", _FAR_MM)):
                acts[f"{held}+{key}"] = partial(self.shift, across * mm, down * mm)
        for keys, act in acts.items():
            shortcut = QShortcut(QKeySequence(keys), canvas, act)
            shortcut.setContext(Qt.ShortcutContext.WidgetShortcut)

    # --- choosing ---

    @Slot()
    def choose_all(self) -> None:
        """Choose every pin of the panel looked at that shows on this view."""
        panel_id = self._canvas.selected_panel
        pins = tuple(pin for dot in self._canvas.dots() for pin in dot.pins() if pin[1] == panel_id)
        self.hand.choose(pins)
        self._on_picked(pins)

    @Slot(object)
    def _on_picked(self, pins: tuple[PlacedPhoto, ...]) -> None:
        ids = tuple(dict.fromkeys(photo_id for photo_id, _ in pins))
        if ids:
            self._desk.select(PhotosSelected(ids))

    @Slot(object)
    def _on_selected(self, selection: Selection) -> None:
        """Let go of pins whose photos are no longer the ones selected; keep them on a panel's way.

        Going to a panel does not let go: the chosen pins may be on their way there.
        """
        if isinstance(selection, PhotosSelected):
            ids = set(selection.ids)
            if not ids.issuperset(photo_id for photo_id, _ in self.hand.chosen):
                self.hand.choose(())

    def _chosen(self) -> tuple[PlacedPhoto, ...]:
        if not self.hand.chosen:
            self._desk.message.emit(_NOTHING_CHOSEN, "info")
        return self.hand.chosen

    # --- acting ---

    @Slot()
    def move_here(self) -> None:
        """Move the chosen pins to the panel looked at."""
        panel_id = self._canvas.selected_panel
        pins = self._chosen()
        if pins and panel_id is not None:
            self._move(pins, panel_id, None, None)

    @Slot(object, int, int, float, float)
    def _on_moved(
        self, pins: tuple[PlacedPhoto, ...], panel_id: int, view_id: int, x: float, y: float
    ) -> None:
        self._move(pins, PanelId(panel_id), ViewId(view_id), (x, y))

    def _move(
        self,
        pins: tuple[PlacedPhoto, ...],
        panel_id: PanelId,
        view_id: ViewId | None,
        spot: tuple[float, float] | None,
    ) -> None:
        from journal.actions.pins import move_pins

        if self._desk.act(move_pins, pins, panel_id, view_id=view_id, spot=spot) is not None:
            self.hand.choose(tuple(dict.fromkeys((photo_id, panel_id) for photo_id, _ in pins)))

    def shift(self, dx: float, dy: float) -> None:
        """Shift the chosen pins by millimetres."""
        from journal.actions.pins import shift_pins

        if pins := self._chosen():
            self._desk.act(shift_pins, pins, dx, dy)

    def turn_by(self, degrees: float) -> None:
        """Turn the chosen pins' cameras; from up where the way isn't known yet."""
        if pins := self._chosen():
            facing = self._facing_of(pins[0])
            spot = self._canvas.spot_on(pins[0][1]) if self._on_view(pins[0][1]) else None
            at = None if spot is None else (spot.x(), spot.y())
            self._turn(pins, 0.0 if facing is None else facing + degrees, at)

    def _on_view(self, panel_id: PanelId) -> bool:
        return any(panel.id == panel_id for panel in self._canvas.panels_shown())

    def _facing_of(self, pin: PlacedPhoto) -> float | None:
        from journal.actions.pins import pins_of

        def facing(session: "Session", photo_id: PhotoId) -> float | None:
            return next(
                (p.facing for p in pins_of(session, photo_id) if p.panel_id == pin[1]), None
            )

        return self._desk.ask(facing, pin[0])

    @Slot(object, float, float, float)
    def _on_turned(self, pins: tuple[PlacedPhoto, ...], degrees: float, x: float, y: float) -> None:
        self._turn(pins, degrees, (x, y))

    def _turn(
        self, pins: tuple[PlacedPhoto, ...], degrees: float, spot: tuple[float, float] | None
    ) -> None:
        from journal.actions.pins import face_pins

        self._desk.act(face_pins, pins, degrees, view_id=self._canvas.view_id, spot=spot)
